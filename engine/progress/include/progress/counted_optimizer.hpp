// An optimizer whose searches, and the settings that they try, are counted.
#pragma once

#include "progress/progress.hpp"
#include "wattfall/sdk.hpp"

namespace wattfall {

class CountedOptimizer {
 public:
  /// Either may be null; then `get` is `optimizer` itself. Both must outlive this.
  CountedOptimizer(const sdk::Optimizer* optimizer, Progress* progress);
  CountedOptimizer(const CountedOptimizer&) = delete;
  CountedOptimizer& operator=(const CountedOptimizer&) = delete;

  const sdk::Optimizer* get() const { return counts() ? &counted_ : optimizer_; }

 private:
  bool counts() const { return optimizer_ != nullptr && progress_ != nullptr; }
  static sdk::Status search(void* self, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure);

  const sdk::Optimizer* optimizer_;
  Progress* progress_;
  sdk::Optimizer counted_{};
};

}  // namespace wattfall
