// See lagrangian.hpp.
#include "lagrangian.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace wattfall::tuner {
namespace {

/// Penalty curvature over the goal's own: at ten, one round cuts a violation to a tenth even with wrong multipliers.
constexpr double stiffness = 10;

/// Newton passes of step_to_meet; the models are followed exactly after three, two more serve knobs that reach a bound.
constexpr int passes = 5;

using Slopes = std::vector<std::vector<double>>;

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Solves the small system a x = b by elimination with pivoting; where a pivot is 0 so is x.
std::vector<double> solve(std::vector<double> a, std::vector<double> b) {
  const std::size_t m = b.size();
  for (std::size_t p = 0; p < m; ++p) {
    std::size_t best = p;
    for (std::size_t r = p + 1; r < m; ++r)
      if (std::abs(a[r * m + p]) > std::abs(a[best * m + p])) best = r;
    for (std::size_t c = 0; c < m; ++c) std::swap(a[p * m + c], a[best * m + c]);
    std::swap(b[p], b[best]);
    if (a[p * m + p] == 0) continue;
    for (std::size_t r = p + 1; r < m; ++r) {
      const double factor = a[r * m + p] / a[p * m + p];
      for (std::size_t c = p; c < m; ++c) a[r * m + c] -= factor * a[p * m + c];
      b[r] -= factor * b[p];
    }
  }
  for (std::size_t p = m; p-- > 0;) {
    for (std::size_t c = p + 1; c < m; ++c) b[p] -= a[p * m + c] * b[c];
    b[p] = a[p * m + p] == 0 ? 0 : b[p] / a[p * m + p];
  }
  return b;
}

/// Products of the chosen slopes, each with each.
std::vector<double> products(const Slopes& slopes, const std::vector<std::size_t>& chosen) {
  const std::size_t m = chosen.size();
  std::vector<double> result(m * m);
  for (std::size_t i = 0; i < m; ++i) {
    for (std::size_t j = 0; j < m; ++j) result[i * m + j] = dot(slopes[chosen[i]], slopes[chosen[j]]);
    result[i * m + i] *= 1 + 1e-12;  // two slacks that are one: keeps rounding from dividing by nothing
  }
  return result;
}

/// Multipliers >= 0 that best balance `slope` by the slacks' slopes: least squares, negative ones dropped in turn.
std::vector<double> balance(const std::vector<double>& slope, const Slopes& slopes, std::vector<std::size_t> active) {
  std::vector<double> result(slopes.size(), 0.0);
  while (!active.empty()) {
    const std::size_t m = active.size();
    std::vector<double> b(m);
    for (std::size_t i = 0; i < m; ++i) b[i] = -dot(slopes[active[i]], slope);
    const std::vector<double> x = solve(products(slopes, active), std::move(b));
    const auto least = std::min_element(x.begin(), x.end());
    if (*least >= 0) {
      for (std::size_t i = 0; i < m; ++i) result[active[i]] = x[i];
      break;
    }
    active.erase(active.begin() + (least - x.begin()));
  }
  return result;
}

/// The slacks' slopes over the knobs that are not held.
Slopes free_slopes(std::span<const Quadratic> slacks, const std::vector<bool>& held) {
  Slopes slopes;
  for (const Quadratic& slack : slacks) {
    slopes.push_back(slack.gradient);
    for (std::size_t i = 0; i < held.size(); ++i)
      if (held[i]) slopes.back()[i] = 0;
  }
  return slopes;
}

Weights weights_with(const Quadratic& goal, std::span<const Quadratic> slacks, const std::vector<bool>& held,
                     double radius) {
  const Slopes slopes = free_slopes(slacks, held);
  Weights result{std::vector<double>(slacks.size(), 0.0), std::vector<double>(slacks.size(), 0.0)};
  std::vector<std::size_t> active;
  const double bend = std::sqrt(std::max(dot(goal.hessian, goal.hessian), dot(goal.gradient, goal.gradient)));
  for (std::size_t k = 0; k < slacks.size(); ++k) {
    const double squared = dot(slopes[k], slopes[k]);
    if (!(squared > 0)) continue;
    result.penalties[k] = stiffness * bend / squared;
    if (slacks[k].value < std::sqrt(squared) * radius) active.push_back(k);
  }
  result.multipliers = balance(goal.gradient, slopes, active);
  return result;
}

}  // namespace

double Weights::term(std::size_t k, double slack) const {
  if (!(penalties[k] > 0)) return 0;
  const double pull = std::max(0.0, multipliers[k] - penalties[k] * slack);
  return -(pull * pull - multipliers[k] * multipliers[k]) / (2 * penalties[k]);
}

Weights fit_weights(const Quadratic& goal, std::span<const Quadratic> slacks, const Room& room, double touching,
                    double radius) {
  const std::size_t n = goal.gradient.size();
  std::vector<bool> held(n);
  for (std::size_t i = 0; i < n; ++i) held[i] = -room.lower[i] < touching || room.upper[i] < touching;
  const Weights first = weights_with(goal, slacks, held, radius);
  // A knob at its bound that the balance pulls inward is not held after all.
  bool same = true;
  for (std::size_t i = 0; i < n; ++i) {
    if (!held[i]) continue;
    double slope = goal.gradient[i];
    for (std::size_t k = 0; k < slacks.size(); ++k) slope += first.multipliers[k] * slacks[k].gradient[i];
    const bool outward = room.upper[i] < touching ? slope >= 0 : slope <= 0;
    if (outward) continue;
    held[i] = false;
    same = false;
  }
  return same ? first : weights_with(goal, slacks, held, radius);
}

Quadratic lagrangian(const Quadratic& goal, std::span<const Quadratic> slacks, const Weights& weights) {
  Quadratic result = goal;
  const std::size_t n = goal.gradient.size();
  for (std::size_t k = 0; k < slacks.size(); ++k) {
    const Quadratic& slack = slacks[k];
    const double pull = weights.multipliers[k] - weights.penalties[k] * slack.value;
    if (!(pull > 0)) continue;
    for (std::size_t i = 0; i < n; ++i) {
      result.gradient[i] += pull * slack.gradient[i];
      for (std::size_t j = 0; j < n; ++j)
        result.hessian[i * n + j] +=
            pull * slack.hessian[i * n + j] - weights.penalties[k] * slack.gradient[i] * slack.gradient[j];
    }
  }
  return result;
}

std::vector<double> step_to_meet(std::span<const Quadratic> slacks, const Room& room, double aim) {
  const std::size_t n = room.lower.size();
  std::vector<double> step(n, 0.0);
  std::vector<bool> held(n, false);
  for (int pass = 0; pass < passes; ++pass) {
    std::vector<std::size_t> missed;
    for (std::size_t k = 0; k < slacks.size(); ++k)
      if (slacks[k].at(step) < aim) missed.push_back(k);
    if (missed.empty()) break;
    const Slopes slopes = free_slopes(slacks, held);
    std::vector<double> lack;
    for (std::size_t k : missed) lack.push_back(aim - slacks[k].at(step));
    const std::vector<double> x = solve(products(slopes, missed), std::move(lack));
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t m = 0; m < missed.size(); ++m) step[i] += x[m] * slopes[missed[m]][i];
      held[i] = step[i] < room.lower[i] || step[i] > room.upper[i];
      step[i] = std::clamp(step[i], room.lower[i], room.upper[i]);
    }
  }
  return step;
}

}  // namespace wattfall::tuner
