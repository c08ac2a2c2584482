// See quadratic.hpp.
#include "quadratic.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::tuner {
namespace {

/// Rotations converge quadratically; matrices up to 12 x 12 need 6 to 8 sweeps.
constexpr int largest_sweeps = 30;

/// Directions flatter than this share of the steepest are rounding: differences at 1e-13 over spacing^2 leave about
/// that much.
constexpr double flatness = 1e-13;

void rotate(std::vector<double>& m, std::vector<double>& vectors, std::size_t n, std::size_t p, std::size_t q) {
  const double theta = (m[q * n + q] - m[p * n + p]) / (2 * m[p * n + q]);
  const double t = std::copysign(1.0, theta) / (std::abs(theta) + std::sqrt(theta * theta + 1));
  const double c = 1 / std::sqrt(t * t + 1);
  const double s = t * c;
  for (std::size_t k = 0; k < n; ++k) {
    const double kp = m[k * n + p], kq = m[k * n + q];
    m[k * n + p] = c * kp - s * kq;
    m[k * n + q] = s * kp + c * kq;
  }
  for (std::size_t k = 0; k < n; ++k) {
    const double pk = m[p * n + k], qk = m[q * n + k];
    m[p * n + k] = c * pk - s * qk;
    m[q * n + k] = s * pk + c * qk;
    const double vp = vectors[p * n + k], vq = vectors[q * n + k];
    vectors[p * n + k] = c * vp - s * vq;
    vectors[q * n + k] = s * vp + c * vq;
  }
}

/// No step within the unit cube of at most 12 knobs is longer than its diagonal, sqrt(12): keeps flat directions
/// finite.
constexpr double longest = 4;

/// What is added to the bends so that the step is no longer than the radius, or 10 % longer: Newton's method on the
/// step's inverse length, which comes from one side (More and Sorensen, 1983). Three or four passes do.
double damping_for(std::span<const double> slopes, std::span<const double> bends, double radius) {
  double squares = 0, steepest = 0;
  for (std::size_t k = 0; k < slopes.size(); ++k) {
    squares += slopes[k] * slopes[k];
    steepest = std::max(steepest, bends[k]);
  }
  double damping = std::max(0.0, std::sqrt(squares) / radius - steepest);
  for (int pass = 0; pass < 20; ++pass) {
    double length2 = 0, fall = 0;
    for (std::size_t k = 0; k < slopes.size(); ++k) {
      if (slopes[k] == 0) continue;
      const double along = slopes[k] / (bends[k] + damping);
      length2 += along * along;
      fall += along * along / (bends[k] + damping);
    }
    const double length = std::sqrt(length2);
    if (!(length > 1.1 * radius)) break;
    damping += length2 / fall * (length - radius) / radius;
  }
  return damping;
}

}  // namespace

double Quadratic::at(std::span<const double> step) const {
  const std::size_t n = gradient.size();
  double sum = value;
  for (std::size_t i = 0; i < n; ++i) {
    double bend = 0;
    for (std::size_t j = 0; j < n; ++j) bend += hessian[i * n + j] * step[j];
    sum += step[i] * (gradient[i] + bend / 2);
  }
  return sum;
}

std::vector<double> stencil_offsets(std::size_t n) {
  std::vector<double> offsets(n, 0.0);
  auto add = [&](std::size_t i, std::size_t j, double sign) {
    const std::size_t row = offsets.size();
    offsets.resize(row + n, 0.0);
    offsets[row + i] = sign;
    offsets[row + j] = sign;
  };
  for (std::size_t i = 0; i < n; ++i)
    for (double sign : {1.0, -1.0}) add(i, i, sign);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j)
      for (double sign : {1.0, -1.0}) add(i, j, sign);
  return offsets;
}

Quadratic fit(std::span<const double> values, std::size_t n, double spacing) {
  Quadratic model{values[0], std::vector<double>(n), std::vector<double>(n * n)};
  const double area = spacing * spacing;
  auto both = [&](std::size_t i) { return values[1 + 2 * i] + values[2 + 2 * i]; };
  for (std::size_t i = 0; i < n; ++i) {
    model.gradient[i] = (values[1 + 2 * i] - values[2 + 2 * i]) / (2 * spacing);
    model.hessian[i * n + i] = (both(i) - 2 * values[0]) / area;
  }
  std::size_t next = 1 + 2 * n;
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j, next += 2) {
      const double mixed = (values[next] + values[next + 1] + 2 * values[0] - both(i) - both(j)) / (2 * area);
      model.hessian[i * n + j] = model.hessian[j * n + i] = mixed;
    }
  return model;
}

void symmetric_eigen(std::vector<double> m, std::size_t n, std::vector<double>& values, std::vector<double>& vectors) {
  vectors.assign(n * n, 0.0);
  for (std::size_t i = 0; i < n; ++i) vectors[i * n + i] = 1;
  for (int sweep = 0; sweep < largest_sweeps; ++sweep) {
    bool diagonal = true;
    for (std::size_t p = 0; p < n; ++p)
      for (std::size_t q = p + 1; q < n; ++q) {
        // Below rounding of the diagonal it changes nothing any more.
        if (!(std::abs(m[p * n + q]) > 1e-16 * (std::abs(m[p * n + p]) + std::abs(m[q * n + q])))) continue;
        diagonal = false;
        rotate(m, vectors, n, p, q);
      }
    if (diagonal) break;
  }
  values.resize(n);
  for (std::size_t i = 0; i < n; ++i) values[i] = m[i * n + i];
}

Climb::Climb(const Quadratic& model, std::span<const double> lower, std::span<const double> upper)
    : model_(model), lower_(lower), upper_(upper) {}

const Climb::Axes& Climb::axes(const std::vector<bool>& held) {
  const auto found = std::find(known_.begin(), known_.end(), held);
  if (found != known_.end()) return known_axes_[std::size_t(found - known_.begin())];
  Axes result;
  const std::size_t n = held.size();
  for (std::size_t i = 0; i < n; ++i)
    if (!held[i]) result.free.push_back(i);
  const std::size_t size = result.free.size();
  std::vector<double> part(size * size);
  for (std::size_t i = 0; i < size; ++i)
    for (std::size_t j = 0; j < size; ++j) part[i * size + j] = -model_.hessian[result.free[i] * n + result.free[j]];
  symmetric_eigen(std::move(part), size, result.curvatures, result.directions);
  double steepest = 0;
  for (double c : result.curvatures) steepest = std::max(steepest, std::abs(c));
  for (double& c : result.curvatures) c = std::max(std::abs(c), flatness * steepest);
  known_.push_back(held);
  known_axes_.push_back(std::move(result));
  return known_axes_.back();
}

std::vector<double> Climb::free_step(const Axes& axes, std::span<const double> held_step, double radius) const {
  const std::size_t size = axes.free.size();
  const std::size_t n = held_step.size();
  std::vector<double> slopes(size, 0.0);
  for (std::size_t i = 0; i < size; ++i) {
    double slope = model_.gradient[axes.free[i]];
    for (std::size_t j = 0; j < n; ++j) slope += model_.hessian[axes.free[i] * n + j] * held_step[j];
    for (std::size_t k = 0; k < size; ++k) slopes[k] += axes.directions[k * size + i] * slope;
  }
  std::vector<double> bends(size);
  for (std::size_t k = 0; k < size; ++k) bends[k] = std::max(axes.curvatures[k], std::abs(slopes[k]) / longest);
  const double damping = damping_for(slopes, bends, radius);
  std::vector<double> step(size, 0.0);
  for (std::size_t k = 0; k < size; ++k) {
    if (slopes[k] == 0) continue;
    const double along = slopes[k] / (bends[k] + damping);
    for (std::size_t i = 0; i < size; ++i) step[i] += along * axes.directions[k * size + i];
  }
  return step;
}

std::vector<double> Climb::step(double radius) {
  const std::size_t n = model_.gradient.size();
  std::vector<double> result(n, 0.0);
  std::vector<bool> held(n, false);
  for (std::size_t round = 0; round <= n; ++round) {
    const Axes& axes_now = axes(held);
    const std::vector<double> step = free_step(axes_now, result, radius);
    std::size_t worst = n;
    double excess = 0;
    for (std::size_t k = 0; k < step.size(); ++k) {
      const std::size_t i = axes_now.free[k];
      const double out = std::max(lower_[i] - step[k], step[k] - upper_[i]);
      if (out > excess) {
        excess = out;
        worst = k;
      }
    }
    if (worst == n) {
      for (std::size_t k = 0; k < step.size(); ++k) result[axes_now.free[k]] = step[k];
      return result;
    }
    const std::size_t i = axes_now.free[worst];
    result[i] = std::clamp(step[worst], lower_[i], upper_[i]);
    held[i] = true;
  }
  return result;
}

}  // namespace wattfall::tuner
