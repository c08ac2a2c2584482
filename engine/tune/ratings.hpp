// The ratings of a design's parts, as far as a setting of the knobs breaks them. Private to the room.
#pragma once

#include <string>
#include <vector>

#include "search.hpp"

namespace wattfall::tune {

/// A `limit` that a setting breaks somewhere.
struct BrokenRating {
  design::Requirement kept;    ///< what would keep it, as a requirement
  double power_share = 1.0;    ///< of the source's power, with which the same setting keeps it; the network is linear
  std::string text;            ///< "Cin takes 374 V peak, and is rated for 250 V"
};

/// How power goes where a figure goes by a ratio, and the other way round: heat as the power, volts and amps as its
/// root.
double power_ratio(const design::Figure& figure, double strain_ratio);
double strain_ratio(const design::Figure& figure, double power_ratio);

/// Whether any part has a limit that settings can be held to: peak volts, rms amps, watts; a line's watts a metre are no figure.
bool has_ratings(const design::Design& design);

/// Those that the setting (by the statement's knobs) breaks at the problem's frequencies, the worst first. Cost: the whole network's books.
std::vector<BrokenRating> broken_ratings(const Problem& problem, const std::vector<double>& setting);

/// Whether the part's strain goes with what the loads get, however the knobs stand: it lies beyond them, and less power
/// is all that spares it. Looked at in a few settings far apart.
bool follows_power(const Problem& problem, const std::vector<double>& setting, const BrokenRating& rating);

}  // namespace wattfall::tune
