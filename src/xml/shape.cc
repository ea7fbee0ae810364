#include "xml/shape.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "base/words_of_text.h"

namespace winchbook::xml {
namespace {

using base::Diagnostic;
using base::error_at;
constexpr std::size_t kNone = std::string_view::npos;

/// The length of the UTF-8 sequence at `at`, 0 when it is none (RFC 3629: no overlong forms, no
/// surrogates, nothing over U+10FFFF).
std::size_t sequence_length(std::string_view bytes, std::size_t at) {
  const auto byte = [&](std::size_t ahead) -> unsigned {
    return at + ahead < bytes.size() ? static_cast<unsigned char>(bytes[at + ahead]) : 0U;
  };
  const auto continues = [&](std::size_t ahead) { return (byte(ahead) & 0xC0U) == 0x80U; };
  const unsigned lead = byte(0);
  if (lead < 0x80U) return 1;
  if (lead >= 0xC2U && lead <= 0xDFU) return continues(1) ? 2 : 0;
  if (lead >= 0xE0U && lead <= 0xEFU) {
    if (lead == 0xE0U && byte(1) < 0xA0U) return 0;
    if (lead == 0xEDU && byte(1) > 0x9FU) return 0;
    return continues(1) && continues(2) ? 3 : 0;
  }
  if (lead >= 0xF0U && lead <= 0xF4U) {
    if (lead == 0xF0U && byte(1) < 0x90U) return 0;
    if (lead == 0xF4U && byte(1) > 0x8FU) return 0;
    return continues(1) && continues(2) && continues(3) ? 4 : 0;
  }
  return 0;
}

/// Another encoding in the first line, <?xml … encoding="…"?>.
std::optional<Diagnostic> fault_of_declaration(const Source& source) {
  const std::string_view bytes = source.bytes();
  const std::string_view head = bytes.substr(0, std::min(bytes.find("?>"), std::size_t{256}));
  const std::size_t declared =
      head.substr(0, 8).find("<?xml") == kNone ? kNone : head.find("encoding");
  if (declared == kNone) return std::nullopt;
  const std::size_t open = head.find_first_of("\"'", declared);
  if (open == kNone) return std::nullopt;
  const std::string_view name =
      head.substr(open + 1, head.find_first_of("\"'", open + 1) - open - 1);
  const std::string upper = base::in_capitals(name);
  if (upper == "UTF-8" || upper == "UTF8" || upper == "US-ASCII") return std::nullopt;
  return error_at(
      source.where(open + 1), fmt::format("the file says it is \"{}\", expected UTF-8", name),
      "save the file as UTF-8, and write encoding=\"UTF-8\" in its first line", "encoding");
}

std::optional<Diagnostic> fault_of_encoding(const Source& source) {
  const std::string_view bytes = source.bytes();
  const std::string cure = "save the file as UTF-8";
  if (bytes.substr(0, 2) == "\xFF\xFE" || bytes.substr(0, 2) == "\xFE\xFF" ||
      bytes.substr(0, 256).find('\0') != kNone) {
    return error_at(source.where(0), "the file is UTF-16 or UTF-32, expected UTF-8", cure,
                    "encoding");
  }
  if (auto fault = fault_of_declaration(source)) return fault;
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t length = sequence_length(bytes, at);
    if (length == 0) {
      return error_at(
          source.where(at),
          fmt::format("byte 0x{:02X} is not UTF-8", static_cast<unsigned char>(bytes[at])), cure,
          "encoding");
    }
    at += length;
  }
  return std::nullopt;
}

/// Walks over the markup without understanding it.
class Walk {
 public:
  Walk(const Source& source, const Limits& limits)
      : source_(source), limits_(limits), bytes_(source.bytes()) {}

  std::optional<Diagnostic> fault() {
    while (at_ < bytes_.size()) {
      const std::size_t markup = std::min(bytes_.find('<', at_), bytes_.size());
      if (markup - at_ > limits_.text) return too_long("text");
      at_ = markup;
      if (at_ == bytes_.size()) break;
      if (auto fault = step_over_markup()) return fault;
    }
    return std::nullopt;
  }

 private:
  std::optional<Diagnostic> step_over_markup() {
    if (starts("<!--")) return step_to("-->", "a comment");
    if (starts("<![CDATA[")) return step_to("]]>", "text");
    if (starts("<?")) return step_to("?>", "an instruction");
    if (starts("<!")) {
      return error_at(
          source_.where(at_), "a document type (<!DOCTYPE …>) stands here, expected none",
          "take it out: a record has no document type and no entities of its own", "doctype");
    }
    if (starts("</")) {
      if (depth_ > 0) --depth_;
      return step_to(">", "a tag");
    }
    return step_over_start_tag();
  }

  std::optional<Diagnostic> step_over_start_tag() {
    const std::size_t begin = at_;
    char quote = '\0';
    std::size_t end = at_ + 1;
    for (; end < bytes_.size(); ++end) {
      const char c = bytes_[end];
      if (quote != '\0') {
        if (c == quote) quote = '\0';
      } else if (c == '"' || c == '\'') {
        quote = c;
      } else if (c == '>') {
        break;
      }
    }
    if (end - begin > limits_.text) return too_long("a tag");
    if (end < bytes_.size() && bytes_[end - 1] != '/' && ++depth_ > limits_.depth) {
      return error_at(source_.where(begin),
                      fmt::format("elements are nested more than {} deep", limits_.depth),
                      "a record never needs that: look for a missing end tag", "depth");
    }
    at_ = std::min(end + 1, bytes_.size());
    return std::nullopt;
  }

  std::optional<Diagnostic> step_to(std::string_view closing, std::string_view what) {
    const std::size_t end = bytes_.find(closing, at_);
    const std::size_t after = end == kNone ? bytes_.size() : end + closing.size();
    if (after - at_ > limits_.text) return too_long(what);
    at_ = after;
    return std::nullopt;
  }

  [[nodiscard]] bool starts(std::string_view markup) const {
    return bytes_.substr(at_, markup.size()) == markup;
  }

  [[nodiscard]] Diagnostic too_long(std::string_view what) const {
    return error_at(source_.where(at_),
                    fmt::format("{} of more than {} MB begins here", what, limits_.text >> 20U),
                    "a record holds words; keep pictures and other data in files beside it",
                    "size");
  }

  const Source& source_;
  const Limits& limits_;
  std::string_view bytes_;
  std::size_t at_ = 0;
  std::size_t depth_ = 0;
};

}  // namespace

std::optional<Diagnostic> fault_of_shape(const Source& source, const Limits& limits) {
  const std::string_view bytes = source.bytes();
  if (bytes.size() > limits.bytes) {
    return error_at(
        {source.file(), 0, 0}, fmt::format("the file is longer than {} MB", limits.bytes >> 20U),
        "a record holds words; keep pictures and other data in files beside it", "size");
  }
  if (auto fault = fault_of_encoding(source)) return fault;
  const std::size_t first =
      bytes.find_first_not_of(" \t\r\n", bytes.starts_with("\xEF\xBB\xBF") ? 3 : 0);
  if (first == kNone) {
    return error_at(source.where(0), "the file is empty, expected XML",
                    "put the last good copy back, or begin a new record", "not-xml");
  }
  if (bytes[first] != '<') {
    return error_at(source.where(first), "this is not XML: it does not begin with \"<\"",
                    "give the record.xml of a reel's folder", "not-xml");
  }
  return Walk(source, limits).fault();
}

}  // namespace winchbook::xml
