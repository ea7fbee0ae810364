#pragma once

#include <optional>
#include <vector>

#include "base/edtf_date.h"
#include "record/words.h"

namespace winchbook::record {

/// How sure the one who judged is.
enum class Certainty { certain, likely, possible };

/// Because of what: words, and the marks, photographs and people that bear it out.
struct Evidence {
  Words because;
  std::vector<MarkingId> markings;
  std::vector<PhotoId> photos;
  /// Who said so, when a person is the evidence.
  std::vector<PersonId> told_by;
};

/// An answer with how sure, because of what, by whom and when. "Not determined" is one of the
/// answers.
template <class Answer> struct Judgement {
  Answer answer = Answer::not_determined;
  std::optional<Certainty> certainty;  ///< empty: not determined, or nobody wrote how sure
  Evidence evidence;
  std::optional<PersonId> judged_by;
  std::optional<base::EdtfDate> judged_on;
};

}  // namespace winchbook::record
