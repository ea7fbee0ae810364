#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "record/record.h"

namespace winchbook::report {

/// As found at the left, as left at the right; either may be missing.
struct PairOfPictures {
  const record::Photo* found = nullptr;
  const record::Photo* left = nullptr;
};

/// Which photograph stands in which chapter, and its number: one run through the whole document.
/// The cover and the small pictures of parts carry no number.
struct PicturePlan {
  const record::Photo* cover = nullptr;
  std::map<std::string, std::vector<const record::Photo*>, std::less<>> in_section;
  std::vector<PairOfPictures> pairs;
  std::map<record::PhotoId, int> numbers;

  [[nodiscard]] const std::vector<const record::Photo*>& of(std::string_view section) const;
  /// 0 for a photograph that carries none.
  [[nodiscard]] int number(const record::PhotoId& id) const;
};

/// Shares the photographs of the record out among the chapters named, in their order. What no
/// chapter takes stands in "other-photographs", if the document has it.
[[nodiscard]] PicturePlan plan_pictures(const record::Record& record, const record::Visit& visit,
                                        const std::vector<std::string>& sections);

}  // namespace winchbook::report
