#include "recordfile/rules.h"

#include <doctest/doctest.h>

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "recordfile/record_file.h"
#include "recordfile/small_record.h"

namespace {

using namespace winchbook;  // NOLINT

/// A rule, a change to the small record that makes it bite, what is then said, and a change close
/// to it that must leave the rule silent.
struct Case {
  std::string_view rule;
  std::vector<Edit> bites;
  std::string_view said;
  std::vector<Edit> silent;
};

const std::vector<Case>& cases() {
  static const std::vector<Case> kCases = {
      {"piece-in-two-places",
       {{"<piece ref=\"foot\"/><place ref=\"pl-foot\"/>\n      <by>",
         "<piece ref=\"pinion-new\"/><place ref=\"pl-foot\"/>\n      <by>"}},
       "piece \"pinion-new\" is fitted in \"pl-foot\" and in \"pl-pinion\" at once (line 95)",
       {{"<piece ref=\"foot\"/><place ref=\"pl-foot\"/>\n      <by>",
         "<piece ref=\"pinion-new\"/><place ref=\"pl-foot\"/>\n      <from>2026-04-01</from>"
         "<until>2026-04-22</until><by>"}}},
      {"place-overfull",
       {{"<until>2026-04-22</until>\n", ""}, {"<removed-in ref=\"v-2026\"/>\n", ""}},
       "place \"pl-pinion\" holds 2 pieces now, expected at most 1",
       {{"<until>2026-04-22</until>\n", ""},
        {"<removed-in ref=\"v-2026\"/>\n", ""},
        {"<kind>pinion</kind></place>", "<kind>pinion</kind><quantity>2</quantity></place>"}}},
      {"fitting-order",
       {{"<until>2026-04-22</until>", "<from>2026-04-23</from><until>2026-04-22</until>"}},
       "the fitting ends 2026-04-22 before it begins 2026-04-23",
       {{"<until>2026-04-22</until>", "<from>2026-04</from><until>2026-04-22</until>"}}},
      {"fitting-visit",
       {{"<from>2026-04-22</from>", "<from>2026-07</from>"}},
       "the piece was fitted 2026-07, which is outside of visit \"v-2026\"",
       {{"<from>2026-04-22</from>", "<from>2026-06</from>"}}},
      {"bench-fitting",
       {{"<why>Four teeth were half gone.</why>", ""}},
       "the bench fitted \"pinion-new\", and <why> is left out",
       {{"<by><answer>bench</answer></by>", "<by><answer>not-known</answer></by>"},
        {"<why>Four teeth were half gone.</why>", ""}}},
      {"old-piece",
       {{"<instead-of ref=\"pinion-old\"/>", "<instead-of ref=\"pinion-new\"/>"}},
       "piece \"pinion-new\" is fitted instead of itself",
       {{"<instead-of ref=\"pinion-old\"/>", ""}}},
      {"whereabouts",
       {{"<now><kind>bagged</kind><bag>bag 1</bag></now>", "<now><kind>fitted</kind></now>"}},
       "piece \"pinion-old\" is told to be fitted, and no fitting says where",
       {{"<now><kind>bagged</kind><bag>bag 1</bag></now>", "<now><kind>lost</kind></now>"}}},
      {"bag-label",
       {{"<kind>bagged</kind><bag>bag 1</bag>", "<kind>bagged</kind>"}},
       "piece \"pinion-old\" is in a bag without a label",
       {{"<kind>bagged</kind><bag>bag 1</bag>", "<kind>to-owner</kind>"}}},
      {"leave-given",
       {{"<kind>bagged</kind><bag>bag 1</bag>", "<kind>scrapped</kind><leave ref=\"ag-1\"/>"}},
       "piece \"pinion-old\" is scrapped, and no agreement lets it leave",
       {{"<kind>bagged</kind><bag>bag 1</bag>", "<kind>scrapped</kind><leave ref=\"ag-1\"/>"},
        {"<cost-limit>", "<piece-may-leave ref=\"pinion-old\"/><cost-limit>"}}},
      {"fragment",
       {{"<donor ref=\"no-30\"/>", "<donor ref=\"no-30\"/><fragment-of ref=\"pinion-old\"/>"}},
       "piece \"pinion-new\" is a fragment and fitted by itself",
       {{"<material>brass</material>\n      <now><kind>bagged",
         "<material>brass</material><fragment-of ref=\"pinion-new\"/>\n      <now><kind>bagged"}}},
      {"certainty",
       {{"<of-this-reel><answer>yes</answer><certainty>certain</certainty></of-this-reel>",
         "<of-this-reel><answer>not-determined</answer><certainty>likely</certainty>"
         "</of-this-reel>"}},
       "the answer to <of-this-reel> of piece \"foot\" is not determined, and yet has a certainty",
       {{"<of-this-reel><answer>yes</answer><certainty>certain</certainty></of-this-reel>",
         "<of-this-reel><answer>yes</answer></of-this-reel>"}}},
      {"original-elsewhere",
       {{"<of-this-reel><answer>no</answer>", "<of-this-reel><answer>yes</answer>"}},
       "piece \"pinion-new\" is told to be original, and donor \"no-30\" gave it",
       {{"<of-this-reel><answer>no</answer>", "<of-this-reel><answer>yes</answer>"},
        {"<donor ref=\"no-30\"/>", ""}}},
      {"mark-window",
       {{"<legibility>clear</legibility>",
         "<legibility>clear</legibility><says>"
         "<not-before><date>1840</date><firmness>hard</firmness></not-before>"
         "<not-after><date>1820</date><firmness>soft</firmness></not-after></says>"}},
       "latest date 1820 is before earliest date 1840",
       {{"<legibility>clear</legibility>",
         "<legibility>clear</legibility><says>"
         "<not-before><date>1840</date><firmness>hard</firmness></not-before>"
         "<not-after><date>184X</date><firmness>soft</firmness></not-after></says>"}}},
      {"serial-marked",
       {{"<serial>H 4417</serial>", "<serial>H 4471</serial>"}},
       "serial number \"H 4471\" is not among the marks",
       {{"<serial>H 4417</serial>", "<serial>4417</serial>"}}},
      {"hand-back",
       {{"<taken-in>2026-03-03</taken-in>", "<taken-in>2026-06-20</taken-in>"}},
       "the reel is handed back 2026-06-19 before it was taken in 2026-06-20",
       {{"<taken-in>2026-03-03</taken-in>", "<taken-in>2026-06-19</taken-in>"}}},
      {"visits-apart",
       {{"</visits>", "<visit id=\"v-2\"><taken-in>2026-05-01</taken-in></visit></visits>"}},
       "visit \"v-2\" begins 2026-05-01 before visit \"v-2026\" ended 2026-06-19",
       {{"</visits>", "<visit id=\"v-2\"><taken-in>2026-06-19</taken-in></visit></visits>"}}},
      {"agreements-in-order",
       {{"<findings>",
         "<agreement id=\"ag-2\"><on>2026-03-02</on><how>by letter</how></agreement><findings>"}},
       "the agreement of 2026-03-02 stands after that of 2026-03-03, expected earliest first",
       {{"<findings>",
         "<agreement id=\"ag-2\"><on>2026-03-03</on><how>by letter</how></agreement><findings>"}}},
      {"agreement-kept",
       {{"<piece-must-stay ref=\"foot\"/>", "<piece-must-stay ref=\"pinion-old\"/>"}},
       "piece \"pinion-old\" must stay, and visit \"v-2026\" took it out",
       {{"<piece-must-stay ref=\"foot\"/>", "<piece-must-stay ref=\"pinion-old\"/>"},
        {"<findings>",
         "<agreement id=\"ag-2\"><on>2026-04-01</on><how>by letter</how>"
         "<piece-may-leave ref=\"pinion-old\"/></agreement><findings>"}}},
      {"cost-limit",
       {{"<tray>", "<work><what>A screw.</what><parts-cost>180.01 GBP</parts-cost></work><tray>"}},
       "parts cost 180.01 GBP, and 180.00 GBP was agreed",
       {{"<tray>", "<work><what>A screw.</what><parts-cost>180 GBP</parts-cost></work><tray>"}}},
      {"service-after",
       {{"<next-service>2029</next-service>", "<next-service>2026-05</next-service>"}},
       "\"next-service\" is 2026-05, before the hand-back 2026-06-19",
       {{"<next-service>2029</next-service>", "<next-service>2026-06</next-service>"}}},
      {"findings-dates",
       {{"<found-on>2026-03-06</found-on>", "<found-on>2026-03-02</found-on>"}},
       "the reel was examined 2026-03-02, before it was taken in 2026-03-03",
       {{"<found-on>2026-03-06</found-on>", "<found-on>2026-03-03</found-on>"}}},
      {"tray-account",
       {{"<taken-off>1</taken-off>", "<taken-off>2</taken-off>"}},
       "of piece \"pinion-old\" 2 came off or lay loose, and 1 are accounted for",
       {{"<taken-off>1</taken-off><bagged>1</bagged>",
         "<taken-off>1</taken-off><found-loose>1</found-loose><refitted>1</refitted><lost>1</"
         "lost>"}}},
      {"bags-returned",
       {{"<bag>bag 1</bag></hand-back>", "</hand-back>"}},
       "\"bag 1\" with piece \"pinion-old\" is in no hand-back",
       {{"<hand-back><on>2026-06-19</on><to ref=\"nell\"/><bag>bag 1</bag></hand-back>", ""}}},
      {"spring-caution",
       {{"<step id=\"st-1\"><what>Lift the pinion out.</what><piece ref=\"pinion-old\"/></step>",
         "<step id=\"st-1\"><what>Lift.</what><spring-loose>yes</spring-loose></step>"}},
       "step 1 frees a spring without a caution",
       {{"<step id=\"st-1\"><what>Lift the pinion out.</what><piece ref=\"pinion-old\"/></step>",
         "<step id=\"st-1\"><what>Lift.</what><spring-loose>yes</spring-loose><caution>"
         "<label>Spring</label><words>Glasses.</words></caution></step>"}}},
      {"ranking",
       {{"<use>fish-and-show</use>", "<use>fish-and-show</use><ranking>memory</ranking>"}},
       "the ranking names 1 of the six things, 1 times in all",
       {{"<use>fish-and-show</use>",
         "<use>fish-and-show</use><ranking>memory</ranking><ranking>originality</ranking>"
         "<ranking>value</ranking><ranking>use</ranking><ranking>way-back</ranking>"
         "<ranking>cost</ranking>"}}},
      {"range-order",
       {{"<hand-back>",
         "<care><drag-low>38</drag-low><drag-high>20</drag-high></care><hand-back>"}},
       "the lower end 38 is above the upper end 20",
       {{"<hand-back>",
         "<care><drag-low>38</drag-low><drag-high>38.0</drag-high></care><hand-back>"}}},
      {"missing-and-graded",
       {{"<presence>fitted</presence>\n            <surface><state>untouched</state>",
         "<presence>missing</presence>\n            <surface><state>polished</state>"}},
       "piece \"foot\" is missing and polished at once, as found",
       {{"<presence>fitted</presence>\n            <surface><state>untouched</state>",
         "<presence>loose</presence>\n            <surface><state>polished</state>"}}},
      {"place-and-piece",
       {{"<test>",
         "<place-finding><place "
         "ref=\"pl-foot\"/><found>empty</found><left>yes</left></place-finding><test>"}},
       "place \"pl-foot\" is empty as found, and piece \"foot\" is in it",
       {{"<test>",
         "<place-finding><place "
         "ref=\"pl-pinion\"/><found>empty</found><left>yes</left></place-finding>"
         "<test>"}}},
      {"surface-total",
       {{"<surface><state>worn-through</state><share>15</share></surface>\n          </found>",
         "<surface><state>worn-through</state><share>15.01</share></surface>\n          </found>"}},
       "the surface of piece \"foot\" makes 100.01 per cent as found, expected at most 100",
       {{"<surface><state>worn-through</state><share>15</share></surface>\n          </found>",
         "<surface><state>worn-through</state><share>15.00</share></surface>\n          "
         "</found>"}}},
      {"surface-state-twice",
       {{"<surface><state>worn-through</state><share>15</share></surface>\n          </found>",
         "<surface><state>untouched</state><share>10</share></surface>\n          </found>"}},
       "the surface of piece \"foot\" names \"untouched\" twice as found",
       {{"<surface><state>worn-through</state><share>15</share></surface>\n          </found>",
         "<surface><state>cleaned</state><share>10</share></surface>\n          </found>"}}},
      {"untouched-grows",
       {{"<surface><state>cleaned</state><share>85</share></surface>",
         "<surface><state>untouched</state><share>85.5</share></surface>"},
        {"<surface><state>worn-through</state><share>15</share></surface>\n          </left>",
         "</left>"}},
       "the untouched surface of piece \"foot\" grows from 85 to 85.5 per cent",
       {{"<surface><state>cleaned</state><share>85</share></surface>",
         "<surface><state>untouched</state><share>85</share></surface>"}}},
      {"defects-hold-corrosion",
       {{"</surface>\n          </found>",
         "</surface><corroded>2.5</corroded><appearance-defects>1</appearance-defects></found>"}},
       "piece \"foot\" is corroded on 2.5 per cent and has defects on 1 per cent as found",
       {{"</surface>\n          </found>",
         "</surface><corroded>2.5</corroded><appearance-defects>2.50</appearance-defects></"
         "found>"}}},
      {"finding-twice",
       {{"<test>", "<piece-finding><piece ref=\"foot\"/></piece-finding><test>"}},
       "\"foot\" has a second finding in visit \"v-2026\"",
       {{"<test>", "<piece-finding><piece ref=\"pinion-old\"/></piece-finding><test>"}}},
      {"fault-graded",
       {{"<test>",
         "<fault id=\"fa\"><kind>crack</kind><name>crack at screw 4</name></fault><test>"}},
       "fault \"crack at screw 4\" was there neither as found nor as left",
       {{"<test>",
         "<fault id=\"fa\"><kind>crack</kind><name>crack at screw "
         "4</name><found>blemish</found></fault>"
         "<test>"}}},
      {"fault-stays",
       {{"<test>",
         "<fault id=\"fa\"><kind>crack</kind><name>crack at screw "
         "4</name><left>blemish</left></fault>"
         "<test>"}},
       "fault \"crack at screw 4\" stays, and nothing says why",
       {{"<test>",
         "<fault id=\"fa\"><kind>crack</kind><name>crack at screw 4</name><left>blemish</left>"
         "<why-it-stays>Hard rubber.</why-it-stays></fault><test>"}}},
      {"test-reading",
       {{"<unit>s</unit>", ""}},
       "test \"Spool runs free after one measured flick\" has a reading without a unit",
       {{"<unit>s</unit>", ""},
        {"<reading>4</reading>", "<words>four seconds</words>"},
        {"<reading>31</reading>", ""}}},
      {"looked-for",
       {{"<piece-finding>",
         "<looked-for><what>marks</what><found>none</found></looked-for><piece-finding>"}},
       "looked for marks and found none, and \"mk-serial\" is entered",
       {{"<piece-finding>",
         "<looked-for><what>marks</what><found>some</found></looked-for>"
         "<looked-for><what>faults</what><found>none</found></looked-for><piece-finding>"}}},
      {"load-limit",
       {{"<before><outcome>done</outcome><reading>4</reading><verdict>in-part</verdict>",
         "<before><outcome>not-safe-to-test</outcome>"}},
       "test \"Spool runs free after one measured flick\" was not safe to make, and no load limit "
       "is given",
       {{"<before><outcome>done</outcome><reading>4</reading><verdict>in-part</verdict>",
         "<before><outcome>not-safe-to-test</outcome><load-limit>0</load-limit>"}}},
      {"custody-order",
       {{"<from>2025</from>", "<from>1940</from>"}},
       "it begins 1940, after an entry that begins 1948, expected earliest first",
       {{"<from>2025</from>", "<from>1948</from>"}}},
      {"keep-because",
       {{"<places>",
         "<life><event id=\"ev\"><kind>repair</kind><title>A new "
         "screw</title><what><p>Turned.</p></what>"
         "<source>her word</source><must-stay ref=\"foot\"/></event></life><places>"}},
       "\"A new screw\" has pieces that must stay, and nothing says why",
       {{"<places>",
         "<life><event id=\"ev\"><kind>repair</kind><title>A new "
         "screw</title><what><p>Turned.</p></what>"
         "<source>her word</source><keep-because>His hand.</keep-because><must-stay "
         "ref=\"foot\"/></event>"
         "</life><places>"}}},
      {"story-approved",
       {{"<approved-on>2026-06-12</approved-on>", ""}},
       "nobody has approved the story yet",
       {{"<approved-on>2026-06-12</approved-on>", "<approved-on>2026-06</approved-on>"}}},
      {"salt-drawn",
       {{"<salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt>", ""}},
       "person \"nell\" may have to be withheld, and has no salt",
       {{"<named-to>owner</named-to>\n      <salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt>",
         "<named-to>anyone</named-to>"}}},
      {"salt-drawn",
       {{"<whose>maker</whose>", "<whose>owner</whose>"}},
       "owner's mark \"mk-serial\" may have to be withheld, and has no salt",
       {{"<whose>maker</whose>", "<whose>owner</whose>"},
        {"<legibility>clear</legibility>",
         "<legibility>clear</legibility><person ref=\"ines\"/>"}}},
      {"salt-kept-secret",
       {{"<name>Nell Merrow</name>", "<name><withheld>" SIXTY_FOUR "</withheld></name>"}},
       "\"nell\" is withheld, and its salt stands beside it",
       {{"<name>Nell Merrow</name>", "<name><withheld>" SIXTY_FOUR "</withheld></name>"},
        {"<salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt>", ""}}},
      {"pair-stage",
       {{"<stage>as-left</stage>", "<stage>as-found</stage>"}},
       "photographs \"ph-before\" (as-found) and \"ph-after\" (as-found) are no pair, expected "
       "as-found and "
       "as-left",
       {{"<stage>as-left</stage>", "<stage>test</stage>"}, {"<pair-of ref=\"ph-before\"/>", ""}}},
      {"photo-file-twice",
       {{"<file>photos/after.jpg</file>", "<file>photos/before.jpg</file>"}},
       "photographs \"ph-before\" and \"ph-after\" are the same file \"photos/before.jpg\"",
       {{"<file>photos/after.jpg</file>", "<file>photos/Before.jpg</file>"}}},
      {"photo-path",
       {{"<file>photos/after.jpg</file>", "<file>photos/../../after.jpg</file>"}},
       "photograph path \"photos/../../after.jpg\" leaves the reel's folder",
       {{"<file>photos/after.jpg</file>", "<file>photos/a..b.jpg</file>"}}},
      {"sale-excluded",
       {{"</reel-record>", VALUE("2025-11-08", "<used>no</used>") "</reel-record>"}},
       "sale \"sa\" does not count, and nothing says why",
       {{"</reel-record>", VALUE("2025-11-08",
                                 "<used>no</used><excluded-because>Another "
                                 "model.</excluded-because>") "</reel-record>"}}},
      {"sale-date",
       {{"</reel-record>", VALUE("2026-06-20", "") "</reel-record>"}},
       "sale \"sa\" of 2026-06-20 is later than the day of the value, 2026-06-19",
       {{"</reel-record>", VALUE("2026-06", "") "</reel-record>"}}},
  };
  return kCases;
}

/// What one rule says of a record.
std::vector<std::string> said_by(std::string_view rule, const base::Diagnostics& found) {
  std::vector<std::string> said;
  for (const base::Diagnostic& one : found) {
    if (one.rule == rule) said.push_back(one.message);
  }
  return said;
}

base::Diagnostics all_found(const std::string& bytes) {
  const auto read = recordfile::read_bytes("record.xml", bytes, record_schema());
  return read ? read->warnings : read.faults();
}

}  // namespace

TEST_CASE("the small record breaks no rule") {
  CHECK(all_found(small_record()).empty());
}

TEST_CASE("every rule has a record in which it bites and one in which it is silent") {
  std::set<std::string_view> tried;
  for (const Case& one : cases()) {
    CAPTURE(one.rule);
    tried.insert(one.rule);
    const base::Diagnostics bitten = all_found(edited(one.bites));
    CHECK(said_by("schema", bitten).empty());
    const std::vector<std::string> said = said_by(one.rule, bitten);
    REQUIRE_FALSE(said.empty());
    CHECK(said.front() == one.said);
    const base::Diagnostics silent = all_found(edited(one.silent));
    CHECK(said_by("schema", silent).empty());
    CHECK(said_by("reference", silent).empty());
    CHECK(said_by(one.rule, silent).empty());
  }
  for (const recordfile::Rule& rule : recordfile::rules()) {
    CAPTURE(rule.id);
    CHECK(tried.count(rule.id) == 1);
    CHECK_FALSE(rule.meaning.empty());
  }
  CHECK(tried.size() == recordfile::rules().size());
}

TEST_CASE("every finding of a rule has its line and a cure") {
  for (const Case& one : cases()) {
    CAPTURE(one.rule);
    for (const base::Diagnostic& found : all_found(edited(one.bites))) {
      CHECK(found.where.line > 0);
      CHECK_FALSE(found.hint.empty());
    }
  }
}
