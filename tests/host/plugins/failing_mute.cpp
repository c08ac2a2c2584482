#include "faulty.hpp"

static sdk::Status enroll(const sdk::Registrar*, sdk::Failure*) {
  return sdk::Status::failed;
}
static constexpr sdk::Plugin plugin = sdk::describe("failing-mute", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
