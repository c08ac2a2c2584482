// Every value that a design can be weighed by. Private to the room.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "design/design.hpp"

namespace wattfall::weigh {

/// A value and the way to change it in a copy of its design.
struct Adjustable {
  std::string name, unit;
  Span span;
  double nominal = 0.0;
  int part = -1;      ///< its part; the source and knobs have none
  int coupling = -1;  ///< or its coupling
  /// Multiplies the value by `factor`, in a design and setting where it stands as it was found.
  std::function<void(design::Design& design, std::vector<double>& knobs, double factor)> scale;
};

/// How a knob's value is changed.
std::function<void(design::Design&, std::vector<double>&, double)> scale_knob(std::size_t knob);

/// All values at a point that are finite and not zero, in the order of the text, the source's first, knobs last. What is computed from a knob stands under the knob.
std::vector<Adjustable> values_of(const design::Design& design, double frequency_hz, const std::vector<double>& knobs);

}  // namespace wattfall::weigh
