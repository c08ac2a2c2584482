// Inductance of straight round wires and of single round loops: leads, connections, loop antennas.
//
// Source: E. B. Rosa, "The self and mutual inductances of linear conductors", Bull. Bureau of Standards 4, 1908
// (straight wire, complete form); E. B. Rosa and F. W. Grover, "Formulas and tables for the calculation of mutual and
// self-inductance", Bull. Bureau of Standards 8, 1912 (circular ring). From memory. Good where length >= 10 d, loop
// diameter >= 10 d. The return path of a straight wire is far away.
#pragma once

#include "physics/validity.hpp"

namespace wattfall::physics {

/// Where the current flows: uniform at low frequencies, on the surface at high ones. In between, add the internal
/// inductance of skin.hpp to the surface figure.
enum class Current { surface, uniform };

/// l mu0/(2 pi) (asinh(2l/d) - sqrt(1 + (d/2l)^2) + d/(2l) [+ 1/4]) [H]
double straight_wire_inductance_h(double length_m, double diameter_m, Current current);
/// l mu0/(2 pi) (ln(4l/d) - 1) [H], the usual short form, surface current.
double straight_wire_inductance_short_form_h(double length_m, double diameter_m);
/// mu0 a (ln(8a/r) - 2 [+ 1/4]) [H], a the loop's radius, r the wire's.
double round_loop_inductance_h(double loop_diameter_m, double wire_diameter_m, Current current);

/// Sizes positive, and long against the wire's thickness.
Validity check_straight_wire(double length_m, double diameter_m);
Validity check_round_loop(double loop_diameter_m, double wire_diameter_m);

}  // namespace wattfall::physics
