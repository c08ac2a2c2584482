// The E series: listed up to E24, computed above by the standard's rule.
#include "preferred.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

namespace wattfall::design {
namespace {

/// IEC 60063:2015, E24. E12, E6 and E3 are every second, fourth and eighth of these.
constexpr double e24[] = {1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0,
                          3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1};

double fine_value(int n, int per_decade) {
  const double value = std::round(100.0 * std::pow(10.0, double(n) / per_decade)) / 100.0;
  return per_decade == 192 && n == 185 ? 9.20 : value;
}

/// 10^exponent times a value of three digits, as near as a double gets to the decimal number.
double in_decade(double value, int exponent) {
  const double digits = std::round(value * 100.0);
  return exponent >= 2 ? digits * std::pow(10.0, exponent - 2) : digits / std::pow(10.0, 2 - exponent);
}

}  // namespace

std::vector<double> preferred_decade(std::string_view series) {
  if (series.empty() || series[0] != 'E') return {};
  for (const int per_decade : {3, 6, 12, 24, 48, 96, 192}) {
    if (series.substr(1) != std::to_string(per_decade)) continue;
    std::vector<double> values;
    for (int n = 0; n < per_decade; ++n)
      values.push_back(per_decade <= 24 ? e24[n * (24 / per_decade)] : fine_value(n, per_decade));
    return values;
  }
  return {};
}

std::vector<double> preferred_values(std::string_view series, double lower, double upper, std::size_t most) {
  const std::vector<double> decade = preferred_decade(series);
  std::vector<double> values;
  if (decade.empty() || !(lower > 0.0)) return values;
  constexpr double slack = 1e-9;
  for (int exponent = static_cast<int>(std::floor(std::log10(lower))) - 1; exponent < 300; ++exponent)
    for (const double value : decade) {
      const double candidate = in_decade(value, exponent);
      if (candidate > upper * (1.0 + slack) || values.size() >= most) return values;
      if (candidate >= lower * (1.0 - slack)) values.push_back(candidate);
    }
  return values;
}

std::size_t pair_count(std::size_t singles, Joined joined) {
  const std::size_t ways = (joined.in_series ? 1 : 0) + (joined.in_parallel ? 1 : 0);
  return singles + ways * (singles * (singles + 1) / 2);
}

std::vector<MadeValue> preferred_pairs(const std::vector<double>& singles, Joined joined, bool adds_in_series) {
  std::vector<MadeValue> all;
  all.reserve(pair_count(singles.size(), joined));
  for (std::size_t i = 0; i < singles.size(); ++i) {
    const double a = singles[i];
    all.push_back({a, {a}});
    for (std::size_t j = 0; j <= i; ++j) {
      const double b = singles[j];
      for (const bool in_series : {true, false}) {
        if (in_series ? !joined.in_series : !joined.in_parallel) continue;
        all.push_back({in_series == adds_in_series ? a + b : a * b / (a + b), {a, b, in_series}});
      }
    }
  }
  // How far the two are apart; a part alone comes before all pairs.
  const auto apart = [](const Made& made) { return made.second > 0.0 ? made.first / made.second : 0.0; };
  std::stable_sort(all.begin(), all.end(), [](const MadeValue& a, const MadeValue& b) { return a.value < b.value; });
  constexpr double same = 1e-9;
  std::vector<MadeValue> once;
  for (const MadeValue& one : all) {
    if (once.empty() || one.value > once.back().value * (1.0 + same))
      once.push_back(one);
    else if (apart(one.made) < apart(once.back().made))
      once.back() = one;
  }
  return once;
}

std::vector<double> relay_values(int count, double smallest) {
  std::vector<double> values(std::size_t{1} << count);
  for (std::size_t i = 0; i < values.size(); ++i) values[i] = static_cast<double>(i) * smallest;
  return values;
}

}  // namespace wattfall::design
