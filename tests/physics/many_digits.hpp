// Bessel functions, sine integrals and roots from their power series with a thousand digits: slow, plain, and with
// digits to spare for the cancellation that the room's own functions must avoid.
#pragma once

#include <boost/math/constants/constants.hpp>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <boost/multiprecision/cpp_complex.hpp>
#include <complex>

namespace wattfall::physics::many_digits {

namespace mp = boost::multiprecision;
using Real = mp::number<mp::cpp_bin_float<1000>, mp::et_off>;
using Complex = mp::number<mp::complex_adaptor<mp::cpp_bin_float<1000>>, mp::et_off>;

inline std::complex<double> rounded(const Complex& value) {
  return {value.real().convert_to<double>(), value.imag().convert_to<double>()};
}

/// At w = (1 + j) x/sqrt 2, the diagonal on which skin effect lives.
struct Bessel {
  Complex w, i0, i1, k0, k1;
};

/// Abramowitz and Stegun 9.6.10, 9.6.11, 9.6.13.
inline Bessel bessel_on_diagonal(const Real& x) {
  const Real part = x / sqrt(Real(2)), pi = boost::math::constants::pi<Real>();
  const Complex w(part, part), q(Real(0), x * x / 4);
  const Complex logarithm(log(x / 2) + boost::math::constants::euler<Real>(), pi / 4);
  Bessel out{w, 0, 0, 0, 1 / w};
  Complex even = 1, odd = w / 2;
  Real harmonic = 0;
  for (int n = 0; n < 40 + static_cast<int>(3 * x.convert_to<double>()); ++n) {
    const Real next = harmonic + Real(1) / (n + 1);
    out.i0 += even;
    out.i1 += odd;
    out.k0 += even * Complex(harmonic);
    out.k1 -= odd * Complex((harmonic + next) / 2);
    even *= q / Complex(Real(n + 1) * (n + 1));
    odd *= q / Complex(Real(n + 1) * (n + 2));
    harmonic = next;
  }
  out.k0 -= logarithm * out.i0;
  out.k1 += logarithm * out.i1;
  return out;
}

/// e^w
inline Complex growth(const Complex& w) {
  const Real size = exp(w.real());
  return Complex(size * cos(w.imag()), size * sin(w.imag()));
}

/// sum of (-1)^k x^n/(n n!) over n = first, first + 2, ...
inline Real alternating_series(const Real& x, int first) {
  Real term = first == 1 ? x : x * x / 2, sum = 0;
  for (int n = first; n < 400 + static_cast<int>(x.convert_to<double>() * 4); n += 2) {
    sum += term / n;
    term *= -x * x / (Real(n + 1) * (n + 2));
  }
  return sum;
}
inline Real sine_integral(const Real& x) {
  return alternating_series(x, 1);
}
inline Real entire_cosine_integral(const Real& x) {
  return alternating_series(x, 2);
}
inline Real cosine_integral(const Real& x) {
  return boost::math::constants::euler<Real>() + log(x) - entire_cosine_integral(x);
}

}  // namespace wattfall::physics::many_digits
