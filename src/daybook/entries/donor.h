#pragma once

#include <optional>
#include <string>

#include "base/decimal.h"
#include "daybook/entry.h"

namespace winchbook::daybook {

/// A reel, or a shop's stock, that gives parts; acquired on the day.
struct DonorRequest : Entry {
  std::string id;    ///< empty: made from the name
  std::string name;  ///< "a broken Skerry No. 30"
  bool same_maker = false;
  std::string note;
  std::optional<base::Money> cost;
};

/// Adds the donor, so that parts can be fitted from it. Error: there is one of that name.
[[nodiscard]] base::Result<Said> donor(const DonorRequest& request, Draft& draft);

/// Adds one to the donors of a draft and gives the id. Error: something has the id already.
[[nodiscard]] base::Result<std::string> add_donor(Draft& draft, const DonorRequest& request);

[[nodiscard]] forms::Job donor_job();

}  // namespace winchbook::daybook
