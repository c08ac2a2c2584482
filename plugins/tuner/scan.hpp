// The look over the whole range: places of a low-discrepancy sequence, and the choice of distinct good ones among them.
#pragma once

#include <cstddef>
#include <vector>

#include "judge.hpp"

namespace wattfall::tuner {

/// Appends `count` places: point k has coordinate j at the fraction of 1/2 + k g^-j, g the root of g^(d+1) = g + 1 (the
/// generalised golden ratio; additive recurrence, Weyl, 1916), over movable and discrete knobs alike.
void spread(const Space& space, std::size_t first, std::size_t count, std::vector<double>& places);

/// Indices of up to `most` places of the batch, best first, no two nearer than `apart` in every knob.
std::vector<std::size_t> distinct_best(const Space& space, const Batch& batch, std::size_t most, double apart);

/// Greatest difference of two places over the knobs, a discrete knob's in shares of its choices.
double distance(const Space& space, const double* a, const double* b);

}  // namespace wattfall::tuner
