// The tuner tests' ladders as feed files.
#pragma once

#include <string>

#include "../tuner/cases.hpp"

namespace wattfall::test {

/// So many digits that it reads back the same.
std::string exact(double value);

/// Parts P0, P1 ... from the rig's node n0 to the load's, each adjustable within its bounds, tuned at the ladder's one frequency. The load is a plain
/// impedance.
std::string feed_text(const tuner_test::Ladder& ladder, const tuner_test::Bounds& bounds, const std::string& goal);

}  // namespace wattfall::test
