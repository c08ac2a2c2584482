// What a document's searches say, in the words and columns that text and Markdown share.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reading.hpp"
#include "trade.hpp"

namespace reports {

/// The searches that reports show: all of a statement's; of a dial table's the middle one, which speaks for all.
std::vector<const Json*> told_searches(const Json& variant);

/// "at 7.1 MHz", "from 7 MHz to 7.2 MHz".
std::string place_of(const Json& search);

/// The names of a search's knobs without the box that all of them stand in, whole.
std::vector<std::string> names_of(const Json& search);

/// A knob's value in words: a choice's node, or "112 pF".
std::string value_of(const Json& knob, double value);

/// How wide a stretch of frequency [kHz]; where an end is not known, as much at least: "31.2+".
std::string width_of(const Json& width);

/// The SWR that widths and ranges are told for, each once.
std::vector<double> bounds_of(const Json& leeways);

/// "112 to 125 pF"; the end of a range stands with a `+`: the knob may go there, and no farther.
std::string range_of(const Json& leeway, const std::string& unit);

/// All that is said of a search beside its tables: what more room would bring, limits, why the first won, how sure it
/// is.
std::vector<std::string> sayings_of(const Json& search);

/// Which of a ridge's settings loses least; where all lose the same, which has the least volts; none where these are
/// all the same, too.
struct Preferred {
  std::size_t row;
  const char* why;  ///< "loses least"
};
std::optional<Preferred> preferred_of(const Json& ridge);
std::string ridge_heading(const Json& search);

/// What the values in a `made` consist of, a row each: the knob, the value, its parts ("100 pF and 15 pF in parallel").
std::vector<std::vector<std::string>> made_rows(const std::string& knob, const Json& made, const std::string& unit);

/// What to buy for a tuner, a part a row, under `heads`; the first two columns are words. The frequencies at which
/// ranges and strains are needed stand there where the variant has several.
struct Shopping {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
  std::string margins;  ///< a sentence
};
Shopping shopping_of(const Json& variant, const Json& tuner);

}  // namespace reports
