// The usual forms of tuner, in the feed language: what `tuner NAME from a to b : l-network | pi | tee | any` tries.
#pragma once

#include <span>
#include <wattfall/sdk.hpp>

namespace wattfall::tuner {

std::span<const sdk::TunerForm> forms();

}  // namespace wattfall::tuner
