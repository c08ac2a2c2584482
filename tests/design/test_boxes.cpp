#include <catch2/catch.hpp>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

double farads_of(const Resolved& resolved, const std::string& part) {
  return std::get<Capacitor>(resolved.part(part).model).farads.at(7e6, resolved.design().starting_knobs()).real();
}

const char* const shunt = "box shunt (top) with c = 100 pF {\n  capacitor C at top : c\n}\n";

}  // namespace

TEST_CASE("boxes stand in boxes, and their members have the names of both") {
  const Resolved resolved =
      resolve_text(with_frame(std::string(shunt) + "box pair (a, b) with c = 20 pF {\n  shunt first at a : c 2 * c\n"
                                                   "  resistor R from a to m : 1 ohm\n  shunt second at m\n"
                                                   "  resistor S from m to b : 1 ohm\n}\npair p from desk to feed\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(farads_of(resolved, "p.first.C") == Approx(40e-12));
  CHECK(farads_of(resolved, "p.second.C") == Approx(100e-12));
  CHECK(resolved.part("p.second.C").terminals[0] == resolved.part("p.R").terminals[1]);
  REQUIRE(resolved.design().boxes.size() == 3);
  CHECK(resolved.design().boxes[0].name == "p");
  CHECK(resolved.design().boxes[1].name == "p.first");
  CHECK(resolved.design().boxes[1].parent == BoxId{0});
  CHECK(resolved.part("p.first.C").box == BoxId{1});
}

TEST_CASE("a box sees its own quantities before the file's, and not those of the box around it") {
  const Resolved inner = resolve_text(with_frame("set c = 1 pF\n" + std::string(shunt) + "shunt s at desk\n"));
  CHECK(farads_of(inner, "s.C") == Approx(100e-12));
  const Resolved file = resolve_text(
      with_frame("set big = 300 pF\nbox b (top) with c = big / 3 {\n  capacitor C at top : c\n}\nb s at desk\n"));
  CHECK(farads_of(file, "s.C") == Approx(100e-12));
  const Resolved around = resolve_text(with_frame(
      "box in (t) {\n  capacitor C at t : d\n}\nbox out (t) with d = 1 pF {\n  in i at t\n}\nout o at desk\n"));
  REQUIRE(around.diagnostics.size() == 1);
  CHECK(around.diagnostics[0].code == "unknown-quantity");
}

TEST_CASE("a box's quantity may follow its others, and what is given in a use is worked out where the use stands") {
  const Resolved resolved = resolve_text(with_frame(
      "set c = 7 pF\nbox b (top) with c = 1 pF, d = 2 * c {\n  capacitor C at top : d\n}\nb s at desk : c c\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(farads_of(resolved, "s.C") == Approx(14e-12));
}

TEST_CASE("ports flatten in order, ground passes through, and inner nodes are each use's own") {
  const Resolved resolved = resolve_text(
      with_frame("box four (a, b, c, d) {\n  resistor R from a to m : 1 ohm\n  resistor S from m to ground : 1 ohm\n"
                 "  resistor T from b to c : 1 ohm\n  resistor U from d to m : 1 ohm\n}\n"
                 "four x from (desk ground) to (feed w)\nfour y from desk to feed to w to v\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(resolved.part("x.T").terminals == std::vector<NodeId>{ground, NodeId{2}});
  CHECK(resolved.part("x.S").terminals[1] == ground);
  CHECK_FALSE(resolved.part("x.S").terminals[0] == resolved.part("y.S").terminals[0]);
  CHECK(resolved.design().boxes[0].ports.size() == 4);
}

TEST_CASE("a box may set quantities of its own, adjustable ones a knob for each use") {
  const Resolved resolved = resolve_text(
      with_frame("box b (top) with c = 10 pF {\n  set d = 2 * c, adjustable 5 pF to 50 pF\n  capacitor C at top : d\n"
                 "  capacitor D at top : d\n}\nb x at desk\nb y at feed : c 5 pF\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(resolved.design().knobs.size() == 2);
  CHECK(*resolved.knob("x.d").start == Approx(20e-12));
  CHECK(*resolved.knob("y.d").start == Approx(10e-12));
}

TEST_CASE("couplings in a box join its own coils") {
  const Resolved resolved =
      resolve_text(with_frame("box linked (a, b) {\n  inductor L1 at a : 1 uH\n  inductor L2 at b : 1 uH\n  coupling k "
                              "between L1 and L2 : factor 0.5\n}\n"
                              "linked x from desk to feed\nlinked y from desk to feed\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  REQUIRE(resolved.design().couplings.size() == 2);
  CHECK(resolved.design().couplings[1].name == "y.k");
  CHECK(resolved.design().parts[static_cast<std::size_t>(resolved.design().couplings[1].first.index)].name == "y.L1");
}

namespace {

const char* const two_variants = R"(set c = 10 pF
source rig at desk : 100 W
load ant at desk : 50 ohm
capacitor C at desk : c, Q 100, limit 1 kV
sweep at [7 MHz]
variant "first" {
}
variant "second" {
  set c = 20 pF
  change C : Q 300 at 7 MHz, limit 2 kV
  change ant : 75 ohm
  change rig : 50 W, duty 40 %
  require efficiency above 10 %
}
)";

}  // namespace

TEST_CASE("a variant sets again, changes what it names, and leaves the rest") {
  const Resolved resolved = resolve_text(two_variants);
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const Design& first = resolved.set.variants[0];
  const Design& second = resolved.set.variants[1];
  const auto farads = [](const Design& design) {
    return std::get<Capacitor>(design.parts[1].model).farads.constant_value().real();
  };
  CHECK(farads(first) == Approx(10e-12));
  CHECK(farads(second) == Approx(20e-12));
  const Capacitor& changed = std::get<Capacitor>(second.parts[1].model);
  CHECK(changed.loss.form == SeriesLoss::Form::q_at);
  CHECK(changed.loss.value.constant_value() == 300.0);
  CHECK(*second.parts[1].limits.volts_peak == 2000.0);
  CHECK(*first.parts[1].limits.volts_peak == 1000.0);
  CHECK(second.source.available_w.constant_value() == 50.0);
  CHECK(second.source.duty == Approx(0.4));
  CHECK(std::get<Value>(std::get<Load>(second.parts[0].model).impedance).constant_value() == 75.0);
  CHECK(first.requirements.empty());
  CHECK(second.requirements.size() == 1);
}

TEST_CASE("a change may reach into a box, and replaces what contradicts it") {
  const Resolved resolved = resolve_text(
      with_frame(std::string(shunt) +
                 "shunt s at desk\nline l from desk to feed : 10 m of RG-58\nload w at feed : 10 ohm, loss 1 ohm\n"
                 "variant \"v\" {\n  change s.C : 5 pF\n  change l : 20 m\n  change w : radiates 50 %\n}\n"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(farads_of(resolved, "s.C") == Approx(5e-12));
  const LineMake& make = std::get<Line>(resolved.part("l").model).make;
  CHECK(make.length_m.constant_value() == 20.0);
  CHECK(make.cable == "RG-58");
  CHECK_FALSE(std::get<Load>(resolved.part("w").model).loss_ohms);
}

TEST_CASE("the same mistake in two variants, or in two uses of a box, is said once") {
  const Resolved resolved = resolve_text(with_frame(
      "box b (t) {\n  capacitor C at t : 5 m\n}\nb x at desk\nb y at desk\nvariant \"a\" {\n}\nvariant \"b\" {\n}\n"));
  REQUIRE(resolved.diagnostics.size() == 1);
  CHECK(resolved.diagnostics[0].code == "wrong-dimension");
}
