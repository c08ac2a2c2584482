#include "search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <numeric>
#include <optional>
#include <span>

#include "judge/figures.hpp"
#include "judge/judge.hpp"
#include "ledger/book.hpp"
#include "quick.hpp"
#include "ratings.hpp"
#include "solve/solve.hpp"
#include "straight.hpp"

namespace wattfall::tune {
namespace {

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

/// Settings evaluated at once: keeps the solution's arrays in the second-level cache.
constexpr std::size_t chunk = 512;

/// Choices that are switches, not steps of a value; and combinations that optimizers try all of.
constexpr std::size_t few_choices = 6;
constexpr std::size_t enumerable = 300'000;

bool is_width(const design::Figure& figure) {
  return figure.kind == design::FigureKind::width_of_swr_at;
}

/// Instead of no stretch of frequency at all.
constexpr double smallest_stretch_hz = 1e-3;

/// Instead of a short: at 1 GHz still below 1e-10 ohm.
constexpr double least_henries = 1e-20, least_ohms = 1e-12;

/// The optimizer sees choices by their number; the network sees values.
double value_of(const design::Knob& knob, double setting) {
  if (knob.choices.empty()) return setting;
  const auto last = static_cast<double>(knob.choices.size() - 1);
  return knob.choices[static_cast<std::size_t>(std::clamp(setting, 0.0, last) + 0.5)];
}

double setting_of(const design::Knob& knob, double value) {
  if (knob.choices.empty()) return value;
  std::size_t nearest = 0;
  for (std::size_t i = 1; i < knob.choices.size(); ++i)
    if (std::abs(knob.choices[i] - value) < std::abs(knob.choices[nearest] - value)) nearest = i;
  return static_cast<double>(nearest);
}

/// Where a requirement is asked: over its own range at all frequencies there are, else where the goal is judged. By
/// their numbers in `all_hz`, rising in frequency.
std::vector<std::size_t> asked_at(const Problem& problem, const design::Requirement& requirement) {
  const std::vector<double> all = all_hz(problem);
  std::vector<std::size_t> asked(requirement.over_hz ? all.size() : problem.frequencies_hz.size());
  std::iota(asked.begin(), asked.end(), std::size_t{0});
  std::erase_if(asked, [&](std::size_t f) { return !requirement.asks_at(all[f]); });
  std::stable_sort(asked.begin(), asked.end(), [&](std::size_t a, std::size_t b) { return all[a] < all[b]; });
  return asked;
}

/// Where the goal is judged.
std::vector<std::size_t> goal_at(const Problem& problem) {
  std::vector<std::size_t> asked(problem.frequencies_hz.size());
  std::iota(asked.begin(), asked.end(), std::size_t{0});
  return asked;
}

std::vector<double> pick(const std::vector<double>& all, const std::vector<std::size_t>& which, std::size_t first = 0) {
  std::vector<double> picked;
  for (std::size_t one : which) picked.push_back(all[first + one]);
  return picked;
}

/// Only the looks that this search needs are solved for.
std::vector<design::Look> looks_of(const Problem& problem) {
  design::Design asked;
  asked.tunes.assign(1, problem.statement);
  return judge::looks_of(asked);
}

/// The books of one search where Quick cannot give its figures: the whole network, compiled once, and those pages alone that the figures stand on.
class WholePath {
 public:
  explicit WholePath(const Problem& problem)
      : problem_(problem), looks_(looks_of(problem)), pages_(judge::pages_of(figures_of(problem))), solver_(problem.design, problem.network, problem.plan, looks_) {}

  ledger::Ledger book(const solve::States& states) {
    solver_.run(states, solution_);
    return ledger::book(problem_.design, problem_.network, solution_, looks_, pages_);
  }

 private:
  static std::vector<design::Figure> figures_of(const Problem& problem) {
    std::vector<design::Figure> figures{problem.statement.goal};
    for (const design::Requirement& requirement : problem.statement.keeping) figures.push_back(requirement.figure);
    return figures;
  }

  const Problem& problem_;
  const std::vector<design::Look> looks_;
  const ledger::Pages pages_;
  solve::Solver solver_;
  solve::Solution solution_;
};

/// The figures of a batch of settings: on the collapsed network where that is possible, from the whole solution's books where not.
class Evaluator {
 public:
  explicit Evaluator(const Problem& problem)
      : problem_(problem),
        hertz_(all_hz(problem)),
        quick_(Quick::make(problem)),
        relaxed_(problem.statement.knobs.size(), false) {
    for (const design::Requirement& requirement : problem.statement.keeping) {
      asked_.push_back(asked_at(problem, requirement));
      asked_hz_.push_back(pick(hertz_, asked_.back()));
    }
  }

  /// Lets knobs of many choices stand anywhere between their ends, for a first look.
  void relax() {
    for (std::size_t k = 0; k < knob_count(); ++k) relaxed_[k] = may_relax(k);
  }
  void hold_to_choices() { relaxed_.assign(knob_count(), false); }
  bool relaxed(std::size_t k) const { return relaxed_[k]; }

  void run(const double* settings, std::size_t count, double* goals, double* slacks) {
    for (std::size_t first = 0; first < count; first += chunk)
      run_chunk(settings + first * knob_count(), std::min(chunk, count - first), goals + first, slacks + first * slack_count());
  }

  std::size_t knob_count() const { return problem_.statement.knobs.size(); }
  std::size_t slack_count() const { return problem_.statement.keeping.size() - problem_.scaling; }

  std::vector<double> knobs_for(const double* setting) const {
    std::vector<double> knobs(problem_.others.size());
    fill_knobs(setting, 1, knobs.data());
    return knobs;
  }

  /// A switch has no values between its choices.
  bool may_relax(std::size_t k) const {
    const design::KnobId id = problem_.statement.knobs[k];
    return problem_.design.knobs[id.index].choices.size() > few_choices && (quick_ == nullptr || !quick_->is_switch(id));
  }

  /// Compiled when it is first asked for.
  WholePath& whole_path() {
    if (!whole_path_) whole_path_.emplace(problem_);
    return *whole_path_;
  }

 private:
  /// The design's knobs, those of the statement at these settings.
  void fill_knobs(const double* settings, std::size_t count, double* knobs) const {
    const std::size_t width = problem_.others.size();
    // Tunes that turn every knob there is need no copies of the others.
    if (width > knob_count())
      for (std::size_t i = 0; i < count; ++i) std::copy(problem_.others.begin(), problem_.others.end(), knobs + i * width);
    for (std::size_t k = 0; k < knob_count(); ++k) {
      const design::KnobId id = problem_.statement.knobs[k];
      const design::Knob& knob = problem_.design.knobs[id.index];
      const bool plain = relaxed_[k] || knob.choices.empty();
      for (std::size_t i = 0; i < count; ++i) {
        const double setting = settings[i * knob_count() + k];
        knobs[i * width + static_cast<std::size_t>(id.index)] = plain ? setting : value_of(knob, setting);
      }
    }
  }

  void run_chunk(const double* settings, std::size_t count, double* goals, double* slacks) {
    const std::size_t width = problem_.others.size();
    knobs_.resize(count * width);
    fill_knobs(settings, count, knobs_.data());
    if (quick_ == nullptr) run_whole(knobs_, count, values_);
    else run_quick(knobs_, count);
    judge_values(count, goals, slacks);
  }

  /// A coil of 0 H or a resistor of 0 ohm is a short, and has no admittance: instead of it goes so little that a share of 1e-11 of an answer feels it. Banks
  /// of relays have many such settings.
  void lift_shorts(std::vector<double>& knobs, std::size_t count) const {
    const std::size_t width = problem_.others.size();
    for (design::KnobId id : problem_.statement.knobs) {
      const design::Knob& knob = problem_.design.knobs[id.index];
      const double least = knob.dim == dimension::inductance ? least_henries : knob.dim == dimension::resistance ? least_ohms : 0.0;
      if (least == 0.0 || (knob.choices.empty() ? knob.lower : knob.choices.front()) > 0.0) continue;
      double* value = knobs.data() + id.index;
      for (std::size_t i = 0; i < count; ++i) value[i * width] = value[i * width] == 0.0 ? least : value[i * width];
    }
  }

  /// A setting that the collapsed network has no answer for goes through the whole solution.
  void run_quick(std::vector<double>& knobs, std::size_t count) {
    lift_shorts(knobs, count);
    quick_->run(knobs, count, values_);
    const std::size_t each = hertz_.size(), width = problem_.others.size();
    std::vector<std::size_t> open;
    std::vector<double> again;
    for (std::size_t i = 0; i < count; ++i) {
      const auto first = values_[0].begin() + std::ptrdiff_t(i * each);
      if (std::none_of(first, first + std::ptrdiff_t(each), [](double value) { return std::isnan(value); })) continue;
      open.push_back(i);
      again.insert(again.end(), knobs.begin() + std::ptrdiff_t(i * width), knobs.begin() + std::ptrdiff_t((i + 1) * width));
    }
    if (open.empty()) return;
    run_whole(again, open.size(), whole_);
    for (std::size_t figure = 0; figure < values_.size(); ++figure)
      for (std::size_t i = 0; i < open.size(); ++i)
        std::copy_n(whole_[figure].begin() + std::ptrdiff_t(i * each), each, values_[figure].begin() + std::ptrdiff_t(open[i] * each));
  }

  void run_whole(const std::vector<double>& knobs, std::size_t count, std::vector<std::vector<double>>& values) {
    const std::size_t width = problem_.others.size();
    solve::States states;
    states.knob_count = width;
    for (std::size_t i = 0; i < count; ++i)
      for (double hertz : hertz_) states.add(hertz, {knobs.data() + i * width, width});
    const ledger::Ledger ledger = whole_path().book(states);
    const std::size_t asked = problem_.statement.keeping.size();
    values.assign(1 + asked, std::vector<double>(states.size()));
    for (std::size_t s = 0; s < states.size(); ++s) {
      values[0][s] = judge::figure_in_state(problem_.statement.goal, problem_.design, ledger, s);
      for (std::size_t c = 0; c < asked; ++c)
        values[c + 1][s] = judge::figure_in_state(problem_.statement.keeping[c].figure, problem_.design, ledger, s);
    }
  }

  /// The worst frequency counts; a width is one figure of them all.
  void judge_values(std::size_t count, double* goals, double* slacks) const {
    const std::size_t each = hertz_.size(), judged = problem_.frequencies_hz.size();
    const double* values = values_[0].data();
    for (std::size_t i = 0; i < count; ++i) {
      goals[i] = is_width(problem_.statement.goal) ? width_goal({values + i * each, judged}) : scaled_goal(i * each);
      for (std::size_t f = 1; f < judged && !is_width(problem_.statement.goal); ++f)
        goals[i] = std::min(goals[i], scaled_goal(i * each + f));
      for (std::size_t c = 0; c < slack_count(); ++c) slacks[i * slack_count() + c] = worst_slack(c, i * each);
    }
  }

  /// Of a state: the goal, with as much of the source's power as what scales it allows.
  double scaled_goal(std::size_t state) const {
    double share = 1.0;
    for (std::size_t c = slack_count(); c < problem_.statement.keeping.size(); ++c) {
      const design::Requirement& rating = problem_.statement.keeping[c];
      share = std::min(share, power_ratio(rating.figure, rating.value / values_[c + 1][state]));
    }
    return goal(values_[0][state]) * share;
  }

  /// Share of the whole stretch; below 0 where no frequency keeps the bound, by how far the best one's reflection is
  /// above it. Settings that keep it everywhere differ by how far the worst one's is below it.
  static double width_share(const design::Figure& figure, std::span<const double> swr,
                            const std::vector<double>& hertz) {
    const double bound = reflection_of_swr(figure.below);
    double least = 1.0, most = 0.0;
    for (double value : swr) {
      least = std::min(least, reflection_of_swr(value));
      most = std::max(most, reflection_of_swr(value));
    }
    if (least > bound) return bound - least;
    const double stretch = hertz.back() - hertz.front();
    const double share = stretch > 0.0 ? judge::width_hz(swr, hertz, figure.below) / stretch : 0.0;
    return most <= bound ? share + bound - most : share;
  }

  double width_goal(std::span<const double> swr) const {
    const double share = width_share(problem_.statement.goal, swr, problem_.frequencies_hz);
    return problem_.statement.most ? share : share < 0.0 ? minus_infinity : -share;
  }

  static double reflection_of_swr(double swr) { return std::isnan(swr) ? 1.0 : (swr - 1.0) / (swr + 1.0); }

  /// Greater is better. A standing-wave ratio runs to infinity where all comes back, so its reflection is searched instead: the same order, but
  /// smooth and bounded.
  double goal(double value) const {
    const design::FigureKind kind = problem_.statement.goal.kind;
    const double sign = problem_.statement.most ? 1.0 : -1.0;
    if (kind == design::FigureKind::swr_at || kind == design::FigureKind::swr_on)
      return sign * reflection_of_swr(value);
    return std::isnan(value) ? minus_infinity : sign * value;
  }

  double worst_slack(std::size_t c, std::size_t first) const {
    const design::Requirement& requirement = problem_.statement.keeping[c];
    if (asked_[c].empty()) return 1.0;  // kept, with room
    if (is_width(requirement.figure))
      return width_slack(requirement, pick(values_[c + 1], asked_[c], first), asked_hz_[c]);
    double worst = std::numeric_limits<double>::infinity();
    for (std::size_t f : asked_[c]) worst = std::min(worst, slack(requirement, values_[c + 1][first + f]));
    return worst;
  }

  /// As a share of the whole stretch. A width that does not exist keeps nothing, wide or narrow.
  static double width_slack(const design::Requirement& requirement, std::span<const double> swr,
                            const std::vector<double>& hertz) {
    const double share = width_share(requirement.figure, swr, hertz);
    // Of a single point the width is nothing.
    const double asked = requirement.value / std::max(hertz.back() - hertz.front(), smallest_stretch_hz);
    return requirement.below && share >= 0.0 ? asked - share
           : requirement.below               ? share - asked
                                             : std::min(share, 1.0) - asked;
  }

  /// Share of the bound left over; for a ratio by way of the reflection, as the goal is.
  static double slack(const design::Requirement& requirement, double value) {
    const bool ratio = requirement.figure.kind == design::FigureKind::swr_at || requirement.figure.kind == design::FigureKind::swr_on;
    const double sign = requirement.below ? 1.0 : -1.0;
    if (ratio) {
      return sign * (reflection_of_swr(requirement.value) - reflection_of_swr(value));
    }
    if (std::isnan(value)) return -1.0;
    return sign * (requirement.value - value) / std::max(std::abs(requirement.value), 1e-12);
  }

  const Problem& problem_;
  const std::vector<double> hertz_;              ///< all of the problem's
  std::vector<std::vector<std::size_t>> asked_;  ///< by requirement: which of them
  std::vector<std::vector<double>> asked_hz_;
  std::unique_ptr<Quick> quick_;
  std::vector<bool> relaxed_;
  std::vector<double> knobs_;                ///< of a chunk
  std::optional<WholePath> whole_path_;
  std::vector<std::vector<double>> whole_;   ///< as values_, of those the collapsed network could not answer
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

namespace {

/// The worst of these of the problem's frequencies, of the setting whose states begin at `first`.
double worst_of(const Problem& problem, const design::Figure& figure, bool greater_is_better,
                const std::vector<std::size_t>& at, const ledger::Ledger& ledger, std::size_t first = 0) {
  double worst = std::numeric_limits<double>::quiet_NaN();
  std::vector<double> values;
  for (std::size_t f : at) values.push_back(judge::figure_in_state(figure, problem.design, ledger, first + f));
  if (is_width(figure)) return judge::width_hz(values, pick(all_hz(problem), at), figure.below);
  for (const double value : values) {
    if (std::isnan(value)) return value;
    if (std::isnan(worst) || (greater_is_better ? value < worst : value > worst)) worst = value;
  }
  return worst;
}

double worst_goal(const Problem& problem, const ledger::Ledger& ledger, std::size_t first = 0) {
  return worst_of(problem, problem.statement.goal, problem.statement.most, goal_at(problem), ledger, first);
}
double worst_kept(const Problem& problem, const design::Requirement& requirement, const ledger::Ledger& ledger,
                  std::size_t first = 0) {
  return worst_of(problem, requirement.figure, !requirement.below, asked_at(problem, requirement), ledger, first);
}

/// Settings of the design's knobs, each at all of the problem's frequencies.
solve::States states_of(const Problem& problem, const std::vector<std::vector<double>>& knobs) {
  solve::States states;
  states.knob_count = problem.others.size();
  for (const std::vector<double>& setting : knobs)
    for (double hertz : all_hz(problem)) states.add(hertz, setting);
  return states;
}

}  // namespace

std::vector<double> all_hz(const Problem& problem) {
  std::vector<double> all = problem.frequencies_hz;
  all.insert(all.end(), problem.also_hz.begin(), problem.also_hz.end());
  return all;
}

std::vector<double> asked_hz(const Problem& problem, const design::Requirement& requirement) {
  return pick(all_hz(problem), asked_at(problem, requirement));
}

std::vector<std::vector<double>> worst_figures(const Problem& problem, const std::vector<std::vector<double>>& knobs) {
  const ledger::Ledger books = WholePath(problem).book(states_of(problem, knobs));
  std::vector<std::vector<double>> all;
  const std::size_t each = all_hz(problem).size();
  all.emplace_back();
  for (std::size_t i = 0; i < knobs.size(); ++i) all.back().push_back(worst_goal(problem, books, i * each));
  for (const design::Requirement& requirement : problem.statement.keeping) {
    all.emplace_back();
    for (std::size_t i = 0; i < knobs.size(); ++i)
      all.back().push_back(worst_kept(problem, requirement, books, i * each));
  }
  return all;
}

bool stands_at(double value, double end) { return std::abs(value - end) <= 1e-6 * std::abs(end); }

namespace {

/// One call of the optimizer, over the settings or over the relaxed ones.
class Asking {
 public:
  Asking(const Problem& problem, const sdk::Optimizer& optimizer, Evaluator& evaluator)
      : problem_(problem), optimizer_(optimizer), evaluator_(evaluator) {}

  /// `starts`: by the statement's knobs [SI].
  bool run(const std::vector<std::vector<double>>& starts, std::size_t other_room, Found& found) {
    const std::size_t width = evaluator_.knob_count();
    std::vector<sdk::KnobRange> ranges;
    std::vector<double> first;
    for (std::size_t k = 0; k < width; ++k) ranges.push_back(range(k));
    for (const std::vector<double>& start : starts)
      for (std::size_t k = 0; k < width; ++k) first.push_back(evaluator_.relaxed(k) ? start[k] : setting_of(knob(k), start[k]));
    const sdk::SearchProblem asked{ranges.data(), width, evaluator_.slack_count(), first.data(), starts.size(), &evaluator_, evaluate};
    std::vector<double> setting(width), others(other_room * width);
    sdk::SearchResult result{};
    result.setting = setting.data();
    result.goal = minus_infinity;
    result.others = others.data();
    result.other_room = other_room;
    sdk::Failure failure{};
    const bool ran = optimizer_.search(optimizer_.self, &asked, &result, &failure) == sdk::Status::ok && std::isfinite(result.goal);
    found.evaluations += result.evaluations;
    found.failure = failure.text;
    if (!ran) return false;
    found.setting = values(setting.data());
    found.keeping = result.feasible != 0;
    found.exhaustive = result.exhaustive != 0;
    found.others.clear();
    for (std::size_t i = 0; i < std::min(result.other_count, other_room); ++i) found.others.push_back(values(others.data() + i * width));
    return true;
  }

 private:
  const design::Knob& knob(std::size_t k) const { return problem_.design.knobs[problem_.statement.knobs[k].index]; }

  sdk::KnobRange range(std::size_t k) const {
    const double now = problem_.others[problem_.statement.knobs[k].index];
    if (!evaluator_.relaxed(k)) return range_of(knob(k), now);
    design::Knob between = knob(k);
    between.lower = between.choices.front();
    between.upper = between.choices.back();
    // A bank of relays begins at nothing, which has no logarithm: half of its smallest value will do for a first look.
    if (between.lower == 0.0) between.lower = 0.5 * between.choices[1];
    between.choices.clear();
    return range_of(between, std::clamp(now, between.lower, between.upper));
  }

  std::vector<double> values(const double* setting) const {
    const std::vector<double> knobs = evaluator_.knobs_for(setting);
    std::vector<double> own;
    for (design::KnobId id : problem_.statement.knobs) own.push_back(knobs[id.index]);
    return own;
  }

  const Problem& problem_;
  const sdk::Optimizer& optimizer_;
  Evaluator& evaluator_;
};

/// More combinations of choices than can all be tried, some of them steps of a value.
bool worth_relaxing(const Problem& problem, const Evaluator& evaluator) {
  std::size_t combinations = 1;
  bool any = false;
  for (std::size_t k = 0; k < evaluator.knob_count(); ++k) {
    const std::size_t choices = problem.design.knobs[problem.statement.knobs[k].index].choices.size();
    any |= evaluator.may_relax(k);
    // A knob without choices cannot be tried at all its values.
    combinations = choices == 0 || combinations > enumerable ? enumerable + 1 : combinations * choices;
  }
  return any && combinations > enumerable;
}

}  // namespace

std::vector<double> knobs_with(const Problem& problem, const std::vector<double>& setting) {
  std::vector<double> knobs = problem.others;
  for (std::size_t k = 0; k < setting.size(); ++k) knobs[problem.statement.knobs[k].index] = setting[k];
  return knobs;
}

Found search(const Problem& problem, const sdk::Optimizer& optimizer, std::size_t other_room) {
  Evaluator evaluator(problem);
  Asking asking(problem, optimizer, evaluator);
  Found found;
  std::vector<std::vector<double>> starts = problem.starts;
  for (std::vector<double>& match : matching_settings(problem)) starts.push_back(std::move(match));
  if (worth_relaxing(problem, evaluator)) {
    constexpr std::size_t tops = 5;
    evaluator.relax();
    if (asking.run(starts, tops, found)) {
      starts.push_back(found.setting);
      starts.insert(starts.end(), found.others.begin(), found.others.end());
    }
    evaluator.hold_to_choices();
  }
  found.found = asking.run(starts, other_room, found);
  if (!found.found) return found;
  const ledger::Ledger books = evaluator.whole_path().book(states_of(problem, {knobs_with(problem, found.setting)}));
  found.goal = worst_goal(problem, books);
  if (is_width(problem.statement.goal) && std::isnan(found.goal)) {
    found.found = false;
    found.failure = "at no setting is the SWR so low anywhere";
    return found;
  }
  for (const design::Requirement& requirement : problem.statement.keeping)
    found.kept.push_back(worst_kept(problem, requirement, books));
  found.swr = 1.0;
  for (double swr : pick(books.source.swr, goal_at(problem)))
    found.swr = std::isnan(swr) || std::isnan(found.swr) ? std::numeric_limits<double>::quiet_NaN() : std::max(found.swr, swr);
  return found;
}

}  // namespace wattfall::tune
