// Bad input: files that are none, files too long, files elsewhere, broken measurements; and mistakes that hide no
// others.
#include <catch2/catch.hpp>

#include "cabin.hpp"

using namespace app_tests;

namespace fs = std::filesystem;

namespace {

const std::string wire = "# Hz Z RI R 1\n7000000 50 0\n7100000 50 0\n";

/// A design whose load is measured in the file of this name, named in line 2.
std::string measured(const std::string& name) {
  return "source rig at desk : 100 W\nload wire at desk : measured \"" + name + "\"\nsweep at [7 MHz]\n";
}

bool says(const Ran& ran, const std::string& words) {
  return ran.err.find(words) != std::string::npos;
}

/// How many diagnostics there are.
std::size_t count(const Ran& ran) {
  std::size_t found = 0;
  for (std::size_t at = 0; (at = ran.err.find("error: ", at)) != std::string::npos; ++at) ++found;
  return found;
}

}  // namespace

TEST_CASE("an empty file, a file of blanks and one of comments say what is missing") {
  for (const std::string text : {"", "\n\n  \n", "# nothing\n"}) {
    const Ran ran = program({"run", "-"}, {.input = text});
    CAPTURE(text, ran.err);
    CHECK(refused(ran, 3));
    CHECK(says(ran, "no-source"));
    CHECK(says(ran, "no-sweep"));
  }
}

TEST_CASE("a file longer than 1 MiB is refused, and one of 1 MiB is read") {
  const std::string filler = "# " + std::string(60, 'x') + "\n";
  std::string text = matched;
  while (text.size() + filler.size() <= (1u << 20)) text += filler;
  text += std::string((1u << 20) - text.size(), '\n');
  CHECK(program({"run", "-"}, {.input = text}).code == 0);
  const Ran ran = program({"run", "-"}, {.input = text + "\n"});
  CHECK(refused(ran, 3));
  CHECK(says(ran, "file-too-long"));
  CHECK(count(ran) == 1);
  const Scratch scratch;
  CHECK(says(program({"run", scratch.write("long.feed", text + text)}), "file-too-long"));
}

TEST_CASE("NUL bytes and bytes that are no text are mistakes with a place") {
  for (const std::string& bad : {std::string("\0", 1), std::string("\x01"), std::string("\xff\xfe")}) {
    const Ran ran = program({"run", "-"}, {.input = matched + "plane " + bad + "there at desk\n"});
    CAPTURE(ran.err);
    CHECK(refused(ran, 3));
    CHECK(says(ran, "-:6:7:"));
    CHECK(ran.err.find(bad) == std::string::npos);
  }
}

TEST_CASE("a library given as a feed file is refused without a flood") {
  const Ran ran = program({"run", WATTFALL_PLUGIN_DIR "/reports.so"});
  CHECK(ran.code == 3);
  CHECK(ran.out.empty());
  CHECK(ran.err.size() < 1000000);
}

TEST_CASE("CR LF line ends and a missing last line end change nothing") {
  std::string with_cr;
  for (char c : matched) with_cr += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const std::string plain = program({"run", "-"}, {.input = matched}).out;
  CHECK(program({"run", "-"}, {.input = with_cr}).out == plain);
  CHECK(program({"run", "-"}, {.input = matched.substr(0, matched.size() - 1)}).out == plain);
}

TEST_CASE("a measured file that is missing or broken is 5, shown where it is named") {
  const Scratch scratch;
  scratch.write("broken.s1p", "# Hz Z RI R 1\n7000000 fifty 0\n");
  scratch.write("empty.s1p", "");
  scratch.write("headless.s1p", "! nothing\n");
  scratch.write("two.s2p", "# Hz S RI R 50\n7000000 0 0 1 0 1 0 0 0\n");
  fs::create_directory(scratch / "folder.s1p");
  for (const std::string name : {"nowhere.s1p", "broken.s1p", "empty.s1p", "headless.s1p", "folder.s1p", "two.s2p"}) {
    const Ran ran = program({"run", scratch.write("a.feed", measured(name))});
    CAPTURE(name, ran.err);
    CHECK(refused(ran, name == "two.s2p" ? ran.code : 5));
    CHECK(says(ran, "a.feed:2:"));
    CHECK(says(ran, "\"" + name + "\""));
  }
  const Ran broken = program({"run", scratch.write("a.feed", measured("broken.s1p"))});
  CHECK(says(broken, "broken.s1p:2:9:"));
}

TEST_CASE("a measured file that cannot be opened is 5") {
  const Scratch scratch;
  ::wattfall::test::shell("mkfifo pipe.s1p", {.folder = scratch.path()});
  CHECK(refused(program({"run", scratch.write("a.feed", measured("pipe.s1p"))}), 5));
}

TEST_CASE("a measurement asked outside its frequencies is a mistake of the design") {
  const Scratch scratch;
  scratch.write("wire.s1p", wire);
  const std::string path = scratch.write("a.feed", measured("wire.s1p"));
  CHECK(program({"run", path}).code == 0);
  CHECK(refused(program({"run", path, "--at", "14 MHz"}), 3));
  CHECK(says(program({"run", path, "--at", "14 MHz"}), "outside-data"));
}

TEST_CASE("files outside the design's folder are read only where that is allowed") {
  const Scratch scratch;
  const std::string there = scratch.write("elsewhere/wire.s1p", wire);
  fs::create_directories(scratch / "design");
  fs::create_symlink(there, scratch / "design/link.s1p");
  const std::vector<std::string> names{there, "../elsewhere/wire.s1p", "link.s1p", "../design/../elsewhere/wire.s1p"};
  for (const std::string& name : names) {
    const std::string path = scratch.write("design/a.feed", measured(name));
    const Ran ran = program({"run", path});
    CAPTURE(name, ran.err);
    CHECK(refused(ran, 5));
    CHECK(says(ran, "file-outside"));
    CHECK(says(ran, "a.feed:2:"));
    CHECK(says(ran, "--allow"));
    CHECK(program({"run", path, "--allow", scratch / "elsewhere"}).code == 0);
    CHECK(program({"run", path, "--allow", scratch / "nowhere", "--allow", scratch.path().string()}).code == 0);
    CHECK(refused(program({"run", path, "--allow", scratch / "design"}), 5));
  }
}

TEST_CASE("whether a file outside is there is not said") {
  const Scratch scratch;
  const Ran there = program({"run", scratch.write("design/a.feed", measured("/etc/passwd"))});
  const Ran not_there = program({"run", scratch.write("design/a.feed", measured("/etc/passwx"))});
  CHECK(refused(there, 5));
  CHECK(says(there, "file-outside"));
  CHECK(says(not_there, "file-outside"));
  CHECK(says(not_there, "--allow"));
  CHECK(there.err.find("root:") == std::string::npos);
}

TEST_CASE("a folder whose name begins as the design's is another folder") {
  const Scratch scratch;
  scratch.write("design2/wire.s1p", wire);
  CHECK(refused(program({"run", scratch.write("design/a.feed", measured("../design2/wire.s1p"))}), 5));
}

TEST_CASE("files are found beside the one that names them, from any current folder") {
  const Scratch scratch;
  scratch.write("parts/wire.s1p", wire);
  scratch.write("parts/load.feed", "load wire at desk : measured \"wire.s1p\"\n");
  scratch.write("a.feed", "source rig at desk : 100 W\ninclude \"parts/load.feed\"\nsweep at [7 MHz]\n");
  CHECK(program({"run", scratch / "a.feed"}, {.folder = "/"}).code == 0);
  CHECK(program({"run", "a.feed"}, {.folder = scratch.path()}).code == 0);
  CHECK(program({"run", "../a.feed"}, {.folder = scratch.path() / "parts"}).code == 0);
}

TEST_CASE("an included file that is missing is one mistake, not one for each name it would have brought") {
  const std::string text =
      "source rig at desk : 100 W\n"
      "include \"nowhere.feed\"\n"
      "tee atu from desk to feed\n"
      "load wire at feed : reach * 1 ohm/m\n"
      "sweep at [7 MHz]\n"
      "tune atu.C at each frequency for most power into wire\n";
  const Ran ran = program({"run", "-"}, {.input = text});
  CAPTURE(ran.err);
  CHECK(ran.code == 5);
  CHECK(says(ran, "file-not-found"));
  CHECK(!says(ran, "unknown-kind"));
  CHECK(!says(ran, "unknown-knob"));
}

TEST_CASE("a statement that cannot be read hides no other mistake, and makes no false ones") {
  SECTION("a source, a sweep, a quantity and a part") {
    const std::string text =
        "source rig at desk : 100 W 50 ohm\n"
        "set reach = 10 m 20\n"
        "capacitor C from desk to out : 100 pF, adjustable 10 pF to (200 pF\n"
        "line coax from out to feed : reach of RG-58\n"
        "load wires at feed : 50 ohm,, radiates 90 %\n"
        "sweep 7 MHz to to 7.1 MHz step 100 kHz\n"
        "tune C at each frequency for most power into wires\n"
        "require power into wires above 10 W\n"
        "require swr at dsk below 1.5\n"
        "require power into wirs above 10 W\n";
    const Ran ran = program({"run", "-"}, {.input = text});
    CAPTURE(ran.err);
    CHECK(refused(ran, 3));
    CHECK(count(ran) == 7);
    for (const std::string line : {"1", "2", "3", "5", "6", "9", "10"}) {
      CAPTURE(line);
      CHECK(says(ran, "-:" + line + ":"));
    }
  }
  SECTION("a box's header") {
    const std::string text =
        "source rig at desk : 100 W\n"
        "box ell (in out] {\n"
        "  inductor L from in to out : 1 uH, adjustable 0.1 uH to 2 uH\n"
        "}\n"
        "ell atu from desk to feed\n"
        "load wires at feed : 50 ohm\n"
        "sweep at [7 MHz]\n"
        "tune atu.L at each frequency for most power into wires\n"
        "require heat in atu.L below 5 W\n";
    const Ran ran = program({"run", "-"}, {.input = text});
    CAPTURE(ran.err);
    CHECK(refused(ran, 3));
    CHECK(!says(ran, "-:5:"));
    CHECK(!says(ran, "-:8:"));
    CHECK(!says(ran, "-:9:"));
  }
  SECTION("a variant's header, with --variant") {
    const std::string text =
        "source rig at desk : 100 W\n"
        "variant \"a\" b {\n"
        "  load wires at desk : 50 ohm\n"
        "}\n"
        "sweep at [7 MHz]\n"
        "require power into wires above 1 W\n";
    const Ran ran = program({"run", "-", "--variant", "a"}, {.input = text});
    CAPTURE(ran.err);
    CHECK(refused(ran, 3));
    CHECK(count(ran) == 1);
  }
  SECTION("and what the parser could read is still looked at") {
    const Ran ran = program(
        {"run", "-"}, {.input = matched + "resistor R from desk to desk2 : 5 ohm,, x\ncapacitor C at desk : 3 V\n"});
    CAPTURE(ran.err);
    CHECK(refused(ran, 3));
    CHECK(says(ran, "-:6:"));
    CHECK(says(ran, "-:7:"));
    CHECK(!says(ran, "no-source"));
  }
}
