// Volts and amps along a line as a curve to draw; the largest of them are found exactly by along_line.hpp.
#pragma once

#include <cstddef>
#include <vector>

#include "graph/network.hpp"
#include "ledger/ledger.hpp"
#include "solve/solution.hpp"

namespace wattfall::ledger {

/// In one state, at even steps from the load's (out) end to the in end, both included.
struct LineSamples {
  std::size_t state = 0;
  Series from_load_m, volts_peak, amps_rms;
};

struct LineCurve {
  design::PartId part;
  std::vector<LineSamples> at;  ///< in the order of `states`
};

/// Every line and stub of the design, in the order of its parts, in the states asked for: V = p1 e^(-g t) + p2 e^(-g (1-t)) of the waves that
/// enter at the ends, I Z0 its difference. At least 24 steps, and 24 a quarter wave up to 240. Scaled as the books are where the source folds back.
std::vector<LineCurve> sample_lines(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
                                    const Ledger& books, const std::vector<std::size_t>& states);

}  // namespace wattfall::ledger
