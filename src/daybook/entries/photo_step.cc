#include "daybook/entries/photo_step.h"

#include <fmt/format.h>

#include <type_traits>
#include <variant>

namespace winchbook::daybook {

base::Result<const record::StripStep*> find_step(const record::Visit& visit,
                                                 std::string_view said) {
  if (said == "last" && !visit.strip_down.empty()) return &visit.strip_down.back();
  for (const record::StripStep& step : visit.strip_down) {
    if (step.id.text == said || std::to_string(step.number) == said) return &step;
  }
  return base::of_command(base::error(
      fmt::format("there is no step \"{}\"", said),
      visit.strip_down.empty() ? "winchbook strip enters one" : "name one by its number or id",
      "command-name"));
}

std::string in_plain_words(const record::Record& record, const record::Words& words) {
  std::string text;
  for (const record::Run& run : words.runs) {
    std::visit(
        [&](const auto& one) {
          using Kind = std::decay_t<decltype(one)>;
          if constexpr (std::is_same_v<Kind, record::PersonMention>) {
            const record::Person* person = find(record, one.person);
            const std::string* name = person == nullptr ? nullptr : told(person->name);
            text += one.words.empty() && name != nullptr ? *name : one.words;
          } else if constexpr (std::is_same_v<Kind, record::PieceMention>) {
            const record::Piece* piece = find(record, one.piece);
            text += one.words.empty() && piece != nullptr ? piece->name : one.words;
          } else if constexpr (!std::is_same_v<Kind, record::PhotoMention>) {
            text += one.words;
          }
        },
        run);
  }
  return text;
}

}  // namespace winchbook::daybook
