// Currents, heat and what they add up to in one state, as the robust form and the tests' reference have them. Private to the room.
#pragma once

#include <vector>

#include "graph/network.hpp"
#include "solve/element_values.hpp"
#include "solve/fields.hpp"
#include "solve/solve.hpp"

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

/// Where a network's ports and its source stand among the unknowns of a FieldVector; node n > 0 stands at n - 1.
class Places {
 public:
  explicit Places(const graph::Network& network);
  int port(std::size_t element, int port) const { return first_[element] + port; }
  int source() const { return source_; }

 private:
  std::vector<int> first_;
  int source_;
};

/// All of a state, from its fields.
StateFlows flows_of(const graph::Network& network, const Places& places, const std::vector<ElementValue>& values, const FieldVector& x);

/// Heat from what is known of an element: its potentials, and `flow`'s currents.
void book_heat(const graph::Element& element, const ElementValue& value, const std::vector<Complex>& volts, ElementFlow& flow);

/// Current from `node` into the elements of a part.
Complex amps_into(const graph::Network& network, const std::vector<ElementFlow>& flows, design::PartId part, int node);

/// The same for a look: into its part, or where it names none into everything at its node but the source.
Complex amps_of_look(const design::Design& design, const graph::Network& network, const design::Look& look, const StateFlows& state);

/// Room for so many states, in memory that is used again where it is large enough.
void allocate(const graph::Network& network, std::size_t looks, std::size_t states, Keep keep, Solution& solution);

/// A state into its place: heat, the source, and what of potentials, currents and lines the solution has room for.
void store(const graph::Network& network, const std::vector<ElementValue>& values, const StateFlows& state, std::size_t place, Solution& solution);

}  // namespace wattfall::solve
