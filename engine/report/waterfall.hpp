// The books at one point as rows that add up to what the source has to give: on the air, heat of each load and part,
// and what comes back. Sorted by watts, so that the first rows are the ones worth reading.
#pragma once

#include <string>
#include <vector>

#include "report/document.hpp"

namespace wattfall::report {

struct Row {
  std::string name;
  std::string kind;  ///< of the part: "line"; "source"
  std::string goes;  ///< "radiated", "load_heat", "part_heat", "returned"
  double power_w = 0.0;
  double share = 0.0;  ///< of the available power
  double alone_db =
      0.0;  ///< what these watts missing cost if nothing else were lost: -10 lg(1 - share); NaN for radiated
};

struct Waterfall {
  std::size_t index = 0;  ///< of the point
  std::string title;      ///< "at 7.2 MHz (least on the air)"
  std::vector<Row> rows;
  double sum_w = 0.0;  ///< of the rows
};

/// At the worst point and at the middle one; one where they are the same.
std::vector<Waterfall> find_waterfalls(const VariantResult& variant);

/// Watts, share and dB of one row.
Row make_row(std::string name, std::string kind, std::string goes, double power_w, double available_w);

}  // namespace wattfall::report
