// The numbers of a file as records: one for each frequency, with as many pairs as its matrix has elements. In come the
// data lines, out come flat numbers; what they mean (S or Z, magnitude or real part) is of no matter here. Private.
#pragma once

#include <cstddef>
#include <vector>

#include "words.hpp"

namespace wattfall::measured {

/// What a record looks like.
struct RecordLayout {
  int ports = 0;
  std::size_t pairs = 0;       ///< of one record
  bool noise_follows = false;  ///< version 1 two-ports: lines of 5 values after a falling frequency are noise data
};

struct Records {
  std::vector<double> frequencies;  ///< as written
  std::vector<Span> places;         ///< of the frequencies
  std::vector<int> lines;
  std::vector<double> values;  ///< 2 * pairs for each frequency
  std::vector<double> noise;   ///< 5 for each noise frequency
  Span first_noise;
};

/// Reads all data lines. A record begins on a line of its own with an odd number of values, and goes on over lines with
/// an even number; after a mistake reading goes on at the next line that looks like a beginning.
Records read_records(const RecordLayout& layout, const std::vector<Line>& data, const std::vector<Line>& noise,
                     Mistakes& mistakes);

/// The first record by the rule above.
struct FirstRecord {
  std::size_t values = 0;
  bool alike = true;  ///< the next one begins with as many values, or there is none
};
FirstRecord first_record(const std::vector<Line>& data);

/// N with 1 + 2 N^2 values, or 0.
int ports_of_values(std::size_t values);

}  // namespace wattfall::measured
