// How far long work is: counters that stages raise and that whoever wants to show them reads, from any thread. No stage prints, and none needs to be watched:
// where it is given no Progress it counts nothing.
#pragma once

#include <array>
#include <atomic>
#include <cstddef>
#include <string>

namespace wattfall {

class Progress {
 public:
  enum class Work {
    designs,   ///< of `check`
    variants,
    searches,  ///< of the tuner
    settings,  ///< that searches have tried; nobody knows how many there will be
    points,    ///< of sweeps, solved
  };
  static constexpr std::size_t works = 5;

  /// So much of the work more is to come.
  void expect(Work work, std::size_t count) { counts_[index(work)].expected.fetch_add(count, std::memory_order_relaxed); }
  /// So much of it more is done. Cheap: one atomic addition.
  void add(Work work, std::size_t count = 1) { counts_[index(work)].done.fetch_add(count, std::memory_order_relaxed); }

  std::size_t expected(Work work) const { return counts_[index(work)].expected.load(std::memory_order_relaxed); }
  std::size_t done(Work work) const { return counts_[index(work)].done.load(std::memory_order_relaxed); }

 private:
  static std::size_t index(Work work) { return static_cast<std::size_t>(work); }

  struct Count {
    std::atomic<std::size_t> done{0}, expected{0};
  };
  std::array<Count, works> counts_;
};

/// Where the work stands, as one line of at most 79 columns: a bar, per cent and what is being done; without bar and per cent where nobody knows how much there
/// is. Empty where nothing was begun.
std::string progress_line(const Progress& progress);

}  // namespace wattfall
