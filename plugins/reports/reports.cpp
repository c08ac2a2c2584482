// The plugin that brings the writers `text`, `json`, `csv`, `markdown`, `junit` and `snp`. They see the result document and nothing else of
// wattfall.
#include <string>

#include "entry.hpp"
#include "writers.hpp"

namespace sdk = wattfall::sdk;

namespace {

using reports::write_with;
using sdk::Failure;
using sdk::Sink;
using sdk::Status;
using sdk::WriterOptions;

Status write_text(void*, const char* document, std::size_t size, const WriterOptions* options, const Sink* sink,
                  Failure* failure) {
  return sdk::guarded(failure, [&] {
    const auto parsed = reports::Json::parse(document, document + size);
    return reports::send(sink, reports::write_text(parsed, options->columns, options->color != 0), failure);
  });
}

Status write_json(void*, const char* document, std::size_t size, const WriterOptions*, const Sink* sink,
                  Failure* failure) {
  return reports::send(sink, {document, size}, failure);
}

constexpr sdk::Writer writers[] = {
    {"text", "the readable report: verdict, ledger, strain on parts, settings", "txt", nullptr, write_text},
    {"json", "the result document itself, schema 1", "json", nullptr, write_json},
    {"csv", "a row a frequency and variant, for spreadsheets", "csv", nullptr, write_with<reports::write_csv>},
    {"markdown", "the report as Markdown, for a wiki or a merge request", "md", nullptr, write_with<reports::write_markdown>},
    {"junit", "requirements, ratings and baselines as test cases (JUnit's XML), for CI", "xml", nullptr, write_with<reports::write_junit>},
    {"snp", "what the source sees, as a Touchstone file (.s1p)", "s1p", nullptr, write_with<reports::write_touchstone>},
};

constexpr sdk::Plugin plugin = sdk::describe("reports", "1.0", [](const sdk::Registrar* host, Failure* failure) {
  return reports::enroll_writers(writers, host, failure);
});

}  // namespace

WATTFALL_PLUGIN(plugin)
