// A plugin that brings nothing. With CLAIMED_INTERFACE it says that it was built for that interface.
#include <wattfall/sdk.hpp>

namespace sdk = wattfall::sdk;

namespace {

sdk::Status enroll(const sdk::Registrar*, sdk::Failure*) {
  return sdk::Status::ok;
}

#ifdef CLAIMED_INTERFACE
constexpr sdk::Plugin plugin{CLAIMED_INTERFACE, sizeof(sdk::Plugin), sdk::compiler_family, "as-later", "1.0", enroll};
#else
constexpr sdk::Plugin plugin = sdk::describe("as-here", "1.0", enroll);
#endif

}  // namespace

WATTFALL_PLUGIN(plugin)
