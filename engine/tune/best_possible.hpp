// The limits that a search's result is shown beside. Private to the room.
#pragma once

#include "search.hpp"
#include "tune/tune.hpp"

namespace wattfall::tune {

/// Of a search that took the setting `taken`. "ideal parts": the same search with the moved coils' and capacitors'
/// losses gone (absent where a part's loss cannot be told apart, or there is none); "bode-fano": for `over` and one
/// load that is a resistance with a coil, a capacitor or both.
std::vector<Limit> limits_of(const Problem& problem, const Match& taken, const sdk::Optimizer& optimizer);

}  // namespace wattfall::tune
