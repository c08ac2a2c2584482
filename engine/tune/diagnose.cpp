#include "diagnose.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <complex>

#include "grammar/quantity.hpp"
#include "solve/solve.hpp"

namespace wattfall::tune {
namespace {

using Complex = std::complex<double>;

constexpr std::size_t places = 7;
/// Of the range: small against any resonance that a range of a few nepers can hold, large against rounding.
constexpr double nudge = 1e-5;
/// A response below this share of the volts themselves is rounding; two within this share of each other are alike.
constexpr double no_effect = 1e-9, alike = 0.02;

/// How the source's volts and those of every load change with each knob, at one setting; over the source's own volts.
using Slopes = std::vector<std::vector<Complex>>;

class Oddities {
 public:
  Oddities(const Problem& problem, const Found& found) : problem_(problem), found_(found) {
    for (std::size_t p = 0; p < problem.design.parts.size(); ++p)
      if (design::is_load(problem.design.parts[p])) loads_.push_back(problem.network.elements_of(design::PartId{static_cast<int>(p)}).front());
  }

  std::vector<judge::Warning> run() {
    std::vector<Slopes> all;
    for (std::size_t place = 0; place < places; ++place) all.push_back(slopes(setting(place)));
    std::vector<judge::Warning> warnings;
    const std::size_t knobs = found_.setting.size();
    std::vector<bool> idle(knobs, false);
    for (std::size_t k = 0; k < knobs; ++k) {
      if (!moves(k)) continue;
      idle[k] = std::all_of(all.begin(), all.end(), [&](const Slopes& s) { return size(s[k]) < no_effect; });
      if (idle[k]) warnings.push_back(without_effect(k));
    }
    for (std::size_t a = 0; a < knobs; ++a)
      for (std::size_t b = a + 1; b < knobs; ++b) {
        if (!moves(a) || !moves(b) || idle[a] || idle[b]) continue;
        if (std::all_of(all.begin(), all.end(), [&](const Slopes& s) { return parallel(s[a], s[b]); })) warnings.push_back(do_the_same(a, b));
      }
    return warnings;
  }

 private:
  const design::Knob& knob(std::size_t k) const { return problem_.design.knobs[problem_.statement.knobs[k].index]; }
  double hertz() const { return problem_.frequencies_hz[problem_.frequencies_hz.size() / 2]; }
  double lower(std::size_t k) const { return knob(k).choices.empty() ? knob(k).lower : knob(k).choices.front(); }
  double upper(std::size_t k) const { return knob(k).choices.empty() ? knob(k).upper : knob(k).choices.back(); }

  /// Knobs whose values may be read between: not those of plain numbers, which may be switches.
  bool moves(std::size_t k) const { return (knob(k).choices.empty() || knob(k).choices.size() > 6) && upper(k) > lower(k) && !(knob(k).dim == dimension::number && !knob(k).choices.empty()); }

  /// The setting found, then others spread over the ranges by multiples of irrational numbers.
  std::vector<double> setting(std::size_t place) const {
    std::vector<double> knobs = problem_.others;
    for (std::size_t k = 0; k < found_.setting.size(); ++k) {
      double value = found_.setting[k];
      const double share = std::fmod(double(place) * std::sqrt(double(k * k + k) + 2.0), 1.0);
      if (place > 0 && moves(k)) value = lower(k) + share * (upper(k) - lower(k));
      knobs[problem_.statement.knobs[k].index] = value;
    }
    return knobs;
  }

  Slopes slopes(const std::vector<double>& setting) const {
    solve::States states;
    states.knob_count = setting.size();
    for (std::size_t k = 0; k < found_.setting.size(); ++k)
      for (const double side : {-1.0, 1.0}) {
        std::vector<double> moved = setting;
        double& value = moved[problem_.statement.knobs[k].index];
        const double step = nudge * (upper(k) - lower(k));
        if (moves(k)) value = std::clamp(value, lower(k) + step, upper(k) - step) + side * step;
        states.add(hertz(), moved);
      }
    const solve::Solution solution = solve::solve(problem_.design, problem_.network, problem_.plan, states);
    Slopes all(found_.setting.size());
    for (std::size_t k = 0; k < all.size(); ++k) {
      const std::size_t low = 2 * k, high = low + 1;
      const double scale = std::abs(solution.source_volts[low]) + std::abs(50.0 * solution.source_amps[low]);
      all[k].push_back((solution.source_volts[high] - solution.source_volts[low]) / scale);
      for (const int e : loads_) {
        const auto& ends = problem_.network.elements[e].node;
        const auto volts = [&](std::size_t s) { return solution.volts[ends[0]][s] - solution.volts[ends[1]][s]; };
        all[k].push_back((volts(high) - volts(low)) / scale);
      }
    }
    return all;
  }

  static double size(const std::vector<Complex>& slope) {
    double sum = 0.0;
    for (const Complex& number : slope) sum += std::norm(number);
    return std::sqrt(sum);
  }

  /// b is a real multiple of a: a little more of the one is so much less of the other.
  static bool parallel(const std::vector<Complex>& a, const std::vector<Complex>& b) {
    double both = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) both += (a[i] * std::conj(b[i])).real();
    const double across = size(a), along = size(b);
    if (!(across > no_effect) || !(along > no_effect)) return false;
    const double cosine = both / (across * along);
    return cosine * cosine >= 1.0 - alike * alike;
  }

  judge::Warning without_effect(std::size_t k) const {
    return {"knob-without-effect",
            fmt::format("{} changes nothing that the rig or a load would feel at {}: any of its values does as well", knob(k).name,
                        spell({hertz(), dimension::frequency}, 7)),
            knob(k).name, hertz()};
  }
  judge::Warning do_the_same(std::size_t a, std::size_t b) const {
    return {"knobs-alike",
            fmt::format("{} and {} do the same: what one gives can be taken by the other, so one of many equal settings was picked", knob(a).name, knob(b).name),
            knob(b).name, hertz()};
  }

  const Problem& problem_;
  const Found& found_;
  std::vector<int> loads_;
};

}  // namespace

std::vector<judge::Warning> odd_knobs(const Problem& problem, const Found& found) { return Oddities(problem, found).run(); }

}  // namespace wattfall::tune
