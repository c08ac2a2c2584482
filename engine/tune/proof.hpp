// Whether a setting is the best of all, proved: for up to three continuous knobs that each move one coil, capacitor or resistor, at one frequency.
// Private to the room.
#pragma once

#include <cstddef>

#include "search.hpp"

namespace wattfall::tune {

struct Proof {
  bool holds = false;       ///< no setting in the ranges is better by more than `margin`
  std::size_t cells = 0;    ///< boxes of the ranges that were bounded; 0: all that the source has to give is there already
};

/// Share of the available power by which no other setting may be better.
inline constexpr double proof_margin = 1e-3;

/// Branch and bound. Each knob's admittance is a fraction of two straight lines in its value, so the volts of the source and of every load are N/D with N
/// and D straight in each knob alone (Cramer's rule on the collapsed ports), and "no better than this" is a polynomial of second degree in each knob that is
/// nowhere negative: bounded by its Bernstein coefficients, the box halved where they do not decide (Garloff, 1986; from memory). Goals: power into a
/// load, power radiated from one, efficiency, total loss, least SWR or most return loss at the source. Not decided (holds = false): other goals, kinds of
/// knobs or parts, several frequencies, a `keeping` that costs more than the margin, more than 100,000 boxes. Cost: about 50 ns a box.
Proof prove_best(const Problem& problem, const Found& found);

}  // namespace wattfall::tune
