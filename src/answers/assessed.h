#pragma once

#include <utility>

#include "assess/assessment.h"
#include "base/result.h"
#include "knowledge/knowledge.h"
#include "library/library.h"
#include "record/record.h"

namespace winchbook::answers {

/// Every question's answer about a record, and the knowledge that the answers point into: the two
/// are moved together and never copied.
struct Assessed {
  knowledge::Knowledge knowledge;
  assess::Assessment assessment;

  Assessed(knowledge::Knowledge known, const record::Record& record)
      : knowledge(std::move(known)), assessment(assess::assess(record, knowledge)) {}
  Assessed(Assessed&&) = default;
  Assessed& operator=(Assessed&&) = default;
  Assessed(const Assessed&) = delete;
  Assessed& operator=(const Assessed&) = delete;
  ~Assessed() = default;
};

/// Reads what is known for the record's kind of reel, and asks the questions.
[[nodiscard]] base::Result<Assessed> assessed(library::Library& library,
                                              const record::Record& record);

}  // namespace winchbook::answers
