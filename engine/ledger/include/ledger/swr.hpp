// Reflection and standing wave ratio, said once for every room that speaks of them.
#pragma once

#include <cmath>
#include <complex>
#include <limits>

namespace wattfall::ledger {

/// |Z - conj R|/|Z + R|: the share of the voltage wave that comes back; 1 where Z is not finite.
inline double reflection_of(std::complex<double> impedance_ohm, std::complex<double> reference_ohm) {
  if (!std::isfinite(impedance_ohm.real()) || !std::isfinite(impedance_ohm.imag())) return 1.0;
  return std::abs((impedance_ohm - std::conj(reference_ohm)) / (impedance_ohm + reference_ohm));
}

/// (1 + |r|)/(1 - |r|); NaN for total reflection, which rounding may leave a few parts in 1e16 short of one.
inline double swr_of(double reflection) {
  return reflection < 1.0 - 1e-13 ? (1.0 + reflection) / (1.0 - reflection) : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace wattfall::ledger
