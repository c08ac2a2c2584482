// Windings on closed magnetic cores: inductance and core loss from AL or from dimensions and a complex permeability,
// flux density from the volts, heat of core and wire apart.
//
// Equations (N turns, h, ro, ri the rectangular section, mu = mu' - j mu'' against frequency):
//   AL = mu0 mu' h ln(ro/ri)/(2 pi) [H/turn^2],  Z = j w N^2 AL (mu' - j mu'')/mu'  (series form)
//   mean flux density  B = V_peak/(w N h (ro - ri)),  largest at the inner edge: B (ro - ri)/(ri ln(ro/ri))
//   parallel form  Rp = |Z|^2/Re Z, Xp = |Z|^2/Im Z
//   heat  core I^2 Re Z, wire I^2 R with skin effect alone (I rms)
// Sources: the definition of inductance for a ring of rectangular section (E. C. Snelling, Soft Ferrites, 1969; from
// memory); Faraday's law. Small signals: mu'' grows with flux density, which is left out, and a mixed figure of mu' and
// mu'' holds within the table's frequencies; beyond them the ends are kept and the verdict says so. Leakage flux, the
// winding's capacitance and proximity effect are left out: the impedance is right up to about a third of the choke's
// self-resonance.
#pragma once

#include <complex>
#include <vector>

#include "physics/skin.hpp"
#include "physics/validity.hpp"

namespace wattfall::physics {

/// mu' and mu'' at rising frequencies; both positive numbers: mu = real - j imaginary.
struct Permeability {
  struct Point {
    double frequency_hz, real, imaginary;
  };
  std::vector<Point> points;  ///< one point: the same at every frequency

  Validity check() const;
  struct At {
    double real, imaginary;
    Validity validity;
  };
  /// Linear over the logarithm of frequency; the ends kept outside.
  At at(double frequency_hz) const;
};

/// A ring of rectangular section.
struct Ring {
  double outer_diameter_m = 0.0;
  double inner_diameter_m = 0.0;
  double height_m = 0.0;
};
Validity check_ring(const Ring& ring);
/// mu0 h ln(OD/ID)/(2 pi) [H/turn^2], with relative permeability 1.
double air_inductance_index_h(const Ring& ring);
double ring_section_m2(const Ring& ring);

double inductance_from_index_h(double index_h, double turns);
double turns_for_inductance(double index_h, double inductance_h);

struct CoreImpedance {
  std::complex<double> series_ohm;
  double inductance_h = 0.0;  ///< of the series form
  double parallel_ohm = 0.0;  ///< infinite without loss
  double parallel_reactance_ohm = 0.0;
  double quality = 0.0;  ///< mu'/mu''
  Validity validity;
};
/// From dimensions; `ring` and `permeability` must pass their checks.
CoreImpedance core_impedance(const Ring& ring, const Permeability& permeability, double turns, double frequency_hz);
/// From AL, which holds for `initial_permeability`. An empty table: no core loss, AL at every frequency.
CoreImpedance core_impedance(double index_h, double initial_permeability, const Permeability& permeability,
                             double turns, double frequency_hz);

struct FluxDensity {
  double mean_t, inner_edge_t;
};
/// Peak flux density from the peak volts across N turns.
FluxDensity peak_flux_density(const Ring& ring, double turns, double volts_peak, double frequency_hz);
/// Mean alone, from the effective area of a data sheet [T].
double peak_flux_density_t(double section_m2, double turns, double volts_peak, double frequency_hz);
/// Outside where the inner edge passes `limit_t`, the sheet's saturation (ferrites 0.25 T to 0.35 T, powdered iron 0.5
/// T).
Validity check_flux(double flux_t, double limit_t);

/// The wire of N turns laid close round the section: N (2 h + OD - ID + 4 d) [m].
double winding_length_m(const Ring& ring, double turns, double wire_diameter_m);

struct CoreHeat {
  double core_w, wire_w;
};
CoreHeat core_heat(const CoreImpedance& core, double wire_ohm, double amps_rms);

}  // namespace wattfall::physics
