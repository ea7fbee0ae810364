#include <fmt/format.h>

#include <optional>
#include <string>
#include <variant>

#include "recordfile/rules_list.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the rules speak of nothing else
using base::error_at;
using base::warning_at;

namespace {

bool is_withheld(const MaybeText& text) {
  return told(text) == nullptr;
}

}  // namespace

void custody_order(const LoadedRecord& loaded, Diagnostics& found) {
  std::optional<base::EdtfDate> last;
  for (const auto& entry : loaded.record.custody) {
    std::visit(
        [&](const auto& one) {
          if (one.from && one.until && surely_before(*one.until, *one.from)) {
            found.push_back(error_at(
                loaded.where(one.id.text),
                fmt::format("it ends {} before it begins {}", one.until->text(), one.from->text()),
                "correct one of the two dates"));
          }
          if (one.from && last && surely_before(*one.from, *last)) {
            found.push_back(error_at(
                loaded.where(one.id.text),
                fmt::format("it begins {}, after an entry that begins {}, expected earliest first",
                            one.from->text(), last->text()),
                "move it up, or correct its date"));
          }
          if (one.from) last = one.from;
        },
        entry);
  }
}

void keep_because(const LoadedRecord& loaded, Diagnostics& found) {
  for (const LifeEvent& event : loaded.record.life) {
    if (event.must_stay.empty() || !event.keep_because.empty()) continue;
    found.push_back(
        error_at(loaded.where(event.id.text),
                 fmt::format("\"{}\" has pieces that must stay, and nothing says why", event.title),
                 "write <keep-because>"));
  }
}

void story_approved(const LoadedRecord& loaded, Diagnostics& found) {
  const auto& story = loaded.record.story;
  if (!story || (story->told_by && story->approved_on)) return;
  found.push_back(warning_at(loaded.where("", "story", 0), "nobody has approved the story yet",
                             "read it to its teller, then write <told-by> and <approved-on>"));
}

void salt_drawn(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Person& person : loaded.record.people) {
    if (person.named_to == NamedTo::anyone || is_withheld(person.name) || !person.salt.empty())
      continue;
    found.push_back(warning_at(
        loaded.where(person.id.text),
        fmt::format("person \"{}\" may have to be withheld, and has no salt", person.id.text),
        "write <salt> with 32 hexadecimal digits drawn at random"));
  }
  for (const Marking& marking : loaded.record.markings) {
    const bool nobody_s = marking.whose == MarkOf::owner && !marking.person;
    if (!nobody_s || is_withheld(marking.text) || !marking.salt.empty()) continue;
    found.push_back(warning_at(
        loaded.where(marking.id.text),
        fmt::format("owner's mark \"{}\" may have to be withheld, and has no salt",
                    marking.id.text),
        "write <salt> with 32 hexadecimal digits drawn at random, or <person> with whom it names"));
  }
}

void salt_kept_secret(const LoadedRecord& loaded, Diagnostics& found) {
  const auto tell = [&](const std::string& id) {
    found.push_back(error_at(loaded.where(id),
                             fmt::format("\"{}\" is withheld, and its salt stands beside it", id),
                             "take the salt out of this edition: with it the text can be guessed"));
  };
  for (const Person& person : loaded.record.people) {
    const bool hides = is_withheld(person.name) ||
                       (person.address && is_withheld(*person.address)) ||
                       (person.contact && is_withheld(*person.contact));
    if (hides && !person.salt.empty()) tell(person.id.text);
  }
  for (const Marking& marking : loaded.record.markings) {
    if (is_withheld(marking.text) && !marking.salt.empty()) tell(marking.id.text);
  }
  for (const Photo& photo : loaded.record.photos) {
    if (photo.withheld && !photo.salt.empty()) tell(photo.id.text);
  }
}

}  // namespace winchbook::recordfile
