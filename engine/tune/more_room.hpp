// Which way a setting could still be bettered: by a step uphill, or by a little more room where a knob's end or a
// demand holds it. Private to the room.
#pragma once

#include <string>
#include <vector>

#include "search.hpp"
#include "tune/tune.hpp"

namespace wattfall::tune {

/// What the slopes of the goal say of a setting.
struct Uphill {
  std::vector<MoreRoom> more_room;
  double gain = 0.0;  ///< in the goal's unit: what the best step along the slopes brings; 0 on a top
};

/// For each knob at an end of its range, and each demand of `keeping` that is just kept, what one per cent more room
/// would bring, all other knobs following: the multipliers of the constrained best (Lagrange; Karush, Kuhn and Tucker,
/// from memory), by slopes of the adjoint. Where no demand is in the way, also whether the setting is a top at all:
/// steps of many lengths along the slopes are tried, which tells when an optimizer stopped on its way up. Only of
/// searches at one frequency whose knobs are all continuous; else nothing. Cost: the whole network factored once, two
/// solutions a figure, one batch of steps.
Uphill look_uphill(const Problem& problem, const Found& found);

/// "power into wire 0.3 W more", of what betters the goal by so much.
std::string gain_text(const design::Tune& statement, double gain);

}  // namespace wattfall::tune
