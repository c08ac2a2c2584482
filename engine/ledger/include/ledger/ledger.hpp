// The books: where each watt goes. Every array runs over the states solved (for a run: the frequencies). Powers are averages [W];
// `_peak` and `_rms` say which; impedances are [ohm], losses [dB]. A number that does not exist is NaN, and is written as null.
#pragma once

#include <complex>
#include <vector>

#include "design/design.hpp"

namespace wattfall::ledger {

using Series = std::vector<double>;
using ComplexSeries = std::vector<std::complex<double>>;

/// Whether a figure is above the largest so far by more than rounding: of parts that have the same (volts at one node), the first in the text is named,
/// on every machine.
inline bool exceeds(double value, double largest) {
  return value > largest * (1.0 + 1e-9);
}

struct SourceBook {
  Series available_w, accepted_w, returned_w, swr;
  ComplexSeries load_impedance_ohm, reflection;
  std::complex<double> reference_ohm;
};

/// A part that is no load. Volts and amps are those across and through it; for two-ports those of the larger end.
struct PartBook {
  design::PartId part;
  Series heat_w, volts_peak, amps_rms;
  Series in_w, out_w, loss_db;  ///< two-ports; else empty
  Series volts_peak_along, amps_rms_along, matched_loss_db, swr_load_end;  ///< lines; else empty
  Series volts_at_m, amps_at_m;  ///< lines: where the largest stand, metres from the load's (out) end
  Series heat_w_per_m, heat_at_m;  ///< lines: at their worst place, and where that is
  Series matched_heat_per_m;       ///< lines: heat per metre for each watt that enters, without reflection: 2 alpha [1/m]
  Series core_heat_w, wire_heat_w, flux_peak_t;  ///< windings on cores; the flux density where a ring's sizes are known, at its inner edge
  /// Pairs that a common current may run on (chokes, baluns, lines with a common impedance): |Ia + Ib|, as a clamp round both
  /// conductors reads it; |Ia + Ib|/|Ia - Ib|, common practice, no source; and the power that goes out by the common mode.
  Series common_amps_rms, imbalance, common_w;
};

struct LoadBook {
  design::PartId part;
  ComplexSeries impedance_ohm;
  Series absorbed_w, radiated_w, heat_w, volts_peak, amps_rms;
};

/// A box as seen from outside: power into its first port, out of its last, heat of all in it.
struct BoxBook {
  design::BoxId box;
  Series in_w, out_w, loss_db, heat_w;
};

struct Totals {
  Series available_w, returned_w, heat_w, absorbed_w, radiated_w, total_loss_db, efficiency;
  Series common_mode_heat_w;  ///< of heat_w: in chokes and baluns, which common-mode current alone heats
  Series residual_w;  ///< available - returned - heat - absorbed: rounding, at most 1e-12 of available
};

/// Both ways from a place.
struct LookBook {
  design::Look look;
  ComplexSeries toward_load_ohm, toward_source_ohm;
  Series mismatch_db;
};

struct Ledger {
  Series frequencies_hz;
  SourceBook source;
  std::vector<PartBook> parts;
  std::vector<LoadBook> loads;
  std::vector<BoxBook> boxes;
  Totals totals;
  std::vector<LookBook> looks;  ///< in the order asked for
};

}  // namespace wattfall::ledger
