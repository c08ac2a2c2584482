#include "faulty.hpp"

// Calls a function that nobody has: found when the library is opened, not when the function is called.
int nobody_has_this();
static sdk::Status enroll(const sdk::Registrar*, sdk::Failure*) {
  return nobody_has_this() != 0 ? sdk::Status::ok : sdk::Status::failed;
}
static constexpr sdk::Plugin plugin = sdk::describe("unresolved", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
