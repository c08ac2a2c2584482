// Variants side by side: the same figures for each, the better one, and by how much; and the gist in sentences.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

/// One figure's values, one a variant.
struct Contest {
  std::vector<double> values;
  std::vector<double> at_hz;
  std::vector<std::string> parts;     ///< for the hottest part: its name; else empty
  std::optional<std::size_t> better;  ///< none where the best two are equal to rounding
  double lead = 0.0;                  ///< over the next best, in the figure's unit, never negative
};

struct ComparedFigure {
  std::string figure;  ///< "radiated_w"
  std::string title;   ///< "on the air"
  std::string unit;    ///< as for requirements
  bool more_is_better = true;
  Contest worst;   ///< where each variant's figure is worst
  Contest middle;  ///< at the middle of each variant's sweep
};

std::vector<ComparedFigure> compare_figures(const std::vector<VariantResult>& variants);

/// Finds the better one among a contest's values and its lead; a value that does not exist is behind all that do.
void decide(Contest& contest, bool more_is_better);

/// The gist: on the air, SWR, hottest part. `figures` are those of `compare_figures`, `labels` what the columns are called.
std::vector<std::string> compare_in_words(const std::vector<std::string>& labels, const std::vector<ComparedFigure>& figures);

/// Writes the figures as an array.
void write_figures(JsonText& out, const std::vector<ComparedFigure>& figures);

/// Writes the value of the document's key "comparison"; `labels` are what the variants are called there.
void write_comparison(JsonText& out, const std::vector<VariantResult>& variants, const std::vector<std::string>& labels);

}  // namespace wattfall::report
