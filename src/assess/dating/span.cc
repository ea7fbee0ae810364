#include "assess/dating/span.h"

#include <algorithm>

namespace winchbook::assess::dating {
namespace {

using base::Day;

/// A beginning that is not there lies before every day; an end that is not there, after.
bool begins_before(const std::optional<Day>& a, const std::optional<Day>& b) {
  return b && (!a || *a < *b);
}

bool ends_before(const std::optional<Day>& a, const std::optional<Day>& b) {
  return a && (!b || *a < *b);
}

/// A beginning or an end on the line. At one day beginnings come first: both ends are within.
struct Turn {
  std::optional<Day> day;
  bool begins = false;
};

int place(const Turn& turn) {
  if (turn.day) return 0;
  return turn.begins ? -1 : 1;
}

bool earlier(const Turn& a, const Turn& b) {
  if (place(a) != place(b)) return place(a) < place(b);
  if (a.day != b.day) return a.day < b.day;
  return a.begins && !b.begins;
}

std::vector<Turn> turns_of(std::span<const DaySpan> spans, const DaySpan& bounds) {
  std::vector<Turn> turns;
  for (const DaySpan& span : spans) {
    const DaySpan within = common(span, bounds);
    if (span.empty() || within.empty()) continue;
    turns.push_back({within.first, true});
    turns.push_back({within.last, false});
  }
  std::sort(turns.begin(), turns.end(), earlier);
  return turns;
}

/// The stretches on which most of the spans lie, earliest first: each from a beginning to the end
/// that follows it at once.
std::vector<DaySpan> deepest(const std::vector<Turn>& turns) {
  std::vector<DaySpan> stretches;
  std::size_t depth = 0;
  std::size_t most = 0;
  for (std::size_t i = 0; i < turns.size(); ++i) {
    if (!turns[i].begins) {
      --depth;
      continue;
    }
    ++depth;
    const bool tops = i + 1 == turns.size() || !turns[i + 1].begins;
    if (!tops || depth < most) continue;
    if (depth > most) stretches.clear();
    most = depth;
    stretches.push_back({turns[i].day, turns[i + 1].day});
  }
  return stretches;
}

}  // namespace

DaySpan common(const DaySpan& a, const DaySpan& b) {
  return {begins_before(a.first, b.first) ? b.first : a.first,
          ends_before(a.last, b.last) ? a.last : b.last};
}

DaySpan hull(const DaySpan& a, const DaySpan& b) {
  return {begins_before(a.first, b.first) ? a.first : b.first,
          ends_before(a.last, b.last) ? b.last : a.last};
}

bool contains(const DaySpan& span, const base::Day& day) {
  return (!span.first || *span.first <= day) && (!span.last || day <= *span.last);
}

FewestDropped fewest_to_drop(std::span<const DaySpan> spans, const DaySpan& bounds,
                             std::size_t most) {
  FewestDropped out;
  std::vector<DaySpan> stretches = deepest(turns_of(spans, bounds));
  if (stretches.empty()) stretches.push_back(bounds);
  out.ways_in_all = stretches.size();
  out.hull = hull(stretches.front(), stretches.back());
  for (const DaySpan& stretch : stretches) {
    if (out.ways.size() == most) break;
    WayOut way;
    way.agreed = bounds;
    for (std::size_t i = 0; i < spans.size(); ++i) {
      const DaySpan with = common(spans[i], stretch);
      if (spans[i].empty() || with != stretch) {
        way.dropped.push_back(i);
      } else {
        way.agreed = common(way.agreed, spans[i]);
      }
    }
    out.count = way.dropped.size();
    out.ways.push_back(std::move(way));
  }
  return out;
}

}  // namespace winchbook::assess::dating
