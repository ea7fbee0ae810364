#pragma once

#include "record/record.h"
#include "recordfile/fields_visits.h"

/// How the record stands in its file, told once for reading and for writing: for every type of
/// record/ the list of its fields in the order of the schema, each with its element's name.
///
/// `io` is a Reader, a Writer, or whatever else goes through a record. What it is told of a field:
///   id(id)                          the element's own id
///   need(name, value)               always written
///   may(name, value)                written when it says something: a text that is not empty, an
///                                   optional that holds a value, a value unlike a new one
///   may(name, value, when_left_out) written unless it is that
///   many(name, values)              an element for each
///   may_group, need_group(name, f)  an element that only holds those others that f lists
/// An id that is not an element's own is written as a reference.
namespace winchbook::recordfile {

/// The sections; those that are needed are there in every record.
void fields(auto& io, Of<record::Record> auto& record) {
  const auto of = [](const char* name, auto& values) {
    return [name, &values](auto& section) { section.many(name, values); };
  };
  io.need("bench", record.bench);
  io.need("reel", record.reel);
  io.need_group("people", of("person", record.people));
  io.may_group("custody",
               [&](auto& custody) { custody.many_of_two("held-by", "gap", record.custody); });
  io.may("story", record.story);
  io.may_group("life", of("event", record.life));
  io.need_group("places", of("place", record.places));
  io.may_group("donors", of("donor", record.donors));
  io.need_group("pieces", of("piece", record.pieces));
  io.need_group("fittings", of("fitting", record.fittings));
  io.may_group("markings", of("marking", record.markings));
  io.need_group("visits", of("visit", record.visits));
  io.may_group("photos", of("photo", record.photos));
  io.may("value", record.value);
}

}  // namespace winchbook::recordfile
