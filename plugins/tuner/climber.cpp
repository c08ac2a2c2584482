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

/// Penalty curvature over the goal's own: at ten, one round cuts a violation to a tenth even with wrong multipliers.
constexpr double stiffness = 10;

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

double norm(const std::vector<double>& v) {
  double sum = 0;
  for (double x : v) sum += x * x;
  return std::sqrt(sum);
}

/// Solves the small symmetric system a x = b by elimination with pivoting; singular pivots give x = 0 there.
std::vector<double> solve(std::vector<double> a, std::vector<double> b) {
  const std::size_t m = b.size();
  for (std::size_t p = 0; p < m; ++p) {
    std::size_t best = p;
    for (std::size_t r = p + 1; r < m; ++r)
      if (std::abs(a[r * m + p]) > std::abs(a[best * m + p])) best = r;
    for (std::size_t c = 0; c < m; ++c) std::swap(a[p * m + c], a[best * m + c]);
    std::swap(b[p], b[best]);
    if (a[p * m + p] == 0) continue;
    for (std::size_t r = p + 1; r < m; ++r) {
      const double factor = a[r * m + p] / a[p * m + p];
      for (std::size_t c = p; c < m; ++c) a[r * m + c] -= factor * a[p * m + c];
      b[r] -= factor * b[p];
    }
  }
  for (std::size_t p = m; p-- > 0;) {
    for (std::size_t c = p + 1; c < m; ++c) b[p] -= a[p * m + c] * b[c];
    b[p] = a[p * m + p] == 0 ? 0 : b[p] / a[p * m + p];
  }
  return b;
}

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Products of the chosen slacks' gradients, each with each.
std::vector<double> products(const std::vector<Quadratic>& slacks, const std::vector<std::size_t>& chosen) {
  const std::size_t m = chosen.size();
  std::vector<double> result(m * m);
  for (std::size_t i = 0; i < m; ++i) {
    for (std::size_t j = 0; j < m; ++j) result[i * m + j] = dot(slacks[chosen[i]].gradient, slacks[chosen[j]].gradient);
    result[i * m + i] *= 1 + 1e-12;  // two slacks that are one: keeps rounding from dividing by nothing
  }
  return result;
}

/// Multipliers >= 0 that best balance `slope` by the slacks' gradients: least squares, negative ones dropped in turn.
std::vector<double> balance(const std::vector<double>& slope, const std::vector<Quadratic>& slacks,
                            std::vector<std::size_t> active) {
  std::vector<double> result(slacks.size(), 0.0);
  while (!active.empty()) {
    const std::size_t m = active.size();
    std::vector<double> b(m);
    for (std::size_t i = 0; i < m; ++i) b[i] = -dot(slacks[active[i]].gradient, slope);
    const std::vector<double> x = solve(products(slacks, active), std::move(b));
    const auto least = std::min_element(x.begin(), x.end());
    if (*least >= 0) {
      for (std::size_t i = 0; i < m; ++i) result[active[i]] = x[i];
      break;
    }
    active.erase(active.begin() + (least - x.begin()));
  }
  return result;
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
  models.centre.resize(n_);
  for (std::size_t i = 0; i < n_; ++i)
    models.centre[i] = std::clamp(climber.place[space_.movable()[i]], models.spacing, 1 - models.spacing);
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

Ascent::Weights Ascent::weights(const Quadratic& goal, const Models& models, double radius) const {
  Weights result{std::vector<double>(models.slacks.size(), 0.0), std::vector<double>(models.slacks.size(), 0.0)};
  std::vector<std::size_t> active;
  for (std::size_t k = 0; k < models.slacks.size(); ++k) {
    const double steepness = norm(models.slacks[k].gradient);
    if (!(steepness > 0)) continue;
    const double bend = std::max(norm(goal.hessian), norm(goal.gradient));
    result.penalties[k] = stiffness * bend / (steepness * steepness);
    if (models.slacks[k].value < steepness * radius) active.push_back(k);
  }
  result.multipliers = balance(goal.gradient, models.slacks, active);
  return result;
}

Quadratic Ascent::lagrangian(const Quadratic& goal, const Models& models, const Weights& weights) const {
  Quadratic result = goal;
  for (std::size_t k = 0; k < models.slacks.size(); ++k) {
    const Quadratic& slack = models.slacks[k];
    const double pull = weights.multipliers[k] - weights.penalties[k] * slack.value;
    if (!(pull > 0)) continue;
    for (std::size_t i = 0; i < n_; ++i) {
      result.gradient[i] += pull * slack.gradient[i];
      for (std::size_t j = 0; j < n_; ++j)
        result.hessian[i * n_ + j] +=
            pull * slack.hessian[i * n_ + j] - weights.penalties[k] * slack.gradient[i] * slack.gradient[j];
    }
  }
  return result;
}

double Ascent::merit(Shape shape, const Batch& batch, std::size_t index, const Weights& weights) const {
  const double goal = batch.goals[index];
  if (!fits(shape, {&goal, 1})) return -std::numeric_limits<double>::infinity();
  double sum = reshape(shape, goal);
  for (std::size_t k = 0; k < weights.penalties.size(); ++k) {
    if (!(weights.penalties[k] > 0)) continue;
    const double slack = judge_.scaled_slack(batch, index, k) - margin;
    const double pull = std::max(0.0, weights.multipliers[k] - weights.penalties[k] * slack);
    sum -= (pull * pull - weights.multipliers[k] * weights.multipliers[k]) / (2 * weights.penalties[k]);
  }
  return sum;
}

void Ascent::add_ladder(const Climber& climber, const Models& models, const Quadratic& model, std::size_t rungs) {
  std::vector<double> lower(n_), upper(n_);
  for (std::size_t i = 0; i < n_; ++i) {
    lower[i] = -models.centre[i];
    upper[i] = 1 - models.centre[i];
  }
  Climb climb(model, lower, upper);
  auto add = [&](const std::vector<double>& step) {
    const std::size_t row = trials_.places.size();
    trials_.places.insert(trials_.places.end(), climber.place.begin(), climber.place.end());
    for (std::size_t i = 0; i < n_; ++i) trials_.places[row + space_.movable()[i]] = models.centre[i] + step[i];
  };
  const std::vector<double> newton = climb.step(std::numeric_limits<double>::max());
  const double length = norm(newton);
  newton_length_ = std::max(newton_length_, length);
  add(newton);
  shortest_ = std::min(shortest_, length);
  for (std::size_t r = 0; r < rungs; ++r) {
    const double radius = ladder[r] * climber.radius;
    if (!(radius < length)) continue;
    add(climb.step(radius));
    shortest_ = std::min(shortest_, radius);
  }
}

void Ascent::add_ahead(const Climber& climber) {
  if (climber.before.empty()) return;
  for (double strides : {0.5, 1.0, 2.0, 4.0}) {
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
  for (const Shape shape : tried) {
    const bool main = shape == climber.shape;
    const Quadratic goal = goal_model(shape, models);
    const Weights now = weights(goal, models, climber.radius);
    add_ladder(climber, models, lagrangian(goal, models, now), main ? std::size(ladder) : short_ladder);
    if (main) first = now;
  }
  add_ahead(climber);
  judge_.weigh(trials_);
  const Worth before = climber.worth;
  take_best(climber, models, first);
  settle(climber, before);
}

void Ascent::take_best(Climber& climber, const Models& models, const Weights& weights) {
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
    return;
  }
  climber.before = climber.place;
  climber.place = source->place(best, space_.size());
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

std::vector<double> Ascent::nearest_meeting(const Models& models, double aim) const {
  std::vector<double> step(n_, 0.0);
  // Newton on the second-order models; three passes leave only their third order.
  for (int pass = 0; pass < 3; ++pass) {
    std::vector<std::size_t> missed;
    for (std::size_t k = 0; k < models.slacks.size(); ++k)
      if (models.slacks[k].at(step) + margin < aim) missed.push_back(k);
    const std::size_t m = missed.size();
    std::vector<double> a = products(models.slacks, missed), b(m);
    for (std::size_t i = 0; i < m; ++i) b[i] = aim - margin - models.slacks[missed[i]].at(step);
    const std::vector<double> x = solve(std::move(a), std::move(b));
    for (std::size_t i = 0; i < m; ++i)
      for (std::size_t j = 0; j < n_; ++j) step[j] += x[i] * models.slacks[missed[i]].gradient[j];
  }
  return step;
}

void Ascent::restore(Climber& climber) {
  if (judge_.slack_count() == 0 || climber.worth.violation == 0) return;
  const Models models = look(climber, finest_spacing);
  Batch tries;
  // Slacks aimed at from the least that can be told from 0 up to a hundredth of the median.
  for (double aim = 1e-12; aim < 2e-2; aim *= 10) {
    const std::vector<double> step = nearest_meeting(models, aim);
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
