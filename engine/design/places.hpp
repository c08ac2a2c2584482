// Where a part stands: its terminals as nodes, by the form that its kind wants.
#pragma once

#include "parts/job.hpp"

namespace wattfall::design {

/// A node as seen from where the statement stands; inner nodes of boxes come to be when they are first named.
NodeId node_of(Bench& bench, const Frame& frame, const syntax::Word& word);
/// Fills job.part.terminals.
void read_terminals(PartJob& job);
/// All nodes of a box's places, in order.
std::vector<NodeId> flat_nodes(Bench& bench, const Frame& frame, const syntax::Places& places);

}  // namespace wattfall::design
