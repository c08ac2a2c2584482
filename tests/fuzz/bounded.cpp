#include "bounded.hpp"

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <exception>

namespace wattfall::fuzz {
namespace {

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr bool shadowed = true;
#else
constexpr bool shadowed = false;
#endif

/// Above the 200 MiB that are allowed, so that too much is measured, and low enough that a runaway ends here.
constexpr rlim_t runaway_bytes = rlim_t{1} << 30;

[[noreturn]] void work_in_child(const std::function<std::string()>& work, int pipe_in) {
  if (!shadowed) {
    const rlimit limit{runaway_bytes, runaway_bytes};
    setrlimit(RLIMIT_AS, &limit);
  }
  int status = 0;
  try {
    const std::string said = work();
    for (std::size_t sent = 0; sent < said.size();) {
      const ssize_t step = write(pipe_in, said.data() + sent, said.size() - sent);
      if (step <= 0) break;
      sent += static_cast<std::size_t>(step);
    }
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    status = 1;
  }
  _exit(status);  // nothing of the parent's is to be run or written twice
}

double seconds_of(const timeval& time) {
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

}  // namespace

Bounded run_bounded(const std::function<std::string()>& work) {
  Bounded result;
  int ends[2];
  if (pipe(ends) != 0) return result;
  std::fflush(nullptr);
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    work_in_child(work, ends[1]);
  }
  close(ends[1]);
  char buffer[4096];
  for (ssize_t count = 0; child > 0 && (count = read(ends[0], buffer, sizeof buffer)) > 0;)
    result.said.append(buffer, static_cast<std::size_t>(count));
  close(ends[0]);
  int status = 0;
  rusage usage{};
  if (child < 0 || wait4(child, &status, 0, &usage) != child) return result;
  result.ended = WIFEXITED(status) && WEXITSTATUS(status) == 0;
  result.seconds = seconds_of(usage.ru_utime) + seconds_of(usage.ru_stime);
  if (!shadowed) result.peak_mib = static_cast<double>(usage.ru_maxrss) / 1024.0;
  return result;
}

}  // namespace wattfall::fuzz
