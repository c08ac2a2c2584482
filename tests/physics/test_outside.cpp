// Every outside figure that this room can express, and a table of how many agree. A known difference stays here with
// its reason, and the test fails when it begins to agree: then the reason was wrong or the difference is gone.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <iostream>
#include <string_view>

#include "outside.hpp"

namespace wattfall::physics {
namespace {

struct KnownDifference {
  std::string_view id, reason;
};
constexpr std::array<KnownDifference, 0> known_differences{};

const KnownDifference* known(std::string_view id) {
  const auto found = std::ranges::find(known_differences, id, &KnownDifference::id);
  return found == known_differences.end() ? nullptr : &*found;
}

/// In units of the tolerance.
double distance(const OutsideRow& row) {
  return std::fabs(row.found - row.expected) / row.tolerance;
}

void check(const OutsideRow& row) {
  INFO(row.id << ": " << row.inputs << ": " << row.quantity << " by " << row.source << " (" << row.status << ")");
  INFO("found " << row.found << ", expected " << row.expected << " within " << row.tolerance);
  if (const KnownDifference* difference = known(row.id)) {
    INFO("known difference: " << difference->reason);
    CHECK_FALSE(distance(row) <= 1.0);
  } else {
    CHECK(distance(row) <= 1.0);
  }
}

void print_line(const Topic& topic) {
  const auto agreeing = std::ranges::count_if(topic.rows, [](const OutsideRow& row) { return distance(row) <= 1.0; });
  const auto exact = [](const OutsideRow& row) {
    return std::string_view(row.status) == computed && row.expected != 0.0;
  };
  double worst = 0.0;
  const char* where = "";
  for (const OutsideRow& row : topic.rows) {
    const double off = exact(row) ? std::fabs(row.found / row.expected - 1.0) : 0.0;
    if (off > worst && !known(row.id)) worst = off, where = row.id;
  }
  std::printf("%-32s rows %4zu  agreeing %4zu  worst of computed rows %.1e relative (%s)\n", topic.name,
              topic.rows.size(), static_cast<std::size_t>(agreeing), worst, where);
}

}  // namespace

TEST_CASE("outside figures hold") {
  for (const auto& table : {coils_and_skin, capacitances_and_lines, antennas, couplings, waves}) {
    const Topic topic = table();
    print_line(topic);
    std::ranges::for_each(topic.rows, check);
  }
}

}  // namespace wattfall::physics
