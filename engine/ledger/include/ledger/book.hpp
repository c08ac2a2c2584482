// solution -> ledger.
#pragma once

#include "graph/network.hpp"
#include "ledger/ledger.hpp"
#include "solve/solution.hpp"

namespace wattfall::ledger {

/// Books every watt of every state. `looks` are those the solution was asked for. Where the source folds back, powers are scaled by the share
/// it still gives at that SWR, volts and amps by its root. Cost: O(parts) a state.
Ledger book(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
            const std::vector<design::Look>& looks);

/// Share of its available power that a source still gives at an SWR: its foldback table, linear between the points and level beyond
/// them; 1 where it has none. NaN stands for total reflection.
double power_left(const design::Source& source, double swr);

}  // namespace wattfall::ledger
