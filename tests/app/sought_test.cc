#include "app/sought.h"

#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

using winchbook::app::NameWords;
using winchbook::app::Sought;
using winchbook::app::Written;
using winchbook::recordfile::Taken;
using winchbook::recordfile::Withholding;
using Kind = Taken::Kind;

namespace {

const NameWords kWords{
    {"of", "the", "mrs", "captain", "england"}, {"rose", "young", "hill", "marsh"}, {"june"}};

struct Withheld {
  Withheld(const std::vector<std::pair<Kind, std::string>>& texts, const Sought::Seen& seen = {}) {
    for (const auto& [kind, text] : texts) {
      Taken taken;
      taken.kind = kind;
      taken.text = text;
      withholding.taken.push_back(taken);
    }
    sought.emplace(withholding, seen, kWords);
  }
  /// "certain", "in doubt" or "".
  [[nodiscard]] std::string in(const std::string& text, Written how = Written::prose) const {
    const auto find = sought->first_in(text, how);
    if (!find) return "";
    return find->certain ? "certain" : "in doubt";
  }

  Withholding withholding;
  std::optional<Sought> sought;
};

}  // namespace

TEST_CASE("a name is found as a person would write it") {
  const Withheld one({{Kind::name, "Ada Quillfeather"}});
  for (const char* text :
       {"Quillfeather had it.", "quillfeather", "QUILLFEATHER", "the Quillfeathers",
        "Quillfeather's reel", "Quillfeather’s", "the Quillfeathers’ house", "Quillfeatheren",
        "Quill-feather", "Quill\u00ADfeather", "QuillfeatherReel", "adaquillfeather",
        "Miss A. Quillfeather", "Ada", "Ada’s reel", "xquillfeatherx"}) {
    CAPTURE(text);
    CHECK(one.in(text) == "certain");
  }
  CHECK(one.in("a quill, a feather and a spool").empty());
  CHECK(one.in("a decade of adaptations").empty());
  CHECK(one.in("quillfeather-box", Written::name) == "certain");
}

TEST_CASE("accents, apostrophes and compounds do not hide it") {
  const Withheld one({{Kind::name, "Seán O'Dwyer"}, {Kind::name, "Jürgen Böhm-Gårding"}});
  for (const char* text : {"ODwyer", "O’Dwyer", "O Dwyer", "Sean", "Seán", "Juergen", "Jurgen",
                           "Boehm", "Böhms", "Bohm", "Garding", "Gaarding"}) {
    CAPTURE(text);
    CHECK(one.in(text) == "certain");
  }
}

TEST_CASE("a name that is a word is asked about where it may be one") {
  const Withheld one({{Kind::name, "Rose Young"}, {Kind::short_name, "Hill"}});
  CHECK(one.in("It was given by Rose in spring.") == "certain");
  CHECK(one.in("Given by Young in spring.") == "certain");
  CHECK(one.in("Hill brought it.") == "in doubt");
  CHECK(one.in("Rose 1951") == "in doubt");
  CHECK(one.in("Roses were painted on it.") == "in doubt");
  CHECK(one.in("a rose on the hill, and a young dog").empty());
  CHECK(one.in("rose-box", Written::name) == "in doubt");
  CHECK(one.in("Rose Young") == "certain");
}

TEST_CASE("the name of a month is one in a date, and asked about elsewhere") {
  const Withheld one({{Kind::short_name, "June"}});
  CHECK(one.in("Handed back on 12 June 2026.").empty());
  CHECK(one.in("It was given by June in spring.") == "in doubt");
  CHECK(one.in("in june").empty());
}

TEST_CASE("words that everybody may see are no find") {
  const Withheld one({{Kind::name, "Nell Corran"}, {Kind::inscription, "FERRY N.C. PURSER"}},
                     {{"Corran Reel Co."}, "The Ferry Corran"});
  CHECK(one.in("by the Corran Reel Co.").empty());
  CHECK(one.in("the Ferry reel").empty());  // the reel is called so
  CHECK(one.in("it was the Purser’s") == "certain");
  CHECK(one.in("a purser").empty());
  CHECK(one.in("Nell Corran") == "certain");
}

TEST_CASE("each part of an address, the street without its number, the code however it is spaced") {
  const Withheld one({{Kind::address, "12 Gannet Road, Tolland Quay, TQ4 7ZB, England"}});
  for (const char* text : {"12, Gannet Road", "Gannet Road", "in Gannet Rd.", "gannet road",
                           "Tolland Quay", "TQ4 7ZB", "tq47zb"}) {
    CAPTURE(text);
    CHECK(one.in(text) == "certain");
  }
  CHECK(one.in("MADE IN ENGLAND").empty());
  CHECK(one.in("the road to the quay, 12 mm").empty());
  const Withheld other({{Kind::address, "Lindenweg 5\n44871 Hinterau"}});
  CHECK(other.in("am Lindenweg") == "certain");
  CHECK(other.in("in Hinterau") == "certain");
  CHECK(other.in("44871") == "in doubt");
}

TEST_CASE("a telephone number in any grouping, with its country or without its area") {
  const Withheld one({{Kind::contact, "+44 (0)1539 720 456, or by letter"}});
  for (const char* text : {"01539 720456", "+441539720456", "0044 1539 72 04 56", "01539-720-456",
                           "1539.720.456", "720456", "tel. 720 456.", "01539/720456"}) {
    CAPTURE(text);
    CHECK(one.in(text) == "certain");
  }
  CHECK(one.in("serial 720457, patent 1,539,720").empty());
  CHECK(one.in("by letter").empty());
}

TEST_CASE("a mail address and its halves, a site, a handle") {
  const Withheld one({{Kind::contact, "aquill@gannetmail.example"},
                      {Kind::contact, "www.feathershed.example"},
                      {Kind::contact, "@quillada"}});
  for (const char* text :
       {"aquill@gannetmail.example", "write to AQUILL", "gannetmail.example", "feathershed.example",
        "https://feathershed.example/reels", "@quillada", "quillada"}) {
    CAPTURE(text);
    CHECK(one.in(text) == "certain");
  }
}

TEST_CASE("letters are counted, and not their bytes") {
  const Withheld one({{Kind::short_name, "Гус"}});
  CHECK(one.in("Августъ и гусыня").empty());  // "goose" has it inside
  CHECK(one.in("Гус привёз") == "certain");
}

TEST_CASE("scripts that part no words") {
  const Withheld one({{Kind::name, "北浦波子"}, {Kind::name, "สมชาย ใจดี"}});
  CHECK(one.in("昭和三十年北浦波子氏より") == "certain");
  CHECK(one.in("北浦氏より") == "in doubt");
  CHECK(one.in("ของสมชายให้มา") == "certain");
  CHECK(one.in("昭和三十年").empty());
}
