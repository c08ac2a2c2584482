// Searches over discrete knobs: every combination where there are few, ascents over neighbouring choices where there
// are many.
#pragma once

#include <array>
#include <utility>
#include <vector>

#include "climber.hpp"

namespace wattfall::tuner {

/// What every combination of the discrete knobs is worth, the first knob running fastest.
class Grid {
 public:
  Grid() = default;
  Grid(const Space& space, Place base) : space_(&space), base_(std::move(base)) {}
  void add(const std::vector<Worth>& worths) { worths_.insert(worths_.end(), worths.begin(), worths.end()); }

  /// Combinations that keep every slack and that none betters within a tenth of the choices, and at least the next
  /// one, of every knob; best first, `most` at best. None beyond four knobs: boxes round a combination grow too large.
  std::vector<Place> local_bests(std::size_t most) const;

 private:
  static constexpr std::size_t most_knobs = 4;
  using Reach = std::array<std::size_t, most_knobs>;
  bool best_within(std::size_t index, const Reach& reach) const;

  const Space* space_ = nullptr;
  Place base_;
  std::vector<Worth> worths_;
};

/// All combinations of the discrete knobs, `base` for the others. The judge remembers the best; the grid is empty
/// unless it is to be kept.
Grid enumerate_all(const Space& space, Judge& judge, const Place& base, bool keep);

/// Ascent over neighbouring choices, one or two knobs at a time; the continuous ones follow by `ascent` (null: there
/// are none).
Climber walk_choices(const Space& space, Judge& judge, Ascent* ascent, Climber climber);

}  // namespace wattfall::tuner
