#include <doctest/doctest.h>

#include <string>

#include "told_reel.h"

using namespace winchbook;

TEST_CASE("no value is told, and no course weighed, unless somebody reckoned it") {
  const record::Record record = report_test::demo("skerry-40");
  const auto with = [](const std::string& sections) {
    return "<template xmlns=\"urn:winchbook:template:1\" document=\"keepsake\" "
           "style=\"house-style.xml\">" +
           sections;
  };
  for (const std::string section :
       {R"(<section id="value"/></template>)", R"(<section id="value-sales"/></template>)",
        R"(<section id="value-note"/></template>)", R"(<section id="value-limits"/></template>)"}) {
    CHECK(report_test::chapters(report_test::told(record, with(section))).empty());
  }
  const auto advice = report_test::told(record, with("<section id=\"advice\"/></template>"));
  const std::string words = report_test::words_of(*report_test::chapter(advice, "advice"));
  CHECK(report_test::times(words, "The same courses, weighed") == 0);
}
