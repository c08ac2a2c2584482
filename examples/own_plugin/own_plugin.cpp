// The plugin itself: what it is called, and the three things that it brings.
#include "bead.hpp"
#include "compass_search.hpp"

namespace {

namespace sdk = wattfall::sdk;

// Matched loss at a frequency, in hertz and dB/100m. Keep what you hand over `static` or in a namespace: it is not
// copied.
constexpr sdk::LossPoint losses[] = {{3.5e6, 2.1}, {14e6, 4.4}, {28e6, 6.5}, {144e6, 16.0}};
constexpr sdk::Cable trailer_coax{
    "trailer coax", 50.0, 0.78, losses, 4, 0.0, "the thin grey coax on the trailer", "invented for this example"};

sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  if (host->add_kind(host, &own::bead, failure) != sdk::Status::ok) return sdk::Status::failed;
  if (host->add_optimizer(host, &own::compass_search, failure) != sdk::Status::ok) return sdk::Status::failed;
  return host->add_cable(host, &trailer_coax, failure);
}

constexpr sdk::Plugin plugin = sdk::describe("own-parts", "1.0", enroll);

}  // namespace

WATTFALL_PLUGIN(plugin)
