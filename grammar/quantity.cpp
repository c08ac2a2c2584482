// What units mean, how they are most likely misspelled, and how a value is written in the trade. In: symbols and SI
// values. Out: scales, dimensions and text. Scales are exact by definition: SI prefixes, the foot of 0.3048 m and the
// inch of 0.0254 m (International Yard and Pound Agreement, 1959).
#include "grammar/quantity.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <numbers>
#include <unordered_map>
#include <utility>
#include <vector>

#include "grammar/nearest_name.hpp"

namespace wattfall {
namespace {

constexpr double metres_in_foot = 0.3048;
constexpr double metres_in_inch = 0.0254;
constexpr double radians_in_degree = std::numbers::pi / 180.0;

struct Named {
  std::string_view symbol;
  Unit unit;
};

/// Units that take no prefix.
constexpr std::array<Named, 15> whole_units{{
    {"ft", {metres_in_foot, dimension::length}},
    {"in", {metres_in_inch, dimension::length}},
    {"dB", {1.0, dimension::level}},
    {"dBm", {1.0, dimension::power, true}},
    {"%", {0.01, dimension::number, false, -2}},
    {"deg", {radians_in_degree, dimension::angle}},
    {"\u00B0", {radians_in_degree, dimension::angle}},
    {"turns", {1.0, dimension::number}},
    {"dB/m", {1.0, dimension::level_per_length}},
    {"dB/100m", {1.0 / 100.0, dimension::level_per_length, false, -2}},
    {"dB/100ft", {1.0 / (100.0 * metres_in_foot), dimension::level_per_length}},
    {"dB/ft", {1.0 / metres_in_foot, dimension::level_per_length}},
    {"pF/m", {1e-12, dimension::capacitance_per_length, false, -12}},
    {"pF/ft", {1e-12 / metres_in_foot, dimension::capacitance_per_length}},
    {"W/m", {1.0, dimension::power_per_length}},
}};

/// Units that take a prefix.
constexpr std::array<Named, 12> base_units{{
    {"F", {1.0, dimension::capacitance}},
    {"H", {1.0, dimension::inductance}},
    {"ohm", {1.0, dimension::resistance}},
    {"\u03A9", {1.0, dimension::resistance}},  // Greek capital omega
    {"\u2126", {1.0, dimension::resistance}},  // the ohm sign
    {"S", {1.0, dimension::conductance}},
    {"V", {1.0, dimension::voltage}},
    {"A", {1.0, dimension::current}},
    {"W", {1.0, dimension::power}},
    {"Hz", {1.0, dimension::frequency}},
    {"s", {1.0, dimension::time}},
    {"T", {1.0, dimension::flux_density}},
}};

struct Prefix {
  std::string_view symbol;
  double scale;
  int power_of_ten;
};

constexpr std::array<Prefix, 10> prefixes{{
    {"f", 1e-15, -15},
    {"p", 1e-12, -12},
    {"n", 1e-9, -9},
    {"u", 1e-6, -6},
    {"\u00B5", 1e-6, -6},  // the micro sign
    {"\u03BC", 1e-6, -6},  // Greek mu
    {"m", 1e-3, -3},
    {"k", 1e3, 3},
    {"M", 1e6, 6},
    {"G", 1e9, 9},
}};

/// Every symbol there is, and what it means.
using Units = std::unordered_map<std::string, Unit>;

Units all_units() {
  Units units;
  for (const Named& unit : whole_units) units.emplace(unit.symbol, unit.unit);
  std::vector<Named> bases(base_units.begin(), base_units.end());
  bases.push_back(Named{"m", {1.0, dimension::length}});
  for (const Named& base : bases) {
    units.emplace(base.symbol, base.unit);
    for (const Prefix& prefix : prefixes) {
      Unit unit = base.unit;
      unit.scale = prefix.scale;
      unit.power_of_ten = prefix.power_of_ten;
      units.emplace(std::string(prefix.symbol).append(base.symbol), unit);
    }
  }
  units.emplace("cm", Unit{1e-2, dimension::length, false, -2});
  return units;
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& letter : result) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return result;
}

using Pair = std::pair<std::string_view, std::string_view>;

/// A prefix alone, as in the speech of the workbench: "a hundred p".
constexpr std::array<Pair, 12> clipped{{{"p", "pF"},
                                        {"O", "ohm"},
                                        {"o", "ohm"},
                                        {"K", "kohm"},
                                        {"n", "nF"},
                                        {"u", "uH"},
                                        {"\u00B5", "uH"},
                                        {"\u03BC", "uH"},
                                        {"f", "fF"},
                                        {"k", "kohm"},
                                        {"M", "MHz"},
                                        {"G", "GHz"}}};

/// Units written out, or in another trade's letters; compared in lower case.
constexpr std::array<Pair, 51> aliases{
    {{"ohms", "ohm"},      {"r", "ohm"},         {"kohms", "kohm"}, {"kiloohm", "kohm"}, {"hertz", "Hz"},
     {"cps", "Hz"},        {"khertz", "kHz"},    {"mc", "MHz"},     {"kc", "kHz"},       {"kcs", "kHz"},
     {"megahertz", "MHz"}, {"kilohertz", "kHz"}, {"watt", "W"},     {"watts", "W"},      {"kilowatt", "kW"},
     {"volt", "V"},        {"volts", "V"},       {"amp", "A"},      {"amps", "A"},       {"ampere", "A"},
     {"amperes", "A"},     {"meter", "m"},       {"meters", "m"},   {"metre", "m"},      {"metres", "m"},
     {"mtr", "m"},         {"foot", "ft"},       {"feet", "ft"},    {"'", "ft"},         {"inch", "in"},
     {"inches", "in"},     {"\"", "in"},         {"degree", "deg"}, {"degrees", "deg"},  {"degs", "deg"},
     {"decibel", "dB"},    {"decibels", "dB"},   {"db's", "dB"},    {"turn", "turns"},   {"t", "turns"},
     {"percent", "%"},     {"pct", "%"},         {"sec", "s"},      {"seconds", "s"},    {"mho", "S"},
     {"siemens", "S"},     {"mmf", "pF"},        {"mfd", "uF"},     {"uf's", "uF"},      {"puff", "pF"},
     {"puffs", "pF"}}};

/// All symbols that may be meant, the likelier of two that differ in case alone first: a design has megahertz and
/// milliwatts, hardly millihertz and megawatts.
const std::vector<std::string>& likely_symbols() {
  static const std::vector<std::string> all = [] {
    std::vector<std::string> result = {"ohm", "kohm", "Mohm", "mohm", "Hz", "kHz", "MHz", "GHz", "mHz"};
    for (const char* base : {"F", "H", "S", "V", "A", "W", "s", "m"}) {
      for (const char* prefix : {"", "p", "n", "u", "m", "k", "M", "G", "f"})
        result.push_back(std::string(prefix) + base);
    }
    result.emplace_back("cm");
    for (const Named& unit : whole_units) result.emplace_back(unit.symbol);
    return result;
  }();
  return all;
}

/// `picofarad`, `mikrohenry`, `kft`: a prefix and a unit, each written out or not, of which one at least is no
/// symbol's.
std::string suggest_spelled_out(const std::string& small) {
  constexpr std::array<Pair, 12> spelled_prefixes{{{"pico", "p"},
                                                   {"nano", "n"},
                                                   {"micro", "u"},
                                                   {"mikro", "u"},
                                                   {"milli", "m"},
                                                   {"centi", "c"},
                                                   {"kilo", "k"},
                                                   {"mega", "M"},
                                                   {"giga", "G"},
                                                   {"k", "k"},
                                                   {"\u00B5", "u"},
                                                   {"\u03BC", "u"}}};
  constexpr std::array<Pair, 9> spelled_units{{{"farad", "F"},
                                               {"farads", "F"},
                                               {"henry", "H"},
                                               {"henries", "H"},
                                               {"henrys", "H"},
                                               {"f", "F"},
                                               {"h", "H"},
                                               {"hz", "Hz"},
                                               {"v", "V"}}};
  for (const auto& [written, prefix] : spelled_prefixes) {
    if (!small.starts_with(written)) continue;
    const std::string unit = small.substr(written.size());
    for (const auto* table : {spelled_units.data(), aliases.data()}) {
      const std::size_t count = table == aliases.data() ? aliases.size() : spelled_units.size();
      for (std::size_t i = 0; i < count; ++i)
        if (const std::string whole = std::string(prefix).append(table[i].second);
            unit == table[i].first && find_unit(whole))
          return whole;
    }
    if (find_unit(unit)) return unit;  // one that takes no prefix
  }
  for (const auto& [written, symbol] : spelled_units)
    if (small == written && written.size() > 2) return std::string(symbol);
  return {};
}

std::string suggest_simple(std::string_view wrong) {
  for (const auto& [written, meant] : clipped) {
    if (wrong == written) return std::string(meant);
  }
  const std::string small = lower(wrong);
  for (const auto& [written, meant] : aliases) {
    if (small == written) return std::string(meant);
  }
  for (const std::string& symbol : likely_symbols()) {
    if (small == lower(symbol)) return symbol;
  }
  if (wrong.size() < 2) return {};
  if (std::string spelled = suggest_spelled_out(small); !spelled.empty()) return spelled;
  return nearest_name(wrong, likely_symbols());
}

struct Spelling {
  Dimension dim;
  std::string_view symbol;
  std::string_view name;
};

constexpr std::array<Spelling, 17> spellings{{
    {dimension::number, "", "a plain number"},
    {dimension::length, "m", "a length"},
    {dimension::time, "s", "a time"},
    {dimension::frequency, "Hz", "a frequency"},
    {dimension::current, "A", "a current"},
    {dimension::power, "W", "a power"},
    {dimension::voltage, "V", "a voltage"},
    {dimension::resistance, "ohm", "a resistance"},
    {dimension::conductance, "S", "a conductance"},
    {dimension::inductance, "H", "an inductance"},
    {dimension::capacitance, "F", "a capacitance"},
    {dimension::level, "dB", "a level in dB"},
    {dimension::level_per_length, "dB/m", "a loss per length"},
    {dimension::capacitance_per_length, "F/m", "a capacitance per length"},
    {dimension::power_per_length, "W/m", "a power per length"},
    {dimension::flux_density, "T", "a flux density"},
    {dimension::angle, "rad", "an angle"},
}};

const Spelling* find_spelling(Dimension dim) {
  const auto found =
      std::find_if(spellings.begin(), spellings.end(), [dim](const Spelling& each) { return each.dim == dim; });
  return found == spellings.end() ? nullptr : &*found;
}

/// A dimension without a name of its own, by two that have one: "ohm x Hz", "V/m". Empty where no two will do.
std::string by_two_units(Dimension dim) {
  // The trade's own come first, so that what is both "ohm x Hz" and "1/F" times something is said in ohms.
  constexpr std::array<Dimension, 13> known{
      dimension::resistance, dimension::inductance, dimension::capacitance, dimension::voltage, dimension::current,
      dimension::power,      dimension::frequency,  dimension::length,      dimension::time,    dimension::conductance,
      dimension::level,      dimension::angle,      dimension::number};
  for (const Dimension left : known) {
    for (const Dimension right : known) {
      if (right == dimension::number) continue;
      const std::string l(find_spelling(left)->symbol), r(find_spelling(right)->symbol);
      if (left != dimension::number && left * right == dim) return l + (l == r ? "^2" : " x " + r);
      if (left / right == dim) return (l.empty() ? "1" : l) + "/" + r;
    }
  }
  return {};
}

std::string in_base_units(Dimension dim) {
  std::string result;
  const auto add = [&result](std::string_view symbol, int exponent) {
    if (exponent == 0) return;
    if (!result.empty()) result += ' ';
    result += symbol;
    if (exponent != 1) result.append("^").append(std::to_string(exponent));
  };
  add("m", dim.metre);
  add("kg", dim.kilogram);
  add("s", dim.second);
  add("A", dim.ampere);
  add("dB", dim.level);
  add("rad", dim.angle);
  return result;
}

/// `value` with so many significant digits, without an exponent while that stays readable. Not printf: a locale's
/// decimal comma must never come into a report.
std::string digits_of(double value, int digits) {
  if (std::isnan(value)) return "not a number";
  if (std::isinf(value)) return value > 0 ? "infinite" : "-infinite";
  std::array<char, 64> buffer{};
  const auto written =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::general, digits);
  std::string text(buffer.data(), written.ptr);
  if (std::abs(value) < 1e7 && text.find('e') != std::string::npos && std::abs(value) >= 1.0) {
    double rounded = value;
    std::from_chars(text.data(), text.data() + text.size(), rounded);
    const auto plain =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded, std::chars_format::fixed, 0);
    text.assign(buffer.data(), plain.ptr);
  }
  return text == "-0" ? "0" : text;
}

struct Scale {
  std::string symbol;
  double size;
};

double rounded_to(double value, int digits) {
  double result = value;
  std::array<char, 64> buffer{};
  const auto written =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::general, digits);
  std::from_chars(buffer.data(), written.ptr, result);
  return result;
}

/// The prefix that puts the larger part of a value between 1 and 1000, after rounding (999.96 pF is 1 nF).
Scale prefixed(const std::string& symbol, double size, int digits) {
  if (size == 0.0 || !std::isfinite(size)) return {symbol, 1.0};
  const double shown = rounded_to(size, digits);
  // Coils are spoken of in microhenries well below one.
  if (symbol == "H" && shown >= 0.1e-6 && shown < 1e-6) return {"uH", 1e-6};
  constexpr std::array<Prefix, 8> steps{{{"G", 1e9, 9},
                                         {"M", 1e6, 6},
                                         {"k", 1e3, 3},
                                         {"", 1.0, 0},
                                         {"m", 1e-3, -3},
                                         {"u", 1e-6, -6},
                                         {"n", 1e-9, -9},
                                         {"p", 1e-12, -12}}};
  for (const Prefix& step : steps) {
    // One part in 1e12 of slack: 1e-12 * 1000 is not exactly 1e-9.
    if (shown >= step.scale * (1 - 1e-12)) return {std::string(step.symbol) + symbol, step.scale};
  }
  return {std::string("p") + symbol, 1e-12};
}

Scale scale_for(Dimension dim, double size, int digits) {
  if (dim == dimension::angle) return {"deg", radians_in_degree};
  if (dim == dimension::level_per_length) return {"dB/100m", 1.0 / 100.0};
  if (dim == dimension::capacitance_per_length) return {"pF/m", 1e-12};
  if (dim == dimension::power_per_length) return {"W/m", 1.0};
  const std::string symbol = si_symbol(dim);
  if (dim == dimension::number || dim == dimension::level || find_spelling(dim) == nullptr) return {symbol, 1.0};
  return prefixed(symbol, size, digits);
}

}  // namespace

std::optional<Unit> find_unit(std::string_view symbol) {
  static const Units owned = all_units();
  static const auto units = [] {
    std::unordered_map<std::string_view, Unit> views;
    for (const auto& [name, unit] : owned) views.emplace(name, unit);
    return views;
  }();
  const auto found = units.find(symbol);
  return found == units.end() ? std::nullopt : std::optional(found->second);
}

std::string suggest_unit(std::string_view wrong) {
  if (wrong.empty() || find_unit(wrong)) return {};
  const std::size_t slash = wrong.find('/');
  if (slash == std::string_view::npos) return suggest_simple(wrong);
  const std::string_view over = wrong.substr(0, slash);
  const std::string top = find_unit(over) ? std::string(over) : suggest_simple(over);
  const std::string whole = top + lower(wrong.substr(slash));
  return find_unit(whole) ? whole : nearest_name(wrong, likely_symbols());
}

std::string describe(Dimension dim) {
  if (const Spelling* known = find_spelling(dim)) return std::string(known->name);
  const std::string two = by_two_units(dim);
  return "a value in " + (two.empty() ? in_base_units(dim) : two);
}

std::string si_symbol(Dimension dim) {
  if (const Spelling* known = find_spelling(dim)) return std::string(known->symbol);
  return in_base_units(dim);
}

std::string spell(Quantity quantity, int digits) {
  const double real = quantity.value.real();
  const double imaginary = quantity.value.imag();
  const Scale scale = scale_for(quantity.dim, std::max(std::abs(real), std::abs(imaginary)), digits);
  std::string text = digits_of(real / scale.size, digits);
  if (imaginary != 0.0) {
    const std::string size = digits_of(std::abs(imaginary) / scale.size, digits);
    if (real == 0.0) {
      text = imaginary < 0 ? "-j" : "j";
    } else {
      text += imaginary < 0 ? " - j" : " + j";
    }
    text += size;
  }
  return scale.symbol.empty() ? text : text + " " + scale.symbol;
}

}  // namespace wattfall
