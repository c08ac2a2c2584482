// A registry filled once, without loading anything: the line model and the cables of the built-in plugin, linked in,
// and two invented kinds, a one-port and a two-port, so that the road of a plugin's kind is walked as well.
#pragma once

#include "host/registry.hpp"

namespace wattfall::fuzz {

const host::Registry& shelf();

}  // namespace wattfall::fuzz
