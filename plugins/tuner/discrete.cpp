// See discrete.hpp.
#include "discrete.hpp"

#include <algorithm>
#include <cmath>

#include "scan.hpp"

namespace wattfall::tuner {
namespace {

/// Combinations evaluated at once.
constexpr std::size_t chunk = 4096;

/// A knob with fewer choices than this has all of them as neighbours.
constexpr std::size_t few = 25;

/// Neighbours of a combination that are followed by an ascent of the continuous knobs, and the rounds each gets.
constexpr std::size_t followed = 6;
constexpr std::size_t rounds_each = 6;

/// Walks end by themselves; this only bounds them.
constexpr int most_walks = 200;

/// Ranks worth trying in one knob, its own among them: all, or near ones and far ones at growing distances.
std::vector<double> neighbours(const Space& space, std::size_t knob, double rank) {
  const double last = double(space.choice_count(knob) - 1);
  std::vector<double> ranks;
  if (space.choice_count(knob) < few) {
    for (double r = 0; r <= last; r += 1) ranks.push_back(r);
    return ranks;
  }
  ranks.push_back(rank);
  for (double step : {1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0, 32.0, 64.0, 128.0, 256.0})
    for (double side : {-1.0, 1.0})
      if (rank + side * step >= 0 && rank + side * step <= last) ranks.push_back(rank + side * step);
  return ranks;
}

/// Places that differ from `place` in one or two discrete knobs.
Batch around(const Space& space, const Place& place) {
  Batch batch;
  const std::vector<std::size_t>& knobs = space.discrete();
  for (std::size_t i = 0; i < knobs.size(); ++i)
    for (std::size_t j = i; j < knobs.size(); ++j) {
      if (j == i && knobs.size() > 1) continue;
      for (double a : neighbours(space, knobs[i], place[knobs[i]]))
        for (double b : neighbours(space, knobs[j], place[knobs[j]])) {
          if (j == i && a != b) continue;
          Place other = place;
          other[knobs[i]] = a;
          other[knobs[j]] = b;
          if (other != place) batch.places.insert(batch.places.end(), other.begin(), other.end());
        }
    }
  return batch;
}

/// The best of these neighbours once the continuous knobs have followed.
Climber best_followed(const Space& space, const Batch& batch, Ascent* ascent, Climber best) {
  const std::size_t most = ascent == nullptr ? 1 : followed;
  for (std::size_t i : distinct_best(space, batch, most, 0)) {
    Climber other;
    other.place = batch.place(i, space.size());
    other.worth = batch.worths[i];
    other.radius = best.radius;
    other.shape = best.shape;
    if (ascent != nullptr) {
      ascent->finish(other, rounds_each);
      ascent->restore(other);
    }
    if (better(other.worth, best.worth)) best = other;
  }
  return best;
}

}  // namespace

Grid enumerate_all(const Space& space, Judge& judge, const Place& base, bool keep) {
  Grid grid(space, base);
  Place place = base;
  for (std::size_t knob : space.discrete()) place[knob] = 0;
  Batch batch;
  auto next = [&] {
    for (std::size_t knob : space.discrete()) {
      place[knob] += 1;
      if (place[knob] < double(space.choice_count(knob))) return true;
      place[knob] = 0;
    }
    return false;
  };
  for (bool more = true; more;) {
    batch.places.insert(batch.places.end(), place.begin(), place.end());
    more = next();
    if (more && batch.places.size() < chunk * space.size()) continue;
    judge.weigh(batch);
    if (keep) grid.add(batch.worths);
    batch.places.clear();
  }
  return grid;
}

/// Whether no combination within `reach` ranks of every knob is better; of equals the first counts.
bool Grid::best_within(std::size_t index, const Reach& reach) const {
  const std::vector<std::size_t>& knobs = space_->discrete();
  Reach low{}, high{}, stride{};
  std::size_t below = 1, first = 0;
  for (std::size_t k = 0; k < knobs.size(); ++k) {
    const std::size_t choices = space_->choice_count(knobs[k]), rank = index / below % choices;
    low[k] = rank > reach[k] ? rank - reach[k] : 0;
    high[k] = std::min(choices - 1, rank + reach[k]);
    stride[k] = below;
    first += low[k] * below;
    below *= choices;
  }
  Reach at = low;
  for (std::size_t other = first;;) {
    if (better(worths_[other], worths_[index]) || (other < index && !better(worths_[index], worths_[other]))) return false;
    std::size_t k = 0;
    for (; k < knobs.size(); ++k) {
      if (at[k] < high[k]) break;
      other -= (at[k] - low[k]) * stride[k];
      at[k] = low[k];
    }
    if (k == knobs.size()) return true;
    ++at[k];
    other += stride[k];
  }
}

std::vector<Place> Grid::local_bests(std::size_t most) const {
  std::vector<Place> places;
  if (worths_.empty() || space_->discrete().size() > most_knobs) return places;
  std::vector<std::size_t> order;
  Reach wide{}, next{};
  for (std::size_t k = 0; k < space_->discrete().size(); ++k) {
    wide[k] = std::max<std::size_t>(1, space_->choice_count(space_->discrete()[k]) / 10);
    next[k] = 1;
  }
  for (std::size_t i = 0; i < worths_.size(); ++i)
    if (worths_[i].violation == 0 && best_within(i, next)) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return better(worths_[a], worths_[b]); });
  for (const std::size_t index : order) {
    if (places.size() == most) break;
    if (!best_within(index, wide)) continue;
    Place place = base_;
    std::size_t left = index;
    for (const std::size_t knob : space_->discrete()) {
      place[knob] = double(left % space_->choice_count(knob));
      left /= space_->choice_count(knob);
    }
    places.push_back(std::move(place));
  }
  return places;
}

Climber walk_choices(const Space& space, Judge& judge, Ascent* ascent, Climber climber) {
  for (int walk = 0; walk < most_walks; ++walk) {
    Batch batch = around(space, climber.place);
    if (batch.places.empty()) break;
    judge.weigh(batch);
    climber.radius = 0.02;
    const Climber best = best_followed(space, batch, ascent, climber);
    if (!better(best.worth, climber.worth)) break;
    climber = best;
  }
  return climber;
}

}  // namespace wattfall::tuner
