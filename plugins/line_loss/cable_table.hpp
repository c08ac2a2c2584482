// The generic cables that wattfall knows by itself. README.md says how the figures were chosen and how far they hold.
#pragma once

#include <span>

#include "wattfall/sdk.hpp"

namespace line_loss {

/// All cables, valid for the life of the library. Losses in dB/100m at rising frequencies.
std::span<const wattfall::sdk::Cable> cable_table();

}  // namespace line_loss
