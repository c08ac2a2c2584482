// Plain tables for `wattfall list`, and the tables of materials among them. Private to the program.
#pragma once

#include <string>
#include <vector>

namespace wattfall::app {

using Row = std::vector<std::string>;

/// Columns as wide as their widest cell, two blanks between, the last one left as it is.
std::string table(const std::vector<Row>& rows);

// What parts by their size may be made of, each figure with its source.
std::string metals();
std::string dielectrics();
std::string cores();
/// Typical Q by sort, and the volts at which gaps of air arc.
std::string capacitors();

}  // namespace wattfall::app
