#include "answers/shelf.h"
#include "json/json.h"

namespace winchbook::answers {
namespace {

using json::Json;

using json::or_null;

/// Millimetres; null where nothing is written that is a number: nobody validated the record.
Json number(const std::string& text) {
  const auto decimal = base::Decimal::parse(text);
  return decimal ? Json(decimal->approximate()) : Json(nullptr);
}

Json told(const ShelfFitting& fitting) {
  return {{"piece", fitting.piece},       {"place", fitting.place},
          {"on", or_null(fitting.on)},    {"donor", or_null(fitting.donor)},
          {"bore", number(fitting.bore)}, {"outside", number(fitting.outside)}};
}

Json told(const ShelfReel& reel) {
  return {{"folder", reel.folder.string()},
          {"name", or_null(reel.name)},
          {"maker", or_null(reel.maker)},
          {"model", or_null(reel.model)},
          {"kind", or_null(reel.kind)},
          {"owner", or_null(reel.owner)},
          {"taken_in", or_null(reel.taken_in)},
          {"handed_back", or_null(reel.handed_back)},
          {"open", reel.open},
          {"fitted", json::list(reel.fitted, [](const ShelfFitting& one) { return told(one); })}};
}

}  // namespace

std::string shelf_as_json(const Shelf& shelf) {
  const auto not_read = [](const base::Diagnostic& one) {
    return Json{{"file", one.where.file}, {"message", one.message}};
  };
  const auto reel = [](const ShelfReel& one) { return told(one); };
  return json::answer("shelf", {{"looked", shelf.looked},
                                {"not_read", json::list(shelf.warnings, not_read)},
                                {"reels", json::list(shelf.reels, reel)}});
}

}  // namespace winchbook::answers
