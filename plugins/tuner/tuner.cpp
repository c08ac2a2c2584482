// The plugin's border: one optimizer, ridge-search, for the knobs of matching networks, and the usual forms of tuner.
#include <wattfall/sdk.hpp>

#include "forms.hpp"
#include "search.hpp"

namespace {

namespace sdk = wattfall::sdk;

sdk::Status run_search(void*, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] { wattfall::tuner::search(*problem, *result); });
}

constexpr sdk::Optimizer ridge_search{
    "ridge-search", "scan, then second-order ascents along the ridges of equal match; slacks by augmented Lagrangian",
    nullptr, run_search};

sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    for (const sdk::TunerForm& form : wattfall::tuner::forms())
      if (host->add_tuner_form(host, &form, failure) != sdk::Status::ok) return sdk::Status::failed;
    return host->add_optimizer(host, &ridge_search, failure);
  });
}

constexpr sdk::Plugin plugin = sdk::describe("tuner", "1.0", enroll);

}  // namespace

WATTFALL_PLUGIN(plugin)
