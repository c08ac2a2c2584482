// Figures: the numbers that requirements, goals and baselines speak of, read off the books.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "design/design.hpp"
#include "ledger/book.hpp"
#include "ledger/ledger.hpp"

namespace wattfall::judge {

/// Every place that the design's planes, requirements and goals look from, without repetitions. The solution and the books are
/// made for these, in this order.
std::vector<design::Look> looks_of(const design::Design& design);

/// The pages of the books that these figures are read off.
ledger::Pages pages_of(std::span<const design::Figure> figures);

/// A figure in one state, in its own unit (ratio, dB, ohm, W, V peak, A rms); NaN where it does not exist.
/// `width of swr` is a figure of a whole sweep: this is its SWR; use `over_sweep` or `width_hz`.
double figure_in_state(const design::Figure& figure, const design::Design& design, const ledger::Ledger& ledger, std::size_t state);

/// The figure in every state; `width of swr` gives the same number for all: the hertz around the best point within which the SWR is not
/// above the bound, edges interpolated between points, cut at the sweep's ends.
std::vector<double> over_sweep(const design::Figure& figure, const design::Design& design, const ledger::Ledger& ledger);

/// `width of swr` from SWRs at rising frequencies, NaN where all comes back; NaN where no point keeps the bound.
double width_hz(std::span<const double> swr, std::span<const double> frequencies_hz, double bound);

/// "V", "dB", "" ... of a figure.
std::string unit_of(design::FigureKind kind);

}  // namespace wattfall::judge
