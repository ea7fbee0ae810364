#include "photo/print_answer.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::photo {
namespace {

struct MadeWord {
  Made made;
  std::string_view word;
};
constexpr auto kMadeWords = std::to_array<MadeWord>({
    {Made::as_it_was, "as-it-was"},
    {Made::without_remarks, "without-remarks"},
    {Made::anew, "anew"},
});
constexpr auto kEndings =
    std::to_array<std::string_view>({"jpg", "png", "heic", "avif", "webp", "tif"});

/// The value behind a name at the beginning of a line.
std::optional<std::string_view> value_of(std::string_view lines, std::string_view name) {
  for (const std::string_view line : base::parts_of(lines, '\n')) {
    if (line.size() > name.size() && line.starts_with(name) && line[name.size()] == ' ') {
      return line.substr(name.size() + 1);
    }
  }
  return std::nullopt;
}

/// Pixels on a side, 1 or more; 0 when there are none.
int side_of(std::string_view lines, std::string_view name) {
  const auto text = value_of(lines, name);
  int number = 0;
  if (!text) return 0;
  const auto [end, fault] = std::from_chars(text->data(), text->data() + text->size(), number);
  const bool whole = fault == std::errc() && end == text->data() + text->size();
  return whole && number > 0 ? number : 0;
}

/// One line of printable characters, not too long.
std::string sentence(std::string_view text) {
  constexpr std::size_t kLongest = 240;
  std::string plain;
  for (const char c : text.substr(0, kLongest)) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte != 0x7F) plain += c;
  }
  return plain;
}

}  // namespace

std::string written(const PrintAnswer& answer) {
  const auto* made = std::find_if(kMadeWords.begin(), kMadeWords.end(),
                                  [&](const MadeWord& one) { return one.made == answer.made; });
  std::string lines =
      fmt::format("width {}\nheight {}\nmade {}\nending {}\ncamera-width {}\ncamera-height {}\n",
                  answer.size.width, answer.size.height, made->word, answer.ending,
                  answer.camera_size.width, answer.camera_size.height);
  if (answer.recoloured) lines += "recoloured yes\n";
  if (answer.profile_unusable) lines += "profile-unusable yes\n";
  if (answer.taken) lines += fmt::format("taken {}\n", base::iso_text(*answer.taken));
  return lines;
}

std::string written(const base::Diagnostics& refused) {
  const base::Diagnostic& first = refused.front();
  return fmt::format("refused {}\nmessage {}\nhint {}\n", first.rule, sentence(first.message),
                     sentence(first.hint));
}

std::optional<PrintAnswer> read_print_answer(std::string_view lines) {
  PrintAnswer answer;
  answer.size = {side_of(lines, "width"), side_of(lines, "height")};
  answer.camera_size = {side_of(lines, "camera-width"), side_of(lines, "camera-height")};
  const auto word = value_of(lines, "made");
  const auto* made = std::find_if(kMadeWords.begin(), kMadeWords.end(),
                                  [&](const MadeWord& one) { return one.word == word; });
  const auto ending = value_of(lines, "ending");
  if (made == kMadeWords.end() || !ending || answer.size.width == 0 || answer.size.height == 0 ||
      std::find(kEndings.begin(), kEndings.end(), *ending) == kEndings.end()) {
    return std::nullopt;
  }
  answer.made = made->made;
  answer.ending = *ending;
  answer.recoloured = value_of(lines, "recoloured").has_value();
  answer.profile_unusable = value_of(lines, "profile-unusable").has_value();
  if (const auto taken = value_of(lines, "taken")) {
    const auto day = base::parse_day(*taken);
    if (!day) return std::nullopt;
    answer.taken = *day;
  }
  return answer;
}

std::optional<base::Diagnostic> read_refusal(std::string_view lines) {
  const auto rule = value_of(lines, "refused");
  const auto message = value_of(lines, "message");
  const auto hint = value_of(lines, "hint");
  const bool known =
      rule && rule->starts_with("photo-") &&
      rule->find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos;
  if (!known || !message || message->empty()) return std::nullopt;
  return base::error(sentence(*message), sentence(hint.value_or("")), std::string(*rule));
}

}  // namespace winchbook::photo
