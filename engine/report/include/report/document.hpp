// The result document (JSON, schema 1): every number that any report shows, in SI units said in the keys. Writers turn it into
// text, CSV and pages; none of them computes.
#pragma once

#include <string>
#include <vector>

#include "design/design.hpp"
#include "host/registry.hpp"
#include "judge/judgement.hpp"
#include "ledger/ledger.hpp"
#include "ledger/sample_line.hpp"
#include "tune/tune.hpp"

namespace wattfall::report {

/// One knob's values, over the frequencies.
struct Setting {
  design::KnobId knob;
  std::vector<double> values;       ///< [SI]
  std::vector<bool> at_end;         ///< within 1e-6 of its range's end
};

/// What became of one variant. Pointers are to what the run owns.
struct VariantResult {
  const design::Design* design = nullptr;
  bool tuned = false;
  const ledger::Ledger* ledger = nullptr;
  std::vector<Setting> settings;
  /// All knobs at one of the frequencies, in the design's order.
  std::vector<double> knobs_at(std::size_t point) const {
    std::vector<double> knobs;
    for (const Setting& setting : settings) knobs.push_back(setting.values[point]);
    return knobs;
  }
  std::vector<tune::Search> searches;  ///< what the tuner found beside
  judge::Judgement judgement;
  /// Looks of `planes` and where they stand in ledger.looks.
  std::vector<std::size_t> plane_looks;
  /// Volts and amps along the lines, at the points that reports dwell on; may be empty.
  std::vector<ledger::LineCurve> line_curves;
  /// The solution's story: how it was solved.
  struct Story {
    std::size_t unknowns = 0, operations = 0, states = 0, robust_states = 0;
    std::string robust_why;
    double worst_residual = 0.0;  ///< relative to available power
    std::size_t tuner_evaluations = 0;
  } story;
};

/// A form of tuner that cannot do what the text asks, where another form can: the report goes on without it.
struct SetAside {
  std::string variant;
  std::string code, text, advice;  ///< as a diagnostic has them
};
using SetAsides = std::vector<SetAside>;

/// The document, indented, UTF-8, ending in a newline. Numbers in the shortest form that reads back the same; NaN and infinity as null.
/// `verb` is "run". The same input gives the same bytes.
std::string make_document(const std::string& verb, const host::Registry& registry,
                          const std::vector<VariantResult>& variants, const SetAsides& set_aside = {});

/// The document of `compare`: the variants of one file, or those of several, as columns under the key "compare", and each of them in full under
/// "variants". `labels`, one a variant, tell the columns apart. Each variant has at least one frequency.
std::string make_compare_document(const host::Registry& registry, const std::vector<VariantResult>& variants,
                                  const std::vector<std::string>& labels, const SetAsides& set_aside = {});

/// `{"schema": 1, "errors": [...]}` for `--to json` where nothing could be solved.
std::string make_error_document(const Diagnostics& diagnostics);

}  // namespace wattfall::report
