// See shape.hpp.
#include "shape.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::tuner {
namespace {

/// ln(10)/10: a decibel of power in nepers of power.
constexpr double nepers_per_db = 0.23025850929940458;

/// Past 300 dB no power ratio of a feed system is meant, and 10^(dB/10) would drown its own differences.
constexpr double largest_db = 300;

}  // namespace

double reshape(Shape shape, double goal) {
  switch (shape) {
    case Shape::plain:
      return goal;
    case Shape::reciprocal:
      return -1 / goal;
    case Shape::swr:
      return goal + 1 / goal;
    case Shape::decibel:
      return -std::exp(-goal * nepers_per_db);
  }
  return goal;
}

bool fits(Shape shape, std::span<const double> goals) {
  return std::all_of(goals.begin(), goals.end(), [shape](double goal) {
    if (!std::isfinite(goal)) return false;
    if (shape == Shape::reciprocal) return goal > 0 && std::isfinite(1 / goal);
    if (shape == Shape::swr) return goal <= -1;
    if (shape == Shape::decibel) return std::abs(goal) <= largest_db;
    return true;
  });
}

}  // namespace wattfall::tuner
