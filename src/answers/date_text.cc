#include <fmt/format.h>

#include <algorithm>

#include "answers/date.h"
#include "answers/date_words.h"
#include "answers/lines.h"

namespace winchbook::answers {
namespace {

namespace dating = assess::dating;
using dating::Finding;
using dating::LeftOut;
using record::EndFirmness;

/// The answer told on a terminal, a part after the other.
class Telling {
 public:
  explicit Telling(const Graded& graded)
      : record_(graded.loaded.record), finding_(graded.assessment.dating) {}

  std::string told() const {
    std::string out = record_.reel.name;
    if (!record_.reel.model.empty() && record_.reel.model != record_.reel.name)
      out += ", " + record_.reel.model;
    out += "\n\n" + broken_into_lines(answer());
    out += ends() + likeliest() + steps() + disagreements() + doubts() + left_out() + assumptions();
    return out;
  }

 private:
  std::string answer() const {
    std::string out;
    if (unsettled()) {
      out = "No year fits all of it: " + list_of_ways() + " " + made_in() +
            ", whichever of them it is.";
    } else {
      out = made_in() + ".";
      for (const dating::Suspect& suspect : finding_.suspects) {
        out += fmt::format(" {} does not fit that and was left out of it.",
                           piece_name(record_, suspect.piece));
      }
    }
    if (finding_.attributed && known()) {
      out += " No mark says so: the years are attributed, on the grounds below.";
    }
    return out;
  }

  bool known() const { return finding_.window.not_before || finding_.window.not_after; }

  bool unsettled() const {
    return std::any_of(finding_.conflicts.begin(), finding_.conflicts.end(), [](const auto& one) {
      return one.tier == dating::Tier::hard && one.alternatives_in_all > 1;
    });
  }

  /// "It was made between 1947 and 1948".
  std::string made_in() const {
    const auto& first = finding_.window.not_before;
    const auto& last = finding_.window.not_after;
    const auto soft = [](const auto& end) { return end && end->firmness == EndFirmness::soft; };
    const char* how = soft(first) || soft(last) ? "It was most likely made" : "It was made";
    if (first && last && first->day.year == last->day.year)
      return fmt::format("{} in {}", how, first->day.year);
    if (first && last && last->day.year - first->day.year == 1)
      return fmt::format("{} in {} or {}", how, first->day.year, last->day.year);
    if (first && last)
      return fmt::format("{} between {} and {}", how, first->day.year, last->day.year);
    if (first)
      return fmt::format("{} in {} or later; nothing says how much later", how, first->day.year);
    if (last)
      return fmt::format("{} in {} or before; nothing says how long before", how, last->day.year);
    return "Nothing on it says when it was made";
  }

  std::string list_of_ways() const {
    const auto conflict =
        std::find_if(finding_.conflicts.begin(), finding_.conflicts.end(),
                     [](const auto& one) { return one.tier == dating::Tier::hard; });
    return ways(*conflict);
  }

  std::string end_line(const char* name, const std::optional<dating::WindowEnd>& end) const {
    if (!end) return fmt::format("  {}  no end known\n", name);
    return with_hanging_lead(fmt::format("  {}  ", name),
                             fmt::format("{}, by {}; {}", spoken(end->day),
                                         speaker(record_, finding_.evidence[end->evidence]),
                                         term(end->firmness).spoken));
  }

  std::string ends() const {
    if (!known()) return "";
    return "\n" + end_line("not before", finding_.window.not_before) +
           end_line("not after ", finding_.window.not_after);
  }

  static std::string years(const dating::YearRange& range) {
    return range.first == range.last ? fmt::format("{}", range.first)
                                     : fmt::format("{} to {}", range.first, range.last);
  }

  std::string likeliest() const {
    if (!finding_.range50 || !finding_.range90) return "";
    return broken_into_lines(fmt::format("Half of the likelihood lies in {}, nine tenths in {}.",
                                         years(*finding_.range50), years(*finding_.range90)),
                             2);
  }

  std::string because(std::size_t i) const {
    const dating::Evidence& evidence = finding_.evidence[i];
    std::string out = evidence.because;
    if (out.empty() && evidence.marking) {
      const record::Marking* mark = find(record_, *evidence.marking);
      if (mark != nullptr && mark->says) out = plain_text(record_, mark->says->because);
    }
    if (!evidence.source.empty()) out += (out.empty() ? "" : " ") + ("[" + evidence.source + "]");
    return out;
  }

  std::string steps() const {
    if (finding_.steps.empty()) return "";
    std::string out = ruled_heading("Why, step by step");
    int number = 1;
    for (const dating::Step& step : finding_.steps) {
      const dating::Evidence& evidence = finding_.evidence[step.evidence];
      const bool begins = step.side == dating::Side::not_before;
      const dating::End& end = begins ? *evidence.not_before : *evidence.not_after;
      out += with_hanging_lead(
          fmt::format("{:>3}  ", number++),
          fmt::format("{} {}: {}; {}, {}. {}", term(step.side).spoken, spoken(end.day),
                      speaker(record_, evidence), term(end.firmness).word, term(end.basis).spoken,
                      because(step.evidence)));
    }
    return out;
  }

  std::string names(const std::vector<record::PieceId>& pieces) const {
    std::string out;
    for (const record::PieceId& piece : pieces)
      out += (out.empty() ? "" : " and ") + piece_name(record_, piece);
    return out;
  }

  std::string span(const dating::DaySpan& days) const {
    if (days.first && days.last)
      return fmt::format("{} to {}", spoken(*days.first), spoken(*days.last));
    if (days.first) return fmt::format("from {}", spoken(*days.first));
    if (days.last) return fmt::format("until {}", spoken(*days.last));
    return "at any time";
  }

  std::string ways(const dating::Conflict& conflict) const {
    if (conflict.alternatives_in_all == 1) {
      const dating::Alternative& way = conflict.alternatives.front();
      return fmt::format("{} must go; the rest agree on {}.", names(way.must_go), span(way.agreed));
    }
    std::string out = "either ";
    for (std::size_t i = 0; i < conflict.alternatives.size(); ++i) {
      const dating::Alternative& way = conflict.alternatives[i];
      if (i > 0) out += ", or ";
      out += fmt::format("{} must go (the rest then: {})", names(way.must_go), span(way.agreed));
    }
    if (conflict.alternatives_in_all > conflict.alternatives.size()) {
      out += fmt::format(", or in one of {} ways more",
                         conflict.alternatives_in_all - conflict.alternatives.size());
    }
    return out + ", and nothing here says which.";
  }

  std::string disagreements() const {
    if (finding_.conflicts.empty()) return "";
    std::string out = ruled_heading("What does not belong");
    for (const dating::Conflict& conflict : finding_.conflicts) {
      out += broken_into_lines(
          fmt::format("By its {}: {}", term(conflict.tier).spoken, ways(conflict)));
    }
    for (const dating::Suspect& suspect : finding_.suspects) {
      out += with_hanging_lead("  -  ", proposal(suspect));
      for (const std::size_t i : suspect.evidence)
        out += with_hanging_lead("     because  ",
                                 speaker(record_, finding_.evidence[i]) + ". " + because(i));
    }
    return out;
  }

  std::string proposal(const dating::Suspect& suspect) const {
    std::string out = fmt::format(
        "{}: its own marks say {}, the others {}. ", piece_name(record_, suspect.piece),
        suspect.own.empty() ? "two things at once" : span(suspect.own), span(suspect.others));
    if (suspect.already_open) {
      return out + "The record leaves open whether it was born here, and that is as it should be.";
    }
    return out +
           "Proposed for the first ledger: born here, not determined. The record was not changed.";
  }

  std::string doubts() const {
    if (finding_.warnings.empty()) return "";
    std::string out = ruled_heading("Doubts");
    for (const dating::Warning& warning : finding_.warnings) {
      std::string line =
          warning.words.empty() ? std::string(term(warning.kind).spoken) : warning.words;
      if (warning.evidence) {
        const std::string side =
            warning.side ? fmt::format(", {}", term(*warning.side).spoken) : std::string();
        line = fmt::format("{}{}: {}", speaker(record_, finding_.evidence[*warning.evidence]), side,
                           line);
      }
      out += with_hanging_lead("  -  ", line + ".");
    }
    return out;
  }

  /// Nothing of the year; or that what a bench made was made at the bench.
  static bool says_nothing(const dating::Evidence& evidence) {
    if (evidence.grounds == dating::Grounds::making) return true;
    return !evidence.not_before && !evidence.not_after;
  }

  std::string left_out() const {
    std::string out;
    for (std::size_t i = 0; i < finding_.evidence.size(); ++i) {
      const LeftOut reason = finding_.uses[i].left_out;
      if (reason == LeftOut::no || says_nothing(finding_.evidence[i])) continue;
      out += with_hanging_lead(
          "  -  ",
          fmt::format("{}: {}.", speaker(record_, finding_.evidence[i]), term(reason).spoken));
    }
    return out.empty() ? out : ruled_heading("Left out") + out;
  }

  std::string assumptions() const {
    if (finding_.profile.empty()) return "";
    std::string out = ruled_heading("What the likelihood takes for granted");
    for (const dating::ProfileAssumption& one : dating::kProfileAssumptions)
      out += with_hanging_lead("  -  ", fmt::format("{}.", one.reason));
    return out;
  }

  const record::Record& record_;
  const Finding& finding_;
};

}  // namespace

std::string date_in_words(const Graded& graded) {
  return Telling(graded).told();
}

}  // namespace winchbook::answers
