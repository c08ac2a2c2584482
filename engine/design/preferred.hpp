// Values that parts are sold in: the E series of IEC 60063, and banks of binary-weighted parts switched by relays.
#pragma once

#include <string_view>
#include <vector>

#include "design/design.hpp"

namespace wattfall::design {

/// The values of one decade, from 1 up to below 10, of E3, E6, E12, E24, E48, E96 or E192; empty for another name.
/// Source: IEC 60063:2015, tables of preferred number series. E3 to E24 are listed there; the finer ones follow
/// round(10^(n/N), 3 digits) with one exception, 9.20 of E192 (the rule gives 9.19).
std::vector<double> preferred_decade(std::string_view series);

/// All values of the series from `lower` to `upper`, both included within 1 part in 1e9; rising. At most `most` of
/// them.
std::vector<double> preferred_values(std::string_view series, double lower, double upper, std::size_t most = 100'000);

/// How two parts may be joined.
struct Joined {
  bool in_series = true, in_parallel = true;
};

/// A value and the one or two parts that make it.
struct MadeValue {
  double value = 0.0;
  Made made;
};

/// How many values `preferred_pairs` looks at: of n single ones, n and n (n + 1)/2 for each way of joining.
std::size_t pair_count(std::size_t singles, Joined joined);

/// All that one or two of these values give, rising, each once: by one part if that can be, else by the two that are
/// nearest to each other. In series coils and resistors add up (without coupling between the coils) and capacitors by
/// their reciprocals, side by side the other way round: `adds_in_series` says which. Cost: pair_count log pair_count.
std::vector<MadeValue> preferred_pairs(const std::vector<double>& singles, Joined joined, bool adds_in_series);

/// 2^count values from 0 in steps of `smallest`, rising.
std::vector<double> relay_values(int count, double smallest);

}  // namespace wattfall::design
