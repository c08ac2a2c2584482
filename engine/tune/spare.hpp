// A setting that spares the parts' ratings, where the best one breaks some. Private to the room.
#pragma once

#include "ratings.hpp"
#include "search.hpp"

namespace wattfall::tune {

struct Spared {
  Found found;                       ///< the setting to take instead; not found where the best one stays
  design::Tune held;                 ///< the statement with what was held to beside its own demands
  double power_share = 1.0;          ///< of the rig's power, with which `found` keeps the ratings
  std::vector<BrokenRating> avoided;  ///< those that the best setting breaks
  std::vector<BrokenRating> broken;  ///< by the setting that is taken, or stays
  std::size_t evaluations = 0;
};

/// Of the settings that reflect no more than a match may (`matched_swr`), or than the best setting does, the one with which most arrives within the ratings,
/// with less power from the rig where it must be. It is taken where it brings more than the best setting brings at the power with which that one keeps
/// them: else the best way to keep a rating might be to burn the power elsewhere. Ratings that are kept anyway are not asked for; nothing is searched where
/// none is broken, or where the one that is broken most lies beyond the knobs. Of goals that are no power, only settings that keep all are looked for.
Spared spare_ratings(const Problem& problem, const Found& found, const sdk::Optimizer& optimizer, double matched_swr, std::size_t other_room);

/// Of the rig's power, with which all of these are kept.
double power_share_of(const std::vector<BrokenRating>& broken);

}  // namespace wattfall::tune
