// Which points of a sweep a report dwells on: where least and most gets out, the middle, and a few for tables. They
// stand in the document, so that every writer shows the same ones.
#pragma once

#include <cstddef>
#include <vector>

#include "ledger/ledger.hpp"

namespace wattfall::report {

struct Moments {
  std::size_t worst = 0;           ///< least efficiency; one that does not exist is the least
  std::size_t best = 0;            ///< most efficiency
  std::size_t middle = 0;          ///< of the points, not of the hertz: several bands may be swept
  std::vector<std::size_t> shown;  ///< for tables: all up to 12 points; else 7 to 11 evenly, and those above
};

/// The ledger has at least one point.
Moments find_moments(const ledger::Ledger& books);

/// Where a series is largest or least. NaN counts as the worst: as the largest where `largest_is_worst`, else the
/// least.
std::size_t worst_index(const ledger::Series& series, bool largest_is_worst);

/// Where it is largest, NaN left aside (0 where all are NaN).
std::size_t peak_index(const ledger::Series& series);

}  // namespace wattfall::report
