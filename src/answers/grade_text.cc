#include <fmt/format.h>

#include <algorithm>

#include "answers/grade.h"
#include "answers/grade_words.h"
#include "answers/lines.h"

namespace winchbook::answers {
namespace {

namespace originality = assess::originality;
namespace condition = assess::condition;

std::string padded(std::string text, std::size_t columns) {
  const std::size_t wide = columns_of(text);
  if (wide < columns) text.append(columns - wide, ' ');
  return text;
}

std::string right(const std::string& text, std::size_t columns) {
  const std::size_t wide = columns_of(text);
  return wide < columns ? std::string(columns - wide, ' ') + text : text;
}

std::string trimmed(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

std::string counted(int number, std::string_view one) {
  return fmt::format("{} {}{}", number, one, number == 1 ? "" : "s");
}

std::string figure(const std::optional<base::RatioRange>& range) {
  return range ? points(*range, 1) : "no index";
}

std::string index_line(std::string_view name, const originality::Index& index,
                       std::string_view what) {
  return trimmed(padded(std::string(name), 22) + padded(figure(index.found), 16) +
                 padded(figure(index.left), 16) + std::string(what));
}

std::string assembled(const originality::Finding& finding, const Graded& graded) {
  std::string out;
  for (const originality::Assembled& mixed : finding.assembled) {
    const bool found = mixed.when == record::Moment::found;
    out += broken_into_lines(
        fmt::format("As {} it is assembled from at least {}: the reel that gave most gave {} in a "
                    "hundred of the weight, and {} are needed. {}",
                    found ? "found" : "left", counted(mixed.at_least_reels, "reel"),
                    points(mixed.largest_share, 1), graded.knowledge->originality.dominant_percent,
                    graded.knowledge->originality.dominant_reason),
        0);
  }
  return out;
}

std::string counts(std::string_view moment, const originality::Counts& of) {
  std::string out = fmt::format("As {}: of {}, {} original", moment,
                                counted(of.places_for, "piece"), of.original);
  const auto add = [&](int number, std::string_view what) {
    if (number > 0) out += fmt::format(", {} {}", number, what);
  };
  add(of.life, "of its life");
  add(of.other, "not this reel's own");
  add(of.missing, "missing");
  add(of.not_determined, "not determined");
  return broken_into_lines(out + ".", 0);
}

std::string figures(const originality::Finding& finding, const Graded& graded) {
  std::string out = ruled_heading("Originality");
  out += padded("in a hundred", 22) + padded("as found", 16) + "as left\n";
  out += index_line("born here", finding.born_here, "pieces the maker put on this reel, by weight");
  out += index_line("surface", finding.surface, "how the maker left his own surfaces");
  out += index_line("right for the model", finding.right_for_model,
                    "a separate figure; the bench may raise it");
  out += assembled(finding, graded);
  out += counts("found", finding.found);
  out += counts("left", finding.left);
  return out;
}

std::string surface_words(const originality::Side& side) {
  if (!side.makers_surface) return "-";
  if (side.surface.empty()) return "not examined";
  std::string out;
  for (const record::SurfaceShare& share : side.surface) {
    if (!out.empty()) out += ", ";
    out += term(share.state).spoken;
    if (share.share.value != base::Decimal(100, 0)) out += " " + share.share.value.text();
  }
  return out;
}

/// What explains a list of reasons beyond the plain case: born here, weighed by the list.
std::string spoken(const std::vector<originality::Reason>& reasons, std::string_view before) {
  using originality::Reason;
  std::string out;
  for (const Reason reason : reasons) {
    if (reason == Reason::record_born_here || reason == Reason::weight_of_parts_list) continue;
    out += out.empty() ? before : "; ";
    out += term(reason).spoken;
  }
  return out;
}

/// The reasons of a row, those of one moment said of that moment.
std::string reasons(const originality::PieceRow& row) {
  std::string out;
  const auto add = [&](const std::string& told) {
    if (!told.empty()) out += (out.empty() ? "" : "; ") + told;
  };
  if (row.changed) {
    add(spoken(row.found.reasons, "as found: "));
    add(spoken(row.left.reasons, "as left: "));
  } else {
    add(spoken(row.found.reasons, ""));
  }
  add(spoken(row.reasons, ""));
  return out;
}

std::string ledger_row(const originality::PieceRow& row) {
  std::string name = row.name;
  if (row.seats > 1) name += fmt::format(" ({})", row.seats);
  const std::string left = row.changed ? std::string(term(row.left.standing).spoken) : "the same";
  std::string out = trimmed(right(std::to_string(row.number), 3) + "  " + padded(name, 32) + ' ' +
                            right(row.weighed ? points(row.weight, 2) : "-", 6) + "  " +
                            padded(std::string(term(row.found.standing).spoken), 27) + ' ' +
                            padded(left, 29) + row.letter.value_or(""));
  const std::string before = surface_words(row.found);
  const std::string after = surface_words(row.left);
  if (before != "-" || after != "-") {
    out +=
        broken_into_lines("surface: " + before + (before == after ? "" : "; as left " + after), 5);
  }
  const std::string why = reasons(row);
  if (!why.empty()) out += broken_into_lines(why, 5);
  return out;
}

std::string ledger(const originality::Finding& finding) {
  std::string out = ruled_heading("First ledger");
  out += trimmed(" no  " + padded("place", 32) + " weight  " + padded("as found", 27) + " as left");
  for (const originality::PieceRow& row : finding.rows) {
    out += ledger_row(row);
  }
  return out;
}

const originality::PieceRow& row_of(const originality::Finding& finding, int number) {
  return finding.rows.at(static_cast<std::size_t>(number) - 1);
}

std::string tenths(std::int64_t steps) {
  return points(base::Ratio(steps, 1000), 1);
}

std::string shares(const originality::Finding& finding, std::string_view name,
                   const originality::Index& index, const originality::Change& change) {
  if (!index.found || !index.left || change.shares.empty()) return "";
  const auto told = [](std::int64_t low, std::int64_t high) {
    return low == high ? tenths(low) : tenths(low) + " / " + tenths(high);
  };
  std::string out =
      fmt::format("{}: {} as found, {} as left\n", name, figure(index.found), figure(index.left));
  for (const originality::PrintedShare& share : originality::printed(index, change, 1000)) {
    const originality::PieceRow& row = row_of(finding, share.row);
    out += trimmed("  " + padded(row.letter.value_or(""), 3) + padded(row.name, 34) +
                   right(told(share.low, share.high), 16));
  }
  out += trimmed("  " + padded("together", 37) +
                 right(told(index.left->low.rounded(1000) - index.found->low.rounded(1000),
                            index.left->high.rounded(1000) - index.found->high.rounded(1000)),
                       16));
  return out;
}

std::string changes(const originality::Finding& finding) {
  const std::string told =
      shares(finding, "born here", finding.born_here, finding.born_here_change) +
      shares(finding, "surface", finding.surface, finding.surface_change) +
      shares(finding, "right for the model", finding.right_for_model,
             finding.right_for_model_change);
  std::string out = ruled_heading("What changed the figures, piece by piece");
  if (told.empty()) return out + "Nothing.\n";
  return out + told + "Two figures: at the low and at the high end of the range.\n";
}

std::string way_back(const record::Record& record, const originality::Finding& finding) {
  const originality::WayBack& way = finding.way_back;
  std::string out = ruled_heading("Way back");
  if (way.returns.empty() && way.surface_losses.empty()) return out + "Nothing was taken.\n";
  for (const originality::Return& back : way.returns) {
    const originality::PieceRow& row = row_of(finding, back.row);
    const record::Piece* old = back.old_piece ? find(record, *back.old_piece) : nullptr;
    std::string line =
        padded(row.letter.value_or("-"), 3) + (old == nullptr ? row.name : old->name);
    line += fmt::format(": {}", term(back.outcome).spoken);
    if (back.because != originality::Return::Because::at_hand &&
        back.because != originality::Return::Because::was_missing) {
      line += fmt::format("; {}", term(back.because).spoken);
    }
    if (back.degree && back.degree->value < base::Decimal(100, 0)) {
      line +=
          fmt::format("; the fitting comes undone to {} in a hundred", back.degree->value.text());
    }
    if (back.reel_altered) line += "; the reel itself was altered for it";
    out += broken_into_lines(line, 0);
  }
  for (const originality::SurfaceLoss& loss : way.surface_losses) {
    const base::RatioRange gone{loss.lost.at_low - loss.recovered.at_low,
                                loss.lost.at_high - loss.recovered.at_high};
    out += broken_into_lines(fmt::format("-  {}: its surface stays lower by {}",
                                         row_of(finding, loss.row).name, points(gone, 1)),
                             0);
  }
  if (way.born_here_restored) {
    out += broken_into_lines(
        fmt::format("With what is at hand back in its place, born here is {} (as found "
                    "{}, as left {}).",
                    figure(way.born_here_restored), figure(finding.born_here.found),
                    figure(finding.born_here.left)),
        0);
  }
  if (way.surface_restored) {
    out +=
        broken_into_lines(fmt::format("Its surface is then {} (as found {}, as left {}).",
                                      figure(way.surface_restored), figure(finding.surface.found),
                                      figure(finding.surface.left)),
                          0);
  }
  return out;
}

// ---- condition
// ------------------------------------------------------------------------------------

template <class Words> std::string word_of(const condition::WordRange& range, const Words& words) {
  const auto told = [&](int number) {
    std::string word = words.at(static_cast<std::size_t>(number)).word;
    std::replace(word.begin(), word.end(), '-', ' ');
    return word;
  };
  return range.best == range.worst ? told(range.best)
                                   : told(range.worst) + " to " + told(range.best);
}

std::string axis(std::string_view name, const std::string& found, const std::string& left) {
  return trimmed(padded(std::string(name), 14) + padded(found, 32) + left);
}

std::string surface_fact(const condition::SurfaceReading& reading) {
  return reading.share ? points(*reading.share, 1) + " in a hundred" : "no area known";
}

std::string structure_fact(const condition::StructureReading& reading) {
  return reading.faults() == 0 && !reading.examined ? "not examined"
                                                    : counted(reading.faults(), "named fault");
}

std::string working_fact(const condition::WorkingReading& reading) {
  if (reading.tests == 0) return "no test";
  std::string out = fmt::format("{} of {} as made", reading.as_made, reading.tests);
  if (reading.not_safe_to_test > 0) out += fmt::format(", {} not safe", reading.not_safe_to_test);
  if (reading.not_tested > 0) out += fmt::format(", {} open", reading.not_tested);
  return out;
}

std::string completeness_fact(const condition::CompletenessReading& reading) {
  std::string out = fmt::format("{} of {} places", reading.filled, reading.seats);
  if (reading.loose > 0) out += fmt::format(", {} loose", reading.loose);
  return out;
}

std::string axes(const Graded& graded, const condition::Finding& finding) {
  const knowledge::ConditionRules& rules = graded.knowledge->condition;
  const condition::Readings& found = finding.found;
  const condition::Readings& left = finding.left;
  std::string out = ruled_heading("Condition: four axes, never one");
  out += axis("", "as found", "as left");
  out += axis("surface", word_of(found.surface.word, rules.surface.words),
              word_of(left.surface.word, rules.surface.words));
  out += axis("", surface_fact(found.surface), surface_fact(left.surface));
  out += axis("structure", word_of(found.structure.word, rules.structure),
              word_of(left.structure.word, rules.structure));
  out += axis("", structure_fact(found.structure), structure_fact(left.structure));
  out += axis("working", word_of(found.working.word, rules.working),
              word_of(left.working.word, rules.working));
  out += axis("", working_fact(found.working), working_fact(left.working));
  out += axis("completeness", word_of(found.completeness.word, rules.completeness.words),
              word_of(left.completeness.word, rules.completeness.words));
  out += axis("", completeness_fact(found.completeness), completeness_fact(left.completeness));
  out += broken_into_lines(
      fmt::format("The surface is reckoned {}.", term(finding.area_basis).spoken), 0);
  return out;
}

std::string when(bool found, bool left) {
  return found && left ? "as found and as left" : found ? "as found" : "as left";
}

/// "protection 7, appearance 4 as found and 5 as left".
std::string ratings(const condition::Corrosion& one) {
  std::string out;
  const auto add = [&](std::string_view what, const std::optional<int>& found,
                       const std::optional<int>& left) {
    if (!found && !left) return;
    out += fmt::format("{}{} ", out.empty() ? "" : ", ", what);
    if (found == left) {
      out += std::to_string(*found);
    } else if (!found || !left) {
      out += fmt::format("{} as {}", found ? *found : *left, found ? "found" : "left");
    } else {
      out += fmt::format("{} as found and {} as left", *found, *left);
    }
  };
  add("protection", one.protection_found, one.protection_left);
  add("appearance", one.appearance_found, one.appearance_left);
  return out;
}

std::string named(const record::Record& record, const record::Visit& visit,
                  const condition::Finding& finding) {
  std::string out;
  const auto severity = [](const std::optional<record::Severity>& of, std::string_view without) {
    return of ? std::string(term(*of).spoken) : std::string(without);
  };
  for (const record::Fault& fault : visit.findings.faults) {
    out += broken_into_lines(fmt::format("Fault: {}. As found: {}; as left: {}.", fault.name,
                                         severity(fault.found, "not there, or not seen"),
                                         severity(fault.left, "put right")),
                             0);
  }
  const auto name_of = [&](const record::PieceId& id) { return find(record, id)->name; };
  for (const condition::Restored& one : finding.restored) {
    out += broken_into_lines(fmt::format("Restored: {}, {}, {}.", name_of(one.piece),
                                         term(one.state).spoken, when(one.found, one.left)),
                             0);
  }
  for (const condition::Empty& one : finding.empty) {
    out += broken_into_lines(fmt::format("Empty: {}, {} as found, {} as left.",
                                         find(record, one.place)->name, one.found, one.left),
                             0);
  }
  for (const condition::Corrosion& one : finding.corrosion) {
    out +=
        broken_into_lines(fmt::format("Corrosion, {}: {}.", name_of(one.piece), ratings(one)), 0);
  }
  if (!finding.corrosion.empty()) {
    out += "Corrosion is rated from 10 (none) to 0 by the table of ISO 10289 and ASTM B537.\n";
  }
  if (!out.empty()) out.insert(0, ruled_heading("Named, whatever the words above"));
  return out;
}

std::string visit_line(const record::Visit& visit) {
  return fmt::format("taken in {}, {}", visit.taken_in.text(),
                     visit.hand_back ? "handed back " + visit.hand_back->on.text()
                                     : std::string("still at the bench"));
}

std::string earlier(const Graded& graded) {
  std::string out;
  const auto& visits = graded.assessment.visits;
  for (std::size_t i = 0; i + 1 < visits.size(); ++i) {
    const originality::Finding& finding = visits[i].originality;
    const record::Visit& visit = *find(graded.loaded.record, visits[i].visit);
    out += broken_into_lines(
        fmt::format("{}: born here {}, then {}; surface {}, then {}.", visit_line(visit),
                    figure(finding.born_here.found), figure(finding.born_here.left),
                    figure(finding.surface.found), figure(finding.surface.left)),
        0);
  }
  if (!out.empty()) out.insert(0, ruled_heading("Earlier visits"));
  return out;
}

}  // namespace

std::string grade_in_words(const Graded& graded) {
  const record::Record& record = graded.loaded.record;
  std::string out = record.reel.name;
  if (!record.reel.model.empty() && record.reel.model != record.reel.name) {
    out += ", " + record.reel.model;
  }
  out += "\n";
  const assess::VisitAssessment* answer = graded.assessment.last();
  if (answer == nullptr) return out + "It has not been at the bench yet.\n";
  const record::Visit& visit = *find(record, answer->visit);
  out += visit_line(visit) + "\n";
  out += figures(answer->originality, graded);
  out += ledger(answer->originality);
  out += changes(answer->originality);
  out += way_back(record, answer->originality);
  out += axes(graded, answer->condition);
  out += named(record, visit, answer->condition);
  out += earlier(graded);
  return out;
}

}  // namespace winchbook::answers
