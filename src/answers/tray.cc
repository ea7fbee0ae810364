#include "answers/tray.h"

#include <utility>

#include "json/json.h"

namespace winchbook::answers {
namespace {

forms::Form form(TrayRequest& request) {
  return {forms::field("PATH", "the reel's folder, or its record.xml", request.path).must(),
          forms::flag("--json", "the tray as JSON (schemas/tray.schema.json)", request.json)};
}

base::Result<forms::Outcome> tell_tray(const TrayRequest& request, forms::Setting& setting) {
  const auto loaded = setting.library.record(request.path);
  if (!loaded) return loaded.faults();
  const record::Visit* visit = record::last_visit(loaded->record);
  if (visit == nullptr) {
    return base::error("the reel was not taken in yet", "begin with winchbook intake", "visit");
  }
  const auto account = assess::tray::account(loaded->record, *visit);
  if (request.json) return forms::Outcome{tray_as_json(account), {}, {}};
  return tell(setting, loaded->record.language,
              [&](const words::Catalogue& words) { return tray_told(account, words); });
}

std::string gone_where(const record::TrayLine& line, const words::Catalogue& words) {
  std::vector<std::string> parts;
  for (const auto& [count, key] : {std::pair{line.refitted, "answer.tray.refitted"},
                                   std::pair{line.bagged, "answer.tray.bagged"},
                                   std::pair{line.to_owner, "answer.tray.to-owner"},
                                   std::pair{line.kept_by_bench, "answer.tray.kept-by-bench"},
                                   std::pair{line.lost, "answer.tray.lost"},
                                   std::pair{line.scrapped, "answer.tray.scrapped"}}) {
    if (count > 0) parts.push_back(words.say(key, {{"count", count}}));
  }
  return parts.empty() ? words.say("answer.tray.nothing-back") : words.joined("join.comma", parts);
}

std::string piece_line(const assess::tray::PieceAccount& one, const words::Catalogue& words) {
  std::vector<std::string> off{words.say("answer.tray.off", {{"count", one.line.taken_off}})};
  if (one.line.found_loose > 0)
    off.push_back(words.say("answer.tray.loose", {{"count", one.line.found_loose}}));
  std::vector<std::string> gone{words.say(
      "answer.tray.gone",
      {{"off", words.joined("join.comma", off)}, {"where", gone_where(one.line, words)}})};
  const int open = one.unaccounted();
  if (open > 0) gone.push_back(words.say("answer.tray.unaccounted", {{"count", open}}));
  if (open < 0) gone.push_back(words.say("answer.tray.too-many", {{"count", -open}}));
  return words.joined("join.semicolon", gone);
}

std::string place_line(const assess::tray::PlaceAccount& one, const words::Catalogue& words) {
  if (one.filled() != assess::tray::Filled::empty) {
    return words.say("answer.tray.place",
                     {{"name", one.name}, {"sits", one.sits}, {"belongs", one.belongs}});
  }
  return words.say(one.may_be_empty ? "answer.tray.may-be-empty" : "answer.tray.empty",
                   {{"name", one.name}});
}

}  // namespace

Blocks tray_told(const assess::tray::Account& account, const words::Catalogue& words) {
  document::Table pieces;
  pieces.columns = {{document::Column::Align::words, 0, true}, {}};
  for (const assess::tray::PieceAccount& one : account.pieces)
    pieces.rows.push_back(row_of({one.name, piece_line(one, words)}));
  std::string places;
  for (const assess::tray::PlaceAccount& one : account.places) {
    if (one.filled() != assess::tray::Filled::filled) places += place_line(one, words) + "\n";
  }
  places += words.say(account.closed() ? "answer.tray.closed" : "answer.tray.not-closed");
  Blocks blocks;
  if (!pieces.rows.empty()) blocks.emplace_back(std::move(pieces));
  blocks.emplace_back(next_line(places));
  return blocks;
}

std::string tray_as_json(const assess::tray::Account& account) {
  const auto piece = [](const assess::tray::PieceAccount& one) {
    return json::Json{{"piece", one.piece.text},         {"name", one.name},
                      {"taken_off", one.line.taken_off}, {"found_loose", one.line.found_loose},
                      {"refitted", one.line.refitted},   {"bagged", one.line.bagged},
                      {"to_owner", one.line.to_owner},   {"kept_by_bench", one.line.kept_by_bench},
                      {"lost", one.line.lost},           {"scrapped", one.line.scrapped},
                      {"unaccounted", one.unaccounted()}};
  };
  const auto place = [](const assess::tray::PlaceAccount& one) {
    return json::Json{{"place", one.place.text},
                      {"name", one.name},
                      {"belongs", one.belongs},
                      {"sits", one.sits},
                      {"may_be_empty", one.may_be_empty}};
  };
  return json::answer("tray", {{"closed", account.closed()},
                               {"pieces", json::list(account.pieces, piece)},
                               {"places", json::list(account.places, place)}});
}

forms::Job tray_job() {
  return forms::job_of<TrayRequest>(form, tell_tray);
}

}  // namespace winchbook::answers
