// contract.md: a report is written whole or not at all; pipes and devices are written to as they are.
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>

#include "cabin.hpp"

using namespace app_tests;

namespace fs = std::filesystem;

namespace {

/// Whether `path` now has a text report of its own.
bool has_report(const fs::path& path) {
  return read_file(path).find("VERDICT") != std::string::npos;
}

}  // namespace

TEST_CASE("several writers at once, each to its file and one to standard output") {
  const Scratch scratch;
  const Ran ran =
      program({"run", "-", "--to", "text", "--to", "json=r.json", "--to", "csv=r.csv", "--to", "text=r.txt"},
              {.folder = scratch.path(), .input = matched});
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
  CHECK(scratch.listing() == "r.csv\nr.json\nr.txt\n");
  CHECK(read_file(scratch / "r.txt") == ran.out);
  CHECK(json::parse(read_file(scratch / "r.json"))["schema"] == 1);
  CHECK(read_file(scratch / "r.csv") == program({"run", "-", "--to", "csv"}, {.input = matched}).out);
}

TEST_CASE("with every report in a file, standard output is empty") {
  const Scratch scratch;
  const Ran ran = program({"run", "-", "--to", "text=r"}, {.folder = scratch.path(), .input = mismatched});
  CHECK(ran.code == 1);
  CHECK(ran.out.empty());
  CHECK(has_report(scratch / "r"));
}

TEST_CASE("an old report is replaced, and keeps its permissions") {
  const Scratch scratch;
  const std::string path = scratch.write("r", "the old one, which is longer than nothing\n");
  ::chmod(path.c_str(), 0640);
  CHECK(program({"run", "-", "--to", "text=" + path}, {.input = matched}).code == 0);
  CHECK(has_report(path));
  CHECK(read_file(path).find("the old one") == std::string::npos);
  struct stat now {};
  ::stat(path.c_str(), &now);
  CHECK((now.st_mode & 07777) == 0640);
  CHECK(scratch.listing() == "r\n");
}

TEST_CASE("a new report has the permissions of any new file") {
  const Scratch scratch;
  CHECK(shell("umask 027; \"$WATTFALL\" run - --to text=r", {.folder = scratch.path(), .input = matched}).code == 0);
  struct stat now {};
  ::stat((scratch / "r").c_str(), &now);
  CHECK((now.st_mode & 07777) == 0640);
}

TEST_CASE("a report that cannot be written is 5, named, and no other report is touched") {
  const Scratch scratch;
  const std::string old = scratch.write("old", "the old one\n");
  scratch.write("file", "");
  for (const std::string bad : {"nowhere/r", "file/r", "/proc/r", "/dev/full", "."}) {
    CAPTURE(bad);
    const Ran ran = program({"run", "-", "--to", "text", "--to", "csv=old", "--to", "json=" + bad},
                            {.folder = scratch.path(), .input = matched});
    CHECK(refused(ran, 5));
    CHECK(ran.err.find("`" + bad + "` could not be written") != std::string::npos);
    CHECK(read_file(old) == "the old one\n");
    CHECK(scratch.listing() == "file\nold\n");
  }
}

TEST_CASE("a read-only report stays as it is") {
  const Scratch scratch;
  const std::string path = scratch.write("r", "the old one\n");
  ::chmod(path.c_str(), 0400);
  if (::access(path.c_str(), W_OK) == 0) {
    WARN("skipped: root may write everything");
    return;
  }
  CHECK(refused(program({"run", "-", "--to", "text=" + path}, {.input = matched}), 5));
  CHECK(read_file(path) == "the old one\n");
}

TEST_CASE("a disk that is full leaves the old report, and no draft") {
  // As much as a file may grow, a limit on its size can stand for a full disk; a report of 50 points is longer than 4
  // blocks.
  const Scratch scratch;
  scratch.write("r", "the old one\n");
  const Ran ran =
      shell("trap '' XFSZ; ulimit -f 4; \"$WATTFALL\" run - --sweep '7 MHz to 7.2 MHz, 200 points' --to json=r",
            {.folder = scratch.path(), .input = matched});
  CAPTURE(ran.err);
  CHECK(ran.code == 5);
  CHECK(ran.err.find("`r` could not be written") != std::string::npos);
  CHECK(read_file(scratch / "r") == "the old one\n");
  CHECK(scratch.listing() == "r\n");
}

TEST_CASE("an interrupted or terminated program leaves the old report, and no draft") {
  const Scratch scratch;
  scratch.write("r", "the old one\n");
  scratch.write("matched.feed", matched);
  for (const std::string signal : {"INT", "TERM"}) {
    // It waits for a reader of the FIFO until it is stopped.
    const Ran ran = shell(
        "rm -f pipe; mkfifo pipe; \"$WATTFALL\" run matched.feed --to text=r --to csv=pipe & child=$!; sleep 1; kill "
        "-" +
            signal + " $child; wait $child",
        {.folder = scratch.path()});
    CAPTURE(signal, ran.code, ran.err);
    CHECK(ran.code != 0);
    CHECK(read_file(scratch / "r") == "the old one\n");
    CHECK(scratch.listing() == "matched.feed\npipe\nr\n");
  }
}

TEST_CASE("a program that is killed at any moment leaves the old report or the new one, and nothing that stays") {
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  const std::string run = "\"$WATTFALL\" run matched.feed --sweep '7 MHz to 7.2 MHz, 2000 points' --to json=r --to text=t";
  const Surroundings here{.folder = scratch.path()};
  REQUIRE(shell(run, here).code == 0);
  const std::string whole = read_file(scratch / "r");
  scratch.write("whole", whole);
  // How long a whole run takes here is measured, and the moments are spread over it.
  constexpr int runs = 50;
  const Ran loop = shell(
      "began=$(date +%s%N); " + run + "; took=$(( ($(date +%s%N) - began) / 1000 )); kept=0; made=0; k=0\n"
      "while [ $k -lt " + std::to_string(runs) + " ]; do\n"
      "  k=$((k + 1)); echo 'the old one' > r\n" +
      "  " + run + " & child=$!\n"
      "  sleep $(printf '%d.%06d' $((took * k / " + std::to_string(runs) + " / 1000000)) $((took * k / " + std::to_string(runs) + " % 1000000)))\n"
      "  kill -KILL $child 2>/dev/null; wait $child 2>/dev/null\n"
      "  case $(head -c 11 r) in 'the old one') kept=$((kept + 1));; *) made=$((made + 1)); cp r made;; esac\n"
      "  [ ! -f made ] || cmp made whole || exit 9\n"
      "  for name in *; do case $name in matched.feed|whole|made|r|t|[rt].wattfall-draft*);; *) echo \"left: $name\"; exit 8;; esac; done\n"
      "done\necho $kept kept, $made made",
      here);
  CAPTURE(loop.out, loop.err);
  CHECK(loop.code == 0);
  // Killed at the first moments it has written nothing.
  CHECK(loop.out.find(" kept, ") != std::string::npos);
  CHECK(loop.out.find("0 kept") != 0);
  // What a kill may have left is gone after the next run.
  scratch.write("r.wattfall-draft", "of a run that was killed\n");
  CHECK(shell(run, here).code == 0);
  CHECK(read_file(scratch / "r") == whole);
  CHECK_FALSE(fs::exists(scratch / "r.wattfall-draft"));
}

TEST_CASE("two runs that write the same report at once leave one of them whole") {
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  const Ran both = shell("for k in 1 2 3 4 5 6 7 8; do \"$WATTFALL\" run matched.feed --to json=r & children=\"$children $!\"; done; for child in $children; do wait $child || exit 7; done",
                         {.folder = scratch.path()});
  CAPTURE(both.err);
  CHECK(both.code == 0);
  CHECK(scratch.listing() == "matched.feed\nr\n");
  CHECK(json::parse(read_file(scratch / "r")).contains("variants"));
}

TEST_CASE("through a symbolic link the file it stands for is replaced, and the link stays") {
  const Scratch scratch;
  scratch.write("deep/target", "the old one\n");
  fs::create_symlink("deep/target", scratch / "link");
  fs::create_symlink("link", scratch / "again");
  CHECK(program({"run", "-", "--to", "text=again"}, {.folder = scratch.path(), .input = matched}).code == 0);
  CHECK(fs::is_symlink(scratch / "again"));
  CHECK(fs::is_symlink(scratch / "link"));
  CHECK(has_report(scratch / "deep/target"));
  CHECK(scratch.listing() == "again\ndeep\ndeep/target\nlink\n");
}

TEST_CASE("through a symbolic link to nothing the file it stands for is made") {
  const Scratch scratch;
  fs::create_symlink("target", scratch / "link");
  CHECK(program({"run", "-", "--to", "text=link"}, {.folder = scratch.path(), .input = matched}).code == 0);
  CHECK(fs::is_symlink(scratch / "link"));
  CHECK(has_report(scratch / "target"));
}

TEST_CASE("/dev/null is written to, not replaced") {
  const Ran ran = program({"run", "-", "--to", "text=/dev/null"}, {.input = matched});
  CHECK(ran.code == 0);
  CHECK(ran.out.empty());
  CHECK(fs::is_character_file("/dev/null"));
}

TEST_CASE("a FIFO is written to, not replaced") {
  const Scratch scratch;
  const Ran ran = shell("mkfifo pipe; cat pipe & \"$WATTFALL\" run - --to text=pipe; code=$?; wait; exit $code",
                        {.folder = scratch.path(), .input = matched});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("VERDICT") != std::string::npos);
  CHECK(fs::is_fifo(scratch / "pipe"));
}

TEST_CASE("a closed pipe ends the program quietly") {
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  // Far more than a pipe holds, so that the writer meets its end.
  const Ran ran = shell("\"$WATTFALL\" run matched.feed --sweep '7 MHz to 7.2 MHz, 20000 points' --to csv | head -1",
                        {.folder = scratch.path()});
  CHECK(ran.code == 0);
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 1);
  CHECK(ran.err.empty());
}

TEST_CASE("a full or closed standard output is 5, and said") {
  const Scratch scratch;
  scratch.write("matched.feed", matched);
  scratch.write("mistaken.feed", mistaken);
  for (const std::string where : {"> /dev/full", ">&-"}) {
    const Ran ran = shell("\"$WATTFALL\" run matched.feed " + where, {.folder = scratch.path()});
    CAPTURE(where, ran.err);
    CHECK(refused(ran, 5));
    CHECK(ran.err.find("standard output") != std::string::npos);
    // Errors that were to be JSON there are not lost.
    CHECK(shell("\"$WATTFALL\" run mistaken.feed --to json " + where, {.folder = scratch.path()})
              .err.find("unknown-unit") != std::string::npos);
  }
}

TEST_CASE("a number that does not exist is null in JSON, and no writer prints it as one") {
  const std::string open =
      "source rig at desk : 100 W, 50 ohm\n"
      "load   wires at desk : j50 ohm\n"
      "plane  there at desk\n"
      "sweep at [7 MHz]\n"
      "require swr at desk below 1.5\n"
      "require total loss below 3 dB\n";
  const Ran ran = program({"run", "-", "--to", "json"}, {.input = open});
  CAPTURE(ran.err);
  CHECK(ran.code == 1);
  const json report = json::parse(ran.out);
  CHECK(report["variants"][0]["sources"][0]["swr"][0].is_null());
  CHECK(report["variants"][0]["totals"]["total_loss_db"][0].is_null());
  CHECK(report["variants"][0]["planes"][0]["swr"][0].is_null());
  for (const std::string writer : {"json", "text", "csv"}) {
    std::string text = program({"run", "-", "--to", writer}, {.input = open}).out;
    for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    CAPTURE(writer, text);
    CHECK(!text.empty());
    CHECK(text.find("nan") == std::string::npos);
    CHECK(text.find("1e+308") == std::string::npos);
    if (writer == "csv") CHECK(text.find("inf") == std::string::npos);
  }
}

TEST_CASE("what a preferred value is made of stands in every report, for each setting that stands out") {
  const std::string text =
      "design \"drawer\"\nsource rig at desk : 100 W, 50 ohm\ncapacitor C at desk : adjustable series(E12, from 10 pF, "
      "to 1 nF, parallel pairs), Q 1000\n"
      "inductor L from desk to feed : adjustable 0.1 uH to 10 uH, Q 200\nload wires at feed : 20-j142 ohm\nsweep at "
      "[7.1 MHz]\n"
      "tune C, L at 7.1 MHz for most power into wires\n";
  const json variant = report_of(text)["variants"][0];
  const json made = variant["settings"][0]["made"][0];
  CHECK(made["first"].get<double>() + made["second"].get<double>() == Approx(made["value"].get<double>()));
  const json& searched = variant["tuning"][0]["knobs"][0]["made"];
  CHECK(std::find(searched.begin(), searched.end(), made) != searched.end());
  CHECK(searched.size() <= variant["tuning"][0]["matches"].size());
  const Scratch scratch;
  const Ran ran = program({"run", "-", "--to", "text", "--to", "csv=" + (scratch / "csv"), "--to",
                           "markdown=" + (scratch / "md"), "--to", "page=" + (scratch / "page")},
                          {.input = text});
  REQUIRE(ran.code == 0);
  CHECK(ran.out.find("470 pF and 56 pF in parallel") != std::string::npos);
  CHECK(read_file(scratch / "md").find("470 pF and 56 pF in parallel") != std::string::npos);
  const std::string csv = read_file(scratch / "csv");
  CHECK(csv.find(",knob:C,made_first:C,made_second:C,made_joined:C,") != std::string::npos);
  CHECK(csv.find(",4.7e-10,5.6e-11,parallel,") != std::string::npos);
  CHECK(read_file(scratch / "page").find("Made of preferred values") != std::string::npos);
}

TEST_CASE("the buying list says at which frequency each part needs what") {
  const std::string text =
      "design \"bands\"\nsource rig at desk : 100 W, 50 ohm\nload wire at wall : table [3.65 MHz: 32-j210 ohm, 7.1 "
      "MHz: 410+j380 ohm, 14.2 MHz: 88-j145 ohm]\n"
      "tuner atu from desk to wall : \"high-pass L, coil at the antenna\", coil Q 220\nsweep at [3.65 MHz, 7.1 MHz, "
      "14.2 MHz]\n"
      "tune atu at each frequency for most power into wire\n";
  const json variant = report_of(text)["variants"][0];
  const json& hertz = variant["frequencies_hz"];
  const auto at = [&](const json& series, const json& place) {
    const auto found = std::find(hertz.begin(), hertz.end(), place);
    REQUIRE(found != hertz.end());
    return series[std::size_t(found - hertz.begin())].get<double>();
  };
  const json& tuner = variant["buy"][0];
  REQUIRE(tuner["parts"].size() == 2);
  for (const json& part : tuner["parts"]) {
    const auto named = [&](const json& things, const char* key) {
      return *std::find_if(things.begin(), things.end(), [&](const json& thing) { return thing[key] == part["part"]; });
    };
    const json setting = named(variant["settings"], "knob"), books = named(variant["parts"], "name");
    const json& values = setting[part["unit"] == "F" ? "value_f" : "value_h"];
    CHECK(part["lower"].get<double>() == Approx(at(values, part["lower_at_hz"]) / tuner["range_margin"].get<double>()));
    CHECK(part["upper"].get<double>() == Approx(at(values, part["upper_at_hz"]) * tuner["range_margin"].get<double>()));
    for (const json& value : values) {
      CHECK(value >= at(values, part["lower_at_hz"]));
      CHECK(value <= at(values, part["upper_at_hz"]));
    }
    for (const auto& [figure, place, margin] : {std::tuple{"volts_peak", "volts_at_hz", "volts_margin"},
                                                {"amps_rms", "amps_at_hz", "amps_margin"},
                                                {"heat_w", "heat_at_hz", "heat_margin"}})
      CHECK(part[figure].get<double>() == Approx(at(books[figure], part[place]) * tuner[margin].get<double>()));
  }
}

TEST_CASE("settings along a spare knob that all lose the same are told apart by their volts") {
  // Parts without loss lose nothing at any of them; through a larger coil goes the same power at more volts.
  const auto tee = [](const std::string& coil) {
    return "source rig at desk : 100 W, 50 ohm\nload wires at feed : 61 - j142 ohm\nsweep at [7.1 MHz]\n"
           "capacitor Cin from desk to mid : adjustable 15 pF to 330 pF\ninductor L from mid to ground : adjustable "
           "0.2 uH to 20 uH" +
           coil +
           "\ncapacitor Cout from mid to feed : adjustable 15 pF to 330 pF\ntune Cin, L, Cout at 7.1 MHz for most "
           "power into wires\n";
  };
  for (const char* writer : {"text", "markdown"}) {
    CAPTURE(writer);
    const Ran same = program({"run", "-", "--to", writer}, {.input = tee("")});
    CHECK(same.out.find("these all match, and lose the same") != std::string::npos);
    CHECK(same.out.find("has the least volts") != std::string::npos);
    CHECK(same.out.find("loses least") == std::string::npos);
    const Ran lossy = program({"run", "-", "--to", writer}, {.input = tee(", Q 180")});
    CHECK(lossy.out.find("these all match, and lose more or less") != std::string::npos);
    CHECK(lossy.out.find("loses least") != std::string::npos);
  }
}

TEST_CASE("a line's heat is told in watts a metre, in every report") {
  // 100 W into a matched line of 1 dB a metre: ln(10)/10 of 100 W, 23 W/m, at its beginning.
  const std::string text =
      "source rig at desk : 100 W, 50 ohm\nload wires at feed : 50 ohm\nline coax from desk to feed : 1 m, 50 ohm, "
      "loss 100 dB/100m at 7 MHz, limit 7 W/m\n"
      "sweep at [7 MHz]\n";
  for (const char* writer : {"text", "markdown", "page", "junit", "json"}) {
    const Ran ran = program({"run", "-", "--to", writer}, {.input = text});
    CAPTURE(writer, ran.out, ran.err);
    CHECK(ran.out.find("coax takes 23 W/m of heat at 7 MHz, and is rated for 7 W/m") != std::string::npos);
  }
}
