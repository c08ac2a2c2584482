// The plugin that brings the writers `drawing` and `page`. They see the result document and nothing else of wattfall.
#include <string_view>
#include <wattfall/sdk.hpp>

#include "writers.hpp"

namespace sdk = wattfall::sdk;

namespace {

using sdk::Failure;
using sdk::Sink;
using sdk::Status;
using sdk::WriterOptions;

template <std::string (*make)(const pictures::Json&)>
Status write(void*, const char* document, std::size_t size, const WriterOptions*, const Sink* sink, Failure* failure) {
  return sdk::guarded(failure, [&] {
    const std::string made = make(pictures::Json::parse(document, document + size));
    if (sink->write(sink->self, made.data(), made.size()) == Status::ok) return Status::ok;
    return sdk::fail(failure, "the report could not be written");
  });
}

constexpr sdk::Writer writers[] = {
    {"drawing", "the network as a picture (SVG): symbols, values, heat", "svg", nullptr, write<pictures::write_drawing>},
    {"page", "the whole report as one HTML file: drawing, charts, tables, data", "html", nullptr, write<pictures::write_page>},
};

Status enroll(const sdk::Registrar* host, Failure* failure) {
  for (const sdk::Writer& writer : writers) {
    if (host->add_writer(host, &writer, failure) != Status::ok) return Status::failed;
  }
  return Status::ok;
}

constexpr sdk::Plugin plugin = sdk::describe("pictures", "1.0", enroll);

}  // namespace

WATTFALL_PLUGIN(plugin)
