// Books of windings on cores (heat of core and wire apart, flux density) and of pairs (what both conductors carry together).
// Private to the room.
#pragma once

#include "ledger/ledger.hpp"
#include "reading.hpp"

namespace wattfall::ledger {

/// Fills core_heat_w, wire_heat_w and flux_peak_t of a part with a core; others stay empty. `book.heat_w` stands already.
void book_core(const Reading& reading, PartBook& book);

/// Fills common_amps_rms, imbalance and common_w of a choke, or of a line with a common impedance.
void book_pair(const Reading& reading, PartBook& book);

}  // namespace wattfall::ledger
