// The `tune` statements of a design carried out: for each, the settings of its knobs that an optimizer plugin finds best.
#pragma once

#include <string>
#include <vector>

#include "grammar/diagnostic.hpp"
#include "judge/judgement.hpp"
#include "plan/plan.hpp"
#include "wattfall/sdk.hpp"

namespace wattfall::tune {

/// What was set, for every frequency of the design.
struct Tuning {
  std::vector<std::vector<double>> settings;  ///< [frequency][knob], in the order of design.frequencies_hz and design.knobs
  std::vector<judge::Warning> warnings;       ///< knobs at their ends, nothing that matches
  std::size_t evaluations = 0;
};

/// Carries out every tune statement, in the order of the text, with the optimizer. A goal that no setting reaches, or a `keeping` that no setting
/// keeps, is a diagnostic (Fault::numeric) with the best that was found. `over A to B` judges by the sweep's points inside and both ends.
Result<Tuning> tune(const design::Design& design, const graph::Network& network, const plan::Plan& plan,
                    const sdk::Optimizer* optimizer);

}  // namespace wattfall::tune
