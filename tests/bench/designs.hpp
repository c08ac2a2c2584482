// The designs of the benchmarks, as texts: A a T network, coax, transformer and load; B a ladder of 41 unknowns; C one
// of 2,001; D an L network whose relays make 131,072 states. Ladders and grids of any size for the scaling curve.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "design/design.hpp"

namespace wattfall::bench {

/// 5 unknowns: T network, 30 m of coax, transformer with winding, leakage and core, load.
std::string t_network();

/// A chain of lossy lines and coils in turn, every line of a length of its own (so none shares its functions), a
/// capacitor across every node.
std::string ladder(std::size_t unknowns);

/// The same past the grammar, for sizes that no text may have. `small` is ladder(4) resolved, whose parts serve as
/// patterns.
design::Design ladder(const design::Design& small, std::size_t unknowns);

/// side x side nodes, lossy lines along rows and coils along columns, a capacitor across every node; source and load at
/// opposite corners.
design::Design grid(const design::Design& small, std::size_t side);

/// L network with knobs cin, l, cout: a coil bank in series, a capacitor bank at either side.
std::string relay_network();

/// Every state of the relays, as cin, l, cout [F, H, F]: 8 coils and 8 capacitors in powers of two, the capacitors at
/// one side or the other. Relay wiring leaves 50 nH in series when no coil is in.
std::vector<double> relay_states();

/// `count` frequencies from 1.8 to 30 MHz, evenly spaced.
std::vector<double> frequencies(std::size_t count);

}  // namespace wattfall::bench
