// A tuner with one knob more than a match takes (T, pi) matches all along a ridge; its settings differ in what they lose. Private to the room.
#pragma once

#include "search.hpp"
#include "tune/tune.hpp"

namespace wattfall::tune {

/// About nine settings along the ridge, the one found among them. None where the statement has other than three continuous knobs, several
/// frequencies, another goal than power, loss or SWR, or where the ridge is a point. Cost: up to 35 searches of two knobs.
std::optional<Ridge> find_ridge(const Problem& problem, const Found& found, const sdk::Optimizer& optimizer);

}  // namespace wattfall::tune
