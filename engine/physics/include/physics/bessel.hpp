// Modified Bessel functions of orders 0 and 1 for complex arguments in the right half plane, as current in round metal
// needs them: w = (1 + j) radius / skin depth. Large arguments are scaled, so that nothing overflows at VHF.
//
// Sources: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, sections 9.6 and 9.7 (recurrences, series,
// Wronskian 9.6.15, asymptotic 9.7.1); N. M. Temme, "On the numerical evaluation of the modified Bessel function of the
// third kind", J. Comp. Phys. 19, 1975 (the continued fraction of K). From memory. Held to 1e-12 by the tests.
#pragma once

#include <complex>

namespace wattfall::physics {

/// I0, I1 times e^-w and K0, K1 times e^+w.
struct ScaledBessel {
  std::complex<double> i0, i1, k0, k1;
};

/// For Re w > 0. Cost: some tens of complex operations; slowest near |w| = 2.
ScaledBessel scaled_bessel(std::complex<double> w);

/// g in (w/2) I0(w)/I1(w) = 1 + q g, with q = w^2/4: the tail of the continued fraction 1 + q/(2 + q/(3 + ...)). Given
/// apart since 1 + q g would lose what is left at low frequencies. g(0) = 1/2.
std::complex<double> bessel_ratio_tail(std::complex<double> w);

/// I2(w)/I0(w): how far a round wire keeps a transverse field out, 0 at low and 1 at high frequencies.
std::complex<double> field_exclusion(std::complex<double> w);

/// ber x + j bei x = I0(x e^(j pi/4)) by its power series; 0 <= x <= 20.
std::complex<double> kelvin_ber_bei(double x);

}  // namespace wattfall::physics
