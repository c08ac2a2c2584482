// Calls the optimizer through the plugin interface's structs, with a C++ function as the goal.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>
#include <wattfall/sdk.hpp>

#include "search.hpp"

namespace tuner_test {

namespace sdk = wattfall::sdk;

/// Goal of one setting; fills the slacks.
using Goal = std::function<double(const double* setting, double* slacks)>;

struct Found {
  bool ok;
  std::string text;
  std::vector<double> setting;
  double goal;
  std::uint64_t evaluations;
  bool feasible;
  bool exhaustive;
  std::vector<std::vector<double>> others;
};

inline sdk::KnobRange log_knob(double lower, double upper) {
  return {lower, upper, lower, 1, nullptr, 0};
}
inline sdk::KnobRange linear_knob(double lower, double upper) {
  return {lower, upper, lower, 0, nullptr, 0};
}
inline sdk::KnobRange choice_knob(const std::vector<double>& choices) {
  return {0, double(choices.size() - 1), 0, 0, choices.data(), choices.size()};
}

struct Caller {
  const Goal* goal;
  std::size_t knobs;
  std::size_t slacks;
};

inline sdk::Status evaluate(void* self, const double* settings, std::size_t count, double* goals, double* slacks,
                            sdk::Failure* failure) {
  const Caller& caller = *static_cast<const Caller*>(self);
  return sdk::guarded(failure, [&] {
    for (std::size_t i = 0; i < count; ++i)
      goals[i] = (*caller.goal)(settings + i * caller.knobs, slacks + i * caller.slacks);
  });
}

inline Found ask(const std::vector<sdk::KnobRange>& knobs, const Goal& goal, std::size_t slack_count = 0,
                 const std::vector<double>& starts = {}, std::size_t other_room = 0) {
  Caller caller{&goal, knobs.size(), slack_count};
  const sdk::SearchProblem problem{
      knobs.data(), knobs.size(), slack_count, starts.data(), knobs.empty() ? 0 : starts.size() / knobs.size(),
      &caller,      evaluate};
  Found found{};
  found.setting.resize(knobs.size() + 1);
  std::vector<double> others(other_room * knobs.size());
  sdk::SearchResult result{};
  result.setting = found.setting.data();
  result.others = others.data();
  result.other_room = other_room;
  sdk::Failure failure{};
  found.ok = sdk::guarded(&failure, [&] { wattfall::tuner::search(problem, result); }) == sdk::Status::ok;
  found.text = failure.text;
  found.setting.resize(knobs.size());
  found.goal = result.goal;
  found.evaluations = result.evaluations;
  found.feasible = result.feasible != 0;
  found.exhaustive = result.exhaustive != 0;
  for (std::size_t i = 0; i < result.other_count; ++i)
    found.others.emplace_back(others.begin() + std::ptrdiff_t(i * knobs.size()),
                              others.begin() + std::ptrdiff_t((i + 1) * knobs.size()));
  return found;
}

}  // namespace tuner_test
