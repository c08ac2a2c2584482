// The slope of something smooth by central differences of the eighth order: the error is h^8/630 of the ninth derivative, so steps may be large enough to
// keep ten digits (coefficients: common practice, no source). Private to the room; it is used on formulas alone, never on the network's solution.
#pragma once

#include <array>

namespace wattfall::weigh {

/// A pair of places at either side: `weight` times what one has more than the other, summed and over the step, is the slope.
struct Stencil {
  double place;  ///< in steps
  double weight;
};
inline constexpr std::array<Stencil, 4> stencil{{{1, 4.0 / 5.0}, {2, -1.0 / 5.0}, {3, 4.0 / 105.0}, {4, -1.0 / 280.0}}};

}  // namespace wattfall::weigh
