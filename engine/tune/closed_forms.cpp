// Where two or three reactances match, by hand: see straight.hpp.
#include <algorithm>
#include <cmath>

#include "source_side.hpp"
#include "straight.hpp"

namespace wattfall::tune {
namespace {

using Complex = Straight::Complex;
using design::FigureKind;

/// Values at which one of three knobs is held, in equal ratios over its range.
constexpr std::size_t held_values = 9;

/// A place in shares of two knobs' ranges.
struct Place {
  double t = 0.0, u = 0.0;
  bool matches = false;
};

/// A function that is straight in two knobs.
struct Pair {
  Complex f00, f10, f01, f11;

  /// Where it is 0 within the ranges; and on each of their ends, where it is least.
  std::vector<Place> places() const {
    std::vector<Place> found;
    // a + b t + (c + d t) u = 0, t and u real: then Im[(a + b t) conj(c + d t)] = 0, a square equation in t.
    const Complex a = f00, b = f10 - f00, c = f01 - f00, d = f11 - f10 - f01 + f00;
    const double q0 = (a * std::conj(c)).imag(), q1 = (a * std::conj(d) + b * std::conj(c)).imag(), q2 = (b * std::conj(d)).imag();
    const double under = q1 * q1 - 4.0 * q2 * q0;
    if (under >= 0.0) {
      const double q = -0.5 * (q1 + std::copysign(std::sqrt(under), q1));
      for (double t : {q / q2, q0 / q}) {
        const double u = -((a + b * t) * std::conj(c + d * t)).real() / std::norm(c + d * t);
        if (t >= 0.0 && t <= 1.0 && u >= 0.0 && u <= 1.0) found.push_back({t, u, true});
      }
    }
    for (double end : {0.0, 1.0}) {
      found.push_back({end, least(a + b * end, c + d * end)});
      found.push_back({least(a + c * end, b + d * end), end});
    }
    return found;
  }

  /// The x from 0 to 1 at which p + q x is least.
  static double least(Complex p, Complex q) {
    const double x = -(p * std::conj(q)).real() / std::norm(q);
    return std::isfinite(x) ? std::clamp(x, 0.0, 1.0) : 0.0;
  }
};

/// What counts as no reflection: a conjugate match for powers, the reference for an SWR.
std::optional<Complex> match_asked(const Problem& problem) {
  const design::Figure& goal = problem.statement.goal;
  const design::Source& source = problem.design.source;
  const double hertz = problem.frequencies_hz.front();
  const Complex own = source.impedance_ohm.at(hertz, problem.others);
  switch (goal.kind) {
    case FigureKind::power_into:
    case FigureKind::radiated_from:
    case FigureKind::efficiency: return problem.statement.most ? std::optional(own) : std::nullopt;
    case FigureKind::total_loss: return problem.statement.most ? std::nullopt : std::optional(own);
    case FigureKind::swr_at:
    case FigureKind::return_loss_at: break;
    default: return std::nullopt;
  }
  if (goal.look.node != source.node || problem.statement.most != (goal.kind == FigureKind::return_loss_at)) return std::nullopt;
  return reference_of(goal, source, hertz, problem.others);
}

}  // namespace

std::vector<std::vector<double>> matching_settings(const Problem& problem) {
  const std::size_t n = problem.statement.knobs.size();
  if ((n != 2 && n != 3) || problem.frequencies_hz.size() != 1) return {};
  const auto reference = match_asked(problem);
  Straight straight(problem, problem.frequencies_hz.front());
  std::string why_not;
  if (!reference || !straight.make(why_not)) return {};
  const auto knob = [&](std::size_t k) -> const design::Knob& { return problem.design.knobs[problem.statement.knobs[k].index]; };
  const auto value = [&](std::size_t k, double t) { return std::clamp(knob(k).lower + t * (knob(k).upper - knob(k).lower), knob(k).lower, knob(k).upper); };
  const Straight::Corners back = straight.back(*reference);
  std::vector<std::vector<double>> settings;
  bool any = false;
  if (n == 2)
    for (const Place& place : Pair{back[0], back[1], back[2], back[3]}.places()) {
      settings.push_back({value(0, place.t), value(1, place.u)});
      any |= place.matches;
    }
  for (std::size_t held = 0; held < 3 && n == 3; ++held) {
    if (!(knob(held).lower > 0.0)) continue;
    const std::size_t first = held == 0 ? 1 : 0, second = held == 2 ? 1 : 2;
    for (std::size_t i = 0; i < held_values; ++i) {
      const double lower = knob(held).lower, upper = knob(held).upper;
      const double stands = std::min(upper, lower * std::pow(upper / lower, double(i) / double(held_values - 1))), share = (stands - lower) / (upper - lower);
      const auto at = [&](std::size_t corner) { return back[corner] * (1.0 - share) + back[corner | std::size_t{1} << held] * share; };
      const std::size_t a = std::size_t{1} << first, b = std::size_t{1} << second;
      for (const Place& place : Pair{at(0), at(a), at(b), at(a | b)}.places()) {
        std::vector<double> setting(3);
        setting[held] = stands;
        setting[first] = value(first, place.t);
        setting[second] = value(second, place.u);
        any |= place.matches;
        settings.push_back(std::move(setting));
      }
    }
  }
  // Where nothing matches, they say little.
  return any ? settings : std::vector<std::vector<double>>{};
}

}  // namespace wattfall::tune
