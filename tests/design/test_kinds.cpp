#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

Resolved resolve_part(const std::string& line) {
  Resolved resolved = resolve_text(with_frame(line));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  return resolved;
}

template <class Kind>
Kind model_of(const std::string& line) {
  return std::get<Kind>(resolve_part(line).part("x").model);
}

double real(const Value& value) {
  return value.constant_value().real();
}
double real(const std::optional<Value>& value) {
  return value.value().constant_value().real();
}

}  // namespace

TEST_CASE("a resistor takes inductance and capacitance") {
  const auto resistor = model_of<Resistor>("resistor x at desk : 50 ohm, inductance 10 nH, capacitance 1 pF");
  CHECK(real(resistor.ohms) == 50.0);
  CHECK(real(resistor.inductance) == Approx(10e-9));
  CHECK(real(resistor.capacitance) == Approx(1e-12));
  CHECK(real(model_of<Resistor>("resistor x at desk : resistance 0 ohm").ohms) == 0.0);
}

TEST_CASE("a coil takes its loss in three forms, and its own capacitance in two") {
  CHECK(model_of<Inductor>("inductor x at desk : 2 uH").loss.form == SeriesLoss::Form::none);
  const auto q = model_of<Inductor>("inductor x at desk : 2 uH, Q 200, capacitance 3 pF");
  CHECK(real(q.henries) == Approx(2e-6));
  CHECK(q.loss.form == SeriesLoss::Form::q);
  CHECK(real(q.loss.value) == 200.0);
  CHECK(real(q.capacitance) == Approx(3e-12));
  const auto q_at = model_of<Inductor>("inductor x at desk : 2 uH, Q 200 at 7 MHz, resonance 30 MHz");
  CHECK(q_at.loss.form == SeriesLoss::Form::q_at);
  CHECK(real(q_at.loss.at_hz) == 7e6);
  CHECK(real(q_at.resonance_hz) == 30e6);
  const auto ohms = model_of<Inductor>("inductor x at desk : 2 uH, resistance 0.5 ohm");
  CHECK(ohms.loss.form == SeriesLoss::Form::resistance);
  CHECK(real(ohms.loss.value) == 0.5);
}

TEST_CASE("a capacitor takes its loss in three forms, a tangent and inductance") {
  const auto capacitor =
      model_of<Capacitor>("capacitor x at desk : 100 pF, Q 1000 at 7 MHz, tangent 0.001, inductance 5 nH");
  CHECK(real(capacitor.farads) == Approx(100e-12));
  CHECK(capacitor.loss.form == SeriesLoss::Form::q_at);
  CHECK(real(capacitor.tangent) == 0.001);
  CHECK(real(capacitor.inductance) == Approx(5e-9));
  CHECK(model_of<Capacitor>("capacitor x at desk : 100 pF, resistance 0.1 ohm").loss.form ==
        SeriesLoss::Form::resistance);
}

TEST_CASE("one-ports stand at a node, from one to another, or at a pair") {
  const Resolved at = resolve_part("resistor x at desk : 1 ohm");
  CHECK(at.part("x").terminals == std::vector<NodeId>{NodeId{1}, ground});
  const Resolved from = resolve_part("resistor x from desk to feed : 1 ohm");
  CHECK(from.part("x").terminals == std::vector<NodeId>{NodeId{1}, NodeId{2}});
  const Resolved pair = resolve_part("resistor x at (desk feed) : 1 ohm");
  CHECK(pair.part("x").terminals == std::vector<NodeId>{NodeId{1}, NodeId{2}});
}

TEST_CASE("two-ports stand between nodes or pairs, ground among them") {
  const Resolved plain = resolve_part("line x from desk to feed : 1 m of RG-58");
  CHECK(plain.part("x").terminals == std::vector<NodeId>{NodeId{1}, ground, NodeId{2}, ground});
  const Resolved pairs = resolve_part("line x from (desk, ground) to (feed desk) : 1 m of RG-58");
  CHECK(pairs.part("x").terminals == std::vector<NodeId>{NodeId{1}, ground, NodeId{2}, NodeId{1}});
}

TEST_CASE("a line is a length of cable, found without regard to case, hyphens and blanks") {
  for (const char* name : {"RG-58", "rg58", "\"RG 58\"", "Rg-58"}) {
    INFO(name);
    CHECK(model_of<Line>(std::string("line x from desk to feed : 10 m of ") + name).make.cable == "RG-58");
  }
}

TEST_CASE("a line may be given by its figures") {
  const auto line = model_of<Line>(
      "line x from (desk l) to (feed r) : 24 m, 450 ohm, velocity 91 %, loss 0.3 dB/100m at 10 MHz, common impedance 300 ohm");
  CHECK(line.make.cable.empty());
  CHECK(line.make.impedance_ohm == 450.0);
  CHECK(line.make.velocity == Approx(0.91));
  REQUIRE(line.make.losses.size() == 1);
  CHECK(line.make.losses[0].frequency_hz == 10e6);
  CHECK(line.make.losses[0].db_per_100m == Approx(0.3));
  CHECK(real(line.common_impedance) == 300.0);
  const auto table = model_of<Line>(
      "line x from desk to feed : 24 m, impedance 50 - j2 ohm, loss [6.5 dB/100m at 10 MHz, 6.7 dB/100ft at 100 MHz]");
  CHECK(table.make.impedance_ohm == std::complex<double>(50, -2));
  CHECK(table.make.velocity == 1.0);
  REQUIRE(table.make.losses.size() == 2);
  CHECK(table.make.losses[1].db_per_100m == Approx(6.7 / 0.3048));
  CHECK(model_of<Line>("line x from desk to feed : 24 m, 450 ohm").make.losses.empty());
}

// metres = angle / (2 pi) * velocity * c0 / f, with c0 = 299 792 458 m/s by definition of the metre (SI).
TEST_CASE("a line's length may be electrical, at a frequency") {
  const auto by_figures = model_of<Line>("line x from desk to feed : 90 deg at 7.1 MHz, 50 ohm, velocity 0.66");
  CHECK(real(by_figures.make.length_m) == Approx(0.25 * 0.66 * 299'792'458.0 / 7.1e6).epsilon(1e-14));
  const auto by_cable = model_of<Line>("line x from desk to feed : 45° at 14 MHz of RG-213");
  CHECK(real(by_cable.make.length_m) == Approx(0.125 * 0.66 * 299'792'458.0 / 14e6).epsilon(1e-14));
  const auto by_set = resolve_part("set quarter = 90 deg\nline x from desk to feed : quarter at 7 MHz, 50 ohm");
  CHECK(real(std::get<Line>(by_set.part("x").model).make.length_m) == Approx(299'792'458.0 / 28e6).epsilon(1e-14));
}

TEST_CASE("a line's length may be adjustable, in metres or degrees") {
  const Resolved metres = resolve_part("line x from desk to feed : 10 m of RG-58, adjustable 5 m to 20 m");
  CHECK(metres.knob("x").lower == 5.0);
  CHECK(metres.knob("x").dim == dimension::length);
  CHECK(std::get<Line>(metres.part("x").model).make.length_m.depends_on(KnobId{0}));
  const Resolved degrees = resolve_part(
      "line x from desk to feed : 90 deg at 7 MHz, 50 ohm, adjustable 45 deg at 7 MHz to 180 deg at 7 MHz");
  CHECK(degrees.knob("x").upper == Approx(299'792'458.0 / 14e6));
}

TEST_CASE("a stub is open or shorted") {
  CHECK(model_of<Stub>("stub x at desk : 5 m of RG-58, open").open);
  const auto shorted = model_of<Stub>("stub x at desk : 5 m, 450 ohm, velocity 0.9, shorted");
  CHECK_FALSE(shorted.open);
  CHECK(shorted.make.impedance_ohm == 450.0);
}

TEST_CASE("a transformer's ratio is of turns or of impedances, from side : to side") {
  CHECK(real(model_of<Transformer>("transformer x from desk to feed : turns 1:3").ratio) == Approx(3.0));
  CHECK(real(model_of<Transformer>("transformer x from desk to feed : impedance 1:9").ratio) == Approx(3.0));
  CHECK(real(model_of<Transformer>("transformer x from desk to feed : turns 4:1").ratio) == Approx(0.25));
  const auto full = model_of<Transformer>(
      "transformer x from desk to feed : turns 2:4, winding 0.2 ohm, leakage 0.1 uH, magnetizing 20 uH, core Q 20");
  CHECK(real(full.winding_ohms) == Approx(0.2));
  CHECK(real(full.leakage_henries) == Approx(1e-7));
  CHECK(real(full.magnetizing_henries) == Approx(20e-6));
  CHECK(real(full.core_q) == 20.0);
  CHECK_FALSE(full.core_ohms);
  CHECK(real(model_of<Transformer>("transformer x from desk to feed : turns 1:2, core 5000 ohm").core_ohms) == 5000.0);
}

TEST_CASE("a transformer's taps are choices of its ratio") {
  const Resolved taps = resolve_part("transformer x from desk to feed : impedance 1:4, adjustable [1:1, 1:4, 1:9]");
  CHECK(taps.knob("x").choices == std::vector<double>{1.0, 2.0, 3.0});
  CHECK(*taps.knob("x").start == 2.0);
}

TEST_CASE("chokes and baluns take a value or a table between a pair and a pair") {
  const auto choke = model_of<Choke>("choke x from (desk ground) to (feed l) : 2000+j3000 ohm");
  CHECK(choke.impedance_ohm.constant_value() == std::complex<double>(2000, 3000));
  CHECK_FALSE(choke.table);
  const Resolved balun = resolve_part("balun x from desk to (l r) : table [1 MHz: 1000 ohm, 30 MHz: 5000+j100 ohm]");
  const Choke& of_balun = std::get<Choke>(balun.part("x").model);
  REQUIRE(of_balun.table);
  CHECK(of_balun.table->frequencies_hz == std::vector<double>{1e6, 30e6});
  CHECK(of_balun.table->values[1] == std::complex<double>(5000, 100));
  CHECK(is_two_port(balun.part("x")));
  CHECK(model_of<Choke>("balun x from desk to (l r) : [1 MHz: 1000 ohm, 30 MHz: 5000 ohm]").table);
}

TEST_CASE("a pad has its attenuation and its impedance") {
  const auto pad = model_of<Pad>("pad x from desk to feed : 10 dB, 75 ohm");
  CHECK(real(pad.attenuation_db) == 10.0);
  CHECK(real(pad.impedance_ohm) == 75.0);
  CHECK(real(model_of<Pad>("pad x from desk to feed : 3 dB").impedance_ohm) == 50.0);
}

TEST_CASE("a measured two-port is read from its file") {
  const auto two_port = model_of<TwoPort>("twoport x from desk to feed : measured \"two.s2p\"");
  REQUIRE(two_port.data != nullptr);
  CHECK(two_port.data->ports == 2);
}

TEST_CASE("a selector stands on one of its nodes, and may be a knob") {
  const Resolved fixed = resolve_part("selector x from desk to (a b c) : b");
  CHECK(real(std::get<Selector>(fixed.part("x").model).choice) == 1.0);
  CHECK(fixed.part("x").terminals.size() == 4);
  const Resolved knob = resolve_part("selector x from desk to (a b c) : b, adjustable");
  CHECK(knob.knob("x").choices == std::vector<double>{0.0, 1.0, 2.0});
  CHECK(*knob.knob("x").start == 1.0);
  CHECK(std::get<Selector>(knob.part("x").model).choice.depends_on(KnobId{0}));
}

TEST_CASE("a coupling joins two coils, wherever they stand in the text") {
  const Resolved resolved =
      resolve_part("coupling k between x and y : factor 0.35\ninductor x at desk : 1 uH\ninductor y at feed : 2 uH");
  REQUIRE(resolved.design().couplings.size() == 1);
  const Coupling& coupling = resolved.design().couplings[0];
  CHECK(coupling.name == "k");
  CHECK(resolved.design().parts[static_cast<std::size_t>(coupling.first.index)].name == "x");
  CHECK(resolved.design().parts[static_cast<std::size_t>(coupling.second.index)].name == "y");
  CHECK(real(coupling.factor) == 0.35);
}

TEST_CASE("a source takes impedance, reference, foldback and duty") {
  const Resolved resolved = resolve_text(
      "source rig from a to b : 50 dBm, 40+j5 ohm, reference 50 ohm, foldback [1.5: 100 %, 3: 25 %], duty 30 %\n"
      "load ant from a to b : 50 ohm\nsweep at [7 MHz]\n");
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  const wattfall::design::Source& source = resolved.design().source;
  CHECK(real(source.available_w) == Approx(100.0));
  CHECK(source.impedance_ohm.constant_value() == std::complex<double>(40, 5));
  CHECK(real(source.reference_ohm) == 50.0);
  REQUIRE(source.foldback.size() == 2);
  CHECK(source.foldback[1].first == 3.0);
  CHECK(source.foldback[1].second == Approx(0.25));
  CHECK(source.duty == Approx(0.3));
  CHECK(source.other == NodeId{2});
}

TEST_CASE("a load's impedance comes as a value, a table, a series circuit or a measurement") {
  const auto load = model_of<Load>("load x at desk : 28+j208 ohm, loss 3 ohm");
  CHECK(std::get<Value>(load.impedance).constant_value() == std::complex<double>(28, 208));
  CHECK(real(load.loss_ohms) == 3.0);
  const auto table = model_of<Load>(
      "load x at desk : table [7 MHz: 50-j10 ohm, 7.3 MHz: 55+j2 ohm], radiates [7 MHz: 90 %, 7.2 MHz: 95 %]");
  CHECK(std::get<Table>(table.impedance).values[0] == std::complex<double>(50, -10));
  CHECK(std::get<Table>(table.radiates).values[1].real() == Approx(0.95));
  const auto circuit =
      model_of<Load>("load x at desk : series(resistance 10 ohm, inductance 2 uH, capacitance 100 pF)");
  const auto& series = std::get<Load::Series>(circuit.impedance);
  CHECK(real(series.ohms) == 10.0);
  CHECK(real(series.henries) == Approx(2e-6));
  CHECK(real(series.farads) == Approx(100e-12));
}

TEST_CASE("ratings and tolerances go with any part") {
  const Resolved resolved =
      resolve_part("capacitor x at desk : 100 pF, limit 1 kV, limit 5 A, limit 10 W, tolerance 5 % normal");
  const Part& part = resolved.part("x");
  CHECK(*part.limits.volts_peak == 1000.0);
  CHECK(*part.limits.amps_rms == 5.0);
  CHECK(*part.limits.watts == 10.0);
  CHECK(part.limits.span.text() == "limit 1 kV, limit 5 A, limit 10 W");
  CHECK(part.tolerance->relative);
  CHECK(part.tolerance->normal);
  CHECK(part.tolerance->amount == Approx(0.05));
  const Tolerance absolute = *resolve_part("capacitor x at desk : 100 pF, tolerance 2 pF").part("x").tolerance;
  CHECK_FALSE(absolute.relative);
  CHECK_FALSE(absolute.normal);
  CHECK(absolute.amount == Approx(2e-12));
}

TEST_CASE("a plugin's kind takes its properties, with their fallbacks") {
  const Resolved resolved = resolve_part("sparkgap x at desk : 3 ohm\nlink y from desk to feed");
  const auto& gap = std::get<PluginPart>(resolved.part("x").model);
  REQUIRE(gap.values.size() == 2);
  CHECK(real(gap.values[0]) == 3.0);
  CHECK(real(gap.values[1]) == 2000.0);
  CHECK(real(std::get<PluginPart>(resolved.part("y").model).values[0]) == 0.5);
  CHECK(is_two_port(resolved.part("y")));
  CHECK_FALSE(is_two_port(resolved.part("x")));
}

TEST_CASE("the catalogue knows the language's kinds and those of plugins, each property with its meaning") {
  for (const char* kind : {"source", "load", "resistor", "inductor", "capacitor", "line", "stub", "transformer",
                           "balun", "choke", "coupling", "pad", "twoport", "selector", "sparkgap", "link"}) {
    INFO(kind);
    const KindInfo* info = catalog().find(kind);
    REQUIRE(info != nullptr);
    CHECK_FALSE(info->meaning.empty());
    CHECK_FALSE(info->places_text.empty());
    CHECK(info->brought_by == (info->plugin_kind == nullptr ? "wattfall" : "tests"));
    for (const PropertyInfo& property : info->properties) {
      INFO(property.name);
      CHECK_FALSE(property.meaning.empty());
    }
  }
  CHECK(catalog().find("tee") == nullptr);
  CHECK(catalog().names().size() == 16);
  CHECK(figures().size() == 17);
}
