#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "library/library.h"
#include "record/record.h"
#include "recordfile/record_file.h"

namespace winchbook::daybook {

/// A record while an entry changes it: the values as they were read, to be changed in place, and
/// the file that they came from. What does not change keeps every byte in the file.
class Draft {
 public:
  Draft(const recordfile::LoadedRecord& loaded, library::Library& library, bool somebody_there)
      : record_(loaded.record),
        loaded_(&loaded),
        library_(&library),
        somebody_there_(somebody_there) {}

  /// As it is by now. Whatever is pushed into one of its lists moves what was found in that list.
  [[nodiscard]] record::Record& record() { return record_; }
  [[nodiscard]] const record::Record& record() const { return record_; }
  /// As it was read.
  [[nodiscard]] const recordfile::LoadedRecord& loaded() const { return *loaded_; }
  [[nodiscard]] library::Library& library() const { return *library_; }
  /// Whether there is somebody who can be asked, and stop what is warned of.
  [[nodiscard]] bool somebody_there() const { return somebody_there_; }

  /// A sentence as it was typed: people are named by reference (recordfile/typed_words.h).
  [[nodiscard]] record::Words words(std::string_view typed) const;
  /// Puts a sentence in the place of another; a blank one leaves it as it is.
  void put(record::Words& into, std::string_view typed) const;

  /// The id that was asked for, or a free one when none was. Error: something is called so already.
  [[nodiscard]] base::Result<std::string> id_for(const std::string& given,
                                                 std::string_view wish) const;
  /// An id that is free, as close to the wish as can be.
  [[nodiscard]] std::string free_id(std::string_view wish) const;

 private:
  record::Record record_;
  const recordfile::LoadedRecord* loaded_;
  library::Library* library_;
  bool somebody_there_;
};

/// What was found in a list of the draft, to be changed.
template <class Value> Value& to_change(std::vector<Value>& list, const Value* found) {
  return list[static_cast<std::size_t>(found - list.data())];
}

/// Puts what was said in the place of what is there; what was not said leaves it as it is.
inline void set_if(std::string& into, const std::string& said) {
  if (!said.empty()) into = said;
}
template <class Into, class Value> void set_if(Into& into, const std::optional<Value>& said) {
  if (said) into = *said;
}

}  // namespace winchbook::daybook
