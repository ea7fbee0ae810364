#include "json/json.h"

#include <doctest/doctest.h>

#include "json/faults.h"

namespace winchbook::json {

TEST_CASE("an answer begins with the name of its schema and ends with a line break") {
  CHECK(answer("tray", {{"closed", true}}) ==
        "{\n  \"schema\": \"urn:winchbook:tray:1\",\n  \"closed\": true\n}\n");
}

TEST_CASE("what is not UTF-8 is told with the sign for it") {
  CHECK(answer("check", {{"record", "curlew\xff.xml"}}).find("curlew\xef\xbf\xbd.xml") !=
        std::string::npos);
}

TEST_CASE("money is an amount as text and its currency") {
  const auto amount = base::Decimal::parse("12.50");
  REQUIRE(amount);
  CHECK(money({*amount, "GBP"}).dump() == R"({"amount":"12.50","currency":"GBP"})");
  CHECK(money(90, "EUR").dump() == R"({"amount":"90.00","currency":"EUR"})");
}

TEST_CASE("a date is text, a day or EDTF, and null when it is not known") {
  CHECK(date(base::Day{1940, 1, 2}).dump() == "\"1940-01-02\"");
  const auto edtf = base::EdtfDate::parse("1948~");
  REQUIRE(edtf);
  CHECK(date(*edtf).dump() == "\"1948~\"");
  const auto day = [](const base::Day& of) { return date(of); };
  CHECK(or_null(std::optional<base::Day>(), day).is_null());
}

TEST_CASE("a fault is told with its place, its cure and whose it is; what is not known is null") {
  const base::Diagnostics faults{
      base::error_at({"record.xml", 41, 7}, "found \"x\"", "write y", "date-order"),
      base::of_command(base::error("PATH is missing"))};
  const auto told = Json::parse(faults_as_json(faults));
  CHECK(told.at("schema") == "urn:winchbook:faults:1");
  CHECK(told.at("faults").at(0).dump() ==
        R"({"severity":"error","file":"record.xml","line":41,"column":7,"message":"found \"x\"",)"
        R"("hint":"write y","rule":"date-order","of":"record"})");
  CHECK(told.at("faults").at(1).dump() ==
        R"({"severity":"error","file":null,"line":null,"column":null,)"
        R"("message":"PATH is missing","hint":null,"rule":null,"of":"command"})");
}

TEST_CASE("a range is its ends, and no text is null") {
  CHECK(range(1, 2).dump() == "[1,2]");
  CHECK(or_null(std::string()).is_null());
  CHECK(or_null(std::string("worn")) == "worn");
}

}  // namespace winchbook::json
