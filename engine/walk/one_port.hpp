// The algebra of the hand calculation. A one-port is a pair (n, d) with Z = n/d, so that an open (d = 0) and a short (n = 0) need no infinity;
// a factor k tells its state: V = k n, I = k d. Private to the room.
#pragma once

#include <array>
#include <complex>

#include "solve/element_values.hpp"

namespace wattfall::walk {

using Complex = std::complex<double>;

struct OnePort {
  Complex n{0.0}, d{1.0};
  bool open() const { return d == 0.0; }
  Complex ohms() const { return n / d; }
};

/// What was made of one or two one-ports, and k of each of them over k of the whole.
struct Made {
  OnePort whole;
  Complex first = 1.0, second = 1.0;
};

/// Z = Zx + Zy: the same current through both.
Made in_series(const OnePort& x, const OnePort& y);
/// Y = Yx + Yy: the same voltage across both.
Made in_parallel(const OnePort& x, const OnePort& y);
/// A uniform line with `end` at its far end: the telegrapher's equation, with e^(-2 gamma l) so that a long line does not overflow.
Made through_line(const OnePort& end, Complex gamma_l, Complex impedance_ohm);
/// An ideal transformer with V2 = ratio V1, closed by `end` at port 2 (`from_second`) or at port 1.
Made through_turns(const OnePort& end, double ratio, bool from_second);
/// A V + B I = 0, row-major, closed by `end` at port 2 (`from_second`) or at port 1.
Made through_matrix(const OnePort& end, const std::array<Complex, 4>& a, const std::array<Complex, 4>& b, bool from_second);

}  // namespace wattfall::walk
