#include <nlohmann/json.hpp>

#include "answers/shelf.h"

namespace winchbook::answers {
namespace {

using Json = nlohmann::ordered_json;

Json or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

Json told(const ShelfFitting& fitting) {
  return {{"piece", fitting.piece},        {"place", fitting.place},
          {"on", or_null(fitting.on)},     {"donor", or_null(fitting.donor)},
          {"bore", or_null(fitting.bore)}, {"outside", or_null(fitting.outside)}};
}

Json told(const ShelfReel& reel) {
  Json fitted = Json::array();
  for (const ShelfFitting& one : reel.fitted)
    fitted.push_back(told(one));
  return {{"folder", reel.folder.string()},
          {"name", or_null(reel.name)},
          {"maker", or_null(reel.maker)},
          {"model", or_null(reel.model)},
          {"kind", or_null(reel.kind)},
          {"owner", or_null(reel.owner)},
          {"taken-in", or_null(reel.taken_in)},
          {"handed-back", or_null(reel.handed_back)},
          {"open", reel.open},
          {"fitted", std::move(fitted)}};
}

}  // namespace

std::string shelf_as_json(const Shelf& shelf) {
  Json reels = Json::array();
  for (const ShelfReel& one : shelf.reels)
    reels.push_back(told(one));
  Json not_read = Json::array();
  for (const base::Diagnostic& one : shelf.warnings)
    not_read.push_back({{"file", one.where.file}, {"why", one.message}});
  const Json all = {
      {"looked", shelf.looked}, {"not-read", std::move(not_read)}, {"reels", std::move(reels)}};
  // What is not UTF-8 in a file's name is told with the sign for it.
  return all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace winchbook::answers
