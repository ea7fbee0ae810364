#include "xml/edit.h"

#include <algorithm>
#include <stdexcept>

namespace winchbook::xml {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// One piece of markup, as it follows a "<".
struct Markup {
  enum class Kind { start, end, self_closing, comment, cdata, instruction };
  Kind kind = Kind::start;
  Extent at;
};

/// Behind the first `mark` at or after `from`; the file is well-formed, so there is one.
std::size_t behind(std::string_view bytes, std::string_view mark, std::size_t from) {
  const std::size_t found = bytes.find(mark, from);
  if (found == std::string_view::npos) throw std::logic_error("markup without an end");
  return found + mark.size();
}

/// Behind the ">" of the tag that begins at `from`; a ">" in an attribute does not end it.
std::size_t behind_tag(std::string_view bytes, std::size_t from) {
  for (std::size_t at = from;;) {
    at = bytes.find_first_of("\"'>", at);
    if (at == std::string_view::npos) throw std::logic_error("a tag without an end");
    if (bytes[at] == '>') return at + 1;
    at = behind(bytes, bytes.substr(at, 1), at + 1);
  }
}

/// The markup that begins with the "<" at `from`.
Markup markup_at(std::string_view bytes, std::size_t from) {
  using Kind = Markup::Kind;
  const std::string_view rest = bytes.substr(from);
  if (rest.starts_with("<!--")) return {Kind::comment, {from, behind(bytes, "-->", from + 4)}};
  if (rest.starts_with("<![CDATA[")) return {Kind::cdata, {from, behind(bytes, "]]>", from + 9)}};
  if (rest.starts_with("<?")) return {Kind::instruction, {from, behind(bytes, "?>", from + 2)}};
  const std::size_t end = behind_tag(bytes, from);
  if (rest.starts_with("</")) return {Kind::end, {from, end}};
  return {bytes[end - 2] == '/' ? Kind::self_closing : Kind::start, {from, end}};
}

bool is_blank(char c) {
  return c == ' ' || c == '\t';
}

std::size_t line_begin(std::string_view bytes, std::size_t at) {
  const std::size_t before = at == 0 ? std::string_view::npos : bytes.rfind('\n', at - 1);
  if (before != std::string_view::npos) return before + 1;
  return bytes.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
}

/// The indentation that ends where the element begins; empty at that place when there is none.
Extent indentation(std::string_view bytes, std::size_t element) {
  const std::size_t begin = line_begin(bytes, element);
  const std::string_view before = bytes.substr(begin, element - begin);
  const bool alone = std::all_of(before.begin(), before.end(), is_blank);
  return {alone ? begin : element, element};
}

}  // namespace

std::string spliced(std::string_view bytes, std::vector<Splice> splices) {
  std::stable_sort(splices.begin(), splices.end(), [](const Splice& one, const Splice& other) {
    return one.begin != other.begin ? one.begin < other.begin : one.end < other.end;
  });
  std::string out;
  std::size_t done = 0;
  for (const Splice& splice : splices) {
    if (splice.begin < done || splice.end < splice.begin || splice.end > bytes.size()) {
      throw std::logic_error("splices that overlap or reach over the end");
    }
    out += bytes.substr(done, splice.begin - done);
    out += splice.with;
    done = splice.end;
  }
  out += bytes.substr(done);
  return out;
}

ElementExtent extent_of(const Document& document, pugi::xml_node element) {
  using Kind = Markup::Kind;
  const std::string_view bytes = document.source().bytes();
  const Markup start = markup_at(bytes, document.offset(element));
  if (start.kind == Kind::self_closing) return {start.at, {start.at.end, start.at.end}, true};
  std::size_t depth = 1;
  for (std::size_t at = bytes.find('<', start.at.end);;) {
    if (at == std::string_view::npos) throw std::logic_error("an element without an end");
    const Markup markup = markup_at(bytes, at);
    if (markup.kind == Kind::start) ++depth;
    if (markup.kind == Kind::end && --depth == 0) {
      return {{start.at.begin, markup.at.end}, {start.at.end, markup.at.begin}, false};
    }
    at = bytes.find('<', markup.at.end);
  }
}

Extent lines_of(const Document& document, pugi::xml_node element) {
  return lines_of(document.source().bytes(), extent_of(document, element).whole);
}

Extent lines_of(std::string_view bytes, Extent whole) {
  const std::size_t begin = line_begin(bytes, whole.begin);
  const std::string_view before = bytes.substr(begin, whole.begin - begin);
  std::size_t end = whole.end;
  while (end < bytes.size() && is_blank(bytes[end]))
    ++end;
  if (bytes.substr(end, 2) == "\r\n") {
    end += 2;
  } else if (end < bytes.size() && bytes[end] == '\n') {
    ++end;
  } else if (end < bytes.size()) {
    return whole;
  }
  if (!std::all_of(before.begin(), before.end(), is_blank)) return whole;
  return {begin, end};
}

std::optional<Extent> attribute_of(const Document& document, pugi::xml_node element,
                                   std::string_view name) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::string_view bytes = document.source().bytes();
  const std::size_t from = document.offset(element);
  const std::string_view tag = bytes.substr(0, behind_tag(bytes, from));
  std::size_t at = from + 1 + std::string_view(element.name()).size();
  for (;;) {
    at = tag.find_first_not_of(kBlanks, at);
    const std::size_t equals = std::min(tag.find('=', at), tag.size());
    const std::size_t open = tag.find_first_of("\"'", equals);
    if (open == std::string_view::npos) return std::nullopt;
    const std::size_t close = behind(tag, tag.substr(open, 1), open + 1) - 1;
    std::string_view found = tag.substr(at, equals - at);
    found = found.substr(0, found.find_first_of(kBlanks));
    if (found == name) return Extent{open + 1, close};
    at = close + 1;
  }
}

std::string_view indentation_of(const Document& document, pugi::xml_node element) {
  const std::string_view bytes = document.source().bytes();
  const Extent white = indentation(bytes, document.offset(element));
  return bytes.substr(white.begin, white.size());
}

std::string_view line_end_of(std::string_view bytes) {
  const std::size_t end = bytes.find('\n');
  const bool both = end != std::string_view::npos && end > 0 && bytes[end - 1] == '\r';
  return both ? "\r\n" : "\n";
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '\r':
        out += "&#13;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::vector<Extent> remarks_of(const Document& document) {
  const std::string_view bytes = document.source().bytes();
  std::vector<Extent> remarks;
  for (std::size_t at = bytes.find('<'); at != std::string_view::npos;) {
    const Markup markup = markup_at(bytes, at);
    const bool declaration =
        markup.kind == Markup::Kind::instruction && bytes.substr(at, 6).starts_with("<?xml ");
    if (markup.kind == Markup::Kind::comment ||
        (markup.kind == Markup::Kind::instruction && !declaration)) {
      remarks.push_back(markup.at);
    }
    at = bytes.find('<', markup.at.end);
  }
  return remarks;
}

}  // namespace winchbook::xml
