// `wattfall format`: feed files in, the same files in the standard layout out, each replaced whole or left alone.
#include <iterator>
#include <string>
#include <vector>

#include "deliver.hpp"
#include "design/catalog.hpp"
#include "grammar/print.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace {

void append(Diagnostics& all, Diagnostics more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// What has come of the files.
struct Tally {
  std::vector<SourcePtr> texts;  ///< kept, since diagnostics point into them
  Diagnostics wrong;
  std::string changed;  ///< the files that are not in the standard layout, a line each
};

/// A file with mistakes is left alone; so is one that is as it should be.
void format_file(const std::string& file, const Arguments& arguments, const Vocabulary& vocabulary, Tally& tally) {
  Result<SourcePtr> text = read_text(file);
  if (!text.value) return append(tally.wrong, std::move(text.diagnostics));
  const SourcePtr& source = tally.texts.emplace_back(*std::move(text.value));
  Result<std::string> formatted = format(source, vocabulary);
  if (!formatted.value) return append(tally.wrong, std::move(formatted.diagnostics));
  const bool same = *formatted.value == source->text();
  if (arguments.check_only) {
    if (!same) tally.changed += (file == "-" ? "standard input" : file) + ": not in the standard layout\n";
  } else if (file == "-") {
    append(tally.wrong, print(*formatted.value));
  } else if (!same) {
    append(tally.wrong, replace_file(file, *formatted.value));
  }
}

}  // namespace

int format_verb(const Arguments& arguments, const host::Plugins& plugins) {
  const design::Catalog catalog(plugins.registry());
  const Vocabulary vocabulary = catalog.vocabulary();
  Tally tally;
  for (const std::string& file : arguments.files) format_file(file, arguments, vocabulary, tally);
  if (!tally.wrong.empty()) return say(tally.wrong, arguments.color);
  if (tally.changed.empty()) return 0;
  if (!arguments.quiet) append(tally.wrong, print(tally.changed));
  return tally.wrong.empty() ? 1 : say(tally.wrong, arguments.color);
}

}  // namespace wattfall::app
