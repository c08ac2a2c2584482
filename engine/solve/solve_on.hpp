// Solving on a kernel of one's choice instead of the widest. Private to the room and to tests.
#pragma once

#include "kernel.hpp"
#include "solve/solve.hpp"

namespace wattfall::solve {

/// As `solve`, guarded, on one thread. `kernel` is one that this machine can run (`kernel_named`).
Solution solve_on(const Kernel& kernel, const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
                  const std::vector<design::Look>& looks = {});

}  // namespace wattfall::solve
