// The command line as a value. Private to the program.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/load_plugins.hpp"

namespace wattfall::app {

/// `--to WRITER[=PATH]`; no path: standard output.
struct Delivery {
  std::string writer;
  std::optional<std::string> path;
};

enum class Color { automatic, always, never };

struct Arguments;

/// What a verb does; gives the exit code.
using VerbFunction = int (*)(const Arguments& arguments, const host::Plugins& plugins);

struct Arguments {
  VerbFunction work = nullptr;         ///< never null once the command line has been read
  std::string file;                    ///< run: a path, or "-" for standard input
  std::vector<std::string> files;      ///< format, compare: paths, or "-" for standard input; check: files and folders
  bool accept = false;                 ///< check: write baselines
  std::optional<double> tolerance;     ///< check --accept: a share; none: the default
  bool check_only = false;             ///< format: change nothing, say what would be
  std::string what = "plugins", name;  ///< list: the sort of thing, and one of its names
  std::optional<std::string> variant, sweep;
  std::vector<std::pair<std::string, std::string>> settings;
  std::vector<std::string> at;
  std::vector<std::string> figures;    ///< weigh: to be weighed besides those required
  bool as_written = false;
  std::vector<Delivery> deliveries;  ///< never empty: `text` where none is given
  unsigned threads = 0;              ///< 0: as many as the machine has
  std::optional<std::string> plugins;
  bool no_plugins = false;
  std::vector<std::string> allow;
  bool quiet = false;
  Color color = Color::automatic;
};

/// Reads the command line. Where there is nothing to do (help, version, wrong use: 2), what was to be printed has been,
/// and the result is empty with `exit_code` set.
std::optional<Arguments> read_arguments(int argc, char** argv, int& exit_code);

}  // namespace wattfall::app
