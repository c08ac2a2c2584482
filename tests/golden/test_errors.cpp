// Golden pairs: errors/X.feed and X.expected, which is what `wattfall run X.feed` says in that folder, and `exit N`. A
// first line `# with ...` gives more arguments. Texts too long to keep are made here, and held by errors/limits.expected.
// Carets are compared exactly. WATTFALL_ACCEPT=1 rewrites what is expected: read it as a user would before it is
// committed.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "../support/program.hpp"

using wattfall::test::read_file;

namespace fs = std::filesystem;

namespace {

const fs::path folder = fs::path(WATTFALL_TEST_DATA) / "errors";

/// `# with --set "a b"`: the words, those in quotes whole.
std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  bool quoted = false, open = false;
  for (const char c : text.substr(0, text.find('\n'))) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ' ' && !quoted) {
      open = false;
    } else {
      if (!open) words.emplace_back();
      open = true;
      words.back() += c;
    }
  }
  return words;
}

std::vector<std::string> arguments_for(const fs::path& feed) {
  std::vector<std::string> arguments{"run", feed.filename().string()};
  const std::string text = read_file(feed), sign = "# with ";
  if (!text.starts_with(sign)) return arguments;
  for (std::string& word : words_of(text.substr(sign.size()))) arguments.push_back(std::move(word));
  return arguments;
}

void compare(const std::string& said, const fs::path& expected) {
  if (std::getenv("WATTFALL_ACCEPT") != nullptr) std::ofstream(expected, std::ios::binary) << said;
  CHECK(said == read_file(expected));
}

std::string times(std::size_t count, const std::string& text) {
  std::string all;
  for (std::size_t i = 0; i < count; ++i) all += text;
  return all;
}

/// Boxes that each hold the one before so many times.
std::string boxes(int depth, int uses) {
  std::string text = "box b0 (a) {\n  resistor r at a : 1 ohm\n}\n";
  for (int i = 1; i < depth; ++i) {
    text += "box b" + std::to_string(i) + " (a) {\n";
    for (int u = 0; u < uses; ++u) text += "  b" + std::to_string(i - 1) + " u" + std::to_string(u) + " at a\n";
    text += "}\n";
  }
  return text + "b" + std::to_string(depth - 1) + " all at desk\n";
}

struct Limit {
  const char* what;
  std::string text;
};

std::vector<Limit> limits() {
  const std::string head = "source rig at desk : 100 W\nload wires at desk : 50 ohm\nsweep at [7 MHz]\n";
  return {{"a line of more than 64 KiB", head + "# " + times(70'000, "x") + "\n"},
          {"a file of more than 1 MiB", head + times(20'000, "# " + times(60, "x") + "\n")},
          {"65 boxes one in the other", head + boxes(65, 1)},
          {"2^20 parts", head + boxes(21, 2)},
          {"1100 sums one upon the other", head + "set a = 1" + times(1100, " + 1") + "\n"},
          {"a quantity squared again and again",
           [&] {
             std::string text = head + "set q0 = frequency / 1 MHz\n";
             for (int i = 1; i < 60; ++i) {
               const std::string before = "q" + std::to_string(i - 1);
               text += "set q" + std::to_string(i) + " = " + before + " * " + before + " + 1\n";
             }
             return text;
           }()},
          {"a quantity of 1100 others",
           [&] {
             std::string text = head + "set a0 = frequency\n";
             for (int i = 1; i < 1100; ++i)
               text += "set a" + std::to_string(i) + " = a" + std::to_string(i - 1) + " + frequency\n";
             return text + "inductor L at desk : a1099 * 1 uH / 1 MHz\n";
           }()},
          {"1100 quantities, the last first",
           [&] {
             std::string text = head + "inductor L at desk : a0 * 1 uH\n";
             for (int i = 0; i < 1100; ++i)
               text += "set a" + std::to_string(i) + " = a" + std::to_string(i + 1) + " + 1\n";
             return text + "set a1100 = 1\n";
           }()}};
}

/// What a user reads, its first mistakes and its last line.
std::string ends_of(const std::string& text) {
  constexpr std::size_t most = 1500;
  if (text.size() <= 2 * most) return text;
  return text.substr(0, text.find('\n', most) + 1) + "...\n" + text.substr(text.rfind('\n', text.size() - most) + 1);
}

}  // namespace

TEST_CASE("each design with mistakes is answered to the letter") {
  std::vector<fs::path> feeds;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".feed") feeds.push_back(entry.path());
  std::sort(feeds.begin(), feeds.end());
  REQUIRE(feeds.size() >= 20);
  for (const fs::path& feed : feeds) {
    const auto ran = wattfall::test::program(arguments_for(feed), {.folder = folder});
    CAPTURE(feed.filename());
    CHECK(ran.out.empty());
    compare(ran.err + "exit " + std::to_string(ran.code) + "\n", fs::path(feed).replace_extension(".expected"));
  }
}

TEST_CASE("what passes a limit is answered to the letter") {
  std::string said;
  const auto run = [&](const wattfall::test::Scratch& scratch, const std::string& what) {
    const auto ran = wattfall::test::program({"run", "cabin.feed"}, {scratch.path()});
    CHECK(ran.out.empty());
    said += "## " + what + "\n" + ends_of(ran.err) + "exit " + std::to_string(ran.code) + "\n";
  };
  for (const Limit& limit : limits()) {
    const wattfall::test::Scratch scratch;
    scratch.write("cabin.feed", limit.text);
    run(scratch, limit.what);
  }
  {
    const wattfall::test::Scratch scratch;
    scratch.write("cabin.feed", times(1100, "what is this\n"));
    run(scratch, "1100 mistakes");
  }
  {
    const wattfall::test::Scratch scratch;
    scratch.write("cabin.feed", "source rig at desk : 100 W\nload wires at desk : 50 ohm\nsweep at [7 MHz]\ninclude \"0.feed\"\n");
    for (int i = 0; i < 66; ++i)
      scratch.write(std::to_string(i) + ".feed", "include \"" + std::to_string(i + 1) + ".feed\"\n");
    run(scratch, "66 files that include each other");
  }
  {
    const wattfall::test::Scratch scratch;
    scratch.write("cabin.feed", "source rig at desk : 100 W\nload wires at desk : measured \"long.s1p\"\nsweep at [7 MHz]\n");
    scratch.write("long.s1p", "# MHz\n");
    fs::resize_file(scratch.path() / "long.s1p", 200'000'000);  // holes take no room
    run(scratch, "a measured file that is too large");
  }
  compare(said, folder / "limits.expected");
}

TEST_CASE("every code of a mistake in the reference has its golden answer") {
  std::string manual = read_file(fs::path(WATTFALL_TEST_DATA) / "../../grammar/README.md");
  manual = manual.substr(manual.find("| code | what is wrong |"));
  manual = manual.substr(0, manual.find("Those of solving, of the verbs and of files:")) +
           manual.substr(manual.find("Those of Touchstone files point"));
  std::string golden;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".expected") golden += read_file(entry.path());
  // Second locks that no text reaches, a file of 4 GiB, and what only a plugin that is wrong or missing brings about
  // (tests/design has those).
  const std::set<std::string> unreachable{"not-in-a-box",      "not-in-a-variant", "touchstone-too-large",
                                          "broken-tuner-form", "no-line-model",    "line-model-failed"};
  int codes = 0;
  std::istringstream lines(manual.substr(0, manual.find("Those of plugins name")));
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("| `")) continue;
    const std::string cell = line.substr(0, line.find('|', 2));
    const std::regex quoted("`([a-z0-9-]+)`");
    for (auto match = std::sregex_iterator(cell.begin(), cell.end(), quoted); match != std::sregex_iterator(); ++match) {
      const std::string code = match->str(1);
      if (unreachable.contains(code)) continue;
      CAPTURE(code);
      CHECK(golden.find("[" + code + "]\n") != std::string::npos);
      ++codes;
    }
  }
  CHECK(codes > 150);
}
