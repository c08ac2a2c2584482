// What a terminal sees of work that takes long: one line on standard error, drawn again a few times a second and taken away at the end. Private to the
// program.
#pragma once

#include <condition_variable>
#include <mutex>
#include <thread>

#include "progress/progress.hpp"

namespace wattfall::app {

/// Whether there is somebody to see it: standard error is a terminal that can take back what it shows, and no CI job's (these say so by the variable CI).
bool shows_progress(bool quiet);

class ProgressBar {
 public:
  /// Watches `progress` until it is taken away. Work that is done within a third of a second is not worth a line.
  ProgressBar(const Progress& progress, bool quiet);
  ~ProgressBar() { take_away(); }
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;

  /// Before anything else is printed. Leaves the terminal as it was.
  void take_away();

 private:
  void watch(const Progress& progress);

  std::mutex mutex_;
  std::condition_variable stopped_;
  bool stop_ = false;
  std::thread thread_;
};

/// For the handler of an interrupt: takes the line away, if there is one, by nothing but `write`.
void erase_progress_now();

}  // namespace wattfall::app
