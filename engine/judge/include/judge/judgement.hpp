// What the books mean for what was asked: each requirement met or not, each rating kept or not, and warnings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/design.hpp"
#include "ledger/ledger.hpp"

namespace wattfall::judge {

struct Warning {
  std::string code;  ///< "rating-volts", "knob-at-end", "no-match", "residual", ...
  std::string text;  ///< a whole sentence with its figures
  std::string part;  ///< or knob; empty for the whole
  std::optional<double> frequency_hz;
};

/// A part's worst against its limit.
struct Rating {
  design::PartId part;
  char unit = 'V';  ///< V peak, A rms, W average, M: W/m average at the worst place of a line
  double limit = 0.0, worst = 0.0, worst_at_hz = 0.0;
  bool kept() const { return worst <= limit; }
  /// "V", "A", "W", "W/m".
  std::string unit_name() const { return unit == 'M' ? "W/m" : std::string(1, unit); }
  bool of_heat() const { return unit == 'W' || unit == 'M'; }
};

struct Verdict {
  const design::Requirement* requirement = nullptr;
  bool met = false;
  double worst = 0.0;        ///< the figure where it is worst; NaN where it does not exist
  double worst_at_hz = 0.0;
};

struct Judgement {
  std::vector<Verdict> verdicts;
  std::vector<Rating> ratings;
  std::vector<Warning> warnings;
  bool all_met() const {
    for (const Verdict& verdict : verdicts)
      if (!verdict.met) return false;
    return true;
  }
};

}  // namespace wattfall::judge
