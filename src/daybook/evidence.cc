#include "daybook/evidence.h"

#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

template <class Id, class Find>
void refer_to(const record::Record& record, const std::vector<std::string>& said, const Find& find,
              std::vector<Id>& ids, base::Diagnostics& faults) {
  for (const std::string& one : said) {
    const auto found = find(record, one);
    if (found) {
      ids.push_back(found.value()->id);
    } else {
      faults.insert(faults.end(), found.faults().begin(), found.faults().end());
    }
  }
}

}  // namespace

base::Result<record::Evidence> evidence_of(const Draft& draft, const Evidence& typed) {
  record::Evidence evidence;
  base::Diagnostics faults;
  evidence.because = draft.words(typed.because);
  refer_to(draft.record(), typed.marks, record::find_marking, evidence.markings, faults);
  refer_to(draft.record(), typed.photos, record::find_photo, evidence.photos, faults);
  refer_to(draft.record(), typed.told_by, record::find_person, evidence.told_by, faults);
  if (!faults.empty()) return faults;
  return evidence;
}

forms::Form evidence_form(Evidence& evidence) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--because", "because of what, in a sentence", evidence.because),
      field("--mark", "a mark that bears it out; as often as needed", evidence.marks),
      field("--photo", "a photograph that shows it; as often as needed", evidence.photos),
      field("--told-by", "somebody who said so; as often as needed", evidence.told_by),
  };
}

}  // namespace winchbook::daybook
