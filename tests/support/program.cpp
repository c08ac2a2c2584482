#include "program.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string_view>

extern char** environ;

namespace wattfall::test {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> environment_for(const Surroundings& around) {
  std::vector<std::string> all;
  for (char** entry = environ; *entry != nullptr; ++entry) {
    const std::string_view text = *entry;
    if (!text.starts_with("WATTFALL_PLUGINS=") && !text.starts_with("NO_COLOR=")) all.emplace_back(text);
  }
  for (const auto& [name, value] : around.variables) all.push_back(name + "=" + value);
  return all;
}

std::vector<char*> pointers_to(std::vector<std::string>& texts) {
  std::vector<char*> pointers;
  for (std::string& text : texts) pointers.push_back(text.data());
  pointers.push_back(nullptr);
  return pointers;
}

}  // namespace

Ran run_program(const std::string& program, const std::vector<std::string>& arguments, const Surroundings& around) {
  // Through files, not pipes: nothing can block, however much is written.
  const Scratch streams;
  const std::string in = streams.write("in", around.input), out = streams / "out", err = streams / "err";
  std::vector<std::string> words{program};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<std::string> variables = environment_for(around);

  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, in.c_str(), O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, out.c_str(), O_WRONLY | O_CREAT, 0600);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, err.c_str(), O_WRONLY | O_CREAT, 0600);
  posix_spawn_file_actions_addchdir_np(&actions, around.folder.c_str());
  pid_t child = 0;
  const int trouble =
      posix_spawn(&child, program.c_str(), &actions, nullptr, pointers_to(words).data(), pointers_to(variables).data());
  posix_spawn_file_actions_destroy(&actions);
  if (trouble != 0) throw std::runtime_error("cannot start " + program);
  int status = 0;
  if (::waitpid(child, &status, 0) != child) throw std::runtime_error("cannot wait for " + program);
  const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return {code, read_file(out), read_file(err)};
}

Ran program(const std::vector<std::string>& arguments, const Surroundings& around) {
  return run_program(WATTFALL_PROGRAM, arguments, around);
}

Ran shell(const std::string& script, const Surroundings& around) {
  Surroundings with_program = around;
  with_program.variables.emplace_back("WATTFALL", WATTFALL_PROGRAM);
  return run_program("/bin/sh", {"-c", script}, with_program);
}

Scratch::Scratch() {
  std::string name = (fs::temp_directory_path() / "wattfall-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make a folder like " + name);
  path_ = fs::canonical(name);
}

Scratch::~Scratch() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string Scratch::write(const std::string& name, const std::string& text) const {
  const fs::path path = path_ / name;
  fs::create_directories(path.parent_path());
  std::ofstream stream(path, std::ios::binary);
  stream << text;
  if (!stream.flush()) throw std::runtime_error("cannot write " + path.string());
  return path.string();
}

std::string Scratch::listing() const {
  std::vector<std::string> names;
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(path_))
    names.push_back(entry.path().lexically_relative(path_).string());
  std::sort(names.begin(), names.end());
  std::string text;
  for (const std::string& name : names) text += name + "\n";
  return text;
}

std::string read_file(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

}  // namespace wattfall::test
