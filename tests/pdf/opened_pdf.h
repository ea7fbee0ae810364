#pragma once

#include <libdeflate.h>

#include <map>
#include <regex>
#include <stdexcept>
#include <string>
#include <string_view>

namespace winchbook::pdf {

inline int count(std::string_view text, std::string_view part) {
  int times = 0;
  for (auto at = text.find(part); at != std::string_view::npos; at = text.find(part, at + 1)) {
    ++times;
  }
  return times;
}

/// A drawn file taken apart through its cross-reference table: dictionaries as they are written,
/// streams inflated.
class OpenedPdf {
 public:
  explicit OpenedPdf(std::string bytes) : bytes_(std::move(bytes)) {
    const auto start = std::stoul(bytes_.substr(bytes_.rfind("startxref") + 9));
    const std::string table = bytes_.substr(start);
    static const std::regex row("(\\d{10}) (\\d{5}) ([nf])");
    int number = 0;
    for (std::sregex_iterator i(table.begin(), table.end(), row), end; i != end; ++i, ++number) {
      if ((*i)[3] == "n") open(number, std::stoul((*i)[1]));
    }
    trailer_ = table.substr(table.find("trailer"));
  }

  [[nodiscard]] const std::string& trailer() const { return trailer_; }
  /// Every dictionary, one after the other.
  [[nodiscard]] std::string all() const {
    std::string out;
    for (const auto& [number, object] : objects_)
      out += object.entries + '\n';
    return out;
  }
  /// The first dictionary that holds `part`.
  [[nodiscard]] std::string find(std::string_view part) const { return with(part).second.entries; }
  [[nodiscard]] std::string number_of(std::string_view part) const {
    return std::to_string(with(part).first);
  }
  /// The data of the first stream whose dictionary holds `part`.
  [[nodiscard]] std::string raw_stream(std::string_view part) const {
    return with(part).second.data;
  }
  [[nodiscard]] std::string stream(std::string_view part) const {
    return inflated(with(part).second);
  }
  [[nodiscard]] std::string stream_number(int number) const {
    return inflated(objects_.at(number));
  }
  /// The first stream whose inflated data hold `part`.
  [[nodiscard]] std::string stream_holding(std::string_view part) const {
    for (const auto& [number, object] : objects_) {
      if (std::string data = inflated(object); data.find(part) != std::string::npos) return data;
    }
    throw std::runtime_error("no stream holds " + std::string(part));
  }
  [[nodiscard]] std::string page_content(int page) const {
    static const std::regex reference("/Contents (\\d+) 0 R");
    for (const auto& [number, object] : objects_) {
      std::smatch found;
      if (object.entries.find("/Type /Page\n") == std::string::npos || page-- > 0) continue;
      if (!std::regex_search(object.entries, found, reference)) break;
      return inflated(objects_.at(std::stoi(found[1])));
    }
    throw std::runtime_error("no such page");
  }

 private:
  struct Opened {
    std::string entries;
    std::string data;
  };

  void open(int number, std::size_t offset) {
    const std::string head = std::to_string(number) + " 0 obj";
    if (bytes_.compare(offset, head.size(), head) != 0) {
      throw std::runtime_error("the cross-reference table does not lead to object " +
                               std::to_string(number));
    }
    const std::size_t end = bytes_.find("endobj", offset);
    const std::size_t stream = bytes_.find("\nstream\r\n", offset);
    if (stream > end) {
      objects_[number] = {bytes_.substr(offset, end - offset), {}};
      return;
    }
    Opened object{bytes_.substr(offset, stream - offset), {}};
    static const std::regex length("/Length (\\d+) 0 R");
    std::smatch found;
    if (!std::regex_search(object.entries, found, length)) throw std::runtime_error("no length");
    const std::string holder = "\n" + found[1].str() + " 0 obj\n";
    const auto size = std::stoul(bytes_.substr(bytes_.find(holder) + holder.size(), 12));
    object.data = bytes_.substr(stream + 9, size);
    if (bytes_.compare(stream + 9 + size, 10, "\nendstream") != 0) {
      throw std::runtime_error("a stream's length is wrong");
    }
    objects_[number] = object;
  }

  [[nodiscard]] static std::string inflated(const Opened& object) {
    if (object.entries.find("/FlateDecode") == std::string::npos) return object.data;
    std::string out(1U << 22U, '\0');
    std::size_t size = 0;
    libdeflate_decompressor* inflater = libdeflate_alloc_decompressor();
    const auto result = libdeflate_zlib_decompress(inflater, object.data.data(), object.data.size(),
                                                   out.data(), out.size(), &size);
    libdeflate_free_decompressor(inflater);
    if (result != LIBDEFLATE_SUCCESS) throw std::runtime_error("a stream does not inflate");
    out.resize(size);
    return out;
  }

  [[nodiscard]] const std::pair<const int, Opened>& with(std::string_view part) const {
    for (const auto& object : objects_) {
      if (object.second.entries.find(part) != std::string::npos) return object;
    }
    throw std::runtime_error("no object holds " + std::string(part));
  }

  std::string bytes_;
  std::string trailer_;
  std::map<int, Opened> objects_;
};

}  // namespace winchbook::pdf
