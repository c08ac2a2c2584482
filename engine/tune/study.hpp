// What is worth knowing of a search beside its best setting: the other settings that match, what each costs, and how far frequency and knobs may
// move before the match is lost. Private to the room.
#pragma once

#include "search.hpp"
#include "tune/tune.hpp"

namespace wattfall::tune {

/// Fills `matches`, `why` and `knobs` of a search that found something. Cost: about 150 whole solutions a setting and 60 a knob, microseconds each.
void study(const Problem& problem, const Found& found, Search& search);

/// Settings (by the statement's knobs) and what each costs. Cost: as above, and the network compiled once.
std::vector<Match> matches_at(const Problem& problem, const std::vector<std::vector<double>>& settings);

/// Power into all loads [W] at a setting, the least over the frequencies.
double load_w_at(const Problem& problem, const std::vector<double>& setting);

}  // namespace wattfall::tune
