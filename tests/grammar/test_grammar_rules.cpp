// The rules themselves: PEGTL's analysis looks for loops that consume nothing.
#include <catch2/catch.hpp>

#include "../../grammar/build_tree.hpp"

TEST_CASE("no rule can loop without reading anything") {
  CHECK(wattfall::count_rule_problems() == 0);
}
