#include "app/evidence.h"

#include "app/find_named.h"
#include "app/open_visit.h"

namespace winchbook::app {
namespace {

template <class Find>
void add_references(Draft& draft, pugi::xml_node answer, const char* name,
                    const std::vector<std::string>& said, const Find& find,
                    base::Diagnostics& faults) {
  for (const std::string& one : said) {
    const auto found = find(draft.record(), one);
    if (found) {
      draft.add_ref(answer, name, found.value()->id.text);
    } else {
      faults.insert(faults.end(), found.faults().begin(), found.faults().end());
    }
  }
}

}  // namespace

base::Diagnostics add_evidence(Draft& draft, pugi::xml_node answer, const Evidence& evidence) {
  base::Diagnostics faults;
  draft.add_words(answer, "because", evidence.because);
  add_references(draft, answer, "marking", evidence.marks, find_marking, faults);
  add_references(draft, answer, "photo", evidence.photos, find_photo, faults);
  add_references(draft, answer, "told-by", evidence.told_by, find_person, faults);
  return faults;
}

}  // namespace winchbook::app
