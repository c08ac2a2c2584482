// How many floating-point operations a core can do: multiply-adds on registers alone.
#pragma once

#include <cstddef>

namespace wattfall::bench {

/// Does `rounds` rounds of 12 independent vector multiply-adds as wide as the kernel of that name ("baseline", "v3",
/// "v4") and returns the operations done (a multiply-add counts two), 0 where the machine cannot. The sum of what was
/// computed goes to `sink`.
double multiply_adds(const char* target, std::size_t rounds, double& sink);

}  // namespace wattfall::bench
