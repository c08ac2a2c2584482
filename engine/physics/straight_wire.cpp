// Rosa's closed forms.
#include "physics/straight_wire.hpp"

#include <cmath>

#include "physics/constants.hpp"

namespace wattfall::physics {

double straight_wire_inductance_h(double length_m, double diameter_m, Current current) {
  const double slimness = 2.0 * length_m / diameter_m;
  const double surface = std::asinh(slimness) - std::hypot(1.0, 1.0 / slimness) + 1.0 / slimness;
  return mu0_h_per_m * length_m / (2.0 * pi) * (surface + (current == Current::uniform ? 0.25 : 0.0));
}

double straight_wire_inductance_short_form_h(double length_m, double diameter_m) {
  return mu0_h_per_m * length_m / (2.0 * pi) * (std::log(4.0 * length_m / diameter_m) - 1.0);
}

double round_loop_inductance_h(double loop_diameter_m, double wire_diameter_m, Current current) {
  const double inside = current == Current::uniform ? 0.25 : 0.0;
  return mu0_h_per_m * loop_diameter_m / 2.0 * (std::log(8.0 * loop_diameter_m / wire_diameter_m) - 2.0 + inside);
}

Validity check_straight_wire(double length_m, double diameter_m) {
  Validity validity;
  validity.expect_positive("wire length", length_m).expect_positive("wire diameter", diameter_m);
  if (!validity.possible()) return validity;
  return validity.expect(length_m >= 10.0 * diameter_m, Verdict::outside,
                         "the wire is only {} times as long as thick (10 or more is in range)", length_m / diameter_m);
}

Validity check_round_loop(double loop_diameter_m, double wire_diameter_m) {
  Validity validity;
  validity.expect_positive("loop diameter", loop_diameter_m).expect_positive("wire diameter", wire_diameter_m);
  if (!validity.possible()) return validity;
  validity.expect(loop_diameter_m > wire_diameter_m, Verdict::impossible, "the wire is {} of the loop's diameter",
                  wire_diameter_m / loop_diameter_m);
  if (!validity.possible()) return validity;
  return validity.expect(loop_diameter_m >= 10.0 * wire_diameter_m, Verdict::outside,
                         "the loop is only {} wire diameters wide (10 or more is in range)",
                         loop_diameter_m / wire_diameter_m);
}

}  // namespace wattfall::physics
