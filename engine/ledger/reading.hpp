// What every book reads off the solution: potentials, currents, and what share of its power the source still gives.
// Private to the room.
#pragma once

#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

#include "design/design.hpp"
#include "graph/network.hpp"
#include "solve/solution.hpp"

namespace wattfall::ledger {

using Complex = std::complex<double>;
using design::PartId;

class Reading {
 public:
  Reading(const design::Design& design, const graph::Network& network, const solve::Solution& solution)
      : design_(design), network_(network), solution_(solution), count_(solution.states.size()) {}

  const design::Design& design() const { return design_; }
  const graph::Network& network() const { return network_; }
  const solve::Solution& solution() const { return solution_; }
  std::size_t count() const { return count_; }

  double frequency(std::size_t s) const { return solution_.states.frequencies_hz[s]; }
  double real(const design::Value& value, std::size_t s) const { return value.real_at(frequency(s), solution_.states.knobs_at(s)); }
  /// Share of its power that the source still gives in state s.
  double share(std::size_t s) const { return shares_.empty() ? 1.0 : shares_[s]; }
  /// Volts and amps follow the root of the power; times root 2 for peaks of a sine.
  double peak(double rms, std::size_t s) const { return std::numbers::sqrt2 * rms * std::sqrt(share(s)); }
  double rms(double amps, std::size_t s) const { return amps * std::sqrt(share(s)); }
  Complex volts(int node, std::size_t s) const { return solution_.volts[node][s]; }
  Complex volts(const design::Part& part, std::size_t side, std::size_t s) const {
    return volts(part.terminals[2 * side].index, s) - volts(part.terminals[2 * side + 1].index, s);
  }

  Complex element_volts(const graph::Element& element, int port, std::size_t s) const {
    return volts(element.node[2 * port], s) - volts(element.node[2 * port + 1], s);
  }

  /// Current from a node into a part.
  Complex amps_into(PartId part, int node, std::size_t s) const {
    Complex sum = 0.0;
    network_.visit_terminals(part, node, [&](int e, int port, double sign) {
      const solve::Flow& flow = solution_.flows[e];
      sum += sign * (port == 0 ? flow.amps1[s] : flow.amps2[s]);
    });
    return sum;
  }

 protected:
  const design::Design& design_;
  const graph::Network& network_;
  const solve::Solution& solution_;
  std::size_t count_;
  std::vector<double> shares_;  ///< empty: all of it in every state
};

}  // namespace wattfall::ledger
