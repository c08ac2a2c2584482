// Picks points by plain scans; the first of equals wins, so the same books give the same picks.
#include "report/moments.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::report {
namespace {

constexpr std::size_t most_shown = 12;

/// Steps to take over the sweep: the first that divides it evenly, so that tables run in round steps; else the first.
std::size_t steps_over(std::size_t intervals) {
  for (const std::size_t steps : {8U, 10U, 9U, 7U, 6U}) {
    if (intervals % steps == 0) return steps;
  }
  return 8;
}

std::vector<std::size_t> choose_shown(std::size_t points, std::vector<std::size_t> wanted) {
  std::vector<std::size_t> shown;
  if (points <= most_shown) {
    for (std::size_t i = 0; i < points; ++i) shown.push_back(i);
    return shown;
  }
  shown = std::move(wanted);
  const std::size_t steps = steps_over(points - 1);
  for (std::size_t i = 0; i <= steps; ++i) shown.push_back((i * (points - 1) + steps / 2) / steps);
  std::sort(shown.begin(), shown.end());
  shown.erase(std::unique(shown.begin(), shown.end()), shown.end());
  return shown;
}

}  // namespace

std::size_t worst_index(const ledger::Series& series, bool largest_is_worst) {
  std::size_t worst = 0;
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (std::isnan(series[i])) return i;
    if (largest_is_worst ? series[i] > series[worst] : series[i] < series[worst]) worst = i;
  }
  return worst;
}

std::size_t peak_index(const ledger::Series& series) {
  std::size_t peak = 0;
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (series[i] > series[peak] || (std::isnan(series[peak]) && !std::isnan(series[i]))) peak = i;
  }
  return peak;
}

Moments find_moments(const ledger::Ledger& books) {
  Moments moments;
  const std::size_t points = books.frequencies_hz.size();
  moments.worst = worst_index(books.totals.efficiency, false);
  moments.best = peak_index(books.totals.efficiency);
  moments.middle = points / 2;
  const std::size_t worst_swr = worst_index(books.source.swr, true);
  moments.shown = choose_shown(points, {moments.worst, moments.best, moments.middle, worst_swr});
  return moments;
}

}  // namespace wattfall::report
