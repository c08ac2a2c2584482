// Every distinct local best, not the best alone: which ends of climbs are tops of their own, and which are one top, or
// one ridge without a top, met twice.
#pragma once

#include <cstddef>
#include <vector>

#include "climber.hpp"

namespace wattfall::tuner {

/// Of climbers that have ended: the places that are tops, best first, `most` at best. A climber that goes on rising when
/// nudged along a knob is followed; of a level ridge (nudged, it stays where it is as good) one place stands for all.
/// `height` is how far goals lie apart over the range, the scale on which two are called level. Cost: about 200
/// evaluations a climber and knob.
std::vector<Place> separate_tops(const Space& space, Judge& judge, Ascent& ascent, std::vector<Climber> climbers,
                                 double height);

}  // namespace wattfall::tuner
