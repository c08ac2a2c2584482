#include "judge/figures.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "ledger/swr.hpp"

namespace wattfall::judge {
namespace {

using design::Design;
using design::Figure;
using design::FigureKind;
using ledger::Ledger;
constexpr double none = std::numeric_limits<double>::quiet_NaN();

bool at_node(FigureKind kind) {
  switch (kind) {
    case FigureKind::swr_at:
    case FigureKind::return_loss_at:
    case FigureKind::resistance_at:
    case FigureKind::reactance_at:
    case FigureKind::mismatch_at:
    case FigureKind::width_of_swr_at: return true;
    default: return false;
  }
}

bool same(const design::Look& a, const design::Look& b) { return a.node == b.node && a.into == b.into; }

/// |Z - conj R|/|Z + R|.
double reflection_at(const Figure& figure, const Design& design, const Ledger& ledger, const ledger::LookBook& look, std::size_t state) {
  // The reference may vary with frequency but not with knobs: the resolver sees to that.
  const std::vector<double> knobs = design.starting_knobs();
  const std::complex<double> r = figure.reference ? figure.reference->at(ledger.frequencies_hz[state], knobs) : ledger.source.reference_ohm;
  return ledger::reflection_of(look.toward_load_ohm[state], r);
}

double look_figure(const Figure& figure, const Design& design, const Ledger& ledger, std::size_t state) {
  const auto found = std::find_if(ledger.looks.begin(), ledger.looks.end(),
                                  [&](const ledger::LookBook& book) { return same(book.look, figure.look); });
  if (found == ledger.looks.end()) return none;
  switch (figure.kind) {
    case FigureKind::resistance_at: return found->toward_load_ohm[state].real();
    case FigureKind::reactance_at: return found->toward_load_ohm[state].imag();
    case FigureKind::mismatch_at: return found->mismatch_db[state];
    default: break;
  }
  const double reflection = reflection_at(figure, design, ledger, *found, state);
  if (figure.kind == FigureKind::return_loss_at) return reflection > 0.0 ? -20.0 * std::log10(reflection) : none;
  return ledger::swr_of(reflection);
}

const ledger::PartBook* part_book(const Ledger& ledger, design::PartId part) {
  for (const ledger::PartBook& book : ledger.parts)
    if (book.part == part) return &book;
  return nullptr;
}

const ledger::LoadBook* load_book(const Ledger& ledger, design::PartId part) {
  for (const ledger::LoadBook& book : ledger.loads)
    if (book.part == part) return &book;
  return nullptr;
}

double of_load(const Figure& figure, const ledger::LoadBook& book, std::size_t state) {
  switch (figure.kind) {
    case FigureKind::power_into: return book.absorbed_w[state];
    case FigureKind::radiated_from: return book.radiated_w[state];
    case FigureKind::heat_in: return book.heat_w[state];
    case FigureKind::peak_volts_across: return book.volts_peak[state];
    case FigureKind::rms_amps_through: return book.amps_rms[state];
    default: return none;
  }
}

double of_part(const Figure& figure, const ledger::PartBook& book, std::size_t state) {
  switch (figure.kind) {
    case FigureKind::power_into: return book.in_w.empty() ? book.heat_w[state] : book.in_w[state];
    case FigureKind::heat_in: return book.heat_w[state];
    case FigureKind::loss_in: return book.loss_db.empty() ? none : book.loss_db[state];
    case FigureKind::peak_volts_across: return book.volts_peak[state];
    case FigureKind::rms_amps_through: return book.amps_rms[state];
    case FigureKind::peak_volts_on: return book.volts_peak_along.empty() ? none : book.volts_peak_along[state];
    case FigureKind::rms_amps_on: return book.amps_rms_along.empty() ? none : book.amps_rms_along[state];
    case FigureKind::swr_on: return book.swr_load_end.empty() ? none : book.swr_load_end[state];
    default: return none;
  }
}

double of_box(const Figure& figure, const ledger::BoxBook& book, std::size_t state) {
  switch (figure.kind) {
    case FigureKind::power_into: return book.in_w[state];
    case FigureKind::heat_in: return book.heat_w[state];
    case FigureKind::loss_in: return book.loss_db[state];
    default: return none;
  }
}

}  // namespace

std::vector<design::Look> looks_of(const Design& design) {
  std::vector<design::Look> looks;
  const auto want = [&looks](const design::Look& look) {
    if (std::none_of(looks.begin(), looks.end(), [&](const design::Look& known) { return same(known, look); })) looks.push_back(look);
  };
  const auto want_figure = [&](const Figure& figure) {
    if (at_node(figure.kind)) want(figure.look);
  };
  for (const design::Plane& plane : design.planes) want(plane.look);
  for (const design::Requirement& requirement : design.requirements) want_figure(requirement.figure);
  for (const Figure& figure : design.figures) want_figure(figure);
  for (const design::Tune& tune : design.tunes) {
    want_figure(tune.goal);
    for (const design::Requirement& requirement : tune.keeping) want_figure(requirement.figure);
  }
  return looks;
}

ledger::Pages pages_of(std::span<const Figure> figures) {
  ledger::Pages pages;
  for (const Figure& figure : figures) {
    if (figure.box) pages.boxes.push_back(figure.box);
    else if (figure.part) pages.parts.push_back(figure.part);
    if (figure.kind == FigureKind::peak_volts_on || figure.kind == FigureKind::rms_amps_on) pages.along.push_back(figure.part);
  }
  return pages;
}

double figure_in_state(const Figure& figure, const Design& design, const Ledger& ledger, std::size_t state) {
  if (figure.kind == FigureKind::total_loss) return ledger.totals.total_loss_db[state];
  if (figure.kind == FigureKind::efficiency) return ledger.totals.efficiency[state];
  if (at_node(figure.kind)) return look_figure(figure, design, ledger, state);
  if (figure.box) return of_box(figure, ledger.boxes[figure.box.index], state);
  if (const auto* book = load_book(ledger, figure.part)) return of_load(figure, *book, state);
  if (const auto* book = part_book(ledger, figure.part)) return of_part(figure, *book, state);
  return none;
}

double width_hz(std::span<const double> swr, std::span<const double> hertz, double bound) {
  std::size_t best = swr.size();
  for (std::size_t i = 0; i < swr.size(); ++i)
    if (!std::isnan(swr[i]) && (best == swr.size() || swr[i] < swr[best])) best = i;
  if (best == swr.size() || swr[best] > bound) return none;
  const auto edge = [&](int step) {
    std::size_t i = best;
    while (true) {
      const std::size_t next = i + static_cast<std::size_t>(step);  // wraps below zero to a huge number
      if (next >= swr.size()) return hertz[i];
      if (std::isnan(swr[next])) return hertz[i];
      if (swr[next] > bound) return hertz[i] + (hertz[next] - hertz[i]) * (bound - swr[i]) / (swr[next] - swr[i]);
      i = next;
    }
  };
  return edge(1) - edge(-1);
}

std::vector<double> over_sweep(const Figure& figure, const Design& design, const Ledger& ledger) {
  std::vector<double> values;
  for (std::size_t s = 0; s < ledger.frequencies_hz.size(); ++s) values.push_back(figure_in_state(figure, design, ledger, s));
  if (figure.kind == FigureKind::width_of_swr_at)
    std::fill(values.begin(), values.end(), width_hz(values, ledger.frequencies_hz, figure.below));
  return values;
}

std::string unit_of(FigureKind kind) {
  switch (kind) {
    case FigureKind::return_loss_at:
    case FigureKind::mismatch_at:
    case FigureKind::loss_in:
    case FigureKind::total_loss: return "dB";
    case FigureKind::resistance_at:
    case FigureKind::reactance_at: return "ohm";
    case FigureKind::power_into:
    case FigureKind::radiated_from:
    case FigureKind::heat_in: return "W";
    case FigureKind::peak_volts_across:
    case FigureKind::peak_volts_on: return "V";
    case FigureKind::rms_amps_through:
    case FigureKind::rms_amps_on: return "A";
    case FigureKind::width_of_swr_at: return "Hz";
    default: return "";
  }
}

}  // namespace wattfall::judge
