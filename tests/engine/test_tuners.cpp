// `tuner`: the forms that the tuner plugin brings, each a design of its own.
#include <catch2/catch.hpp>
#include <cmath>

#include "feed.hpp"
#include "tune/tune.hpp"

using namespace wattfall;

namespace {

Result<design::DesignSet> resolved(const std::string& text, const design::ResolveOptions& options = {}) {
  const design::Catalog catalog(test::registry());
  const auto source = std::make_shared<const Source>("test.feed", text);
  Result<syntax::File> file = parse(source, catalog.vocabulary());
  REQUIRE(file.value.has_value());
  return design::resolve(*file.value, catalog, test::registry(), options);
}

std::vector<std::string> names(const Result<design::DesignSet>& set) {
  std::vector<std::string> all;
  if (set.value)
    for (const design::Design& design : set.value->variants) all.push_back(design.variant.value_or("-"));
  return all;
}

std::string text(const std::string& tuner, const std::string& more = "") {
  return "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nload ant at feed : 28+j208 ohm\n" + tuner + "\n" + more +
         "sweep at [10.1 MHz]\ntune atu at 10.1 MHz for most power into ant\n";
}

}  // namespace

TEST_CASE("a tuner of a group makes a design a form, and turns all that is adjustable in it") {
  const auto set = resolved(text("tuner atu from desk to feed : l-network, coil Q 250, largest coil 10 uH"));
  REQUIRE(test::codes(set.diagnostics).empty());
  REQUIRE(names(set) == std::vector<std::string>{"low-pass L, C at the rig", "low-pass L, C at the antenna", "high-pass L, coil at the rig", "high-pass L, coil at the antenna"});
  for (const design::Design& design : set.value->variants) {
    CHECK(design.tunes[0].knobs.size() == 2);
    CHECK(design.boxes[0].kind == "tuner " + *design.variant);
  }
  const design::Design& first = set.value->variants[0];
  REQUIRE(first.knobs.size() == 2);
  CHECK(first.knobs[0].name == "atu.C");
  CHECK(first.knobs[1].name == "atu.L");
  CHECK(first.knobs[1].upper == Approx(10e-6));
  CHECK(std::get<design::Inductor>(first.parts[2].model).loss.value.constant_value().real() == 250.0);
  CHECK(std::get<design::Capacitor>(first.parts[1].model).loss.value.constant_value().real() == 1000.0);
}

TEST_CASE("any is all of them, a name in quotes is one, and one needs no name of its own") {
  CHECK(names(resolved(text("tuner atu from desk to feed : any"))).size() == 6);
  CHECK(names(resolved(text("tuner atu from desk to feed"))).size() == 6);
  CHECK(names(resolved(text("tuner atu from desk to feed : coil Q 100"))).size() == 6);
  CHECK(names(resolved(text("tuner atu from desk to feed : pi"))) == std::vector<std::string>{"-"});
  CHECK(names(resolved(text("tuner atu from desk to feed : \"high-pass tee\""))) == std::vector<std::string>{"-"});
}

TEST_CASE("in variants each form makes one more, and --variant picks a form where there are none") {
  const auto set = resolved("design \"t\"\nsource rig at desk : 100 W, 50 ohm\nload ant at feed : 28+j208 ohm\nsweep at [10.1 MHz]\n"
                            "variant \"a\" {\n  tuner atu from desk to feed : l-network\n  tune atu at 10.1 MHz for most power into ant\n}\n"
                            "variant \"b\" {\n  tuner atu from desk to feed : tee\n  tune atu at 10.1 MHz for most power into ant\n}\n");
  REQUIRE(test::codes(set.diagnostics).empty());
  CHECK(names(set) == std::vector<std::string>{"a, low-pass L, C at the rig", "a, low-pass L, C at the antenna", "a, high-pass L, coil at the rig",
                                               "a, high-pass L, coil at the antenna", "b"});
  design::ResolveOptions options;
  options.variant = "low-pass pi";
  CHECK(names(resolved(text("tuner atu from desk to feed : any"), options)) == std::vector<std::string>{"low-pass pi"});
  options.variant = "no such form";
  CHECK(test::codes(resolved(text("tuner atu from desk to feed : any"), options).diagnostics) == std::vector<std::string>{"unknown-variant"});
}

TEST_CASE("what is wrong with a tuner is said") {
  CHECK(test::codes(resolved(text("tuner atu from desk to feed : gamma")).diagnostics).front() == "unknown-tuner-form");
  CHECK(test::codes(resolved(text("tuner atu from desk to feed : pi, coil W 3")).diagnostics).front() == "unknown-property");
  CHECK(test::codes(resolved(text("box b (in, out) {\n  tuner t from in to out : pi\n}\nb atu from desk to feed")).diagnostics).front() == "tuner-in-a-box");
}

TEST_CASE("a box of one's own called tuner is what is meant") {
  const auto set = resolved(text("box tuner (in, out) {\n  capacitor C from in to out : adjustable 10 pF to 500 pF\n}\ntuner atu from desk to feed"));
  CHECK(test::codes(set.diagnostics) == std::vector<std::string>{"not-adjustable"});
}

TEST_CASE("the form that the textbook takes comes to the textbook's parts") {
  // The high-pass L for 28 + j208 ohm: Q = sqrt(50/28 - 1), coil 50/Q, capacitor 208 + 28 Q (closed form; common practice, no source).
  design::ResolveOptions options;
  options.variant = "high-pass L, coil at the rig";
  const auto set = resolved(text("tuner atu from desk to feed : any, coil Q 1e9, capacitor Q 1e9"), options);
  REQUIRE(test::codes(set.diagnostics).empty());
  const design::Design& design = set.value->variants[0];
  auto network = graph::build_graph(design);
  REQUIRE(network.value.has_value());
  const plan::Plan plan = plan::make_plan(*network.value);
  const auto tuning = tune::tune(design, *network.value, plan, test::registry().find_optimizer());
  REQUIRE(tuning.value.has_value());
  const double q = std::sqrt(50.0 / 28.0 - 1.0), w = 2.0 * M_PI * 10.1e6;
  CHECK(tuning.value->settings[0][0] == Approx(50.0 / q / w).epsilon(1e-3));
  CHECK(tuning.value->settings[0][1] == Approx(1.0 / (w * (208.0 + 28.0 * q))).epsilon(1e-3));
}
