// Golden pairs: errors/X.feed and X.expected, which is what `wattfall run X.feed` says in that folder, and `exit N`.
// Carets are compared exactly. WATTFALL_ACCEPT=1 rewrites what is expected: read it as a user would before it is
// committed.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>

#include "../support/program.hpp"

using wattfall::test::read_file;

namespace fs = std::filesystem;

TEST_CASE("each design with mistakes is answered to the letter") {
  const fs::path folder = fs::path(WATTFALL_TEST_DATA) / "errors";
  std::vector<fs::path> feeds;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".feed") feeds.push_back(entry.path());
  std::sort(feeds.begin(), feeds.end());
  REQUIRE(feeds.size() >= 20);
  for (const fs::path& feed : feeds) {
    const auto ran = wattfall::test::program({"run", feed.filename().string()}, {.folder = folder});
    const std::string said = ran.err + "exit " + std::to_string(ran.code) + "\n";
    const fs::path expected = fs::path(feed).replace_extension(".expected");
    CAPTURE(feed.filename());
    CHECK(ran.out.empty());
    if (std::getenv("WATTFALL_ACCEPT") != nullptr) std::ofstream(expected, std::ios::binary) << said;
    CHECK(said == read_file(expected));
  }
}
