#include "answers/date.h"

namespace winchbook::answers {

forms::Job date_job() {
  return graded_job({"the answer as JSON (schemas/date.schema.json)", date_told, date_as_json});
}

}  // namespace winchbook::answers
