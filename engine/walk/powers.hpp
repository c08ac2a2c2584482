// From the outside in: the current that the source drives into the reduced network, shared out to every branch that it was made of. Private to the room.
#pragma once

#include "reducer.hpp"

namespace wattfall::walk {

struct Powers {
  double available_w = 0.0, accepted_w = 0.0;
  std::vector<double> element_w;  ///< heat of every element, of a load what it takes; idle ones 0
};

/// Of a reduction that came through to the source's port.
Powers share_powers(const design::Design& design, const graph::Network& network, std::span<const solve::ElementValue> values, const Reduction& reduction,
                    double frequency_hz, std::span<const double> knobs);

}  // namespace wattfall::walk
