#include <doctest/doctest.h>

#include <algorithm>
#include <variant>

#include "told_reel.h"

using namespace winchbook;
using document::Document;
using record::Record;
using report_test::chapter;
using report_test::demo;
using report_test::times;
using report_test::told;
using report_test::words_of;

namespace {

base::EdtfDate date(const char* text) {
  return base::EdtfDate::parse(text).value();
}

const document::DatingChart* chart_of(const Document& document) {
  for (const document::Block& block : chapter(document, "dating")->blocks) {
    const auto* figure = std::get_if<document::ChartFigure>(&block);
    if (figure != nullptr) return std::get_if<document::DatingChart>(&figure->chart);
  }
  return nullptr;
}

record::Marking& marking(Record& record, const std::string& id) {
  return *std::find_if(record.markings.begin(), record.markings.end(),
                       [&](const record::Marking& one) { return one.id.text == id; });
}

void says(record::Marking& mark, const char* first, const char* last) {
  const auto hard = record::EndFirmness::hard;
  mark.legibility = record::Legibility::clear;
  mark.says = record::MarkSays{};
  if (first != nullptr) mark.says->not_before = record::MarkEnd{date(first), hard};
  if (last != nullptr) mark.says->not_after = record::MarkEnd{date(last), hard};
}

}  // namespace

TEST_CASE("the chapter answers first, and the chart shows window, likelihood and ranges") {
  const Document document = told(demo("skerry-40"));
  CHECK(chapter(document, "dating")->stand_first.starts_with("Most likely made in 1947 or 1948."));
  const document::DatingChart* chart = chart_of(document);
  REQUIRE(chart != nullptr);
  REQUIRE(chart->window);
  CHECK(chart->window->first == 1947);
  CHECK(chart->window->last == 1948);
  CHECK(chart->half->words == "Half the likelihood: 1947 to 1948");
  CHECK(chart->profile.size() > 2);
  CHECK(chart->conflict.empty());
}

TEST_CASE("the piece that does not belong is named in the answer, the chart and the first ledger") {
  const Document document = told(demo("sandling-tern"));
  const document::Chapter& dating = *chapter(document, "dating");
  CHECK(times(dating.stand_first, "Side cover") == 1);
  CHECK(times(words_of(dating), "Side cover: the marks disagree.") == 1);
  const document::DatingChart* chart = chart_of(document);
  REQUIRE(chart != nullptr);
  CHECK(chart->window->first == 1958);
  CHECK(std::count_if(chart->marks.begin(), chart->marks.end(), [](const auto& mark) {
          return times(mark.left_out, "does not fit") == 1;
        }) == 5);
  CHECK(times(words_of(*chapter(document, "first-ledger")), "the marks disagree") == 2);
}

TEST_CASE("a piece held to be original is proposed as not determined where its marks disagree") {
  Record record = demo("skerry-40");
  says(marking(record, "mk-patent"), "1940", "1949");
  says(marking(record, "mk-serial"), "1947", "1949");
  says(marking(record, "mk-cap"), "1960", nullptr);
  const Document document = told(record);
  CHECK(times(words_of(*chapter(document, "first-ledger")), "by its marks: not determined") == 1);
}

TEST_CASE("where nothing says which piece must go, no year is told and both ways are") {
  Record record = demo("skerry-40");
  for (record::Marking& mark : record.markings) {
    mark.says.reset();
    mark.claims.reset();
  }
  record.custody.clear();
  says(marking(record, "mk-patent"), "1930", "1935");
  says(marking(record, "mk-cap"), "1950", "1955");
  const Document document = told(record);
  const document::DatingChart* chart = chart_of(document);
  REQUIRE(chart != nullptr);
  CHECK_FALSE(chart->window);
  CHECK_FALSE(chart->half);
  CHECK(chart->profile.empty());
  CHECK(chart->conflict.starts_with("No year fits all of these."));
  CHECK(chapter(document, "dating")->stand_first == chart->conflict);
}

TEST_CASE("an engraved year that firmer marks exclude is told and not followed") {
  const Document document = told(demo("wharfinger-5"));
  const std::string words = words_of(*chapter(document, "dating"));
  CHECK(times(words, "It was not followed.") == 1);
  CHECK(chapter(document, "dating")
            ->stand_first.starts_with("Most likely made between 1895 and 1903."));
}

TEST_CASE("years that the steps of custody leave open are named as a gap") {
  Record record = demo("skerry-40");
  const auto holder = record.people.front().id;
  record::CustodyStep first;
  first.holder = holder;
  first.from = date("1948");
  first.until = date("1950");
  record::CustodyStep second = first;
  second.from = date("1951");
  second.until.reset();
  record.custody = {first, second};
  const auto custody = [&] { return words_of(*chapter(told(record), "custody")); };
  CHECK(times(custody(), "[Not known") == 0);
  std::get<record::CustodyStep>(record.custody[1]).from = date("1960");
  CHECK(times(custody(), "1948. [Not known, 1950 to 1960].") == 1);
}
