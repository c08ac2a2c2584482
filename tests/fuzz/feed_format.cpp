#include <memory>

#include "grammar/parse.hpp"
#include "grammar/print.hpp"
#include "same_tree.hpp"
#include "targets.hpp"

namespace wattfall::fuzz {
namespace {

SourcePtr source_of(std::string text) {
  return std::make_shared<const Source>("fuzz.feed", std::move(text));
}

/// A text may be without mistakes and yet not be formatted: where the layout would carry it past a limit.
bool about_limits(const Diagnostics& diagnostics) {
  for (const Diagnostic& diagnostic : diagnostics)
    if (diagnostic.code != "line-too-long" && diagnostic.code != "file-too-long") return false;
  return !diagnostics.empty();
}

}  // namespace

void feed_format(std::string_view bytes) {
  const SourcePtr written = source_of(std::string(bytes));
  const Result<std::string> once = format(written);
  check_diagnostics(once.diagnostics, bytes.size());
  promise(once.value.has_value() == once.diagnostics.empty(), "a text, or reasons why there is none");
  if (!once.value) {
    // To parse once more what does not parse costs as much again, so it is done for short texts only.
    if (bytes.size() < 256 && !about_limits(once.diagnostics))
      promise(!parse(written).ok(), "a text without mistakes is formatted");
    return;
  }
  const SourcePtr printed = source_of(*once.value);
  const Result<syntax::File> before = parse(written);
  const Result<syntax::File> after = parse(printed);
  promise(before.ok() && after.ok(), "what was formatted parses");
  promise(same_tree(before.value->statements, after.value->statements), "formatting keeps the tree");
  promise(format(printed).value == once.value, "formatting twice changes nothing");
}

}  // namespace wattfall::fuzz
