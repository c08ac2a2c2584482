// What real parts cost and stand, through the whole pipeline: cores, pairs, heat along lines, gaps. Held against the
// trade's plain formulas, written out here.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "feed.hpp"
#include "judge/judge.hpp"

using namespace wattfall;
using test::Feed;
using Complex = std::complex<double>;

namespace {

constexpr double pi = std::numbers::pi, mu0 = 4e-7 * pi;
const std::string rig = "design \"t\"\nsource rig at desk : 100 W, 50 ohm\n";

Feed solved(const std::string& parts, const std::string& frequency = "7 MHz") {
  Feed feed(rig + parts + "\nsweep at [" + frequency + "]\n");
  for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(feed.diagnostics.empty());
  return feed;
}

std::vector<std::string> warnings_of(const Feed& feed) {
  std::vector<std::string> codes;
  for (const judge::Warning& warning : judge::judge(feed.design, feed.ledger, feed.solution).warnings) codes.push_back(warning.code);
  return codes;
}

bool has(const std::vector<std::string>& codes, const std::string& code) {
  return std::find(codes.begin(), codes.end(), code) != codes.end();
}

const std::string ring = "outer 61 mm, inner 35.6 mm, height 12.7 mm, permeability 400-j300";
/// Z of N turns on it: j w mu0 h ln(OD/ID)/(2 pi) N^2 (mu' - j mu'').
Complex ring_ohm(double turns, double hertz) {
  return Complex{0.0, 2.0 * pi * hertz} * mu0 * 12.7e-3 * std::log(61.0 / 35.6) / (2.0 * pi) * turns * turns * Complex{400.0, -300.0};
}

}  // namespace

TEST_CASE("a transformer's core takes V^2 Re(1/Z), its wire the rest") {
  const Feed feed = solved("transformer T from desk to far : turns 2:14, core(" + ring + ", wire 1 mm)\nload ant at far : 2450 ohm");
  const ledger::PartBook& book = feed.part("T");
  // Skin depth of copper at 7 MHz is 25 um: R = length/(pi d sigma delta) of 2 and, turned to the from side, of 14 turns.
  const double a_turn = 2.0 * 12.7e-3 + (61.0 - 35.6) * 1e-3 + 4e-3, delta = std::sqrt(1.0 / (pi * 7e6 * mu0 * 5.8e7));
  const double wires = (2.0 + 14.0 / 49.0) * a_turn / (pi * 1e-3 * 5.8e7 * delta);
  const Complex core = ring_ohm(2.0, 7e6), across = 1.0 / (1.0 / core + 1.0 / 50.0);
  const double amps = 2.0 * std::sqrt(50.0 * 100.0) / std::abs(50.0 + wires + across);
  const double core_w = std::norm(amps * across) * (1.0 / core).real();
  CHECK(book.core_heat_w[0] == Approx(core_w).epsilon(1e-3));  // the thin skin's R is 1 % low, of a share of 2 %
  CHECK(book.wire_heat_w[0] == Approx(amps * amps * wires).epsilon(0.03));
  CHECK(book.core_heat_w[0] + book.wire_heat_w[0] == Approx(book.heat_w[0]).epsilon(1e-12));
}

TEST_CASE("a transformer without wire has the core's impedance alone, whichever way its turns are told") {
  for (const std::string& words : {"turns 2:14, core(" + ring + ")", "impedance 1:49, core(" + ring + ", turns 2)"}) {
    const Feed feed = solved("transformer T from desk to far : " + words + "\nload ant at far : 2450 ohm");
    const Complex expected = 1.0 / (1.0 / ring_ohm(2.0, 7e6) + 1.0 / 50.0);
    CHECK(std::abs(feed.source_impedance() - expected) < 1e-9 * std::abs(expected));
    CHECK(feed.part("T").wire_heat_w[0] == Approx(0.0).margin(1e-9));
  }
}

TEST_CASE("AL sets a transformer's magnetizing inductance, turns squared times") {
  const Feed feed = solved("transformer T from desk to far : turns 3:3, core(AL 1 uH)\nload ant at far : 50 ohm");
  const Complex expected = 1.0 / (1.0 / Complex{0.0, 2.0 * pi * 7e6 * 9e-6} + 1.0 / 50.0);
  CHECK(std::abs(feed.source_impedance() - expected) < 1e-9 * std::abs(expected));
}

TEST_CASE("flux density is that of the handbooks' E 10^8/(4.44 f N A) in gauss and square centimetres") {
  // E rms; 4.44 = 2 pi/root 2; the mean over the section, which is larger at the inner edge by (OD/ID - 1)/ln(OD/ID).
  const Feed feed = solved("inductor L at desk : core(" + ring + ", turns 9)\nload ant at desk : 50 ohm", "1.8 MHz");
  const double volts = std::abs(feed.solution.volts[1][0]), section_cm2 = 1.27 * (6.1 - 3.56) / 2.0;
  const double gauss = volts * 1e8 * std::numbers::sqrt2 / (2.0 * pi * 1.8e6 * 9.0 * section_cm2);
  CHECK(feed.part("L").flux_peak_t[0] == Approx(gauss * 1e-4 * (61.0 / 35.6 - 1.0) / std::log(61.0 / 35.6)).epsilon(1e-12));
}

TEST_CASE("an inductor on a core books its wire apart, by the two resistances") {
  const Feed feed = solved("inductor L from desk to x : core(" + ring + ", turns 9), resistance 2 ohm\nload ant at x : 50 ohm");
  const double core = ring_ohm(9.0, 7e6).real();
  CHECK(feed.part("L").core_heat_w[0] == Approx(feed.part("L").heat_w[0] * core / (core + 2.0)).epsilon(1e-12));
}

TEST_CASE("flux near saturation is told, and flux past small signals, each with its figure") {
  const auto at = [](const std::string& limit) {
    return warnings_of(solved("inductor L at desk : core(" + ring + ", turns 9, saturation " + limit + ")\nload ant at desk : 50 ohm", "1.8 MHz"));
  };
  // 66 V rms or so over 9 turns of 1.61 cm^2 at 1.8 MHz: some 6 mT, at the inner edge 8 mT.
  CHECK(at("300 mT").empty());
  CHECK(has(at("40 mT"), "core-flux"));
  CHECK(has(at("4 mT"), "core-saturated"));
}

TEST_CASE("what lies outside a model's range is told with its figure") {
  const auto told = [](const std::string& parts, const std::string& frequency = "7 MHz") {
    const Feed feed = solved(parts, frequency);
    for (const judge::Warning& warning : judge::judge(feed.design, feed.ledger, feed.solution).warnings)
      if (warning.code == "outside-model") return warning.text;
    return std::string();
  };
  const std::string load = "\nload ant at a : 50 ohm";
  CHECK(told("capacitor C from desk to a : plates(width 4 cm, length 5 cm, gap 3 cm)" + load) ==
        "C at 7 MHz: the gap is 0.75 of the plates' smaller side, too wide for the fringe formula; its figures are rough there");
  CHECK(told("capacitor C from desk to a : plates(width 4 cm, length 5 cm, gap 1 mm, dielectric PTFE, tangent 0.5)" + load) ==
        "C at 7 MHz: loss tangent is 0.5: the low-loss forms hold up to 0.1; its figures are rough there");
  CHECK(told("capacitor C from desk to a : plates(width 4 cm, length 5 cm, gap 3 mm)" + load).empty());
  CHECK(told("line w from desk to a : 30 m of RG-174" + load, "1.8 MHz") ==
        "w at 1.8 MHz: the frequency is 0.18 of the lowest in the cable's table, and its loss is carried on to there; its figures are rough there");
  CHECK(told("line w from desk to a : 30 m of RG-213" + load, "5 GHz") ==
        "w at 5 GHz: the frequency is 5 times the highest in the cable's table, and its loss is carried on to there; its figures are rough there");
  CHECK(told("line w from desk to a : 30 m of RG-213" + load, "1.8 MHz").empty());
  CHECK(told("inductor L from desk to a : core(outer 40 mm, inner 20 mm, height 5 mm, turns 50, permeability 125, wire 2 mm)" + load) ==
        "L at 7 MHz: one layer of the winding takes 1.768 times the room along the core's hole; its figures are rough there");
  CHECK(told("inductor L from desk to a : coil(turns 10, diameter 8 cm, length 10 cm, strip 4 mm, thickness 0.5 mm)" + load) ==
        "L at 7 MHz: the strip covers 0.4 of the pitch (0.5 or more in range): its outer face and edges carry current too; its figures are rough there");
}

TEST_CASE("a choke's common current, its imbalance and its heat are those of a hand calculation") {
  const Complex zc{200.0, 300.0};
  const Feed feed = solved(
      "choke K from (desk ground) to (l r) : 200+j300 ohm\nload left at l : 30 ohm\nload right at r : 70 ohm");
  // Both conductors drop U = Zc (Ia + Ib); Ia = (V - U)/30, Ib = -U/70.
  const Complex v = feed.solution.source_volts[0];
  const Complex u = zc * v / 30.0 / (1.0 + zc * (1.0 / 30.0 + 1.0 / 70.0)), ia = (v - u) / 30.0, ib = -u / 70.0;
  const ledger::PartBook& book = feed.part("K");
  CHECK(book.common_amps_rms[0] == Approx(std::abs(ia + ib)).epsilon(1e-10));
  CHECK(book.imbalance[0] == Approx(std::abs(ia + ib) / std::abs(ia - ib)).epsilon(1e-10));
  CHECK(book.common_w[0] == Approx((0.5 * (v - 2.0 * u) * std::conj(ia + ib)).real()).epsilon(1e-10));
  CHECK(book.heat_w[0] == Approx(std::norm(ia + ib) * 200.0).epsilon(1e-10));
  CHECK(feed.ledger.totals.common_mode_heat_w[0] == book.heat_w[0]);
}

TEST_CASE("balanced arms on a good choke leave next to no common current") {
  const Feed feed = solved("choke K from (desk ground) to (l r) : 5000+j5000 ohm\nload left at l : 25 ohm\nload right at r : 25 ohm");
  CHECK(feed.part("K").imbalance[0] < 0.01);
}

TEST_CASE("a choke on a core is the ring's impedance to the common mode") {
  const std::string arms = "\nload left at l : 30 ohm\nload right at r : 70 ohm";
  const Feed by_core = solved("choke K from (desk ground) to (l r) : core(" + ring + ", turns 11)" + arms);
  const Complex z = ring_ohm(11.0, 7e6);
  const Feed by_value =
      solved("choke K from (desk ground) to (l r) : " + std::to_string(z.real()) + "+j" + std::to_string(z.imag()) + " ohm" + arms);
  CHECK(by_core.part("K").heat_w[0] == Approx(by_value.part("K").heat_w[0]).epsilon(1e-7));
  CHECK(by_core.part("K").core_heat_w[0] == Approx(by_core.part("K").heat_w[0]).epsilon(1e-12));
}

TEST_CASE("the hottest metre of a line with conductor loss is R I^2 where most current flows") {
  // One loss point: skin effect alone, R = 2 alpha Z0.
  const Feed feed = solved("line w from desk to far : 30 m, 50 ohm, loss 5 dB/100m at 7 MHz\nload ant at far : 10 ohm");
  const ledger::PartBook& book = feed.part("w");
  const double ohms_per_m = 2.0 * 0.05 / 8.685889638 * 50.0;
  CHECK(book.heat_w_per_m[0] == Approx(ohms_per_m * std::pow(book.amps_rms_along[0], 2)).epsilon(1e-9));
  CHECK(book.heat_at_m[0] == Approx(book.amps_at_m[0]).margin(1e-6));
}

TEST_CASE("along a matched line the heat per metre is 2 alpha times the power, most at its beginning") {
  const Feed feed = solved("line w from desk to far : 30 m, 50 ohm, loss [5 dB/100m at 7 MHz, 12 dB/100m at 21 MHz]\nload ant at far : 50 ohm");
  const ledger::PartBook& book = feed.part("w");
  CHECK(book.heat_w_per_m[0] == Approx(2.0 * 0.05 / 8.685889638 * book.in_w[0]).epsilon(1e-9));
  CHECK(book.heat_at_m[0] == Approx(30.0).epsilon(1e-12));
}

TEST_CASE("a standing wave derates a cable nearly by its SWR") {
  const auto hottest = [](const std::string& ohms) {
    return solved("line w from desk to far : 40 m, 50 ohm, loss 1 dB/100m at 28 MHz\nload ant at far : " + ohms, "28 MHz").part("w");
  };
  const ledger::PartBook flat = hottest("50 ohm"), standing = hottest("150 ohm");
  // By the trade's rule: heat at the worst place for a watt delivered grows by the SWR (at the load's end 3; common practice, no source).
  const double grown = standing.heat_w_per_m[0] / standing.out_w[0] * flat.out_w[0] / flat.heat_w_per_m[0];
  CHECK(grown == Approx(3.0).epsilon(0.1));
}

TEST_CASE("a kilowatt on a mismatched line: largest volts and amps, where they stand, and the heat there, walked metre by metre") {
  // Telegrapher's equations from the load: V = Vl cosh(g d) + Z0 Il sinh(g d), I = Il cosh(g d) + Vl/Z0 sinh(g d) (any textbook).
  const Feed feed("design \"t\"\nsource rig at desk : 1 kW, 50 ohm\nline w from desk to far : 30 m, 50 ohm, velocity 0.66, loss 2 dB/100m at 14 MHz, limit 10 W/m, limit 1 kV\n"
                  "load ant at far : 220-j90 ohm\nsweep at [14 MHz]\n");
  REQUIRE(feed.diagnostics.empty());
  const ledger::PartBook& book = feed.part("w");
  const Complex load{220.0, -90.0}, amps = std::sqrt(book.out_w[0] / load.real()), volts = amps * load;
  const Complex gamma{0.02 / 8.685889638065037, 2.0 * pi * 14e6 / (0.66 * 299792458.0)};
  double most_volts = 0.0, most_amps = 0.0, volts_at = 0.0, amps_at = 0.0;
  for (int step = 0; step <= 60000; ++step) {
    const double d = 30.0 * step / 60000.0;
    const Complex c = std::cosh(gamma * d), s = std::sinh(gamma * d);
    const double v = std::numbers::sqrt2 * std::abs(volts * c + 50.0 * amps * s), i = std::abs(amps * c + volts / 50.0 * s);
    if (v > most_volts) most_volts = v, volts_at = d;
    if (i > most_amps) most_amps = i, amps_at = d;
  }
  CHECK(book.volts_peak_along[0] == Approx(most_volts).epsilon(1e-6));
  CHECK(book.amps_rms_along[0] == Approx(most_amps).epsilon(1e-6));
  CHECK(book.volts_at_m[0] == Approx(volts_at).margin(0.01));
  CHECK(book.amps_at_m[0] == Approx(amps_at).margin(0.01));
  // One loss point: all of it in the conductors, R = 2 alpha Z0.
  CHECK(book.heat_w_per_m[0] == Approx(2.0 * gamma.real() * 50.0 * most_amps * most_amps).epsilon(1e-6));
  const judge::Judgement judged = judge::judge(feed.design, feed.ledger, feed.solution);
  for (const judge::Rating& rating : judged.ratings)
    CHECK(rating.worst == Approx(rating.unit == 'V' ? most_volts : book.heat_w_per_m[0]).epsilon(1e-6));
  CHECK(judged.ratings.size() == 2);
}

TEST_CASE("heat per metre above a cable's rating is told, for averages with the rig's duty") {
  const std::string text = "design \"t\"\nsource rig at desk : 1 kW, 50 ohm, duty ";
  const std::string rest = "\nline w from desk to far : 30 m of RG-58\nload ant at far : 50 ohm\nsweep at [28 MHz]\n";
  const Feed full(text + "100 %" + rest), fifth(text + "20 %" + rest);
  REQUIRE(full.diagnostics.empty());
  CHECK(has(warnings_of(full), "rating-watts-per-metre"));
  CHECK_FALSE(has(warnings_of(fifth), "rating-watts-per-metre"));
  const Feed own("design \"t\"\nsource rig at desk : 100 W, 50 ohm\nline w from desk to far : 30 m of RG-58, limit 1 W/m\nload ant at far : 50 ohm\nsweep at [28 MHz]\n");
  REQUIRE(own.diagnostics.empty());
  CHECK(has(warnings_of(own), "rating-watts-per-metre"));
}

TEST_CASE("a gap of air is warned of from a third of its best figure on") {
  const auto at = [](const std::string& gap) {
    return warnings_of(solved("capacitor C from desk to x : plates(width 4 cm, length 5 cm, gap " + gap + ")\ninductor L at x : 20 uH, Q 300\nload ant at desk : 50 ohm"));
  };
  CHECK_FALSE(has(at("9 mm"), "air-gap"));
}

TEST_CASE("metals and dielectrics of the tables may be named in words") {
  for (const std::string metal : {"copper", "aluminium", "brass", "silver", "steel", "tinned copper", "stainless"})
    CHECK(Feed(rig + "load ant at desk : 50 ohm\ninductor L at desk : coil(turns 12, diameter 50 mm, length 60 mm, wire 2 mm, metal " + metal +
               ")\nsweep at [7 MHz]\n")
              .diagnostics.empty());
  for (const std::string insulation : {"air", "polyethylene", "polyethylene foam", "polyethylene solid", "PTFE", "FR4", "\"FR-4\"", "ceramic", "fibreglass"}) {
    CAPTURE(insulation);
    CHECK(Feed(rig + "line w from desk to far : 5 m, coax(outer 7.2 mm, inner 2.2 mm, dielectric " + insulation + ")\nload ant at far : 50 ohm\nsweep at [7 MHz]\n")
              .diagnostics.empty());
  }
}

TEST_CASE("sizes, tables and factors that cannot be are located errors") {
  const std::pair<std::string, std::string> mistakes[] = {
      {"inductor L at desk : coil(turns 12, diameter -50 mm, length 60 mm, wire 2 mm)", "value-out-of-range"},
      {"inductor L at desk : coil(turns 0, diameter 50 mm, length 60 mm, wire 2 mm)", "value-out-of-range"},
      {"inductor L at desk : core(outer 0 mm, inner 36 mm, height 13 mm, turns 9, permeability 125)", "value-out-of-range"},
      {"inductor L at desk : core(outer 30 mm, inner 36 mm, height 13 mm, turns 9, permeability 125)", "impossible-size"},
      {"inductor L at desk : core(outer 61 mm, inner 36 mm, height 13 mm, turns 9, permeability [7 MHz: 125-j1, 3 MHz: 120-j2])", "falling-table"},
      {"inductor L at desk : core(outer 61 mm, inner 36 mm, height 13 mm, turns 9, permeability 125+j3)", "impossible-size"},
      {"inductor L at desk : core(AL 45 nH, turns 9, wire 1 mm)", "missing-value"},
      {"inductor L at desk : core(AL 45 nH, turns 9, material cheese)", "unknown-material"},
      {"inductor L at desk : core(AL 45 nH, turns 9, saturation 300)", "missing-unit"},
      {"choke K from (desk ground) to (l r) : core(AL 45 nH, turns 9, wire 1 mm)", "unknown-property"},
      {"transformer T from desk to far : turns 2:14, core(AL 45 nH), magnetizing 3 uH", "contradictory-properties"},
      {"transformer T from desk to far : impedance 1:49, core(AL 45 nH)", "missing-value"},
      {"line w from desk to far : 5 m, twowire(spacing 1.9 mm, diameter 2 mm)", "impossible-size"},
      {"line w from desk to far : 5 m, overground(height 0.9 mm, diameter 2 mm)", "impossible-size"},
      {"line w from desk to far : 5 m, coax(outer 2 mm, inner 2.2 mm)", "impossible-size"},
      {"line w from desk to far : 5 m, coax(outer 7.2 mm, inner 2.2 mm, dielectric 0.9)", "value-out-of-range"},
      {"line w from desk to far : 5 m, 50 ohm, loss [3 dB/100m at 10 MHz, 1 dB/100m at 3 MHz]", "falling-table"},
      {"capacitor C at desk : plates(area 4 cm * 5 cm, gap 0 mm)", "value-out-of-range"},
      {"load ant at desk : table [7.2 MHz: 50 ohm, 7 MHz: 40 ohm]", "falling-table"},
      {"capacitor C at desk : 10 pF, limit 3 W/m", "wrong-dimension"}};
  for (const auto& [part, code] : mistakes) {
    CAPTURE(part);
    const Feed feed(rig + part + "\nsweep at [7 MHz]\n");
    REQUIRE_FALSE(feed.diagnostics.empty());
    CHECK(feed.diagnostics.front().code == code);
    CHECK(feed.diagnostics.front().span.line() == 3);
  }
}

TEST_CASE("an autotransformer as two coupled coils is what two mesh equations say, and nearly the square of its turns") {
  // The upper coil from `top` to `tap`, the lower from `tap` to ground, wound on in one direction; 800 ohm at the top.
  const auto seen = [](const std::string& factor, const std::string& l1, const std::string& l2) {
    return solved("inductor upper from top to desk : " + l2 + "\ninductor lower at desk : " + l1 + "\ncoupling K between upper and lower : factor " +
                      factor + "\nload ant at top : 800 ohm")
        .source_impedance();
  };
  const double w = 2.0 * pi * 7e6, k = 0.97, l1 = 4e-6, l2 = 9e-6, m = k * std::sqrt(l1 * l2);
  const Complex jw{0.0, w};
  // I1 down the lower coil, 1 A down the upper one: -800 = jw (L1 I1 + M) + jw (L2 + M I1).
  const Complex i1 = (-800.0 - jw * (m + l2)) / (jw * (l1 + m)), z = jw * (l1 * i1 + m) / (i1 - 1.0);
  CHECK(std::abs(seen("0.97", "4 uH", "9 uH") - z) < 1e-9 * std::abs(z));
  // Tapped at the middle of its turns, coupled as a good core does: 800 ohm at 2:1 are 200 (any textbook).
  CHECK(std::abs(seen("0.9999", "400 uH", "400 uH") - 200.0) < 2.0 + 0.02 * 200.0);
}

TEST_CASE("windings on one lossy core share its loss, as the mesh equations of a complex flux say") {
  // Z_ij = k N_i N_j (jw mu0 (mu' - j mu'') h ln(D/d)/(2 pi)), k between the two; the second mesh closed by the load.
  const double k = 0.98;
  const Complex unit = ring_ohm(1.0, 7e6), z11 = 16.0 * unit, z22 = 144.0 * unit, z12 = k * 48.0 * unit;
  const Feed feed = solved("inductor a at desk : core(" + ring + ", turns 4)\ninductor b at x : core(" + ring +
                           ", turns 12), resistance 2 ohm\nload u at x : 450 ohm\ncoupling K between a and b : factor 0.98");
  const Complex seen = z11 - z12 * z12 / (z22 + 452.0);
  CHECK(std::abs(feed.source_impedance() - seen) < 1e-9 * std::abs(seen));
  // Watts: what each current makes, and what they make together.
  const Complex amps1 = feed.solution.volts[1][0] / seen, amps2 = -amps1 * z12 / (z22 + 452.0);
  const double core = (std::norm(amps1) * z11 + std::norm(amps2) * z22 + 2.0 * (amps1 * std::conj(amps2)).real() * z12).real();
  const ledger::PartBook &a = feed.part("a"), &b = feed.part("b");
  CHECK(a.core_heat_w[0] + b.core_heat_w[0] == Approx(core).epsilon(1e-9));
  CHECK(b.wire_heat_w[0] == Approx(2.0 * std::norm(amps2)).epsilon(1e-9));
  CHECK(a.wire_heat_w[0] == Approx(0.0).margin(1e-12));
  CHECK(feed.load("u").absorbed_w[0] == Approx(450.0 * std::norm(amps2)).epsilon(1e-9));
  CHECK(std::abs(feed.ledger.totals.residual_w[0]) < 1e-10);
  // Booked apart, the two currents would heat the core many times over: they oppose each other.
  CHECK(core < 0.5 * (std::norm(amps1) * z11 + std::norm(amps2) * z22).real());
  CHECK_FALSE(has(warnings_of(feed), "core-not-shared"));
}

TEST_CASE("windings on one core with all of the flux in common, and three of them") {
  const std::string pair = "inductor a at desk : core(" + ring + ", turns 4)\ninductor b at x : core(" + ring +
                           ", turns 12)\nload u at x : 450 ohm\ncoupling K between a and b : factor ";
  // All in common is the transformer by the same core.
  const Complex as_one = solved("transformer T from desk to x : turns 4:12, core(" + ring + ")\nload u at x : 450 ohm").source_impedance();
  CHECK(std::abs(solved(pair + "0.99999999").source_impedance() - as_one) < 1e-6 * std::abs(as_one));
  const Complex two = solved(pair + "0.9").source_impedance();
  const Complex three = solved(pair + "0.9\ninductor c at y : core(" + ring + ", turns 2)\nload v at y : 50 ohm\ncoupling J between b and c : factor 1e-7").source_impedance();
  CHECK(std::abs(three - two) < 1e-9 * std::abs(two));
}

TEST_CASE("coils that share flux but cannot share a core's loss are told, with the line of their coupling") {
  const auto with = [](const std::string& second, const std::string& factor) {
    return warnings_of(solved("inductor a at desk : core(" + ring + ", turns 4)\ninductor b at x : " + second +
                              "\nload u at x : 450 ohm\ncoupling K between a and b : factor " + factor));
  };
  CHECK(has(with("4 uH", "0.5"), "core-not-shared"));
  CHECK(has(with("core(AL 1 uH, turns 5)", "0.5"), "core-not-shared"));
  CHECK(has(with("core(" + ring + ", turns 12)", "0.5, adjustable 0.1 to 0.9"), "core-not-shared"));
  CHECK_FALSE(has(with("core(" + ring + ", turns 12)", "0.5"), "core-not-shared"));
  CHECK_FALSE(has(warnings_of(solved("inductor a at desk : 4 uH\ninductor b at x : 4 uH\nload u at x : 450 ohm\ncoupling K between a and b : factor 0.5")),
                  "core-not-shared"));
}

TEST_CASE("three coils on one flux are what three mesh equations say") {
  const Feed feed = solved("inductor a at desk : 4 uH, resistance 1 ohm\ninductor b at x : 9 uH, resistance 2 ohm\ninductor c at y : 2 uH, resistance 3 ohm\n"
                           "load u at x : 500 ohm\nload v at y : 60 ohm\ncoupling ab between a and b : factor 0.8\ncoupling bc between b and c : factor -0.5\n"
                           "coupling ca between c and a : factor -0.3");
  const double w = 2.0 * pi * 7e6, l[3] = {4e-6, 9e-6, 2e-6}, r[3] = {1.0, 2.0 + 500.0, 3.0 + 60.0};
  const double k[3][3] = {{1.0, 0.8, -0.3}, {0.8, 1.0, -0.5}, {-0.3, -0.5, 1.0}};
  Complex z[3][3];
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) z[i][j] = Complex{i == j ? r[i] : 0.0, w * k[i][j] * std::sqrt(l[i] * l[j])};
  // The loads close the second and third mesh: eliminated one after the other.
  for (int m = 2; m > 0; --m)
    for (int i = 0; i < m; ++i)
      for (int j = 0; j < m; ++j) z[i][j] -= z[i][m] * z[m][j] / z[m][m];
  CHECK(std::abs(feed.source_impedance() - z[0][0]) < 1e-9 * std::abs(z[0][0]));
  CHECK(std::abs(feed.ledger.totals.residual_w[0]) < 1e-10);
  const double amps = feed.part("b").amps_rms[0];
  CHECK(feed.part("b").heat_w[0] == Approx(2.0 * amps * amps).epsilon(1e-9));
  CHECK(feed.load("u").absorbed_w[0] == Approx(500.0 * amps * amps).epsilon(1e-9));
}

TEST_CASE("coils in a set keep their capacitance, and a chain of couplings is enough") {
  const std::string coils = "inductor a at desk : 4 uH, Q 100, capacitance 20 pF\ninductor b at x : 9 uH\nload u at x : 500 ohm\ncoupling ab between a and b : factor 0.8";
  // A third coil with next to no coupling changes nothing.
  const Complex pair = solved(coils).source_impedance();
  const Complex three = solved(coils + "\ninductor c at y : 2 uH\nload v at y : 60 ohm\ncoupling bc between b and c : factor 1e-7").source_impedance();
  CHECK(std::abs(three - pair) < 1e-9 * std::abs(pair));
}

TEST_CASE("factors that cannot stand together are refused where the last is written") {
  const auto told = [](const std::string& bc, const std::string& more = "") {
    return Feed(rig + "load ant at desk : 50 ohm\ninductor a at desk : 1 uH\ninductor b at x : 1 uH" + more + "\ninductor c at y : 1 uH\nload u at x : 5 ohm\nload v at y : 5 ohm\n"
                "coupling ab between a and b : factor 0.9\ncoupling ca between c and a : factor 0.9\ncoupling bc between b and c : factor " + bc + "\nsweep at [7 MHz]\n");
  };
  CHECK(told("0.7").diagnostics.empty());  // 1 - 0.81 - 0.81 - 0.49 + 2 * 0.9 * 0.9 * 0.7 > 0
  const Feed wrong = told("-0.5");
  REQUIRE(test::codes(wrong.diagnostics) == std::vector<std::string>{"impossible-couplings"});
  CHECK(wrong.diagnostics.front().span.line() == 11);
  CHECK(test::codes(told("0.7", ", adjustable 0.5 uH to 2 uH").diagnostics) == std::vector<std::string>{"coupled-set"});
}

TEST_CASE("a quarter-wave vertical is half a dipole, and its ground takes its share") {
  // 36.5 + j21 ohm over perfect ground (textbooks' half of 73 + j42.5; from memory), at exactly a quarter wave.
  const Feed feed = solved("load ant at desk : monopole(height 10 m, diameter 1 mm, ground 12 ohm)", "7.49481145 MHz");
  const Complex z = feed.source_impedance();
  CHECK(z.real() - 12.0 == Approx(36.5).margin(0.2));
  CHECK(z.imag() == Approx(21.2).margin(0.5));
  const ledger::LoadBook& book = feed.load("ant");
  CHECK(book.heat_w[0] == Approx(book.absorbed_w[0] * 12.0 / z.real()).epsilon(1e-9));
}
