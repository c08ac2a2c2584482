// See tops.hpp.
#include "tops.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "scan.hpp"
#include "swarm.hpp"

namespace wattfall::tuner {
namespace {

/// How far a top is left to see whether the climb comes back, and the rounds it has for that.
constexpr double nudge = 0.03;
constexpr std::size_t nudge_rounds = 14;

/// Longest step, for a longer one may leap to another top: of 4,000 single stubs, each with two matches, 57 were told
/// with one alone without this bound, 45 with 0.1, 12 with 0.05 and 3 with this.
constexpr double reach = 0.04;

/// Tops nearer than this are one; a nudge that ends farther off without a loss has found a level ridge.
constexpr double one_top = 0.01;

/// Shares of the height below which goals are level: of one top, and along a ridge.
constexpr double same_goal = 1e-7;
constexpr double level = 1e-4;

/// Follows a rise found by nudging; a crooked ridge may take several.
constexpr int most_follows = 6;
constexpr std::size_t follow_rounds = 80;

/// Places between two tops, and between two that still climb, at which a dip would show.
constexpr int paces = 16, short_paces = 8;

/// Rounds of the laps after each of which climbers that another covers are given up; the last goes to the end. Before
/// one of them the ends of the ranges join in.
constexpr std::size_t laps[] = {1, 2, 3, 8, 150};
constexpr std::size_t lap_of_ends = 2;

/// Evaluations a knob of a swarm that gets a climber along the crease where it jams, and most swarms one after the other.
constexpr std::size_t swarm_share = 1000;
constexpr int most_swarms = 10;

struct Top {
  Climber climber;
  bool ridge = false;
};

bool higher(const Climber& a, const Climber& b) { return better(a.worth, b.worth); }

class Separation {
 public:
  Separation(const Space& space, Judge& judge, Ascent& ascent, double height)
      : space_(space), judge_(judge), ascent_(ascent), height_(height) {}

  /// Leaves of climbers those that no better one covers, at their ends.
  void race(std::vector<Climber>& climbers) {
    for (std::size_t lap = 0; lap < std::size(laps); ++lap) {
      if (lap == lap_of_ends) add_ends(climbers);
      for (Climber& climber : climbers) {
        climber.reach = reach;
        ascent_.finish(climber, laps[lap]);
        if (lap + 1 == std::size(laps)) ascent_.restore(climber);
      }
      std::stable_sort(climbers.begin(), climbers.end(), higher);
      std::vector<Climber> kept;
      for (Climber& climber : climbers)
        if (!covered(climber, kept)) kept.push_back(std::move(climber));
      climbers = std::move(kept);
    }
  }

  Top settle(Climber climber) {
    Top top{std::move(climber)};
    if (ascent_.kinked(top.climber)) follow_crease(top.climber);
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
      if (!same_choices(top.climber, other.climber)) return false;
      const bool even = std::abs(top.climber.worth.goal - other.climber.worth.goal) < level * height_;
      return (top.ridge && other.ridge && even) || no_dip(top.climber, other.climber);
    });
  }

 private:
  /// A crease is climbed by swarms, each from where the last one ended, until one gains nothing to speak of.
  void follow_crease(Climber& climber) {
    for (int follow = 0; follow < most_swarms; ++follow) {
      const double before = climber.worth.goal;
      swarm(space_, judge_, climber, swarm_share * space_.movable().size());
      if (!(climber.worth.goal > before + level * height_)) break;
    }
  }

  /// The best with one knob at an end of its range: a part that is all but taken away often has a top of its own there,
  /// parted from the best by a shallow dip.
  void add_ends(std::vector<Climber>& climbers) {
    if (climbers.empty()) return;
    Batch batch;
    for (const std::size_t knob : space_.movable())
      for (const double end : {0.0, 1.0}) {
        Place place = climbers.front().place;
        if (place[knob] == end) continue;
        place[knob] = end;
        batch.places.insert(batch.places.end(), place.begin(), place.end());
      }
    judge_.weigh(batch);
    for (std::size_t i = 0; i < batch.count; ++i) {
      if (!std::isfinite(batch.worths[i].goal)) continue;
      Climber climber;
      climber.place = batch.place(i, space_.size());
      climber.worth = batch.worths[i];
      climber.radius = nudge;
      climbers.push_back(std::move(climber));
    }
  }

  /// Whether a climber would come to the top of one of these, all of them better.
  bool covered(const Climber& climber, const std::vector<Climber>& kept) {
    if (climber.worth.violation > 0 || !std::isfinite(climber.worth.goal)) return false;
    return std::any_of(kept.begin(), kept.end(), [&](const Climber& other) {
      return same_choices(climber, other) && heads_for(climber, other) && rises(climber, other);
    });
  }

  /// Whether the last step did not lead away from the other.
  bool heads_for(const Climber& climber, const Climber& other) const {
    if (climber.before.empty()) return true;
    double along = 0;
    for (const std::size_t knob : space_.movable()) along += (climber.place[knob] - climber.before[knob]) * (other.place[knob] - climber.place[knob]);
    return along >= 0;
  }

  /// Whether the straight way from one to the other rises all along.
  bool rises(const Climber& from, const Climber& to) {
    const Batch batch = way(from, to, short_paces);
    double last = from.worth.goal;
    for (const Worth& worth : batch.worths) {
      if (worth.violation > 0 || !(worth.goal >= last)) return false;
      last = worth.goal;
    }
    return to.worth.goal >= last;
  }

  /// What stands between two.
  Batch way(const Climber& a, const Climber& b, int steps) {
    Batch batch;
    for (int pace = 1; pace < steps; ++pace) {
      Place place = a.place;
      for (const std::size_t knob : space_.movable()) place[knob] += (b.place[knob] - a.place[knob]) * pace / steps;
      batch.places.insert(batch.places.end(), place.begin(), place.end());
    }
    judge_.weigh(batch);
    return batch;
  }

  /// Whether the straight way from one top to the other never falls below the lower of them.
  bool no_dip(const Climber& a, const Climber& b) {
    const Batch batch = way(a, b, paces);
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

  /// The ways in which a top is nudged: none where slope and curvature say that all sides fall, else along each knob
  /// and along what is in doubt.
  std::vector<std::vector<double>> ways_of(const Climber& climber) {
    std::vector<std::vector<double>> ways;
    if (judge_.slack_count() == 0) {
      ways = ascent_.doubtful_ways(climber, nudge, level * height_);
      if (ways.empty()) return ways;
    }
    for (std::size_t i = 0; i < space_.movable().size(); ++i) {
      ways.emplace_back(space_.movable().size(), 0.0);
      ways.back()[i] = 1;
    }
    return ways;
  }

  /// The best that climbs from beside the top come to; notes whether one of them stays away.
  Climber best_nudged(Top& top) {
    Climber best = top.climber;
    top.ridge = false;
    for (const std::vector<double>& way : ways_of(top.climber))
      for (const double side : {-nudge, nudge}) {
        Climber other = top.climber;
        for (std::size_t i = 0; i < way.size(); ++i) {
          double& place = other.place[space_.movable()[i]];
          place = std::clamp(place + side * way[i], 0.0, 1.0);
        }
        if (other.place == top.climber.place) continue;
        Batch batch;
        batch.places = other.place;
        judge_.weigh(batch);
        other.worth = batch.worths[0];
        wake(other);
        for (std::size_t round = 0; round < nudge_rounds && !other.done; ++round) {
          ascent_.advance(other);
          if (back(other, top.climber)) break;
        }
        ascent_.restore(other);
        if (other.worth.violation > 0) continue;
        const bool away = distance(space_, other.place.data(), top.climber.place.data()) > one_top;
        top.ridge |= away && std::abs(other.worth.goal - top.climber.worth.goal) < level * height_;
        if (other.worth.goal > best.worth.goal) best = other;
      }
    return best;
  }

  /// Whether a climb that went on from beside a top has come back to it.
  bool back(const Climber& other, const Climber& top) const {
    return !better(other.worth, top.worth) && distance(space_, other.place.data(), top.place.data()) < one_top / 2;
  }

  bool same_choices(const Climber& a, const Climber& b) const {
    return std::all_of(space_.discrete().begin(), space_.discrete().end(), [&](std::size_t knob) { return a.place[knob] == b.place[knob]; });
  }

  const Space& space_;
  Judge& judge_;
  Ascent& ascent_;
  double height_;
};

}  // namespace

std::vector<Place> separate_tops(const Space& space, Judge& judge, Ascent& ascent, std::vector<Climber> climbers,
                                 double height) {
  Separation separation(space, judge, ascent, height);
  separation.race(climbers);
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
  for (const Top& top : tops) places.push_back(top.climber.place);
  return places;
}

}  // namespace wattfall::tuner
