// design -> network, and what only the network can tell is wrong.
#pragma once

#include "graph/network.hpp"
#include "grammar/diagnostic.hpp"

namespace wattfall::graph {

/// Lowers every part to elements and checks the whole: no path to ground, both ends on one node, a node with a single end, an
/// island that nothing couples to the source, an unreachable load, a shorted source, a loop of ideal transformers. Each diagnostic
/// names the parts and nodes and points at the first part's line. Cost O(parts).
Result<Network> build_graph(const design::Design& design);

}  // namespace wattfall::graph
