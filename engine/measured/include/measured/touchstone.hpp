// Touchstone files, the open standard for measured networks (versions 1.0, 1.1, 2.0 and 2.1): text in, a Network out,
// and back. Y, Z, G and H data are turned into S on the way in, so whoever uses a Network meets one kind only.
#pragma once

#include <string>
#include <string_view>

#include "grammar/diagnostic.hpp"
#include "measured/convert.hpp"
#include "measured/network.hpp"

namespace wattfall::measured {

/// N of an extension `.sNp` (any case, 1 to 999), 0 for any other name, such as `.ts`.
int ports_from_extension(std::string_view path);

/// Reads a whole file. `ports_hint` is the extension's number of ports, 0 if unknown: a version 1 file is then counted.
/// Without a value the diagnostics (codes `touchstone-...`, Fault::file, at most 10 and one that says so) tell all that
/// was found wrong, located in `text`; with a value there are none, and `remarks` has what was passed over. Never
/// throws on what a text says, whatever its bytes. Cost O(bytes), and O(N^3) a frequency for data that is not S.
///
/// More liberal than the standard: any number of pairs on a line, frequencies that share no fixed column, a missing
/// [End]. Stricter: frequencies must rise, values must be finite, words that mean nothing are refused.
Result<Network> read_touchstone(const SourcePtr& text, int ports_hint);

enum class NumberFormat { real_imaginary, magnitude_angle, decibel_angle };
enum class FrequencyUnit { hz, khz, mhz, ghz };

/// The network as a file: version 1 where all ports have one reference, otherwise version 2.0. Numbers are the shortest
/// that read back as the same double, so real_imaginary with hz is exact; the other choices can differ in the last
/// digit. A zero in decibels is written -6500, which underflows to 0. The network's values must be finite. Noise is not
/// written.
std::string write_touchstone(const Network& network, NumberFormat format, FrequencyUnit unit);

}  // namespace wattfall::measured
