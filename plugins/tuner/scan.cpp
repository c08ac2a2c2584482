// See scan.hpp.
#include "scan.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace wattfall::tuner {
namespace {

double golden(std::size_t dimensions) {
  double g = 1.5;
  for (int i = 0; i < 60; ++i) g = std::pow(1 + g, 1 / double(dimensions + 1));
  return g;
}

}  // namespace

void spread(const Space& space, std::size_t first, std::size_t count, std::vector<double>& places) {
  const double g = golden(space.movable().size() + space.discrete().size());
  for (std::size_t k = first; k < first + count; ++k) {
    const std::size_t row = places.size();
    places.resize(row + space.size(), 0.0);
    double weight = 1;
    auto next = [&] {
      weight /= g;
      const double x = 0.5 + double(k) * weight;
      return x - std::floor(x);
    };
    for (std::size_t knob : space.movable()) places[row + knob] = next();
    for (std::size_t knob : space.discrete())
      places[row + knob] = std::floor(next() * double(space.choice_count(knob)));
  }
}

double distance(const Space& space, const double* a, const double* b) {
  double greatest = 0;
  for (std::size_t knob : space.movable()) greatest = std::max(greatest, std::abs(a[knob] - b[knob]));
  for (std::size_t knob : space.discrete())
    greatest = std::max(greatest, std::abs(a[knob] - b[knob]) / double(space.choice_count(knob) - 1));
  return greatest;
}

std::vector<std::size_t> distinct_best(const Space& space, const Batch& batch, std::size_t most, double apart) {
  std::vector<std::size_t> order(batch.count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  // A heap, for only the foremost are taken; the earlier of equals first.
  const auto behind = [&](std::size_t a, std::size_t b) {
    if (better(batch.worths[b], batch.worths[a])) return true;
    return !better(batch.worths[a], batch.worths[b]) && a > b;
  };
  std::make_heap(order.begin(), order.end(), behind);
  std::vector<std::size_t> chosen;
  for (auto end = order.end(); end != order.begin() && chosen.size() < most; --end) {
    std::pop_heap(order.begin(), end, behind);
    const std::size_t i = *(end - 1);
    const double* own = &batch.places[i * space.size()];
    const bool near = std::any_of(chosen.begin(), chosen.end(), [&](std::size_t c) {
      return distance(space, own, &batch.places[c * space.size()]) < apart;
    });
    if (!near) chosen.push_back(i);
  }
  return chosen;
}

}  // namespace wattfall::tuner
