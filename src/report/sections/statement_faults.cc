#include <utility>

#include "record/enum_words.h"
#include "record/moments.h"
#include "report/care_words.h"
#include "report/provenance.h"
#include "report/statement.h"

namespace winchbook::report {
namespace {

using document::HalfBlock;
using document::Run;
using document::Text;
using record::Fault;

void add_words(const Telling& telling, const record::Words& words, Text& text) {
  if (words.empty()) return;
  text.parts.emplace_back(Run{" "});
  append(text, telling.text(words));
}

std::string gravity(const Telling& telling, record::Severity severity) {
  return telling.words.say("severity." + std::string(record::word_of(severity)));
}

/// The name, how grave it was and is, what it is, and why it stays.
Text fault_words(const Telling& telling, const Fault& fault) {
  const std::string name =
      fault.size ? telling.words.say("statement.fault-size",
                                     {{"name", fault.name},
                                      {"size", telling.words.measure(fault.size->value, "mm")}})
                 : fault.name;
  const std::string found = fault.found ? gravity(telling, *fault.found) : "";
  const auto standing = record::severity_at(fault, record::Moment::left);
  const std::string left = standing ? gravity(telling, *standing) : "";
  const char* form = found.empty()   ? "new"
                     : left.empty()  ? "mended"
                     : found == left ? "stays"
                                     : "changed";
  Text text = document::with_lead(
      telling.words.capitalised(name) + ",",
      telling.words.say("statement.fault", {{"form", form}, {"found", found}, {"left", left}}));
  add_words(telling, fault.what, text);
  if (standing) add_words(telling, fault.why_it_stays, text);
  return text;
}

void add_faults(const Telling& telling, std::vector<HalfBlock>& blocks) {
  const auto& faults = telling.visit.findings.faults;
  const std::size_t standing = standing_faults(telling);
  const std::string none = telling.words.say("statement.no-faults");
  if (faults.empty() && none.empty() && telling.visit.not_put_right.empty()) return;
  blocks.emplace_back(ruled_subhead(telling, "statement.faults"));
  std::string answer =
      faults.empty()
          ? none
          : telling.words.say("statement.faults-answer",
                              {{"count", standing}, {"right", faults.size() - standing}});
  if (!answer.empty()) blocks.emplace_back(note_paragraph(std::move(answer)));
  for (const bool left : {true, false}) {
    for (const Fault& fault : faults) {
      if (record::severity_at(fault, record::Moment::left).has_value() == left)
        blocks.emplace_back(note_paragraph(fault_words(telling, fault)));
    }
  }
  for (const record::Words& words : telling.visit.not_put_right) {
    Text text = document::with_lead(telling.words.say("statement.not-put-right"), "");
    add_words(telling, words, text);
    blocks.emplace_back(note_paragraph(std::move(text)));
  }
}

void add_flags(const Telling& telling, std::vector<HalfBlock>& blocks) {
  using knowledge::Matters;
  const std::vector<ToldFlag> flags =
      flags_told(telling, {Matters::use, Matters::keep, Matters::deal}, true);
  if (flags.empty()) return;
  blocks.emplace_back(ruled_subhead(telling, "statement.flags"));
  for (const ToldFlag& flag : flags) {
    blocks.emplace_back(
        document::Caution{telling.words.say(flag.legal ? "statement.legal" : "statement.hazard",
                                            {{"name", flag.name}}),
                          flag.words});
  }
}

void add_interest(const Telling& telling, std::vector<HalfBlock>& blocks) {
  blocks.emplace_back(ruled_subhead(telling, "statement.interest"));
  const record::Words& interest = telling.record.bench.own_interest;
  blocks.emplace_back(note_paragraph(
      interest.empty() ? document::plain(telling.words.say("not-entered.for-the-pen"))
                       : telling.text(interest)));
  blocks.emplace_back(note_paragraph(document::with_lead(
      telling.words.say("statement.not-a-valuation"), telling.words.say("statement.appraiser"))));
}

}  // namespace

std::vector<HalfBlock> statement_faults(const Telling& telling) {
  std::vector<HalfBlock> blocks;
  add_faults(telling, blocks);
  add_flags(telling, blocks);
  return blocks;
}

std::vector<HalfBlock> statement_custody(const Telling& telling) {
  std::vector<HalfBlock> blocks;
  if (!telling.record.custody.empty()) {
    blocks.emplace_back(ruled_subhead(telling, "statement.custody"));
    document::Notes notes;
    blocks.emplace_back(note_paragraph(provenance(telling, notes.notes)));
    blocks.emplace_back(note_paragraph(stays_at_bench(telling)));
    if (!notes.notes.empty()) blocks.emplace_back(std::move(notes));
    blocks.emplace_back(note_paragraph(provenance_key(telling)));
  }
  if (telling.edition.withheld > 0)
    blocks.emplace_back(note_paragraph(telling.words.say("statement.names-withheld")));
  add_interest(telling, blocks);
  return blocks;
}

}  // namespace winchbook::report
