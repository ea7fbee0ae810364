#include "knowledge/makers.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "knowledge/bound_file.h"
#include "knowledge/stamp_text.h"
#include "knowledge/valid_file.h"

namespace winchbook::knowledge {
namespace {

/// Numbers and their dates must rise together.
void check_run(const xml::Document& document, pugi::xml_node node, const SerialRun& run,
               base::Diagnostics& faults) {
  for (std::size_t i = 1; i < run.seen.size(); ++i) {
    const SeenSerial& before = run.seen[i - 1];
    const SeenSerial& after = run.seen[i];
    if (after.number > before.number && !base::surely_before(after.date, before.date)) continue;
    faults.push_back(base::error_at(
        document.where(node),
        fmt::format("serial {} of {} stands behind {} of {}", after.number, after.date.text(),
                    before.number, before.date.text()),
        "numbers and dates rise together; leave out one that does not, or give it a run of its own",
        "row-order"));
  }
}

SerialRun run_from(const xml::Document& document, pugi::xml_node node, base::Diagnostics& faults) {
  SerialRun run;
  run.prefix = node.attribute("prefix").value();
  run.source = node.attribute("source").value();
  for (const pugi::xml_node one : node.children("seen")) {
    const auto date = base::EdtfDate::parse(one.attribute("date").value());
    if (!date) {
      base::Diagnostic fault = date.faults().front();
      fault.where = document.where(one);
      faults.push_back(std::move(fault));
      continue;
    }
    run.seen.push_back({one.attribute("number").as_llong(), *date, folded(one)});
  }
  check_run(document, node, run, faults);
  return run;
}

Maker maker_from(const xml::Document& document, base::Diagnostics& faults) {
  const pugi::xml_node root = document.root();
  Maker maker;
  maker.name = folded(root.child("name"));
  maker.place = folded(root.child("place"));
  maker.note = folded(root.child("note"));
  for (const pugi::xml_node node : root.children("row")) {
    maker.rows.push_back({listed(node.attribute("sort"), MakerRowSort::name),
                          node.attribute("word").value(), folded(node.child("name")),
                          forms_from(node), node.attribute("part").value(),
                          node.attribute("model").value(), bound_from(document, node, faults)});
  }
  for (const pugi::xml_node node : root.children("serials"))
    maker.serials.push_back(run_from(document, node, faults));
  return maker;
}

}  // namespace

const Maker* find_maker(const std::vector<Maker>& makers, std::string_view name) {
  const std::string wanted = folded_phrase(name);
  const auto found = std::find_if(makers.begin(), makers.end(), [&](const Maker& maker) {
    return folded_phrase(maker.name) == wanted;
  });
  return found == makers.end() ? nullptr : &*found;
}

MarkBound bound_of(const SerialRun& run, std::int64_t number) {
  MarkBound bound;
  bound.source = run.source;
  const SeenSerial* below = nullptr;
  const SeenSerial* above = nullptr;
  for (const SeenSerial& seen : run.seen) {
    if (seen.number <= number) below = &seen;
    if (seen.number >= number && above == nullptr) above = &seen;
  }
  const auto told = [&](const SeenSerial& seen) {
    return fmt::format("{} {} ({}, {})", run.prefix, seen.number, seen.because, seen.date.text());
  };
  if (below != nullptr) bound.not_before = {*below->date.earliest(), false, Known::read};
  if (above != nullptr) bound.not_after = {*above->date.latest(), false, Known::read};
  if (below == above && below != nullptr) {
    bound.basis = "It is " + told(*below) + ".";
  } else if (below != nullptr && above != nullptr) {
    bound.basis = "Between " + told(*below) + " and " + told(*above) + ".";
  } else if (below != nullptr) {
    bound.basis = "After " + told(*below) + ", the last that is known.";
  } else if (above != nullptr) {
    bound.basis = "Before " + told(*above) + ", the first that is known.";
  }
  return bound;
}

base::Result<std::vector<Maker>> load_makers(const Source& source,
                                             const std::vector<std::filesystem::path>& more) {
  std::vector<std::filesystem::path> paths;
  const std::filesystem::path folder = source.shared("makers");
  for (const std::string& name : source.files().names_in(folder)) {
    if (name.ends_with(".xml")) paths.push_back(folder / name);
  }
  paths.insert(paths.end(), more.begin(), more.end());
  std::vector<Maker> makers;
  base::Diagnostics faults;
  for (const auto& path : paths) {
    const auto document = read_valid(source, path, "maker");
    if (!document) {
      faults.insert(faults.end(), document.faults().begin(), document.faults().end());
      continue;
    }
    makers.push_back(maker_from(*document, faults));
    makers.back().word = path.stem().string();
  }
  if (!faults.empty()) return faults;
  return makers;
}

}  // namespace winchbook::knowledge
