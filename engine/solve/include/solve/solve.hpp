// plan + states -> solution.
#pragma once

#include <memory>
#include <vector>

#include "plan/plan.hpp"
#include "progress/progress.hpp"
#include "solve/solution.hpp"

namespace wattfall::solve {

enum class Method {
  guarded,  ///< the compiled fast path, each state checked, flagged ones solved again in the robust form
  robust,   ///< every state in the robust form (dense, wave rows, partial pivoting): for tests and comparisons
};

/// What a solution holds beside heat, source and looks; all else is left empty, and costs nothing.
enum class Keep {
  books,    ///< potentials and currents, and what lines are: all that the ledger needs
  figures,  ///< of every element the larger end's volts and amps
};

/// A network's compiled program and the room to run it in, for a caller that comes back with more states. Not for use by several threads at once; what it
/// is made from must outlive it.
class Solver {
 public:
  Solver(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const std::vector<design::Look>& looks = {});
  ~Solver();
  Solver(Solver&&) noexcept;
  Solver& operator=(Solver&&) noexcept;

  /// As `solve`. The solution's memory is used again where it is large enough.
  void run(const States& states, Solution& solution, Keep keep = Keep::books, Method method = Method::guarded, unsigned threads = 1, Progress* progress = nullptr);

 private:
  struct Body;
  std::unique_ptr<Body> body_;
};

/// Solves every state. Cost: operations of the plan per state, 16 states side by side; a state in the robust form costs
/// O((nodes + ports)^3). With several threads each takes a run of states; the numbers are the same to the last bit for any number. Never throws for
/// numbers; what cannot be solved is NaN and marked untrusted. `progress` counts the states as points, where somebody watches.
Solution solve(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
               const std::vector<design::Look>& looks = {}, Method method = Method::guarded, unsigned threads = 1,
               Progress* progress = nullptr);

}  // namespace wattfall::solve
