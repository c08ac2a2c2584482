// The grammar from outside: text in, tree out. Tables hold a statement and its tree as text (support.hpp).
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <vector>

#include "support.hpp"

using namespace wattfall;
using wattfall::test::show;
using wattfall::test::source;

namespace {

struct Row {
  std::string text;
  std::string tree;
};

std::string parsed(const std::string& text) {
  const auto result = parse(source(text));
  INFO(render(result.diagnostics, false));
  CHECK(result.ok());
  std::string trees;
  for (const syntax::Statement& statement : result.value->statements)
    trees += (trees.empty() ? "" : "\n") + show(statement);
  return trees;
}

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(parsed(row.text) == row.tree);
  }
}

/// The tree of one value, as it stands in `set x = ...`.
void check_values(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(parsed("set x = " + row.text) == "set x = " + row.tree);
  }
}

/// The tree of a property list.
void check_properties(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(parsed("kind K at n : " + row.text) == "kind K @ n : " + row.tree);
  }
}

const char* const whole_example = R"feed(design "40 m doublet at the lake cabin"

set run = 24 m                                   # a named quantity

source    rig   at desk : 100 W, 50 ohm
load      wires at feed : measured "lake-doublet.s1p", radiates 92 %

box tee (in, out) with c = 120 pF, l = 2 uH {
  capacitor Cin  from in  to mid    : c, adjustable 12 pF to 240 pF, Q 1500, limit 1 kV
  inductor  L    from mid to ground : l, adjustable 0.1 uH to 18 uH, Q 200 at 7 MHz
  capacitor Cout from mid to out    : c, adjustable 12 pF to 240 pF, Q 1500, limit 1 kV
}

variant "coupler at the desk" {
  tee  atu  from desk to wall
  line coax from wall to feed : run of RG-213
}
variant "coupler at the mast" {
  line coax from desk to mast : run of RG-213
  tee  atu  from mast to feed : c 100 pF
}

sweep 7.0 MHz to 7.2 MHz step 10 kHz
tune atu.Cin, atu.L, atu.Cout at each frequency for most power into wires, keeping swr at desk below 1.5
require swr at desk below 1.5
require total loss below 2 dB
require peak volts across atu.Cout below 1 kV
)feed";

const char* const whole_tree =
    R"(design 40 m doublet at the lake cabin
set run = 24|m
source rig @ desk : 100|W, 50|ohm
load wires @ feed : measured "lake-doublet.s1p", radiates 0.92|%
box tee (in out ) c=1.2e-10|pF l=2e-06|uH { capacitor Cin @ in -> mid : c, adjustable 1.2e-11|pF to 2.4e-10|pF, Q 1500, limit 1000|kV; inductor L @ mid -> ground : l, adjustable 1e-07|uH to 1.8e-05|uH, Q 200 at 7000000|MHz; capacitor Cout @ mid -> out : c, adjustable 1.2e-11|pF to 2.4e-10|pF, Q 1500, limit 1000|kV; }
variant coupler at the desk { tee atu @ desk -> wall : ; line coax @ wall -> feed : run of <RG-213>; }
variant coupler at the mast { line coax @ desk -> mast : run of <RG-213>; tee atu @ mast -> feed : c 1e-10|pF; }
sweep 7000000|MHz..7200000|MHz step 10000|kHz
tune atu.Cin atu.L atu.Cout each most power into:wires & swr at:desk below:1.5
require swr at:desk below:1.5
require total loss below:2|dB
require peak volts across:atu.Cout below:1000|kV)";

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size())) {
    text.replace(at, what.size(), with);
  }
  return text;
}

}  // namespace

TEST_CASE("the example of the language page parses whole") {
  CHECK(parsed(whole_example) == whole_tree);
}

TEST_CASE("line ends of either kind, a byte order mark and a missing last line end change nothing") {
  CHECK(parsed(replaced(whole_example, "\n", "\r\n")) == whole_tree);
  CHECK(parsed("\xEF\xBB\xBF" + std::string(whole_example)) == whole_tree);
  std::string text = whole_example;
  text.pop_back();
  CHECK(parsed(text) == whole_tree);
}

TEST_CASE("an empty file is a file without statements") {
  for (const char* text : {"", "\n\n", "# only a comment", "  \t \r\n", "\xEF\xBB\xBF"}) {
    const auto result = parse(source(text));
    CHECK(result.ok());
    CHECK(result.value->statements.empty());
  }
}

TEST_CASE("arithmetic binds as on paper") {
  check_values({
      {"1 + 2 * 3", "(+ 1 (* 2 3))"},
      {"1 - 2 - 3", "(- (- 1 2) 3)"},
      {"8 / 4 / 2", "(/ (/ 8 4) 2)"},
      {"-2^2", "(- (^ 2 2))"},
      {"2^3^2", "(^ 2 (^ 3 2))"},
      {"2^-3^2", "(^ 2 (- (^ 3 2)))"},
      {"--2", "(- (- 2))"},
      {"2 * -3", "(* 2 (- 3))"},
      {"2 - -3", "(- 2 (- 3))"},
      {"-2 * 3", "(* (- 2) 3)"},
      {"(1 + 2) * 3", "(* [( (+ 1 2) )] 3)"},
      {"sqrt(l / c)", "sqrt{ (/ l c); }"},
      {"min (a, b, 3 pF)", "min{ a; b; 3e-12|pF; }"},
      {"2*pi*frequency", "(* (* 2 pi) frequency)"},
      {"1 pF+2 pF", "(+ 1e-12|pF 2e-12|pF)"},
      {"1pF*2", "(* 1e-12|pF 2)"},
      {"3 m/2", "(/ 3|m 2)"},
      {"atu.c - 1", "(- atu.c 1)"},
  });
}

TEST_CASE("a unit binds tighter than every operator, and the longest that fits wins") {
  check_values({
      {"67.4 pF", "6.74e-11|pF"},
      {"67.4pF", "6.74e-11|pF"},
      {"1e3 ohm", "1000|ohm"},
      {"1E3ohm", "1000|ohm"},
      {".5 uH", "5e-07|uH"},
      {"0.87 \u00B5H", "8.7e-07|\u00B5H"},
      {"0.87\u03BCH", "8.7e-07|\u03BCH"},
      {"50 \u03A9", "50|\u03A9"},
      {"4.7k\u2126", "4700|k\u2126"},
      {"2 m", "2|m"},
      {"2 mm", "0.002|mm"},
      {"7 mHz", "0.007|mHz"},
      {"3.1 dB/100m", "0.031|dB/100m"},
      {"0.031 dB/m", "0.031|dB/m"},
      {"100 pF/m", "1e-10|pF/m"},
      {"3 dB/2", "(/ 3|dB 2)"},
      {"3.1 dB / 100 m", "(/ 3.1|dB 100|m)"},
      {"90\u00B0", "1.57079632679|\u00B0"},
      {"92%", "0.92|%"},
      {"92 %", "0.92|%"},
      {"3 ft", "0.9144|ft"},
      {"2 in", "0.0508|in"},
      {"20 dBm", "0.1|dBm"},
      {"-10 dBm", "0.0001|dBm"},
      {"+20 dBm", "0.1|dBm"},
      {"12 turns", "12|turns"},
      {"2 pF^2", "(^ 2e-12|pF 2)"},
      {"-2 m", "(- 2|m)"},
      {"1e-3 s", "0.001|s"},
      {"5 m*x", "(* 5|m x)"},
  });
}

TEST_CASE("0.1 uH and 100 nH are the same number to the last bit") {
  const auto value = [](const std::string& text) { return parse_phrase(source(text)).value->what.front().quantity.value; };
  CHECK(value("0.1 uH") == value("100 nH"));
  CHECK(value("0.1 uH").real() == 1e-7);
  CHECK(value("67.4 pF").real() == 67.4e-12);
  CHECK(value("1.8e1 MHz").real() == 18e6);
}

TEST_CASE("an impedance is one literal, with its unit on both parts") {
  check_values({
      {"28+j208 ohm", "28+j208|ohm"},
      {"50 - j12.5 ohm", "50+j-12.5|ohm"},
      {"j50 ohm", "0+j50|ohm"},
      {"j50ohm", "0+j50|ohm"},
      {"j.5 ohm", "0+j0.5|ohm"},
      {"28+j208", "28+j208"},
      {"1.5 - j2 kohm", "1500+j-2000|kohm"},
      {"28 ohm + j208 ohm", "(+ 28|ohm 0+j208|ohm)"},
      {"28 ohm - j208 ohm", "(- 28|ohm 0+j208|ohm)"},
      {"-28+j208 ohm", "-28+j208|ohm"},
      {"-28 - j208 ohm", "-28+j-208|ohm"},
      {"-j50 ohm", "(- 0+j50|ohm)"},
      {"x + 28+j208 ohm", "(+ x 28+j208|ohm)"},
      {"28+j208 ohm + x", "(+ 28+j208|ohm x)"},
      {"(28+j208 ohm) / 2", "(/ [( 28+j208|ohm )] 2)"},
      {"2 * (28+j208 ohm)", "(* 2 [( 28+j208|ohm )])"},
      {"[7 MHz: 50-j10 ohm, 7.1 MHz: 55+j2 ohm]", "[ (: 7000000|MHz 50+j-10|ohm); (: 7100000|MHz 55+j2|ohm); ]"},
      {"jx + 3", "(+ jx 3)"},
  });
}

TEST_CASE("properties are phrases, whose words only the catalogue knows") {
  check_properties({
      {"Q 200 at 7 MHz", "Q 200 at 7000000|MHz"},
      {"c - 2 pF", "(- c 2e-12|pF)"},
      {"c -2 pF", "(- c 2e-12|pF)"},
      {"Q (Q)", "Q{ Q; }"},
      {"adjustable (a) to (b)", "adjustable [( a )] to [( b )]"},
      {"adjustable [1 pF, 2 pF]", "adjustable [ 1e-12|pF; 2e-12|pF; ]"},
      {"adjustable series(E24, from 10 pF, to 1 nF)", "adjustable series{ E24; from 1e-11|pF; to 1e-09|nF; }"},
      {"adjustable relays(8, smallest 0.05 uH)", "adjustable relays{ 8; smallest 5e-08|uH; }"},
      {"turns 1:3", "turns (: 1 3)"},
      {"turns 1 : 3, leakage 2 uH", "turns (: 1 3), leakage 2e-06|uH"},
      {"foldback [1.5: 100 %, 3: 25 %]", "foldback [ (: 1.5 1|%); (: 3 0.25|%); ]"},
      {"loss [6.5 dB/100m at 10 MHz, 22 dB/100m at 100 MHz]",
       "loss [ 0.065|dB/100m at 10000000|MHz; 0.22|dB/100m at 100000000|MHz; ]"},
      {"run of RG-213", "run of <RG-213>"},
      {"24 m of RG-213, shorted", "24|m of <RG-213>, shorted"},
      {"24 m of \"RG 213\" shorted", "24|m of \"RG 213\" shorted"},
      {"24 m of 7/8\", limit 5 A", "24|m of <7/8\">, limit 5|A"},
      {"2 * run of LDF4-50.A", "(* 2 run) of <LDF4-50.A>"},
      {"90 deg at 7.1 MHz", "1.57079632679|deg at 7100000|MHz"},
      {"tolerance 5 % normal", "tolerance 0.05|% normal"},
      {"measured \"x.s1p\"", "measured \"x.s1p\""},
      {"measured \"a \\\"b\\\" \\\\ c\"", "measured \"a \"b\" \\ c\""},
      {"series(resistance 5 ohm, inductance 2 uH)", "series{ resistance 5|ohm; inductance 2e-06|uH; }"},
      {"coil(turns 12, wire 2 mm)", "coil{ turns 12; wire 0.002|mm; }"},
      {"impedance [1,5]", "impedance [ 1; 5; ]"},
      {"max(1,5)", "max{ 1; 5; }"},
      {"loss 3.1 dB/100m at 10 MHz", "loss 0.031|dB/100m at 10000000|MHz"},
      {"limit 1 kV, limit 5 A", "limit 1000|kV, limit 5|A"},
      {"relay()", "relay{ }"},
  });
}

TEST_CASE("a statement goes on after a comma and in an open bracket, comments or not") {
  check({
      {"load x at n : 50 ohm, # a comment, with a comma\n\n  # and another\n  radiates 92 %",
       "load x @ n : 50|ohm, radiates 0.92|%"},
      {"load x at n : table [7 MHz: 50 ohm, # low\n  8 MHz: 60 ohm # high\n]",
       "load x @ n : table [ (: 7000000|MHz 50|ohm); (: 8000000|MHz 60|ohm); ]"},
      {"set a = (1 +\n 2)", "set a = [( (+ 1 2) )]"},
      {"tune a,\n  b at 7 MHz for least total loss, # why\n  keeping swr at n below 2",
       "tune a b at 7000000|MHz least total loss & swr at:n below:2"},
  });
}

TEST_CASE("places come in three forms, and keywords bind by position") {
  check({
      {"capacitor C at n : 1 pF", "capacitor C @ n : 1e-12|pF"},
      {"line l from (a b) to (c d) : 1 m of X", "line l @ (a b) -> (c d) : 1|m of <X>"},
      {"line l from (a, b) to (c, ground) : 1 m of X", "line l @ (a b) -> (c ground) : 1|m of <X>"},
      {"load x at (a b) : 50 ohm", "load x @ (a b) : 50|ohm"},
      {"tee t from to to out", "tee t @ to -> out : "},
      {"tee t from from to to", "tee t @ from -> to : "},
      {"tee at at at", "tee at @ at : "},
      {"wire mid from in to mid : 1", "wire mid @ in -> mid : 1"},
      {"three t from a to b to c", "three t @ a -> b -> c : "},
      {"coupling k between La and Lb : factor 0.35", "coupling k @ La -> Lb : factor 0.35"},
      {"coupling k between atu.L and L2 : factor 0.35", "coupling k @ atu.L -> L2 : factor 0.35"},
      {"selector s from n to (a b c) : a", "selector s @ n -> (a b c) : a"},
  });
}

TEST_CASE("every statement that asks has its forms") {
  check({
      {"sweep 7 MHz to 8 MHz step 10 kHz", "sweep 7000000|MHz..8000000|MHz step 10000|kHz"},
      {"sweep 7 MHz to 8 MHz, 21 points", "sweep 7000000|MHz..8000000|MHz points 21"},
      {"sweep 7 MHz to 8 MHz, 2*n points, by ratio", "sweep 7000000|MHz..8000000|MHz points (* 2 n) by ratio"},
      {"sweep at [7 MHz, 7.1 MHz]", "sweep at [ 7000000|MHz; 7100000|MHz; ]"},
      {"sweep band \"40 m\", 21 points", "sweep band 40 m points 21"},
      {"sweep band \"40 m\" step 1 kHz", "sweep band 40 m step 1000|kHz"},
      {"sweep f - 1 MHz to f + 1 MHz step d", "sweep (- f 1000000|MHz)..(+ f 1000000|MHz) step d"},
      {"band \"40 m\" 7.0 MHz to 7.2 MHz", "band 40 m 7000000|MHz..7200000|MHz"},
      {"tune a at 7 MHz for most efficiency", "tune a at 7000000|MHz most efficiency"},
      {"tune a at f for least swr at n", "tune a at f least swr at:n"},
      {"tune a at [7 MHz, 8 MHz] for most power into x", "tune a at [ 7000000|MHz; 8000000|MHz; ] most power into:x"},
      {"tune a, b.c at each frequency for least mismatch at n into p", "tune a b.c each least mismatch at:n into:p"},
      {"tune a over 7 MHz to 8 MHz for least swr at n reference 50 ohm, keeping total loss below 2 dB and swr at n "
       "below 3",
       "tune a over 7000000|MHz..8000000|MHz least swr at:n reference:50|ohm & total loss below:2|dB & swr at:n "
       "below:3"},
      {"tune a over band \"40 m\" for most width of swr at n below 2 keeping heat in p below 5 W",
       "tune a over 40 m most width of swr at:n below:2 & heat in:p below:5|W"},
      {"require swr at n into p reference 50 ohm below 2 over 7 MHz to 7.1 MHz",
       "require swr at:n into:p reference:50|ohm below:2 over:7000000|MHz..7100000|MHz"},
      {"require peak volts on coax below 1 kV over band \"40 m\"",
       "require peak volts on:coax below:1000|kV band:40 m"},
      {"require width of swr at n below 2 above 50 kHz", "require width of swr at:n below:2 above:50000|kHz"},
      {"require rms amps through atu.L below 5 A", "require rms amps through:atu.L below:5|A"},
      {"require radiated from wires above 50 W", "require radiated from:wires above:50|W"},
      {"require return loss at to above 20 dB", "require return loss at:to above:20|dB"},
      {"require swr at below below 2", "require swr at:below below:2"},
      {"require total loss below 2 dB", "require total loss below:2|dB"},
      {"require efficiency above 50 %", "require efficiency above:0.5|%"},
      {"plane p at n", "plane p n"},
      {"plane p at atu.mid into atu.L", "plane p atu.mid into atu.L"},
      {"change atu.Cin : 100 pF, Q 500", "change atu.Cin : 1e-10|pF, Q 500"},
      {"include \"parts.feed\"", "include parts.feed"},
      {"set c = 100 pF, adjustable 10 pF to 300 pF", "set c = 1e-10|pF, adjustable 1e-11|pF to 3e-10|pF"},
      {"set c = adjustable 10 pF to 300 pF", "set c = adjustable 1e-11|pF to 3e-10|pF"},
      {"set a = adjustable -90 deg to 90 deg", "set a = (- adjustable 1.57079632679|deg) to 1.57079632679|deg"},
      {"box t (in out) {\n}", "box t (in out ) { }"},
      {"variant \"a # {\" { # why\n set a = 3\n # inside\n }", "variant a # { { set a = 3; }"},
  });
}

TEST_CASE("a kind that nobody knows is read as a part, for it may be a box of another file") {
  check({{"gizmo g from a to b", "gizmo g @ a -> b : "}});
}

TEST_CASE("a kind's word at a line's start ends an open statement only where a part's name follows") {
  check({{"set x = max(3,\n  load)", "set x = max{ 3; load; }"},
         {"kind K at n : a,\n  line 5 ohm", "kind K @ n : a, line 5|ohm"}});
}

TEST_CASE("every node knows its place") {
  const auto text = source("set x = a + 2 * (3 pF)\nline l from a to b : run of RG-213 # why\n");
  const auto result = parse(text);
  REQUIRE(result.ok());
  const auto& statements = result.value->statements;
  CHECK(statements[0].span.text() == "set x = a + 2 * (3 pF)");
  CHECK(statements[1].span.text() == "line l from a to b : run of RG-213");
  const auto& sum = std::get<syntax::Set>(statements[0].what).properties[0][0];
  CHECK(sum.span.text() == "a + 2 * (3 pF)");
  CHECK(syntax::operator_span(sum).text() == "+");
  CHECK(sum.operands[1].span.text() == "2 * (3 pF)");
  CHECK(sum.operands[1].operands[1].span.text() == "(3 pF)");
  const auto& part = std::get<syntax::Part>(statements[1].what);
  CHECK(part.places.span.text() == "from a to b");
  CHECK(syntax::span_of(part.properties[0]).text() == "run of RG-213");
  CHECK(part.kind.span.line() == 2);
}

TEST_CASE("figures and requirements know their places") {
  const auto result = parse(source("require  width of swr at n below 2  above 50 kHz over band \"x\" # c"));
  REQUIRE(result.ok());
  const auto& requirement = *std::get<syntax::Require>(result.value->statements[0].what).requirement;
  CHECK(requirement.span.text() == "width of swr at n below 2  above 50 kHz over band \"x\"");
  CHECK(requirement.figure.span.text() == "width of swr at n below 2");
}

TEST_CASE("what is left after a property's name") {
  const auto rest = [](const std::string& text, std::string_view words) -> std::string {
    syntax::Storage storage;
    const auto result = parse(source("kind K at n : " + text));
    REQUIRE(result.ok());
    const auto left = rest_after(std::get<syntax::Part>(result.value->statements[0].what).properties[0], words, storage);
    return left ? "'" + show(*left) + "'" : "none";
  };
  CHECK(rest("Q 200 at 7 MHz", "Q") == "'200 at 7000000|MHz'");
  CHECK(rest("c - 2 pF", "c") == "'(- 2e-12|pF)'");
  CHECK(rest("c -2 pF + x", "c") == "'(+ (- 2e-12|pF) x)'");
  CHECK(rest("c - 2 * x - y", "c") == "'(- (- (* 2 x)) y)'");
  CHECK(rest("Q (Q)", "Q") == "'[( Q )]'");
  CHECK(rest("Q (200) at 7 MHz", "Q") == "'[( 200 )] at 7000000|MHz'");
  CHECK(rest("Q (Q) * 2 + 1", "Q") == "'(+ (* [( Q )] 2) 1)'");
  CHECK(rest("common impedance 50 ohm", "common impedance") == "'50|ohm'");
  CHECK(rest("common impedance (z)", "common impedance") == "'[( z )]'");
  CHECK(rest("common impedance 50 ohm", "impedance") == "none");
  CHECK(rest("open", "open") == "''");
  CHECK(rest("c * 2", "c") == "none");
  CHECK(rest("c ^ 2", "c") == "none");
  CHECK(rest("2 * c", "c") == "none");
  CHECK(rest("coil(turns 3, length 1 m)", "coil") == "none");
  CHECK(rest("power -10 dBm", "power") == "'0.0001|dBm'");
  CHECK(rest("power +20 dBm", "power") == "'0.1|dBm'");
  CHECK(rest("factor 0.35", "factor x") == "none");
}

TEST_CASE("the part that is left keeps its place") {
  const auto result = parse(source("kind K at n : Q (Q), c - 2 pF"));
  const auto& properties = std::get<syntax::Part>(result.value->statements[0].what).properties;
  syntax::Storage storage;
  CHECK(syntax::span_of(*rest_after(properties[0], "Q", storage)).text() == "(Q)");
  CHECK(syntax::span_of(*rest_after(properties[1], "c", storage)).text() == "- 2 pF");
}

TEST_CASE("one expression, for an option of the command") {
  const auto value = parse_phrase(source("120pF"));
  REQUIRE(value.ok());
  CHECK(show(value.value->what) == "1.2e-10|pF");
  CHECK(show(parse_phrase(source(" (1 + 2) * 3 m ")).value->what) == "(* [( (+ 1 2) )] 3|m)");
  for (const char* wrong :
       {"", " ", "120", "1 2", "7 mhz", "1, 2", "(1", "1)", "{", "1 {", "1\n2", "}", "# x", "\"", "a b"}) {
    CAPTURE(wrong);
    const auto result = parse_phrase(source(wrong));
    CHECK(result.ok() == (std::string(wrong) == "120"));
    CHECK(result.diagnostics.empty() == result.ok());
  }
}

TEST_CASE("what follows the word sweep, for an option of the command") {
  const auto sweep = parse_sweep(source("7 MHz to 7.2 MHz step 10 kHz"));
  REQUIRE(sweep.ok());
  CHECK(show(sweep.value->what.to) == "7200000|MHz");
  CHECK(parse_sweep(source("at [7 MHz]")).value->what.form == syntax::Sweep::Form::at);
  CHECK(parse_sweep(source("band \"40 m\", 3 points")).value->what.band.text == "40 m");
  for (const char* wrong : {"", "7 MHz", "sweep 7 MHz to 8 MHz step 1 kHz", "7 MHz to 8 MHz step", "at 7 MHz"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_sweep(source(wrong)).ok());
  }
}

TEST_CASE("a partial tree holds what could be read") {
  const auto result =
      parse(source("set a = 1\nset b = 7 mhz\nset c = 3\nvariant \"v\" {\n set d = (\n set e = 4\n}\n"));
  CHECK(result.diagnostics.size() == 2);
  REQUIRE(result.value->statements.size() == 3);
  CHECK(show(result.value->statements[2]) == "variant v { set e = 4; }");
}

TEST_CASE("the examples of the grammar's own page parse") {
  std::ifstream file(std::string(WATTFALL_TEST_DATA) + "/../../grammar/README.md");
  REQUIRE(file);
  std::ostringstream page;
  page << file.rdbuf();
  const std::string text = page.str();
  const std::string fence = "```feed\n";
  int count = 0;
  for (std::size_t at = text.find(fence); at != std::string::npos; at = text.find(fence, at + 1)) {
    const std::size_t begin = at + fence.size();
    const auto result = parse(source(text.substr(begin, text.find("```", begin) - begin)));
    INFO(render(result.diagnostics, false));
    CHECK(result.ok());
    ++count;
  }
  CHECK(count >= 4);
}
