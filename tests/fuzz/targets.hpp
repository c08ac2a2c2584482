// What the fuzzers feed: one function a target, each given any bytes at all. It returns where all is well and aborts,
// after a line on standard error, where a promise of the library's headers is broken. The same functions serve the
// fuzzers of clang's build and the replay of kept inputs in everybody's.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "grammar/diagnostic.hpp"

namespace wattfall::fuzz {

/// parse, parse_phrase, parse_sweep.
void feed_parse(std::string_view bytes);
/// parse and resolve. A first byte of 0x80 and more (no text begins so) is taken for options: see `options_of`.
void feed_resolve(std::string_view bytes);
/// format: the same tree, and settled after one go.
void feed_format(std::string_view bytes);

struct Target {
  const char* name;
  void (*feed)(std::string_view);
};
const std::vector<Target>& targets();

/// Aborts where `kept` is false, and says which promise was broken.
void promise(bool kept, const char* what);
/// The promises that every diagnostic makes: a code, a sentence, a span inside its text; and for some lengths of
/// the input also that it can be shown.
void check_diagnostics(const Diagnostics& diagnostics, std::size_t length);

}  // namespace wattfall::fuzz
