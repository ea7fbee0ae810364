#include "assess/value/statistics.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <limits>
#include <utility>

namespace winchbook::assess::value {
namespace {

constexpr double kMostCondition = 1e8;

using Eigen::MatrixXd;
using Eigen::VectorXd;

VectorXd vector_of(const std::vector<double>& values) {
  return Eigen::Map<const VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

std::vector<double> list_of(const VectorXd& values) {
  return {values.data(), values.data() + values.size()};
}

/// The columns with mean 0 and sample standard deviation 1, their means and scales kept in `into`;
/// false when one of them is constant.
bool standardise(const std::vector<std::vector<double>>& columns, Fit& into, MatrixXd& z) {
  for (std::size_t j = 0; j < columns.size(); ++j) {
    const VectorXd column = vector_of(columns[j]);
    const double mean = column.mean();
    const VectorXd centred = column.array() - mean;
    const double scale = std::sqrt(centred.squaredNorm() / (into.rows - 1.0));
    if (!(scale > std::abs(mean) * std::numeric_limits<double>::epsilon() * into.rows)) {
      return false;
    }
    into.means.push_back(mean);
    into.scales.push_back(scale);
    z.col(static_cast<Eigen::Index>(j)) = centred / scale;
  }
  return true;
}

/// Coefficients and their errors in the columns' own units.
void unstandardise(const VectorXd& slopes, const MatrixXd& inverse, double y_mean, Fit& into) {
  const auto columns = static_cast<Eigen::Index>(into.means.size());
  double intercept = y_mean;
  VectorXd shift(columns);  // mean over scale: what a column's centre adds to the intercept's doubt
  for (Eigen::Index j = 0; j < columns; ++j) {
    const auto at = static_cast<std::size_t>(j);
    shift(j) = into.means[at] / into.scales[at];
    intercept -= slopes(j) * shift(j);
  }
  into.coefficients.push_back(intercept);
  const double spread = columns > 0 ? shift.dot(inverse * shift) : 0;
  into.errors.push_back(into.residual_sd * std::sqrt(1.0 / into.rows + spread));
  for (Eigen::Index j = 0; j < columns; ++j) {
    const double scale = into.scales[static_cast<std::size_t>(j)];
    into.coefficients.push_back(slopes(j) / scale);
    into.errors.push_back(into.residual_sd * std::sqrt(inverse(j, j)) / scale);
  }
}

}  // namespace

std::variant<Fit, NoFit> fit(const std::vector<std::vector<double>>& columns,
                             const std::vector<double>& y) {
  Fit result;
  result.rows = static_cast<int>(y.size());
  const int parameters = static_cast<int>(columns.size()) + 1;
  result.degrees = result.rows - parameters;
  if (result.degrees < 1) return NoFit::too_few;
  MatrixXd z(result.rows, parameters - 1);
  if (!standardise(columns, result, z)) return NoFit::constant_column;

  const VectorXd values = vector_of(y);
  const double y_mean = values.mean();
  const VectorXd centred = values.array() - y_mean;
  VectorXd slopes(parameters - 1);
  MatrixXd inverse(parameters - 1, parameters - 1);
  if (parameters > 1) {
    const VectorXd singular = Eigen::JacobiSVD<MatrixXd>(z).singularValues();
    result.condition = singular(0) / singular(singular.size() - 1);
    if (!(result.condition <= kMostCondition)) return NoFit::ill_conditioned;
    const Eigen::HouseholderQR<MatrixXd> qr(z);
    slopes = qr.solve(centred);
    const MatrixXd root = qr.matrixQR().topRows(parameters - 1).triangularView<Eigen::Upper>();
    const MatrixXd back = root.triangularView<Eigen::Upper>().solve(
        MatrixXd::Identity(parameters - 1, parameters - 1));
    inverse = back * back.transpose();
  }
  const VectorXd residuals = parameters > 1 ? VectorXd(centred - z * slopes) : centred;
  const double unexplained = residuals.squaredNorm();
  result.residual_sd = std::sqrt(unexplained / result.degrees);
  const double all = centred.squaredNorm();
  result.r_squared = all > 0 ? 1 - unexplained / all : 0;
  result.residuals = list_of(residuals);
  for (Eigen::Index i = 0; i < z.rows(); ++i) {
    const double pull = parameters > 1 ? z.row(i).dot(inverse * z.row(i).transpose()) : 0;
    result.leverages.push_back(1.0 / result.rows + pull);
  }
  unstandardise(slopes, inverse, y_mean, result);
  for (Eigen::Index i = 0; i < inverse.rows(); ++i) {
    for (Eigen::Index j = 0; j < inverse.cols(); ++j)
      result.inverse.push_back(inverse(i, j));
  }
  return result;
}

Prediction predict(const Fit& fit, const std::vector<double>& row) {
  Prediction prediction{fit.coefficients.front(), 0};
  std::vector<double> z;
  for (std::size_t j = 0; j < row.size(); ++j) {
    prediction.mean += fit.coefficients[j + 1] * row[j];
    z.push_back((row[j] - fit.means[j]) / fit.scales[j]);
  }
  double pull = 0;
  for (std::size_t i = 0; i < z.size(); ++i) {
    for (std::size_t j = 0; j < z.size(); ++j)
      pull += z[i] * fit.inverse[i * z.size() + j] * z[j];
  }
  prediction.sd = fit.residual_sd * std::sqrt(1 + 1.0 / fit.rows + pull);
  return prediction;
}

double student_t(int degrees, double tail) {
  return boost::math::quantile(
      boost::math::complement(boost::math::students_t(static_cast<double>(degrees)), tail));
}

Median weighted_median(std::vector<Weighted> values) {
  std::stable_sort(values.begin(), values.end(),
                   [](const Weighted& a, const Weighted& b) { return a.value < b.value; });
  double whole = 0;
  for (const Weighted& one : values)
    whole += one.weight;
  const double doubt = whole * 1e-12;  // sums of weights that are no binary fractions
  Median median{values.back().value, values.back().value};
  double sum = 0;
  bool reached = false;
  for (const Weighted& one : values) {
    if (one.weight <= 0) continue;
    sum += one.weight;
    if (!reached && sum >= whole / 2 - doubt) {
      median.lower = one.value;
      reached = true;
    }
    if (sum > whole / 2 + doubt) {
      median.upper = one.value;
      break;
    }
  }
  return median;
}

double quantile(std::vector<double> sample, double p, int type) {
  // a and b of Hyndman and Fan's table, for types 4 to 9
  static constexpr std::array<std::pair<double, double>, 6> kTypes{
      {{0, 1}, {0.5, 0.5}, {0, 0}, {1, 1}, {1.0 / 3, 1.0 / 3}, {3.0 / 8, 3.0 / 8}}};
  std::sort(sample.begin(), sample.end());
  const auto [a, b] = kTypes.at(static_cast<std::size_t>(type - 4));
  const auto n = static_cast<double>(sample.size());
  constexpr double kFuzz = 4 * std::numeric_limits<double>::epsilon();
  const double place = a + p * (n + 1 - a - b);
  const double whole = std::floor(place + kFuzz);
  const double part = std::abs(place - whole) < kFuzz ? 0 : place - whole;
  const auto at = [&](double index) {
    return sample[static_cast<std::size_t>(std::clamp(index, 1.0, n)) - 1];
  };
  return (1 - part) * at(whole) + part * at(whole + 1);
}

}  // namespace winchbook::assess::value
