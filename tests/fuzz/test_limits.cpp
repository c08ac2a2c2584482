// Texts that ask for too much, each in a process of its own: it must end by itself, with the error that is due or with
// none, in less than 200 MiB. How long each takes is shown and not tested: machines differ.
#include <catch2/catch.hpp>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include "bounded.hpp"
#include "design/resolve.hpp"
#include "shelf.hpp"

using namespace wattfall;

namespace {

constexpr double most_mib = 200.0;

std::string times(std::size_t count, const std::string& text) {
  std::string all;
  all.reserve(count * text.size());
  for (std::size_t i = 0; i < count; ++i) all += text;
  return all;
}

/// `count` lines, `#` in each replaced by its number.
std::string numbered(std::size_t count, const std::string& line, std::size_t most_bytes = 1U << 20U) {
  std::string all;
  for (std::size_t i = 0; i < count; ++i) {
    std::string one = line;
    for (std::size_t at = one.find('#'); at != std::string::npos; at = one.find('#'))
      one.replace(at, 1, std::to_string(i));
    if (all.size() + one.size() > most_bytes) break;
    all += one;
  }
  return all;
}

const std::string frame =
    "source rig at desk : 100 W\nload ant at feed : 50 ohm\nresistor join from desk to feed : 1 ohm\n"
    "sweep 7 MHz to 7.2 MHz step 100 kHz\n";
constexpr std::size_t room = (1U << 20U) - 400;  // what the frame leaves of a file

/// b0 holds `innermost`, each further box two of the one before.
std::string doubling(int levels, const std::string& innermost) {
  std::string text = "box b0 (a) {\n" + innermost + "}\n";
  for (int i = 1; i <= levels; ++i) {
    const std::string before = "b" + std::to_string(i - 1);
    text += "box b" + std::to_string(i) + " (a) {\n  " + before + " x at a\n  " + before + " y at a\n}\n";
  }
  return text + "b" + std::to_string(levels) + " all at desk\n";
}

/// `uses` uses of a box of a thousand resistors.
std::string thousands(std::size_t uses) {
  return "box k (a) {\n" + numbered(1000, "  resistor r# at a : 1 ohm\n") + "}\n" + numbered(uses, "k x# at desk\n");
}

/// The first code, or "" where all is well.
std::string first_code(const std::string& text) {
  static const design::Catalog catalog(fuzz::shelf());
  const auto source = std::make_shared<const Source>("limits.feed", text);
  const Result<syntax::File> file = parse(source, catalog.vocabulary());
  if (!file.ok()) return file.diagnostics.front().code;
  const Result<design::DesignSet> set = design::resolve(*file.value, catalog, fuzz::shelf(), {});
  return set.ok() ? "" : set.diagnostics.front().code;
}

struct Row {
  std::string code;  ///< that is due; "" for none
  const char* what;
  std::string text;
};

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.what);
    const fuzz::Bounded run = fuzz::run_bounded([&] { return first_code(row.text); });
    CHECK(run.ended);
    CHECK(run.said == row.code);
    CHECK(run.peak_mib < most_mib);
    std::printf("%-52s %7.0f ms %6.0f MiB  %s\n", row.what, 1000.0 * run.seconds, run.peak_mib, run.said.c_str());
  }
}

}  // namespace

TEST_CASE("texts that are too deep, too long or no text") {
  std::string mebibyte = frame + numbered(20'000, "resistor r# from desk to n# : 1 ohm\n", room);
  while (mebibyte.size() < (1U << 20U)) mebibyte += '\n';
  check(
      {{"too-deep", "30,000 brackets", frame + "set a = " + times(30'000, "(") + "1" + times(30'000, ")")},
       {"too-deep", "brackets over 200,000 lines", "set a = " + times(200'000, "(\n")},
       {"misplaced-statement", "30,000 boxes inside each other", times(30'000, "box a (b) {\n") + times(30'000, "}\n")},
       {"too-deep", "a sum of 32,000", "set a = 1" + times(32'000, "+1")},
       {"too-deep", "a tower of powers", "set a = 2" + times(30'000, "^2")},
       {"", "a line of 64 KiB", frame + "set a = 1 #" + std::string(65'525, 'x') + "\n"},
       {"line-too-long", "a line of 64 KiB and a byte", frame + "set a = 1 #" + std::string(65'526, 'x') + "\n"},
       {"bad-number", "a number of 65,000 digits", "set a = " + std::string(65'000, '9')},
       {"invalid-character", "1 MiB of NUL bytes", std::string(1U << 20U, '\0')},
       {"invalid-utf8", "1 MiB of bytes that are no UTF-8", std::string(1U << 20U, '\xFF')},
       {"", "a file of 1 MiB", mebibyte},
       {"file-too-long", "a file of 1 MiB and a byte", mebibyte + " "},
       {"unknown-statement", "half a million mistakes", times(500'000, "a\n")},
       {"unclosed-string", "1 MiB of quotes", times(16, std::string(65'535, '"') + "\n")}});
}

TEST_CASE("designs that are larger than they look") {
  const std::string table = "load t# at feed : table [1 kHz: 1 ohm, 9 GHz: 2 ohm]\n";
  check({{"box-loop", "a box in itself", frame + "box a (n) {\n  a x at n\n}\na all at desk\n"},
         {"too-many-parts", "boxes that double 60 times", frame + doubling(60, "  resistor r at a : 1 ohm\n")},
         {"too-many-parts", "empty boxes that double 60 times", frame + doubling(60, "")},
         {"", "99,000 parts", frame + thousands(98)},
         {"too-many-parts", "101,000 parts", frame + thousands(101)},
         {"too-many-parts", "twenty thousand boxes of a thousand", frame + thousands(20'000)},
         {"too-many-points", "a billion steps", frame + "sweep 1 MHz to 2 MHz step 1 mHz\n"},
         {"too-many-points", "a billion points", frame + "sweep 1 MHz to 2 MHz, 1000000000 points\n"},
         {"too-many-points", "a billion points by ratio", frame + "sweep 1 MHz to 2 MHz, 1e9 points, by ratio\n"},
         {"", "a million points", frame + "sweep 1 MHz to 2 MHz, 999000 points\n"},
         {"", "a million points and 10,000 tables",
          frame + "sweep 1 MHz to 2 MHz, 999000 points\n" + numbered(10'000, table)},
         {"", "20,000 tables", frame + numbered(20'000, table, room)},
         {"", "20,000 quantities, each of the one before",
          frame + "set q0 = 1\n" + numbered(20'000, "set p# = q0 + #\n")}});
}

TEST_CASE("variants that share much") {
  const std::string parts =
      numbered(10'000, "resistor r# from desk to n# : 1 ohm\nresistor s# at n# : 1 ohm\n", room / 2);
  check({{"too-many-parts", "20,000 variants of 14,000 parts",
          frame + parts + numbered(20'000, "variant \"#\" {\n}\n", room / 2)},
         {"too-many-variants", "20,000 variants of a million points",
          frame + "sweep 1 MHz to 2 MHz, 999000 points\n" + numbered(20'000, "variant \"#\" {\n}\n")},
         {"too-many-variants", "20,000 variants of a load with a long table",
          "sweep at [7 MHz]\nsource s at n : 1 W\nload l at n : table [" +
              numbered(30'000, "#.5e6 Hz: 1 ohm,\n", room / 2) + "90000 MHz: 2 ohm]\n" +
              numbered(20'000, "variant \"#\" {\n}\n", room / 2)},
         {"too-many-parts", "thousands of variants, each of 99,000 parts",
          frame + thousands(98) + numbered(20'000, "variant \"#\" {\n}\n", room / 2)},
         {"", "thirty variants of 3,000 parts",
          frame + numbered(3'000, "resistor r# from desk to feed : 1 ohm\n") + numbered(30, "variant \"#\" {\n}\n")}});
}

TEST_CASE("knobs of more values than can be listed") {
  const std::string part = frame + "capacitor c at desk : adjustable ";
  check({{"value-out-of-range", "2^60 relays", part + "relays(60, smallest 1 pF)\n"},
         {"", "a series over thirty decades", part + "series(E192, from 1e-30 F, to 1 F)\n"},
         {"", "many knobs of 2^8",
          frame + numbered(2'000, "capacitor c# at desk : adjustable relays(8, smallest 1 pF)\n")},
         {"", "tuned at a list of 150,000",
          part + "1 pF to 1 nF\ntune c at [" + numbered(150'000, "7e6 Hz,\n", room) + "7 MHz] for least heat in c\n"}});
}
