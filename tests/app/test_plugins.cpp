// contract.md, "Plugins": where they are looked for, and what a bad one does to the run.
#include <catch2/catch.hpp>

#include "cabin.hpp"

using namespace app_tests;

namespace {

const std::string good = TEST_PLUGINS "/good";
const std::string wrong_interface = TEST_PLUGINS "/wrong_interface";

}  // namespace

TEST_CASE("--plugins brings those of a folder, before the built-in ones") {
  const Ran ran = program({"list", "plugins", "--plugins", good});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("good ") < ran.out.find("line-loss"));
  CHECK(ran.out.find(good) != std::string::npos);
  CHECK(program({"run", "-", "--plugins", good, "--to", "echo"}, {.input = matched}).out.starts_with("{"));
}

TEST_CASE("WATTFALL_PLUGINS names folders, parted by colons") {
  const Ran ran = program({"list", "plugins"}, {.variables = {{"WATTFALL_PLUGINS", ":" + good + ":"}}});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("good ") != std::string::npos);
}

TEST_CASE("--no-plugins loads the built-in ones alone") {
  const Ran ran =
      program({"list", "plugins", "--no-plugins", "--plugins", good}, {.variables = {{"WATTFALL_PLUGINS", good}}});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("good ") == std::string::npos);
  CHECK(ran.out.find("line-loss") != std::string::npos);
  CHECK(program({"run", "-", "--no-plugins"}, {.input = matched}).code == 0);
}

TEST_CASE("a folder of plugins that is not there is 5, and named") {
  for (const std::string verb : {"run", "list"}) {
    const Ran ran = verb == "run" ? program({"run", "-", "--plugins", "/nowhere"}, {.input = matched})
                                  : program({"list", "--plugins", "/nowhere"});
    CHECK(refused(ran, 5));
    CHECK(ran.err.find("`/nowhere`") != std::string::npos);
  }
  CHECK(refused(program({"list"}, {.variables = {{"WATTFALL_PLUGINS", "/nowhere"}}}), 5));
}

TEST_CASE("a plugin of another interface is refused with both numbers, and the program goes on without it") {
  const Ran ran = program({"run", "-", "--plugins", wrong_interface}, {.input = matched});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("VERDICT") != std::string::npos);
  CHECK(ran.err.find("wrong_interface.so") != std::string::npos);
  CHECK(ran.err.find("interface 7") != std::string::npos);
}

TEST_CASE("--quiet says nothing of a plugin that is left out, and still says errors") {
  CHECK(program({"run", "-", "--quiet", "--plugins", wrong_interface}, {.input = matched}).err.empty());
  CHECK(refused(program({"run", "-", "--quiet"}, {.input = mistaken}), 3));
}

TEST_CASE("a program without its plugins says what is missing: 5 where the run needs it") {
  // A copy of the program in a folder without plugins beside it.
  const Scratch scratch;
  std::filesystem::create_directories(scratch / "bin/plugins");
  std::filesystem::copy_file(WATTFALL_PROGRAM, scratch / "bin/wattfall");
  const std::string lonely = scratch / "bin/wattfall";
  const std::string built_in = WATTFALL_PLUGIN_DIR;
  const auto bring = [&](const std::string& name) {
    std::filesystem::copy_file(built_in + "/" + name, scratch / ("bin/plugins/" + name));
  };

  SECTION("no report writer") {
    const Ran ran = wattfall::test::run_program(lonely, {"run", "-"}, {.input = matched});
    CHECK(refused(ran, 5));
    CHECK(ran.err.find("unknown-writer") != std::string::npos);
  }
  SECTION("no optimizer for a design that tunes") {
    bring("reports.so");
    bring("line_loss.so");
    const Ran ran = wattfall::test::run_program(lonely, {"run", "-"}, {.input = tunable});
    CAPTURE(ran.err);
    CHECK(refused(ran, 5));
    CHECK(ran.err.find("no-optimizer") != std::string::npos);
    CHECK(wattfall::test::run_program(lonely, {"run", "-", "--as-written"}, {.input = tunable}).code == 0);
    CHECK(wattfall::test::run_program(lonely, {"run", "-"}, {.input = matched}).code == 0);
  }
  SECTION("no line model for a design with a line") {
    bring("reports.so");
    const std::string text =
        "source rig at desk : 100 W\n"
        "line coax from desk to feed : 10 m, 50 ohm, loss 3 dB/100m at 10 MHz\n"
        "load wire at feed : 50 ohm\n"
        "sweep at [7 MHz]\n";
    const Ran ran = wattfall::test::run_program(lonely, {"run", "-"}, {.input = text});
    CAPTURE(ran.err);
    CHECK(refused(ran, 5));
    CHECK(ran.err.find("no-line-model") != std::string::npos);
    CHECK(ran.err.find("-:2:") != std::string::npos);
  }
  SECTION("no plugins folder at all") {
    std::filesystem::remove(scratch / "bin/plugins");
    const Ran ran = wattfall::test::run_program(lonely, {"run", "-"}, {.input = matched});
    CHECK(refused(ran, 5));
  }
}
