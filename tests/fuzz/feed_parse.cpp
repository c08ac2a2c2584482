#include <memory>

#include "grammar/parse.hpp"
#include "targets.hpp"

namespace wattfall::fuzz {
namespace {

/// The doors for a single phrase are meant for the text of an option; a whole file through them tells nothing new.
constexpr std::size_t longest_phrase = 200;

void check_phrase(const syntax::Phrase& phrase) {
  promise(!phrase.empty(), "a phrase without mistakes is not empty");
  const Span span = syntax::span_of(phrase);
  promise(span.source != nullptr && span.end <= span.source->text().size(), "a phrase lies inside its text");
}

}  // namespace

void feed_parse(std::string_view bytes) {
  const auto source = std::make_shared<const Source>("fuzz.feed", std::string(bytes));
  const Result<syntax::File> file = parse(source);
  promise(file.value.has_value(), "there is a tree, whatever the text");
  check_diagnostics(file.diagnostics, bytes.size());
  if (bytes.size() > longest_phrase) return;
  const Result<syntax::Loose<syntax::Phrase>> phrase = parse_phrase(source);
  check_diagnostics(phrase.diagnostics, bytes.size());
  promise(phrase.value || !phrase.diagnostics.empty(), "no phrase without a reason");
  if (phrase.ok()) check_phrase(phrase.value->what);
  const Result<syntax::Loose<syntax::Sweep>> sweep = parse_sweep(source);
  check_diagnostics(sweep.diagnostics, bytes.size());
  promise(sweep.value || !sweep.diagnostics.empty(), "no sweep without a reason");
}

}  // namespace wattfall::fuzz
