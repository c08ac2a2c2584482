// Whether a setting is the best of all, proved: for up to three continuous knobs that each move one coil, capacitor or resistor, at one frequency or by the
// worst of several.
// Private to the room.
#pragma once

#include <cstddef>
#include <string>

#include "search.hpp"

namespace wattfall::tune {

struct Proof {
  bool holds = false;       ///< no setting in the ranges is better by more than `margin`
  double margin = 0.0;      ///< as a share of the available power
  std::size_t cells = 0;    ///< boxes of the ranges that were bounded; 0: all that the source has to give is there already
  std::string why_not;      ///< where it does not hold: a clause that says what stood in the way
};

/// Share of the available power by which no other setting may be better; and the next best that is worth saying.
inline constexpr double proof_margin = 1e-3, loose_margin = 1e-2;

/// Branch and bound. Each knob's admittance is a fraction of two straight lines in its value, so the volts of the source and of every load are N/D with N
/// and D straight in each knob alone (Cramer's rule on the collapsed ports), and "no better than this" is a polynomial of second degree in each knob that is
/// nowhere negative: bounded by its Bernstein coefficients, the box halved where they do not decide (Garloff, 1986; from memory). Of several frequencies one
/// is enough in each box, and so is a `keeping` of SWR at the source or of power that the box misses all over; of more than seven frequencies the ends and
/// those that are worst at the setting found are taken. Goals: power into a load, power radiated from one, efficiency, total loss, least SWR or most return
/// loss at the source. Tried with both margins, the smaller first. Not decided: other goals, kinds of knobs or parts, another `keeping` that costs more than
/// the margin, more than 100,000 boxes. Cost: about 50 ns a box and frequency.
Proof prove_best(const Problem& problem, const Found& found);

}  // namespace wattfall::tune
