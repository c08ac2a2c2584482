// contract.md, "Options common to the verbs": what each of them changes in the report.
#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "cabin.hpp"

using namespace app_tests;

namespace {

std::vector<std::string> names_of(const json& variants) {
  std::vector<std::string> names;
  for (const json& variant : variants)
    names.push_back(variant.at("name").is_null() ? "null" : variant.at("name").get<std::string>());
  return names;
}

/// The loss of the line in the first variant at its first point [dB].
double matched_loss(const json& report) {
  for (const json& part : report.at("variants")[0].at("parts"))
    if (part.at("name") == "coax") return part.at("matched_loss_db")[0];
  return -1.0;
}

}  // namespace

TEST_CASE("- reads standard input, and a file gives the same numbers") {
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  json from_input = report_of(matched);
  json from_file = json::parse(program({"run", "matched.feed", "--to", "json"}, {.folder = scratch.path()}).out);
  CHECK(from_input["design"]["file"] == "-");
  CHECK(from_file["design"]["file"] == "matched.feed");
  CHECK(from_input["variants"] == from_file["variants"]);
}

TEST_CASE("files beside standard input are those of the current folder") {
  const Scratch scratch;
  scratch.write("wire.s1p", "# Hz Z RI R 1\n7000000 50 0\n7100000 50 0\n");
  const std::string text = "source rig at desk : 100 W\nload wire at desk : measured \"wire.s1p\"\nsweep at [7 MHz]\n";
  CHECK(program({"run", "-"}, {.folder = scratch.path(), .input = text}).code == 0);
  CHECK(refused(program({"run", "-"}, {.folder = "/", .input = text}), 5));
}

TEST_CASE("--variant takes the one") {
  CHECK(names_of(report_of(tunable)["variants"]) == std::vector<std::string>{"short", "long"});
  CHECK(names_of(report_of(tunable, {"--variant", "long"})["variants"]) == std::vector<std::string>{"long"});
  CHECK(refused(program({"run", "-", "--variant", "x"}, {.input = matched}), 2));
}

TEST_CASE("--set gives a quantity another value, in every variant") {
  const double as_written = matched_loss(report_of(tunable));
  CHECK(matched_loss(report_of(tunable, {"--set", "reach=20 m"})) == Approx(2.0 * as_written));
  CHECK(matched_loss(report_of(tunable, {"--set", "reach=20m"})) == Approx(2.0 * as_written));
  CHECK(matched_loss(report_of(tunable, {"--set", "reach = 4*5 m"})) == Approx(2.0 * as_written));
}

TEST_CASE("--set with a value that does not fit where it is used is a mistake of the design, shown there") {
  const Ran ran = program({"run", "-", "--set", "reach=5 pF"}, {.input = tunable});
  CHECK(refused(ran, 3));
  CHECK(ran.err.find("-:7:32:") != std::string::npos);
}

TEST_CASE("--set gives a part's main value, in a box too") {
  const std::string boxed =
      "source rig at desk : 100 W, 50 ohm\n"
      "box match (in, out) {\n  inductor L from in to out : 1 uH, adjustable 0.1 uH to 5 uH\n}\n"
      "match tuner from desk to feed\n"
      "load wire at feed : 50 ohm\n"
      "sweep at [7 MHz]\n";
  const double ohms = 2.0 * 3.14159265358979 * 7e6 * 2e-6;
  const json report = report_of(boxed, {"--set", "tuner.L=2 uH"});
  CHECK(report["variants"][0]["sources"][0]["load_impedance_ohm"][0][1] == Approx(ohms));
  const Ran beyond = program({"run", "-", "--set", "tuner.L=9 uH"}, {.input = boxed});
  CAPTURE(beyond.err);
  CHECK(beyond.out.empty());
  CHECK((beyond.code == 2 || beyond.code == 3));
  CHECK(refused(program({"run", "-", "--set", "tuner.M=2 uH"}, {.input = boxed}), 2));
}

TEST_CASE("--set may be given again and again, for different names") {
  const json report = report_of(tunable, {"--set", "reach=5 m", "--set", "coil=2 uH", "--as-written"});
  CHECK(report["variants"][0]["settings"][0]["value_h"][0] == Approx(2e-6));
}

TEST_CASE("--at takes the place of the file's sweep, and may be repeated") {
  const json report = report_of(tunable, {"--at", "6.9 MHz", "--at", "7.3MHz"});
  CHECK(report["variants"][0]["frequencies_hz"] == json::array({6.9e6, 7.3e6}));
}

TEST_CASE("--sweep takes the place of the file's sweep") {
  const json report = report_of(tunable, {"--sweep", "7 MHz to 7.2 MHz step 100 kHz"});
  CHECK(report["variants"][0]["frequencies_hz"] == json::array({7e6, 7.1e6, 7.2e6}));
  CHECK(report_of(matched, {"--sweep", "7 MHz to 8 MHz, 3 points"})["variants"][0]["frequencies_hz"].size() == 3);
}

TEST_CASE("a design without a sweep has one from the command line") {
  const std::string bare = "source rig at desk : 100 W\nload wire at desk : 50 ohm\n";
  CHECK(refused(program({"run", "-"}, {.input = bare}), 3));
  CHECK(program({"run", "-", "--at", "7 MHz"}, {.input = bare}).code == 0);
}

TEST_CASE("--as-written leaves the knobs where they are") {
  const json tuned = report_of(tunable), as_written = report_of(tunable, {"--as-written"});
  CHECK(tuned["variants"][0]["tuned"] == true);
  CHECK(as_written["variants"][0]["tuned"] == false);
  CHECK(as_written["variants"][0]["settings"][0]["value_h"] == json::array({1e-6, 1e-6}));
  CHECK(tuned["variants"][0]["settings"][0]["value_h"][0] != 1e-6);
}

TEST_CASE("--as-written refuses a knob that the file gives no value") {
  const std::string text =
      "source rig at desk : 100 W\n"
      "inductor coil from desk to feed : adjustable 0.1 uH to 10 uH\n"
      "load wires at feed : 50 - j80 ohm\n"
      "sweep at [7 MHz]\n"
      "tune coil at each frequency for least swr at desk\n";
  CHECK(program({"run", "-"}, {.input = text}).code == 0);
  const Ran ran = program({"run", "-", "--as-written"}, {.input = text});
  CHECK(refused(ran, 3));
  CHECK(ran.err.find("unset-knob") != std::string::npos);
  CHECK(ran.err.find("-:2:") != std::string::npos);
}

TEST_CASE("any number of threads gives the same bytes") {
  for (const std::string writer : {"text", "json", "csv"}) {
    const std::string one = program({"run", "-", "--to", writer, "--threads", "1"}, {.input = tunable}).out;
    CHECK(!one.empty());
    for (const std::string threads : {"2", "8"})
      CHECK(program({"run", "-", "--to", writer, "--threads", threads}, {.input = tunable}).out == one);
    CHECK(program({"run", "-", "--to", writer}, {.input = tunable}).out == one);
  }
}

TEST_CASE("colours are for a terminal, unless they are asked for") {
  const std::string escape = "\x1b[";
  CHECK(program({"run", "-"}, {.input = mistaken}).err.find(escape) == std::string::npos);
  CHECK(program({"run", "-", "--color", "always"}, {.input = mistaken}).err.find(escape) != std::string::npos);
  CHECK(program({"run", "-", "--color", "never"}, {.input = mistaken}).err.find(escape) == std::string::npos);
  CHECK(program({"run", "-"}, {.input = matched}).out.find(escape) == std::string::npos);
  CHECK(program({"run", "-", "--color", "always"}, {.input = matched}).out.find(escape) != std::string::npos);
}

TEST_CASE("colours on a terminal, and none there where NO_COLOR is set") {
  // `script` gives the child a terminal; where it is missing there is nothing to test with.
  if (shell("command -v script").code != 0) {
    WARN("skipped: `script` is not installed");
    return;
  }
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  const std::string line = "script -qec '\"$WATTFALL\" run matched.feed' /dev/null";
  CHECK(shell(line, {.folder = scratch.path()}).out.find("\x1b[") != std::string::npos);
  CHECK(shell(line, {.folder = scratch.path(), .variables = {{"NO_COLOR", "1"}}}).out.find("\x1b[") ==
        std::string::npos);
  // An empty one does not count (no-color.org).
  CHECK(shell(line, {.folder = scratch.path(), .variables = {{"NO_COLOR", ""}}}).out.find("\x1b[") !=
        std::string::npos);
}

TEST_CASE("on a terminal of 80 columns no line of any verb is longer") {
  if (shell("command -v script").code != 0) {
    WARN("skipped: `script` is not installed");
    return;
  }
  const std::string examples = WATTFALL_EXAMPLES;
  for (const std::string command :
       {"run 02_tuner_at_rig_or_mast.feed", "run 09_cabin_from_end_to_end.feed", "run 08_receiving_chain.feed", "compare 01_l_network_by_hand.feed 06_end_fed_wire.feed",
        "walk 05_doublet_with_open_wire_line.feed", "walk 10_choke_on_the_feedline.feed", "weigh 02_tuner_at_rig_or_mast.feed", "check ci"}) {
    CAPTURE(command);
    const Ran ran = shell("script -qec 'stty cols 80; \"$WATTFALL\" " + command + " 2>/dev/null' /dev/null", {.folder = examples, .variables = {{"NO_COLOR", "1"}}});
    std::istringstream lines(ran.out);
    std::size_t count = 0;
    for (std::string line; std::getline(lines, line); ++count) {
      if (line.ends_with('\r')) line.pop_back();
      const auto letters = std::count_if(line.begin(), line.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
      if (letters > 80) FAIL_CHECK(letters << ": " << line);
    }
    CHECK(count > 5);
  }
}

TEST_CASE("a report in a file has no colours, whatever is asked for") {
  const Scratch scratch;
  CHECK(program({"run", "-", "--color", "always", "--to", "text=" + (scratch / "r")}, {.input = matched}).code == 0);
  CHECK(read_file(scratch / "r").find("\x1b[") == std::string::npos);
}

TEST_CASE("--version says the version") {
  const Ran ran = program({"--version"});
  CHECK(ran.code == 0);
  CHECK(ran.out == "wattfall " WATTFALL_VERSION "\n");
  CHECK(ran.err.empty());
}

TEST_CASE("--help of the program and of each verb tells their options") {
  const Ran all = program({"--help"});
  CHECK(all.code == 0);
  CHECK(all.err.empty());
  for (const std::string word : {"run", "list", "Exit codes", "--version"})
    CHECK(all.out.find(word) != std::string::npos);
  const Ran run = program({"run", "--help"});
  CHECK(run.code == 0);
  for (const std::string word : {"--variant", "--set", "--at", "--sweep", "--as-written", "--to", "--threads",
                                 "--plugins", "--no-plugins", "--allow", "--quiet", "--color", "Example"})
    CHECK(run.out.find(word) != std::string::npos);
  const Ran list = program({"list", "--help"});
  CHECK(list.code == 0);
  for (const std::string word : {"kinds", "cables", "plugins", "units", "figures", "writers"})
    CHECK(list.out.find(word) != std::string::npos);
}
