#include "models.hpp"

#include <algorithm>

namespace wattfall::judge {
namespace {

using physics::Validity;

Validity of_core(const design::CoreWinding& core, double hertz) {
  if (!core.index_h) return physics::core_impedance(*core.ring, core.permeability, core.turns, hertz).validity;
  if (core.permeability.points.empty()) return {};
  return physics::core_impedance(*core.index_h, core.permeability.points.front().real, core.permeability, core.turns, hertz).validity;
}

Validity of_section(const design::LineMake& make, double hertz) {
  if (const auto* coax = std::get_if<physics::Coax>(&make.section)) return physics::coax_constants(*coax, hertz).validity;
  if (const auto* pair = std::get_if<physics::TwoWire>(&make.section)) return physics::two_wire_constants(*pair, hertz).validity;
  if (const auto* wire = std::get_if<physics::WireOverGround>(&make.section)) return physics::over_ground_constants(*wire, hertz).validity;
  return {};
}

Validity validity_of(const design::Part& part, double hertz) {
  if (const auto* coil = std::get_if<design::Inductor>(&part.model)) {
    if (coil->wound != nullptr) return physics::coil_at(*coil->wound, hertz).validity;
    if (coil->core != nullptr) return of_core(*coil->core, hertz);
  }
  if (const auto* choke = std::get_if<design::Choke>(&part.model); choke != nullptr && choke->core != nullptr) return of_core(*choke->core, hertz);
  if (const auto* transformer = std::get_if<design::Transformer>(&part.model); transformer != nullptr && transformer->wound != nullptr)
    return of_core(*transformer->wound, hertz);
  if (const auto* line = std::get_if<design::Line>(&part.model)) return of_section(line->make, hertz);
  if (const auto* stub = std::get_if<design::Stub>(&part.model)) return of_section(stub->make, hertz);
  if (const auto* load = std::get_if<design::Load>(&part.model)) {
    if (const auto* dipole = std::get_if<physics::Dipole>(&load->impedance)) return physics::dipole_at(*dipole, hertz).validity;
    if (const auto* monopole = std::get_if<physics::Monopole>(&load->impedance)) return physics::monopole_at(*monopole, hertz).validity;
  }
  return {};
}

/// Where the flux is largest, told once: near saturation, or above the tenth of it that small-signal losses hold for.
void warn_of_flux(const design::Design& design, const ledger::Ledger& ledger, std::vector<Warning>& warnings) {
  constexpr double small_signals = 0.1;  // of saturation; common practice, no source
  for (const ledger::PartBook& book : ledger.parts) {
    if (book.flux_peak_t.empty()) continue;
    const design::Part& part = design.parts[book.part.index];
    const double limit_t = design::core_of(part)->saturation_t;
    const auto worst = std::max_element(book.flux_peak_t.begin(), book.flux_peak_t.end());
    const double hertz = ledger.frequencies_hz[static_cast<std::size_t>(worst - book.flux_peak_t.begin())];
    if (!(*worst > small_signals * limit_t)) continue;
    const std::string figure = part.name + ": flux density " + spell({*worst, dimension::flux_density}) + " peak at " +
                               spell({hertz, dimension::frequency}) + ", ";
    const std::string limit = "the " + spell({limit_t, dimension::flux_density}) + " at which its core saturates";
    if (*worst > limit_t)
      warnings.push_back({"core-saturated", figure + "above " + limit + ": it distorts and heats far beyond what is booked", part.name, hertz});
    else
      warnings.push_back({"core-flux", figure + "more than a tenth of " + limit + ": the core loses more than small signals do, which are booked",
                          part.name, hertz});
  }
}

}  // namespace

void warn_of_models(const design::Design& design, const ledger::Ledger& ledger, std::vector<Warning>& warnings) {
  for (const design::Part& part : design.parts)
    for (double hertz : ledger.frequencies_hz) {
      const Validity validity = validity_of(part, hertz);
      if (validity.inside()) continue;
      warnings.push_back({"outside-model",
                          part.name + " at " + spell({hertz, dimension::frequency}) + ": " + validity.sentence + "; its figures are rough there",
                          part.name, hertz});
      break;
    }
  warn_of_flux(design, ledger, warnings);
}

}  // namespace wattfall::judge
