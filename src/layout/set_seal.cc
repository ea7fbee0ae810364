#include "layout/set_seal.h"

#include <qrencode.h>

#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <stdexcept>
#include <utility>
#include <vector>

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;

constexpr Length kModule = points(3.9);
constexpr Length kSmallModule = points(1.65);
constexpr int kQuiet = 4;  // modules of white round the code (ISO/IEC 18004)

/// Which modules are dark; square.
struct Modules {
  int size = 0;
  std::vector<bool> dark;

  [[nodiscard]] bool at(int x, int y) const {
    if (x < 0 || y < 0 || x >= size || y >= size) return false;
    return dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(size) +
                static_cast<std::size_t>(x)];
  }
};

/// Stretches of capitals and figures take less room than other letters.
Modules encoded(const std::string& payload, QRecLevel level) {
  if (payload.find('\0') != std::string::npos) {
    throw std::invalid_argument("a QR code of text cannot hold a zero byte");
  }
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeString(payload.c_str(), 0, level, QR_MODE_8, 1), &QRcode_free);
  if (!code) throw std::invalid_argument("a QR code cannot hold these bytes");
  Modules modules;
  modules.size = code->width;
  const auto count = static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
  for (std::size_t i = 0; i < count; ++i)
    modules.dark.push_back((code->data[i] & 1U) != 0);
  return modules;
}

/// A corner between modules, and the way an edge leaves it: 0 right, 1 down, 2 left, 3 up.
struct Corner {
  int x = 0;
  int y = 0;
  friend auto operator<=>(const Corner&, const Corner&) = default;
};

/// The edges between dark and light, walked with the dark on the right hand, by their start.
using Edges = std::map<Corner, std::vector<int>>;

constexpr std::array<Corner, 4> kWays = {{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};

Edges edges_of(const Modules& modules) {
  Edges edges;
  for (int y = 0; y < modules.size; ++y) {
    for (int x = 0; x < modules.size; ++x) {
      if (!modules.at(x, y)) continue;
      if (!modules.at(x, y - 1)) edges[{x, y}].push_back(0);
      if (!modules.at(x + 1, y)) edges[{x + 1, y}].push_back(1);
      if (!modules.at(x, y + 1)) edges[{x + 1, y + 1}].push_back(2);
      if (!modules.at(x - 1, y)) edges[{x, y + 1}].push_back(3);
    }
  }
  return edges;
}

/// Takes the edge that leaves `from`, turning right where two do, so that dark squares which only
/// touch stay apart.
int take_edge(Edges& edges, Corner from, int came) {
  std::vector<int>& ways = edges.at(from);
  auto chosen = ways.begin();
  if (came >= 0) {
    const auto right = std::find(ways.begin(), ways.end(), (came + 1) % 4);
    if (right != ways.end()) chosen = right;
  }
  const int way = *chosen;
  ways.erase(chosen);
  if (ways.empty()) edges.erase(from);
  return way;
}

/// Every dark region as one closed outline (and one more for each hole, the other way round): drawn
/// square by square, hairlines would show between them on a screen.
std::vector<PathItem::Step> outlines_of(const Modules& modules, Length module) {
  using Kind = PathItem::Step::Kind;
  std::vector<PathItem::Step> steps;
  const auto to = [&](Corner corner) { return Point{module * corner.x, module * corner.y}; };
  Edges edges = edges_of(modules);
  while (!edges.empty()) {
    const Corner start = edges.begin()->first;
    Corner here = start;
    int came = -1;
    do {
      const int way = take_edge(edges, here, came);
      if (way != came) {
        steps.push_back({.kind = came < 0 ? Kind::move : Kind::line, .to = to(here)});
      }
      here = {here.x + kWays[static_cast<std::size_t>(way)].x,
              here.y + kWays[static_cast<std::size_t>(way)].y};
      came = way;
    } while (here != start);
    steps.push_back({.kind = Kind::close});
  }
  return steps;
}

/// The code as a figure with words for who cannot see it.
PathItem drawn_code(const Modules& modules, Length module, const std::string& alternative,
                    TagId parent, const Setting& setting) {
  Tag figure;
  figure.type = TagType::figure;
  figure.parent = parent;
  figure.alternative = alternative;
  PathItem path;
  path.steps = outlines_of(modules, module);
  path.filled = true;
  path.fill = setting.style.ink;
  path.tag = setting.add_tag(std::move(figure));
  return path;
}

}  // namespace

Frame set_seal_code(const document::Seal& seal, TagId parent, const Setting& setting) {
  Tag paragraph;
  paragraph.parent = parent;
  const TagId tag = setting.add_tag(std::move(paragraph));
  const Role role = seal.small ? Role::tally : Role::seal_code;
  return set_words(document::plain(seal.code), role, setting.style.main, tag, setting);
}

Frame set_qr_code(const document::Seal& seal, TagId parent, const Setting& setting) {
  const Length module = seal.small ? kSmallModule : kModule;
  const auto fits = [&](const Modules& modules) {
    return module * modules.size <= setting.style.side;
  };
  Modules modules = encoded(seal.qr_payload, QR_ECLEVEL_M);
  if (!fits(modules)) {
    const Modules lighter = encoded(seal.qr_payload, QR_ECLEVEL_L);
    if (fits(lighter)) modules = lighter;
  }
  Frame frame;
  frame.width = std::max(setting.style.side, module * modules.size);
  frame.height = module * (modules.size + kQuiet);
  frame.items.emplace_back(drawn_code(modules, module, seal.qr_alternative, parent, setting));
  return frame;
}

Frame set_square_code(const std::string& payload, const std::string& alternative, Length module,
                      TagId parent, const Setting& setting) {
  const Modules modules = encoded(payload, QR_ECLEVEL_M);
  Frame frame;
  frame.width = frame.height = module * modules.size;
  frame.items.emplace_back(drawn_code(modules, module, alternative, parent, setting));
  return frame;
}

}  // namespace winchbook::layout
