#include "least_squares.hpp"

#include <algorithm>
#include <limits>

namespace line_loss {
namespace {

double dot(const Column& a, const Column& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

double sum_of(const Column& a) {
  double sum = 0.0;
  for (const double value : a) sum += value;
  return sum;
}

}  // namespace

double sum_of_squares(std::span<const Column> columns, std::span<const double> coefficients) {
  double sum = 0.0;
  for (std::size_t i = 0; i < columns.front().size(); ++i) {
    double error = -1.0;
    for (std::size_t j = 0; j < columns.size(); ++j) error += coefficients[j] * columns[j][i];
    sum += error * error;
  }
  return sum;
}

std::vector<double> least_squares(std::span<const Column> columns) {
  const std::size_t count = columns.size();
  std::vector<Column> orthogonal(columns.begin(), columns.end());
  std::vector<std::vector<double>> share(count, std::vector<double>(count, 0.0));
  for (std::size_t j = 0; j < count; ++j) {
    for (std::size_t i = 0; i < j; ++i) {
      share[i][j] = dot(orthogonal[i], orthogonal[j]) / dot(orthogonal[i], orthogonal[i]);
      for (std::size_t n = 0; n < orthogonal[j].size(); ++n) orthogonal[j][n] -= share[i][j] * orthogonal[i][n];
    }
  }
  std::vector<double> k(count);
  for (std::size_t j = count; j-- > 0;) {
    k[j] = sum_of(orthogonal[j]) / dot(orthogonal[j], orthogonal[j]);
    for (std::size_t later = j + 1; later < count; ++later) k[j] -= share[j][later] * k[later];
  }
  return k;
}

std::vector<double> non_negative_least_squares(std::span<const Column> columns) {
  std::vector<double> best(columns.size(), 0.0);
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t subset = (std::size_t{1} << columns.size()) - 1; subset > 0; --subset) {
    std::vector<Column> some;
    for (std::size_t j = 0; j < columns.size(); ++j)
      if (subset >> j & 1) some.push_back(columns[j]);
    const std::vector<double> k = least_squares(some);
    if (std::ranges::any_of(k, [](double value) { return !(value >= 0.0); })) continue;
    const double cost = sum_of_squares(some, k);
    if (!(cost < least)) continue;
    least = cost;
    for (std::size_t j = 0, next = 0; j < columns.size(); ++j) best[j] = subset >> j & 1 ? k[next++] : 0.0;
  }
  return best;
}

}  // namespace line_loss
