#include "knowledge/recognise.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/files.h"
#include "knowledge/stamp_dates.h"
#include "knowledge/stamp_text.h"

using namespace winchbook;             // NOLINT
using namespace winchbook::knowledge;  // NOLINT

namespace {

const Marks& marks() {
  static const Marks kMarks = [] {
    auto loaded = load_marks({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
    REQUIRE(loaded);
    return std::move(loaded).value();
  }();
  return kMarks;
}

const std::vector<Maker>& makers() {
  static const std::vector<Maker> kMakers = [] {
    auto loaded = load_makers({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
    REQUIRE(loaded);
    return std::move(loaded).value();
  }();
  return kMakers;
}

std::string end_told(const std::optional<BoundEnd>& end) {
  return end ? base::iso_text(end->day) + (end->hard ? " hard" : " soft") : std::string("none");
}

std::string told(const Readings& readings) {
  std::string out;
  for (const Reading& reading : readings.readings) {
    out += std::string(winchbook::base::word_of(reading.as)) + " | " + reading.what + " | " +
           end_told(reading.bound.not_before) + " | " + end_told(reading.bound.not_after) + "\n";
  }
  for (const base::Diagnostic& fault : readings.faults)
    out += std::to_string(fault.where.column) + " [" + fault.rule + "] " + fault.message + "\n";
  return out;
}

std::string read(std::string_view text, std::string_view maker = {}) {
  return told(recognise(marks(), makers(), text, find_maker(makers(), maker)));
}

std::string read_as(ReadAs as, std::string_view text) {
  return told(recognise_as(marks(), makers(), as, text));
}

std::string assumed(ReadAs as, std::string_view text) {
  std::string out;
  for (const Reading& reading : recognise_as(marks(), makers(), as, text).readings) {
    for (const std::string& one : reading.assumed)
      out += one + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("capitals, points, accents and apostrophes make no difference to a word") {
  CHECK(folded_phrase("D. R. G. M.") == "DRGM");
  CHECK(folded_phrase("Breveté S.G.D.G.") == "BREVETE SGDG");
  CHECK(folded_phrase("Pat’d. Jul. 4-11") == "PATD JUL 4 11");
  CHECK(folded_phrase("PAT. No. 2,185,170") == "PAT NO 2185170");
  CHECK(folded_phrase("2.185.170") == "2185170");
  CHECK(folded_phrase("D101,090") == "D 101090");
  CHECK(folded_phrase("® (R) ©") == "CIRCLER CIRCLER CIRCLEC");
  CHECK(folded_phrase("CC41") == "CC41");
  CHECK(folded_phrase("") == "");
  CHECK(folded_phrase("· – /") == "");
}

TEST_CASE("patent numbers are read as a tired person types them") {
  const std::string patent =
      "us-patent | US patent 2,185,170 | 1940-01-01 hard | 1957-12-31 soft\n";
  for (const char* text : {"2,185,170", "2185170", "2 185 170", "2.185.170", "PAT. No. 2,185,170",
                           "Pat No 2185170", "U.S. PATENT 2,185,170", "pat'd 2,185,170",
                           "2,l85,17O", "2,I85,17o", "PATENT NOS. 2,185,170"}) {
    CAPTURE(text);
    CHECK(read_as(ReadAs::us_patent, text) == patent);
  }
  CHECK(read("PAT. 2,185,170") == patent);
  CHECK(assumed(ReadAs::us_patent, "2,l85,17O") == "l taken for 1, O taken for 0 in “2,l85,17O”\n");
  CHECK(assumed(ReadAs::us_patent, "2 185 170") == "“2 185 170” taken for one number\n");
  CHECK(assumed(ReadAs::us_patent, "2,185,170").empty());
}

TEST_CASE("what is no number, or one too many, is said with its place") {
  CHECK(read_as(ReadAs::us_patent, "") == "1 [stamp-number] expected a number\n");
  CHECK(read_as(ReadAs::us_patent, "PAT. PENDING").find("[stamp-number]") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent, "21,85,170").find("[stamp-number]") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent, "2,185,17").find("a figure may be missing") !=
        std::string::npos);
  CHECK(read("PAT. 21,85,170").find("6 [stamp-number]") == 0);
  CHECK(read_as(ReadAs::us_patent, "2,185,170 X").find("11 [stamp-number]") == 0);
  CHECK(read_as(ReadAs::us_patent, "0").find("[stamp-number]") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent, "-5").find("[stamp-number]") == std::string::npos);
  CHECK(read_as(ReadAs::us_patent, "DES. PAT. 101,090").find("[stamp-kind]") != std::string::npos);
  CHECK(read_as(ReadAs::gb_design, "PAT. 2,185,170").find("[stamp-kind]") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent, "999999999999999999999").find("[stamp-number]") !=
        std::string::npos);
}

TEST_CASE("designs and registered designs") {
  CHECK(read("DES. PAT. 101,090") ==
        "us-design | US design patent 101,090 | 1936-01-01 hard | 1950-12-31 soft\n");
  CHECK(read("Rd No 253914") ==
        "gb-design | GB registered design 253,914 | 1895-01-01 hard | 1910-12-31 soft\n");
  CHECK(read("REGD. DESIGN 858214") ==
        "gb-design | GB registered design 858,214 | 1949-01-01 hard | 1964-12-31 soft\n");
  CHECK(read("REGD. DESIGN 911207") ==
        "gb-design | GB registered design 911,207 | 1963-01-01 hard | 1978-12-31 soft\n");
  CHECK(read("REISSUE 12,345") == "us-reissue | US reissue 12,345 | 1838-01-01 soft | none\n");
}

TEST_CASE("printed dates are days of issue") {
  const std::string july =
      "us-patent-date | US patent of 4 July 1911 | 1911-07-04 hard | "
      "1927-04-01 soft\n";
  for (const char* text :
       {"July 4, 1911", "JULY 4 1911", "Jul. 4. 1911", "4 July 1911", "4th July 1911", "1911-07-04",
        "PAT. JULY 4, 1911", "PAT'D JULY 4,1911", "JULY 4, 19ll", "PATENTED JU1Y 4, 1911"}) {
    CAPTURE(text);
    CHECK(read_as(ReadAs::us_patent_date, text) == july);
  }
  // The term of 17 years ends before 1927.
  CHECK(read_as(ReadAs::us_patent_date, "Feb. 14, 1882").find("1899-02-14 soft") !=
        std::string::npos);
  CHECK(read_as(ReadAs::us_patent_date, "June 1, 1858").find("1879-06-01 soft") !=
        std::string::npos);
}

TEST_CASE("a year of two figures is settled by the day of the week, and said") {
  CHECK(read("PAT. JULY 4-11") ==
        "us-patent-date | US patent of 4 July 1911 | 1911-07-04 soft | 1927-04-01 soft\n");
  CHECK(assumed(ReadAs::us_patent_date, "JULY 4 '11")
            .find("the only one of them that can be a day of issue") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent_date, "7/4/1911").find("1911-07-04 soft") != std::string::npos);
  // 5 and 6 July 1911: no Tuesday in either century.
  CHECK(read_as(ReadAs::us_patent_date, "JULY 5 '11").find("[stamp-date]") != std::string::npos);
}

TEST_CASE("a date that cannot be has no year") {
  CHECK(read_as(ReadAs::us_patent_date, "30 February 1912") ==
        "1 [stamp-date] “30 February 1912”: there is no 30 February 1912: that month has 29 "
        "days\n");
  CHECK(read("PAT. FEB. 30, 1912") ==
        "6 [stamp-date] “FEB. 30, 1912”: there is no 30 February 1912: that month has 29 days\n");
  CHECK(read_as(ReadAs::us_patent_date, "July 4, 1776").find("13 July 1836") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent_date, "July 12, 1836").find("[stamp-date]") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent_date, "July 13, 1836").find("1836-07-13 hard") !=
        std::string::npos);
  CHECK(read_as(ReadAs::us_patent_date, "July 4").find("names no year") != std::string::npos);
  CHECK(read_as(ReadAs::us_patent_date, "Juneuary 4, 1911").find("[stamp-date]") !=
        std::string::npos);
}

TEST_CASE("a day on which nothing was issued is a doubt, and no end of it is hard") {
  const auto wednesday = recognise_as(marks(), makers(), ReadAs::us_patent_date, "July 5, 1911");
  CHECK(told(wednesday) ==
        "us-patent-date | US patent of 5 July 1911 | 1911-07-05 soft | 1927-04-01 soft\n");
  REQUIRE(wednesday.readings.front().warnings.size() == 1);
  CHECK(wednesday.readings.front().warnings.front() ==
        "5 July 1911 was a Wednesday, and US patents are issued on Tuesdays (4 July 1911 and 11 "
        "July 1911 were): read it again, or it is the date of something else");
  // Before 1848 other days were days of issue too: 5 September 1846 was a Saturday.
  const auto before = recognise_as(marks(), makers(), ReadAs::us_patent_date, "Sept. 5, 1846");
  CHECK(before.readings.front().warnings.empty());
  CHECK(before.readings.front().bound.not_before->hard);
  // Christmas Day of 1866 was a Tuesday.
  const auto christmas = recognise_as(marks(), makers(), ReadAs::us_patent_date, "Dec. 25, 1866");
  CHECK(christmas.readings.front().warnings.size() == 1);
}

TEST_CASE("a number and the date beside it must agree") {
  CHECK(read("PAT. 2,185,170 JAN. 2, 1940") ==
        "us-patent | US patent 2,185,170 | 1940-01-02 hard | 1957-12-31 soft\n"
        "us-patent-date | US patent of 2 January 1940 | 1940-01-02 hard | 1957-01-02 soft\n");
  CHECK(read("PAT. 2,185,170 JAN. 7, 1941") ==
        "6 [stamp-agreement] “2,185,170 JAN. 7, 1941”: US patent 2,185,170 was issued in 1940, and "
        "the date beside it is of 1941\n");
  // The first number of a year is of its first Tuesday.
  CHECK(read("PAT. 2,185,170 DEC. 3, 1940").find("[stamp-agreement]") != std::string::npos);
  CHECK(read("PAT. JULY 4, 1911 & MAR. 12, 1912") ==
        "us-patent-date | US patent of 4 July 1911 | 1911-07-04 hard | 1927-04-01 soft\n"
        "us-patent-date | US patent of 12 March 1912 | 1912-03-12 hard | 1927-04-01 soft\n");
}

TEST_CASE("British patents: with their year, or of the continuous series") {
  CHECK(read("PROV. PAT.") == "mark | “Provisional patent” | 1852-10-01 soft | 1978-05-31 soft\n");
  CHECK(read("PROV. PAT. 21480/50") ==
        "gb-patent | GB application 21,480 of 1950 | 1950-01-01 hard | none\n");
  CHECK(read("BRIT. PAT. 12345/09") ==
        "gb-patent | GB patent 12,345 of 1909 | 1909-01-01 hard | 1925-12-31 soft\n");
  CHECK(read("BRIT. PAT. 421,246") == "gb-patent | GB patent 421,246 | 1916-01-01 hard | none\n");
  CHECK(read("BRIT. PAT. 12345").find("[stamp-number]") != std::string::npos);
  // 1860 and 1960 are both possible for so low a number.
  CHECK(read("PROV. PAT. 500/60").find("[stamp-number]") != std::string::npos);
}

TEST_CASE("a number without a country can be a British one") {
  CHECK(read("PAT. 421,246") == "us-patent | US patent 421,246 | 1890-01-01 hard | none\n");
  CHECK(read("U.S. PAT. 421,246") ==
        "us-patent | US patent 421,246 | 1890-01-01 hard | 1907-12-31 soft\n");
  CHECK(read("MADE IN ENGLAND PAT. 421,246") ==
        "country | “Made in England”, “England” | 1887-01-01 soft | none\n"
        "gb-patent | GB patent 421,246 | 1916-01-01 hard | none\n");
  CHECK(read("PAT. No. 40") == "us-patent | US patent 40 | none | none\n");
  CHECK(read("CANADIAN PAT. 421,246").empty());
}

TEST_CASE("marks and countries: the longest phrase counts") {
  CHECK(read("MADE IN OCCUPIED JAPAN") ==
        "country | “Made in Occupied Japan” | 1947-02-20 hard | 1952-04-28 soft\n");
  CHECK(read("Made in U.S. Zone, Germany") ==
        "country | “Made in U.S. Zone Germany” | 1945-05-01 hard | 1949-09-30 soft\n");
  CHECK(read("WESTERN GERMANY").find("1949-05-23 hard") != std::string::npos);
  CHECK(read("D. R. G. M. 123456").find("mark | D.R.G.M. | 1891-10-01 hard | 1952-10-31 soft") ==
        0);
  CHECK(read("BREVETÉ S.G.D.G.") ==
        "mark | “Breveté S.G.D.G.” | 1844-07-05 hard | 1968-01-02 soft\n");
  CHECK(read("PAT. PENDING") == "mark | “Patent pending”, “Patent applied for” | none | none\n");
  CHECK(read("Reg. U.S. Pat. Off.").find("mark | “Reg. U.S. Pat. Off.”") == 0);
  CHECK(read("NIPPON").find("1921-09-01 soft") != std::string::npos);
  CHECK(read("JAPAN").find("| none") != std::string::npos);
}

TEST_CASE("forms of address") {
  CHECK(read("Chicago 7, Ill.") ==
        "address | zone 7 of Chicago, Ill. | 1943-05-01 soft | 1963-06-30 soft\n");
  CHECK(read("CHICAGO, ILL. 60607") == "address | ZIP code 60607 | 1963-07-01 hard | none\n");
  CHECK(read("Chicago, IL 60607-1234") ==
        "address | ZIP code 60607-1234 | 1963-07-01 hard | none\n"
        "address | state written IL | 1963-10-01 hard | none\n"
        "address | ZIP code 60607-1234 of nine figures | 1983-10-01 hard | none\n");
  // “Pa.” was written so long before.
  CHECK(read("PHILADELPHIA, PA 19106") == "address | ZIP code 19106 | 1963-07-01 hard | none\n");
  CHECK(read("LONDON E.C.1") == "address | district EC1 of London | 1917-01-01 soft | none\n");
  CHECK(read("London, S.W.").find("1857-01-01 soft") != std::string::npos);
  CHECK(read("WV1 2AB") == "address | postcode WV1 2AB | 1959-10-01 hard | none\n");
  CHECK(read("London EC1A 1BB").find("postcode") != std::string::npos);
  CHECK(read("Tel. BU 5-1212").find("1930-01-01 soft | 1983-12-31 soft") != std::string::npos);
  CHECK(read("SANDLING TERN").empty());
  CHECK(read("DUNLIN No. 2").empty());
  CHECK(read_as(ReadAs::address, "Leeds 2").find("1923-01-01 soft") != std::string::npos);
}

TEST_CASE("a maker's file is read for his own marks; names and addresses for anybody's") {
  CHECK(read("L. THACKWAY & DAUGHTER · 11 TALLY WHARF · WENDLEMOUTH") ==
        "maker | Lemuel Thackway & Daughter: name with the daughter, “L. Thackway & Daughter” | "
        "1894-01-01 soft | 1914-12-31 soft\n"
        "maker | Lemuel Thackway & Daughter: 11 Tally Wharf | 1871-01-01 soft | 1903-12-31 soft\n");
  CHECK(read("H 4417").empty());
  CHECK(read("H 4417", "Harroway Reel Works") ==
        "serial | serial number H 4417 of Harroway Reel Works | 1947-05-01 soft | 1949-12-31 "
        "soft\n");
  CHECK(read("SKERRY").empty());
  CHECK(read("SKERRY", "Harroway Reel Works").find("1938-01-01 soft") != std::string::npos);
  CHECK(read("40-T 3", "Harroway Reel Works").find("third mould") != std::string::npos);
  CHECK(read("114-C", "Vellacott Instruments").find("1960-11-18 hard") != std::string::npos);
}

TEST_CASE("owners' words, noise and long stamps say nothing and break nothing") {
  for (const char* text : {"A. MERROW · FERRY LANDING · 1948", "VII", "30", "T.V. Aug 62", "LB 26",
                           "", "   ", "\xFF\xFE", "····", "No. 40", "PAT.", "Rd", "1875"}) {
    CAPTURE(text);
    CHECK(read(text).empty());
  }
  std::string noise;
  for (int i = 0; i < 2000; ++i)
    noise += "PAT. 1,23 Rd ,,. 4- ";
  CHECK(recognise(marks(), makers(), noise).readings.size() < 10'000);
}

TEST_CASE("what nothing is known of is said, with what is near to it") {
  const auto wrong = recognise_as(marks(), makers(), ReadAs::material, "acetol");
  REQUIRE(wrong.faults.size() == 1);
  CHECK(wrong.faults.front().rule == "lookup-unknown");
  CHECK(wrong.faults.front().hint == "near to it: acetal");
  CHECK(read_as(ReadAs::fastener, "Phillips").find("1934-01-01 soft") != std::string::npos);
  CHECK(read_as(ReadAs::mark, "zork").find("[lookup-unknown]") != std::string::npos);
}
