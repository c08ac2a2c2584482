// What only the network can tell is wrong with a design. Private to the room: build_graph calls it.
#pragma once

#include "graph/network.hpp"
#include "grammar/diagnostic.hpp"

namespace wattfall::graph {

/// Checks that need no connectivity: parts with both ends on one node, nodes where a single end hangs, a shorted source.
void check_ends(const design::Design& design, Diagnostics& diagnostics);

/// Checks of the whole: islands, unreachable loads, no path to ground, loops of ideal transformers. Fills network.floating_reference.
void check_sections(const design::Design& design, Network& network, Diagnostics& diagnostics);

}  // namespace wattfall::graph
