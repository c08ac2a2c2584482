// Wires, tubes, shells and strips: limits that are known in closed form, and laws that hold at every frequency.
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "physics/constants.hpp"
#include "physics/skin.hpp"
#include "physics/straight_wire.hpp"

namespace wattfall::physics {
namespace {

constexpr Conductor copper{5.8e7, 1.0};
constexpr Conductor steel{6e6, 100.0};

/// Resistance and internal inductance as a tube, shell or strip gives them.
using Shape = InternalImpedance (*)(double frequency_hz);
InternalImpedance wire(double hz) {
  return round_wire(copper, 2e-3, hz);
}
InternalImpedance steel_wire(double hz) {
  return round_wire(steel, 2e-3, hz);
}
InternalImpedance tube(double hz) {
  return round_tube(copper, 10e-3, 1e-3, hz);
}
InternalImpedance shell(double hz) {
  return round_shell(copper, 10e-3, 0.2e-3, hz);
}
InternalImpedance strip(double hz) {
  return flat_strip(copper, 10e-3, 0.5e-3, Faces::both, hz);
}

}  // namespace

TEST_CASE("resistance rises and internal inductance falls with frequency, in every shape") {
  for (const Shape shape : {wire, steel_wire, tube, shell, strip}) {
    InternalImpedance before = shape(0.0);
    CHECK(before.validity.inside());
    for (double hz = 0.1; hz < 3e9; hz *= 1.3) {
      const InternalImpedance now = shape(hz);
      INFO("at " << hz << " Hz");
      CHECK(now.resistance_ohm_per_m >= before.resistance_ohm_per_m * (1.0 - 1e-12));
      CHECK(now.inductance_h_per_m <= before.inductance_h_per_m * (1.0 + 1e-6));
      CHECK(now.inductance_h_per_m > 0.0);
      before = now;
    }
  }
}

TEST_CASE("at high frequencies every shape is its surface resistance") {
  const double hz = 3e9, rs = surface_resistance_ohm(copper, hz);
  CHECK(wire(hz).resistance_ohm_per_m == Approx(rs / (pi * 2e-3)).epsilon(1e-3));
  CHECK(tube(hz).resistance_ohm_per_m == Approx(rs / (pi * 10e-3)).epsilon(3e-4));
  CHECK(shell(hz).resistance_ohm_per_m == Approx(rs / (pi * 10e-3)).epsilon(3e-4));
  CHECK(strip(hz).resistance_ohm_per_m == Approx(rs / 20e-3).epsilon(1e-9));
  CHECK(tube(hz).impedance_ohm_per_m(hz).imag() == Approx(rs / (pi * 10e-3)).epsilon(3e-4));
}

TEST_CASE("a tube whose wall closes is a wire") {
  for (const double hz : {0.0, 50.0, 1e4, 1e6, 1e9}) {
    const InternalImpedance solid = round_wire(copper, 4e-3, hz);
    const InternalImpedance closed = round_tube(copper, 4e-3, 2e-3, hz);
    const InternalImpedance nearly = round_tube(copper, 4e-3, 1.9998e-3, hz);
    CHECK(closed.resistance_ohm_per_m == Approx(solid.resistance_ohm_per_m).epsilon(1e-12));
    CHECK(nearly.resistance_ohm_per_m == Approx(solid.resistance_ohm_per_m).epsilon(1e-7));
    CHECK(nearly.inductance_h_per_m == Approx(solid.inductance_h_per_m).epsilon(1e-6));
  }
}

TEST_CASE("a thin tube and a thin shell are the strip they unroll to") {
  for (const double hz : {1.0, 1e3, 1e5, 1e7}) {
    const InternalImpedance flat = flat_strip(copper, pi * 0.1, 0.1e-3, Faces::one, hz);
    CHECK(round_tube(copper, 0.1, 0.1e-3, hz).resistance_ohm_per_m == Approx(flat.resistance_ohm_per_m).epsilon(2e-3));
    CHECK(round_shell(copper, 0.1, 0.1e-3, hz).inductance_h_per_m == Approx(flat.inductance_h_per_m).epsilon(3e-3));
  }
}

TEST_CASE("direct current fills the section") {
  CHECK(wire(0.0).resistance_ohm_per_m == Approx(1.0 / (5.8e7 * pi * 1e-6)).epsilon(1e-14));
  CHECK(wire(0.0).inductance_h_per_m == Approx(50e-9).epsilon(1e-14));  // mu0/(8 pi)
  CHECK(tube(0.0).resistance_ohm_per_m == Approx(1.0 / (5.8e7 * pi * 9e-6)).epsilon(1e-13));
  CHECK(steel_wire(0.0).inductance_h_per_m == Approx(5e-6).epsilon(1e-14));
}

TEST_CASE("the low-frequency forms of rings join the exact ones") {
  for (const auto shape : {round_tube, round_shell}) {
    const double hz = 2.0 / (2.0 * pi * mu0_h_per_m * 5.8e7) / (1.0 * 1.0);  // delta = 1 m: the wall is a thousandth
    const InternalImpedance below = shape(copper, 10e-3, 1e-3, hz * 0.99),
                            above = shape(copper, 10e-3, 1e-3, hz * 1.01);
    CHECK(above.resistance_ohm_per_m == Approx(below.resistance_ohm_per_m).epsilon(1e-11));
    CHECK(above.inductance_h_per_m == Approx(below.inductance_h_per_m).epsilon(1e-5));
  }
}

TEST_CASE("the thin-skin estimate is a quarter of R0 short") {
  const double hz = 1e9;
  const double missing = wire(hz).resistance_ohm_per_m - round_wire_thin_skin(copper, 2e-3, hz).resistance_ohm_per_m;
  CHECK(missing == Approx(wire(0.0).resistance_ohm_per_m / 4.0).epsilon(0.01));
}

TEST_CASE("a transverse field's heat grows as the fourth power, then as the root of frequency") {
  CHECK(transverse_field_ratio(1e-2) == Approx(1e-8 / 32.0).epsilon(1e-4));
  CHECK(transverse_field_ratio(1e4) == Approx(1e4 / (2.0 * std::sqrt(2.0))).epsilon(1e-3));
}

TEST_CASE("impossible sizes are told with their figure") {
  CHECK_FALSE(round_wire(copper, -1e-3, 1e6).validity.possible());
  CHECK(round_wire(copper, -1e-3, 1e6).validity.sentence == "wire diameter is -0.001, and must be above zero");
  CHECK(std::isnan(round_wire(copper, 0.0, 1e6).resistance_ohm_per_m));
  CHECK_FALSE(round_tube(copper, 10e-3, 6e-3, 1e6).validity.possible());
  CHECK_FALSE(round_wire({0.0, 1.0}, 1e-3, 1e6).validity.possible());
  CHECK_FALSE(round_wire({5.8e7, 0.5}, 1e-3, 1e6).validity.possible());
  CHECK_FALSE(round_wire(copper, 1e-3, -1.0).validity.possible());
  CHECK_FALSE(round_wire(copper, std::numeric_limits<double>::quiet_NaN(), 1e6).validity.possible());
  CHECK(flat_strip(copper, 1e-3, 1e-3, Faces::both, 1e6).validity.verdict == Verdict::outside);
  CHECK(round_wire_thin_skin(copper, 1e-3, 100.0).validity.verdict == Verdict::outside);
}

TEST_CASE("leads and loops say when they are too stout") {
  CHECK(check_straight_wire(0.1, 1e-3).inside());
  CHECK(check_straight_wire(5e-3, 1e-3).verdict == Verdict::outside);
  CHECK_FALSE(check_round_loop(1e-3, 2e-3).possible());
  CHECK(straight_wire_inductance_h(0.1, 1e-3, Current::uniform) -
            straight_wire_inductance_h(0.1, 1e-3, Current::surface) ==
        Approx(0.1 * round_wire(copper, 1e-3, 0.0).inductance_h_per_m).epsilon(1e-12));
}

TEST_CASE("materials are found by any spelling") {
  REQUIRE(find_metal("Tinned-Copper"));
  CHECK(find_metal("Tinned-Copper")->name == "tinned copper");
  CHECK(find_metal("aluminum") == find_metal("aluminium"));
  CHECK(find_dielectric("PTFE")->relative_permittivity == Approx(2.1));
  CHECK(find_dielectric("fr4") == find_dielectric("FR-4"));
  CHECK(find_dielectric("polyethylene foam")->name == "foam polyethylene");
  CHECK(find_metal("unobtainium") == nullptr);
  for (const Metal& metal : metals()) {
    CHECK(check_conductor(conductor_of(metal)).inside());
    CHECK_FALSE(metal.source.empty());
  }
  for (const Dielectric& dielectric : dielectrics()) CHECK(dielectric.relative_permittivity >= 1.0);
}

}  // namespace wattfall::physics
