// See climber.hpp.
#include "climber.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace wattfall::tuner {
namespace {

/// Stencil spacing in shares of the knob's range. A peak of Q 300 in a range of 6 nepers is 5e-4 wide: a fifth of that;
/// and differences of a goal good to 1e-13 still leave curvatures good to 1e-13/1e-10 = 1e-3 at the finest.
constexpr double widest_spacing = 1e-4;
constexpr double finest_spacing = 1e-5;

/// Steps below this are below anything a knob can be set to, and below what the finest spacing resolves.
constexpr double shortest_step = 1e-8;

/// A relative gain below this is no gain: a thousand roundings of the goal.
constexpr double least_gain = 1e-10;

/// Aimed-at slack, in its median size: the least that survives rounding of the goal (1e-13) with room.
constexpr double margin = 1e-10;

/// Step lengths tried, in units of the last good one. Halving and doubling, then a long tail for curved ridges.
constexpr double ladder[] = {1, 2, 0.5, 4, 0.25, 0.0625, 16, 1.0 / 256};

/// Weights below which a goal counts as this for relative gains.
constexpr double smallest_goal = std::numeric_limits<double>::min();

/// Rungs of the ladder for the shape that is tried beside the winning one.
constexpr std::size_t short_ladder = 4;

/// A kink's second difference grows tenfold from the widest to the finest spacing, a smooth goal's stays: between them.
/// Told from rounding where it is a hundred roundings of the goal.
constexpr double kink_growth = 3;
constexpr double kink_noise = 1e-11;

/// Of the greatest curvature, what the others must have to be told from its errors: on ridges of a lossless T, whose
/// own curvature is 0, the stencil says up to 1.2e-4.
constexpr double told_curvature = 1e-3;

double norm(const std::vector<double>& v) {
  double sum = 0;
  for (double x : v) sum += x * x;
  return std::sqrt(sum);
}

}  // namespace

Ascent::Ascent(const Space& space, Judge& judge)
    : space_(space), judge_(judge), n_(space.movable().size()), offsets_(stencil_offsets(n_)) {}

std::vector<Shape> Ascent::shapes(const Climber& climber, const Models& models) const {
  std::vector<Shape> result;
  if (fits(climber.shape, models.points.goals)) result.push_back(climber.shape);
  for (int turn = 0; turn < shape_count && result.size() < 2; ++turn) {
    const Shape shape = Shape((int(climber.rounds) + turn) % shape_count);
    if (shape != climber.shape && fits(shape, models.points.goals)) result.push_back(shape);
  }
  return result;
}

Quadratic Ascent::goal_model(Shape shape, const Models& models) const {
  std::vector<double> values;
  for (double goal : models.points.goals) values.push_back(reshape(shape, goal));
  return fit(values, n_, models.spacing);
}

Ascent::Models Ascent::look(const Climber& climber, double spacing) {
  Models models;
  models.spacing = spacing;
  for (std::size_t knob : space_.movable()) {
    models.centre.push_back(std::clamp(climber.place[knob], spacing, 1 - spacing));
    models.room.lower.push_back(-models.centre.back());
    models.room.upper.push_back(1 - models.centre.back());
  }
  const std::size_t count = offsets_.size() / n_;
  for (std::size_t p = 0; p < count; ++p) {
    const std::size_t row = models.points.places.size();
    models.points.places.insert(models.points.places.end(), climber.place.begin(), climber.place.end());
    for (std::size_t i = 0; i < n_; ++i)
      models.points.places[row + space_.movable()[i]] = models.centre[i] + models.spacing * offsets_[p * n_ + i];
  }
  judge_.weigh(models.points);
  std::vector<double> values(count);
  for (std::size_t k = 0; k < judge_.slack_count(); ++k) {
    for (std::size_t p = 0; p < count; ++p)
      values[p] = std::max(judge_.scaled_slack(models.points, p, k), -1e9) - margin;
    models.slacks.push_back(fit(values, n_, models.spacing));
  }
  return models;
}

double Ascent::merit(Shape shape, const Batch& batch, std::size_t index, const Weights& weights) const {
  const double goal = batch.goals[index];
  if (!fits(shape, {&goal, 1})) return -std::numeric_limits<double>::infinity();
  double sum = reshape(shape, goal);
  for (std::size_t k = 0; k < judge_.slack_count(); ++k)
    sum += weights.term(k, judge_.scaled_slack(batch, index, k) - margin);
  return sum;
}

void Ascent::add_ladder(const Climber& climber, const Models& models, const Quadratic& model, std::size_t rungs) {
  Climb climb(model, models.room.lower, models.room.upper);
  auto add = [&](const std::vector<double>& step) {
    const std::size_t row = trials_.places.size();
    trials_.places.insert(trials_.places.end(), climber.place.begin(), climber.place.end());
    for (std::size_t i = 0; i < n_; ++i) trials_.places[row + space_.movable()[i]] = models.centre[i] + step[i];
  };
  const std::vector<double> newton = climb.step(std::numeric_limits<double>::max());
  const double length = norm(newton);
  newton_length_ = std::max(newton_length_, length);
  add(length <= climber.reach ? newton : climb.step(climber.reach));
  shortest_ = std::min(shortest_, length);
  for (std::size_t r = 0; r < rungs; ++r) {
    const double radius = ladder[r] * climber.radius;
    if (!(radius < std::min(length, climber.reach))) continue;
    add(climb.step(radius));
    shortest_ = std::min(shortest_, radius);
  }
}

void Ascent::add_ahead(const Climber& climber) {
  if (climber.before.empty()) return;
  double last = 0;
  for (const std::size_t knob : space_.movable()) last = std::hypot(last, climber.place[knob] - climber.before[knob]);
  for (double strides : {0.5, 1.0, 2.0, 4.0}) {
    if (strides * last > climber.reach) break;
    const std::size_t row = trials_.places.size();
    trials_.places.insert(trials_.places.end(), climber.place.begin(), climber.place.end());
    for (std::size_t knob : space_.movable()) {
      const double stride = climber.place[knob] - climber.before[knob];
      trials_.places[row + knob] = std::clamp(climber.place[knob] + strides * stride, 0.0, 1.0);
    }
  }
}

void Ascent::advance(Climber& climber) {
  if (climber.done) return;
  const Models models = look(climber, std::clamp(climber.radius * 0.02, finest_spacing, widest_spacing));
  const std::vector<Shape> tried = shapes(climber, models);
  climber.done = tried.empty();
  if (climber.done) return;
  climber.shape = tried.front();
  ++climber.rounds;
  trials_.places = climber.place;
  newton_length_ = 0;
  shortest_ = std::numeric_limits<double>::infinity();
  Weights first;
  std::size_t second_from = 0;
  for (const Shape shape : tried) {
    const bool main = shape == climber.shape;
    second_from = trials_.places.size() / space_.size();
    const Quadratic goal = goal_model(shape, models);
    const Weights now = fit_weights(goal, models.slacks, models.room, 2 * models.spacing, climber.radius);
    add_ladder(climber, models, lagrangian(goal, models.slacks, now), main ? std::size(ladder) : short_ladder);
    if (main) first = now;
  }
  const std::size_t second_to = trials_.places.size() / space_.size();
  add_ahead(climber);
  judge_.weigh(trials_);
  const Worth before = climber.worth;
  const std::size_t winner = take_best(climber, models, first);
  if (tried.size() > 1 && winner >= second_from && winner < second_to) climber.shape = tried[1];
  settle(climber, before);
}

std::size_t Ascent::take_best(Climber& climber, const Models& models, const Weights& weights) {
  const bool plain = judge_.slack_count() == 0;
  std::size_t best = 0;
  auto value = [&](const Batch& batch, std::size_t i) {
    return plain ? batch.goals[i] : merit(climber.shape, batch, i, weights);
  };
  const Batch* source = &trials_;
  double best_value = value(trials_, 0);
  for (const Batch* batch : {&std::as_const(trials_), &models.points})
    for (std::size_t i = 0; i < batch->count; ++i)
      if (value(*batch, i) > best_value) {
        best_value = value(*batch, i);
        best = i;
        source = batch;
      }
  climber.worth = source->worths[best];
  if (source == &trials_ && best == 0) {
    climber.before.clear();
    return 0;
  }
  climber.before = climber.place;
  climber.place = source->place(best, space_.size());
  return source == &trials_ ? best : 0;
}

void Ascent::settle(Climber& climber, const Worth& before) {
  double moved = 0;
  if (!climber.before.empty())
    for (std::size_t knob : space_.movable()) moved = std::hypot(moved, climber.place[knob] - climber.before[knob]);
  climber.radius = moved > 0 ? std::max(moved, shortest_step) : std::min(shortest_, climber.radius) / 8;
  double gain = std::abs(climber.worth.goal - before.goal) / std::max(std::abs(before.goal), smallest_goal);
  gain += std::abs(climber.worth.violation - before.violation);
  climber.stalls = gain < least_gain ? climber.stalls + 1 : 0;
  const bool small = newton_length_ < shortest_step || climber.radius < shortest_step;
  climber.done = climber.stalls >= 2 || (small && moved <= shortest_step);
}

void Ascent::finish(Climber& climber, std::size_t most_rounds) {
  for (std::size_t round = 0; round < most_rounds && !climber.done; ++round) advance(climber);
}

void Ascent::restore(Climber& climber) {
  if (judge_.slack_count() == 0 || climber.worth.violation == 0) return;
  const Models models = look(climber, finest_spacing);
  Batch tries;
  // Slacks aimed at from the least that can be told from 0 up to a hundredth of the median.
  for (double aim = 1e-12; aim < 2e-2; aim *= 10) {
    const std::vector<double> step = step_to_meet(models.slacks, models.room, aim);
    const std::size_t row = tries.places.size();
    tries.places.insert(tries.places.end(), climber.place.begin(), climber.place.end());
    for (std::size_t i = 0; i < n_; ++i)
      tries.places[row + space_.movable()[i]] = std::clamp(models.centre[i] + step[i], 0.0, 1.0);
  }
  judge_.weigh(tries);
  for (std::size_t i = 0; i < tries.count; ++i)
    if (better(tries.worths[i], climber.worth)) {
      climber.worth = tries.worths[i];
      climber.place = tries.place(i, space_.size());
    }
}

std::vector<std::vector<double>> Ascent::doubtful_ways(const Climber& climber, double far, double fall) {
  const Models models = look(climber, widest_spacing);
  std::vector<std::vector<double>> ways;
  const auto add_along = [&](std::size_t i) {
    ways.emplace_back(n_, 0.0);
    ways.back()[i] = 1;
  };
  if (!fits(Shape::plain, models.points.goals)) {
    for (std::size_t i = 0; i < n_; ++i) add_along(i);
    return ways;
  }
  const Quadratic model = goal_model(Shape::plain, models);
  // A knob that the slope holds at its bound has only one side.
  std::vector<std::size_t> free;
  for (std::size_t i = 0; i < n_; ++i) {
    const double place = climber.place[space_.movable()[i]];
    if (place <= 0 || place >= 1) {
      const double slope = place <= 0 ? model.gradient[i] : -model.gradient[i];
      const double bend = std::max(0.0, model.hessian[i * (n_ + 1)]);
      if (slope * far + bend * far * far / 2 < -fall) continue;
      add_along(i);
    }
    free.push_back(i);
  }
  std::vector<double> part, curvatures, directions;
  for (const std::size_t i : free)
    for (const std::size_t j : free) part.push_back(model.hessian[i * n_ + j]);
  symmetric_eigen(std::move(part), free.size(), curvatures, directions);
  double greatest = 0;
  for (const double curvature : curvatures) greatest = std::max(greatest, std::abs(curvature));
  for (std::size_t k = 0; k < free.size(); ++k) {
    if (curvatures[k] * far * far / 2 < -fall && curvatures[k] < -told_curvature * greatest) continue;
    std::vector<double> way(n_, 0.0);
    for (std::size_t i = 0; i < free.size(); ++i) way[free[i]] = directions[k * free.size() + i];
    ways.push_back(std::move(way));
  }
  return ways;
}

bool Ascent::kinked(const Climber& climber) {
  const Models wide = look(climber, widest_spacing);
  const Models fine = look(climber, finest_spacing);
  if (!fits(climber.shape, wide.points.goals) || !fits(climber.shape, fine.points.goals)) return true;
  const Quadratic a = goal_model(climber.shape, wide);
  const Quadratic b = goal_model(climber.shape, fine);
  for (std::size_t i = 0; i < n_; ++i) {
    const double told = std::abs(b.hessian[i * (n_ + 1)]) * finest_spacing * finest_spacing;
    if (told < kink_noise * std::abs(b.value)) continue;
    if (std::abs(b.hessian[i * (n_ + 1)]) > kink_growth * std::abs(a.hessian[i * (n_ + 1)])) return true;
  }
  return false;
}

}  // namespace wattfall::tuner
