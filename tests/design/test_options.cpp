#include <catch2/catch.hpp>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

const char* const text = R"(set c = 100 pF
set g = 10 pF, adjustable 5 pF to 20 pF
source rig at desk : 100 W
load ant at feed : 50 ohm
line coax from desk to feed : 10 m of RG-58
transformer T from desk to feed : impedance 1:4
box shunt (top) with x = c { 
  capacitor C at top : x, adjustable 10 pF to 300 pF
}
shunt s at feed
capacitor G at feed : g
selector S from desk to (a b) : a
sweep at [7 MHz]
)";

Resolved with(std::vector<std::pair<std::string, std::string>> settings) {
  ResolveOptions options;
  options.settings = std::move(settings);
  return resolve_text(text, options);
}

Resolved with_options(const ResolveOptions& options, const std::string& more = "") {
  return resolve_text(text + more, options);
}

}  // namespace

TEST_CASE("--set replaces quantities, and the main values of parts") {
  const Resolved resolved = with({{"c", "120pF"},
                                  {"g", "7 pF"},
                                  {"ant", "75 - j5 ohm"},
                                  {"coax", "20 m"},
                                  {"T", "1:9"},
                                  {"rig", "5 W"},
                                  {"S", "b"}});
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(*resolved.knob("s.C").start == Approx(120e-12));
  CHECK(*resolved.knob("g").start == Approx(7e-12));
  CHECK(resolved.knob("g").upper == Approx(20e-12));
  CHECK(std::get<Value>(std::get<Load>(resolved.part("ant").model).impedance).constant_value() ==
        std::complex<double>(75, -5));
  const LineMake& make = std::get<Line>(resolved.part("coax").model).make;
  CHECK(make.length_m.constant_value() == 20.0);
  CHECK(make.cable == "RG-58");
  CHECK(std::get<Transformer>(resolved.part("T").model).ratio.constant_value() == 3.0);
  CHECK(resolved.design().source.available_w.constant_value() == 5.0);
  CHECK(std::get<Selector>(resolved.part("S").model).choice.constant_value() == 1.0);
}

TEST_CASE("--set reaches a box's quantities, of one use alone") {
  const char* const boxes =
      "source rig at a : 100 W\nload ant at c : 50 ohm\nsweep at [7 MHz]\n"
      "box inner (t) with x = 1 pF, y = 2 * x {\n set z = 5 pF, adjustable 1 pF to 9 pF\n"
      " capacitor C at t : x\n capacitor D at t : y\n capacitor E at t : z\n}\n"
      "box outer (p q) {\n inner one at p\n resistor R from p to q : 1 ohm\n}\n"
      "outer first from a to b\nouter second from b to c\n";
  ResolveOptions options;
  options.settings = {{"first.one.x", "3 pF"}, {"second.one.z", "7 pF"}};
  const Resolved resolved = resolve_text(boxes, options);
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const auto farads = [&](const char* part) {
    return std::get<Capacitor>(resolved.part(part).model).farads.constant_value().real();
  };
  CHECK(farads("first.one.C") == Approx(3e-12));
  CHECK(farads("first.one.D") == Approx(6e-12));
  CHECK(farads("second.one.C") == Approx(1e-12));
  CHECK(*resolved.knob("first.one.z").start == Approx(5e-12));
  CHECK(*resolved.knob("second.one.z").start == Approx(7e-12));

  options.settings = {{"first.one.w", "3 pF"}};
  const Resolved unknown = resolve_text(boxes, options);
  REQUIRE(unknown.diagnostics.size() == 1);
  CHECK(unknown.diagnostics[0].code == "unknown-name");
  CHECK(unknown.diagnostics[0].expected.find("first.one.x") != std::string::npos);
  CHECK(exit_code(unknown.diagnostics) == 2);
  options.settings = {{"first.one.x", "3 uH"}};
  const Resolved wrong = resolve_text(boxes, options);
  REQUIRE(wrong.diagnostics.size() == 1);
  CHECK(wrong.diagnostics[0].code == "wrong-dimension");
  CHECK(exit_code(wrong.diagnostics) == 2);
}

TEST_CASE("a quantity that a variant does not use is no knob of it") {
  const Resolved resolved = resolve_text(
      "set c = 10 pF, adjustable 5 pF to 20 pF\nset twice = 2 * c\nset d = adjustable 1 pF to 2 pF\n"
      "source rig at a : 100 W\nload ant at a : 50 ohm\nsweep at [7 MHz]\n"
      "variant \"with\" {\n capacitor C at a : twice\n}\nvariant \"without\" {\n capacitor C at a : 3 pF\n}\n"
      "variant \"turned\" {\n tune d at 7 MHz for most power into ant\n}\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const auto& variants = resolved.set.variants;
  REQUIRE(variants[0].knobs.size() == 1);
  CHECK(variants[0].knobs[0].name == "c");
  CHECK(variants[1].knobs.empty());
  REQUIRE(variants[2].knobs.size() == 1);
  CHECK(variants[2].knobs[0].name == "d");
}

TEST_CASE("what is wrong with a quantity is said though nothing uses it") {
  const Resolved resolved = resolve_text(
      "set c = 10 pF, adjustable 20 pF to 5 pF\nset l = 2 m + 3 pF\n"
      "source rig at a : 100 W\nload ant at a : 50 ohm\nsweep at [7 MHz]\n");
  REQUIRE(resolved.diagnostics.size() == 2);
  CHECK(resolved.diagnostics[0].code == "falling-range");
  CHECK(resolved.diagnostics[1].code == "dimension-mismatch");
}

TEST_CASE("--set reaches into boxes, and moves a knob's start") {
  const Resolved resolved = with({{"s.C", "20 pF"}});
  REQUIRE(resolved.good());
  CHECK(*resolved.knob("s.C").start == Approx(20e-12));
}

TEST_CASE("mistakes in --set are wrong usage") {
  struct Case {
    const char* name;
    const char* value;
    const char* code;
    const char* underlined;
  };
  const Case cases[] = {{"d", "1 pF", "unknown-name", "d"},          {"s.D", "1 pF", "unknown-name", "s.D"},
                        {"c", "5 m", "wrong-dimension", ""},         {"ant", "5 m", "wrong-dimension", "5 m"},
                        {"ant", "x", "unknown-quantity", "x"},       {"s.C", "400 pF", "start-outside-range", "400 pF"},
                        {"s", "1 pF", "value-without-name", "1 pF"}, {"coax", "0 m", "value-out-of-range", "0 m"}};
  for (const Case& one : cases) {
    const Resolved resolved = with({{one.name, one.value}});
    INFO(one.name << '=' << one.value << '\n' << resolved.errors());
    REQUIRE(resolved.diagnostics.size() == 1);
    CHECK(resolved.diagnostics[0].code == one.code);
    if (*one.underlined == '\0') continue;  // found where the quantity is used
    CHECK(resolved.diagnostics[0].span.text() == one.underlined);
    CHECK(resolved.diagnostics[0].fault == Fault::usage);
    CHECK(resolved.diagnostics[0].span.source->name() == "--set");
  }
  CHECK(with({{"cc", "1 pF"}}).diagnostics[0].hint == "c");
}

TEST_CASE("a name that one variant knows is no mistake in --set") {
  ResolveOptions options;
  options.settings = {{"only", "2 ohm"}};
  const Resolved resolved =
      with_options(options, "variant \"a\" {\n  resistor only at desk : 1 ohm\n}\nvariant \"b\" {\n}\n");
  INFO(resolved.errors());
  CHECK(resolved.good());
}

TEST_CASE("--at and --sweep replace the file's sweeps") {
  ResolveOptions at;
  at.at = {"14.1 MHz", "14 MHz"};
  CHECK(with_options(at).design().frequencies_hz == std::vector<double>{14e6, 14.1e6});
  ResolveOptions sweep;
  sweep.sweep = "14 MHz to 14.2 MHz step 100 kHz";
  CHECK(with_options(sweep).design().frequencies_hz.size() == 3);
  ResolveOptions wrong;
  wrong.at = {"14"};
  const Resolved unitless = with_options(wrong);
  REQUIRE(unitless.diagnostics.size() == 1);
  CHECK(unitless.diagnostics[0].code == "missing-unit");
  CHECK(exit_code(unitless.diagnostics) == 2);
  ResolveOptions falling;
  falling.sweep = "14 MHz to 13 MHz step 100 kHz";
  CHECK(exit_code(with_options(falling).diagnostics) == 2);
}

TEST_CASE("--variant takes one variant, and an unknown one is wrong usage that lists them") {
  const std::string variants = "variant \"near\" {\n}\nvariant \"far\" {\n  resistor r at desk : 1 m\n}\n";
  ResolveOptions options;
  options.variant = "near";
  const Resolved one = with_options(options, variants);
  REQUIRE(one.good());
  CHECK(one.set.variants.size() == 1);
  options.variant = "nearr";
  const Resolved unknown = with_options(options, variants);
  REQUIRE(unknown.diagnostics.size() == 1);
  CHECK(unknown.diagnostics[0].code == "unknown-variant");
  CHECK(unknown.diagnostics[0].hint == "near");
  CHECK(exit_code(unknown.diagnostics) == 2);
  CHECK(exit_code(with_options(options).diagnostics) == 2);
}

TEST_CASE("--as-written needs a written value of every knob") {
  ResolveOptions options;
  options.as_written = true;
  CHECK(with_options(options).good());
  const Resolved unset = with_options(options,
                                      "capacitor C at desk : adjustable 1 pF to 2 pF\nset h = adjustable 1 pF to 2 pF\n"
                                      "capacitor H at desk : h\n"
                                      "selector Z from desk to (a b) : adjustable\n");
  REQUIRE(unset.diagnostics.size() == 3);
  for (const Diagnostic& one : unset.diagnostics) CHECK(one.code == "unset-knob");
}
