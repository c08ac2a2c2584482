// The document of `weigh`: what every value of a design does to its figures.
#pragma once

#include "report/document.hpp"
#include "weigh/weigh.hpp"

namespace wattfall::report {

/// A figure of one variant, weighed at one frequency.
struct WeighedFigure {
  const design::Figure* figure = nullptr;
  const design::Requirement* requirement = nullptr;  ///< that asks for it; null where the command line does
  double frequency_hz = 0.0;
  weigh::Weighing weighing;
};

/// A variant and all its figures. Pointers are to what the caller owns.
struct WeighResult {
  const VariantResult* variant = nullptr;
  std::vector<WeighedFigure> figures;
};

/// Schema 1, verb "weigh".
std::string make_weigh_document(const host::Registry& registry, const std::vector<VariantResult>& variants,
                                const std::vector<WeighResult>& weighed, const SetAsides& set_aside = {});

}  // namespace wattfall::report
