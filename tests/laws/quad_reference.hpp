// A state of a network solved in quad precision by the plainest means: every law a row, Gauss with partial pivoting. Shares nothing with the solver but the
// elements' values, which both have as double numbers.
#pragma once

#include <vector>

#include "graph/network.hpp"
#include "solve/element_values.hpp"

namespace wattfall::test {

struct QuadState {
  std::vector<double> heat_w;  ///< by element
  double returned_w = 0.0;     ///< |V - conj(Zs) I|^2/(4 Re Zs), the source's
  bool regular = true;         ///< false: a pivot of zero, and nothing else holds
};

/// `values`: one an element. `source_ohms` and `source_volts` (rms) are those of the Thevenin source. Cost: at most the cube of nodes and ports.
QuadState solve_in_quad(const graph::Network& network, const std::vector<solve::ElementValue>& values, solve::Complex source_ohms, double source_volts);

}  // namespace wattfall::test
