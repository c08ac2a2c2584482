#include "faulty.hpp"

static constexpr sdk::Cable cable{"TESTCOAX-1", 75.0, 0.66, nullptr, 0, 0.0, "a cable", "invented for a test"};
static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  return host->add_cable(host, &cable, failure);
}
static constexpr sdk::Plugin plugin = sdk::describe("same-cable", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
