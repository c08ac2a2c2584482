// JUnit's XML against its form, and its counts against the document's.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "../support/program.hpp"
#include "renders.hpp"
#include "schema.hpp"

using formats::count_of;
using nlohmann::json;
using wattfall::test::program;
using wattfall::test::read_file;
using wattfall::test::Scratch;

namespace {

const std::string feed =
    "design \"plain\"\n"
    "source rig at desk : 100 W, 50 ohm\n"
    "resistor R from desk to feed : 25 ohm, limit 10 W\n"
    "load wires at feed : 75 ohm\n"
    "sweep at [7 MHz]\n"
    "require swr at desk below 3\n"
    "require efficiency above 90 %\n";

}  // namespace

TEST_CASE("the XSD refuses what is not of its form") {
  CHECK(formats::junit_faults("<testsuites name=\"x\" tests=\"0\" failures=\"0\" errors=\"0\"/>") == "");
  CHECK(formats::junit_faults("<testsuites name=\"x\" tests=\"many\" failures=\"0\" errors=\"0\"/>") != "");
  CHECK(formats::junit_faults("<testsuites name=\"x\" tests=\"0\" failures=\"0\" errors=\"0\"><test/></testsuites>") != "");
  CHECK(formats::junit_faults("<testsuites") != "");
}

TEST_CASE("a run's JUnit report has a case a requirement and rating") {
  // 100 ohm on 50 ohm: SWR 2; 88.9 W taken, a quarter of it heats R: 22.2 W over its 10 W, and 66.7 % on the air (by hand).
  const auto ran = program({"run", "-", "--to", "junit"}, {.input = feed});
  CHECK(ran.code == 1);
  CHECK(formats::junit_faults(ran.out) == "");
  CHECK(ran.out.find("tests=\"3\" failures=\"2\"") != std::string::npos);
  CHECK(count_of(ran.out, "<testcase ") == 3);
  CHECK(count_of(ran.out, "<failure ") == 2);
  CHECK(ran.out.find("It is 66.7 % at 7 MHz") != std::string::npos);
  CHECK(ran.out.find("R takes 22.2 W of heat") != std::string::npos);
}

TEST_CASE("the JUnit reports of compare and check are of the form") {
  const Scratch scratch;
  scratch.write("a.feed", feed);
  std::string other = feed;
  other.replace(other.find("25 ohm"), 6, "5 ohm");
  scratch.write("b.feed", other);
  const auto compared = program({"compare", "a.feed", "b.feed", "--to", "junit"}, {.folder = scratch.path()});
  CHECK(formats::junit_faults(compared.out) == "");
  CHECK(count_of(compared.out, "<testsuite ") == 2);

  CHECK(program({"check", ".", "--accept", "--quiet"}, {.folder = scratch.path()}).code == 1);
  other.replace(other.find("5 ohm, limit"), 5, "6 ohm");
  scratch.write("b.feed", other);
  const auto checked = program({"check", ".", "--to", "junit"}, {.folder = scratch.path()});
  CHECK(checked.code == 1);
  CHECK(formats::junit_faults(checked.out) == "");
  CHECK(checked.out.find("Changed since the baseline:&#10;b.feed:3: R, resistance: 5 ohm -&gt; 6 ohm") != std::string::npos);
}
