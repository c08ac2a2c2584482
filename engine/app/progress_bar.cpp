#include "progress_bar.hpp"

#include <unistd.h>

#include <atomic>
#include <chrono>
#include <cstdlib>
#include <string>
#include <string_view>

namespace wattfall::app {
namespace {

using namespace std::chrono_literals;

/// To the line's beginning, and clear it to its end (ECMA-48).
constexpr std::string_view erase = "\r\x1b[K";

/// Whether a line stands on the terminal.
std::atomic<bool> shown{false};

void write(std::string_view text) { [[maybe_unused]] const ssize_t count = ::write(STDERR_FILENO, text.data(), text.size()); }

bool is_set(const char* variable) {
  const char* value = std::getenv(variable);
  return value != nullptr && *value != '\0';
}

}  // namespace

bool shows_progress(bool quiet) {
  if (quiet || is_set("CI") || ::isatty(STDERR_FILENO) != 1) return false;
  const char* terminal = std::getenv("TERM");
  return terminal != nullptr && std::string_view(terminal) != "dumb";
}

ProgressBar::ProgressBar(const Progress& progress, bool quiet) {
  if (shows_progress(quiet)) thread_ = std::thread([this, &progress] { watch(progress); });
}

void ProgressBar::watch(const Progress& progress) {
  std::unique_lock lock(mutex_);
  for (auto wait = 300ms; !stopped_.wait_for(lock, wait, [this] { return stop_; }); wait = 100ms) {
    const std::string line = progress_line(progress);
    if (line.empty()) continue;
    shown = true;
    write(std::string(erase) + line);
  }
}

void ProgressBar::take_away() {
  if (!thread_.joinable()) return;
  {
    const std::lock_guard lock(mutex_);
    stop_ = true;
  }
  stopped_.notify_one();
  thread_.join();
  erase_progress_now();
}

void erase_progress_now() {
  if (shown.exchange(false)) write(erase);
}

}  // namespace wattfall::app
