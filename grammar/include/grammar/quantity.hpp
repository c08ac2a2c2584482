// Dimensions and units: what stands behind "67.4 pF", "3.1 dB/100m", "+20 dBm".
#pragma once

#include <complex>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace wattfall {

/// Exponents of the base units that the language meets. `level` counts decibels, `angle` degrees or radians: both are
/// kept apart from plain numbers so that "2 m + 3 dB" and "90 deg" as a length can be told from their likes.
struct Dimension {
  std::int8_t metre = 0, kilogram = 0, second = 0, ampere = 0, level = 0, angle = 0;

  friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
  friend constexpr Dimension operator*(Dimension a, Dimension b) {
    return {std::int8_t(a.metre + b.metre), std::int8_t(a.kilogram + b.kilogram), std::int8_t(a.second + b.second),
            std::int8_t(a.ampere + b.ampere), std::int8_t(a.level + b.level), std::int8_t(a.angle + b.angle)};
  }
  friend constexpr Dimension operator/(Dimension a, Dimension b) {
    return {std::int8_t(a.metre - b.metre), std::int8_t(a.kilogram - b.kilogram), std::int8_t(a.second - b.second),
            std::int8_t(a.ampere - b.ampere), std::int8_t(a.level - b.level), std::int8_t(a.angle - b.angle)};
  }
  /// The dimension of x^n.
  constexpr Dimension power(int n) const {
    return {std::int8_t(metre * n), std::int8_t(kilogram * n), std::int8_t(second * n),
            std::int8_t(ampere * n), std::int8_t(level * n), std::int8_t(angle * n)};
  }
};

namespace dimension {
inline constexpr Dimension number{};
inline constexpr Dimension length{1, 0, 0, 0, 0, 0};
inline constexpr Dimension time{0, 0, 1, 0, 0, 0};
inline constexpr Dimension frequency{0, 0, -1, 0, 0, 0};
inline constexpr Dimension current{0, 0, 0, 1, 0, 0};
inline constexpr Dimension power{2, 1, -3, 0, 0, 0};
inline constexpr Dimension voltage{2, 1, -3, -1, 0, 0};
inline constexpr Dimension resistance{2, 1, -3, -2, 0, 0};
inline constexpr Dimension conductance{-2, -1, 3, 2, 0, 0};
inline constexpr Dimension inductance{2, 1, -2, -2, 0, 0};
inline constexpr Dimension capacitance{-2, -1, 4, 2, 0, 0};
inline constexpr Dimension level{0, 0, 0, 0, 1, 0};             ///< dB
inline constexpr Dimension level_per_length{-1, 0, 0, 0, 1, 0}; ///< dB/m
inline constexpr Dimension capacitance_per_length{-3, -1, 4, 2, 0, 0};
inline constexpr Dimension power_per_length{1, 1, -3, 0, 0, 0};  ///< W/m
inline constexpr Dimension flux_density{0, 1, -2, -1, 0, 0};     ///< T
inline constexpr Dimension angle{0, 0, 0, 0, 0, 1};             ///< radians
}  // namespace dimension

/// A value in SI units (radians for angles, dB for levels, watts for dBm).
struct Quantity {
  std::complex<double> value;
  Dimension dim;
};

/// What a unit's symbol means: value_si = number * scale, except dBm, where value_si = 10^(number/10) mW.
struct Unit {
  double scale = 1.0;
  Dimension dim;
  bool is_dbm = false;
  int power_of_ten = 0;  ///< of `scale`, where that is one; 0 for 1 and for scales that are none
};

/// The unit written `symbol` ("pF", "µH", "dB/100m", "%", "°", "turns"), or none. Case-sensitive, prefixes as language.md says.
/// `cm` is known, `cF` is not.
std::optional<Unit> find_unit(std::string_view symbol);

/// The symbol that a writer of `wrong` most likely meant ("mhz" -> "MHz", "p" after 100 -> "pF", "uh" -> "uH"), or "".
std::string suggest_unit(std::string_view wrong);

/// The name of a dimension for messages: "a frequency", "a capacitance", "a plain number"; for one without a name its
/// units, as few as will do: "a value in ohm x Hz".
std::string describe(Dimension dim);

/// The SI symbol of a dimension for messages and reports: "Hz", "F", "ohm", "m", "" for a number, "dB"; base units where it has none.
std::string si_symbol(Dimension dim);

/// A value in the trade's spelling, four significant digits unless said otherwise: "67.47 pF", "28 - j233.6 ohm", "7.1 MHz", "24 m".
std::string spell(Quantity quantity, int digits = 4);

}  // namespace wattfall
