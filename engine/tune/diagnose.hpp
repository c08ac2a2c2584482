// What is odd about the knobs themselves. Private to the room.
#pragma once

#include <vector>

#include "judge/judgement.hpp"
#include "search.hpp"

namespace wattfall::tune {

/// Warnings `knob-without-effect` (moving it changes neither what the source sees nor what any load gets, at seven settings all over the ranges) and
/// `knobs-alike` (two do the same there, to within 2 %). For continuous knobs and those of steps; a switch is never among them. Cost: 14 whole solutions a
/// knob.
std::vector<judge::Warning> odd_knobs(const Problem& problem, const Found& found);

}  // namespace wattfall::tune
