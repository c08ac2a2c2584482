#include "faulty.hpp"

static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  enroll_honest_cable(host, failure);
  return sdk::fail(failure, "the table of cables is empty");
}
static constexpr sdk::Plugin plugin = sdk::describe("failing", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
