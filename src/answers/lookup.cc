#include "answers/lookup.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/lines.h"
#include "answers/lookup_care.h"
#include "json/json.h"
#include "knowledge/stamp_dates.h"

namespace winchbook::answers {
namespace {

using json::Json;
using knowledge::BoundEnd;
using knowledge::Known;
using knowledge::ReadAs;
using knowledge::Reading;
using knowledge::spoken_day;

constexpr std::size_t kMostBytes = 10'000;

struct Kind {
  std::string_view word;
  ReadAs as;
};

/// "stamp" is the whole text of a stamp, whatever it says.
constexpr Kind kKinds[] = {
    {"us-patent", ReadAs::us_patent}, {"us-patent-date", ReadAs::us_patent_date},
    {"us-design", ReadAs::us_design}, {"us-reissue", ReadAs::us_reissue},
    {"gb-design", ReadAs::gb_design}, {"gb-patent", ReadAs::gb_patent},
    {"mark", ReadAs::mark},           {"country", ReadAs::country},
    {"address", ReadAs::address},     {"material", ReadAs::material},
    {"finish", ReadAs::finish},       {"fastener", ReadAs::fastener},
    {"maker", ReadAs::maker},         {"stamp", ReadAs::mark},
};

const Kind* find_kind(std::string_view word) {
  const auto* const found = std::find_if(std::begin(kKinds), std::end(kKinds),
                                         [&](const Kind& kind) { return kind.word == word; });
  return found == std::end(kKinds) ? nullptr : found;
}

base::Diagnostics placed(base::Diagnostics faults) {
  for (base::Diagnostic& fault : faults)
    fault.where.file = "value";
  return faults;
}

/// "us-patent, us-patent-date, …, care"
std::string all_kinds() {
  std::string all;
  for (const Kind& kind : kKinds)
    all += std::string(kind.word) + ", ";
  return all + "care";
}

base::Diagnostic unknown_kind(const LookupRequest& request) {
  return base::of_command(
      base::error(fmt::format("there is no kind \"{}\" to look up", request.kind),
                  "it knows " + all_kinds(), "command-kind"));
}

void take_stricter(std::optional<BoundEnd>& end, const std::optional<BoundEnd>& other,
                   bool begins) {
  if (!other) return;
  const bool later = end && other->day > end->day;
  const bool earlier = end && other->day < end->day;
  const bool firmer = end && other->day == end->day && other->hard;
  if (!end || firmer || (begins ? later : earlier)) end = other;
}

/// The latest beginning and the earliest end; hard ends that cross are a fault.
base::Diagnostics take_together(LookupAnswer& answer) {
  for (const Reading& reading : answer.readings) {
    take_stricter(answer.not_before, reading.bound.not_before, true);
    take_stricter(answer.not_after, reading.bound.not_after, false);
  }
  auto& first = answer.not_before;
  auto& last = answer.not_after;
  if (!first || !last || first->day <= last->day) return {};
  if (first->hard && last->hard) {
    return {
        base::error(fmt::format("it says two things that exclude each other: not before {}, and "
                                "not after {}",
                                spoken_day(first->day), spoken_day(last->day)),
                    "read it again, or look its parts up one by one", "stamp-agreement")};
  }
  answer.warnings.push_back(
      fmt::format("its ends cross (not before {}, not after {}): a soft one "
                  "gives way, and is not told",
                  spoken_day(first->day), spoken_day(last->day)));
  const bool keeps_first = first->hard;
  const bool keeps_last = last->hard;
  if (!keeps_first) first.reset();
  if (!keeps_last) last.reset();
  return {};
}

void gather_doubts(LookupAnswer& answer) {
  const auto recalled = [&](const Reading& reading, const char* side,
                            const std::optional<BoundEnd>& end) {
    if (!end || end->known == Known::read) return;
    answer.recalled.push_back(fmt::format("{}: {} {}", reading.what, side, spoken_day(end->day)));
  };
  for (const Reading& reading : answer.readings) {
    answer.warnings.insert(answer.warnings.end(), reading.warnings.begin(), reading.warnings.end());
    answer.assumed.insert(answer.assumed.end(), reading.assumed.begin(), reading.assumed.end());
    recalled(reading, "not before", reading.bound.not_before);
    recalled(reading, "not after", reading.bound.not_after);
  }
}

/// "A piece of acetal", "A piece that bears US patent 2,185,170".
std::string subject(const LookupAnswer& answer) {
  std::string all;
  for (std::size_t i = 0; i < answer.readings.size(); ++i) {
    if (i > 0) all += i + 1 == answer.readings.size() ? " and " : ", ";
    all += answer.readings[i].what;
  }
  switch (answer.readings.front().as) {
    case ReadAs::material:
      return "A piece of " + all;
    case ReadAs::finish:
      return "A piece finished with " + all;
    case ReadAs::fastener:
      return "A piece with " + all;
    default:
      return "A piece that bears " + all;
  }
}

std::string first_told(const base::Day& day) {
  return day.month == 1 && day.day == 1 ? std::to_string(day.year) : spoken_day(day);
}

std::string last_told(const base::Day& day) {
  return day.month == 12 && day.day == 31 ? fmt::format("the end of {}", day.year)
                                          : spoken_day(day);
}

std::string sentence(const LookupAnswer& answer) {
  const auto& first = answer.not_before;
  const auto& last = answer.not_after;
  const std::string who = subject(answer);
  if (!first && !last) return who + " can be of any year, as far as that tells.";
  std::string out = who;
  if (first) {
    out +=
        fmt::format(" {} made before {}", first->hard ? "cannot have been" : "was most likely not",
                    first_told(first->day));
  }
  if (last) {
    out += first ? ", and" : "";
    out += last->hard ? fmt::format(" cannot have been made after {}", last_told(last->day))
                      : fmt::format(" was most likely made by {}", last_told(last->day));
  } else {
    out += "; how much later, it does not say";
  }
  return out + ".";
}

std::string_view kind_word(const std::optional<BoundEnd>& end) {
  if (!end) return "none";
  return end->hard ? "hard" : "soft";
}

std::string end_line(const char* side, const std::optional<BoundEnd>& end) {
  if (!end) return fmt::format("  {}  no end known\n", side);
  return fmt::format("  {}  {} ({}{})\n", side, base::iso_text(end->day),
                     end->hard ? "hard" : "soft",
                     end->known == Known::recalled ? ", recalled" : "");
}

std::string list(const char* heading, const std::vector<std::string>& lines) {
  if (lines.empty()) return "";
  std::string out = ruled_heading(heading);
  for (const std::string& line : lines)
    out += with_hanging_lead("  -  ", line + ".");
  return out;
}

Json day_or_null(const std::optional<BoundEnd>& end) {
  return end ? json::date(end->day) : Json(nullptr);
}

void add_bound(Json& to, const std::optional<BoundEnd>& first,
               const std::optional<BoundEnd>& last) {
  to["not_before"] = day_or_null(first);
  to["not_after"] = day_or_null(last);
  to["not_before_kind"] = kind_word(first);
  to["not_after_kind"] = kind_word(last);
}

std::vector<std::string> reasons_of(const Reading& reading) {
  std::vector<std::string> reasons = reading.reasons;
  if (!reading.bound.basis.empty()) reasons.push_back(reading.bound.basis);
  return reasons;
}

Json reading_as_json(const Reading& reading) {
  Json told{{"kind", knowledge::word(reading.as)}, {"what", reading.what}};
  add_bound(told, reading.bound.not_before, reading.bound.not_after);
  const auto known = [](const std::optional<BoundEnd>& end) {
    return !end ? Json(nullptr) : Json(end->known == Known::read ? "read" : "recalled");
  };
  told["not_before_known"] = known(reading.bound.not_before);
  told["not_after_known"] = known(reading.bound.not_after);
  told["reasons"] = reasons_of(reading);
  told["source"] = reading.bound.source;
  return told;
}

/// What is typed of a mark.
struct LookupTyped {
  LookupRequest request;
  std::vector<std::string> words;  ///< of the value
  bool json = false;
};

forms::Form form(LookupTyped& typed) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("KIND", all_kinds(), typed.request.kind).must(),
      field("VALUE", "as it is stamped: \"2,185,170\", \"Chicago 7, Ill.\"", typed.words).must(),
      field("--maker", "a maker file of your own, besides shared/makers/", typed.request.makers),
      flag("--json", "the answer as JSON (schemas/lookup.schema.json; schemas/care.schema.json)",
           typed.json),
      today(typed.request.today),
  };
}

base::Result<forms::Outcome> run(const LookupTyped& typed, forms::Setting& setting) {
  LookupRequest request = typed.request;
  request.value = fmt::format("{}", fmt::join(typed.words, " "));
  if (request.kind == "care") {
    const auto answer = look_up_care(setting.library, request.value);
    if (!answer) return answer.faults();
    return forms::Outcome{typed.json ? care_as_json(*answer) : care_in_words(*answer), {}, {}};
  }
  const auto answer = look_up(setting.library, std::move(request));
  if (!answer) return answer.faults();
  return forms::Outcome{typed.json ? lookup_as_json(*answer) : lookup_in_words(*answer), {}, {}};
}

}  // namespace

base::Result<LookupAnswer> look_up(library::Library& library, LookupRequest request) {
  const Kind* kind = find_kind(request.kind);
  if (kind == nullptr) return unknown_kind(request);
  if (request.value.size() > kMostBytes) {
    return base::error(fmt::format("the value has {} bytes, and {} are the most",
                                   request.value.size(), kMostBytes),
                       "look one stamp up at a time", "lookup-size");
  }
  const auto marks = library.marks();
  if (!marks) return marks.faults();
  const auto makers = library.makers(request.makers);
  if (!makers) return makers.faults();
  knowledge::Readings readings = knowledge::recognise_as(**marks, *makers, kind->as, request.value);
  if (!readings.faults.empty()) return placed(std::move(readings.faults));
  LookupAnswer answer{std::move(request), std::move(readings.readings), {}, {}, {}, {}, {}};
  gather_doubts(answer);
  if (auto faults = take_together(answer); !faults.empty()) return placed(std::move(faults));
  if (answer.not_before && answer.not_before->day > answer.request.today) {
    return placed({base::error_at({"value", 1, 1},
                                  fmt::format("it would be of {}, which is still to come",
                                              spoken_day(answer.not_before->day)),
                                  "read the year again", "stamp-date")});
  }
  return answer;
}

std::string lookup_in_words(const LookupAnswer& answer) {
  std::string out = broken_into_lines(sentence(answer)) + "\n";
  out += end_line("not before", answer.not_before) + end_line("not after ", answer.not_after);
  out += ruled_heading("Why");
  for (const Reading& reading : answer.readings) {
    std::string line = reading.what + (reading.what.ends_with('.') ? "" : ".");
    for (const std::string& reason : reasons_of(reading))
      line += " " + reason;
    out += with_hanging_lead("  -  ", fmt::format("{} [{}]", line, reading.bound.source));
  }
  out += list("Assumed", answer.assumed);
  out += list("Doubts", answer.warnings);
  out += list("Only recalled, not looked up", answer.recalled);
  return out;
}

std::string lookup_as_json(const LookupAnswer& answer) {
  Json all{{"kind", answer.request.kind},
           {"value", answer.request.value},
           {"sentence", sentence(answer)}};
  add_bound(all, answer.not_before, answer.not_after);
  std::vector<std::string> reasons;
  for (const Reading& reading : answer.readings) {
    for (const std::string& reason : reasons_of(reading))
      reasons.push_back(reason);
  }
  all["reasons"] = std::move(reasons);
  all["warnings"] = answer.warnings;
  all["assumed"] = answer.assumed;
  all["recalled"] = answer.recalled;
  all["readings"] = json::list(answer.readings, reading_as_json);
  return json::answer("lookup", all);
}

forms::Job lookup_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
