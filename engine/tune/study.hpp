// What is worth knowing of a search beside its best setting: the other settings that match, what each costs, and how far frequency and knobs may
// move before the match is lost. Private to the room.
#pragma once

#include "search.hpp"
#include "solve/solve.hpp"
#include "tune/tune.hpp"

namespace wattfall::tune {

/// Fills `matches`, `why` and `knobs` of a search that found something. Cost: about 150 whole solutions a setting and 60 a knob, microseconds each.
void study(const Problem& problem, const Found& found, Search& search);

/// One setting (by the statement's knobs) and what it costs.
Match match_at(const Problem& problem, const std::vector<double>& setting);

/// SWR of what the source sees at given settings of the design's knobs, one after the other (states x knobs), each at its frequency; NaN for total
/// reflection.
std::vector<double> source_swr(const Problem& problem, const std::vector<double>& frequencies_hz, const std::vector<double>& knobs);

}  // namespace wattfall::tune
