// Texts that no person writes: too long, too deep, cut off, not text at all. Each must end in diagnostics or a tree,
// soon.
#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <random>
#include <string>

#include "support.hpp"

using namespace wattfall;
using wattfall::test::source;

namespace {

std::string repeated(const std::string& text, std::size_t count) {
  std::string result;
  result.reserve(text.size() * count);
  for (std::size_t i = 0; i < count; ++i) result += text;
  return result;
}

/// Parses, shows what is wrong (to see that showing works as well), and says the first code.
std::string first_code(const std::string& text) {
  const auto result = parse(source(text));
  REQUIRE(result.value);
  if (result.diagnostics.size() < 100) CHECK_FALSE(render(result.diagnostics, true).size() > 1000000);
  return result.diagnostics.empty() ? "" : result.diagnostics.front().code;
}

double milliseconds(const std::string& text) {
  const auto text_source = source(text);
  const auto begin = std::chrono::steady_clock::now();
  const auto result = parse(text_source);
  CHECK(result.value);
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
}

const std::string good = R"feed(design "a \"quoted\" title # no comment"
set run = 24 m
source rig at desk : 100 W, 50 ohm
load wires at feed : table [7 MHz: 50-j10 ohm, # comment
   7.1 MHz: 55 + j2 ohm], radiates 92 %
box tee (in, out) with c = 120 pF, l = 2 uH {
  capacitor Cin  from in  to mid    : c, adjustable 12 pF to 240 pF, Q 1500 at 7 MHz, limit 1 kV
  inductor  L    from (mid a) to (ground b) : coil(turns 12, wire 2 mm), adjustable series(E24, from 10 uH)
}
variant "x" {
  tee  atu  from desk to wall : c -2 pF^2 * sqrt(3)
  line coax from wall to feed : run of RG-213
}
sweep 7.0 MHz to 7.2 MHz, 21 points, by ratio
tune atu.Cin, atu.L at each frequency for most power into wires, keeping swr at desk below 1.5 and total loss below 2 dB
require width of swr at desk into atu reference 50 ohm below 2 above 50 kHz over 7 MHz to 8 MHz
plane p at desk into rig
)feed";

}  // namespace

TEST_CASE("a good file cut off at any byte does not break the parser") {
  REQUIRE(first_code(good).empty());
  for (std::size_t length = 0; length <= good.size(); ++length) {
    CAPTURE(length);
    CHECK(parse(source(good.substr(0, length))).value);
    CHECK(parse(source(good.substr(length))).value);
  }
}

TEST_CASE("a good file with any byte changed, left out or doubled does not break the parser") {
  std::mt19937 random(7);  // fixed: a failure must come again
  const std::string alphabet = "()[]{}\"\\#,:=+-*/^.\n\r\t 0e%jm\xC2\xB5\xFF";
  for (std::size_t i = 0; i < 4000; ++i) {
    std::string text = good;
    for (int edits = 0; edits < 3; ++edits) {
      const std::size_t at = random() % text.size();
      const char letter = alphabet[random() % alphabet.size()];
      if (random() % 3 == 0) text[at] = letter;
      if (random() % 3 == 1) text.insert(at, 1, letter);
      if (random() % 3 == 2) text.erase(at, 1 + random() % 3);
    }
    const auto result = parse(source(text));
    CHECK(result.value);
    for (const Diagnostic& diagnostic : result.diagnostics) {
      const bool inside = diagnostic.span.begin <= diagnostic.span.end && diagnostic.span.end <= text.size();
      CAPTURE(text, diagnostic.code);
      CHECK(inside);
      CHECK_FALSE(render(diagnostic, false).empty());
    }
  }
}

TEST_CASE("random bytes do not break the parser") {
  std::mt19937 random(11);
  for (int i = 0; i < 200; ++i) {
    std::string text;
    for (int j = 0; j < 500; ++j) text += static_cast<char>(random() % 256);
    CHECK_FALSE(first_code(text).empty());
  }
}

TEST_CASE("brackets may be 64 deep and not deeper") {
  const auto deep = [](std::size_t n, const std::string& open, const std::string& close) {
    return "set a = " + repeated(open, n) + "1" + repeated(close, n);
  };
  CHECK(first_code(deep(64, "(", ")")).empty());
  CHECK(first_code(deep(65, "(", ")")) == "too-deep");
  CHECK(first_code(deep(64, "[", "]")).empty());
  CHECK(first_code(deep(64, "f(", ")")).empty());
  CHECK(first_code(deep(30000, "(", ")")) == "too-deep");
  CHECK(first_code(deep(10000, "sqrt(", ")")) == "too-deep");
  CHECK(first_code("set a = " + repeated("(\n", 200000)) == "too-deep");
  CHECK(first_code("line l at a : 3 m of a\"" + repeated("(", 30000)) == "unclosed-string");
  CHECK(first_code("line l at a : 3 m of 3\"x\"" + repeated("(", 60) + repeated(")", 60)) != "");
}

TEST_CASE("blocks may be 64 deep and not deeper") {
  const std::string text = repeated("box a (b) {\n", 30000) + repeated("}\n", 30000);
  const auto result = parse(source(text));
  CHECK(std::count_if(result.diagnostics.begin(), result.diagnostics.end(),
                      [](const Diagnostic& d) { return d.code == "too-deep"; }) == 1);
  CHECK(first_code(repeated("variant \"x\" {\n", 50000)) != "");
  CHECK(first_code(repeated("}\n", 50000)) == "stray-brace");
}

TEST_CASE("long chains of operators are turned away, sane ones are not") {
  CHECK(first_code("set a = 1" + repeated("+1", 900)).empty());
  CHECK(first_code("set a = 1" + repeated("+1", 1100)) == "too-deep");
  CHECK(first_code("set a = 1" + repeated("*1", 30000)) == "too-deep");
  CHECK(first_code("set a = " + repeated("-", 60000) + "1") == "too-deep");
  CHECK(first_code("set a = " + repeated("-", 64) + "1").empty());
  CHECK(first_code("set a = 2" + repeated("^2", 30000)) == "too-deep");
  CHECK(first_code("set a = 2" + repeated("^2", 60)).empty());
  CHECK(first_code("set a = 2" + repeated("^-2", 20000)) == "too-deep");
  // Brackets may not add what chains may not have.
  std::string nested = "1";
  for (int i = 0; i < 10; ++i) nested = "(" + nested + repeated("+1", 500) + ")";
  CHECK(first_code("set a = " + nested) == "too-deep");
}

TEST_CASE("bytes that are no text are shown where they are, a few times at most") {
  const auto codes = [](const std::string& text) { return parse(source(text)).diagnostics; };
  const auto nul = codes(std::string("set a = 1\nset b = 2\0 x\n", 22));
  REQUIRE(nul.size() == 1);
  CHECK(nul[0].code == "invalid-character");
  CHECK(nul[0].span.begin == 19);
  CHECK(first_code("set a = 1 # \x01") == "invalid-character");
  CHECK(first_code("design \"a\rb\"") == "invalid-character");
  CHECK(first_code("design \"\u202E\"") == "invalid-character");
  CHECK(first_code("design \"\u00B5\u2126 \u4E2D \U0001F4E1\"").empty());
  for (const char* bad : {"\xFF", "\xC3(", "\xC0\xAF", "\xE2\x84", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80"}) {
    CHECK(first_code(std::string("design \"x") + bad + "\"") == "invalid-utf8");
  }
  CHECK(codes(std::string(60000, '\0')).size() == 3);
  CHECK(codes(repeated("\xFF", 60000)).size() == 3);
}

TEST_CASE("after a thousand mistakes a file is given up") {
  const auto result = parse(source(repeated("a\n", 2000)));
  REQUIRE(result.diagnostics.size() == 1001);
  CHECK(result.diagnostics.back().code == "too-many-mistakes");
  CHECK(parse(source(repeated("a\n", 999))).diagnostics.size() == 999);
}

TEST_CASE("files and lines have their limits") {
  const std::string line = "set a = 1 # " + std::string(100, 'x') + "\n";
  std::string text = repeated(line, (1U << 20U) / line.size());
  text.resize(1U << 20U, ' ');
  CHECK(first_code(text).empty());
  CHECK(first_code(text + " ") == "file-too-long");
  const std::string header = "set a = 1 #";
  CHECK(first_code(header + std::string(65536 - header.size(), 'x')).empty());
  CHECK(first_code("\n" + header + std::string(65537 - header.size(), 'x') + "\nset b = mhz 3") == "line-too-long");
  CHECK(first_code("set a = " + std::string(65000, '9')) == "bad-number");
  CHECK(first_code("set a = 0." + std::string(65000, '9')).empty());
  CHECK(first_code("set " + std::string(65000, 'a') + " = 1").empty());
  CHECK(first_code(std::string(65000, 'a')) == "unknown-statement");
  CHECK(first_code("set a = 1 " + std::string(65000, 'q')) == "unknown-unit");
}

TEST_CASE("no text of a megabyte takes long") {
  // Two seconds are thirty times what the slowest takes in a release build; a quadratic parser would need minutes.
#if defined(__SANITIZE_ADDRESS__) || !defined(NDEBUG)
  const double most_ms = 30000;
#else
  const double most_ms = 2000;
#endif
  std::string parts;
  for (int i = 0; parts.size() < 1000000; ++i) {
    const std::string n = std::to_string(i);
    parts += "capacitor C" + n + " from n" + n + " to m" + n + " : 67.4 pF, Q 1500\n";
  }
  CHECK(milliseconds(parts) < most_ms);
  CHECK(milliseconds(repeated("a\n", 500000)) < most_ms);
  CHECK(milliseconds(repeated("set a = (\n", 100000)) < most_ms);
  CHECK(milliseconds("set a = [" + repeated("1,\n", 330000) + "1]") < most_ms);
  CHECK(milliseconds("load x at n : " + repeated("1 pF,\n", 170000) + "1") < most_ms);
  CHECK(milliseconds(repeated("variant \"x\" {\n", 70000)) < most_ms);
  CHECK(milliseconds(repeated("box ", 250000)) < most_ms);
  CHECK(milliseconds(repeated("\"", 60000)) < most_ms);
  CHECK(milliseconds("set a = " + repeated("5 m/a+\n", 9)) < most_ms);
}
