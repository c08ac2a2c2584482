// What the reduction did, told in the order of the hand: from the innermost branch outwards. Private to the room.
#pragma once

#include "reducer.hpp"

namespace wattfall::walk {

/// The spine's steps, without boxes: each adds what stands beside it, with that one's own steps inside.
std::vector<Step> flat_steps(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values,
                             const Reduction& reduction);

/// Runs of steps that stand in one box become one step, to any depth.
std::vector<Step> gather_boxes(const design::Design& design, std::vector<Step> steps);

/// Heat and what loads take, by element, put into every step and those inside.
void set_powers(std::vector<Step>& steps, const design::Design& design, const graph::Network& network, std::span<const double> element_w);

}  // namespace wattfall::walk
