#include "progress/counted_optimizer.hpp"

namespace wattfall {
namespace {

/// The problem as it was, and where its evaluations are counted.
struct Counting {
  const sdk::SearchProblem* problem;
  Progress* progress;
};

sdk::Status evaluate(void* self, const double* settings, std::size_t count, double* goals, double* slacks, sdk::Failure* failure) {
  const Counting& counting = *static_cast<const Counting*>(self);
  counting.progress->add(Progress::Work::settings, count);
  return counting.problem->evaluate(counting.problem->self, settings, count, goals, slacks, failure);
}

}  // namespace

CountedOptimizer::CountedOptimizer(const sdk::Optimizer* optimizer, Progress* progress) : optimizer_(optimizer), progress_(progress) {
  if (!counts()) return;
  counted_ = *optimizer;
  counted_.self = this;
  counted_.search = search;
}

sdk::Status CountedOptimizer::search(void* self, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
  const CountedOptimizer& here = *static_cast<const CountedOptimizer*>(self);
  Counting counting{problem, here.progress_};
  sdk::SearchProblem counted = *problem;
  counted.self = &counting;
  counted.evaluate = evaluate;
  const sdk::Status status = here.optimizer_->search(here.optimizer_->self, &counted, result, failure);
  here.progress_->add(Progress::Work::searches);
  return status;
}

}  // namespace wattfall
