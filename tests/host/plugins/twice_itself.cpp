#include "faulty.hpp"

static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  enroll_honest_cable(host, failure);
  return enroll_honest_cable(host, failure);
}
static constexpr sdk::Plugin plugin = sdk::describe("twice-itself", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
