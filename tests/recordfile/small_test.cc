#include <doctest/doctest.h>
#include <iostream>
#include "recordfile/record_file.h"
using namespace winchbook;
TEST_CASE("the small record is read") {
  base::RealFiles files;
  const auto r = recordfile::read(files, WINCHBOOK_SOURCE_DIR "/tests/recordfile/records/small.xml", WINCHBOOK_SOURCE_DIR "/schemas");
  if (!r) for (auto& d : r.faults()) std::cout << base::to_string(d);
  REQUIRE(r);
  for (auto& d : r->warnings) std::cout << base::to_string(d);
  CHECK(r->warnings.empty());
}
