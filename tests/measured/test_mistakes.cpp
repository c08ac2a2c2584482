// Files that are wrong: each row has a text and what is said about it, code, line, column and the underlined letters.
#include <catch2/catch.hpp>

#include "reading.hpp"

namespace wattfall::measured {
namespace {

const std::string v2 = "[Version] 2.0\n# Hz S RI\n";  // two lines
const std::string v2_one = v2 + "[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n";
const std::string v2_two = v2 + "[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] 1\n";

struct Row {
  const char* why;
  std::string text;
  int ports;
  const char* code;
  int line;
  int column;
  const char* underlined;
};

const Row rows[] = {
    {"empty", "", 1, "touchstone-empty", 1, 1, ""},
    {"only comments", "! nothing\n\n", 1, "touchstone-empty", 1, 1, ""},
    {"only options", "# MHz S MA R 50\n", 1, "touchstone-empty", 1, 1, ""},
    {"two bytes a letter", std::string("\xFF\xFE#\0 \0", 6), 1, "touchstone-not-text", 1, 1, ""},

    {"misspelt unit", "# MHzz S MA R 50\n1 0 0\n", 1, "touchstone-unknown-option", 1, 3, "MHzz"},
    {"R and value as one word", "# MHz R50\n1 0 0\n", 1, "touchstone-unknown-option", 1, 7, "R50"},
    {"two references", "# MHz R 50 75\n1 0 0 0 0 0 0 0 0\n", 2, "touchstone-unknown-option", 1, 12, "75"},
    {"two units", "# MHz S kHz\n1 0 0\n", 1, "touchstone-option-twice", 1, 9, "kHz"},
    {"two formats", "# RI S MA\n1 0 0\n", 1, "touchstone-option-twice", 1, 8, "MA"},
    {"two parameters", "# S Z\n1 0 0\n", 1, "touchstone-option-twice", 1, 5, "Z"},
    {"R twice", "# R 50 R 75\n1 0 0\n", 1, "touchstone-option-twice", 1, 8, "R"},
    {"R without a value", "# MHz R\n1 0 0\n", 1, "touchstone-reference", 1, 7, "R"},
    {"zero reference", "# MHz R 0\n1 0 0\n", 1, "touchstone-reference", 1, 9, "0"},
    {"negative reference", "# MHz R -50\n1 0 0\n", 1, "touchstone-reference", 1, 9, "-50"},
    {"reference without end", "# MHz R inf\n1 0 0\n", 1, "touchstone-not-finite", 1, 9, "inf"},
    {"options after data", "1 0 0\n# MHz RI\n2 0 0\n", 1, "touchstone-option-late", 2, 1, "# MHz RI"},

    {"a word", "1 0 0\n2 zero 0\n", 1, "touchstone-not-a-number", 2, 3, "zero"},
    {"a number with a tail", "1 0 0\n2 0.5x 0\n", 1, "touchstone-not-a-number", 2, 3, "0.5x"},
    {"decimal comma", "1 0 0\n2 0 0,25\n", 1, "touchstone-not-a-number", 2, 5, "0,25"},
    {"after a letter of two bytes", "1 0 0\n2 \xC2\xB5 x\xC3\xA9\n", 1, "touchstone-not-a-number", 2, 3, "\xC2\xB5"},
    {"not a number by name", "1 0 nan\n", 1, "touchstone-not-finite", 1, 5, "nan"},
    {"infinite", "1 -inf 0\n", 1, "touchstone-not-finite", 1, 3, "-inf"},
    {"too large", "1 1e999 0\n", 1, "touchstone-not-finite", 1, 3, "1e999"},
    {"too large in hertz", "1e305 0 0\n", 1, "touchstone-not-finite", 1, 1, "1e305"},
    {"too many decibels", "# DB\n1 1e9 0\n", 1, "touchstone-no-scattering", 2, 1, "1"},
    {"impedance of -R", "# Z RI\n1 -1 0\n", 1, "touchstone-no-scattering", 2, 1, "1"},

    {"a value missing, one port", "1 0 0\n2 0\n3 0 0\n", 1, "touchstone-missing-values", 2, 1, "2 0"},
    {"a value missing, two ports", "1 0 0 0 0 0 0 0 0\n2 0 0 0 0 0 0 0\n3 0 0 0 0 0 0 0 0\n", 2,
     "touchstone-missing-values", 2, 1, "2 0 0 0 0 0 0 0"},
    {"a pair missing", "1 0 0 0 0 0 0\n2 0 0 0 0 0 0 0 0\n", 2, "touchstone-missing-values", 1, 1, "1 0 0 0 0 0 0"},
    {"cut in the last line", "1 0 0 0 0 0 0 0 0\n2 0 0 0 0 0 0\n", 2, "touchstone-missing-values", 2, 1,
     "2 0 0 0 0 0 0"},
    {"a row missing", "1 0 0 0 0 0 0\n0 0 0 0 0 0\n2 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 0 0 0\n", 3,
     "touchstone-missing-values", 1, 1, "1 0 0 0 0 0 0"},
    {"a value of a row missing", "1 0 0 0 0 0 0\n0 0 0 0 0\n0 0 0 0 0 0\n2 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 0 0 0\n", 3,
     "touchstone-odd-values", 2, 1, "0 0 0 0 0"},
    {"a value too many", "1 0 0\n2 0 0 9\n", 1, "touchstone-extra-values", 2, 7, "9"},
    {"a row too long", "1 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 0 0 0 8 9\n", 3, "touchstone-extra-values", 3, 13, "8 9"},
    {"name says one port, data two", "1 0 0 0 0 0 0 0 0\n2 0 0 0 0 0 0 0 0\n", 1, "touchstone-ports-mismatch", 1, 1,
     "1 0 0 0 0 0 0 0 0"},
    {"name says two ports, data one", "1 0 0\n2 0 0\n", 2, "touchstone-ports-mismatch", 1, 1, "1 0 0"},
    {"no number of ports fits", "1 0 0 0 0\n", 0, "touchstone-ports-unknown", 1, 1, "1 0 0 0 0"},
    {"hybrid one-port", "# H\n1 0 0\n", 1, "touchstone-two-ports-only", 2, 1, "1 0 0"},

    {"frequencies fall", "1 0 0\n3 0 0\n2 0 0\n4 0 0\n", 1, "touchstone-frequency-order", 3, 1, "2"},
    {"a frequency twice", "1 0 0\n 1.0 0 0\n", 1, "touchstone-frequency-order", 2, 2, "1.0"},
    {"negative frequency", "-1 0 0\n", 1, "touchstone-negative-frequency", 1, 1, "-1"},
    {"noise line of four", "2 0 0 0 0 0 0 0 0\n1 1 .5 0 .1\n2 1 .5 0\n", 2, "touchstone-noise-values", 3, 1,
     "2 1 .5 0"},

    {"keyword without version", "[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]\n", 1,
     "touchstone-version", 1, 1, "[Number of Ports]"},
    {"unknown version", "[Version] 3.0\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]\n",
     1, "touchstone-version", 1, 11, "3.0"},
    {"misspelt keyword",
     v2 + "[Refrence] 50\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]\n", 1,
     "touchstone-unknown-keyword", 3, 1, "[Refrence]"},
    {"open bracket",
     v2 + "[Reference 50\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]\n", 1,
     "touchstone-open-keyword", 3, 1, "[Reference 50"},
    {"keyword twice",
     v2 + "[Number of Ports] 1\n[number of ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]\n", 1,
     "touchstone-keyword-twice", 4, 1, "[number of ports]"},
    {"half a port", v2 + "[Number of Ports] 1.5\n", 1, "touchstone-keyword-value", 3, 19, "1.5"},
    {"no such order", v2 + "[Number of Ports] 2\n[Two-Port Data Order] 12\n[Number of Frequencies] 1\n[Network Data]\n",
     2, "touchstone-keyword-value", 4, 23, "12"},
    {"no number of frequencies", v2 + "[Number of Ports] 1\n[Network Data]\n1 0 0\n[End]\n", 1,
     "touchstone-keyword-missing", 1, 1, ""},
    {"no network data", v2_two + "[End]\n", 2, "touchstone-keyword-missing", 1, 1, ""},
    {"header after data", v2_one + "1 0 0\n[Reference] 50\n[End]\n", 1, "touchstone-keyword-order", 7, 1,
     "[Reference]"},
    {"mixed mode", v2_two + "[Mixed-Mode Order] D1,2 C1,2\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]\n", 2,
     "touchstone-mixed-mode", 6, 1, "[Mixed-Mode Order]"},
    {"count of frequencies", v2_one + "1 0 0\n2 0 0\n[End]\n", 1, "touchstone-frequency-count", 4, 25, "1"},
    {"count of noise frequencies",
     v2_two + "[Number of Noise Frequencies] 2\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[Noise Data]\n1 1 .5 0 9\n[End]\n",
     2, "touchstone-frequency-count", 6, 31, "2"},
    {"name against keyword", v2_one + "1 0 0\n[End]\n", 2, "touchstone-ports-mismatch", 3, 19, "1"},
    {"a reference short", v2_two + "[Reference] 50\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]\n", 2,
     "touchstone-reference", 6, 1, "[Reference] 50"},
    {"a reference of zero", v2_two + "[Reference] 50\n0\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]\n", 2,
     "touchstone-reference", 7, 1, "0"},
    {"numbers before [Network Data]",
     v2 + "1 0 0\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]\n", 1,
     "touchstone-stray-words", 3, 1, "1 0 0"},
    {"numbers beside [Network Data]",
     v2 + "[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data] 1 0 0\n2 0 0\n[End]\n", 1,
     "touchstone-stray-words", 5, 16, "1 0 0"},
    {"information without end", v2 + "[Begin Information]\nfree\n", 1, "touchstone-keyword-missing", 1, 1, ""},
};

}  // namespace

TEST_CASE("a mistake is found once, and shown where it is") {
  for (const Row& row : rows) {
    INFO(row.why << "\n" << row.text);
    const Reading result = read(row.text, row.ports);
    REQUIRE_FALSE(result.value.has_value());
    INFO(codes(result));
    REQUIRE_FALSE(result.diagnostics.empty());
    const Diagnostic& first = result.diagnostics.front();
    CHECK(first.code == row.code);
    CHECK(first.fault == Fault::file);
    CHECK(first.span.text() == row.underlined);
    const Position place = first.span.source->position(first.span.begin);
    CHECK(place.line == row.line);
    CHECK(place.column == row.column);
    CHECK_FALSE(first.text.empty());
  }
}

TEST_CASE("a single mistake brings no others in its train") {
  for (const Row& row : rows) {
    INFO(row.why << "\n" << row.text);
    const std::string code = row.code;
    const bool header = code == "touchstone-keyword-missing" || code == "touchstone-keyword-value";
    if (!header && std::string(row.why) != "after a letter of two bytes") CHECK(codes(row.text, row.ports) == code);
  }
}

TEST_CASE("several mistakes are all told, in order, and at most ten") {
  CHECK(codes("# MHz R -1 XY\n1 0 0\n2 a 0\n3 0\n2.5 0 0\n2 0 0\n", 1) ==
        "touchstone-reference touchstone-unknown-option touchstone-not-a-number touchstone-missing-values "
        "touchstone-frequency-order");
  std::string text;
  for (int i = 0; i < 30; ++i) text += std::to_string(i) + " a 0\n";
  const Reading result = read(text, 1);
  REQUIRE(result.diagnostics.size() == 11);
  CHECK(result.diagnostics.back().code == "touchstone-too-many-mistakes");
  CHECK(result.diagnostics.back().span.line() == 11);
}

TEST_CASE("a mistake names the next step") {
  const auto hint = [](const std::string& text, int ports) { return read(text, ports).diagnostics.at(0).hint; };
  CHECK(hint("# MHzz\n1 0 0\n", 1) == "MHz");
  CHECK(hint("# R50\n1 0 0\n", 1) == "R 50");
  CHECK(hint("1 0,5 0\n", 1) == "0.5");
  CHECK(hint("1, 0, 0\n", 1) == "1");
  CHECK(hint("1 0,5x 0\n", 1).empty());
  CHECK(hint("1 ,5 0\n", 1).empty());
  CHECK(hint(v2 + "[Refrence] 50\n", 1) == "[Reference]");
}

TEST_CASE("a second place stands beside the first") {
  const Reading falling = read("1 0 0\n3 0 0\n2 0 0\n", 1);
  const Diagnostic& order = falling.diagnostics.at(0);
  REQUIRE(order.notes.size() == 1);
  CHECK(order.notes[0].span.line() == 2);
  const Reading formats = read("# RI S MA\n1 0 0\n", 1);
  const Diagnostic& twice = formats.diagnostics.at(0);
  REQUIRE(twice.notes.size() == 1);
  CHECK(twice.notes[0].span.text() == "RI");
}

}  // namespace wattfall::measured
