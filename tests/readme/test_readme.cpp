// The README shows a netlist and what wattfall says of it: the two must belong together. WATTFALL_ACCEPT=1 writes the
// output anew.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "../support/program.hpp"

using wattfall::test::program;
using wattfall::test::Ran;
using wattfall::test::Surroundings;

namespace {

std::string read(const std::string& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

void write(const std::string& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

/// What stands between `before` and `after`, from `from` on; positions by reference.
std::string between(const std::string& text, const std::string& before, const std::string& after, std::size_t& begin,
                    std::size_t& end) {
  begin = text.find(before, begin);
  REQUIRE(begin != std::string::npos);
  begin += before.size();
  end = text.find(after, begin);
  REQUIRE(end != std::string::npos);
  return text.substr(begin, end - begin);
}

/// The same words; numbers may differ by a per cent, since a tuner's last digits are those of the machine's rounding.
bool alike(const std::string& one, const std::string& other) {
  std::istringstream a(one), b(other);
  std::string x, y;
  while (true) {
    const bool more = static_cast<bool>(a >> x);
    if (more != static_cast<bool>(b >> y)) return false;
    if (!more) return true;
    if (x == y) continue;
    char *x_end = nullptr, *y_end = nullptr;
    const double p = std::strtod(x.c_str(), &x_end), q = std::strtod(y.c_str(), &y_end);
    const bool numbers = x_end != x.c_str() && y_end != y.c_str() && std::string(x_end) == y_end;
    if (!numbers || std::abs(p - q) > 0.01 * std::max(std::abs(p), std::abs(q))) return false;
  }
}

std::string output_of(const std::vector<std::string>& arguments, const Surroundings& around) {
  const Ran ran = program(arguments, around);
  INFO(ran.err);
  REQUIRE(ran.code == 0);
  return ran.out;
}

}  // namespace

TEST_CASE("the README's netlist gives the README's output") {
  std::string readme = read(WATTFALL_README);
  std::size_t begin = 0, end = 0;
  const std::string feed = between(readme, "```feed\n", "```\n", begin, end);
  const std::string output = "\n```text\n" + output_of({"run", "-", "--no-plugins"}, {.input = feed}) + "```\n";
  std::size_t out_begin = end, out_end = 0;
  const std::string shown = between(readme, "<!-- output -->\n", "<!-- end -->", out_begin, out_end);
  if (std::getenv("WATTFALL_ACCEPT") != nullptr)
    write(WATTFALL_README, readme.replace(out_begin, out_end - out_begin, output));
  else {
    INFO(output);
    CHECK(alike(shown, output));
  }
}

TEST_CASE("the README's walk is the beginning of what the program says") {
  std::string readme = read(WATTFALL_README);
  const std::string all = output_of({"walk", "examples/01_l_network_by_hand.feed", "--no-plugins"},
                                    {.folder = std::filesystem::path(WATTFALL_README).parent_path()});
  const std::string part = "\n```text\n" + all.substr(all.find("From the load to the rig"), all.find("From the rig to the load") - all.find("From the load to the rig")) + "```\n";
  std::size_t begin = 0, end = 0;
  const std::string shown = between(readme, "<!-- walk -->\n", "<!-- end of walk -->", begin, end);
  if (std::getenv("WATTFALL_ACCEPT") != nullptr)
    write(WATTFALL_README, readme.replace(begin, end - begin, part));
  else {
    INFO(part);
    CHECK(alike(shown, part));
  }
}
