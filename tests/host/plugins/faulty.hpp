// What the faulty plugins share: a cable without fault, which must not be registered where the plugin is refused.
#pragma once

#include <stdexcept>

#include "wattfall/sdk.hpp"

namespace sdk = wattfall::sdk;

inline constexpr sdk::Cable honest_cable{"honest", 50.0, 0.66, nullptr, 0, 0.0, "a cable", "invented for a test"};

inline sdk::Status enroll_honest_cable(const sdk::Registrar* host, sdk::Failure* failure) {
  return host->add_cable(host, &honest_cable, failure);
}
