// The grammar from outside: text in, tree out.
#include <catch2/catch.hpp>

#include "grammar/parse.hpp"

TEST_CASE("an empty file is a file without statements") {
  const auto result = wattfall::parse(std::make_shared<const wattfall::Source>("x.feed", ""));
  CHECK(result.ok());
  CHECK(result.value->statements.empty());
}
