#include "models.hpp"

#include <algorithm>
#include <numbers>

#include "design/coupled_sets.hpp"

namespace wattfall::judge {
namespace {

using physics::Validity;
using physics::Verdict;

/// Whether the turns, side by side in one layer, find room along the core's hole.
Validity room_for(const design::CoreWinding& core) {
  Validity validity;
  if (!core.wire || !core.ring) return validity;
  const double room_m = std::numbers::pi * (core.ring->inner_diameter_m - core.wire->diameter_m), share = core.turns * core.wire->diameter_m / room_m;
  validity.expect(room_m > 0.0, Verdict::outside, "the wire is {} of the core's hole", core.wire->diameter_m / core.ring->inner_diameter_m);
  return validity.expect(room_m <= 0.0 || share <= 1.0, Verdict::outside, "one layer of the winding takes {} times the room along the core's hole", share);
}

Validity of_core(const design::CoreWinding& core, double hertz) {
  Validity validity = room_for(core);
  if (!core.index_h) return validity.join(physics::core_impedance(*core.ring, core.permeability, core.turns, hertz).validity);
  if (core.permeability.points.empty()) return validity;
  return validity.join(
      physics::core_impedance(*core.index_h, core.permeability.points.front().real, core.permeability, core.turns, hertz).validity);
}

/// A cable's curve beyond its table: an octave on it is still the handbooks' practice (common practice, no source), farther it is said.
Validity of_cable(const design::LineMake& make, double hertz) {
  Validity validity;
  if (make.cable.empty() || make.losses.size() < 2) return validity;
  const double first = make.losses.front().frequency_hz, last = make.losses.back().frequency_hz;
  validity.expect(hertz >= first / 2.0, Verdict::outside, "the frequency is {} of the lowest in the cable's table, and its loss is carried on to there",
                  hertz / first);
  return validity.expect(hertz <= last * 2.0, Verdict::outside,
                         "the frequency is {} times the highest in the cable's table, and its loss is carried on to there", hertz / last);
}

Validity of_section(const design::LineMake& make, double hertz) {
  if (const auto* coax = std::get_if<physics::Coax>(&make.section)) return physics::coax_constants(*coax, hertz).validity;
  if (const auto* pair = std::get_if<physics::TwoWire>(&make.section)) return physics::two_wire_constants(*pair, hertz).validity;
  if (const auto* wire = std::get_if<physics::WireOverGround>(&make.section)) return physics::over_ground_constants(*wire, hertz).validity;
  return of_cable(make, hertz);
}

Validity validity_of(const design::Part& part, double hertz) {
  if (const auto* coil = std::get_if<design::Inductor>(&part.model)) {
    if (coil->wound != nullptr) return physics::coil_at(*coil->wound, hertz).validity;
    if (coil->core != nullptr) return of_core(*coil->core, hertz);
  }
  if (const auto* capacitor = std::get_if<design::Capacitor>(&part.model); capacitor != nullptr && !capacitor->outside.empty())
    return {Verdict::outside, capacitor->outside};
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

bool has_loss(const design::CoreWinding* core) {
  return core != nullptr && std::ranges::any_of(core->permeability.points, [](const auto& point) { return point.imaginary > 0.0; });
}

/// Windings on one core share its loss as they share its flux; where the network cannot say so, each is booked its own current's alone.
void warn_of_shared_cores(const design::Design& design, std::vector<Warning>& warnings) {
  for (const design::CoupledSet& set : design::coupled_sets(design)) {
    if (set.coils.size() != 2 || design::by_shares(design, set)) continue;
    const design::Coupling& coupling = design.couplings[set.couplings.front()];
    const design::Part &first = design.parts[coupling.first.index], &second = design.parts[coupling.second.index];
    const design::CoreWinding *one = design::core_of(first), *other = design::core_of(second);
    if (!has_loss(one) && !has_loss(other)) continue;
    const std::string why = one == nullptr || other == nullptr ? "only one of them is wound on a core"
                            : design::on_one_core(design, set) ? "their factor varies"
                                                               : "their cores are not alike";
    warnings.push_back({"core-not-shared",
                        coupling.name + " (line " + std::to_string(coupling.span.line()) + "): " + first.name + " and " + second.name +
                            " share flux but not the core's loss, since " + why + ": each is booked that of its own current alone",
                        first.name, std::nullopt});
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
  warn_of_shared_cores(design, warnings);
}

}  // namespace wattfall::judge
