#include "wound_and_paired.hpp"

#include <limits>

#include "physics/toroid.hpp"
#include "solve/element_values.hpp"

namespace wattfall::ledger {
namespace {

using graph::Element;

/// A winding whose flux is that of the volts across one element.
struct Winding {
  const design::CoreWinding* core = nullptr;
  int element = -1;
};

int element_of_role(const Reading& reading, PartId part, Element::Role role) {
  for (const int e : reading.network().elements_of(part))
    if (reading.network().elements[e].role == role) return e;
  return -1;
}

Winding winding_of(const Reading& reading, PartId id) {
  const auto& model = reading.design().parts[id.index].model;
  if (const auto* coil = std::get_if<design::Inductor>(&model)) return {coil->core.get(), -1};
  if (const auto* choke = std::get_if<design::Choke>(&model))
    return {choke->core.get(), element_of_role(reading, id, Element::Role::common_mode)};
  if (const auto* transformer = std::get_if<design::Transformer>(&model))
    return {transformer->wound.get(), element_of_role(reading, id, Element::Role::core)};
  return {};
}

double winding_volts(const Reading& reading, PartId id, const Winding& winding, std::size_t s) {
  if (winding.element < 0) return std::abs(reading.volts(reading.design().parts[id.index], 0, s));
  return std::abs(reading.element_volts(reading.network().elements[winding.element], 0, s));
}

/// Of an inductor by its resistances, on a core with others all but its own loss; of a transformer by its elements; a choke's is all the core's.
double core_heat(const Reading& reading, const PartBook& book, const Winding& winding, std::size_t s) {
  const design::Part& part = reading.design().parts[book.part.index];
  if (std::holds_alternative<design::Inductor>(part.model) && element_of_role(reading, book.part, Element::Role::own_flux) >= 0) {
    const int beside = element_of_role(reading, book.part, Element::Role::own_loss);
    return book.heat_w[s] - (beside < 0 ? 0.0 : reading.solution().flows[beside].heat1_w[s] * reading.share(s));
  }
  if (std::holds_alternative<design::Inductor>(part.model))
    return book.heat_w[s] * solve::core_share(part, reading.frequency(s), reading.solution().states.knobs_at(s));
  return reading.solution().flows[winding.element].heat1_w[s] * reading.share(s);
}

/// The side of a part whose two conductors are both clear of ground, the far one first; -1 where there is none.
int clear_side(const design::Part& part) {
  for (const int side : {1, 0})
    if (part.terminals[2 * side].index != 0 && part.terminals[2 * side + 1].index != 0) return side;
  return -1;
}

/// What a difference of two computed amps has of its own, as a share of both: some tens of units of the last place.
constexpr double rounding = 1e-14;

bool carries_common_mode(const design::Part& part) {
  const auto* line = std::get_if<design::Line>(&part.model);
  return std::holds_alternative<design::Choke>(part.model) || (line != nullptr && line->common_impedance);
}

}  // namespace

void book_core(const Reading& reading, PartBook& book) {
  const Winding winding = winding_of(reading, book.part);
  if (winding.core == nullptr) return;
  for (std::size_t s = 0; s < reading.count(); ++s) {
    const double core_w = core_heat(reading, book, winding, s);
    book.core_heat_w.push_back(core_w);
    book.wire_heat_w.push_back(book.heat_w[s] - core_w);
    if (!winding.core->ring) continue;
    const double volts_peak = reading.peak(winding_volts(reading, book.part, winding, s), s);
    book.flux_peak_t.push_back(
        physics::peak_flux_density(*winding.core->ring, winding.core->turns, volts_peak, reading.frequency(s)).inner_edge_t);
  }
}

void book_pair(const Reading& reading, PartBook& book) {
  const design::Part& part = reading.design().parts[book.part.index];
  if (!carries_common_mode(part)) return;
  const int side = clear_side(part);
  if (side < 0) return;
  const int a = part.terminals[2 * side].index, b = part.terminals[2 * side + 1].index;
  const double out = side == 1 ? -1.0 : 1.0;  // what leaves by the far side, or enters by the near one
  for (std::size_t s = 0; s < reading.count(); ++s) {
    const Complex into_a = reading.amps_into(book.part, a, s), into_b = reading.amps_into(book.part, b, s);
    Complex common = into_a + into_b;
    const Complex middle = 0.5 * (reading.volts(a, s) + reading.volts(b, s));
    // Amps that cancel but for their rounding are none, and heat a choke with nothing.
    if (std::abs(common) <= rounding * (std::abs(into_a) + std::abs(into_b))) {
      common = 0.0;
      if (std::holds_alternative<design::Choke>(part.model)) book.heat_w[s] = 0.0;
      if (!book.core_heat_w.empty()) book.core_heat_w[s] = book.wire_heat_w[s] = 0.0;
    }
    book.common_amps_rms.push_back(reading.rms(std::abs(common), s));
    book.imbalance.push_back(common == 0.0 ? 0.0 : std::abs(common) / std::abs(into_a - into_b));
    book.common_w.push_back(out * (middle * std::conj(common)).real() * reading.share(s));
  }
}

}  // namespace wattfall::ledger
