// The plugin that brings the writers `drawing` and `page`. They see the result document and nothing else of wattfall.
#include "entry.hpp"
#include "writers.hpp"

namespace sdk = wattfall::sdk;

namespace {

constexpr sdk::Writer writers[] = {
    {"drawing", "the network as a picture (SVG): symbols, values, heat", "svg", nullptr,
     reports::write_with<pictures::write_drawing>},
    {"page", "the whole report as one HTML file: drawing, charts, tables, data", "html", nullptr,
     reports::write_with<pictures::write_page>},
};

constexpr sdk::Plugin plugin = sdk::describe("pictures", "1.0", [](const sdk::Registrar* host, sdk::Failure* failure) {
  return reports::enroll_writers(writers, host, failure);
});

}  // namespace

WATTFALL_PLUGIN(plugin)
