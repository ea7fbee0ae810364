#pragma once

#include <string>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// A reel, or a shop's stock, that gives parts.
struct DonorRequest {
  std::string id;    ///< empty: made from the name
  std::string name;  ///< "a broken Skerry No. 30"
  bool same_maker = false;
  std::string note;
  std::string acquired;  ///< EDTF
  std::string cost;      ///< "45.00 GBP"
};

/// Adds the donor, so that parts can be fitted from it. Error: there is one of that name.
[[nodiscard]] Change donor(DonorRequest request);

/// Adds one to the donors of a draft and gives the id. Error: something has the id already.
[[nodiscard]] base::Result<std::string> add_donor(Draft& draft, const DonorRequest& request);

}  // namespace winchbook::daybook
