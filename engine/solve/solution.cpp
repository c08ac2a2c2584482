#include "solve/solution.hpp"

#include <array>

namespace wattfall::solve {

std::size_t Solution::robust_count() const {
  std::size_t count = 0;
  for (Guard guard : guards) count += guard != Guard::none;
  return count;
}

std::string Solution::robust_why() const {
  static constexpr std::array<const char*, 6> names = {
      "", "a pivot that lost digits", "a line near a whole number of half waves", "a part of nearly no impedance",
      "a two-port without admittances", "books that did not close"};
  std::array<std::size_t, names.size()> counts{};
  for (Guard guard : guards) ++counts[static_cast<std::size_t>(guard)];
  std::string text;
  for (std::size_t i = 1; i < names.size(); ++i) {
    if (counts[i] == 0) continue;
    text += (text.empty() ? "" : ", ") + std::string(names[i]) + " (" + std::to_string(counts[i]) + ")";
  }
  return text;
}

}  // namespace wattfall::solve
