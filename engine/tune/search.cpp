#include "search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>

#include "judge/figures.hpp"
#include "judge/judge.hpp"
#include "ledger/book.hpp"
#include "quick.hpp"
#include "solve/solve.hpp"

namespace wattfall::tune {
namespace {

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

/// Settings evaluated at once: keeps the solution's arrays in the second-level cache.
constexpr std::size_t chunk = 512;

/// The optimizer sees choices by their number; the network sees values.
double value_of(const design::Knob& knob, double setting) {
  if (knob.choices.empty()) return setting;
  const auto last = static_cast<double>(knob.choices.size() - 1);
  return knob.choices[static_cast<std::size_t>(std::lround(std::clamp(setting, 0.0, last)))];
}

double setting_of(const design::Knob& knob, double value) {
  if (knob.choices.empty()) return value;
  std::size_t nearest = 0;
  for (std::size_t i = 1; i < knob.choices.size(); ++i)
    if (std::abs(knob.choices[i] - value) < std::abs(knob.choices[nearest] - value)) nearest = i;
  return static_cast<double>(nearest);
}

/// The figures of a batch of settings: on the collapsed network where that is possible, from the whole solution's books where not.
class Evaluator {
 public:
  explicit Evaluator(const Problem& problem) : problem_(problem), quick_(Quick::make(problem)) {
    if (quick_ != nullptr) return;
    asked_ = problem.design;
    // Only the looks that this search needs are solved for.
    asked_.planes.clear();
    asked_.requirements.clear();
    asked_.tunes.assign(1, problem.statement);
    looks_ = judge::looks_of(asked_);
  }

  void run(const double* settings, std::size_t count, double* goals, double* slacks) {
    for (std::size_t first = 0; first < count; first += chunk)
      run_chunk(settings + first * knob_count(), std::min(chunk, count - first), goals + first, slacks + first * slack_count());
  }

  std::size_t knob_count() const { return problem_.statement.knobs.size(); }
  std::size_t slack_count() const { return problem_.statement.keeping.size(); }

  std::vector<double> knobs_for(const double* setting) const {
    std::vector<double> knobs = problem_.others;
    for (std::size_t k = 0; k < knob_count(); ++k) {
      const design::KnobId id = problem_.statement.knobs[k];
      knobs[id.index] = value_of(problem_.design.knobs[id.index], setting[k]);
    }
    return knobs;
  }

 private:
  void run_chunk(const double* settings, std::size_t count, double* goals, double* slacks) {
    std::vector<double> knobs;
    knobs.reserve(count * problem_.others.size());
    for (std::size_t i = 0; i < count; ++i) {
      const std::vector<double> one = knobs_for(settings + i * knob_count());
      knobs.insert(knobs.end(), one.begin(), one.end());
    }
    if (quick_ != nullptr) quick_->run(knobs, count, values_);
    else run_whole(knobs, count);
    judge_values(count, goals, slacks);
  }

  void run_whole(const std::vector<double>& knobs, std::size_t count) {
    const std::size_t width = problem_.others.size();
    solve::States states;
    states.knob_count = width;
    for (std::size_t i = 0; i < count; ++i)
      for (double hertz : problem_.frequencies_hz) states.add(hertz, {knobs.data() + i * width, width});
    const solve::Solution solution = solve::solve(problem_.design, problem_.network, problem_.plan, states, looks_);
    const ledger::Ledger ledger = ledger::book(problem_.design, problem_.network, solution, looks_);
    values_.assign(1 + slack_count(), std::vector<double>(states.size()));
    for (std::size_t s = 0; s < states.size(); ++s) {
      values_[0][s] = judge::figure_in_state(problem_.statement.goal, problem_.design, ledger, s);
      for (std::size_t c = 0; c < slack_count(); ++c)
        values_[c + 1][s] = judge::figure_in_state(problem_.statement.keeping[c].figure, problem_.design, ledger, s);
    }
  }

  /// The worst frequency counts.
  void judge_values(std::size_t count, double* goals, double* slacks) const {
    const std::size_t each = problem_.frequencies_hz.size();
    for (std::size_t i = 0; i < count; ++i) {
      goals[i] = std::numeric_limits<double>::infinity();
      for (std::size_t f = 0; f < each; ++f) goals[i] = std::min(goals[i], goal(values_[0][i * each + f]));
      for (std::size_t c = 0; c < slack_count(); ++c) slacks[i * slack_count() + c] = worst_slack(c, i * each, each);
    }
  }

  /// Greater is better. A standing-wave ratio runs to infinity where all comes back, so its reflection is searched instead: the same order, but
  /// smooth and bounded.
  double goal(double value) const {
    const design::FigureKind kind = problem_.statement.goal.kind;
    const double sign = problem_.statement.most ? 1.0 : -1.0;
    if (kind == design::FigureKind::swr_at || kind == design::FigureKind::swr_on)
      return sign * (std::isnan(value) ? 1.0 : (value - 1.0) / (value + 1.0));
    return std::isnan(value) ? minus_infinity : sign * value;
  }

  double worst_slack(std::size_t c, std::size_t first, std::size_t each) const {
    const design::Requirement& requirement = problem_.statement.keeping[c];
    double worst = std::numeric_limits<double>::infinity();
    for (std::size_t f = 0; f < each; ++f) {
      const double hertz = problem_.frequencies_hz[f];
      if (requirement.over_hz && (hertz < requirement.over_hz->first || hertz > requirement.over_hz->second)) continue;
      worst = std::min(worst, slack(requirement, values_[c + 1][first + f]));
    }
    return worst;
  }

  /// Share of the bound left over; for a ratio by way of the reflection, as the goal is.
  static double slack(const design::Requirement& requirement, double value) {
    const bool ratio = requirement.figure.kind == design::FigureKind::swr_at || requirement.figure.kind == design::FigureKind::swr_on;
    const double sign = requirement.below ? 1.0 : -1.0;
    if (ratio) {
      const double reflection = std::isnan(value) ? 1.0 : (value - 1.0) / (value + 1.0);
      return sign * ((requirement.value - 1.0) / (requirement.value + 1.0) - reflection);
    }
    if (std::isnan(value)) return -1.0;
    return sign * (requirement.value - value) / std::max(std::abs(requirement.value), 1e-12);
  }

  const Problem& problem_;
  std::unique_ptr<Quick> quick_;
  design::Design asked_;
  std::vector<design::Look> looks_;
  std::vector<std::vector<double>> values_;  ///< [figure][setting x frequency]: the goal's, then those of `keeping`
};

sdk::Status evaluate(void* self, const double* settings, std::size_t count, double* goals, double* slacks, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] { static_cast<Evaluator*>(self)->run(settings, count, goals, slacks); });
}

sdk::KnobRange range_of(const design::Knob& knob, double now) {
  sdk::KnobRange range{};
  range.start = setting_of(knob, now);
  if (!knob.choices.empty()) {
    range.upper = static_cast<double>(knob.choices.size() - 1);
    range.choices = knob.choices.data();
    range.choice_count = knob.choices.size();
    return range;
  }
  range.lower = knob.lower;
  range.upper = knob.upper;
  // Coils, capacitors and resistors are felt by their ratios, lengths and plain numbers by their differences.
  range.logarithmic = knob.lower > 0.0 && knob.dim != dimension::length && knob.dim != dimension::number;
  return range;
}

}  // namespace

double worst_figure(const Problem& problem, const design::Figure& figure, bool greater_is_better, const std::vector<double>& knobs) {
  solve::States states;
  states.knob_count = knobs.size();
  for (double hertz : problem.frequencies_hz) states.add(hertz, knobs);
  const std::vector<design::Look> looks = judge::looks_of(problem.design);
  const solve::Solution solution = solve::solve(problem.design, problem.network, problem.plan, states, looks);
  const ledger::Ledger ledger = ledger::book(problem.design, problem.network, solution, looks);
  double worst = std::numeric_limits<double>::quiet_NaN();
  for (std::size_t s = 0; s < states.size(); ++s) {
    const double value = judge::figure_in_state(figure, problem.design, ledger, s);
    if (std::isnan(value)) return value;
    if (std::isnan(worst) || (greater_is_better ? value < worst : value > worst)) worst = value;
  }
  return worst;
}

Found search(const Problem& problem, const sdk::Optimizer& optimizer) {
  Evaluator evaluator(problem);
  std::vector<sdk::KnobRange> ranges;
  std::vector<double> starts;
  for (design::KnobId id : problem.statement.knobs)
    ranges.push_back(range_of(problem.design.knobs[id.index], problem.others[id.index]));
  for (const std::vector<double>& start : problem.starts)
    for (std::size_t k = 0; k < start.size(); ++k)
      starts.push_back(setting_of(problem.design.knobs[problem.statement.knobs[k].index], start[k]));
  const sdk::SearchProblem asked{ranges.data(), ranges.size(), evaluator.slack_count(), starts.data(), problem.starts.size(), &evaluator, evaluate};
  Found found;
  std::vector<double> setting(ranges.size());
  sdk::SearchResult result{setting.data(), minus_infinity, 0, 0};
  sdk::Failure failure{};
  found.found = optimizer.search(optimizer.self, &asked, &result, &failure) == sdk::Status::ok && std::isfinite(result.goal);
  found.evaluations = result.evaluations;
  found.failure = failure.text;
  if (!found.found) return found;
  const std::vector<double> knobs = evaluator.knobs_for(setting.data());
  for (design::KnobId id : problem.statement.knobs) found.setting.push_back(knobs[id.index]);
  found.goal = worst_figure(problem, problem.statement.goal, problem.statement.most, knobs);
  found.keeping = result.feasible != 0;
  for (const design::Requirement& requirement : problem.statement.keeping)
    found.kept.push_back(worst_figure(problem, requirement.figure, !requirement.below, knobs));
  return found;
}

}  // namespace wattfall::tune
