#include "ratings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "grammar/quantity.hpp"
#include "judge/figures.hpp"
#include "judge/judge.hpp"
#include "ledger/book.hpp"
#include "solve/solve.hpp"

namespace wattfall::tune {
namespace {

/// Ratings are kept up to this, so that none is broken by the last digit.
constexpr double just_inside = 1.0 - 1e-9;

bool has_rating(const design::Part& part) {
  return part.limits.volts_peak || part.limits.amps_rms || part.limits.watts;
}

bool is_line(const ledger::Ledger& books, design::PartId part) {
  return std::any_of(books.parts.begin(), books.parts.end(),
                     [&](const ledger::PartBook& book) { return book.part == part && !book.volts_peak_along.empty(); });
}

BrokenRating broken(const design::Design& design, const judge::Rating& rating, bool line) {
  using enum design::FigureKind;
  const std::string& name = design.parts[rating.part.index].name;
  design::Requirement kept;
  kept.figure.part = rating.part;
  kept.value = rating.limit * just_inside;
  const char* what = "";
  switch (rating.unit) {
    case 'V':
      kept.figure.kind = line ? peak_volts_on : peak_volts_across;
      kept.figure.text = std::string(line ? "peak volts on " : "peak volts across ") + name;
      what = " peak";
      break;
    case 'A':
      kept.figure.kind = line ? rms_amps_on : rms_amps_through;
      kept.figure.text = std::string(line ? "rms amps on " : "rms amps through ") + name;
      what = " rms";
      break;
    default:
      // The rating is of the average; figures are those of the whole power.
      kept.figure.kind = heat_in;
      kept.figure.text = "heat in " + name;
      kept.value /= design.source.duty;
      what = " of heat";
  }
  const auto spelled = [&](double value, int digits) {
    const Dimension dim = rating.unit == 'V' ? dimension::voltage : rating.unit == 'A' ? dimension::current : dimension::power;
    return spell({value, dim}, digits);
  };
  // One that is broken by a hair shows it.
  const std::string limit = spelled(rating.limit, 3);
  const std::string takes = spelled(rating.worst, 3) == limit ? spelled(rating.worst, 6) : spelled(rating.worst, 3);
  const double share = power_ratio(kept.figure, rating.limit / rating.worst);
  return {std::move(kept), share, fmt::format("{} takes {}{}, and is rated for {}", name, takes, what, limit)};
}

/// The statement's knobs somewhere else in their ranges, each trial and knob elsewhere.
std::vector<double> elsewhere(const Problem& problem, std::size_t trial) {
  std::vector<double> setting;
  for (std::size_t k = 0; k < problem.statement.knobs.size(); ++k) {
    const design::Knob& knob = problem.design.knobs[problem.statement.knobs[k].index];
    const double place = std::fmod(0.13 + 0.618 * double(trial) + 0.371 * double(k), 1.0);
    if (!knob.choices.empty())
      setting.push_back(knob.choices[static_cast<std::size_t>(place * double(knob.choices.size()))]);
    else
      setting.push_back(knob.lower > 0.0 ? knob.lower * std::pow(knob.upper / knob.lower, place)
                                         : knob.lower + place * (knob.upper - knob.lower));
  }
  return setting;
}

/// The whole network's, of settings of the statement's knobs, each at all frequencies where the goal is judged.
ledger::Ledger books_of(const Problem& problem, const std::vector<std::vector<double>>& settings) {
  solve::States states;
  states.knob_count = problem.others.size();
  for (const std::vector<double>& setting : settings) {
    const std::vector<double> knobs = knobs_with(problem, setting);
    for (double hertz : problem.frequencies_hz) states.add(hertz, knobs);
  }
  return ledger::book(problem.design, problem.network,
                      solve::solve(problem.design, problem.network, problem.plan, states), {});
}

}  // namespace

double power_ratio(const design::Figure& figure, double strain_ratio) {
  return figure.kind == design::FigureKind::heat_in ? strain_ratio : strain_ratio * strain_ratio;
}

double strain_ratio(const design::Figure& figure, double power_ratio) {
  return figure.kind == design::FigureKind::heat_in ? power_ratio : std::sqrt(power_ratio);
}

bool follows_power(const Problem& problem, const std::vector<double>& setting, const BrokenRating& rating) {
  constexpr std::size_t trials = 4;
  constexpr double same = 1e-7, least_share = 1e-9;
  const std::size_t each = problem.frequencies_hz.size();
  std::vector<std::vector<double>> settings{setting};
  for (std::size_t trial = 1; trial <= trials; ++trial) settings.push_back(elsewhere(problem, trial));
  const ledger::Ledger books = books_of(problem, settings);
  const auto strain_of_power = [&](std::size_t state) {
    const double strain = judge::figure_in_state(rating.kept.figure, problem.design, books, state);
    return power_ratio(rating.kept.figure, strain) / books.totals.absorbed_w[state];
  };
  std::size_t compared = 0;
  for (std::size_t state = each; state < settings.size() * each; ++state) {
    // Where next to nothing arrives, what does is rounding.
    if (!(books.totals.absorbed_w[state] > least_share * books.totals.available_w[state])) continue;
    const double was = strain_of_power(state % each);
    if (!(std::abs(strain_of_power(state) - was) <= same * was)) return false;
    ++compared;
  }
  return compared > 0;
}

bool has_ratings(const design::Design& design) { return std::any_of(design.parts.begin(), design.parts.end(), has_rating); }

std::vector<BrokenRating> broken_ratings(const Problem& problem, const std::vector<double>& setting) {
  const ledger::Ledger books = books_of(problem, {setting});
  std::vector<BrokenRating> all;
  for (const judge::Rating& rating : judge::ratings_of(problem.design, books))
    if (!rating.kept() && rating.unit != 'M') all.push_back(broken(problem.design, rating, is_line(books, rating.part)));
  return all;
}

}  // namespace wattfall::tune
