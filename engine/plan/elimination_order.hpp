// Which unknown leaves when. Private to the room.
#pragma once

#include <utility>
#include <vector>

namespace wattfall::plan {

/// Minimum-degree order (Boost.Graph's multiple minimum degree) of the unknowns 0..count-1 joined by `edges`, with those in `last` moved
/// behind all others, in the order given. Cost about O(edges log count) for the sparse networks of this trade.
std::vector<unsigned> elimination_order(unsigned count, const std::vector<std::pair<unsigned, unsigned>>& edges,
                                        const std::vector<unsigned>& last);

}  // namespace wattfall::plan
