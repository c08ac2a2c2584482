// See tops.hpp.
#include "tops.hpp"

#include <algorithm>
#include <cmath>

#include "scan.hpp"
#include "swarm.hpp"

namespace wattfall::tuner {
namespace {

/// How far a top is left to see whether the climb comes back, and the rounds it has for that.
constexpr double nudge = 0.03;
constexpr std::size_t nudge_rounds = 14;

/// Tops nearer than this are one; a nudge that ends farther off without a loss has found a level ridge.
constexpr double one_top = 0.01;

/// Shares of the height below which goals are level: of one top, and along a ridge.
constexpr double same_goal = 1e-7;
constexpr double level = 1e-4;

/// Follows a rise found by nudging; a crooked ridge may take several.
constexpr int most_follows = 6;
constexpr std::size_t follow_rounds = 80;

/// Places between two tops at which a dip would show.
constexpr int paces = 16;

/// Evaluations a knob with which a climber that jams at a crease gets along it.
constexpr std::size_t swarm_share = 250;

struct Top {
  Climber climber;
  bool ridge = false;
};

class Separation {
 public:
  Separation(const Space& space, Judge& judge, Ascent& ascent, double height)
      : space_(space), judge_(judge), ascent_(ascent), height_(height) {}

  Top settle(Climber climber) {
    Top top{std::move(climber)};
    if (ascent_.kinked(top.climber)) swarm(space_, judge_, top.climber, swarm_share * space_.movable().size());
    for (int follow = 0; follow < most_follows; ++follow) {
      const Climber best = best_nudged(top);
      if (!(best.worth.goal > top.climber.worth.goal + same_goal * height_)) break;
      top.climber = best;
      wake(top.climber);
      ascent_.finish(top.climber, follow_rounds);
      ascent_.restore(top.climber);
    }
    return top;
  }

  bool known(const Top& top, const std::vector<Top>& tops) {
    return std::any_of(tops.begin(), tops.end(), [&](const Top& other) {
      if (distance(space_, top.climber.place.data(), other.climber.place.data()) < one_top) return true;
      if (!same_choices(top, other)) return false;
      const bool even = std::abs(top.climber.worth.goal - other.climber.worth.goal) < level * height_;
      return (top.ridge && other.ridge && even) || no_dip(top.climber, other.climber);
    });
  }

 private:
  /// Whether the straight way from one top to the other never falls below the lower of them.
  bool no_dip(const Climber& a, const Climber& b) {
    Batch batch;
    for (int pace = 1; pace < paces; ++pace) {
      Place place = a.place;
      for (const std::size_t knob : space_.movable()) place[knob] += (b.place[knob] - a.place[knob]) * pace / paces;
      batch.places.insert(batch.places.end(), place.begin(), place.end());
    }
    judge_.weigh(batch);
    const double floor = std::min(a.worth.goal, b.worth.goal) - level * height_;
    return std::all_of(batch.worths.begin(), batch.worths.end(),
                       [&](const Worth& worth) { return worth.violation == 0 && worth.goal >= floor; });
  }

  static void wake(Climber& climber) {
    climber.done = false;
    climber.stalls = 0;
    climber.before.clear();
    climber.radius = nudge;
  }

  /// The best that climbs from beside the top come to; notes whether one of them stays away.
  Climber best_nudged(Top& top) {
    Climber best = top.climber;
    top.ridge = false;
    for (const std::size_t knob : space_.movable())
      for (const double side : {-nudge, nudge}) {
        Climber other = top.climber;
        other.place[knob] = std::clamp(other.place[knob] + side, 0.0, 1.0);
        if (other.place[knob] == top.climber.place[knob]) continue;
        Batch batch;
        batch.places = other.place;
        judge_.weigh(batch);
        other.worth = batch.worths[0];
        wake(other);
        ascent_.finish(other, nudge_rounds);
        ascent_.restore(other);
        if (other.worth.violation > 0) continue;
        const bool away = distance(space_, other.place.data(), top.climber.place.data()) > one_top;
        top.ridge |= away && std::abs(other.worth.goal - top.climber.worth.goal) < level * height_;
        if (other.worth.goal > best.worth.goal) best = other;
      }
    return best;
  }

  bool same_choices(const Top& a, const Top& b) const {
    return std::all_of(space_.discrete().begin(), space_.discrete().end(),
                       [&](std::size_t knob) { return a.climber.place[knob] == b.climber.place[knob]; });
  }

  const Space& space_;
  Judge& judge_;
  Ascent& ascent_;
  double height_;
};

bool higher(const Climber& a, const Climber& b) { return better(a.worth, b.worth); }

}  // namespace

std::vector<Place> separate_tops(const Space& space, Judge& judge, Ascent& ascent, std::vector<Climber> climbers,
                                 double height, std::size_t most) {
  std::stable_sort(climbers.begin(), climbers.end(), higher);
  Separation separation(space, judge, ascent, height);
  std::vector<Top> tops;
  std::vector<Place> seen;
  for (Climber& climber : climbers) {
    if (climber.worth.violation > 0 || !std::isfinite(climber.worth.goal)) continue;
    const bool met = std::any_of(seen.begin(), seen.end(), [&](const Place& place) {
      return distance(space, place.data(), climber.place.data()) < one_top;
    });
    if (met) continue;
    seen.push_back(climber.place);
    Top top = separation.settle(std::move(climber));
    if (!separation.known(top, tops)) tops.push_back(std::move(top));
  }
  std::stable_sort(tops.begin(), tops.end(), [](const Top& a, const Top& b) { return higher(a.climber, b.climber); });
  std::vector<Place> places;
  for (std::size_t i = 0; i < std::min(most, tops.size()); ++i) places.push_back(tops[i].climber.place);
  return places;
}

}  // namespace wattfall::tuner
