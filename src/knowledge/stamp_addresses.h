#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "knowledge/stamp_text.h"

namespace winchbook::knowledge {

/// A form of address that stands in a stamp.
struct AddressForm {
  std::string_view mark;  ///< the word of its row in marks.xml
  std::size_t from = 0;   ///< words
  std::size_t to = 0;
  std::string told;                  ///< "zone 7 of Chicago, Illinois"
  std::vector<std::string> assumed;  ///< what was taken for what
};

/// The forms of address that begin at a word: "Chicago 7, Ill.", "Chicago, IL 60607-1234",
/// "London E.C.1", "WV1 2AB", "BU 5-1212", "D-7290". With `asked`, somebody says that it is an
/// address, and a town with a number alone counts as one.
[[nodiscard]] std::vector<AddressForm> addresses_at(const std::vector<StampWord>& words,
                                                    std::size_t at, std::string_view text,
                                                    bool asked);

}  // namespace winchbook::knowledge
