#include "faulty.hpp"

static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    enroll_honest_cable(host, failure);
    throw std::runtime_error("the tube is cold");
  });
}
static constexpr sdk::Plugin plugin = sdk::describe("throwing", "1.0", enroll);
WATTFALL_PLUGIN(plugin)
