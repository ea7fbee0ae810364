#include "daybook/entries/measure.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/measure.h"
#include "base/words_of_text.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

forms::Form drag_form(MeasureRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--washer",
            "a washer of the drag, from the gear outwards, with its hole, outside and thickness "
            "in mm: \"metal-eared: to-gear 7.4 23.6 0.9\"; to-gear, to-sleeve or free",
            request.washers),
      flag("--greased", "the drag is greased", request.greased),
      flag("--dry", "the drag is dry", request.dry),
      field("--setting", "what the drag is set to at the line: \"12 N\"", request.setting),
      field("--spool-full", "across the wound line, the spool full", request.spool_full),
      field("--spool-empty", "across the core, or the last line on it", request.spool_empty),
      field("--line-strength", "of the line the drag is set for", request.line_strength),
  };
}

forms::Form form(MeasureRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form fields = {
      field("WHAT", "what is measured: \"plate diameter\"", request.what),
      field("LENGTH", "how long: \"98.4 mm\", \"3 7/8 in\"", request.length)
          .asks("How long is it?", [&request] { return !request.what.empty(); }),
      field("--weight", "of the reel without line, or of --part: \"612 g\"", request.weight),
      field("--part", "the part that is weighed", request.part),
      field("--gear-ratio", "turns of the spool for one of the handle: 3.5:1, or teeth 60:14",
            request.gear_ratio),
      field("--capacity", "how much line goes on: \"210 m\"", request.capacity),
      field("--of-line", "how thick that line is: \"0.60 mm\"", request.line)
          .asks("How thick is that line?", [&request] { return request.capacity.has_value(); }),
      field("--source", "how the capacity is known", request.source),
  };
  append(fields, drag_form(request));
  return fields;
}

/// To three places at most, with none that says nothing.
std::string reckoned(double value) {
  std::string text = fmt::format("{:.3f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string text_of(const base::Decimal& value) {
  return value.text();
}

/// "plate diameter 98.425 mm", and what else was measured.
class Told {
 public:
  template <class... Parts> void add(fmt::format_string<Parts...> words, Parts&&... parts) {
    text_ += text_.empty() ? "" : ", ";
    text_ += fmt::format(words, std::forward<Parts>(parts)...);
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

void set_size(record::Reel& reel, const std::string& what, const base::Decimal& length) {
  const auto there = std::find_if(reel.sizes.begin(), reel.sizes.end(),
                                  [&](const record::Size& one) { return one.what == what; });
  if (there == reel.sizes.end()) {
    reel.sizes.push_back({what, {length}});
  } else {
    there->size = {length};
  }
}

base::Diagnostics set_weight(const MeasureRequest& request, Draft& draft, Told& told) {
  if (!request.weight) return {};
  const base::Grams weight{request.weight->value};
  if (request.part.empty()) {
    draft.record().reel.weight = weight;
    told.add("weight {} g", text_of(weight.value));
    return {};
  }
  const auto piece = piece_named(draft, request.part);
  if (!piece) return piece.faults();
  to_change(draft.record().pieces, *piece).weight = weight;
  told.add("{} weighs {} g", piece.value()->name, text_of(weight.value));
  return {};
}

void set_reel(const MeasureRequest& request, record::Reel& reel, Told& told) {
  if (request.gear_ratio) {
    reel.gear_ratio = request.gear_ratio->turns;
    told.add("gear ratio {}", text_of(*reel.gear_ratio));
  }
  if (request.capacity && request.line) {
    reel.capacity =
        record::LineCapacity{request.capacity->value, {request.line->value}, request.source};
    told.add("{} m of {} mm line", text_of(request.capacity->value), text_of(request.line->value));
  }
}

/// The drag as it was put together now stands in the place of what stood there.
base::Diagnostics set_stack(const MeasureRequest& request, Draft& draft, record::DragStack& drag) {
  drag = record::DragStack{};
  if (request.greased || request.dry) drag.greased = request.greased;
  for (const TypedWasher& one : request.washers) {
    const auto piece = piece_named(draft, one.part);
    if (!piece) return piece.faults();
    drag.washers.push_back(one.held);
    drag.washers.back().piece = piece.value()->id;
  }
  return {};
}

base::Diagnostics set_drag(const MeasureRequest& request, Draft& draft, Told& told) {
  const bool of_drag = !request.washers.empty() || request.setting || request.spool_full ||
                       request.spool_empty || request.line_strength;
  if (!of_drag) return {};
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::DragStack drag = (*open)->drag.value_or(record::DragStack{});
  if (!request.washers.empty()) {
    if (auto faults = set_stack(request, draft, drag); !faults.empty()) return faults;
    told.add("a drag of {} washers", request.washers.size());
  }
  const auto set = [&](auto& into, const auto& figure, fmt::format_string<std::string> words) {
    if (!figure) return;
    into = {figure->value};
    told.add(words, text_of(figure->value));
  };
  set(drag.setting, request.setting, "drag set to {} N");
  set(drag.spool_full, request.spool_full, "spool full {} mm");
  set(drag.spool_empty, request.spool_empty, "spool empty {} mm");
  set(drag.line_strength, request.line_strength, "line that holds {} N");
  drag.on = date_of(request.on);
  (*open)->drag = std::move(drag);
  return {};
}

}  // namespace

base::Diagnostics read_figure(std::string_view typed, Unit unit, base::Decimal& into) {
  using base::Dimension;
  const bool length = unit == Unit::millimetres || unit == Unit::metres;
  base::Measure measure;
  auto faults = forms::read_measure(typed,
                                    length                ? Dimension::length
                                    : unit == Unit::grams ? Dimension::mass
                                                          : Dimension::force,
                                    measure);
  if (!faults.empty()) return faults;
  const std::string_view word = unit == Unit::millimetres ? "mm"
                                : unit == Unit::metres    ? "m"
                                : unit == Unit::grams     ? "g"
                                                          : "N";
  const std::size_t end = std::min(typed.find_first_not_of("0123456789."), typed.size());
  const bool as_typed = base::trimmed(typed.substr(end)) == word;
  const double value = unit == Unit::metres ? measure.value / 1000.0 : measure.value;
  return forms::read_typed(as_typed ? std::string(typed.substr(0, end)) : reckoned(value), into);
}

base::Diagnostics read_typed(std::string_view typed, TypedRatio& into) {
  const auto sides = base::parts_of(typed, ':');
  const auto first = base::Decimal::parse(base::trimmed(sides.front()));
  const auto second =
      sides.size() == 1 ? base::Decimal(1, 0) : base::Decimal::parse(base::trimmed(sides.back()));
  if (sides.size() > 2 || !first || !second || first->units() <= 0 || second->units() <= 0) {
    return {base::error(fmt::format("\"{}\" is not a ratio", typed),
                        "write turns of the spool for one of the handle, 3:1, or teeth of gear "
                        "and pinion, 48:12")};
  }
  return forms::read_typed(fmt::format("{:.3f}", first->approximate() / second->approximate()),
                           into.turns);
}

base::Diagnostics read_typed(std::string_view typed, TypedWasher& into) {
  const std::size_t colon = typed.rfind(':');
  const auto words = base::words_of(colon == std::string_view::npos ? "" : typed.substr(colon + 1));
  if (words.empty() || words.size() > 4) {
    return {base::error(fmt::format("\"{}\" does not say how the washer is held", typed),
                        "say \"PART: to-gear 7.4 23.6 0.9\": to-gear, to-sleeve or free, then its "
                        "hole, outside and thickness in mm",
                        "command-washer")};
  }
  TypedWasher washer;
  washer.part = typed.substr(0, colon);
  auto& held = washer.held;
  auto faults = forms::read_typed(words.front(), held.keyed);
  std::size_t next = 1;
  for (auto* figure : {&held.inside, &held.outside, &held.thickness}) {
    if (faults.empty() && next < words.size()) faults = forms::read_typed(words[next], *figure);
    ++next;
  }
  if (faults.empty()) into = std::move(washer);
  return faults;
}

base::Result<Said> measure(const MeasureRequest& request, Draft& draft) {
  Told told;
  if (!request.what.empty() && request.length) {
    set_size(draft.record().reel, request.what, request.length->value);
    told.add("{} {} mm", request.what, text_of(request.length->value));
  }
  if (auto faults = set_weight(request, draft, told); !faults.empty()) return faults;
  set_reel(request, draft.record().reel, told);
  if (auto faults = set_drag(request, draft, told); !faults.empty()) return faults;
  if (told.text().empty()) {
    return base::of_command(base::error(
        "nothing is measured", "say what and how long, or --weight, --gear-ratio or --capacity",
        "command-measure"));
  }
  return Said{"measured: " + told.text(), {}};
}

forms::Job measure_job() {
  return entry_job<MeasureRequest>(form, measure);
}

}  // namespace winchbook::daybook
