#include "faulty.hpp"

static constexpr sdk::Property property{"volts", "ohm", nullptr, "of something"};
static sdk::Status rows(void*, const sdk::Complex*, const double*, std::size_t, sdk::Complex*, sdk::Complex*,
                        sdk::Failure*) {
  return sdk::Status::failed;
}
static constexpr sdk::Kind kind{"spark", "the same name", 2, &property, 1, nullptr, rows};
static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  const bool taken = enroll_honest_cable(host, failure) == sdk::Status::ok;
  return taken ? host->add_kind(host, &kind, failure) : sdk::Status::failed;
}
static constexpr sdk::Plugin plugin = sdk::describe("same-kind", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
