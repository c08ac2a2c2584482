// One ascent from one place, in rounds that the search can stop and go on with. A round is two batches: the stencil
// that gives second-order models of goal and slacks, and a ladder of trial steps of all lengths in several shapes of
// the goal, of which the best counts. Slacks enter by an augmented Lagrangian whose multipliers are refitted each round
// (Fletcher, 1970).
#pragma once

#include <cstddef>
#include <vector>

#include "judge.hpp"
#include "lagrangian.hpp"
#include "quadratic.hpp"
#include "shape.hpp"

namespace wattfall::tuner {

struct Climber {
  Place place;
  Worth worth{};
  double radius = 0.1;  ///< a tenth of the ranges: the spacing of the scan it starts from
  Shape shape = Shape::plain;
  double reach = 2;  ///< the longest step taken, in shares of the ranges
  std::size_t rounds = 0;
  int stalls = 0;
  bool done = false;
  Place before;  ///< the place of the round before, for looking ahead along a ridge
};

class Ascent {
 public:
  Ascent(const Space& space, Judge& judge);

  /// Does one round, or nothing where the climber is done.
  void advance(Climber& climber);
  /// Goes on until it is done, `most_rounds` at most.
  void finish(Climber& climber, std::size_t most_rounds);
  /// From a place that all but meets the slacks, tries the nearest ones that do.
  void restore(Climber& climber);
  /// Whether the goal has a kink or a hole there: second differences that grow as the spacing shrinks.
  bool kinked(const Climber& climber);
  /// Ways (of unit length, by the movable knobs) along which a goal `far` off an end of a climb may be level or higher,
  /// for all that slope and curvature say: the second-order model falls by less than `fall`, or its curvature drowns
  /// beside the greatest one's. Neither slacks nor kinks are looked for. Cost: one stencil.
  std::vector<std::vector<double>> doubtful_ways(const Climber& climber, double far, double fall);

 private:
  struct Models {
    std::vector<double> centre;  ///< of the movable knobs
    Room room;
    Batch points;
    std::vector<Quadratic> slacks;
    double spacing;
  };
  /// The shape that won last and one other in turn; empty where a goal of the stencil is not finite.
  std::vector<Shape> shapes(const Climber& climber, const Models& models) const;
  Models look(const Climber& climber, double spacing);
  Quadratic goal_model(Shape shape, const Models& models) const;
  double merit(Shape shape, const Batch& batch, std::size_t index, const Weights& weights) const;
  void add_ladder(const Climber& climber, const Models& models, const Quadratic& model, std::size_t rungs);
  void add_ahead(const Climber& climber);
  /// Moves the climber to the best of trials and stencil, and says which trial that was; 0: none of them.
  std::size_t take_best(Climber& climber, const Models& models, const Weights& weights);
  void settle(Climber& climber, const Worth& before);

  const Space& space_;
  Judge& judge_;
  std::size_t n_;
  std::vector<double> offsets_;
  Batch trials_;
  double newton_length_ = 0;
  double shortest_ = 0;
};

}  // namespace wattfall::tuner
