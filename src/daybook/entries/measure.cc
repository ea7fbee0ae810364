#include "daybook/entries/measure.h"

#include <fmt/format.h>

#include <array>
#include <iterator>
#include <sstream>
#include <utility>

#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

void set_size(Draft& draft, const std::string& what, const std::string& length) {
  const pugi::xml_node reel = draft.section("reel");
  for (const pugi::xml_node size : reel.children("size")) {
    if (what == size.child("what").text().get()) {
      draft.set(size, "length", length);
      return;
    }
  }
  const pugi::xml_node size = draft.add(reel, "size");
  draft.add(size, "what", what);
  draft.add(size, "length", length);
}

/// The words of a text, parted by blanks.
std::vector<std::string> words_of(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), std::istream_iterator<std::string>()};
}

base::Diagnostics add_washer(Draft& draft, pugi::xml_node drag, const std::string& text) {
  const std::size_t colon = text.rfind(':');
  const auto words = words_of(colon == std::string::npos ? "" : text.substr(colon + 1));
  if (words.empty() || words.size() > 4) {
    return {base::of_command(
        base::of_command(base::error(fmt::format("\"{}\" does not say how the washer is held", text),
                    "say \"PART: to-gear 7.4 23.6 0.9\": to-gear, to-sleeve or free, then its "
                    "hole, outside and thickness in mm",
                    "command-washer")))};
  }
  const auto piece = record::find_piece(draft.record(), text.substr(0, colon));
  if (!piece) return piece.faults();
  const pugi::xml_node washer = draft.add(drag, "washer");
  draft.add_ref(washer, "piece", piece.value()->id.text);
  draft.add(washer, "keyed", words.front());
  constexpr std::array kMeasures{"inside", "outside", "thickness"};
  for (std::size_t i = 1; i < words.size(); ++i)
    draft.add(washer, kMeasures.at(i - 1), words[i]);
  return {};
}

/// The drag as it was put together now stands in the place of what stood there.
base::Diagnostics set_drag(Draft& draft, const MeasureRequest& request) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  const pugi::xml_node drag = draft.need(open->element, "drag");
  if (!request.washers.empty()) {
    draft.empty(drag);
    for (const std::string& one : request.washers) {
      if (auto faults = add_washer(draft, drag, one); !faults.empty()) return faults;
    }
    draft.add(drag, "greased", request.greased ? "yes" : "no");
  }
  for (const auto& [name, text] :
       {std::pair{"setting", &request.setting}, std::pair{"spool-full", &request.spool_full},
        std::pair{"spool-empty", &request.spool_empty},
        std::pair{"line-strength", &request.line_strength}}) {
    if (!text->empty()) draft.set(drag, name, *text);
  }
  return {};
}

bool of_drag(const MeasureRequest& request) {
  return !request.washers.empty() || !request.setting.empty() || !request.spool_full.empty() ||
         !request.spool_empty.empty() || !request.line_strength.empty();
}

}  // namespace

Change measure(MeasureRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    std::string said;
    const auto tell = [&](const std::string& one) { said += (said.empty() ? "" : ", ") + one; };
    if (!request.what.empty()) {
      set_size(draft, request.what, request.length);
      tell(fmt::format("{} {} mm", request.what, request.length));
    }
    if (!request.weight.empty() && !request.part.empty()) {
      const auto piece = record::find_piece(draft.record(), request.part);
      if (!piece) return piece.faults();
      draft.set(draft.by_id(piece.value()->id.text), "weight", request.weight);
      tell(fmt::format("{} weighs {} g", piece.value()->name, request.weight));
    } else if (!request.weight.empty()) {
      draft.set(draft.section("reel"), "weight", request.weight);
      tell(fmt::format("weight {} g", request.weight));
    }
    if (!request.gear_ratio.empty()) {
      draft.set(draft.section("reel"), "gear-ratio", request.gear_ratio);
      tell(fmt::format("gear ratio {}", request.gear_ratio));
    }
    if (!request.capacity.empty()) {
      const pugi::xml_node capacity = draft.need(draft.section("reel"), "capacity");
      draft.set(capacity, "length", request.capacity);
      draft.set(capacity, "line-diameter", request.line);
      draft.set(capacity, "source", request.source);
      tell(fmt::format("{} m of {} mm line", request.capacity, request.line));
    }
    if (of_drag(request)) {
      if (auto faults = set_drag(draft, request); !faults.empty()) return faults;
      if (!request.washers.empty())
        tell(fmt::format("a drag of {} washers", request.washers.size()));
      if (!request.setting.empty()) tell(fmt::format("drag set to {} N", request.setting));
      if (!request.spool_full.empty()) tell(fmt::format("spool full {} mm", request.spool_full));
      if (!request.spool_empty.empty()) tell(fmt::format("spool empty {} mm", request.spool_empty));
      if (!request.line_strength.empty())
        tell(fmt::format("line that holds {} N", request.line_strength));
    }
    if (said.empty()) {
      return base::of_command(base::error(
          "nothing is measured", "say what and how long, or --weight, --gear-ratio or --capacity",
          "command-measure"));
    }
    return Said{"measured: " + said, {}};
  };
}

}  // namespace winchbook::daybook
