#pragma once

#include <variant>
#include <vector>

/// What sales say of a value, with their doubts.
namespace winchbook::assess::value {

/// A least-squares fit of y on columns with an intercept.
struct Fit {
  std::vector<double> coefficients;  ///< the intercept first, then one a column
  std::vector<double> errors;        ///< their standard errors
  double residual_sd = 0;            ///< sqrt(residual sum of squares / degrees)
  int degrees = 0;                   ///< of freedom of the residuals, n − p
  double r_squared = 0;
  double condition = 1;  ///< of the standardised columns: largest over smallest singular value
  std::vector<double> leverages;  ///< of each row, h_ii
  std::vector<double> residuals;  ///< of each row

  // What a prediction needs.
  int rows = 0;
  std::vector<double> means;
  std::vector<double> scales;
  std::vector<double> inverse;  ///< (ZᵀZ)⁻¹, row by row
};

/// Why no fit was made.
enum class NoFit {
  too_few,          ///< not more rows than coefficients
  constant_column,  ///< a column has one value only
  ill_conditioned,  ///< columns follow from each other too nearly for double precision
};

/// Fits by a Householder QR factorisation of the standardised columns (mean 0, sample standard
/// deviation 1): y = b0 + Σ bj xj. `columns` are each as long as `y`. Refused over a condition
/// number of 1e8: half of a double's digits would be left. Checked with the certified values of the
/// NIST Statistical Reference Datasets.
[[nodiscard]] std::variant<Fit, NoFit> fit(const std::vector<std::vector<double>>& columns,
                                           const std::vector<double>& y);

/// A prediction for one new row: its mean, and the standard deviation of a single new y about it,
/// s sqrt(1 + 1/n + zᵀ(ZᵀZ)⁻¹z).
struct Prediction {
  double mean = 0;
  double sd = 0;
};
[[nodiscard]] Prediction predict(const Fit& fit, const std::vector<double>& row);

/// The t beyond which `tail` of Student's distribution lies, for degrees of freedom >= 1.
/// Example: 10 degrees, tail 0.025: 2.228.
[[nodiscard]] double student_t(int degrees, double tail);

/// A value and how much it counts; weights >= 0.
struct Weighted {
  double value = 0;
  double weight = 1;
};

/// The middle of the values by weight: the lower is the first whose summed weight reaches half of
/// the whole, the upper the first that passes it; their middle is the weighted median. Scaling all
/// weights changes nothing. Error of the caller when no weight is above zero.
struct Median {
  double lower = 0;
  double upper = 0;
  [[nodiscard]] double middle() const { return (lower + upper) / 2; }
};
[[nodiscard]] Median weighted_median(std::vector<Weighted> values);

/// The quantile p, 0 to 1, of a sample by Hyndman and Fan (1996), continuous types 4 to 9; 8 is the
/// one they advise. Error of the caller when the sample is empty.
[[nodiscard]] double quantile(std::vector<double> sample, double p, int type = 8);

}  // namespace winchbook::assess::value
