// Prefixes are those of the trade: capacitors in pF and nF (never mF), coils in nH, uH and mH, power in uW to kW.
// std::to_chars, so that no locale turns the point into a comma.
#include "trade.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <set>
#include <span>

namespace reports {
namespace {

struct Prefix {
  double factor;
  const char* unit;
};

constexpr Prefix farads[] = {{1e-12, "pF"}, {1e-9, "nF"}, {1e-6, "uF"}};
constexpr Prefix henries[] = {{1e-9, "nH"}, {1e-6, "uH"}, {1e-3, "mH"}, {1.0, "H"}};
constexpr Prefix hertz[] = {{1.0, "Hz"}, {1e3, "kHz"}, {1e6, "MHz"}, {1e9, "GHz"}};
constexpr Prefix watts[] = {{1e-15, "fW"}, {1e-12, "pW"}, {1e-9, "nW"}, {1e-6, "uW"}, {1e-3, "mW"}, {1.0, "W"}, {1e3, "kW"}};
constexpr Prefix volts[] = {{1e-9, "nV"}, {1e-6, "uV"}, {1e-3, "mV"}, {1.0, "V"}, {1e3, "kV"}};
constexpr Prefix amps[] = {{1e-9, "nA"}, {1e-6, "uA"}, {1e-3, "mA"}, {1.0, "A"}};
constexpr Prefix ohms[] = {{1.0, "ohm"}, {1e3, "kohm"}, {1e6, "Mohm"}};
constexpr Prefix teslas[] = {{1e-9, "nT"}, {1e-6, "uT"}, {1e-3, "mT"}, {1.0, "T"}};
constexpr Prefix metres[] = {{1.0, "m"}};

std::span<const Prefix> prefixes(const std::string& unit) {
  if (unit == "F") return farads;
  if (unit == "H") return henries;
  if (unit == "Hz") return hertz;
  if (unit == "W") return watts;
  if (unit == "V") return volts;
  if (unit == "A") return amps;
  if (unit == "ohm") return ohms;
  if (unit == "T") return teslas;
  if (unit == "m") return metres;
  return {};
}

/// The largest prefix that leaves at least one; the smallest for less. Rounding up to 1000 is left to the reader.
Prefix choose_prefix(double size, const std::string& unit) {
  const auto all = prefixes(unit);
  if (all.empty()) return {1.0, unit.c_str()};
  if (size == 0.0) {
    const auto one = std::find_if(all.begin(), all.end(), [](const Prefix& p) { return p.factor == 1.0; });
    return one == all.end() ? all.front() : *one;
  }
  Prefix chosen = all.front();
  for (const Prefix& prefix : all) {
    if (size >= 0.9995 * prefix.factor) chosen = prefix;
  }
  return chosen;
}

/// Decimals that give `digits` significant ones at this size.
int decimals_for(double size, int digits) {
  if (size <= 0.0 || !std::isfinite(size)) return 0;
  const int whole = static_cast<int>(std::floor(std::log10(size * (1.0 + 0.5 * std::pow(10.0, -digits))))) + 1;
  return std::clamp(digits - whole, 0, 12);
}

}  // namespace

/// Without zeros, and a point, that say nothing.
std::string strip(std::string shown) {
  if (shown.find('.') == std::string::npos) return shown;
  shown.erase(shown.find_last_not_of('0') + 1);
  if (shown.back() == '.') shown.pop_back();
  return shown;
}

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "-";
  std::array<char, 400> digits;
  const auto done =
      std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed, decimals);
  std::string shown(digits.data(), done.ptr);
  const bool zero = shown.find_first_not_of("-0.") == std::string::npos;
  return zero && shown.front() == '-' ? shown.substr(1) : shown;
}

std::string significant(double value, int digits) {
  if (!std::isfinite(value)) return "-";
  const double size = std::abs(value);
  if (size != 0.0 && (size < 1e-6 || size >= 1e7)) {
    std::array<char, 40> text;
    const auto done = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific,
                                    std::max(0, digits - 2));
    return {text.data(), done.ptr};
  }
  return strip(fixed(value, decimals_for(size, digits)));
}

std::string spell(double value, const std::string& unit, int digits) {
  if (!std::isfinite(value)) return unit.empty() ? "infinite" : "-";
  if (unit.empty()) return std::abs(value) < 100.0 ? strip(fixed(value, 2)) : significant(value, digits);
  if (unit == "dB") return fixed(value, 2) + " dB";
  if (unit == "share") return significant(100.0 * value, digits) + " %";
  const Prefix prefix = choose_prefix(std::abs(value), unit);
  return significant(value / prefix.factor, digits) + ' ' + prefix.unit;
}

std::string spell_complex(double re, double im, int digits) {
  if (!std::isfinite(re) || !std::isfinite(im)) return "-";
  const double speck = 1e-6 * std::hypot(re, im);  // rounding of the solution, nothing to read
  if (std::abs(re) < speck) re = 0.0;
  if (std::abs(im) < speck) im = 0.0;
  return significant(re, digits) + (im < 0.0 ? " - j" : " + j") + significant(std::abs(im), digits);
}

std::string Scale::show(double value) const {
  if (!std::isfinite(value)) return "-";
  const std::string shown = fixed(value / factor, decimals);
  if (value <= 0.0 || shown.find_first_not_of("0.") != std::string::npos) return shown;
  return '<' + fixed(std::pow(10.0, -decimals), decimals);
}

Scale scale_for(const std::vector<double>& values, const std::string& unit) {
  double largest = 0.0;
  for (const double value : values) {
    if (std::isfinite(value)) largest = std::max(largest, std::abs(value));
  }
  const bool stays_in_watts = unit == "W" && largest >= 1.0 && largest < 1e4;
  const Prefix prefix = stays_in_watts ? Prefix{1.0, "W"} : choose_prefix(largest, unit);
  const int decimals = std::min(decimals_for(largest / prefix.factor, 4), 4);
  return {prefix.factor, prefix.unit, stays_in_watts ? std::max(decimals, 1) : decimals};
}

Scale frequency_scale(const std::vector<double>& frequencies_hz) {
  constexpr int exact_up_to = 4, most = 6;
  double smallest = std::numeric_limits<double>::infinity();
  for (const double hz : frequencies_hz) smallest = std::min(smallest, hz);
  const Prefix prefix = choose_prefix(std::isfinite(smallest) ? smallest : 1e6, "Hz");
  Scale scale{prefix.factor, prefix.unit, 0};
  const auto exact = [&](double hz) {
    const double shown = hz / scale.factor * std::pow(10.0, scale.decimals);
    return std::abs(shown - std::round(shown)) < 1e-6 * std::max(1.0, std::abs(shown) * 1e-6);
  };
  while (scale.decimals < exact_up_to && !std::all_of(frequencies_hz.begin(), frequencies_hz.end(), exact))
    ++scale.decimals;
  const auto told_apart = [&] {
    std::set<std::string> shown;
    for (const double hz : frequencies_hz) shown.insert(scale.show(hz));
    return shown.size() == frequencies_hz.size();
  };
  while (scale.decimals < most && !told_apart()) ++scale.decimals;
  return scale;
}

}  // namespace reports
