#include "record/free_id.h"

#include <algorithm>
#include <cctype>
#include <variant>

namespace winchbook::record {
namespace {

template <class Things> bool among(const Things& things, std::string_view id) {
  return std::any_of(things.begin(), things.end(),
                     [&](const auto& one) { return one.id.text == id; });
}

bool in_visit(const Visit& visit, std::string_view id) {
  return visit.id.text == id || among(visit.agreements, id) || among(visit.findings.faults, id) ||
         among(visit.strip_down, id);
}

/// "tail-plate" of "Tail plate!".
std::string as_id(std::string_view wish) {
  constexpr std::size_t kLongest = 56;
  std::string id;
  for (const char c : wish) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80 && std::isalnum(byte) != 0) {
      id += static_cast<char>(std::tolower(byte));
    } else if (!id.empty() && id.back() != '-' && byte < 0x80) {
      id += '-';
    }
  }
  id.resize(std::min(id.size(), kLongest));
  while (!id.empty() && id.back() == '-')
    id.pop_back();
  if (id.empty() || std::isdigit(static_cast<unsigned char>(id.front())) != 0) id = "x-" + id;
  return id;
}

}  // namespace

bool has_id(const Record& record, std::string_view id) {
  return among(record.people, id) || among(record.life, id) || among(record.places, id) ||
         among(record.donors, id) || among(record.pieces, id) || among(record.fittings, id) ||
         among(record.markings, id) || among(record.photos, id) ||
         (record.value && among(record.value->sales, id)) ||
         std::any_of(record.custody.begin(), record.custody.end(),
                     [&](const auto& step) {
                       return std::visit([](const auto& one) { return one.id.text; }, step) == id;
                     }) ||
         std::any_of(record.visits.begin(), record.visits.end(),
                     [&](const Visit& visit) { return in_visit(visit, id); });
}

std::string free_id(const Record& record, std::string_view wish) {
  std::string id = as_id(wish);
  if (!has_id(record, id)) return id;
  for (int number = 2;; ++number) {
    std::string numbered = id + "-" + std::to_string(number);
    if (!has_id(record, numbered)) return numbered;
  }
}

}  // namespace winchbook::record
