// The `tune` statements of a design carried out: for each, the settings of its knobs that an optimizer plugin finds best, and what an
// operator or builder wants to know of them beside.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "grammar/diagnostic.hpp"
#include "judge/judgement.hpp"
#include "plan/plan.hpp"
#include "wattfall/sdk.hpp"

namespace wattfall::tune {

/// A part and what it stands or takes.
struct Strain {
  std::string part;
  double value = 0.0;
};

/// What lies between two ends, at one of which or both the range that was looked over may simply end.
struct Between {
  double lower = std::numeric_limits<double>::quiet_NaN(), upper = lower;
  bool lower_open = false, upper_open = false;  ///< the bound was not passed up to there
};

/// How far something may move before the source's SWR passes a bound; none where it is past it already.
struct Leeway {
  double swr = 0.0;  ///< the bound
  std::optional<Between> range;
};

/// One setting and what it costs, at the worst of the frequencies it was searched for.
struct Match {
  std::vector<double> values;  ///< by the statement's knobs [SI]
  std::vector<bool> at_end;    ///< within 1e-6 of its range's end
  double load_w = 0.0, radiated_w = 0.0, returned_w = 0.0, heat_w = 0.0;  ///< averages; heat of the parts, not the loads' own
  double swr = 0.0;            ///< at the source; NaN where all comes back
  Strain volts_peak, amps_rms, hottest_w;  ///< the largest of any part; of a line, along it
  std::vector<Leeway> widths_hz;           ///< of the frequency, nothing retuned
};

/// How far one knob alone may be off [SI].
struct KnobLeeway {
  std::vector<Leeway> ranges;
};

/// What the load can get at the most, however the tuner is made.
struct Limit {
  std::string kind;       ///< "ideal parts", "bode-fano"
  double load_w = 0.0;    ///< into all loads, at the worst of the frequencies
  double reflection = 0.0;  ///< bode-fano: the least that its largest in the band can be; else NaN
  std::string text;       ///< a sentence
};

/// Settings of three knobs that all match: the knob that is held, and the ridge along it in its order.
struct Ridge {
  std::size_t held = 0;        ///< by the statement's knobs
  std::vector<Match> settings;
  std::size_t best = 0;        ///< the one that loses least
};

/// What one per cent more room would bring, to first order and with all other knobs following: beyond the end of its range that a knob stands at, or beyond
/// the bound of a demand of `keeping` that holds the goal back.
struct MoreRoom {
  std::optional<std::size_t> knob, demand;  ///< one of both: by the statement's knobs, by its `keeping`
  double gain = 0.0;                        ///< what the goal betters by, in its own unit
  std::string text;                         ///< a sentence
};

/// What was found by one search: at a frequency, or over several.
struct Search {
  std::size_t statement = 0;           ///< which of design.tunes
  std::vector<double> frequencies_hz;  ///< judged by the worst of them
  std::vector<Match> matches;          ///< the first is the setting taken; then other local bests, most power in the loads first
  std::string why;                     ///< what the first has over the second, in a sentence
  std::vector<KnobLeeway> knobs;       ///< of the setting taken, by the statement's knobs
  std::vector<Limit> limits;
  std::vector<MoreRoom> more_room;
  std::optional<Ridge> ridge;          ///< where three continuous knobs match one load: a spare degree of freedom
  bool all_tried = false;              ///< every setting there is was tried
  std::string certainty;               ///< "best of all settings" or "best found"
  std::string certain_why;             ///< how that is known, in a sentence
};

/// What was set, for every frequency of the design.
struct Tuning {
  std::vector<std::vector<double>> settings;  ///< [frequency][knob], in the order of design.frequencies_hz and design.knobs
  std::vector<judge::Warning> warnings;       ///< knobs at their ends, nothing that matches
  std::vector<Search> searches;               ///< of `at` and `over` all; of `at each frequency` the first, the middle and the last point's
  std::size_t evaluations = 0;
};

/// Carries out every tune statement, in the order of the text, with the optimizer. A goal that no setting reaches, or a `keeping` that no setting
/// keeps, is a diagnostic (Fault::numeric) with the best that was found. `over A to B` judges by the sweep's points inside and both ends.
Result<Tuning> tune(const design::Design& design, const graph::Network& network, const plan::Plan& plan,
                    const sdk::Optimizer* optimizer);

}  // namespace wattfall::tune
