// What waves on a line do: its propagation constant and impedance, from the model that a plugin brought, from the line's cross-section, or for
// the common mode of a pair. Private to the room.
#pragma once

#include "graph/network.hpp"
#include "solve/element_values.hpp"

namespace wattfall::solve {

/// A part that is a line or a stub.
const design::LineMake& make_of(const design::Design& design, const graph::Element& element);

/// gamma [1/m] and Z0 [ohm] of a line element at each frequency. False where the model's plugin fails.
///
/// The common mode of a pair (Role::common_mode) is taken as a line of both conductors together against ground, in air and without loss
/// (common practice, no source).
bool propagate(const design::Design& design, const graph::Element& element, const double* frequencies_hz, std::size_t points, Complex* gamma_per_m,
               Complex* impedance_ohm);

}  // namespace wattfall::solve
