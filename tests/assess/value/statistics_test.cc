#include "assess/value/statistics.h"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include "tabular/rows.h"

namespace {

using namespace winchbook::assess::value;
using winchbook::tabular::Row;

std::vector<Row> rows_of(const std::string& name) {
  std::ifstream in(std::string(WINCHBOOK_SOURCE_DIR) + "/tests/assess/value/reference/" + name,
                   std::ios::binary);
  REQUIRE_MESSAGE(in.is_open(), name);
  winchbook::tabular::RowReader reader(in, name);
  std::vector<Row> rows;
  for (;;) {
    auto row = reader.next();
    REQUIRE(row);
    if (!*row) return rows;
    rows.push_back(**row);
  }
}

double number(const std::string& text) {
  return std::stod(text);
}

std::vector<double> numbers(const std::string& text) {
  std::istringstream in(text);
  std::vector<double> all;
  for (double one = 0; in >> one;)
    all.push_back(one);
  return all;
}

/// A dataset with its columns, the first raised to powers up to `powers`.
struct Dataset {
  std::vector<std::vector<double>> columns;
  std::vector<double> y;
};

Dataset dataset(const std::string& name, int powers) {
  Dataset data;
  const auto rows = rows_of("strd_" + name + ".csv");
  const std::size_t given = rows.front().fields.size() - 1;
  data.columns.resize(powers > 1 ? static_cast<std::size_t>(powers) : given);
  for (std::size_t i = 1; i < rows.size(); ++i) {
    data.y.push_back(number(rows[i].fields[0]));
    for (std::size_t j = 0; j < data.columns.size(); ++j) {
      data.columns[j].push_back(
          powers > 1 ? std::pow(number(rows[i].fields[1]), static_cast<double>(j + 1))
                     : number(rows[i].fields[j + 1]));
    }
  }
  return data;
}

struct Certified {
  double value = 0;
  double sd = 0;
};

std::map<std::string, Certified> certified(const std::string& name) {
  std::map<std::string, Certified> values;
  for (const Row& row : rows_of("strd_certified.csv")) {
    if (row.fields[0] != name || row.fields[2] == "Infinity") continue;
    values[row.fields[1]] = {number(row.fields[2]),
                             row.fields[3].empty() ? 0 : number(row.fields[3])};
  }
  return values;
}

/// How many digits agree: −log10 of the relative error (absolute where the true value is 0).
double digits(double got, double wanted) {
  if (got == wanted) return 16;
  const double error = std::abs(got - wanted) / (wanted == 0 ? 1 : std::abs(wanted));
  return std::min(16.0, -std::log10(error));
}

void check_dataset(const std::string& file, const std::string& name, int powers, double wanted) {
  const Dataset data = dataset(file, powers);
  const auto fitted = fit(data.columns, data.y);
  const Fit* got = std::get_if<Fit>(&fitted);
  REQUIRE_MESSAGE(got != nullptr, name);
  const auto truth = certified(name);
  for (std::size_t j = 0; j < got->coefficients.size(); ++j) {
    const Certified& one = truth.at("B" + std::to_string(j));
    CHECK_MESSAGE(digits(got->coefficients[j], one.value) >= wanted,
                  name << " B" << j << " " << got->coefficients[j]);
    if (one.sd > 0) {
      CHECK_MESSAGE(digits(got->errors[j], one.sd) >= wanted - 1, name << " sd of B" << j);
    }
  }
  if (truth.at("RSD").value > 0) {
    CHECK_MESSAGE(digits(got->residual_sd, truth.at("RSD").value) >= wanted - 1, name);
  }
  CHECK_MESSAGE(digits(got->r_squared, truth.at("R2").value) >= wanted, name);
  CHECK(got->degrees == static_cast<int>(truth.at("RES_DF").value));
}

}  // namespace

// NIST Statistical Reference Datasets, linear regression. Double precision reaches about twelve
// digits on the easy ones and fewer as the columns come nearer to each other.
TEST_CASE("fits agree with the certified values of the NIST reference datasets") {
  check_dataset("norris", "Norris", 1, 11);
  check_dataset("pontius", "Pontius", 2, 9);
  check_dataset("longley", "Longley", 1, 9);
  check_dataset("wampler1", "Wampler1", 5, 8);
  check_dataset("wampler2", "Wampler2", 5, 10);
  check_dataset("wampler3", "Wampler3", 5, 8);
  check_dataset("wampler4", "Wampler4", 5, 7);
  check_dataset("wampler5", "Wampler5", 5, 5);
}

// Filip: a polynomial of the tenth degree whose columns double precision cannot tell apart.
TEST_CASE("what double precision cannot answer is refused, never answered with nonsense") {
  const Dataset filip = dataset("filip", 10);
  const auto fitted = fit(filip.columns, filip.y);
  REQUIRE(std::holds_alternative<NoFit>(fitted));
  CHECK(std::get<NoFit>(fitted) == NoFit::ill_conditioned);
}

TEST_CASE("too few rows, a constant column and a doubled column give no fit") {
  CHECK(std::get<NoFit>(fit({{1, 2}}, {1, 2})) == NoFit::too_few);
  CHECK(std::get<NoFit>(fit({{5, 5, 5, 5}}, {1, 2, 3, 4})) == NoFit::constant_column);
  CHECK(std::get<NoFit>(fit({{1, 2, 3, 4, 5}, {2, 4, 6, 8, 10}}, {1, 3, 2, 5, 4})) ==
        NoFit::ill_conditioned);
  CHECK(std::get<NoFit>(fit({}, {})) == NoFit::too_few);
}

TEST_CASE("without columns the fit is the mean, and a prediction is a new value about it") {
  const auto fitted = fit({}, {1, 2, 3, 4, 5});
  const Fit* mean = std::get_if<Fit>(&fitted);
  REQUIRE(mean != nullptr);
  CHECK(mean->coefficients.at(0) == doctest::Approx(3));
  CHECK(mean->residual_sd == doctest::Approx(std::sqrt(2.5)));
  CHECK(predict(*mean, {}).sd == doctest::Approx(std::sqrt(2.5 * (1 + 1.0 / 5))));
}

// By hand: x 1..5, y 2 1 4 3 5: slope 0.8, intercept 0.6, s² 1.2; at x = 6 the mean is 5.4 and the
// variance s² (1 + 1/5 + 9/10).
TEST_CASE("a prediction carries the doubt of the fit and of one more sale") {
  const auto fitted = fit({{1, 2, 3, 4, 5}}, {2, 1, 4, 3, 5});
  const Fit* line = std::get_if<Fit>(&fitted);
  REQUIRE(line != nullptr);
  const Prediction six = predict(*line, {6});
  CHECK(six.mean == doctest::Approx(5.4));
  CHECK(six.sd == doctest::Approx(std::sqrt(1.2 * (1 + 0.2 + 0.9))));
  CHECK(predict(*line, {3}).sd < six.sd);
  double sum = 0;
  for (const double h : line->leverages)
    sum += h;
  CHECK(sum == doctest::Approx(2));  // as many as coefficients
}

// NIST/SEMATECH e-Handbook's table to half a unit of its third decimal (its 0.001 column is off in
// seven cells and is not used), and 15 digits reckoned elsewhere.
TEST_CASE("Student's t agrees with the tables") {
  int cells = 0;
  for (const Row& row : rows_of("student_t_upper.csv")) {
    if (row.fields[0] == "df" || row.fields[0] == "inf") continue;
    const double tail = number(row.fields[1]);
    const double t = student_t(std::stoi(row.fields[0]), tail);
    CHECK(t == doctest::Approx(number(row.fields[3])).epsilon(1e-12));
    if (tail >= 0.005) CHECK(std::abs(t - number(row.fields[2])) <= 0.0005 + 1e-9);
    ++cells;
  }
  CHECK(cells > 150);
}

TEST_CASE("the weighted median is the median of values repeated by their weights") {
  int cases = 0;
  for (const Row& row : rows_of("weighted_median.csv")) {
    if (row.fields[0] == "values") continue;
    const auto values = numbers(row.fields[0]);
    const auto weights = numbers(row.fields[1]);
    for (const double scale : {1.0, 7.0, 0.1}) {
      std::vector<Weighted> weighted;
      for (std::size_t i = 0; i < values.size(); ++i)
        weighted.push_back({values[i], weights[i] * scale});
      const Median median = weighted_median(weighted);
      CHECK(median.lower == number(row.fields[2]));
      CHECK(median.upper == number(row.fields[3]));
      CHECK(median.middle() == number(row.fields[4]));
    }
    ++cases;
  }
  CHECK(cases == 11);
}

// Hyndman and Fan, Sample Quantiles in Statistical Packages (1996), as R reckons them.
TEST_CASE("quantiles are Hyndman and Fan's") {
  std::map<std::string, std::vector<double>> samples;
  for (const Row& row : rows_of("quantile_samples.csv"))
    samples[row.fields[0]] = numbers(row.fields[1]);
  int cells = 0;
  for (const Row& row : rows_of("quantiles.csv")) {
    if (row.fields[0] == "sample") continue;
    const double got =
        quantile(samples.at(row.fields[0]), number(row.fields[2]), std::stoi(row.fields[1]));
    CHECK_MESSAGE(got == doctest::Approx(number(row.fields[3])).epsilon(1e-9),
                  row.fields[0] << " type " << row.fields[1] << " p " << row.fields[2]);
    ++cells;
  }
  CHECK(cells > 500);
}
