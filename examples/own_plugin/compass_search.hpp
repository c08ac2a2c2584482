// An optimizer: walks to the best neighbour in each direction of the compass, and looks closer where there is none
// better.
#pragma once

#include <wattfall/sdk.hpp>

namespace own {

extern const wattfall::sdk::Optimizer compass_search;

}  // namespace own
