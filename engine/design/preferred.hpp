// Values that parts are sold in: the E series of IEC 60063, and banks of binary-weighted parts switched by relays.
#pragma once

#include <string_view>
#include <vector>

namespace wattfall::design {

/// The values of one decade, from 1 up to below 10, of E3, E6, E12, E24, E48, E96 or E192; empty for another name.
/// Source: IEC 60063:2015, tables of preferred number series. E3 to E24 are listed there; the finer ones follow
/// round(10^(n/N), 3 digits) with one exception, 9.20 of E192 (the rule gives 9.19).
std::vector<double> preferred_decade(std::string_view series);

/// All values of the series from `lower` to `upper`, both included within 1 part in 1e9; rising. At most `most` of
/// them.
std::vector<double> preferred_values(std::string_view series, double lower, double upper, std::size_t most = 100'000);

/// 2^count values from 0 in steps of `smallest`, rising.
std::vector<double> relay_values(int count, double smallest);

}  // namespace wattfall::design
