#include "tune/limit.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wattfall::tune {
namespace {

using Complex = std::complex<double>;

/// Non-negative a and b of x = a w - b/w, by least squares.
struct Pair {
  double a = 0.0, b = 0.0;
};

Pair fit(const std::vector<double>& w, const std::vector<double>& x) {
  double aa = 0.0, bb = 0.0, ax = 0.0, bx = 0.0;
  for (std::size_t i = 0; i < w.size(); ++i) {
    aa += w[i] * w[i];
    bb += 1.0 / (w[i] * w[i]);
    ax += w[i] * x[i];
    bx -= x[i] / w[i];
  }
  const double n = static_cast<double>(w.size()), determinant = aa * bb - n * n;
  Pair pair;
  if (determinant > 1e-12 * aa * bb) pair = {(ax * bb + bx * n) / determinant, (bx * aa + ax * n) / determinant};
  // One that comes out below nothing, or as nothing beside the other, is not there.
  const double speck = 1e-6 * (std::abs(pair.a) * w.front() + std::abs(pair.b) / w.front());
  const bool no_a = !(pair.a * w.front() > speck), no_b = !(pair.b / w.front() > speck);
  if (no_a && no_b) return ax > 0.0 ? Pair{ax / aa, 0.0} : bx > 0.0 ? Pair{0.0, bx / bb} : Pair{};
  if (no_a) return {0.0, std::max(0.0, bx / bb)};
  if (no_b) return {std::max(0.0, ax / aa), 0.0};
  return pair;
}

}  // namespace

std::optional<ReactiveLoad> reactive_load(const std::vector<double>& frequencies_hz, const std::vector<Complex>& ohms, double error) {
  std::optional<ReactiveLoad> best;
  std::vector<double> w;
  for (double hertz : frequencies_hz) w.push_back(2.0 * std::numbers::pi * hertz);
  for (const bool series : {true, false}) {
    std::vector<double> x;
    double real = 0.0;
    for (const Complex& z : ohms) {
      const Complex value = series ? z : 1.0 / z;
      real += value.real() / static_cast<double>(ohms.size());
      x.push_back(value.imag());
    }
    const Pair pair = fit(w, x);
    double worst = 0.0;
    for (std::size_t i = 0; i < w.size(); ++i) {
      const Complex value(real, pair.a * w[i] - pair.b / w[i]);
      const Complex z = series ? value : 1.0 / value;
      worst = std::max(worst, std::abs(z - ohms[i]) / std::abs(ohms[i]));
    }
    if (!(real > 0.0) || !(worst <= error) || (pair.a == 0.0 && pair.b == 0.0)) continue;
    error = worst;
    best = series ? ReactiveLoad{true, real, pair.a, pair.b > 0.0 ? 1.0 / pair.b : 0.0}
                  : ReactiveLoad{false, 1.0 / real, pair.b > 0.0 ? 1.0 / pair.b : 0.0, pair.a};
  }
  return best;
}

double least_reflection(const ReactiveLoad& load, double lower_hz, double upper_hz) {
  const double w1 = 2.0 * std::numbers::pi * lower_hz, w2 = 2.0 * std::numbers::pi * upper_hz;
  const double wide = w2 - w1, inverse = 1.0 / w1 - 1.0 / w2;
  double least = 0.0;
  const auto take = [&](double exponent) { least = std::max(least, std::exp(-std::numbers::pi * exponent)); };
  // A time that rises with the stored energy counts on the side of high frequencies, its inverse on that of low ones.
  if (load.henries > 0.0) take(load.series ? load.ohms / (load.henries * wide) : load.henries / (load.ohms * inverse));
  if (load.farads > 0.0) take(load.series ? load.ohms * load.farads / inverse : 1.0 / (load.ohms * load.farads * wide));
  return least;
}

}  // namespace wattfall::tune
