// The slow way to the best setting: a fine grid in the logarithms of the values, then, around the best several distinct
// cells, ever smaller grids that move with their best point. It shares no idea with the search but "greater is better".
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace tuner_test {

struct Brute {
  double score;
  std::vector<double> values;
};

/// Lower and upper bounds of each value [H or F].
struct Bounds {
  std::vector<double> lower;
  std::vector<double> upper;
};

namespace brute {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Best of a grid of `side` points a knob over centre +- half; values come from per-knob tables.
template <class Score>
double best_of_grid(const Score& score, const Bounds& bounds, std::vector<double>& centre, double half, int side) {
  const std::size_t n = centre.size();
  std::vector<std::vector<double>> u(n), value(n);
  for (std::size_t i = 0; i < n; ++i)
    for (int k = 0; k < side; ++k) {
      u[i].push_back(std::clamp(centre[i] + half * (2.0 * k / (side - 1) - 1), 0.0, 1.0));
      value[i].push_back(bounds.lower[i] * std::pow(bounds.upper[i] / bounds.lower[i], u[i].back()));
    }
  double best = -infinity;
  std::vector<std::size_t> index(n, 0);
  std::vector<double> best_u(n), values(n);
  for (bool more = true; more;) {
    for (std::size_t i = 0; i < n; ++i) values[i] = value[i][index[i]];
    const double now = score(values.data());
    if (now > best) {
      best = now;
      for (std::size_t i = 0; i < n; ++i) best_u[i] = u[i][index[i]];
    }
    more = false;
    for (std::size_t i = 0; i < n && !more; ++i) {
      more = ++index[i] < std::size_t(side);
      if (!more) index[i] = 0;
    }
  }
  centre = best_u;
  return best;
}

struct Cell {
  double score;
  std::vector<double> u;
};

/// The best point of each of the grid's coarse blocks, best first, at most `most`.
template <class Score>
std::vector<Cell> best_cells(const Score& score, const Bounds& bounds, int side, int blocks, std::size_t most) {
  const std::size_t n = bounds.lower.size();
  std::size_t block_count = 1, points = 1;
  for (std::size_t i = 0; i < n; ++i) {
    block_count *= std::size_t(blocks);
    points *= std::size_t(side);
  }
  std::vector<std::vector<double>> value(n);
  for (std::size_t i = 0; i < n; ++i)
    for (int k = 0; k < side; ++k)
      value[i].push_back(bounds.lower[i] * std::pow(bounds.upper[i] / bounds.lower[i], double(k) / (side - 1)));
  std::vector<Cell> cells(block_count, Cell{-infinity, {}});
  std::vector<std::size_t> best_point(block_count, 0);
  std::vector<double> values(n);
  for (std::size_t p = 0; p < points; ++p) {
    std::size_t rest = p, block = 0;
    for (std::size_t i = 0; i < n; ++i, rest /= std::size_t(side)) {
      const std::size_t k = rest % std::size_t(side);
      values[i] = value[i][k];
      block = block * std::size_t(blocks) + k * std::size_t(blocks) / std::size_t(side);
    }
    const double now = score(values.data());
    if (now > cells[block].score) {
      cells[block].score = now;
      best_point[block] = p;
    }
  }
  for (std::size_t b = 0; b < block_count; ++b) {
    std::size_t rest = best_point[b];
    for (std::size_t i = 0; i < n; ++i, rest /= std::size_t(side))
      cells[b].u.push_back(double(rest % std::size_t(side)) / (side - 1));
  }
  std::sort(cells.begin(), cells.end(), [](const Cell& a, const Cell& b) { return a.score > b.score; });
  cells.resize(std::min(cells.size(), most));
  return cells;
}

}  // namespace brute

/// `side` points a knob first; then zooms of `zoom_side` points a knob that shrink by `shrink` where the best lies
/// inside.
template <class Score>
Brute brute_force(const Score& score, const Bounds& bounds, int side, int zoom_side, double shrink, std::size_t most) {
  Brute result{-brute::infinity, {}};
  for (brute::Cell& cell : brute::best_cells(score, bounds, side, 10, most)) {
    double half = 3.0 / side;
    for (int zoom = 0; half > 1e-7 && zoom < 200; ++zoom) {
      const std::vector<double> before = cell.u;
      cell.score = std::max(cell.score, brute::best_of_grid(score, bounds, cell.u, half, zoom_side));
      double moved = 0;
      for (std::size_t i = 0; i < before.size(); ++i) moved = std::max(moved, std::abs(cell.u[i] - before[i]));
      if (moved < 0.9 * half) half *= shrink;
    }
    if (cell.score > result.score) {
      result.score = cell.score;
      result.values.clear();
      for (std::size_t i = 0; i < cell.u.size(); ++i)
        result.values.push_back(bounds.lower[i] * std::pow(bounds.upper[i] / bounds.lower[i], cell.u[i]));
    }
  }
  return result;
}

}  // namespace tuner_test
