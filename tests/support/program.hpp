// For black-box tests: runs the built program as a child process, and folders to run it in.
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace wattfall::test {

/// What a child process left behind.
struct Ran {
  int code = -1;  ///< its exit code; 128 + the signal where one ended it
  std::string out, err;
};

/// What a child process runs in.
struct Surroundings {
  std::filesystem::path folder = ".";                               ///< its current folder
  std::string input = {};                                           ///< its standard input
  std::vector<std::pair<std::string, std::string>> variables = {};  ///< set beside those that this process has
};

/// `program` with its arguments; WATTFALL_PLUGINS and NO_COLOR are not handed down unless `around` sets them.
Ran run_program(const std::string& program, const std::vector<std::string>& arguments, const Surroundings& around = {});

/// The built wattfall.
Ran program(const std::vector<std::string>& arguments, const Surroundings& around = {});

/// A script for `sh -c`, in which $WATTFALL is the built program.
Ran shell(const std::string& script, const Surroundings& around = {});

/// A folder of its own, gone at the end.
class Scratch {
 public:
  Scratch();
  ~Scratch();
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  const std::filesystem::path& path() const { return path_; }
  /// Writes a file, its folders too; gives its path.
  std::string write(const std::string& name, const std::string& text) const;
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  /// Names of all files in it, sorted, '\n' after each.
  std::string listing() const;

 private:
  std::filesystem::path path_;
};

/// The whole of a file; empty where it cannot be read.
std::string read_file(const std::filesystem::path& path);

}  // namespace wattfall::test
