// One book a kind of thing: source, parts, loads, boxes, looks; then the totals that must close.
#include "ledger/book.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "ledger/along_line.hpp"
#include "ledger/swr.hpp"
#include "line_heat.hpp"
#include "reading.hpp"
#include "wound_and_paired.hpp"
#include "solve/element_values.hpp"

namespace wattfall::ledger {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

double finite_or_none(double value) { return std::isfinite(value) ? value : none; }

/// 10 lg(more/less); none where either is not above zero.
double decibels(double more, double less) { return more > 0.0 && less > 0.0 ? 10.0 * std::log10(more / less) : none; }

class Bookkeeper : private Reading {
 public:
  /// `pages`: null for all of them.
  Bookkeeper(const design::Design& design, const graph::Network& network, const solve::Solution& solution, const Pages* pages)
      : Reading(design, network, solution), pages_(pages) {}

  Ledger book(const std::vector<design::Look>& looks) {
    Ledger ledger;
    ledger.frequencies_hz = solution_.states.frequencies_hz;
    ledger.source = book_source();
    for (std::size_t p = 0; p < design_.parts.size(); ++p) {
      const PartId id{static_cast<int>(p)};
      if (design::is_load(design_.parts[p])) ledger.loads.push_back(book_load(id));
      else if (asked_for(&Pages::parts, id)) ledger.parts.push_back(book_part(id));
    }
    for (std::size_t b = 0; b < design_.boxes.size(); ++b) {
      const design::BoxId id{static_cast<int>(b)};
      ledger.boxes.push_back(asked_for(&Pages::boxes, id) ? book_box(id) : BoxBook{.box = id});
    }
    for (std::size_t k = 0; k < looks.size(); ++k) ledger.looks.push_back(book_look(looks[k], solution_.looks[k]));
    ledger.totals = total(ledger);
    return ledger;
  }

 private:
  template <class Id>
  bool asked_for(std::vector<Id> Pages::*kind, Id id) const {
    return pages_ == nullptr || std::find((pages_->*kind).begin(), (pages_->*kind).end(), id) != (pages_->*kind).end();
  }

  double heat(PartId part, std::size_t s) const {
    double sum = 0.0;
    for (int e : network_.elements_of(part)) {
      const solve::Flow& flow = solution_.flows[e];
      const bool second = network_.elements[e].role == graph::Element::Role::coupled && network_.elements[e].part != part;
      sum += second ? flow.heat2_w[s] : flow.heat1_w[s];
    }
    return sum * share(s);
  }

  /// Power that enters by one side of a two-port, both conductors against ground.
  double power_into(PartId id, const design::Part& part, std::size_t side, std::size_t s) const {
    double sum = 0.0;
    for (std::size_t t = 2 * side; t < 2 * side + 2; ++t) {
      const int node = part.terminals[t].index;
      if (node != 0) sum += (volts(node, s) * std::conj(amps_into(id, node, s))).real();
    }
    return sum * share(s);
  }

  SourceBook book_source() {
    SourceBook book;
    const design::Source& source = design_.source;
    for (std::size_t s = 0; s < count_; ++s) {
      const Complex ohms = source.impedance_ohm.at(frequency(s), solution_.states.knobs_at(s));
      const Complex reference = source.reference_at(frequency(s), solution_.states.knobs_at(s));
      const Complex v = solution_.source_volts[s], i = solution_.source_amps[s];
      const Complex reflection = (v - std::conj(reference) * i) / (v + reference * i);
      const double swr = swr_of(std::abs(reflection));
      if (!source.foldback.empty()) shares_.push_back(power_left(source, swr));
      const double returned = std::norm(v - std::conj(ohms) * i) / (4.0 * ohms.real());
      book.reference_ohm = reference;
      book.load_impedance_ohm.push_back(v / i);
      book.reflection.push_back(reflection);
      book.swr.push_back(swr);
      book.available_w.push_back(solution_.available_w[s] * share(s));
      book.returned_w.push_back(returned * share(s));
      book.accepted_w.push_back((solution_.available_w[s] - returned) * share(s));
    }
    return book;
  }

  PartBook book_part(PartId id) const {
    const design::Part& part = design_.parts[id.index];
    PartBook book{.part = id};
    const bool selector = std::holds_alternative<design::Selector>(part.model);
    for (std::size_t s = 0; s < count_; ++s) {
      book.heat_w.push_back(heat(id, s));
      double v = 0.0, i = 0.0;
      if (selector) {
        i = std::abs(amps_into(id, part.terminals[0].index, s));
        for (std::size_t t = 1; t < part.terminals.size(); ++t)
          v = std::max(v, std::abs(volts(part.terminals[0].index, s) - volts(part.terminals[t].index, s)));
      } else {
        for (std::size_t side = 0; 2 * side < part.terminals.size(); ++side) {
          v = std::max(v, std::abs(volts(part, side, s)));
          i = std::max(i, end_amps(id, part, side, s));
        }
      }
      book.volts_peak.push_back(peak(v, s));
      book.amps_rms.push_back(rms(i, s));
    }
    if (design::is_two_port(part)) book_sides(book, part);
    book_line(book, part);
    book_core(*this, book);
    book_pair(*this, book);
    return book;
  }

  /// Of the two conductors of a side, the one that is not ground.
  double end_amps(PartId id, const design::Part& part, std::size_t side, std::size_t s) const {
    const int node = part.terminals[2 * side].index != 0 ? part.terminals[2 * side].index : part.terminals[2 * side + 1].index;
    return std::abs(amps_into(id, node, s));
  }

  void book_sides(PartBook& book, const design::Part& part) const {
    for (std::size_t s = 0; s < count_; ++s) {
      const double in = power_into(book.part, part, 0, s), out = -power_into(book.part, part, 1, s);
      book.in_w.push_back(in);
      book.out_w.push_back(out);
      book.loss_db.push_back(decibels(in, out));
    }
  }

  void book_line(PartBook& book, const design::Part& part) const {
    const design::LineMake* make = nullptr;
    bool stub = false;
    if (const auto* line = std::get_if<design::Line>(&part.model)) make = &line->make;
    if (const auto* found = std::get_if<design::Stub>(&part.model)) make = &found->make, stub = true;
    if (make == nullptr) return;
    const int e = network_.elements_of(book.part).front();
    const graph::Element& element = network_.elements[e];
    const solve::Flow& flow = solution_.flows[e];
    const bool walked = asked_for(&Pages::along, book.part);
    for (std::size_t s = 0; s < count_; ++s) {
      const double length = real(make->length_m, s);
      const Complex z0 = flow.impedance_ohm[s];
      // The waves that enter at the ends: V = p + q and Z0 I = p - q there.
      const Complex in = 0.5 * (element_volts(element, 0, s) + z0 * flow.amps1[s]), out = 0.5 * (element_volts(element, 1, s) + z0 * flow.amps2[s]);
      const double arriving = std::abs(std::exp(-flow.gamma_l[s]) * in);
      book.swr_load_end.push_back(stub ? none : swr_of(std::abs(out) / arriving));
      book.matched_heat_per_m.push_back(2.0 * flow.gamma_l[s].real() / length);
      book.matched_loss_db.push_back(20.0 / std::numbers::ln10 * flow.gamma_l[s].real());
      if (!walked) continue;
      const Largest v = largest_along(in, out, flow.gamma_l[s], 1.0);
      const Largest i = largest_along(in, out, flow.gamma_l[s], -1.0);
      book.volts_peak_along.push_back(peak(v.value, s));
      book.amps_rms_along.push_back(rms(i.value / std::abs(z0), s));
      book.volts_at_m.push_back((1.0 - v.place) * length);
      book.amps_at_m.push_back((1.0 - i.place) * length);
      const WorstMetre worst = worst_metre(*make, frequency(s), length, in, out, flow.gamma_l[s], z0);
      book.heat_w_per_m.push_back(worst.heat_w_per_m * share(s));
      book.heat_at_m.push_back((1.0 - worst.place) * length);
    }
  }

  LoadBook book_load(PartId id) const {
    const design::Part& part = design_.parts[id.index];
    const auto& load = std::get<design::Load>(part.model);
    const graph::Element& element = network_.elements[network_.elements_of(id).front()];
    LoadBook book{.part = id};
    for (std::size_t s = 0; s < count_; ++s) {
      const solve::ElementValue value = solve::element_value(design_, element, frequency(s), solution_.states.knobs_at(s));
      const Complex z = value.n / value.d;
      const double absorbed = heat(id, s);
      const double radiated = absorbed * radiated_share(load, z, s) * own_efficiency(load, s);
      book.impedance_ohm.push_back(z);
      book.absorbed_w.push_back(absorbed);
      book.radiated_w.push_back(radiated);
      book.heat_w.push_back(absorbed - radiated);
      book.volts_peak.push_back(peak(std::abs(volts(part, 0, s)), s));
      book.amps_rms.push_back(rms(std::abs(amps_into(id, part.terminals[0].index, s)), s));
    }
    return book;
  }

  /// Of an antenna by its size, what its wire and its ground leave to radiate.
  double own_efficiency(const design::Load& load, std::size_t s) const {
    if (const auto* dipole = std::get_if<physics::Dipole>(&load.impedance)) return physics::dipole_at(*dipole, frequency(s)).efficiency;
    if (const auto* monopole = std::get_if<physics::Monopole>(&load.impedance)) return physics::monopole_at(*monopole, frequency(s)).efficiency;
    return 1.0;
  }

  double radiated_share(const design::Load& load, Complex z, std::size_t s) const {
    if (load.loss_ohms) return z.real() > 0.0 ? std::max(0.0, 1.0 - real(*load.loss_ohms, s) / z.real()) : 0.0;
    if (const auto* value = std::get_if<design::Value>(&load.radiates)) return real(*value, s);
    const auto& table = std::get<design::Table>(load.radiates);
    const auto& keys = table.frequencies_hz;
    if (frequency(s) <= keys.front()) return table.values.front().real();
    if (frequency(s) >= keys.back()) return table.values.back().real();
    const std::size_t i = static_cast<std::size_t>(std::upper_bound(keys.begin(), keys.end(), frequency(s)) - keys.begin());
    const double between = (frequency(s) - keys[i - 1]) / (keys[i] - keys[i - 1]);
    return (table.values[i - 1] + between * (table.values[i] - table.values[i - 1])).real();
  }

  bool within(design::BoxId box, design::BoxId outer) const {
    for (; box; box = design_.boxes[box.index].parent)
      if (box == outer) return true;
    return false;
  }

  BoxBook book_box(design::BoxId id) const {
    const design::Box& box = design_.boxes[id.index];
    BoxBook book{.box = id};
    std::vector<PartId> members;
    for (std::size_t p = 0; p < design_.parts.size(); ++p)
      if (within(design_.parts[p].box, id)) members.push_back({static_cast<int>(p)});
    const auto power = [&](design::NodeId node, std::size_t s) {
      Complex amps = 0.0;
      for (PartId member : members) amps += amps_into(member, node.index, s);
      return (volts(node.index, s) * std::conj(amps)).real() * share(s);
    };
    for (std::size_t s = 0; s < count_; ++s) {
      double sum = 0.0;
      for (PartId member : members)
        if (!design::is_load(design_.parts[member.index])) sum += heat(member, s);
      book.heat_w.push_back(sum);
      book.in_w.push_back(power(box.ports.front(), s));
      book.out_w.push_back(box.ports.size() > 1 ? -power(box.ports.back(), s) : 0.0);
      book.loss_db.push_back(decibels(book.in_w.back(), book.out_w.back()));
    }
    return book;
  }

  LookBook book_look(const design::Look& look, const solve::LookResponse& response) const {
    LookBook book{.look = look};
    for (std::size_t s = 0; s < count_; ++s) {
      const Complex into = response.admittance_into[s], behind = response.admittance_behind[s];
      book.toward_load_ohm.push_back(1.0 / into);
      book.toward_source_ohm.push_back(1.0 / behind);
      // 1 - |(Za - conj Zb)/(Za + Zb)|^2 = 4 Ga Gb/|Ya + Yb|^2, which needs no infinite impedance.
      const double passed = 4.0 * into.real() * behind.real() / std::norm(into + behind);
      book.mismatch_db.push_back(passed > 0.0 ? std::max(0.0, -10.0 * std::log10(passed)) : none);
    }
    return book;
  }

  Totals total(const Ledger& ledger) const {
    Totals totals;
    totals.available_w = ledger.source.available_w;
    totals.returned_w = ledger.source.returned_w;
    for (std::size_t s = 0; s < count_; ++s) {
      double absorbed = 0.0, radiated = 0.0;
      for (const LoadBook& load : ledger.loads) {
        absorbed += load.absorbed_w[s];
        radiated += load.radiated_w[s];
      }
      totals.absorbed_w.push_back(absorbed);
      totals.radiated_w.push_back(radiated);
      totals.efficiency.push_back(finite_or_none(radiated / totals.available_w[s]));
      totals.total_loss_db.push_back(decibels(totals.available_w[s], radiated));
    }
    if (pages_ == nullptr) total_heat(ledger, totals);
    return totals;
  }

  void total_heat(const Ledger& ledger, Totals& totals) const {
    for (std::size_t s = 0; s < count_; ++s) {
      double heat = 0.0, common = 0.0;
      for (const PartBook& part : ledger.parts) {
        heat += part.heat_w[s];
        if (std::holds_alternative<design::Choke>(design_.parts[part.part.index].model)) common += part.heat_w[s];
      }
      totals.heat_w.push_back(heat);
      totals.common_mode_heat_w.push_back(common);
      totals.residual_w.push_back(totals.available_w[s] - totals.returned_w[s] - heat - totals.absorbed_w[s]);
    }
  }

  const Pages* pages_;
};

}  // namespace

double power_left(const design::Source& source, double swr) {
  const auto& table = source.foldback;
  if (table.empty()) return 1.0;
  if (std::isnan(swr) || swr >= table.back().first) return table.back().second;
  if (swr <= table.front().first) return table.front().second;
  std::size_t i = 1;
  while (table[i].first < swr) ++i;
  const double between = (swr - table[i - 1].first) / (table[i].first - table[i - 1].first);
  return table[i - 1].second + between * (table[i].second - table[i - 1].second);
}

Ledger book(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
            const std::vector<design::Look>& looks) {
  return Bookkeeper(design, network, solution, nullptr).book(looks);
}

Ledger book(const design::Design& design, const graph::Network& network, const solve::Solution& solution,
            const std::vector<design::Look>& looks, const Pages& pages) {
  return Bookkeeper(design, network, solution, &pages).book(looks);
}

}  // namespace wattfall::ledger
