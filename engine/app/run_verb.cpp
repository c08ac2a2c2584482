// The verbs about one file (`run`, `walk`, `weigh`): each reads the text, has the engine work on it, and lets the reports out.
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <iostream>
#include <limits>
#include <thread>

#include "deliver.hpp"
#include "engine/run.hpp"
#include "engine/walk_through.hpp"
#include "engine/weigh_up.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace fs = std::filesystem;

namespace {

/// What a plain file has; of pipes and devices nobody knows.
std::uintmax_t size_of(const std::string& file) {
  std::error_code error;
  const bool plain = fs::is_regular_file(file, error);
  const std::uintmax_t bytes = plain ? fs::file_size(file, error) : 0;
  return plain && !error ? bytes + 1 : std::numeric_limits<std::uintmax_t>::max();
}

}  // namespace

Result<SourcePtr> read_text(const std::string& file, std::size_t most_bytes) {
  std::string text(file == "-" ? most_bytes : std::min<std::uintmax_t>(most_bytes, size_of(file)), '\0');
  std::ifstream stream;
  if (file != "-") {
    std::error_code error;
    if (fs::is_directory(file, error))
      return {.diagnostics = {{.code = "unreadable",
                               .span = {},
                               .text = "`" + file + "` is a folder",
                               .expected = "a feed file",
                               .fault = Fault::file}}};
    errno = 0;
    stream.open(file, std::ios::binary);
    if (!stream)
      return {.diagnostics = {{.code = "unreadable",
                               .span = {},
                               .text = "`" + file + "` could not be read: " + std::strerror(errno),
                               .fault = Fault::file}}};
  }
  std::istream& input = file == "-" ? std::cin : stream;
  input.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (input.bad())
    return {.diagnostics = {{.code = "unreadable",
                             .span = {},
                             .text = "`" + file + "` could not be read to its end",
                             .fault = Fault::file}}};
  text.resize(static_cast<std::size_t>(input.gcount()));
  return {.value = std::make_shared<const Source>(file, std::move(text))};
}

RunOptions options_for(const Arguments& arguments, const std::string& file, Progress* progress) {
  RunOptions options;
  options.resolve.variant = arguments.variant;
  options.resolve.settings = arguments.settings;
  options.resolve.at = arguments.at;
  options.resolve.sweep = arguments.sweep;
  options.resolve.figures = arguments.figures;
  options.resolve.as_written = arguments.as_written;
  options.resolve.allow.assign(arguments.allow.begin(), arguments.allow.end());
  options.resolve.folder = file == "-" ? fs::path(".") : fs::path(file).parent_path();
  if (options.resolve.folder.empty()) options.resolve.folder = ".";
  options.threads = threads_of(arguments);
  options.progress = progress;
  return options;
}

unsigned threads_of(const Arguments& arguments) {
  return arguments.threads != 0 ? arguments.threads : std::max(1u, std::thread::hardware_concurrency());
}

int one_file(const Arguments& arguments, const host::Plugins& plugins, Work work) {
  const host::Registry& registry = plugins.registry();
  if (Diagnostics wrong = check_writers(arguments.deliveries, registry); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);

  const Result<SourcePtr> text = read_text(arguments.file);
  if (!text.value) return refuse(arguments.deliveries, text.diagnostics, arguments.color);

  Progress progress;
  ProgressBar bar(progress, arguments.quiet);
  const Outcome outcome = work(*text.value, registry, options_for(arguments, arguments.file, &progress));
  if (!outcome.diagnostics.empty()) {
    bar.take_away();
    return refuse(arguments.deliveries, outcome.diagnostics, arguments.color);
  }

  if (Diagnostics wrong = deliver(outcome.document, arguments.deliveries, registry, arguments.color, bar); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);
  return outcome.requirements_met ? 0 : 1;
}

int run_verb(const Arguments& arguments, const host::Plugins& plugins) { return one_file(arguments, plugins, run); }
int walk_verb(const Arguments& arguments, const host::Plugins& plugins) { return one_file(arguments, plugins, walk_through); }
int weigh_verb(const Arguments& arguments, const host::Plugins& plugins) { return one_file(arguments, plugins, weigh_up); }

}  // namespace wattfall::app
