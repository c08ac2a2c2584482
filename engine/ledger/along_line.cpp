#include "ledger/along_line.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wattfall::ledger {
namespace {

/// f(t) = A e^(-2at) + B e^(-2a(1-t)) + 2 C cos(phi - b(2t-1)), and its first two derivatives.
struct Ripple {
  double a, b, A, B, C, phi;

  double phase(double t) const { return phi - b * (2.0 * t - 1.0); }
  double value(double t) const { return A * std::exp(-2.0 * a * t) + B * std::exp(-2.0 * a * (1.0 - t)) + 2.0 * C * std::cos(phase(t)); }
  double slope(double t) const {
    return 2.0 * a * (B * std::exp(-2.0 * a * (1.0 - t)) - A * std::exp(-2.0 * a * t)) + 4.0 * b * C * std::sin(phase(t));
  }
  double bend(double t) const {
    return 4.0 * a * a * (B * std::exp(-2.0 * a * (1.0 - t)) + A * std::exp(-2.0 * a * t)) - 8.0 * b * b * C * std::cos(phase(t));
  }
};

/// Newton's method from a crest of the ripple to the maximum beside it, held within the crest's quarter wave.
double climb(const Ripple& ripple, double crest) {
  const double reach = std::numbers::pi / (4.0 * ripple.b);
  double t = crest;
  for (int i = 0; i < 20; ++i) {
    const double bend = ripple.bend(t);
    if (bend >= 0.0) break;
    const double next = std::clamp(t - ripple.slope(t) / bend, crest - reach, crest + reach);
    if (std::abs(next - t) < 1e-15) break;
    t = next;
  }
  return std::clamp(t, 0.0, 1.0);
}

}  // namespace

Largest largest_along(std::complex<double> wave1, std::complex<double> wave2, std::complex<double> gamma_l, double s) {
  const double a = gamma_l.real(), b = gamma_l.imag();
  const std::complex<double> cross = s * wave1 * std::conj(wave2);
  const Ripple ripple{a, b, std::norm(wave1), std::norm(wave2), std::abs(cross) * std::exp(-a), std::arg(cross)};
  Largest best;
  double most = -1.0;
  const auto consider = [&](double t) {
    const double value = ripple.value(t);
    if (value > most) {
      most = value;
      best.place = t;
    }
  };
  consider(0.0);
  consider(1.0);
  if (b > 0.0) {
    // Crests stand at t = (1 + (phi - 2 pi k)/b)/2; those within a quarter wave outside still may peak inside.
    const auto number = [&](double t) { return (ripple.phi - b * (2.0 * t - 1.0)) / (2.0 * std::numbers::pi); };
    const double last = std::ceil(number(0.0)), first = std::floor(number(1.0));
    for (double k : {first, first + 1.0, first + 2.0, last - 2.0, last - 1.0, last}) {
      if (k < first || k > last) continue;
      consider(climb(ripple, 0.5 * (1.0 + (ripple.phi - 2.0 * std::numbers::pi * k) / b)));
    }
  }
  best.value = std::sqrt(std::max(most, 0.0));
  return best;
}

}  // namespace wattfall::ledger
