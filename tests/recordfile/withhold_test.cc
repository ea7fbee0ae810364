#include "recordfile/withhold.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "recordfile/small_record.h"

using namespace winchbook;  // NOLINT
using record::Reader;
using recordfile::Taken;

namespace {

constexpr const char* kSalt = "5f0c9a3be1d24c7780aa61b2c3d4e5f6";

recordfile::LoadedRecord loaded(const std::string& bytes) {
  auto read = recordfile::read_bytes("record.xml", bytes, record_schema());
  if (!read) FAIL(to_string(read.faults().front()));
  return std::move(read).value();
}

recordfile::Withholding withheld(const std::vector<Edit>& edits, Reader reader = Reader::stranger) {
  auto done = recordfile::withhold(loaded(edited(edits)), reader);
  if (!done) FAIL(to_string(done.faults().front()));
  return std::move(done).value();
}

std::string refused(const std::vector<Edit>& edits, Reader reader = Reader::stranger) {
  const auto done = recordfile::withhold(loaded(edited(edits)), reader);
  REQUIRE_FALSE(done);
  std::string out;
  for (const base::Diagnostic& fault : done.faults())
    out += to_string(fault);
  return out;
}

bool holds(std::string_view text, std::string_view words) {
  return text.find(words) != std::string_view::npos;
}

/// The digest that stands for a text; empty when it was not taken.
std::string digest_of(const recordfile::Withholding& withholding, std::string_view text) {
  for (const Taken& taken : withholding.taken) {
    if (taken.text == text) return taken.digest;
  }
  return "";
}

/// Put behind the stamped mark: an owner's engraving, with what `more` says of it.
Edit engraving(const std::string& more) {
  return {"    </marking>\n  </markings>",
          "    </marking>\n    <marking id=\"mk-owner\">\n      <piece ref=\"foot\"/>\n"
          "      <text>N. MERROW\n        LANDING</text>\n      <method>engraved</method>\n"
          "      <whose>owner</whose>\n      <state>as-struck</state>\n"
          "      <legibility>clear</legibility>\n" +
              more + "    </marking>\n  </markings>"};
}

}  // namespace

TEST_CASE("the owner's edition is the record, byte for byte") {
  const auto done = withheld({{"<people>", "<!-- a remark --><people>"}}, Reader::owner);
  CHECK(done.bytes == edited({{"<people>", "<!-- a remark --><people>"}}));
  CHECK(done.taken.empty());
  CHECK(done.digests.empty());
}

TEST_CASE("a name, a short name, an address and a contact give way to their digests") {
  const auto done = withheld({{"<stand-in>the owner</stand-in>",
                               "<stand-in>the owner</stand-in><who>a purser</who>"
                               "<address>2 Ferry\n  Row</address><contact>by letter</contact>"
                               "<lived>1990/</lived>"}});
  // Reckoned with: printf '%s%s' 5f0c9a3be1d24c7780aa61b2c3d4e5f6 'Nell Merrow' | sha256sum
  CHECK(digest_of(done, "Nell Merrow") ==
        "61a0a96520c6a6dbf735d7e16149f0ab788351a43319b35764a2f154929ea6fc");
  CHECK(digest_of(done, "2 Ferry Row") ==
        "5a4247d790c2e9e62ee1a3805856071ec0e04d284a60f597d75cbf32634db029");
  CHECK(digest_of(done, "by letter").size() == 64);
  CHECK(holds(done.bytes,
              "<name><withheld>" + digest_of(done, "Nell Merrow") + "</withheld></name>"));
  for (const char* words : {"Nell", "Merrow", "Ferry", "letter", "purser", "1990/", kSalt})
    CHECK_FALSE(holds(done.bytes, words));
  CHECK(holds(done.bytes, "<stand-in>the owner</stand-in>"));
  CHECK(holds(done.bytes, "Ines Thornbury"));
  const auto read = loaded(done.bytes);
  CHECK(record::told(read.record.people[1].name) == nullptr);
  CHECK(read.record.people[1].short_name.empty());
}

TEST_CASE("an insurer sees those who are named to insurers, a stranger those named to anyone") {
  const std::vector<Edit> insurer{{"<named-to>owner", "<named-to>insurer"}};
  CHECK(holds(withheld(insurer, Reader::insurer).bytes, "Nell Merrow"));
  CHECK_FALSE(holds(withheld(insurer).bytes, "Merrow"));
  const std::vector<Edit> anyone{{"<named-to>owner", "<named-to>anyone"}};
  const auto done = withheld(anyone);
  CHECK(holds(done.bytes, "Nell Merrow"));
  CHECK(done.taken.empty());
}

TEST_CASE("a mention in a sentence gives way with its person, the sentence stays") {
  const auto done = withheld({{"Four teeth were half gone.",
                               "Four teeth were gone, <person ref=\"nell\">Nell</person> says."}});
  CHECK(holds(done.bytes, "gone, <person ref=\"person-2\"><withheld>" + digest_of(done, "Nell") +
                              "</withheld></person> says."));
  // An empty mention has nothing to withhold: the stand-in is printed.
  CHECK(holds(withheld({{"half gone.", "gone, says <person ref=\"nell\"/>."}}).bytes,
              "says <person ref=\"person-2\"/>."));
}

TEST_CASE("ids that tell a name are numbered, and their references with them") {
  const auto done = withheld({{"id=\"pl-foot\"", "id=\"Nell-s.foot\""},
                              {"<place ref=\"pl-foot\"/>", "<place ref='Nell-s.foot' />"}});
  CHECK(holds(done.bytes, "<place id=\"place-1\">"));
  CHECK(holds(done.bytes, "<place ref='place-1' />"));
  CHECK(holds(done.bytes, "<holder ref=\"person-2\"/>"));
  CHECK(holds(done.bytes, "<person id=\"ines\">"));
  // A number that is taken already is not given twice.
  const auto twice = withheld({{"id=\"ines\"", "id=\"person-2\""},
                               {"ref=\"ines\"", "ref=\"person-2\""},
                               {"ref=\"ines\"", "ref=\"person-2\""},
                               {"ref=\"ines\"", "ref=\"person-2\""},
                               {"ref=\"ines\"", "ref=\"person-2\""}});
  CHECK(loaded(twice.bytes).record.people[1].id.text == "person-2-x");
}

TEST_CASE("the story, remarks, instructions and foreign notes are left out with their lines") {
  const auto done =
      withheld({{"  <places>\n", "  <!-- Nell's places -->\n  <places>\n"},
                {"<places>\n", "<places>\n    <?remark nell?>\n"},
                {"  </people>", "    <x:note xmlns:x=\"urn:x\">Nell</x:note>\n  </people>"}});
  CHECK_FALSE(holds(done.bytes, "Nell"));
  CHECK_FALSE(holds(done.bytes, "nell"));
  CHECK_FALSE(holds(done.bytes, "biscuit"));
  CHECK(holds(done.bytes, "  </custody>\n  <places>\n    <place id=\"pl-foot\">"));
  CHECK(holds(done.bytes, "    </person>\n  </people>\n"));
}

TEST_CASE("an inscription goes with the person it names, an owner's without one with the owner") {
  const std::string salt = "<salt>00112233445566778899aabbccddeeff</salt>\n";
  const auto named =
      withheld({engraving("<person ref=\"nell\"/>\n<claims>1948</claims>\n" + salt)});
  // Reckoned with: printf '%s%s' 00112233445566778899aabbccddeeff "$(printf 'N. MERROW\nLANDING')"
  CHECK(digest_of(named, "N. MERROW\nLANDING") ==
        "29fd1680086b84cb3d4a82549f2023e25be2b37f23028fe0a2fa8358348573aa");
  CHECK_FALSE(holds(named.bytes, "MERROW"));
  CHECK_FALSE(holds(named.bytes, "0011223344"));
  CHECK(holds(named.bytes, "<claims>1948</claims>"));

  CHECK_FALSE(holds(withheld({engraving(salt)}).bytes, "MERROW"));
  CHECK_FALSE(holds(withheld({engraving(salt)}, Reader::insurer).bytes, "MERROW"));
  CHECK(holds(withheld({engraving("<person ref=\"ines\"/>\n" + salt)}).bytes, "MERROW"));
  // Without a salt of its own it takes that of the person it names.
  const auto lent = withheld({engraving("<person ref=\"nell\"/>\n")});
  CHECK(digest_of(lent, "N. MERROW\nLANDING").size() == 64);
  CHECK(refused({engraving("")}) ==
        "record.xml:125:5: error: marking \"mk-owner\" has to be withheld from a stranger, and has "
        "no salt [withheld-salt]\n  hint: write <salt> with 32 hexadecimal digits drawn at random "
        "into it, or name with <person> somebody whom anyone may see\n");
}

TEST_CASE("a photograph goes with whom it shows, and with a withheld mark in it") {
  const Edit shows{
      "<caption>The reel as it came.</caption>",
      "<caption>Nell has it.</caption><alternative>Nell.</alternative>"
      "<rights>Nell's</rights><shows ref=\"nell\"/><salt>ffffffffffffffffffffffffffffffff</salt>"};
  const auto done = withheld({shows});
  // Reckoned with: printf '%s%s' ffff…ffff 0000…0000 | sha256sum
  CHECK(done.taken.back().kind == Taken::Kind::photograph);
  CHECK(done.taken.back().digest ==
        "3a651ef18844982643cb21773a54962efe2e841e89f1dabdc963bdd166e29e73");
  const auto read = loaded(done.bytes);
  CHECK(read.record.photos[0].withheld);
  CHECK(read.record.photos[0].caption.empty());
  CHECK_FALSE(read.record.photos[1].withheld);
  for (const char* words : {"Nell", "before.jpg", "ffffffff"})
    CHECK_FALSE(holds(done.bytes, words));

  const auto marked = withheld({engraving("<person ref=\"nell\"/>\n<photo ref=\"ph-after\"/>\n")});
  CHECK(loaded(marked.bytes).record.photos[1].withheld);
  CHECK_FALSE(loaded(marked.bytes).record.photos[0].withheld);
}

TEST_CASE("who has to be withheld and has no salt is told once") {
  CHECK(refused({{"      <salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt>\n", ""}}) ==
        "record.xml:31:5: error: person \"nell\" has to be withheld from a stranger, and has no "
        "salt [withheld-salt]\n  hint: write <salt> with 32 hexadecimal digits drawn at random "
        "into it, or let anyone see the name with <named-to>\n");
}

TEST_CASE("the digests stand in document order, those of an edition withheld before among them") {
  const auto once = withheld({{"half gone.", "gone, <person ref=\"nell\">Nell</person> says."}});
  CHECK(once.digests.size() == once.taken.size());
  const auto again = recordfile::withhold(loaded(once.bytes), Reader::stranger);
  REQUIRE(again);
  CHECK(again->digests == once.digests);
  CHECK(again->taken.empty());
  std::size_t from = 0;
  for (const std::string& digest : once.digests) {
    from = once.bytes.find("<withheld>" + digest, from);
    REQUIRE(from != std::string::npos);
    ++from;
  }
}

TEST_CASE("a place in the edition is found again in the full record") {
  const std::string full = edited({{"half gone.", "half gone, and more."}});
  const auto done = recordfile::withhold(loaded(full), Reader::stranger);
  REQUIRE(done);
  for (const char* words : {"The Lantern Bench", "half gone, and more", "</reel-record>"})
    CHECK(done->origin(done->bytes.find(words)) == full.find(words));
  CHECK(done->origin(done->bytes.find("<withheld>")) == full.find("Nell Merrow"));
}

TEST_CASE("every demo record withholds to a record, with line ends of any kind") {
  for (const char* reel : {"skerry-40", "dunlin-2"}) {
    const std::string bytes =
        file_bytes(std::string(WINCHBOOK_SOURCE_DIR "/demo/reels/") + reel + "/record.xml");
    std::string crlf = "\xEF\xBB\xBF";
    for (const char sign : bytes)
      crlf += sign == '\n' ? std::string("\r\n") : std::string(1, sign);
    for (const Reader reader : {Reader::insurer, Reader::stranger}) {
      const auto done = recordfile::withhold(loaded(bytes), reader);
      const auto wide = recordfile::withhold(loaded(crlf), reader);
      REQUIRE(done);
      REQUIRE(wide);
      CHECK(done->digests == wide->digests);
      CHECK(loaded(done->bytes).record.pieces.size() == loaded(wide->bytes).record.pieces.size());
      CHECK(std::count(wide->bytes.begin(), wide->bytes.end(), '\n') ==
            std::count(wide->bytes.begin(), wide->bytes.end(), '\r'));
    }
  }
}
