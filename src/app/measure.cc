#include "app/measure.h"

#include <fmt/format.h>

#include <utility>

#include "app/find_named.h"

namespace winchbook::app {
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
      const auto piece = find_piece(draft.record(), request.part);
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
    if (said.empty()) {
      return base::error("nothing is measured",
                         "say what and how long, or --weight, --gear-ratio or --capacity",
                         "command-measure");
    }
    return Said{"measured: " + said, {}};
  };
}

}  // namespace winchbook::app
