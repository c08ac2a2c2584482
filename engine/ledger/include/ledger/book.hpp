// solution -> ledger.
#pragma once

#include <vector>

#include "graph/network.hpp"
#include "ledger/ledger.hpp"
#include "solve/solution.hpp"

namespace wattfall::ledger {

/// Books every watt of every state. `looks` are those the solution was asked for. Where the source folds back, powers are scaled by the share
/// it still gives at that SWR, volts and amps by its root. Cost: O(parts) a state.
Ledger book(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
            const std::vector<design::Look>& looks);

/// The pages of the books that somebody reads: searches ask for a few figures in very many states.
struct Pages {
  std::vector<design::PartId> parts;  ///< that are no loads; loads always have a page
  std::vector<design::PartId> along;  ///< lines among them that are walked from end to end, which costs more than all the rest
  std::vector<design::BoxId> boxes;
};

/// The same numbers as `book` on these pages. The others stay empty: parts have none, boxes keep their places; and so do the totals that take every
/// part (heat, common mode, residual).
Ledger book(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
            const std::vector<design::Look>& looks, const Pages& pages);

/// Share of its available power that a source still gives at an SWR: its foldback table, linear between the points and level beyond
/// them; 1 where it has none. NaN stands for total reflection.
double power_left(const design::Source& source, double swr);

}  // namespace wattfall::ledger
