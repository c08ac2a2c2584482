// The program: arguments, plugins, verb, exit code.
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <exception>
#include <iostream>
#include <sstream>

#include "deliver.hpp"
#include "progress_bar.hpp"
#include "report/document.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace {

namespace fs = std::filesystem;

fs::path program_folder() {
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  return error ? fs::path(".") : program.parent_path();
}

/// Beside the program, or where an installed one keeps them.
fs::path built_in_folder() {
  const fs::path folder = program_folder();
  const fs::path beside = folder / "plugins";
  std::error_code error;
  return fs::is_directory(beside, error) ? beside : folder.parent_path() / "lib" / "wattfall" / "plugins";
}

host::PluginSearch where_to_look(const Arguments& arguments) {
  host::PluginSearch search;
  search.built_in = built_in_folder();
  if (arguments.no_plugins) return search;
  if (arguments.plugins) search.folders.emplace_back(*arguments.plugins);
  if (const char* listed = std::getenv("WATTFALL_PLUGINS")) {
    std::istringstream stream(listed);
    for (std::string folder; std::getline(stream, folder, ':');)
      if (!folder.empty()) search.folders.emplace_back(folder);
  }
  return search;
}

/// A folder named on the command line that is not there is an error; a plugin that does not fit is said, and left out.
int say_troubles(const Arguments& arguments, const host::Plugins& plugins) {
  Diagnostics grave, light;
  for (const Diagnostic& trouble : plugins.troubles())
    (trouble.code == "plugin-folder" ? grave : light).push_back(trouble);
  if (!light.empty() && !arguments.quiet) say(light, arguments.color);
  return grave.empty() ? 0 : refuse(arguments.deliveries, grave, arguments.color);
}

int program(int argc, char** argv) {
  int code = 0;
  const std::optional<Arguments> arguments = read_arguments(argc, argv, code);
  if (!arguments) return code;
  const host::Plugins plugins = host::load_plugins(where_to_look(*arguments));
  if (const int trouble = say_troubles(*arguments, plugins); trouble != 0) return trouble;
  return arguments->work(*arguments, plugins);
}

}  // namespace

int say(const Diagnostics& diagnostics, Color color) {
  std::cerr << render(diagnostics, wants_color(color, STDERR_FILENO));
  return exit_code(diagnostics);
}

int refuse(const std::vector<Delivery>& deliveries, const Diagnostics& diagnostics, Color color) {
  const bool as_json = std::any_of(deliveries.begin(), deliveries.end(), [](const Delivery& delivery) {
    return delivery.writer == "json" && !delivery.path;
  });
  // Where standard output itself is what failed, standard error still has it.
  if (!as_json || !print(report::make_error_document(diagnostics)).empty()) return say(diagnostics, color);
  return exit_code(diagnostics);
}

}  // namespace wattfall::app

int main(int argc, char** argv) {
  // Nothing is half written when this comes: reports are put in place by one rename.
  std::signal(SIGINT, [](int) {
    wattfall::app::erase_progress_now();
    ::_exit(130);
  });
  try {
    return wattfall::app::program(argc, argv);
  } catch (const std::exception& error) {
    std::cerr << "wattfall: a fault of its own: " << error.what() << '\n';
    return 4;
  }
}
