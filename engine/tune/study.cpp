#include "study.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <functional>

#include "grammar/quantity.hpp"
#include "ledger/book.hpp"
#include "ledger/swr.hpp"
#include "solve/solve.hpp"

namespace wattfall::tune {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// Common practice, no source: up to 1.5 a rig gives its whole power, at 2 most begin to hold back.
constexpr double bounds[] = {1.5, 2.0};

/// Settings with less than this share of the best one's power are no matches.
constexpr double worth_showing = 0.25;
constexpr std::size_t most_matches = 8;

/// Distances looked at along a path, as shares of it, in equal ratios; then each bracket is parted so often into so many.
constexpr std::size_t paces = 56, parts = 8;
constexpr double first_pace = 1e-9;
constexpr int refinements = 6;

/// SWR at places along a path from a setting or frequency, 0 there and 1 at its far end.
using Along = std::function<std::vector<double>(const std::vector<double>& places)>;

struct Crossing {
  double place = 1.0;
  bool open = true;  ///< the bound is not passed up to the far end
};

/// Where the SWR first passes the bound; a second crossing inside one pace is not seen.
Crossing crossing(const Along& swr_along, double bound) {
  std::vector<double> places;
  for (std::size_t i = 0; i < paces; ++i) places.push_back(std::pow(first_pace, 1.0 - double(i) / double(paces - 1)));
  double low = 0.0, high = 1.0;
  bool passed = false;
  for (int round = 0; round <= refinements; ++round) {
    const std::vector<double> swr = swr_along(places);
    const auto over = std::find_if(swr.begin(), swr.end(), [&](double value) { return !(value <= bound); });
    if (over == swr.end() && !passed) return {};
    const auto i = static_cast<std::size_t>(over - swr.begin());
    if (over != swr.end()) high = places[i];
    if (i > 0) low = places[i - 1];
    passed = true;
    places.clear();
    for (std::size_t p = 1; p <= parts; ++p) places.push_back(low + (high - low) * double(p) / double(parts));
  }
  return {low, false};
}

/// The steps of a knob of choices, from where it stands outwards.
std::vector<double> outwards(const design::Knob& knob, double value, bool up) {
  constexpr std::size_t most_steps = 256;
  std::vector<double> steps;
  if (up) {
    for (double choice : knob.choices)
      if (choice > value) steps.push_back(choice);
  } else {
    for (auto choice = knob.choices.rbegin(); choice != knob.choices.rend(); ++choice)
      if (*choice < value) steps.push_back(*choice);
  }
  steps.resize(std::min(steps.size(), most_steps));
  return steps;
}

class Study {
 public:
  Study(const Problem& problem, const Found& found)
      : problem_(problem), found_(found), solver_(problem.design, problem.network, problem.plan) {}

  void run(Search& search) {
    search.matches.push_back(match(found_.setting));
    for (const std::vector<double>& other : found_.others) {
      Match one = match(other);
      if (one.load_w >= worth_showing * search.matches.front().load_w) search.matches.push_back(std::move(one));
    }
    // The optimizer's own best stays first, whatever the goal was.
    std::stable_sort(search.matches.begin() + 1, search.matches.end(), [](const Match& a, const Match& b) { return a.load_w > b.load_w; });
    if (search.matches.size() > most_matches) search.matches.resize(most_matches);
    search.why = why(search.matches);
    for (std::size_t k = 0; k < found_.setting.size(); ++k) search.knobs.push_back(leeway_of(k));
  }

  Match match(const std::vector<double>& setting) {
    Match one{.values = setting};
    for (std::size_t k = 0; k < setting.size(); ++k) {
      const double lower = knob(k).choices.empty() ? knob(k).lower : knob(k).choices.front();
      const double upper = knob(k).choices.empty() ? knob(k).upper : knob(k).choices.back();
      one.at_end.push_back(stands_at(setting[k], lower) || stands_at(setting[k], upper));
    }
    const std::vector<double> knobs = knobs_with(problem_, setting);
    fill(one, books_at(knobs));
    for (double bound : bounds) one.widths_hz.push_back(width(knobs, bound));
    return one;
  }

  /// Power into all loads, the least over the frequencies.
  double load_w(const std::vector<double>& setting) {
    return least(books_at(knobs_with(problem_, setting)).totals.absorbed_w);
  }

 private:
  /// The books of one setting of the design's knobs at the search's frequencies.
  ledger::Ledger books_at(const std::vector<double>& knobs) {
    solve::States states;
    states.knob_count = knobs.size();
    for (double hertz : problem_.frequencies_hz) states.add(hertz, knobs);
    solver_.run(states, solution_);
    return ledger::book(problem_.design, problem_.network, solution_, {});
  }

  /// SWR of what the source sees, without the books of all else, at given settings of the design's knobs, one after the
  /// other (states x knobs), each at its frequency; NaN for total reflection.
  std::vector<double> source_swr(const std::vector<double>& frequencies_hz, const std::vector<double>& knobs) {
    const std::size_t width = problem_.others.size();
    solve::States states;
    states.knob_count = width;
    for (std::size_t i = 0; i < frequencies_hz.size(); ++i)
      states.add(frequencies_hz[i], {knobs.data() + i * width, width});
    solver_.run(states, solution_, solve::Keep::figures);
    const design::Source& source = problem_.design.source;
    std::vector<double> all;
    for (std::size_t s = 0; s < states.size(); ++s) {
      const std::complex<double> reference = source.reference_at(frequencies_hz[s], states.knobs_at(s));
      const std::complex<double> volts = solution_.source_volts[s], amps = solution_.source_amps[s];
      all.push_back(ledger::swr_of(std::abs((volts - std::conj(reference) * amps) / (volts + reference * amps))));
    }
    return all;
  }

  const design::Knob& knob(std::size_t k) const { return problem_.design.knobs[problem_.statement.knobs[k].index]; }

  static double least(const ledger::Series& series) { return *std::min_element(series.begin(), series.end()); }
  static double most(const ledger::Series& series) { return *std::max_element(series.begin(), series.end()); }

  static void take(Strain& strain, const std::string& part, const ledger::Series& series) {
    const double value = most(series);
    if (ledger::exceeds(value, strain.value)) strain = {part, value};
  }

  /// The worst over the frequencies of each figure by itself.
  void fill(Match& one, const ledger::Ledger& ledger) const {
    one.load_w = least(ledger.totals.absorbed_w);
    one.radiated_w = least(ledger.totals.radiated_w);
    one.returned_w = most(ledger.totals.returned_w);
    one.heat_w = most(ledger.totals.heat_w);
    one.swr = 1.0;
    for (double swr : ledger.source.swr) one.swr = std::isnan(swr) || std::isnan(one.swr) ? none : std::max(one.swr, swr);
    for (const ledger::PartBook& book : ledger.parts) {
      const std::string& name = problem_.design.parts[book.part.index].name;
      take(one.volts_peak, name, book.volts_peak_along.empty() ? book.volts_peak : book.volts_peak_along);
      take(one.amps_rms, name, book.amps_rms_along.empty() ? book.amps_rms : book.amps_rms_along);
      take(one.hottest_w, name, book.heat_w);
    }
  }

  /// Around the middle of the frequencies; an octave either way, and no farther than tables and measurements go.
  Leeway width(const std::vector<double>& knobs, double bound) {
    const double middle = problem_.frequencies_hz[problem_.frequencies_hz.size() / 2];
    Leeway leeway{bound, {}};
    if (!(source_swr({middle}, knobs).front() <= bound)) return leeway;
    Between between;
    const auto edge = [&](double end, double& place, bool& open) {
      if (!(end != middle)) return void((place = middle, open = true));
      const Crossing found = crossing(
          [&](const std::vector<double>& places) {
            std::vector<double> hertz, all;
            for (double at : places) {
              hertz.push_back(middle + at * (end - middle));
              all.insert(all.end(), knobs.begin(), knobs.end());
            }
            return source_swr(hertz, all);
          },
          bound);
      place = middle + found.place * (end - middle);
      open = found.open;
    };
    edge(std::max(0.5 * middle, std::min(middle, problem_.design.data_hz.first)), between.lower, between.lower_open);
    edge(std::min(2.0 * middle, std::max(middle, problem_.design.data_hz.second)), between.upper, between.upper_open);
    leeway.range = between;
    return leeway;
  }

  KnobLeeway leeway_of(std::size_t k) {
    KnobLeeway leeway;
    for (double bound : bounds) {
      leeway.ranges.push_back({bound, {}});
      if (!(worst_swr_at(k, {found_.setting[k]}).front() <= bound)) continue;
      Between between;
      walk(k, false, bound, between.lower, between.lower_open);
      walk(k, true, bound, between.upper, between.upper_open);
      leeway.ranges.back().range = between;
    }
    return leeway;
  }

  void walk(std::size_t k, bool up, double bound, double& value, bool& open) {
    const double start = found_.setting[k];
    value = start;
    open = true;
    if (knob(k).choices.empty()) {
      const double end = up ? knob(k).upper : knob(k).lower;
      if (end == start) return;
      const Crossing found = crossing(
          [&](const std::vector<double>& places) {
            std::vector<double> values;
            for (double at : places) values.push_back(start + at * (end - start));
            return worst_swr_at(k, values);
          },
          bound);
      value = start + found.place * (end - start);
      open = found.open;
      return;
    }
    const std::vector<double> steps = outwards(knob(k), start, up);
    const std::vector<double> swr = worst_swr_at(k, steps);
    for (std::size_t i = 0; i < steps.size() && open; ++i) {
      open = swr[i] <= bound;
      if (open) value = steps[i];
    }
  }

  /// Of the search's frequencies the worst, one knob moved.
  std::vector<double> worst_swr_at(std::size_t k, const std::vector<double>& values) {
    std::vector<double> hertz, all;
    std::vector<double> knobs = knobs_with(problem_, found_.setting);
    for (double value : values)
      for (double f : problem_.frequencies_hz) {
        knobs[problem_.statement.knobs[k].index] = value;
        all.insert(all.end(), knobs.begin(), knobs.end());
        hertz.push_back(f);
      }
    const std::vector<double> swr = hertz.empty() ? hertz : source_swr(hertz, all);
    std::vector<double> worst;
    const std::size_t each = problem_.frequencies_hz.size();
    for (std::size_t i = 0; i < values.size(); ++i) {
      worst.push_back(1.0);
      for (std::size_t f = 0; f < each; ++f)
        worst.back() = std::isnan(swr[i * each + f]) || std::isnan(worst.back()) ? none : std::max(worst.back(), swr[i * each + f]);
    }
    return worst;
  }

  /// What to tell two settings of one power apart by: the volts, or, where these are alike, the width in frequency.
  static std::string choose_by(const Match& a, const Match& b) {
    constexpr double alike = 0.05;
    const double volts[] = {a.volts_peak.value, b.volts_peak.value};
    const auto spelled = [](double value, Dimension what) { return spell({value, what}, 3); };
    if (std::abs(volts[0] - volts[1]) > alike * std::max(volts[0], volts[1]))
      return fmt::format("choose by the volts, {} against {}", spelled(volts[0], dimension::voltage), spelled(volts[1], dimension::voltage));
    const auto &first = a.widths_hz.front().range, &second = b.widths_hz.front().range;
    if (!first || !second) return "nor do their volts tell them apart";
    const double widths[] = {first->upper - first->lower, second->upper - second->lower};
    const bool open = first->lower_open || first->upper_open || second->lower_open || second->upper_open;
    if (open || std::abs(widths[0] - widths[1]) <= alike * std::max(widths[0], widths[1])) return "nor do volts or width tell them apart";
    return fmt::format("choose by the width, an SWR below {:g} over {} against {}", a.widths_hz.front().swr, spelled(widths[0], dimension::frequency),
                       spelled(widths[1], dimension::frequency));
  }

  static std::string why(const std::vector<Match>& matches) {
    if (matches.size() < 2) return "no other setting was found that matches";
    const Match &a = matches[0], &b = matches[1];
    const double more = a.load_w - b.load_w, cooler = b.heat_w - a.heat_w, back = b.returned_w - a.returned_w;
    const auto watts = [](double value) { return spell({std::abs(value), dimension::power}, 3); };
    if (std::abs(more) < 1e-3 * a.load_w) return "the first and the second bring the same power to within 0.1 %: " + choose_by(a, b);
    std::string text =
        fmt::format("the first brings {} {} than the second: ", watts(more), more > 0.0 ? "more" : "less");
    std::string why;
    if (std::abs(cooler) > 1e-3 * std::abs(more))
      why = fmt::format("it loses {} {} in the parts", watts(cooler), cooler > 0.0 ? "less" : "more");
    if (std::abs(back) > 0.1 * std::abs(more))
      why += fmt::format("{}{} {} comes back", why.empty() ? "" : ", and ", watts(back), back > 0.0 ? "less" : "more");
    text += why;
    if (cooler > 0.0 && !b.hottest_w.part.empty())
      text += fmt::format("; the second's hottest, {}, takes {}", b.hottest_w.part, watts(b.hottest_w.value));
    return text;
  }

  const Problem& problem_;
  const Found& found_;
  solve::Solver solver_;
  solve::Solution solution_;
};

}  // namespace

std::vector<Match> matches_at(const Problem& problem, const std::vector<std::vector<double>>& settings) {
  const Found found;
  Study study(problem, found);
  std::vector<Match> matches;
  for (const std::vector<double>& setting : settings) matches.push_back(study.match(setting));
  return matches;
}

double load_w_at(const Problem& problem, const std::vector<double>& setting) {
  const Found found;
  return Study(problem, found).load_w(setting);
}

void study(const Problem& problem, const Found& found, Search& search) { Study(problem, found).run(search); }

}  // namespace wattfall::tune
