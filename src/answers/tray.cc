#include "answers/tray.h"

#include <fmt/format.h>

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
  return forms::Outcome{request.json ? tray_as_json(account) : tray_in_words(account), {}, {}};
}

std::string gone_where(const record::TrayLine& line) {
  std::string text;
  for (const auto& [count, name] :
       {std::pair{line.refitted, "refitted"}, std::pair{line.bagged, "bagged"},
        std::pair{line.to_owner, "to the owner"},
        std::pair{line.kept_by_bench, "kept by the bench"}, std::pair{line.lost, "lost"},
        std::pair{line.scrapped, "scrapped"}}) {
    if (count > 0) text += fmt::format("{}{} {}", text.empty() ? "" : ", ", count, name);
  }
  return text.empty() ? "nothing back yet" : text;
}

}  // namespace

std::string tray_in_words(const assess::tray::Account& account) {
  std::string text;
  for (const assess::tray::PieceAccount& one : account.pieces) {
    text += fmt::format("{:<32} {} off", one.name, one.line.taken_off);
    if (one.line.found_loose > 0) text += fmt::format(", {} found loose", one.line.found_loose);
    text += ": " + gone_where(one.line);
    if (one.unaccounted() > 0) text += fmt::format("; {} UNACCOUNTED", one.unaccounted());
    if (one.unaccounted() < 0) text += fmt::format("; {} more went than came", -one.unaccounted());
    text += "\n";
  }
  for (const assess::tray::PlaceAccount& one : account.places) {
    using assess::tray::Filled;
    if (one.filled() == Filled::filled) continue;
    text += one.filled() == Filled::empty
                ? fmt::format("place {}: empty{}\n", one.name, one.may_be_empty ? " (may be)" : "")
                : fmt::format("place {}: {} of {}\n", one.name, one.sits, one.belongs);
  }
  text += account.closed() ? "nothing is unaccounted for\n" : "the tray is not closed\n";
  return text;
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
