// Outside figures: what a function of this room gives, what a book or an independent computation gives, and how far
// they may differ. "computed" rows come from an independent computation with 40 digits; "from memory" means that the
// citation was not looked up again. A row that differs for a known reason is named with it in test_outside.cpp.
#pragma once

#include <vector>

namespace wattfall::physics {

inline constexpr const char* published = "published";
inline constexpr const char* from_memory = "from memory";
inline constexpr const char* computed = "computed";

struct OutsideRow {
  const char* id;
  const char* inputs;
  const char* quantity;
  double found;
  double expected;
  double tolerance;  ///< absolute
  const char* source;
  const char* status;
};

struct Topic {
  const char* name;
  std::vector<OutsideRow> rows;
};

Topic coils_and_skin();
Topic capacitances_and_lines();
Topic antennas();
Topic couplings();
Topic waves();

}  // namespace wattfall::physics
