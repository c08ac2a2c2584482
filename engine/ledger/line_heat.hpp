// Heat per metre along a line: R |I|^2 + G |V|^2 of the waves on it. Private to the room.
#pragma once

#include <complex>

#include "design/design.hpp"

namespace wattfall::ledger {

struct WorstMetre {
  double heat_w_per_m = 0.0;  ///< where it is largest
  double place = 0.0;         ///< 0 at end 1, 1 at end 2
};

/// `wave1`, `wave2` [V rms] enter at the ends, as for `largest_along`. A line by its section has R and G of its own; of one
/// given by its loss, k1 sqrt(f) is taken for the conductors' and k2 f for the dielectric's.
WorstMetre worst_metre(const design::LineMake& make, double frequency_hz, double length_m, std::complex<double> wave1,
                       std::complex<double> wave2, std::complex<double> gamma_l, std::complex<double> impedance_ohm);

}  // namespace wattfall::ledger
