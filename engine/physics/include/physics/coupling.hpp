// Mutual inductance of coaxial circles and coils, and whether a set of coupling factors can exist.
//
// Equations (a, b the radii, z apart, r1, r2 the largest and least distance of their points):
//   circles   M = 2 mu0 sqrt(a b) k1^(3/2) (K(k1) - E(k1))/k1^2,  k1 = (r1 - r2)/(r1 + r2)
//   coils     n1 n2 times the mean of M over both lengths (current sheets, Gauss-Legendre)
//   factors   a passive set of coils has a positive definite matrix of factors, ones on its diagonal (Cholesky)
// Sources: J. C. Maxwell, A Treatise on Electricity and Magnetism, 1873, article 701, in the form after Landen's
// transformation, as in E. B. Rosa and F. W. Grover, Bull. Bureau of Standards 8, 1912 (from memory). Circles are
// filaments; coils must not overlap with equal radii. Accuracy of circles 1e-14, of coils 1e-6 where the sheets are
// farther apart than a tenth of their length.
#pragma once

#include <span>

#include "physics/validity.hpp"

namespace wattfall::physics {

/// [H]; distance 0 with equal radii is infinite.
double coaxial_circles_mutual_h(double radius1_m, double radius2_m, double distance_m);

struct CoilShape {
  double turns = 0.0;
  double diameter_m = 0.0;
  double length_m = 0.0;
};
struct Mutual {
  double mutual_h = 0.0;
  double factor = 0.0;  ///< M/sqrt(L1 L2), current sheets
  Validity validity;
};
/// On one axis, `distance_m` between their middles.
Mutual coaxial_coils(const CoilShape& coil1, const CoilShape& coil2, double distance_m);

double mutual_from_factor_h(double factor, double inductance1_h, double inductance2_h);
double coupling_factor(double mutual_h, double inductance1_h, double inductance2_h);
/// From two measurements: L1 + L2 +- 2 M in series aiding and opposing.
double mutual_from_series_aiding_h(double series_h, double inductance1_h, double inductance2_h);
/// L1 (1 - k^2) [H]: what is seen with the other coil shorted.
double leakage_inductance_h(double factor, double inductance_h);

struct CouplingCheck {
  double smallest_pivot = 1.0;  ///< share of a coil's flux that the coils before it leave free, 1 - k^2 for a pair
  int coil = -1;                ///< whose pivot that is
  Validity validity;
};
/// `factors` is symmetric, row-major, coils x coils, ones on the diagonal. A pivot of 0 (perfect coupling) passes.
CouplingCheck check_couplings(int coils, std::span<const double> factors);

}  // namespace wattfall::physics
