// A plugin with one of most sorts: a kind, a cable, an optimizer and a writer.
#include "wattfall/sdk.hpp"

namespace sdk = wattfall::sdk;

namespace {

constexpr sdk::Property properties[] = {{"resistance", "ohm", nullptr, "of the spark"},
                                        {"gap width", "m", "1 m", "between the balls"}};

/// A resistance: V - R I = 0.
sdk::Status rows(void*, const sdk::Complex* values, const double*, std::size_t points, sdk::Complex* a, sdk::Complex* b,
                 sdk::Failure*) {
  for (std::size_t i = 0; i < points; ++i) {
    a[i] = {1.0, 0.0};
    b[i] = {-values[0].re, -values[0].im};
  }
  return sdk::Status::ok;
}

sdk::Status search(void*, const sdk::SearchProblem*, sdk::SearchResult*, sdk::Failure* failure) {
  return sdk::fail(failure, "it only stands here");
}

sdk::Status write(void*, const char* document, std::size_t size, const sdk::WriterOptions*, const sdk::Sink* sink,
                  sdk::Failure*) {
  return sink->write(sink->self, document, size);
}

constexpr sdk::LossPoint losses[] = {{10e6, 1.0}};
constexpr sdk::Kind kind{"spark", "a spark gap", 1, properties, 2, nullptr, rows};
constexpr sdk::Cable cable{"Test-Coax 1", 50.0, 0.66, losses, 1, 0.0, "a cable", "invented for a test"};
constexpr sdk::Optimizer optimizer{"stand-still", "does nothing", nullptr, search};
constexpr sdk::Writer writer{"echo", "the document as it is", "txt", nullptr, write};

sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    host->add_kind(host, &kind, failure);
    host->add_cable(host, &cable, failure);
    host->add_optimizer(host, &optimizer, failure);
    host->add_writer(host, &writer, failure);
  });
}

constexpr sdk::Plugin plugin = sdk::describe("good", "1.2", enroll);

}  // namespace

WATTFALL_PLUGIN(plugin)
