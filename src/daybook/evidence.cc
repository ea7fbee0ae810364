#include "daybook/evidence.h"

#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
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
  add_references(draft, answer, "marking", evidence.marks, record::find_marking, faults);
  add_references(draft, answer, "photo", evidence.photos, record::find_photo, faults);
  add_references(draft, answer, "told-by", evidence.told_by, record::find_person, faults);
  return faults;
}

}  // namespace winchbook::daybook
