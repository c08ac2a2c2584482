// What a text asks of a design: sweeps, tuning, requirements, planes.
#pragma once

#include "figures.hpp"

namespace wattfall::design {

using Statements = std::vector<const syntax::Statement*>;

/// Bands by name; before anything that is over a band.
void read_bands(Bench& bench, const Statements& statements);
/// `A to B` or `band "x"`; none and nothing said where neither is there.
std::optional<std::pair<double, double>> range_or_band(Bench& bench, const syntax::Phrase& from,
                                                       const syntax::Phrase& to, const syntax::Word& band);

/// The points of all sweeps, or of the options in their place.
void read_sweeps(Bench& bench, const Statements& statements, const std::vector<syntax::Phrase>& at_options,
                 const std::optional<syntax::Sweep>& sweep_option, Span sweep_span);

void read_tunes(Bench& bench, const Adjacency& adjacency, const Statements& statements);
void read_requirements_and_planes(Bench& bench, const Adjacency& adjacency, const Statements& statements);

/// What could be checked only once frequencies and knobs are known: values that vary, data over frequency.
void check_late(Bench& bench);

}  // namespace wattfall::design
