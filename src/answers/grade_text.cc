#include <fmt/format.h>

#include <utility>

#include "answers/grade.h"
#include "answers/grade_words.h"
#include "base/degree_words.h"
#include "record/moments.h"

namespace winchbook::answers {
namespace {

namespace originality = assess::originality;
namespace condition = assess::condition;
using Align = document::Column::Align;

const originality::PieceRow& row_at(const originality::Finding& finding, int number) {
  return finding.rows.at(static_cast<std::size_t>(number) - 1);
}

std::string tenths(std::int64_t low, std::int64_t high) {
  const auto told = [](std::int64_t steps) { return points(base::Ratio(steps, 1000), 1); };
  return low == high ? told(low) : told(low) + " / " + told(high);
}

/// A row across the whole table, under the one before.
document::Row below(const std::string& words, int columns) {
  return {{{document::plain("  " + words), columns}}};
}

/// The answer, a part after the other.
class Telling {
 public:
  Telling(const Graded& graded, const words::Catalogue& words)
      : graded_(graded), record_(graded.loaded.record), words_(words) {}

  Blocks told() && {
    const assess::VisitAssessment* answer = graded_.assessment.last();
    const std::string name = reel_name(record_, words_) + "\n";
    if (answer == nullptr) {
      blocks_.emplace_back(paragraph(name + words_.say("answer.grade.never-here")));
      return std::move(blocks_);
    }
    const record::Visit& visit = *find(record_, answer->visit);
    blocks_.emplace_back(paragraph(name + visit_line(visit)));
    figures(answer->originality);
    ledger(answer->originality);
    changes(answer->originality);
    way_back(answer->originality);
    axes(answer->condition);
    named(visit, answer->condition);
    earlier();
    return std::move(blocks_);
  }

 private:
  void heading(const char* key) { blocks_.emplace_back(document::Subhead{words_.say(key)}); }

  template <class Value> std::string called_by_word(const char* stem, Value value) const {
    return words_.say(fmt::format("{}.{}", stem, term(value).word));
  }

  std::string figure(const std::optional<base::RatioRange>& range) const {
    return range ? this->range(*range) : words_.say("answer.grade.no-index");
  }

  std::string range(const base::RatioRange& of) const {
    constexpr std::int64_t kTenths = 1000;
    const base::ToldShare share = base::told(of, kTenths);
    const std::string low = points(base::Ratio(share.low, kTenths), 1);
    const std::string high = points(base::Ratio(share.high, kTenths), 1);
    return low == high ? low : words_.say("range", {{"low", low}, {"high", high}});
  }

  std::string counts(const char* key, const originality::Counts& of) const {
    std::vector<std::string> parts{words_.say("answer.grade.of-pieces", {{"count", of.places_for}}),
                                   words_.say("answer.grade.original", {{"count", of.original}})};
    for (const auto& [count, what] :
         {std::pair{of.life, "answer.grade.of-life"}, std::pair{of.other, "answer.grade.other"},
          std::pair{of.missing, "answer.grade.missing"},
          std::pair{of.not_determined, "answer.grade.not-determined"}}) {
      if (count > 0) parts.push_back(words_.say(what, {{"count", count}}));
    }
    return words_.say(key, {{"parts", words_.joined("join.comma", parts)}});
  }

  void figures(const originality::Finding& finding) {
    document::Table table;
    table.columns = {{Align::words, 0, true}, {}, {}, {}};
    table.head = {row_of({words_.say("answer.grade.in-a-hundred"), words_.say("as-found"),
                          words_.say("as-left"), ""})};
    const auto row = [&](const char* name, const originality::Index& index, const char* what) {
      table.rows.push_back(
          row_of({words_.say(name), figure(index.found), figure(index.left), words_.say(what)}));
    };
    row("answer.grade.index.original", finding.original, "answer.grade.index.original.what");
    row("answer.grade.surface", finding.untouched_surface, "answer.grade.surface.what");
    row("answer.grade.right", finding.right_for_model, "answer.grade.right.what");
    heading("answer.grade.originality");
    blocks_.emplace_back(std::move(table));
    std::string text;
    for (const originality::Assembled& mixed : finding.assembled) {
      const auto& rules = graded_.knowledge->originality;
      const bool found = mixed.when == record::Moment::found;
      text += words_.say(found ? "answer.grade.assembled-found" : "answer.grade.assembled-left",
                         {{"reels", mixed.at_least_reels},
                          {"share", points(mixed.largest_share, 1)},
                          {"needed", fmt::format("{}", rules.dominant_percent)},
                          {"reason", rules.dominant_reason}}) +
              "\n";
    }
    blocks_.emplace_back(next_line(text + counts("answer.grade.counts-found", finding.found) +
                                   "\n" + counts("answer.grade.counts-left", finding.left)));
    if (finding.places_not_entered.empty()) return;
    std::vector<std::string> names;
    for (const record::PlaceId& place : finding.places_not_entered)
      names.push_back(find(record_, place)->name);
    blocks_.emplace_back(next_line(
        words_.say("answer.grade.not-entered", {{"count", finding.places_not_entered.size()},
                                                {"names", words_.joined("join.comma", names)}})));
  }

  std::string surface(const originality::Side& side) const {
    if (!side.makers_surface) return "-";
    if (side.surface.empty()) return words_.say("condition.not-examined");
    std::vector<std::string> parts;
    for (const record::SurfaceShare& share : side.surface) {
      const std::string state = called_by_word("answer.grade.state", share.state);
      const bool whole = share.share.value == base::Decimal(100, 0);
      parts.push_back(whole ? state
                            : words_.say("answer.grade.share",
                                         {{"state", state}, {"share", share.share.value.text()}}));
    }
    return words_.joined("join.comma", parts);
  }

  /// What explains a list of reasons beyond the plain case: original, weighed by the list.
  std::string reasons(const std::vector<originality::Reason>& all) const {
    using originality::Reason;
    std::vector<std::string> parts;
    for (const Reason reason : all) {
      if (reason == Reason::record_of_this_reel || reason == Reason::weight_of_parts_list) continue;
      parts.push_back(called_by_word("answer.grade.reason", reason));
    }
    return words_.joined("join.semicolon", parts);
  }

  /// The reasons of a row, those of one moment said of that moment.
  std::string reasons(const originality::PieceRow& row) const {
    const auto of = [&](const char* key, const std::string& told) {
      return told.empty() ? told : words_.say(key, {{"what", told}});
    };
    const std::string found = reasons(row.found.reasons);
    if (!row.changed) return words_.joined("join.semicolon", {found, reasons(row.reasons)});
    return words_.joined("join.semicolon", {of("answer.grade.found", found),
                                            of("answer.grade.left", reasons(row.left.reasons)),
                                            reasons(row.reasons)});
  }

  void ledger_row(const originality::PieceRow& row, document::Table& table) const {
    const int columns = static_cast<int>(table.columns.size());
    const std::string name =
        row.seats > 1 ? words_.say("answer.grade.seats", {{"name", row.name}, {"count", row.seats}})
                      : row.name;
    table.rows.push_back(
        row_of({std::to_string(row.number), name, row.weighed ? points(row.weight, 2) : "-",
                called_by_word("answer.grade.standing", row.found.standing),
                row.changed ? called_by_word("answer.grade.standing", row.left.standing)
                            : words_.say("the-same"),
                row.letter.value_or("")}));
    const std::string before = surface(row.found);
    const std::string after = surface(row.left);
    if (before != "-" || after != "-") {
      table.rows.push_back(below(
          words_.say(before == after ? "answer.grade.surface-same" : "answer.grade.surface-changed",
                     {{"found", before}, {"left", after}}),
          columns));
    }
    const std::string why = reasons(row);
    if (!why.empty()) table.rows.push_back(below(why, columns));
  }

  void ledger(const originality::Finding& finding) {
    document::Table table;
    table.columns = {{Align::numbers}, {Align::words, 0, true}, {Align::numbers}, {}, {}, {}};
    table.head = {row_of({words_.say("answer.grade.no"), words_.say("answer.grade.place"),
                          words_.say("answer.grade.weight"), words_.say("as-found"),
                          words_.say("as-left"), ""})};
    for (const originality::PieceRow& row : finding.rows)
      ledger_row(row, table);
    heading("answer.grade.ledger");
    blocks_.emplace_back(std::move(table));
  }

  bool shares(const originality::Finding& finding, const char* name,
              const originality::Index& index, const originality::Change& change) {
    if (!index.found || !index.left || change.shares.empty()) return false;
    document::Table table;
    table.columns = {{}, {Align::words, 0, true}, {Align::numbers}};
    for (const originality::PrintedShare& share : originality::printed(index, change, 1000)) {
      const originality::PieceRow& row = row_at(finding, share.row);
      table.rows.push_back(
          row_of({row.letter.value_or(""), row.name, tenths(share.low, share.high)}));
    }
    table.rows.push_back(
        row_of({"", words_.say("answer.grade.together"),
                tenths(index.left->low.rounded(1000) - index.found->low.rounded(1000),
                       index.left->high.rounded(1000) - index.found->high.rounded(1000))}));
    blocks_.emplace_back(
        paragraph(words_.say("answer.grade.change", {{"name", words_.say(name)},
                                                     {"found", figure(index.found)},
                                                     {"left", figure(index.left)}})));
    blocks_.emplace_back(std::move(table));
    return true;
  }

  void changes(const originality::Finding& finding) {
    heading("answer.grade.changes");
    const bool original =
        shares(finding, "answer.grade.index.original", finding.original, finding.original_change);
    const bool surface = shares(finding, "answer.grade.surface", finding.untouched_surface,
                                finding.untouched_surface_change);
    const bool right = shares(finding, "answer.grade.right", finding.right_for_model,
                              finding.right_for_model_change);
    blocks_.emplace_back(next_line(words_.say(
        original || surface || right ? "answer.grade.two-figures" : "answer.grade.no-change")));
  }

  std::string return_line(const originality::Finding& finding,
                          const originality::Return& back) const {
    using Because = originality::Return::Because;
    const originality::PieceRow& row = row_at(finding, back.row);
    const record::Piece* old = back.old_piece ? find(record_, *back.old_piece) : nullptr;
    std::vector<std::string> parts{
        words_.say("answer.grade.return",
                   {{"letter", row.letter.value_or("-")},
                    {"name", old == nullptr ? row.name : old->name},
                    {"outcome", called_by_word("answer.grade.outcome", back.outcome)}})};
    if (back.because != Because::at_hand && back.because != Because::was_missing)
      parts.push_back(called_by_word("answer.grade.because", back.because));
    if (back.degree && back.degree->value < base::Decimal(100, 0)) {
      parts.push_back(
          words_.say("answer.grade.degree", {{"form", base::degree_word(*back.degree).word}}));
    }
    if (back.reel_altered) parts.push_back(words_.say("answer.grade.reel-altered"));
    return words_.joined("join.semicolon", parts);
  }

  void way_back(const originality::Finding& finding) {
    const originality::WayBack& way = finding.way_back;
    heading("answer.grade.way-back");
    if (way.returns.empty() && way.surface_losses.empty()) {
      blocks_.emplace_back(next_line(words_.say("answer.grade.nothing-taken")));
      return;
    }
    std::vector<std::string> items;
    for (const originality::Return& back : way.returns)
      items.push_back(return_line(finding, back));
    for (const originality::SurfaceLoss& loss : way.surface_losses) {
      const base::RatioRange gone{loss.lost.at_low - loss.recovered.at_low,
                                  loss.lost.at_high - loss.recovered.at_high};
      items.push_back(words_.say("answer.grade.surface-lower",
                                 {{"name", row_at(finding, loss.row).name}, {"by", range(gone)}}));
    }
    const auto restored = [&](const char* key, const std::optional<base::RatioRange>& of,
                              const originality::Index& index) {
      if (!of) return;
      items.push_back(words_.say(key, {{"restored", figure(of)},
                                       {"found", figure(index.found)},
                                       {"left", figure(index.left)}}));
    };
    restored("answer.grade.original-restored", way.original_restored, finding.original);
    restored("answer.grade.surface-restored", way.untouched_surface_restored,
             finding.untouched_surface);
    blocks_.emplace_back(list_of(items));
  }

  template <class Words>
  std::string axis_words(const std::string& axis, const condition::WordRange& range,
                         const Words& words) const {
    const auto told = [&](int number) {
      return words_.say("condition." + axis + "." +
                        words.at(static_cast<std::size_t>(number)).word);
    };
    if (range.best == range.worst) return told(range.best);
    return words_.say("range", {{"low", told(range.worst)}, {"high", told(range.best)}});
  }

  std::string fact(const condition::SurfaceReading& reading) const {
    if (!reading.share) return words_.say("answer.grade.no-area");
    return words_.say("answer.grade.surface-fact", {{"share", range(*reading.share)}});
  }
  std::string fact(const condition::StructureReading& reading) const {
    if (reading.faults() == 0 && !reading.examined) return words_.say("condition.not-examined");
    return words_.say("answer.grade.structure-fact", {{"count", reading.faults()}});
  }
  std::string fact(const condition::WorkingReading& reading) const {
    if (reading.tests == 0) return words_.say("answer.grade.no-test");
    std::vector<std::string> parts{words_.say(
        "answer.grade.working-fact", {{"count", reading.as_made}, {"tests", reading.tests}})};
    if (reading.not_safe_to_test > 0)
      parts.push_back(words_.say("answer.grade.not-safe", {{"count", reading.not_safe_to_test}}));
    if (reading.not_tested > 0)
      parts.push_back(words_.say("answer.grade.open", {{"count", reading.not_tested}}));
    return words_.joined("join.comma", parts);
  }
  std::string fact(const condition::CompletenessReading& reading) const {
    std::vector<std::string> parts{words_.say(
        "answer.grade.completeness-fact", {{"count", reading.filled}, {"seats", reading.seats}})};
    if (reading.loose > 0)
      parts.push_back(words_.say("answer.grade.loose", {{"count", reading.loose}}));
    return words_.joined("join.comma", parts);
  }

  void axes(const condition::Finding& finding) {
    const knowledge::ConditionRules& rules = graded_.knowledge->condition;
    document::Table table;
    table.columns = {{Align::words, 0, true}, {}, {}};
    table.head = {row_of({"", words_.say("as-found"), words_.say("as-left")})};
    const auto axis = [&](const std::string& name, const auto& found, const auto& left,
                          const auto& words) {
      table.rows.push_back(
          row_of({words_.say("value.trait." + name), axis_words(name, found.word, words),
                  axis_words(name, left.word, words)}));
      table.rows.push_back(row_of({"", fact(found), fact(left)}));
    };
    const condition::Readings& found = finding.found;
    const condition::Readings& left = finding.left;
    axis("surface", found.finish_left, left.finish_left, rules.surface.words);
    axis("structure", found.structure, left.structure, rules.structure);
    axis("working", found.working, left.working, rules.working);
    axis("completeness", found.completeness, left.completeness, rules.completeness.words);
    table.below = document::plain(
        words_.say("answer.grade.reckoned",
                   {{"how", called_by_word("answer.grade.area", finding.area_basis)}}));
    heading("answer.grade.condition");
    blocks_.emplace_back(std::move(table));
  }

  /// "protection 7, appearance 4 as found and 5 as left".
  std::string ratings(const condition::Corrosion& one) const {
    std::vector<std::string> parts;
    const auto add = [&](const char* what, const std::optional<int>& found,
                         const std::optional<int>& left) {
      if (!found && !left) return;
      const char* key = found == left ? "answer.grade.rating"
                        : !left       ? "answer.grade.rating-found"
                        : !found      ? "answer.grade.rating-left"
                                      : "answer.grade.rating-both";
      parts.push_back(words_.say(
          key,
          {{"what", words_.say(what)}, {"found", found.value_or(0)}, {"left", left.value_or(0)}}));
    };
    add("answer.grade.protection", one.protection_found, one.protection_left);
    add("answer.grade.appearance", one.appearance_found, one.appearance_left);
    return words_.joined("join.comma", parts);
  }

  std::string severity(const std::optional<record::Severity>& of, const char* without) const {
    return of ? called_by_word("answer.grade.severity", *of) : words_.say(without);
  }

  void named(const record::Visit& visit, const condition::Finding& finding) {
    std::vector<std::string> items;
    for (const record::Fault& fault : visit.findings.faults) {
      items.push_back(
          words_.say("answer.grade.fault",
                     {{"name", fault.name},
                      {"found", severity(fault.found, "answer.grade.not-seen")},
                      {"left", severity(record::severity_at(fault, record::Moment::left),
                                        record::put_right(fault) ? "answer.grade.put-right"
                                                                 : "answer.grade.not-seen")}}));
    }
    const auto name_of = [&](const record::PieceId& id) { return find(record_, id)->name; };
    for (const condition::Restored& one : finding.restored) {
      const char* when = one.found && one.left ? "answer.grade.found-and-left"
                         : one.found           ? "as-found"
                                               : "as-left";
      items.push_back(words_.say("answer.grade.restored",
                                 {{"name", name_of(one.piece)},
                                  {"state", called_by_word("answer.grade.state", one.state)},
                                  {"when", words_.say(when)}}));
    }
    for (const condition::Empty& one : finding.empty) {
      items.push_back(words_.say(
          "answer.grade.empty",
          {{"name", find(record_, one.place)->name}, {"found", one.found}, {"left", one.left}}));
    }
    for (const condition::Corrosion& one : finding.corrosion) {
      items.push_back(words_.say("answer.grade.corrosion",
                                 {{"name", name_of(one.piece)}, {"ratings", ratings(one)}}));
    }
    if (!finding.corrosion.empty()) items.push_back(words_.say("answer.grade.corrosion-rated"));
    if (items.empty()) return;
    heading("answer.grade.named");
    blocks_.emplace_back(list_of(items));
  }

  std::string visit_line(const record::Visit& visit) const {
    if (!visit.hand_back)
      return words_.say("answer.grade.at-bench", {{"day", visit.taken_in.text()}});
    return words_.say("answer.grade.handed-back",
                      {{"day", visit.taken_in.text()}, {"back", visit.hand_back->on.text()}});
  }

  void earlier() {
    std::vector<std::string> items;
    const auto& visits = graded_.assessment.visits;
    for (std::size_t i = 0; i + 1 < visits.size(); ++i) {
      const originality::Finding& finding = visits[i].originality;
      items.push_back(words_.say("answer.grade.earlier-visit",
                                 {{"visit", visit_line(*find(record_, visits[i].visit))},
                                  {"found", figure(finding.original.found)},
                                  {"left", figure(finding.original.left)},
                                  {"surface", figure(finding.untouched_surface.found)},
                                  {"after", figure(finding.untouched_surface.left)}}));
    }
    if (items.empty()) return;
    heading("answer.grade.earlier");
    blocks_.emplace_back(list_of(items));
  }

  const Graded& graded_;
  const record::Record& record_;
  const words::Catalogue& words_;
  Blocks blocks_;
};

}  // namespace

std::string reel_name(const record::Record& record, const words::Catalogue& words) {
  const auto& reel = record.reel;
  if (reel.model.empty() || reel.model == reel.name) return reel.name;
  return words.say("answer.reel", {{"name", reel.name}, {"model", reel.model}});
}

Blocks grade_told(const Graded& graded, const words::Catalogue& words) {
  return Telling(graded, words).told();
}

}  // namespace winchbook::answers
