// The ratio I0/I1 comes from its continued fraction or its asymptotic series, K0 and K1 from their series or Temme's
// continued fraction, I0 and I1 then from the Wronskian: no sum with cancellation is left.
#include "physics/bessel.hpp"

#include <cmath>

#include "physics/constants.hpp"

namespace wattfall::physics {
namespace {

using Complex = std::complex<double>;

constexpr double euler_gamma = std::numbers::egamma;
constexpr double asymptotic_from = 30.0;  // where e^-2w and the smallest term are below 1e-18
constexpr double series_up_to = 2.0;      // the K series loses a digit at |w| = 2, the fraction converges beyond

/// Backward from a depth where I_n(w) has died out: n well above |w|.
Complex tail_by_fraction(Complex q, double size) {
  Complex tail = 0.0;
  for (int n = 22 + static_cast<int>(1.5 * size); n >= 3; --n) tail = q / (static_cast<double>(n) + tail);
  return 1.0 / (2.0 + tail);
}

/// sum of a_k(nu)/(-w)^k, Abramowitz and Stegun 9.7.1: I_nu(w) sqrt(2 pi w) e^-w.
Complex asymptotic_sum(double order, Complex w) {
  const double mu = 4.0 * order * order;
  Complex term = 1.0, sum = 1.0;
  for (int k = 1; k < 40; ++k) {
    const double odd = 2.0 * k - 1.0;
    term *= -(mu - odd * odd) / (8.0 * k * w);
    sum += term;
    if (std::abs(term) < 1e-18) break;
  }
  return sum;
}

/// K0 and K1 by Abramowitz and Stegun 9.6.13 and 9.6.11.
void k_by_series(Complex w, Complex& k0, Complex& k1) {
  const Complex q = w * w / 4.0, logarithm = std::log(w / 2.0) + euler_gamma;
  Complex term0 = 1.0, term1 = w / 2.0, i1 = 0.0, sum1 = 0.0;
  double harmonic = 0.0;
  k0 = 0.0;
  for (int n = 0; n < 30; ++n) {
    const double next = harmonic + 1.0 / (n + 1.0);
    k0 += term0 * (harmonic - logarithm);
    i1 += term1;
    sum1 += term1 * (harmonic + next) / 2.0;
    term0 *= q / ((n + 1.0) * (n + 1.0));
    term1 *= q / ((n + 1.0) * (n + 2.0));
    harmonic = next;
  }
  k1 = 1.0 / w + logarithm * i1 - sum1;
}

/// K0 and K1 times e^w by Temme's fraction of order 0, summed by Steed's method.
void scaled_k_by_fraction(Complex w, Complex& k0, Complex& k1) {
  Complex b = 2.0 * (1.0 + w), d = 1.0 / b, h = d, delta = d;
  Complex before = 0.0, now = 1.0, c = 0.25, q = 0.25;
  double a = -0.25;
  Complex sum = 1.0 + q * delta;
  for (int n = 2; n < 10000; ++n) {
    a -= 2.0 * (n - 1);
    c = -a * c / static_cast<double>(n);
    const Complex next = (before - b * now) / a;
    before = now;
    now = next;
    q += c * next;
    b += 2.0;
    d = 1.0 / (b + a * d);
    delta = (b * d - 1.0) * delta;
    h += delta;
    sum += q * delta;
    if (std::abs(q * delta) < 1e-17 * std::abs(sum)) break;
  }
  k0 = std::sqrt(pi / (2.0 * w)) / sum;
  k1 = k0 * (w + 0.5 - 0.25 * h) / w;
}

}  // namespace

Complex bessel_ratio_tail(Complex w) {
  const Complex q = w * w / 4.0;
  const double size = std::abs(w);
  if (size < asymptotic_from) return tail_by_fraction(q, size);
  return (w / 2.0 * asymptotic_sum(0.0, w) / asymptotic_sum(1.0, w) - 1.0) / q;
}

ScaledBessel scaled_bessel(Complex w) {
  ScaledBessel out;
  if (std::abs(w) <= series_up_to) {
    k_by_series(w, out.k0, out.k1);
    out.k0 *= std::exp(w);
    out.k1 *= std::exp(w);
  } else {
    scaled_k_by_fraction(w, out.k0, out.k1);
  }
  const Complex i0_over_i1 = 2.0 / w + w / 2.0 * bessel_ratio_tail(w);
  out.i1 = 1.0 / (w * (i0_over_i1 * out.k1 + out.k0));
  out.i0 = i0_over_i1 * out.i1;
  return out;
}

Complex field_exclusion(Complex w) {
  const Complex q = w * w / 4.0, tail = bessel_ratio_tail(w);
  return q * tail / (1.0 + q * tail);
}

Complex kelvin_ber_bei(double x) {
  const Complex q(0.0, x * x / 4.0);
  Complex term = 1.0, sum = 1.0;
  for (int n = 1; n < 100; ++n) {
    term *= q / (static_cast<double>(n) * n);
    sum += term;
  }
  return sum;
}

}  // namespace wattfall::physics
