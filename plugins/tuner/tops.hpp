// Every distinct local best, not the best alone: which ends of climbs are tops of their own, and which are one top, or
// one ridge without a top, met twice.
#pragma once

#include <cstddef>
#include <vector>

#include "climber.hpp"

namespace wattfall::tuner {

/// Lets climbers climb, all of them from where a scan stood high, and gives up in laps those that a better one covers:
/// the straight way to it rises, and they do not head elsewhere. Of the ends: the places that are tops, best first.
/// Where slope and curvature leave it in doubt, an end is nudged, and followed where it goes on rising; of a level
/// ridge (nudged, it stays where it is as good) one place stands for all. `height` is how far goals lie apart over the
/// range, the scale on which two are called level. Cost: about 30 evaluations a climber and knob, 200 more for an end
/// in doubt.
std::vector<Place> separate_tops(const Space& space, Judge& judge, Ascent& ascent, std::vector<Climber> climbers,
                                 double height);

}  // namespace wattfall::tuner
