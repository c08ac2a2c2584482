// A feed text solved, and walked in each of its states.
#pragma once

#include "../support/feed.hpp"
#include "walk/walk.hpp"

namespace wattfall::test {

inline walk::Walk walked(const Feed& feed, std::size_t state = 0) {
  return walk::take_walk(feed.design, feed.network, feed.design.frequencies_hz[state], feed.solution.states.knobs_at(state),
                         walk::choose_load(feed.ledger, state));
}

/// |Ga - Gb| of two impedances as reflections against 50 ohm: what an analyzer would tell them apart by, and no infinity for an open.
inline double apart(const walk::Ohms& a, std::complex<double> b) {
  const auto reflection = [](std::complex<double> z) { return std::isfinite(std::abs(z)) ? (z - 50.0) / (z + 50.0) : 1.0; };
  return std::abs((a ? reflection(*a) : 1.0) - reflection(b));
}

}  // namespace wattfall::test
