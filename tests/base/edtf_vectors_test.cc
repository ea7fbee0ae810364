#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "base/edtf_date.h"

using namespace winchbook::base;  // NOLINT

namespace {

using Row = std::vector<std::string>;

/// The fields of a line; fields in quotes may hold commas.
Row fields_of(const std::string& line) {
  Row row(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      row.emplace_back();
    } else {
      row.back() += c;
    }
  }
  return row;
}

std::vector<Row> rows_of(const std::string& name) {
  std::ifstream in(std::string(WINCHBOOK_SOURCE_DIR) + "/tests/base/edtf/" + name);
  REQUIRE(in);
  std::vector<Row> rows;
  std::string line;
  std::getline(in, line);  // the names of the columns
  while (std::getline(in, line))
    rows.push_back(fields_of(line));
  return rows;
}

std::string day_or_none(const std::optional<Day>& day) {
  return day ? iso_text(*day) : std::string("none");
}

std::string bounds(const EdtfDate& date) {
  return day_or_none(date.earliest()) + " " + day_or_none(date.latest());
}

/// What an oracle's end means here: without the time of day; no bound for an end that is open,
/// unknown or not reckoned.
std::string oracle_day(std::string end) {
  if (end.empty() || end == "-inf" || end == "+inf" || end == "inf" || end == "num:NaN")
    return "none";
  // npm writes six figures behind a minus.
  if (end.starts_with("-00") && end.find('-', 1) == 7) end = "-" + end.substr(3);
  return end.substr(0, end.find('T'));
}

/// What is not read: parts of level 2 that no record of a reel needs. They are refused, never
/// misread.
const std::set<std::string> kBeyond{"Y-17E7",        "Y17E7",        "1950S2",
                                    "1953S2",        "1953S3",       "Y171010000S3",
                                    "Y3388E2S3",     "Y17101E4S3",   "2001-34",
                                    "2001-25",       "2001-41",      "2001-29",
                                    "2004-06~-11",   "2004?-06-11",  "?2004-06-~11",
                                    "2004-%06-11",   "156X-12-25",   "15XX-12-25",
                                    "XXXX-12-XX",

                                    "1XXX-12",       "1984-1X",      "2004-06-~01/2004-06-~20",
                                    "2004-06-~11",   "2004-%06",     "2004-?06-?11",
                                    "2004?-06-~11",  "?2004-%06",    "2004?-%06",
                                    "2004?-~06-~04", "2011-~06-~04", "1560-XX-25",
                                    "15XX-12-XX",    "XXXX-XX-23"};

/// Where we differ from npm `edtf`, and why.
const std::map<std::string, std::string> kNotAsNpm{
    // Years of more than four digits: it reckons no bounds. Ours are those of the year.
    {"Y170000002", "170000002-01-01 170000002-12-31"},
    {"Y-170000002", "-170000002-01-01 -170000002-12-31"},
    // A day is the day of whoever wrote it; nobody's reel depends on the time zone.
    {"1985-04-12T23:20:30-04", "1985-04-12 1985-04-12"},
    // Seasons: the standard gives them no months. It takes quarters of the year, we take the
    // northern seasons; a winter is told by either of its years. A season never is a hard bound:
    // whoever dates a reel takes its ends as soft.
    {"2001-21", "2001-03-01 2001-05-31"},
    {"2001-22", "2001-06-01 2001-08-31"},
    {"2001-23", "2001-09-01 2001-11-30"},
    {"2001-24", "2001-01-01 2002-02-28"},
    // Its last member is the range's first year. By the text of the standard it is 1672.
    {"[1667,1668,1670..1672]", "1667-01-01 1672-12-31"},
    {"{1667,1668,1670..1672}", "1667-01-01 1672-12-31"},
    // It refuses a qualified decade; python-edtf and we read it. "1920~/1929~" says the same to
    // all.
    {"192X~", "1920-01-01 1929-12-31"},
};

/// Where we differ from python-edtf, and why.
const std::map<std::string, std::string> kNotAsPython{
    // An end that is not known: it adds ten years; we add nothing, since nobody knows.
    {"/2006", "none 2006-12-31"},
    {"2004-06-01/", "2004-06-01 none"},
    {"1984-06-02?/", "1984-06-02 none"},
    // A winter: it stops on 31 December; it ends in February of the year behind.
    {"2010-24", "2010-01-01 2011-02-28"},
};

/// Sets with blanks in them are no EDTF; python-edtf lets them pass.
bool has_blank(const std::string& text) {
  return text.find(' ') != std::string::npos;
}

}  // namespace

TEST_CASE("the specification's examples are read as npm edtf reads them, but where we decided") {
  int compared = 0;
  std::set<std::string> met;
  for (const Row& row : rows_of("examples.csv")) {
    REQUIRE(row.size() == 5);
    const std::string& text = row[1];
    CAPTURE(text);
    const auto date = EdtfDate::parse(text);
    if (row[0] == "-1" || kBeyond.contains(text)) {
      CHECK_FALSE(date);
      continue;
    }
    REQUIRE(date);
    ++compared;
    const std::string theirs = oracle_day(row[3]) + " " + oracle_day(row[4]);
    if (const auto decided = kNotAsNpm.find(text); decided != kNotAsNpm.end()) {
      met.insert(text);
      CHECK(bounds(*date) == decided->second);
      CHECK(bounds(*date) != theirs);  // else it is no disagreement any more
    } else {
      CHECK(row[2] == "yes");
      CHECK(bounds(*date) == theirs);
    }
    CHECK(date->text() == text);
  }
  CHECK(compared > 60);
  CHECK(met.size() == kNotAsNpm.size());
}

TEST_CASE("the examples of python-edtf are read as it reads them, but where we decided") {
  int compared = 0;
  std::set<std::string> met;
  for (const Row& row : rows_of("python_edtf.csv")) {
    REQUIRE(row.size() == 5);
    const std::string& text = row[0];
    CAPTURE(text);
    const auto date = EdtfDate::parse(text);
    if (kBeyond.contains(text) || has_blank(text)) {
      CHECK_FALSE(date);
      continue;
    }
    REQUIRE(date);
    ++compared;
    const bool one_day = row[2].empty() || (!row[3].empty() && row[4].empty());
    const std::string theirs = oracle_day(row[1]) + " " + oracle_day(one_day ? row[1] : row[2]);
    if (const auto decided = kNotAsPython.find(text); decided != kNotAsPython.end()) {
      met.insert(text);
      CHECK(bounds(*date) == decided->second);
      CHECK(bounds(*date) != theirs);
    } else {
      CHECK(bounds(*date) == theirs);
    }
  }
  CHECK(compared > 45);
  CHECK(met.size() == kNotAsPython.size());
}

TEST_CASE("what python-edtf refuses, we refuse") {
  const auto rows = rows_of("python_edtf_bad.csv");
  CHECK(rows.size() == 16);
  for (const Row& row : rows) {
    CAPTURE(row[0]);
    CHECK_FALSE(EdtfDate::parse(row[0]));
  }
}

TEST_CASE("an end that is not known and one that is open are kept apart") {
  const auto unknown = EdtfDate::parse("1985/");
  const auto open = EdtfDate::parse("1985/..");
  REQUIRE(unknown);
  REQUIRE(open);
  CHECK(unknown->members().front().to.kind == EdtfEnd::Kind::unknown);
  CHECK(open->members().front().to.kind == EdtfEnd::Kind::open);
  CHECK_FALSE(*unknown == *open);
}
