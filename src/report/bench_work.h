#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "report/telling.h"

namespace winchbook::report {

/// So many tests of a small job are told in words; more take a table.
inline constexpr std::size_t kTestsInWords = 2;

/// Taken apart, cleaned, repaired, proved, and what lies in the bags: the bench's own work, told
/// beside its cautions. Pictures taken at the bench stand in it.
void add_bench_work(const Telling& telling, const std::vector<const record::Photo*>& pictures,
                    document::Chapter& chapter);

/// Of a small job what a few words do not tell: how it came apart, and what lies in the bags.
void add_short_work(const Telling& telling, document::Chapter& chapter);

/// What earlier stays at this bench did, in a sentence or two each.
void add_earlier_visits(const Telling& telling, document::Chapter& chapter);

/// What a test gave, in a few words: "31", or "31 s" with its unit; "not safe to test".
[[nodiscard]] std::string test_reading(const Telling& telling, const record::TestResult& result,
                                       std::string_view unit = {});

/// The same with what it must not be loaded beyond, where that was set.
[[nodiscard]] std::string limited_reading(const Telling& telling, const record::TestResult& result,
                                          std::string_view unit = {});

/// The same tests before and after.
[[nodiscard]] document::Table tests_table(const Telling& telling);

}  // namespace winchbook::report
