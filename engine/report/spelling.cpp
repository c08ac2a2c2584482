// Leans on the grammar's `spell`, so that sentences and diagnostics agree on how a number is written.
#include "report/spelling.hpp"

#include <cmath>

#include "grammar/quantity.hpp"

namespace wattfall::report {
namespace {

std::string spell_in(double value, Dimension dim, int digits) {
  return std::isfinite(value) ? spell({value, dim}, digits) : "no value";
}

}  // namespace

std::string spell_power(double watts) {
  return spell_in(watts, dimension::power, 3);
}
std::string spell_volts(double volts_peak) {
  return spell_in(volts_peak, dimension::voltage, 3);
}
std::string spell_frequency(double hz) {
  return spell_in(hz, dimension::frequency, 6);
}
std::string spell_level(double db) {
  return spell_in(std::round(db * 100.0) / 100.0, dimension::level, 5);
}
std::string spell_ratio(double ratio) {
  return std::isfinite(ratio) ? spell({ratio, dimension::number}, 3) : "infinite";
}
std::string spell_share(double share) {
  return std::isfinite(share) ? spell({share * 100.0, dimension::number}, 3) + " %" : "no value";
}

std::string unit_of(design::FigureKind kind) {
  using enum design::FigureKind;
  switch (kind) {
    case swr_at:
    case swr_on:
      return "";
    case return_loss_at:
    case mismatch_at:
    case loss_in:
    case total_loss:
      return "dB";
    case resistance_at:
    case reactance_at:
      return "ohm";
    case power_into:
    case radiated_from:
    case heat_in:
      return "W";
    case efficiency:
      return "share";
    case peak_volts_across:
    case peak_volts_on:
      return "V";
    case rms_amps_through:
    case rms_amps_on:
      return "A";
    case width_of_swr_at:
      return "Hz";
  }
  return "";
}

std::string name_of(design::FigureKind kind) {
  using enum design::FigureKind;
  switch (kind) {
    case swr_at:
      return "swr_at";
    case return_loss_at:
      return "return_loss_at";
    case resistance_at:
      return "resistance_at";
    case reactance_at:
      return "reactance_at";
    case mismatch_at:
      return "mismatch_at";
    case swr_on:
      return "swr_on";
    case power_into:
      return "power_into";
    case radiated_from:
      return "radiated_from";
    case heat_in:
      return "heat_in";
    case loss_in:
      return "loss_in";
    case total_loss:
      return "total_loss";
    case efficiency:
      return "efficiency";
    case peak_volts_across:
      return "peak_volts_across";
    case rms_amps_through:
      return "rms_amps_through";
    case peak_volts_on:
      return "peak_volts_on";
    case rms_amps_on:
      return "rms_amps_on";
    case width_of_swr_at:
      return "width_of_swr_at";
  }
  return "";
}

std::string spell_figure(double value, const std::string& unit) {
  if (unit == "share") return spell_share(value);
  if (unit.empty()) return spell_ratio(value);
  if (unit == "dB") return spell_level(value);
  if (unit == "W") return spell_power(value);
  if (unit == "V") return spell_volts(value);
  if (unit == "A") return spell_in(value, dimension::current, 3);
  if (unit == "W/m") return spell_in(value, dimension::power_per_length, 3);
  if (unit == "Hz") return spell_frequency(value);
  return spell_in(value, dimension::resistance, 3);
}

std::string label(const design::Design& design) {
  if (design.variant) return *design.variant;
  return design.title.empty() ? design.file : design.title;
}

std::string quoted(const design::Design& design) {
  return '"' + label(design) + '"';
}

std::string counted(std::size_t count, const std::string& thing) {
  return std::to_string(count) + ' ' + thing + (count == 1 ? "" : "s");
}

}  // namespace wattfall::report
