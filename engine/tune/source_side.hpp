// What a source gives at most, and what counts as no reflection at it. Private to the room.
#pragma once

#include <complex>
#include <span>

#include "design/design.hpp"

namespace wattfall::tune {

/// The largest share of its available power that it ever gives: a rig that folds back gives at most its table's largest.
double most_left(const design::Source& source);

/// Against what a figure at the source is judged [ohm]: its own reference, else the source's, else the resistance of the source.
std::complex<double> reference_of(const design::Figure& figure, const design::Source& source, double frequency_hz, std::span<const double> knobs);

}  // namespace wattfall::tune
