#include "progress/progress.hpp"

#include <algorithm>

namespace wattfall {
namespace {

using Work = Progress::Work;

std::string of(const Progress& progress, Work work, const char* what) {
  return std::to_string(progress.done(work)) + " of " + std::to_string(progress.expected(work)) + " " + what;
}

/// Begun and not at its end. More may be done than was expected: studies of a match search again.
bool under_way(const Progress& progress, Work work) { return progress.done(work) < progress.expected(work); }

std::string with_bar(const Progress& progress, Work work, const std::string& text) {
  constexpr std::size_t columns = 24;
  const std::size_t expected = progress.expected(work), done = std::min(progress.done(work), expected), full = done * columns / expected;
  const std::string per_cent = std::to_string(done * 100 / expected);
  return "[" + std::string(full, '#') + std::string(columns - full, '-') + "] " + std::string(3 - std::min<std::size_t>(3, per_cent.size()), ' ') + per_cent + " %  " +
         text;
}

std::string tuning(const Progress& progress) { return "tuning, " + std::to_string(progress.done(Work::settings)) + " settings tried"; }

std::string line_of(const Progress& progress) {
  if (progress.expected(Work::designs) > 1) return with_bar(progress, Work::designs, of(progress, Work::designs, "designs"));
  const bool several = progress.expected(Work::variants) > 1;
  const std::string variants = several ? of(progress, Work::variants, "variants") : "";
  if (under_way(progress, Work::searches)) return with_bar(progress, Work::searches, tuning(progress) + (several ? ", " + variants : ""));
  if (several && under_way(progress, Work::variants)) return with_bar(progress, Work::variants, variants);
  if (under_way(progress, Work::points)) {
    // Nothing solved yet and searches have been made: what their matches are worth is being studied.
    if (progress.done(Work::points) == 0 && progress.done(Work::settings) > 0) return tuning(progress);
    return with_bar(progress, Work::points, of(progress, Work::points, "points"));
  }
  return progress.expected(Work::points) > 0 ? "writing reports" : "";
}

}  // namespace

std::string progress_line(const Progress& progress) { return line_of(progress).substr(0, 79); }

}  // namespace wattfall
