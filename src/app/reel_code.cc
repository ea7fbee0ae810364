#include "app/reel_code.h"

#include <algorithm>

#include "seal/short_code.h"

namespace winchbook::app {
namespace {

std::string secret_of(const record::Record& record) {
  if (!record.visits.empty() && record.visits.front().brought_by) {
    const record::Person* person = find(record, *record.visits.front().brought_by);
    if (person != nullptr && !person->salt.empty()) return person->salt;
  }
  for (const record::Person& person : record.people) {
    if (!person.salt.empty()) return person.salt;
  }
  const std::string day = record.visits.empty() ? "" : record.visits.front().taken_in.text();
  return record.bench.name + "\n" + record.reel.name + "\n" + day;
}

}  // namespace

std::string reel_code(const record::Record& record) {
  std::string code = seal::grouped(seal::tag_code("reel\n" + secret_of(record) + "\n"));
  std::replace(code.begin(), code.end(), '-', ' ');
  return code;
}

}  // namespace winchbook::app
