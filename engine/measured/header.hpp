// What stands before the numbers of a file: the option line, and in version 2 the keywords. Private to the room.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "measured/touchstone.hpp"
#include "words.hpp"

namespace wattfall::measured {

/// The option line `# unit parameter format R n`; the standard's defaults.
struct Options {
  double unit_hz = 1e9;
  std::optional<Immittance> immittance;  ///< none: S
  NumberFormat format = NumberFormat::magnitude_angle;
  double reference_ohm = 50;
};

/// Which elements of the matrix a version 2 file has.
enum class Shape { full, lower, upper };

/// A count that a keyword gives, with its place.
struct Count {
  std::size_t value = 0;
  Span span;
};

/// All that is needed to read the numbers, and the lines that have them.
struct Header {
  int version = 1;
  Options options;
  int ports = 0;                      ///< 0: not known yet
  std::vector<double> reference_ohm;  ///< of [Reference]; empty without it
  bool row_order = false;             ///< two-ports: 11 12 21 22, not 11 21 12 22
  Shape shape = Shape::full;
  std::optional<Count> frequencies;
  std::optional<Count> noise_frequencies;
  std::vector<Line> data;
  std::vector<Line> noise;
  std::vector<Remark> remarks;
};

/// Reads a line that begins with `#`. Words may stand in any order and any case.
Options read_options(const Line& line, Mistakes& mistakes);

/// Sorts the lines of a version 1 file into one option line and data.
Header read_version_1(const std::vector<Line>& lines, int ports_hint, Mistakes& mistakes);

/// Sorts the lines of a file with keywords.
Header read_version_2(const std::vector<Line>& lines, int ports_hint, Mistakes& mistakes);

/// A reference resistance: a finite number above zero.
std::optional<double> read_reference(const Word& word, Mistakes& mistakes);

}  // namespace wattfall::measured
