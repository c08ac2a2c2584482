// Checks that wait for the frequencies and the knobs: values that vary, at the ends of what they depend on; tables and
// measurements, against every frequency that the design asks for.
#include <algorithm>
#include <cmath>

#include "requests.hpp"

namespace wattfall::design {
namespace {

std::vector<std::vector<double>> corner_settings(const Design& design) {
  std::vector<double> lower, upper;
  for (const Knob& knob : design.knobs) {
    lower.push_back(knob.choices.empty() ? knob.lower : knob.choices.front());
    upper.push_back(knob.choices.empty() ? knob.upper : knob.choices.back());
  }
  return {design.starting_knobs(), lower, upper};
}

bool holds(const LateCheck& check, double frequency_hz, const std::vector<double>& setting, bool ends) {
  const auto value = check.value.at(frequency_hz, setting);
  if (!std::isfinite(value.real()) || !std::isfinite(value.imag())) return false;
  // At the ends of knobs zero will do where a main value must be above it: a bank of relays begins there.
  const bool at_zero = ends && value == 0.0 && check.rule.holds == rule::positive.holds;
  return at_zero || check.rule.holds(value);
}

void check_value(Bench& bench, const LateCheck& check, const std::vector<std::vector<double>>& settings) {
  const auto& points = bench.design.frequencies_hz;
  if (points.empty()) return;
  for (std::size_t i = 0; i < settings.size(); ++i)
    for (const double f : {points.front(), points[points.size() / 2], points.back()}) {
      if (holds(check, f, settings[i], i > 0)) continue;
      const auto value = check.value.at(f, settings[i]);
      bench.complaints.say("value-out-of-range", check.span,
                           "this comes to " + spell({value, check.dim}) + " at " + spell({f, dimension::frequency}) +
                               ": it " + check.rule.text);
      return;
    }
}

/// The lowest and highest frequency at which the design will be solved, and where that is asked.
std::pair<double, double> asked_range(const Design& design) {
  std::pair<double, double> range{design.frequencies_hz.front(), design.frequencies_hz.back()};
  const auto widen = [&](double f) {
    range.first = std::min(range.first, f);
    range.second = std::max(range.second, f);
  };
  for (const Tune& tune : design.tunes) {
    for (const double f : tune.at_hz) widen(f);
    if (tune.when == Tune::When::over && tune.over_hz.first > 0.0)
      widen(tune.over_hz.first), widen(tune.over_hz.second);
  }
  return range;
}

void check_data(Bench& bench, const DataRange& data, std::pair<double, double> asked) {
  constexpr double slack = 1e-9;
  const bool below = asked.first<data.lower_hz*(1.0 - slack), above = asked.second> data.upper_hz * (1.0 + slack);
  if (!below && !above) return;
  const auto hz = [](double f) { return spell({f, dimension::frequency}, 6); };
  auto& wrong = bench.complaints.say("outside-data", data.span,
                                     data.what + " goes from " + hz(data.lower_hz) + " to " + hz(data.upper_hz) +
                                         ", and the design asks for " + hz(below ? asked.first : asked.second));
  wrong.expected = "frequencies from " + hz(data.lower_hz) + " to " + hz(data.upper_hz);
}

}  // namespace

void check_late(Bench& bench) {
  const auto settings = corner_settings(bench.design);
  for (const LateCheck& check : bench.late_checks) check_value(bench, check, settings);
  for (const DataRange& data : bench.data_ranges) {
    auto& [lower, upper] = bench.design.data_hz;
    lower = std::max(lower, data.lower_hz);
    upper = std::min(upper, data.upper_hz);
  }
  if (bench.design.frequencies_hz.empty()) return;
  const auto asked = asked_range(bench.design);
  for (const DataRange& data : bench.data_ranges) check_data(bench, data, asked);
}

}  // namespace wattfall::design
