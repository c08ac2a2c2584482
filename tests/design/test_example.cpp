#include <catch2/catch.hpp>

#include <cmath>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

// The example of the language's page, letter by letter.
const char* const example = R"(design "40 m doublet at the lake cabin"

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
)";

std::vector<std::string> names_of(const Design& design, const Part& part) {
  std::vector<std::string> names;
  for (const NodeId node : part.terminals) names.push_back(design.nodes[static_cast<std::size_t>(node.index)].name);
  return names;
}

}  // namespace

TEST_CASE("the language's example resolves into its two variants") {
  const Resolved resolved = resolve_text(example);
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  REQUIRE(resolved.set.variants.size() == 2);
  const Design& desk = resolved.set.variants[0];
  const Design& mast = resolved.set.variants[1];
  CHECK(desk.title == "40 m doublet at the lake cabin");
  CHECK(desk.file == "test.feed");
  CHECK(desk.variant == std::optional<std::string>("coupler at the desk"));
  CHECK(mast.variant == std::optional<std::string>("coupler at the mast"));
}

TEST_CASE("the example's parts stand in the order of the text, between the nodes of their boxes' ports") {
  const Resolved resolved = resolve_text(example);
  REQUIRE(resolved.good());
  const Design& design = resolved.design();
  std::vector<std::string> names;
  for (const Part& part : design.parts) names.push_back(part.name);
  CHECK(names == std::vector<std::string>{"wires", "atu.Cin", "atu.L", "atu.Cout", "coax"});
  CHECK(names_of(design, resolved.part("atu.Cin")) == std::vector<std::string>{"desk", "atu.mid"});
  CHECK(names_of(design, resolved.part("atu.L")) == std::vector<std::string>{"atu.mid", "ground"});
  CHECK(names_of(design, resolved.part("atu.Cout")) == std::vector<std::string>{"atu.mid", "wall"});
  CHECK(names_of(design, resolved.part("coax")) == std::vector<std::string>{"wall", "ground", "feed", "ground"});
  REQUIRE(design.boxes.size() == 1);
  CHECK(design.boxes[0].name == "atu");
  CHECK(design.boxes[0].kind == "tee");
  CHECK(design.boxes[0].ports.size() == 2);
  CHECK(resolved.part("atu.L").box == BoxId{0});
  CHECK(resolved.part("atu.Cin").span.line() == 9);
}

TEST_CASE("the example's source and load have their values in SI units") {
  const Resolved resolved = resolve_text(example);
  REQUIRE(resolved.good());
  const Design& design = resolved.design();
  CHECK(design.source.name == "rig");
  CHECK(design.nodes[static_cast<std::size_t>(design.source.node.index)].name == "desk");
  CHECK(design.source.other == ground);
  CHECK(design.source.available_w.constant_value() == 100.0);
  CHECK(design.source.impedance_ohm.constant_value() == 50.0);
  CHECK_FALSE(design.source.reference_ohm);
  CHECK(design.source.duty == 1.0);
  const Load& load = std::get<Load>(resolved.part("wires").model);
  const auto* network = std::get_if<std::shared_ptr<const measured::Network>>(&load.impedance);
  REQUIRE(network != nullptr);
  CHECK((*network)->frequencies_hz.size() == 5);
  CHECK(std::get<Value>(load.radiates).constant_value().real() == Approx(0.92).epsilon(1e-15));
  CHECK(is_load(resolved.part("wires")));
  CHECK(is_two_port(resolved.part("coax")));
  CHECK_FALSE(is_two_port(resolved.part("atu.L")));
}

TEST_CASE("the example's knobs start where the box, or the properties of its use, say") {
  const Resolved resolved = resolve_text(example);
  REQUIRE(resolved.good());
  const Design& desk = resolved.set.variants[0];
  const Design& mast = resolved.set.variants[1];
  REQUIRE(desk.knobs.size() == 3);
  CHECK(desk.knobs[0].name == "atu.Cin");
  CHECK(desk.knobs[0].lower == Approx(12e-12));
  CHECK(desk.knobs[0].upper == Approx(240e-12));
  CHECK(*desk.knobs[0].start == Approx(120e-12));
  CHECK(*mast.knobs[0].start == Approx(100e-12));
  CHECK(*mast.knobs[1].start == Approx(2e-6));
  const Capacitor& capacitor = std::get<Capacitor>(resolved.part("atu.Cin").model);
  CHECK(capacitor.farads.depends_on(KnobId{0}));
  CHECK_FALSE(capacitor.farads.depends_on(KnobId{1}));
  const std::vector<double> setting{50e-12, 3e-6, 60e-12};
  CHECK(capacitor.farads.real_at(7e6, setting) == 50e-12);
  CHECK(capacitor.loss.form == SeriesLoss::Form::q);
  CHECK(*resolved.part("atu.Cin").limits.volts_peak == 1000.0);
  const Inductor& inductor = std::get<Inductor>(resolved.part("atu.L").model);
  CHECK(inductor.loss.form == SeriesLoss::Form::q_at);
  CHECK(inductor.loss.value.constant_value() == 200.0);
  CHECK(inductor.loss.at_hz.constant_value() == 7e6);
}

TEST_CASE("the example's line takes the figures of its cable, fitted by the model") {
  const Resolved resolved = resolve_text(example);
  REQUIRE(resolved.good());
  const LineMake& make = std::get<Line>(resolved.part("coax").model).make;
  CHECK(make.cable == "RG-213");
  CHECK(make.length_m.constant_value() == 24.0);
  CHECK(make.impedance_ohm == 50.0);
  CHECK(make.velocity == 0.66);
  CHECK(make.losses.size() == 2);
  CHECK(make.model == registry().find_line_model());
  CHECK(make.k1 == Approx(0.02 / std::sqrt(10e6)));
  CHECK(*resolved.part("coax").limits.volts_peak == 5000.0);  // the cable's rating, as none is given
}

TEST_CASE("the example's sweep, tune and requirements are settled") {
  const Resolved resolved = resolve_text(example);
  REQUIRE(resolved.good());
  const Design& design = resolved.design();
  CHECK(design.frequencies_hz.size() == 21);
  CHECK(design.frequencies_hz.front() == 7.0e6);
  CHECK(design.frequencies_hz.back() == 7.2e6);
  REQUIRE(design.tunes.size() == 1);
  CHECK(design.tunes[0].knobs == std::vector<KnobId>{KnobId{0}, KnobId{1}, KnobId{2}});
  CHECK(design.tunes[0].when == Tune::When::at_each);
  CHECK(design.tunes[0].most);
  CHECK(design.tunes[0].goal.kind == FigureKind::power_into);
  CHECK(design.tunes[0].goal.part == PartId{0});
  REQUIRE(design.tunes[0].keeping.size() == 1);
  CHECK(design.tunes[0].keeping[0].text == "swr at desk below 1.5");
  REQUIRE(design.requirements.size() == 3);
  CHECK(design.requirements[0].figure.look.into == PartId{1});  // atu.Cin, the only part at the desk
  CHECK(design.requirements[0].below);
  CHECK(design.requirements[1].text == "total loss below 2 dB");
  CHECK(design.requirements[2].value == 1000.0);
  CHECK(design.requirements[2].span.line() == 27);
}
