#pragma once

#include "record/record.h"
#include "recordfile/fields_of.h"

// What was found in a visit (fields.h).
namespace winchbook::recordfile {

void fields(auto& io, Of<record::SurfaceShare> auto& share) {
  io.need("state", share.state);
  io.need("share", share.share);
}

void fields(auto& io, Of<record::PieceState> auto& state) {
  io.may("on", state.on);
  io.may("presence", state.presence);
  io.many("surface", state.surface);
  io.may("corroded", state.corroded);
  io.may("appearance-defects", state.appearance_defects);
  io.may("note", state.note);
  io.many("photo", state.photos);
}

void fields(auto& io, Of<record::PieceFinding> auto& finding) {
  io.need("piece", finding.piece);
  io.may("found", finding.found);
  io.may("left", finding.left);
}

void fields(auto& io, Of<record::PlaceFinding> auto& finding) {
  io.need("place", finding.place);
  io.may("on", finding.on);
  io.may("found", finding.found);
  io.may("left", finding.left);
  io.may("note", finding.note);
}

void fields(auto& io, Of<record::Fault> auto& fault) {
  io.id(fault.id);
  io.may("piece", fault.piece);
  io.need("kind", fault.kind);
  io.need("name", fault.name);
  io.may("size", fault.size);
  io.may("on", fault.on);
  io.may("found", fault.found);
  io.may("left-on", fault.left_on);
  io.may("left", fault.as_left);
  io.may("what", fault.what);
  io.may("why-it-stays", fault.why_it_stays);
  io.many("photo", fault.photos);
}

void fields(auto& io, Of<record::TestResult> auto& result) {
  io.need("outcome", result.kind);
  io.may("reading", result.reading);
  io.may("reading-high", result.reading_high);
  io.may("words", result.words);
  io.may("verdict", result.verdict);
  io.may("load-limit", result.load_limit);
  io.may("on", result.on);
}

void fields(auto& io, Of<record::Test> auto& test) {
  io.need("what", test.what);
  io.may("unit", test.unit);
  io.may("before", test.before);
  io.may("after", test.after);
  io.may("note", test.note);
}

void fields(auto& io, Of<record::Flag> auto& flag) {
  io.may("on", flag.on);
  io.need("kind", flag.kind);
  io.need("name", flag.name);
  io.need("what", flag.what);
  io.many("piece", flag.pieces);
}

void fields(auto& io, Of<record::Look> auto& look) {
  io.need("what", look.what);
  io.may("on", look.on);
  io.may("by", look.by);
  io.need("found", look.found);
}

void fields(auto& io, Of<record::Findings> auto& findings) {
  io.may("found-on", findings.found_on);
  io.may("left-on", findings.left_on);
  io.may("by", findings.by);
  io.many("looked-for", findings.looked_for);
  io.many("piece-finding", findings.pieces);
  io.many("place-finding", findings.places);
  io.many("fault", findings.faults);
  io.many("test", findings.tests);
  io.many("flag", findings.flags);
  io.may("note", findings.note);
}

}  // namespace winchbook::recordfile
