#include "faulty.hpp"

// Breaks the rule that no exception crosses the border, and with one that is no std::exception.
static sdk::Status enroll(const sdk::Registrar*, sdk::Failure*) {
  throw 42;
}
static constexpr sdk::Plugin plugin = sdk::describe("throwing-bare", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
