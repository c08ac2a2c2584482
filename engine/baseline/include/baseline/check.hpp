// A design against what is required of it, what its parts stand, and what it was.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "baseline/baseline.hpp"
#include "report/document.hpp"

namespace wattfall::baseline {

/// A figure now, beside what it was.
struct HeldFigure {
  enum class State { kept, worse, better, fresh, gone };
  Figure now;           ///< of one that is gone: as it was, without a value
  double before = 0.0;  ///< NaN where it did not exist
  State state = State::kept;
  /// (now - before)/|before|; NaN where that does not exist.
  double change() const;
};

/// Something that breaks the check.
struct Break {
  enum class Kind { requirement, rating, baseline };
  Kind kind = Kind::requirement;
  std::string figure, unit;
  std::optional<double> before;  ///< none where no baseline has it
  double after = 0.0;
  double at_hz = 0.0;
  double limit = 0.0;  ///< the requirement's or rating's; a baseline's: the worst value that it lets pass
  std::string text;    ///< a sentence
  int line = 0;        ///< 0 where it stands in no line
};

/// Something that is asked of a design whatever it was before: a requirement, or a rating.
struct Asked {
  bool rating = false;
  std::string text;  ///< "swr at desk below 1.5"; "wires stand at most 1.2 kV peak"
  std::string said;  ///< why it is not kept; empty where it is
};

/// A fact that is not what it was. `before` or `after` is empty where the part or the fact is new or gone.
struct Change {
  std::string part, kind, what;
  std::optional<std::string> before, after;
  std::string file;    ///< where it stands now; empty where it is gone
  int line = 0, column = 0;
  std::string statement;
};

struct VariantCheck {
  std::optional<std::string> name;
  bool held = false;  ///< the baseline has it
  std::vector<HeldFigure> figures;
  std::vector<Break> breaks;
  std::vector<Asked> asked;  ///< requirements in the order of the text, then ratings
};

struct DesignCheck {
  enum class State { missing, held, accepted };
  std::string file, title, baseline_path;
  State baseline = State::missing;
  std::size_t met = 0, of = 0, ratings = 0, ratings_broken = 0;
  std::vector<VariantCheck> variants;
  std::vector<Change> changes;  ///< what is not as the baseline has it, each once
  bool compared = false;        ///< a variant is in both, so that parts could be held against each other
  bool passes() const;
};

/// `was` is none where there is no baseline. `one_variant`: the others were not asked for, and are not missed.
DesignCheck check(const std::vector<report::VariantResult>& results, const std::optional<Baseline>& was,
                  bool one_variant, const report::SetAsides& set_aside = {});

/// Whether `now` is farther on the wrong side than `before` by more than the tolerance lets it; a figure that no longer exists is.
/// Beside the tolerance, 1e-4 dB and 1e-9 of other figures are let pass: rounding of the tuner's search.
bool is_worse(const Figure& now, double before, double tolerance);

}  // namespace wattfall::baseline
