// What can hurt people, with the largest figures found in this design. It stands in every document, since any of its
// numbers may be built and switched on.
#include <algorithm>
#include <string>

#include "report/moments.hpp"
#include "report/spelling.hpp"
#include "report/verdict.hpp"

namespace wattfall::report {
namespace {

/// The largest value of a kind, and where it is.
struct Largest {
  double value = 0.0, at_hz = 0.0;
  std::string part, variant;

  void offer(const ledger::Series& series, const VariantResult& from, design::PartId part_id) {
    if (series.empty()) return;
    const std::size_t i = peak_index(series);
    if (!ledger::exceeds(series[i], value)) return;
    value = series[i];
    at_hz = from.ledger->frequencies_hz[i];
    part = from.design->parts[part_id.index].name;
    variant = from.design->variant ? " in " + quoted(*from.design) : "";
  }
  std::string where() const { return part + variant + " at " + spell_frequency(at_hz); }
};

struct Extremes {
  Largest volts, heat;
  double radiated_w = 0.0;  ///< of all loads together
};

/// Below these a receiving chain would only be told off. Volts: where extra-low voltage ends for alternating current, 30 V rms (IEC 61140; from
/// memory). Heat: what a part of a few centimetres sheds without growing hot; power on the air: a tenth of the least that is usually
/// assessed (both common practice, no source).
constexpr double dangerous_volts_peak = 42.4, hot_w = 0.5, exposing_w = 0.1;

Extremes find_extremes(const std::vector<VariantResult>& variants) {
  Extremes found;
  for (const VariantResult& variant : variants) {
    for (const ledger::PartBook& book : variant.ledger->parts) {
      found.volts.offer(book.volts_peak, variant, book.part);
      found.volts.offer(book.volts_peak_along, variant, book.part);
      found.heat.offer(book.heat_w, variant, book.part);
    }
    for (const ledger::LoadBook& book : variant.ledger->loads) {
      found.volts.offer(book.volts_peak, variant, book.part);
      found.heat.offer(book.heat_w, variant, book.part);
    }
    for (const double radiated : variant.ledger->totals.radiated_w)
      if (radiated > found.radiated_w) found.radiated_w = radiated;
  }
  return found;
}

}  // namespace

std::vector<std::string> cautions(const std::vector<VariantResult>& variants) {
  const Extremes found = find_extremes(variants);
  std::vector<std::string> said;
  said.push_back(
      "Local electrical and radio codes and a licensed operator's judgement come before anything printed here.");
  if (found.volts.value >= dangerous_volts_peak) {
    said.push_back(
        "High voltage: up to " + spell_volts(found.volts.value) + " peak, on " + found.volts.where() +
        ". RF burns. Touch no tuner part, open-wire line or antenna end while transmitting, and fence off what "
        "others can reach.");
  }
  if (found.heat.value >= hot_w) {
    said.push_back("Heat: up to " + spell_power(found.heat.value) + ", in " + found.heat.where() +
                   ". Keep air round it and nothing that burns near it; let it cool before touching.");
  }
  if (found.radiated_w >= exposing_w) {
    said.push_back("Exposure: up to " + spell_power(found.radiated_w) +
                   " goes on the air. Check the limits for people near the antenna before switching on.");
  }
  return said;
}

}  // namespace wattfall::report
