#include <utility>

#include "report/sections.h"
#include "report/statement.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using document::Table;
using Align = document::Column::Align;

std::string life_date(const Telling& telling, const record::LifeEvent& event) {
  if (event.date) return telling.words.date(*event.date);
  if (!event.date_as_told.empty())
    return telling.words.say("life.as-told", {{"told", event.date_as_told}});
  return telling.words.say("date.unknown");
}

/// What happened between the maker and this bench: named, never told.
Table life(const Telling& telling) {
  Table table = table_of(telling, {{"statement.life-when", {Align::words, 90}},
                                   {"statement.life-what", {Align::words, 165, true}},
                                   {"statement.life-known", {Align::words, 108}},
                                   {"statement.life-stay", {Align::words, 108}}});
  for (const record::LifeEvent& event : telling.record.life) {
    std::string known = telling.words.capitalised(how_sure(telling, event.certainty)) + ".";
    if (!event.source.empty()) known += " " + event.source;
    table.rows.push_back({{{document::plain(life_date(telling, event))},
                           {document::plain(telling.words.capitalised(event.title))},
                           {document::plain(std::move(known))},
                           {telling.text(event.keep_because)}}});
  }
  table.summary = telling.words.say("statement.life-summary");
  return table;
}

}  // namespace

std::optional<document::Chapter> tell_statement_life(const Telling& telling) {
  if (telling.record.life.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("life");
  chapter.id = "statement-life";
  chapter.stand_first = telling.counted("life.answer", telling.record.life.size());
  chapter.blocks.emplace_back(life(telling));
  return chapter;
}

}  // namespace winchbook::report
