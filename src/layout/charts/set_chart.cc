#include <variant>

#include "layout/charts/charts.h"

namespace winchbook::layout {
namespace {

struct SetChart {
  Length width;
  TagId figure = kArtifact;
  const Setting& setting;

  Frame operator()(const document::OriginalityChart& chart) const {
    return charts::set_originality(chart, width, figure, setting);
  }
  Frame operator()(const document::ConditionChart& chart) const {
    return charts::set_condition(chart, width, figure, setting);
  }
  Frame operator()(const document::BarChart& chart) const {
    return charts::set_bars(chart, width, figure, setting);
  }
  Frame operator()(const document::DatingChart& chart) const {
    return charts::set_dating(chart, width, figure, setting);
  }
  Frame operator()(const document::CurveChart& chart) const {
    return charts::set_curve(chart, width, figure, setting);
  }
};

}  // namespace

Frame set_chart(const document::Chart& chart, Length width, TagId figure, const Setting& setting) {
  return std::visit(SetChart{width, figure, setting}, chart);
}

}  // namespace winchbook::layout
