// The slope of something smooth by central differences of the sixth order: the error is h^6/140 of the seventh derivative, so steps may be large enough to
// keep ten digits (coefficients: common practice, no source). Private to the room; it is used on formulas alone, never on the network's solution.
#pragma once

#include <array>

namespace wattfall::weigh {

struct Stencil {
  double place;   ///< in steps
  double weight;  ///< of the value there; their sum over the step is the slope
};
inline constexpr std::array<Stencil, 6> stencil{{{-3, -1.0 / 60.0}, {-2, 9.0 / 60.0}, {-1, -45.0 / 60.0}, {1, 45.0 / 60.0}, {2, -9.0 / 60.0}, {3, 1.0 / 60.0}}};

}  // namespace wattfall::weigh
