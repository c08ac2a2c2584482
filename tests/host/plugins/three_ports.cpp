#include "faulty.hpp"

// Does not look at the status of what it registers: the refusal must count all the same.
static constexpr sdk::Property property{"resistance", "ohm", nullptr, "of something"};
static sdk::Status rows(void*, const sdk::Complex*, const double*, std::size_t, sdk::Complex*, sdk::Complex*,
                        sdk::Failure*) {
  return sdk::Status::failed;
}
static constexpr sdk::Kind kind{"circulator", "goes round", 3, &property, 1, nullptr, rows};
static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  host->add_kind(host, &kind, failure);
  enroll_honest_cable(host, failure);
  return sdk::Status::ok;
}
static constexpr sdk::Plugin plugin = sdk::describe("three-ports", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
