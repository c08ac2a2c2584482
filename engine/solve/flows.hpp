// Currents, heat and what they add up to in one state, as the robust form and the tests' reference have them. Private to the room.
#pragma once

#include <vector>

#include "graph/network.hpp"
#include "solve/element_values.hpp"

namespace wattfall::solve {

/// One element in one state.
struct ElementFlow {
  Complex amps1, amps2;
  double heat1 = 0.0, heat2 = 0.0;
};

/// All of one state.
struct StateFlows {
  std::vector<Complex> volts;  ///< by network node
  std::vector<ElementFlow> elements;
  Complex source_amps;  ///< out of the source's node into the network
};

/// Heat from what is known of an element: its potentials, and `flow`'s currents.
void book_heat(const graph::Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow);

/// Current from `node` into the elements of a part.
Complex amps_into(const graph::Network& network, const std::vector<ElementFlow>& flows, design::PartId part, int node);

}  // namespace wattfall::solve
