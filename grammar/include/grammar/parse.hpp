// The door of the grammar room: text in, syntax tree out. PEGTL stays behind it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grammar/diagnostic.hpp"
#include "grammar/syntax.hpp"

namespace wattfall {

/// Words the text may use that the grammar itself does not know: names of the kinds of parts. They end an unfinished
/// statement at the start of a line, and serve for spelling suggestions. Any word may stand as a kind: it may be a box's name.
struct Vocabulary {
  std::vector<std::string> kinds;
};

/// The words of the language's own kinds.
const Vocabulary& standard_vocabulary();

/// Parses a whole file. All mistakes are found in one go: parsing recovers at the next statement, and the tree holds every
/// statement that could be read. Never throws for any text; limits (1 MiB, 64 KiB a line, 64 levels) are diagnostics.
/// Cost: linear in the text.
Result<syntax::File> parse(const SourcePtr& source, const Vocabulary& vocabulary = standard_vocabulary());

/// Parses one expression, for `--set c=120pF` and `--at "7.1 MHz"`.
Result<syntax::Loose<syntax::Phrase>> parse_phrase(const SourcePtr& source);

/// Parses what follows the word `sweep`, for `--sweep "7 MHz to 7.2 MHz step 10 kHz"`.
Result<syntax::Loose<syntax::Sweep>> parse_sweep(const SourcePtr& source);

/// Where a phrase begins with the given words (the longest property name that fits is the caller's to try), what is left
/// of it: `c - 2 pF` after `c` is `-2 pF`; `Q (Q)` after `Q` is `(Q)`. None where it does not begin so. The rest may be empty.
/// `words` has one blank between them; what has to be put together anew goes into `storage`.
std::optional<syntax::Phrase> rest_after(const syntax::Phrase& phrase, std::string_view words, syntax::Storage& storage);

}  // namespace wattfall
