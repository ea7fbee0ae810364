#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "record/ids.h"

namespace winchbook::record {

/// What stands where something was taken out for a reader who may not see it: the digest binds what
/// was there without telling it. SHA-256 of a secret salt and the text, 64 lower-case hexadecimal
/// digits.
struct Withheld {
  std::string digest;

  friend bool operator==(const Withheld&, const Withheld&) = default;
};

/// A text that may be withheld: a name, an address, an inscription.
using MaybeText = std::variant<std::string, Withheld>;

/// The text, or null when it is withheld.
[[nodiscard]] inline const std::string* told(const MaybeText& text) {
  return std::get_if<std::string>(&text);
}

/// A person named in prose. `words` is how the sentence says the name ("Gus", "her uncle's"); empty
/// means the person's full name. A reader who may not see the name gets Person::stand_in instead.
struct PersonMention {
  PersonId person;
  std::string words;
};

/// A piece named in prose; empty words mean the piece's own name.
struct PieceMention {
  PieceId piece;
  std::string words;
};

/// A photograph pointed at; printed as its figure number.
struct PhotoMention {
  PhotoId photo;
};

/// Words set in italics: a title, a word as a word, a stress.
struct Emphasis {
  std::string words;
};

/// Plain text; white space is already folded to single spaces.
struct Plain {
  std::string words;
};

using Run = std::variant<Plain, Emphasis, PersonMention, PieceMention, PhotoMention>;

/// One sentence or a few, in one paragraph: a reason, a caption, a note. Empty when nothing was
/// written.
struct Words {
  std::vector<Run> runs;

  [[nodiscard]] bool empty() const { return runs.empty(); }
};

/// A paragraph of the story, with what stands beside it in the margin (who told it, when, a
/// document).
struct Paragraph {
  Words words;
  std::optional<Words> note;
};

using Prose = std::vector<Paragraph>;

}  // namespace winchbook::record
