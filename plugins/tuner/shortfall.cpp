// See shortfall.hpp.
#include "shortfall.hpp"

#include <algorithm>
#include <limits>

namespace wattfall::tuner {
namespace {

sdk::Status evaluate(void* self, const double* settings, std::size_t count, double* goals, double*,
                     sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    const Shortfall& own = *static_cast<const Shortfall*>(self);
    const std::size_t slacks = own.asked.slack_count;
    std::vector<double> values(count * slacks);
    const sdk::Status status = own.asked.evaluate(own.asked.self, settings, count, goals, values.data(), failure);
    for (std::size_t i = 0; i < count; ++i) {
      // A place without a goal stays one.
      if (!(goals[i] > -std::numeric_limits<double>::infinity())) continue;
      goals[i] = 0;
      for (std::size_t k = 0; k < slacks; ++k) {
        const double missing = std::min(values[i * slacks + k] / own.measures[k], 0.0);
        goals[i] -= missing * missing;
      }
    }
    return status;
  });
}

}  // namespace

sdk::SearchProblem Shortfall::problem() {
  return {asked.knobs, asked.knob_count, 0, nullptr, 0, this, evaluate};
}

}  // namespace wattfall::tuner
