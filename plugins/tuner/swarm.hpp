// For goals with kinks (the worst of several frequencies, limits that switch), where second-order models lie: evolution
// of a normal distribution's covariance (CMA-ES: Hansen and Ostermeier, 2001; constants from Hansen's tutorial, 2016).
#pragma once

#include <cstddef>

#include "climber.hpp"

namespace wattfall::tuner {

/// Improves on the climber's place with at most `most` evaluations; random numbers come from a fixed seed.
void swarm(const Space& space, Judge& judge, Climber& climber, std::size_t most);

}  // namespace wattfall::tuner
