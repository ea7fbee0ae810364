#include "daybook/draft.h"

#include "record/free_id.h"
#include "recordfile/typed_words.h"

namespace winchbook::daybook {

record::Words Draft::words(std::string_view typed) const {
  return recordfile::words_of(record_, typed);
}

void Draft::put(record::Words& into, std::string_view typed) const {
  if (record::Words said = words(typed); !said.empty()) into = std::move(said);
}

base::Result<std::string> Draft::id_for(const std::string& given, std::string_view wish) const {
  return loaded_->id_for(record_, given, wish);
}

std::string Draft::free_id(std::string_view wish) const {
  return record::free_id(record_, wish);
}

}  // namespace winchbook::daybook
