// The plugin that brings the writers `text`, `json`, `csv`, `markdown`, `junit` and `snp`. They see the result document and nothing else of
// wattfall.
#include <string>
#include <string_view>
#include <wattfall/sdk.hpp>

#include "writers.hpp"

namespace sdk = wattfall::sdk;

namespace {

using sdk::Failure;
using sdk::Sink;
using sdk::Status;
using sdk::WriterOptions;

Status send(const Sink* sink, std::string_view text, Failure* failure) {
  if (sink->write(sink->self, text.data(), text.size()) == Status::ok) return Status::ok;
  return sdk::fail(failure, "the report could not be written");
}

Status write_text(void*, const char* document, std::size_t size, const WriterOptions* options, const Sink* sink,
                  Failure* failure) {
  return sdk::guarded(failure, [&] {
    const auto parsed = reports::Json::parse(document, document + size);
    return send(sink, reports::write_text(parsed, options->columns, options->color != 0), failure);
  });
}

Status write_json(void*, const char* document, std::size_t size, const WriterOptions*, const Sink* sink,
                  Failure* failure) {
  return send(sink, {document, size}, failure);
}

/// For a writer that asks nothing of its options.
template <std::string (*write)(const reports::Json&)>
Status write_with(void*, const char* document, std::size_t size, const WriterOptions*, const Sink* sink, Failure* failure) {
  return sdk::guarded(failure, [&] { return send(sink, write(reports::Json::parse(document, document + size)), failure); });
}

constexpr sdk::Writer writers[] = {
    {"text", "the readable report: verdict, ledger, strain on parts, settings", "txt", nullptr, write_text},
    {"json", "the result document itself, schema 1", "json", nullptr, write_json},
    {"csv", "a row a frequency and variant, for spreadsheets", "csv", nullptr, write_with<reports::write_csv>},
    {"markdown", "the report as Markdown, for a wiki or a merge request", "md", nullptr, write_with<reports::write_markdown>},
    {"junit", "requirements, ratings and baselines as test cases (JUnit's XML), for CI", "xml", nullptr, write_with<reports::write_junit>},
    {"snp", "what the source sees, as a Touchstone file (.s1p)", "s1p", nullptr, write_with<reports::write_touchstone>},
};

Status enroll(const sdk::Registrar* host, Failure* failure) {
  for (const sdk::Writer& writer : writers) {
    if (host->add_writer(host, &writer, failure) != Status::ok) return Status::failed;
  }
  return Status::ok;
}

constexpr sdk::Plugin plugin = sdk::describe("reports", "1.0", enroll);

}  // namespace

WATTFALL_PLUGIN(plugin)
