#include "knowledge/stamp_addresses.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

#include "base/words_of_text.h"

namespace winchbook::knowledge {
namespace {

/// A state of the United States: its postal code of 1963, its name, how it was shortened before.
struct State {
  std::string_view code;
  std::string_view name;
  std::string_view before;  ///< with "|" between
};

constexpr std::array kStates{
    State{"AL", "ALABAMA", "ALA"},
    State{"AK", "ALASKA", "ALAS"},
    State{"AZ", "ARIZONA", "ARIZ"},
    State{"AR", "ARKANSAS", "ARK"},
    State{"CA", "CALIFORNIA", "CAL|CALIF"},
    State{"CO", "COLORADO", "COLO|COL"},
    State{"CT", "CONNECTICUT", "CONN|CT"},
    State{"DE", "DELAWARE", "DEL"},
    State{"DC", "DISTRICT OF COLUMBIA", "DC|D C"},
    State{"FL", "FLORIDA", "FLA"},
    State{"GA", "GEORGIA", "GA"},
    State{"HI", "HAWAII", ""},
    State{"ID", "IDAHO", "IDA"},
    State{"IL", "ILLINOIS", "ILL|ILLS"},
    State{"IN", "INDIANA", "IND"},
    State{"IA", "IOWA", "IA"},
    State{"KS", "KANSAS", "KAN|KANS|KAS"},
    State{"KY", "KENTUCKY", "KY|KEN"},
    State{"LA", "LOUISIANA", "LA"},
    State{"ME", "MAINE", "ME"},
    State{"MD", "MARYLAND", "MD"},
    State{"MA", "MASSACHUSETTS", "MASS"},
    State{"MI", "MICHIGAN", "MICH"},
    State{"MN", "MINNESOTA", "MINN"},
    State{"MS", "MISSISSIPPI", "MISS"},
    State{"MO", "MISSOURI", "MO"},
    State{"MT", "MONTANA", "MONT"},
    State{"NE", "NEBRASKA", "NEB|NEBR"},
    State{"NV", "NEVADA", "NEV"},
    State{"NH", "NEW HAMPSHIRE", "NH|N H"},
    State{"NJ", "NEW JERSEY", "NJ|N J"},
    State{"NM", "NEW MEXICO", "NM|N M|N MEX"},
    State{"NY", "NEW YORK", "NY|N Y"},
    State{"NC", "NORTH CAROLINA", "NC|N C"},
    State{"ND", "NORTH DAKOTA", "ND|N D|N DAK"},
    State{"OH", "OHIO", "O"},
    State{"OK", "OKLAHOMA", "OKLA"},
    State{"OR", "OREGON", "ORE|OREG"},
    State{"PA", "PENNSYLVANIA", "PA|PENNA"},
    State{"RI", "RHODE ISLAND", "RI|R I"},
    State{"SC", "SOUTH CAROLINA", "SC|S C"},
    State{"SD", "SOUTH DAKOTA", "SD|S D|S DAK"},
    State{"TN", "TENNESSEE", "TENN"},
    State{"TX", "TEXAS", "TEX"},
    State{"UT", "UTAH", ""},
    State{"VT", "VERMONT", "VT"},
    State{"VA", "VIRGINIA", "VA"},
    State{"WA", "WASHINGTON", "WASH"},
    State{"WV", "WEST VIRGINIA", "W VA|WVA"},
    State{"WI", "WISCONSIN", "WIS|WISC"},
    State{"WY", "WYOMING", "WYO"},
};

constexpr std::array<std::string_view, 10> kLondon{"E", "EC", "N",  "NW", "NE",
                                                   "S", "SE", "SW", "W",  "WC"};

constexpr std::int64_t kMostDistrict = 28;

/// A state that stands at a word.
struct StateRead {
  const State* state = nullptr;
  std::size_t words = 0;
  bool new_code = false;  ///< two letters that no way before 1963 used
};

bool is_way(std::string_view ways, std::string_view text) {
  const auto all = base::parts_of(ways, '|');
  return std::find(all.begin(), all.end(), text) != all.end();
}

/// Reads the forms at one place.
class AddressReading {
 public:
  AddressReading(const std::vector<StampWord>& words, std::size_t at, std::string_view text,
                 bool asked)
      : words_(words), at_(at), text_(text), asked_(asked) {}

  std::vector<AddressForm> read() {
    if (london() || town_with_number() || state_with_zip() || postcode() || telephone() ||
        german()) {
      return std::move(found_);
    }
    return {};
  }

 private:
  bool has(std::size_t at) const { return at < words_.size(); }

  bool is_name(std::size_t at) const {
    return has(at) && !words_[at].number && words_[at].folded.size() > 2 &&
           base::is_capitals(words_[at].folded);
  }

  const StampNumber* number(std::size_t at, std::size_t least, std::size_t most) const {
    if (!has(at) || !words_[at].number || words_[at].number->grouped) return nullptr;
    const StampNumber& number = *words_[at].number;
    return number.digits >= least && number.digits <= most ? &number : nullptr;
  }

  std::string typed(std::size_t from, std::size_t to) const {
    return as_typed(text_, words_, from, to);
  }

  /// With the full stop of a shortened word: "Ill."
  std::string shortened(std::size_t from, std::size_t to) const {
    const std::size_t end = words_[to - 1].end;
    return typed(from, to) + (end < text_.size() && text_[end] == '.' ? "." : "");
  }

  AddressForm& keep(std::string_view mark, std::size_t to, std::string told) {
    found_.push_back({mark, at_, to, std::move(told), {}});
    for (std::size_t i = at_; i < to; ++i) {
      if (words_[i].number && !words_[i].number->assumed.empty())
        found_.back().assumed.push_back(words_[i].number->assumed);
    }
    return found_.back();
  }

  StateRead state(std::size_t at) const {
    for (const State& one : kStates) {
      if (const std::size_t words = phrase_at(words_, at, one.name)) return {&one, words, false};
    }
    if (!has(at)) return {};
    if (has(at + 1)) {
      const std::string two = words_[at].folded + " " + words_[at + 1].folded;
      for (const State& one : kStates) {
        if (is_way(one.before, two)) return {&one, 2, false};
      }
    }
    for (const State& one : kStates) {
      if (is_way(one.before, words_[at].folded)) return {&one, 1, false};
      if (one.code == words_[at].folded && typed(at, at + 1).size() == 2) return {&one, 1, true};
    }
    return {};
  }

  /// "E.C.1", "S.W. 7", "W", "EC4A" behind LONDON.
  bool london() {
    if (!has(at_) || words_[at_].folded != "LONDON" || !has(at_ + 1)) return false;
    std::size_t to = at_ + 1;
    std::string letters;
    while (has(to) && words_[to].folded.size() <= 2 && !words_[to].number && letters.size() < 2 &&
           std::isupper(static_cast<unsigned char>(words_[to].folded[0])) != 0)
      letters += words_[to++].folded;
    std::string figures;
    const std::size_t cut = letters.find_first_of("0123456789");
    if (cut != std::string::npos) {
      figures = letters.substr(cut);
      letters.resize(cut);
    }
    if (std::find(kLondon.begin(), kLondon.end(), letters) == kLondon.end()) return false;
    if (has(to) && is_inward(words_[to].folded)) return postcode_from(to - 1);
    const StampNumber* district = figures.empty() ? number(to, 1, 2) : nullptr;
    if (figures.empty() && district == nullptr) {
      keep("london-district", to, fmt::format("district {} of London, without a number", letters));
      return true;
    }
    if (district != nullptr) {
      if (district->value < 1 || district->value > kMostDistrict) return false;
      figures = std::to_string(district->value);
      ++to;
    }
    keep("london-numbered", to, fmt::format("district {}{} of London", letters, figures));
    return true;
  }

  /// "Chicago 7, Ill."; with `asked` also a town and a number alone.
  bool town_with_number() {
    if (!is_name(at_)) return false;
    const StampNumber* zone = number(at_ + 1, 1, 2);
    if (zone == nullptr || zone->value == 0) return false;
    const StateRead where = state(at_ + 2);
    if (where.state != nullptr) {
      keep("us-zone", at_ + 2 + where.words,
           fmt::format("zone {} of {}, {}", zone->value, typed(at_, at_ + 1),
                       shortened(at_ + 2, at_ + 2 + where.words)));
      return true;
    }
    if (!asked_ || at_ + 2 != words_.size()) return false;
    keep("uk-town-district", at_ + 2,
         fmt::format("district {} of {}", zone->value, typed(at_, at_ + 1)))
        .assumed.emplace_back(
            "taken for a British town: one of the United States would name a state");
    return true;
  }

  /// "Ill. 60607", "IL 60607-1234".
  bool state_with_zip() {
    const StateRead where = state(at_);
    if (where.state == nullptr) return false;
    const std::size_t zip = at_ + where.words;
    if (number(zip, 5, 5) == nullptr) return false;
    const bool nine = number(zip + 1, 4, 4) != nullptr && words_[zip + 1].gap == "-";
    const std::size_t to = zip + (nine ? 2 : 1);
    keep("us-zip", to, fmt::format("ZIP code {}", typed(zip, to)));
    if (where.new_code)
      keep("us-state-2", to, fmt::format("state written {}", typed(at_, at_ + 1)));
    if (nine) keep("us-zip-4", to, fmt::format("ZIP code {} of nine figures", typed(zip, to)));
    return true;
  }

  static bool is_letter(char c) { return c >= 'A' && c <= 'Z'; }
  static bool is_figure(char c) { return c >= '0' && c <= '9'; }

  /// "2AB"
  static bool is_inward(std::string_view word) {
    return word.size() == 3 && is_figure(word[0]) && is_letter(word[1]) && is_letter(word[2]);
  }

  /// "W1", "WV1", "SW1A", "N22"
  static bool is_outward(std::string_view word) {
    std::size_t at = 0;
    while (at < word.size() && at < 2 && is_letter(word[at]))
      ++at;
    if (at == 0 || at == word.size() || !is_figure(word[at])) return false;
    return word.size() - at == 1 ||
           (word.size() - at == 2 && (is_figure(word[at + 1]) || is_letter(word[at + 1])));
  }

  bool postcode_from(std::size_t outward) {
    keep("uk-postcode", outward + 2, fmt::format("postcode {}", typed(outward, outward + 2)));
    return true;
  }

  bool postcode() {
    if (!has(at_ + 1) || words_[at_].number || words_[at_ + 1].gap != " ") return false;
    return is_outward(words_[at_].folded) && is_inward(words_[at_ + 1].folded) &&
           postcode_from(at_);
  }

  /// "BU 5-1212", "BU5-1212", "(312) 555-1212".
  bool telephone() {
    if (const StampNumber* area = number(at_, 3, 3);
        area != nullptr && number(at_ + 1, 3, 3) != nullptr && number(at_ + 2, 4, 4) != nullptr &&
        words_[at_ + 2].gap == "-") {
      keep("us-area-code", at_ + 3, fmt::format("area code {}", area->value));
      return true;
    }
    if (!has(at_) || words_[at_].number) return false;
    const std::string& exchange = words_[at_].folded;
    if (exchange == "NO" || exchange == "RD" || exchange == "RE") return false;
    const bool split = exchange.size() == 2 && is_letter(exchange[0]) && is_letter(exchange[1]) &&
                       number(at_ + 1, 1, 1) != nullptr;
    const bool joined = exchange.size() == 3 && is_letter(exchange[0]) && is_letter(exchange[1]) &&
                        is_figure(exchange[2]);
    const std::size_t line = at_ + (split ? 2 : 1);
    if ((!split && !joined) || number(line, 4, 4) == nullptr || words_[line].gap != "-")
      return false;
    keep("us-phone-letters", line + 1, fmt::format("telephone number {}", typed(at_, line + 1)));
    return true;
  }

  /// "D-7290", "W-7290", "D-72250", "(22a)".
  bool german() {
    if (!has(at_)) return false;
    const std::string& word = words_[at_].folded;
    if (word == "D" || word == "W" || word == "O") {
      const bool hyphen = has(at_ + 1) && words_[at_ + 1].gap == "-";
      if (hyphen && number(at_ + 1, 4, 4) != nullptr) {
        keep("de-plz-4", at_ + 2, fmt::format("postal code {}", typed(at_, at_ + 2)));
        return true;
      }
      if (hyphen && word == "D" && number(at_ + 1, 5, 5) != nullptr) {
        keep("de-plz-5", at_ + 2, fmt::format("postal code {}", typed(at_, at_ + 2)));
        return true;
      }
    }
    const bool lettered = word.size() >= 2 && word.size() <= 3 && is_figure(word[0]) &&
                          (word.back() == 'A' || word.back() == 'B');
    if (!asked_ || !lettered || words_[at_].gap.find('(') == std::string::npos) return false;
    keep("de-plz-2", at_ + 1, fmt::format("postal code {}", typed(at_, at_ + 1)));
    return true;
  }

  const std::vector<StampWord>& words_;
  std::size_t at_;
  std::string_view text_;
  bool asked_;
  std::vector<AddressForm> found_;
};

}  // namespace

std::vector<AddressForm> addresses_at(const std::vector<StampWord>& words, std::size_t at,
                                      std::string_view text, bool asked) {
  return AddressReading(words, at, text, asked).read();
}

}  // namespace winchbook::knowledge
