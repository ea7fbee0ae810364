#include "answers/lookup.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/lookup_care.h"
#include "base/words_of_text.h"
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

/// "2 January 1940".
std::string day(const base::Day& day, const words::Catalogue& words) {
  return base::with_plain_spaces(words.day(day));
}

/// The latest beginning and the earliest end; hard ends that cross are a fault.
base::Diagnostics take_together(LookupAnswer& answer, const words::Catalogue& words) {
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
      words.say("answer.lookup.ends-cross",
                {{"first", day(first->day, words)}, {"last", day(last->day, words)}}));
  const bool keeps_first = first->hard;
  const bool keeps_last = last->hard;
  if (!keeps_first) first.reset();
  if (!keeps_last) last.reset();
  return {};
}

void gather_doubts(LookupAnswer& answer, const words::Catalogue& words) {
  const auto recalled = [&](const Reading& reading, const char* key,
                            const std::optional<BoundEnd>& end) {
    if (!end || end->known == Known::read) return;
    answer.recalled.push_back(
        words.say(key, {{"what", reading.what}, {"day", day(end->day, words)}}));
  };
  for (const Reading& reading : answer.readings) {
    answer.warnings.insert(answer.warnings.end(), reading.warnings.begin(), reading.warnings.end());
    answer.assumed.insert(answer.assumed.end(), reading.assumed.begin(), reading.assumed.end());
    recalled(reading, "answer.lookup.recalled-not-before", reading.bound.not_before);
    recalled(reading, "answer.lookup.recalled-not-after", reading.bound.not_after);
  }
}

/// "A piece of acetal", "A piece that bears US patent 2,185,170".
std::string subject(const LookupAnswer& answer, const words::Catalogue& words) {
  std::vector<std::string> all;
  for (const Reading& reading : answer.readings)
    all.push_back(reading.what);
  const words::Argument what{"what", words.list(all)};
  switch (answer.readings.front().as) {
    case ReadAs::material:
      return words.say("answer.lookup.of", {what});
    case ReadAs::finish:
      return words.say("answer.lookup.finished", {what});
    case ReadAs::fastener:
      return words.say("answer.lookup.with", {what});
    default:
      return words.say("answer.lookup.bears", {what});
  }
}

std::string sentence(const LookupAnswer& answer, const words::Catalogue& words) {
  const auto& first = answer.not_before;
  const auto& last = answer.not_after;
  const words::Argument who{"who", subject(answer, words)};
  if (!first && !last) return words.say("answer.lookup.any-year", {who});
  std::string begins;
  std::string ends;
  if (first) {
    const bool whole_year = first->day.month == 1 && first->day.day == 1;
    begins =
        words.say(first->hard ? "answer.lookup.cannot-before" : "answer.lookup.likely-not-before",
                  {{"day", whole_year ? std::to_string(first->day.year) : day(first->day, words)}});
  }
  if (last) {
    const bool whole_year = last->day.month == 12 && last->day.day == 31;
    ends = words.say(last->hard ? "answer.lookup.cannot-after" : "answer.lookup.likely-by",
                     {{"day", whole_year ? words.say("answer.lookup.end-of",
                                                     {{"year", std::to_string(last->day.year)}})
                                         : day(last->day, words)}});
  }
  if (!last) return words.say("answer.lookup.open", {who, {"begins", begins}});
  if (!first) return words.say("answer.lookup.ends", {who, {"ends", ends}});
  return words.say("answer.lookup.both", {who, {"begins", begins}, {"ends", ends}});
}

std::string_view kind_word(const std::optional<BoundEnd>& end) {
  if (!end) return "none";
  return end->hard ? "hard" : "soft";
}

std::vector<std::string> end_cells(const char* side, const std::optional<BoundEnd>& end,
                                   const words::Catalogue& words) {
  if (!end) return {words.say(side), words.say("answer.no-end")};
  const char* firmness = end->hard ? "answer.lookup.hard" : "answer.lookup.soft";
  const char* recalled = end->hard ? "answer.lookup.hard-recalled" : "answer.lookup.soft-recalled";
  return {words.say(side), words.say(end->known == Known::recalled ? recalled : firmness,
                                     {{"day", base::iso_text(end->day)}})};
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
  Json told{{"kind", base::word_of(reading.as)}, {"what", reading.what}};
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
    if (typed.json) return forms::Outcome{care_as_json(*answer), {}, {}};
    return tell(setting, kNoRecord,
                [&](const words::Catalogue& words) { return care_told(*answer, words); });
  }
  const auto answer = look_up(setting.library, std::move(request));
  if (!answer) return answer.faults();
  if (typed.json) return forms::Outcome{lookup_as_json(*answer), {}, {}};
  return tell(setting, kNoRecord,
              [&](const words::Catalogue& words) { return lookup_told(*answer, words); });
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
  const auto words = library.words(kNoRecord);
  if (!words) return words.faults();
  knowledge::Readings readings = knowledge::recognise_as(**marks, *makers, kind->as, request.value);
  if (!readings.faults.empty()) return placed(std::move(readings.faults));
  LookupAnswer answer{std::move(request), std::move(readings.readings), {}, {}, {}, {}, {}, {}};
  gather_doubts(answer, *words);
  if (auto faults = take_together(answer, *words); !faults.empty())
    return placed(std::move(faults));
  if (answer.not_before && answer.not_before->day > answer.request.today) {
    return placed({base::error_at({"value", 1, 1},
                                  fmt::format("it would be of {}, which is still to come",
                                              spoken_day(answer.not_before->day)),
                                  "read the year again", "stamp-date")});
  }
  answer.sentence = sentence(answer, *words);
  return answer;
}

Blocks lookup_told(const LookupAnswer& answer, const words::Catalogue& words) {
  document::Table ends;
  ends.columns = {{document::Column::Align::words, 0, true}, {}};
  ends.rows = {row_of(end_cells("answer.not-before", answer.not_before, words)),
               row_of(end_cells("answer.not-after", answer.not_after, words))};
  std::vector<std::string> why;
  for (const Reading& reading : answer.readings) {
    std::string line = reading.what + (reading.what.ends_with('.') ? "" : ".");
    for (const std::string& reason : reasons_of(reading))
      line += " " + reason;
    why.push_back(fmt::format("{} [{}]", line, reading.bound.source));
  }
  Blocks blocks{paragraph(answer.sentence), ends, document::Subhead{words.say("answer.lookup.why")},
                list_of(why)};
  const auto list = [&](const char* heading, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    blocks.emplace_back(document::Subhead{words.say(heading)});
    document::List items;
    for (const std::string& line : lines)
      items.items.push_back(document::in_lines(line + "."));
    blocks.emplace_back(std::move(items));
  };
  list("answer.lookup.assumed", answer.assumed);
  list("answer.doubts", answer.warnings);
  list("answer.lookup.recalled", answer.recalled);
  return blocks;
}

std::string lookup_as_json(const LookupAnswer& answer) {
  Json all{{"kind", answer.request.kind},
           {"value", answer.request.value},
           {"sentence", answer.sentence}};
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
