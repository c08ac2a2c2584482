// From potentials to currents, heat and line waves of one state. Private to the room.
#pragma once

#include <vector>

#include "plan/plan.hpp"
#include "solve/element_values.hpp"

namespace wattfall::solve {

/// One element in one state.
struct ElementFlow {
  Complex amps1, amps2;
  double heat1 = 0.0, heat2 = 0.0;
  Complex wave1, wave2;
};

/// All of one state: filled by the fast path (`flows_from_volts`) or by the robust form.
struct StateFlows {
  std::vector<Complex> volts;  ///< by network node
  std::vector<ElementFlow> elements;
  Complex source_amps;  ///< out of the source's node into the network
};

/// exp(z) - 1 without cancellation for small |z|.
Complex exp_minus_one(Complex z);

/// Heat from what is known of an element; `flow`'s currents (and waves, for lines) are set.
void book_heat(const graph::Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow);

/// Currents of every element from the potentials: Ohm's law for branches, waves for lines, Y for matrices, Kirchhoff's law at the nodes for
/// merged transformers, the unknown itself for others (`currents`, by element). `probe_node`, where not 0, is fed 1 A from outside.
void flows_from_volts(const graph::Network& network, const plan::Plan& plan, const std::vector<ElementValue>& values,
                      const std::vector<Complex>& currents, StateFlows& state, int probe_node = 0);

/// Current from `node` into the elements of a part.
Complex amps_into(const graph::Network& network, const std::vector<ElementFlow>& flows, design::PartId part, int node);

}  // namespace wattfall::solve
