#include <cstdio>
#include <cstdlib>

#include "targets.hpp"

namespace wattfall::fuzz {
namespace {

void check_span(Span span) {
  promise(span.begin <= span.end, "a span does not end before it begins");
  if (span.source != nullptr) promise(span.end <= span.source->text().size(), "a span lies inside its text");
}

}  // namespace

void promise(bool kept, const char* what) {
  if (kept) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

void check_diagnostics(const Diagnostics& diagnostics, std::size_t length) {
  for (const Diagnostic& diagnostic : diagnostics) {
    promise(!diagnostic.code.empty() && !diagnostic.text.empty(), "a diagnostic has a code and a sentence");
    check_span(diagnostic.span);
    for (const Diagnostic::Note& note : diagnostic.notes) check_span(note.span);
  }
  // To draw one costs as much as to find it, so only inputs of some lengths pay: the fuzzer reaches them soon enough.
  if (!diagnostics.empty() && length % 8 == 0)
    promise(!render(diagnostics.front(), length % 16 == 0).empty(), "a diagnostic can be shown");
}

const std::vector<Target>& targets() {
  static const std::vector<Target> all = {{"parse", feed_parse}, {"resolve", feed_resolve}, {"format", feed_format}};
  return all;
}

}  // namespace wattfall::fuzz
