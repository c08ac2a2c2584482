// What every plugin of writers does at its border: hand its writers to the host, take the document in, let the report out. Header only; the plugins
// `reports` and `pictures` include it.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <wattfall/sdk.hpp>

#include "reading.hpp"

namespace reports {

/// The whole report into the sink; `failed` with a text where the sink does not take it.
inline wattfall::sdk::Status send(const wattfall::sdk::Sink* sink, std::string_view text, wattfall::sdk::Failure* failure) {
  if (sink->write(sink->self, text.data(), text.size()) == wattfall::sdk::Status::ok) return wattfall::sdk::Status::ok;
  return wattfall::sdk::fail(failure, "the report could not be written");
}

/// A writer that asks nothing of its options: document in, report out.
template <std::string (*make)(const Json& document)>
wattfall::sdk::Status write_with(void*, const char* document, std::size_t size, const wattfall::sdk::WriterOptions*, const wattfall::sdk::Sink* sink,
                                 wattfall::sdk::Failure* failure) {
  return wattfall::sdk::guarded(failure, [&] { return send(sink, make(Json::parse(document, document + size)), failure); });
}

/// Stops at the first that the host refuses.
template <std::size_t count>
wattfall::sdk::Status enroll_writers(const wattfall::sdk::Writer (&writers)[count], const wattfall::sdk::Registrar* host, wattfall::sdk::Failure* failure) {
  for (const wattfall::sdk::Writer& writer : writers)
    if (host->add_writer(host, &writer, failure) != wattfall::sdk::Status::ok) return wattfall::sdk::Status::failed;
  return wattfall::sdk::Status::ok;
}

}  // namespace reports
