#include "knowledge/source.h"

#include <cstdint>
#include <utility>

namespace winchbook::knowledge {

base::Result<const xml::Schema*> Source::schema() const {
  if (!schema_) {
    constexpr std::uintmax_t kMostBytes = std::uintmax_t{4} << 20U;
    const auto xsd = files_->read(data_ / "schemas" / "knowledge-1.xsd", kMostBytes);
    if (!xsd) return xsd.faults();
    auto compiled = xml::Schema::compile("knowledge-1.xsd", *xsd);
    if (!compiled) return compiled.faults();
    schema_ = std::make_shared<const xml::Schema>(std::move(compiled).value());
  }
  return schema_.get();
}

}  // namespace winchbook::knowledge
