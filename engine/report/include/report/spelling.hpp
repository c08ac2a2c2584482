// Numbers and names inside the document's sentences, in the trade's spelling.
#pragma once

#include <string>

#include "design/design.hpp"

namespace wattfall::report {

std::string spell_power(double watts);       ///< "71.3 W"
std::string spell_volts(double volts_peak);  ///< "1.31 kV"
std::string spell_frequency(double hz);      ///< "7.125 MHz"
std::string spell_level(double db);          ///< "1.47 dB"
std::string spell_ratio(double ratio);       ///< "1.34"; "infinite" where it does not exist
std::string spell_share(double share);       ///< "71.3 %"

/// What a figure is counted in, as the document says it: "", "dB", "W", "V", "A", "Hz", "ohm", "share".
std::string unit_of(design::FigureKind kind);

/// A stable name: "swr_at", "peak_volts_across".
std::string name_of(design::FigureKind kind);

/// A figure with its unit; "no value" where it does not exist.
std::string spell_figure(double value, const std::string& unit);

/// What tells a variant from others: its name, else the design's title, else the file.
std::string label(const design::Design& design);

/// The label in quotes.
std::string quoted(const design::Design& design);

/// "1 requirement", "3 requirements".
std::string counted(std::size_t count, const std::string& thing);

}  // namespace wattfall::report
