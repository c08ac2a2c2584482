#include "source_side.hpp"

#include <algorithm>

namespace wattfall::tune {

double most_left(const design::Source& source) {
  if (source.foldback.empty()) return 1.0;
  double most = 0.0;
  for (const auto& [swr, share] : source.foldback) most = std::max(most, share);
  return most;
}

std::complex<double> reference_of(const design::Figure& figure, const design::Source& source, double frequency_hz, std::span<const double> knobs) {
  return figure.reference ? figure.reference->at(frequency_hz, knobs) : source.reference_at(frequency_hz, knobs);
}

}  // namespace wattfall::tune
