// In which order the nodes stand from left to right.
#pragma once

#include <vector>

#include "circuit.hpp"

namespace pictures {

struct Order {
  std::vector<int>
      nodes;  ///< left to right; those inside chains left out; -1 where a column is to stay free for a bridge
  std::vector<char> on_main_path;  ///< by node: on the shortest way from the source to a load
  std::vector<int> chained_to;     ///< by item: index into chains, or -1
  struct Chain {
    int node = 0;            ///< from where
    std::vector<int> items;  ///< to ground
    std::vector<bool> mirrored;
  };
  std::vector<Chain> chains;
  std::vector<int> bridges;  ///< items that join the two conductors of a pair
};

/// Depth first from the source, side branches before the way to the load, so that branches stay short. What no way
/// joins to the source comes last.
Order order_nodes(const Circuit& circuit);

/// A part with two terminals.
bool is_one_port(const Item& item);

}  // namespace pictures
