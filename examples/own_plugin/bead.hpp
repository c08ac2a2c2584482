// A kind of part: ferrite beads on a wire, `bead NAME from a to b : 0.6 uH, crossover 25 MHz, count 3`.
#pragma once

#include <wattfall/sdk.hpp>

namespace own {

extern const wattfall::sdk::Kind bead;

}  // namespace own
