#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "document/text.h"

namespace winchbook::document {

/// A share of 100, known to lie in [low, high]; the ends meet when it is known exactly.
struct Share {
  double low = 0;
  double high = 0;
};

/// Two bars (as found, as left) for each question.
struct OriginalityChart {
  struct Bar {
    std::string when;     ///< "as found"
    Share share;          ///< 0 to 100
    std::string figures;  ///< "90 to 93", printed at the right
  };
  struct Question {
    std::string name;  ///< "The parts"
    std::vector<Bar> bars;
  };
  std::vector<Question> questions;
  Text below = {};  ///< what hatching means, and the way back
};

/// Four lines, each with its own four words, ring and disc on each.
struct ConditionChart {
  struct Mark {
    Sign sign = Sign::found;
    Share at;          ///< 0 = first word's end of the line, 100 = last word's
    std::string fact;  ///< "three named faults"; never a score
  };
  struct Axis {
    std::string name;                     ///< "Surface"
    std::string what;                     ///< "share of the maker's finish surviving"
    std::vector<std::string> words = {};  ///< worst first
    std::vector<Mark> marks = {};
  };
  std::vector<Axis> axes;
  Text key = {};  ///< "○ as found ● as left …"
};

/// Plain bars, the chosen one filled.
struct BarChart {
  struct Bar {
    std::string name;
    double value = 0;  ///< 0 to 100
    std::string figures;
    bool chosen = false;
    double from = 0;  ///< 0 to `value`: where the bar begins
  };
  std::vector<Bar> bars;
};

/// One bar a mark on an axis of years, the window shaded, the profile under it.
struct DatingChart {
  enum class End { hard, soft, none };
  struct Mark {
    std::string name;
    double first = 0;  ///< years; 1934.0 is 1 January 1934; not used where the end is none
    double last = 0;   ///< years; 1939.0 is 31 December 1938
    End first_end = End::none;
    End last_end = End::none;
    std::string left_out = {};  ///< the reason, when the mark does not count
  };
  struct Range {
    int first = 0;
    int last = 0;
    std::string words;  ///< printed in full; a line break starts a new line
  };
  std::vector<Mark> marks;
  std::optional<Range> window;
  std::vector<std::pair<int, double>> profile;  ///< year, share of 1
  std::string profile_name = {};
  std::string profile_note = {};
  std::optional<Range> half;
  std::optional<Range> nine_tenths;
  std::string conflict = {};  ///< when no year fits: which must go
  /// What each kind of end means, printed under the chart for the kinds that occur.
  struct Key {
    std::string hard = {};
    std::string soft = {};
    std::string none = {};
    std::string left_out = {};
  };
  Key key = {};
};

/// A curve over an axis ("full" … "empty"), with the range in which it may lie.
struct CurveChart {
  /// A value that the curve is compared with: a thin line across, its name over its left end.
  struct Level {
    double at = 0;  ///< in `unit`
    std::string name;
  };
  std::string title;
  std::vector<std::pair<double, double>> points;  ///< x 0 to 1, y in `unit`
  std::string first_label;
  std::string last_label;
  std::string unit;
  std::vector<std::pair<double, double>> low = {};   ///< the least it may be; strokes fill the band
  std::vector<std::pair<double, double>> high = {};  ///< the most
  std::vector<Level> levels = {};
  std::vector<std::pair<double, std::string>> marks = {};  ///< numbers under the axis, by x
  bool from_nought = false;                                ///< the axis of values begins at 0
  double height = 62;                                      ///< of the plot, points
  Text below = {};                                         ///< what the lines mean
};

using Chart = std::variant<OriginalityChart, ConditionChart, BarChart, DatingChart, CurveChart>;

}  // namespace winchbook::document
