// `wattfall run`: reads the text, runs the engine, lets the reports out.
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iostream>
#include <thread>

#include "deliver.hpp"
#include "engine/run.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace fs = std::filesystem;

namespace {

/// One byte more than a feed file may have is enough to see that it has too many.
constexpr std::size_t most_bytes = (1u << 20) + 1;

}  // namespace

Result<SourcePtr> read_text(const std::string& file) {
  std::string text(most_bytes, '\0');
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

namespace {

RunOptions options_of(const Arguments& arguments) {
  RunOptions options;
  options.resolve.variant = arguments.variant;
  options.resolve.settings = arguments.settings;
  options.resolve.at = arguments.at;
  options.resolve.sweep = arguments.sweep;
  options.resolve.as_written = arguments.as_written;
  options.resolve.allow.assign(arguments.allow.begin(), arguments.allow.end());
  options.resolve.folder = arguments.file == "-" ? fs::path(".") : fs::path(arguments.file).parent_path();
  if (options.resolve.folder.empty()) options.resolve.folder = ".";
  options.threads = arguments.threads != 0 ? arguments.threads : std::max(1u, std::thread::hardware_concurrency());
  return options;
}

}  // namespace

int run_verb(const Arguments& arguments, const host::Plugins& plugins) {
  const host::Registry& registry = plugins.registry();
  if (Diagnostics wrong = check_writers(arguments.deliveries, registry); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);

  const Result<SourcePtr> text = read_text(arguments.file);
  if (!text.value) return refuse(arguments.deliveries, text.diagnostics, arguments.color);

  const Outcome outcome = run(*text.value, registry, options_of(arguments));
  if (!outcome.diagnostics.empty()) return refuse(arguments.deliveries, outcome.diagnostics, arguments.color);

  if (Diagnostics wrong = deliver(outcome.document, arguments.deliveries, registry, arguments.color); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);
  return outcome.requirements_met ? 0 : 1;
}

}  // namespace wattfall::app
