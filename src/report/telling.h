#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "assess/advice/advice.h"
#include "assess/assessment.h"
#include "assess/fitting/recorded.h"
#include "base/ratio.h"
#include "document/document.h"
#include "record/enum_words.h"
#include "record/record.h"
#include "report/pictures.h"
#include "report/worth.h"
#include "words/catalogue.h"

namespace winchbook::report {

/// What the seal says of one issue of one document.
struct Edition {
  std::string document;  ///< "keepsake"
  int number = 1;
  base::Day date;
  std::string code;                       ///< "K7QM 4XT2 9DHW"
  std::string fingerprint;                ///< 64 hexadecimal digits
  std::vector<std::string> earlier = {};  ///< codes of earlier editions, earliest first
  std::size_t withheld = 0;               ///< texts and photographs withheld from its reader
  std::string withheld_root = {};         ///< 64 hexadecimal digits that bind them; empty: none
  std::string unaccounted = {};           ///< the reason for issuing with an open tray; empty: none
  std::string reel_code = {};             ///< by which tags and bags name the reel: "7QM4 XT29"
  record::Reader reader = record::Reader::owner;  ///< for whom it is written
};

/// What the program saw in a photograph's file besides what the record says of it.
struct PhotographFacts {
  bool on_its_side = false;  ///< stored turned by a quarter: width and height change places
};
using PhotographFactsById = std::map<record::PhotoId, PhotographFacts>;

/// What every chapter is told from, and the few ways of turning the record's words into a
/// document's.
struct Telling {
  const record::Record& record;
  const record::Visit& visit;  ///< the stay that is told: the last
  const assess::Assessment& assessment;
  const words::Catalogue& words;
  const PicturePlan& pictures;
  const Edition& edition;
  const PhotographFactsById& photograph_facts;
  const Worth* worth = nullptr;                         ///< null: no value was asked for
  const assess::advice::Finding* courses = nullptr;     ///< null: the courses were not weighed
  const assess::fitting::Recorded* recorded = nullptr;  ///< null: drag and line were not asked for
  bool nameless = false;  ///< nobody is named: everybody is told by the words that stand in

  /// The bench's words with names, figure numbers and links set in.
  [[nodiscard]] document::Text text(const record::Words& words) const;
  /// The same as plain words.
  [[nodiscard]] std::string plain(const record::Words& words) const;
  /// A margin note: words that begin with emphasis carry it as a bold lead.
  [[nodiscard]] document::Text note(const record::Words& words) const;
  /// The full name, or what stands in for it.
  [[nodiscard]] std::string name(const record::PersonId& id) const;
  /// The short name where there is one.
  [[nodiscard]] std::string short_name(const record::PersonId& id) const;
  /// A message that turns on {count} and may say it in words as {number}, "Seven".
  [[nodiscard]] std::string counted(std::string_view key, std::size_t count) const;
  /// A share of a hundred in words: "62", or "62 to 70".
  [[nodiscard]] std::string hundredths(const base::RatioRange& share) const;
  /// Who looked and when, of the visit's findings: a message with {name}, {found} and {left}; empty
  /// when the record does not say.
  [[nodiscard]] std::string judged(std::string_view key) const;
  [[nodiscard]] std::string piece_name(const record::PieceId& id) const;

  [[nodiscard]] document::Photograph photograph(const record::Photo& photo) const;
  /// With its number, its sign by stage, and "what, date, scale" under it.
  [[nodiscard]] document::Figure figure(const record::Photo& photo, document::Width width) const;

  [[nodiscard]] document::Caution caution(const record::Caution& caution) const;
  /// Paragraphs with their margin notes; the first in `first` manner.
  [[nodiscard]] std::vector<document::Block> paragraphs(const record::Prose& prose,
                                                        document::ParagraphManner first) const;
  /// One reading paragraph of the bench's words.
  [[nodiscard]] document::Paragraph paragraph(const record::Words& words) const;
  /// One reading paragraph of the program's words.
  [[nodiscard]] document::Paragraph sentence(std::string words) const;
  /// A chapter with the title and eyebrow of the messages "ID.title" and "ID.eyebrow".
  [[nodiscard]] document::Chapter chapter(std::string_view id) const;
};

/// Joins with a space, leaving out what is empty.
[[nodiscard]] std::string joined(const std::vector<std::string>& sentences);

}  // namespace winchbook::report
