// The largest volts and amps along a line, found from the waves and not by sampling.
#pragma once

#include <complex>

namespace wattfall::ledger {

/// The largest of |V| or |I| along a line, and where.
struct Largest {
  double value = 0.0;  ///< in the unit and kind (rms, peak) of the waves; for amps divide by |Z0|
  double place = 0.0;  ///< share of the length, 0 at the in end, 1 at the load's end
};

/// Of |p1 e^(-g t) + s p2 e^(-g (1 - t))| over 0 <= t <= 1, where p1 and p2 are the voltage waves that enter at the in and at the load's
/// end, g = gamma l = a + j b, and s = +1 for volts, -1 for amps times Z0.
///
/// Its square is A e^(-2 a t) + B e^(-2 a (1 - t)) + 2 s C cos(phi - b (2 t - 1)): two exponentials under a ripple. The ripple's crests
/// touch a convex envelope, so the largest is at an end of the line or at one of the two outermost crests at either end; each is brought to the true
/// maximum beside it by Newton's method on the derivative. Cost: constant, whatever the line's length.
Largest largest_along(std::complex<double> wave1, std::complex<double> wave2, std::complex<double> gamma_l, double s);

}  // namespace wattfall::ledger
