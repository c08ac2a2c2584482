// Series after series, as the ledger has them; only the SWR of a plane, and where each part's volts, amps and heat are
// largest, are found here.
#include "books_document.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <variant>

#include "ledger/swr.hpp"
#include "part_values.hpp"
#include "report/moments.hpp"
#include "tuning_document.hpp"

namespace wattfall::report {
namespace {

std::vector<std::string> node_names(const design::Design& design, const std::vector<design::NodeId>& nodes) {
  std::vector<std::string> names;
  for (const design::NodeId node : nodes) names.push_back(design.nodes[node.index].name);
  return names;
}

void write_source(JsonText& out, const VariantResult& variant) {
  const ledger::SourceBook& book = variant.ledger->source;
  const design::Source& source = variant.design->source;
  out.open('{');
  out.field("name", source.name);
  out.field("node", variant.design->nodes[source.node.index].name);
  out.field("nodes", node_names(*variant.design, {source.node, source.other}));
  out.field("available_w", book.available_w);
  out.field("accepted_w", book.accepted_w);
  out.field("returned_w", book.returned_w);
  out.field("load_impedance_ohm", book.load_impedance_ohm);
  out.field("reflection", book.reflection);
  out.field("swr", book.swr);
  // The usual reference is a plain resistance and stands as a number, as contracts with other programs have it.
  if (book.reference_ohm.imag() == 0.0)
    out.field("reference_ohm", book.reference_ohm.real());
  else
    out.field("reference_ohm", book.reference_ohm);
  out.close();
}

/// The largest of a series and its frequency; `at_m` adds where along a line.
void write_peak(JsonText& out, const std::string& name, const std::string& unit, const ledger::Series& series,
                const ledger::Series& frequencies_hz, const ledger::Series& at_m = {}) {
  if (series.empty()) return;
  const std::size_t peak = peak_index(series);
  out.field(name + unit, series[peak]);
  out.field(name + "_at_hz", frequencies_hz[peak]);
  if (!at_m.empty()) out.field(name + "_at_m", at_m[peak]);
}

template <class Book>
void write_highest(JsonText& out, const Book& book, const ledger::Series& frequencies_hz) {
  out.key("highest");
  out.open('{', JsonText::Layout::one_line);
  if constexpr (requires { book.volts_at_m; }) {
    const bool line = !book.volts_peak_along.empty();
    write_peak(out, "volts", "_peak", line ? book.volts_peak_along : book.volts_peak, frequencies_hz, book.volts_at_m);
    write_peak(out, "amps", "_rms", line ? book.amps_rms_along : book.amps_rms, frequencies_hz, book.amps_at_m);
    if (line) write_peak(out, "heat_per_m", "_w", book.heat_w_per_m, frequencies_hz, book.heat_at_m);
  } else {
    write_peak(out, "volts", "_peak", book.volts_peak, frequencies_hz);
    write_peak(out, "amps", "_rms", book.amps_rms, frequencies_hz);
  }
  write_peak(out, "heat", "_w", book.heat_w, frequencies_hz);
  out.close();
}

/// What a line carries at most: without reflection, and as it stands, where heat is proportional to the power.
ledger::Series rated_matched_w(const ledger::PartBook& book, double limit_w_per_m) {
  ledger::Series watts;
  for (const double share : book.matched_heat_per_m) watts.push_back(limit_w_per_m / share);
  return watts;
}
ledger::Series rated_w(const ledger::PartBook& book, double limit_w_per_m) {
  ledger::Series watts;
  for (std::size_t s = 0; s < book.in_w.size(); ++s) watts.push_back(book.in_w[s] * limit_w_per_m / book.heat_w_per_m[s]);
  return watts;
}

void write_core(JsonText& out, const ledger::PartBook& book, const design::CoreWinding& core) {
  out.field("core_heat_w", book.core_heat_w);
  out.field("wire_heat_w", book.wire_heat_w);
  if (book.flux_peak_t.empty()) return;
  out.field("flux_peak_t", book.flux_peak_t);
  out.field("saturation_t", core.saturation_t);
}

void write_pair(JsonText& out, const ledger::PartBook& book) {
  out.field("common_amps_rms", book.common_amps_rms);
  out.field("imbalance", book.imbalance);
  out.field("common_w", book.common_w);
}

void write_line(JsonText& out, const ledger::PartBook& book, const design::Part& part) {
  out.field("volts_peak_along", book.volts_peak_along);
  out.field("amps_rms_along", book.amps_rms_along);
  out.field("matched_loss_db", book.matched_loss_db);
  out.field("swr_load_end", book.swr_load_end);
  out.field("volts_at_m", book.volts_at_m);
  out.field("amps_at_m", book.amps_at_m);
  out.field("heat_w_per_m", book.heat_w_per_m);
  out.field("heat_at_m", book.heat_at_m);
  if (part.limits.watts_per_m) {
    out.field("rated_matched_w", rated_matched_w(book, *part.limits.watts_per_m));
    if (!book.in_w.empty()) out.field("rated_w", rated_w(book, *part.limits.watts_per_m));
  }
  const auto* line = std::get_if<design::Line>(&part.model);
  if (line == nullptr) return;
  out.field("cable", line->make.cable);
  if (line->make.length_m.constant()) out.field("length_m", line->make.length_m.constant_value().real());
}

void write_samples(JsonText& out, const ledger::LineSamples& samples, const ledger::Series& frequencies_hz) {
  out.open('{');
  out.field("point", samples.state);
  out.field("frequency_hz", frequencies_hz[samples.state]);
  out.field("from_load_m", samples.from_load_m);
  out.field("volts_peak", samples.volts_peak);
  out.field("amps_rms", samples.amps_rms);
  out.close();
}

void write_along(JsonText& out, const ledger::PartBook& book, const VariantResult& variant) {
  for (const ledger::LineCurve& curve : variant.line_curves) {
    if (curve.part != book.part) continue;
    out.key("along");
    out.open('[');
    for (const ledger::LineSamples& samples : curve.at) write_samples(out, samples, variant.ledger->frequencies_hz);
    out.close();
  }
}

void write_part(JsonText& out, const ledger::PartBook& book, const VariantResult& variant) {
  const design::Part& part = variant.design->parts[book.part.index];
  out.open('{');
  out.field("name", part.name);
  out.field("kind", part.kind);
  out.field("nodes", node_names(*variant.design, part.terminals));
  out.field("line", part.span.line());
  out.field("heat_w", book.heat_w);
  out.field("volts_peak", book.volts_peak);
  out.field("amps_rms", book.amps_rms);
  if (!book.in_w.empty()) {
    out.field("in_w", book.in_w);
    out.field("out_w", book.out_w);
    out.field("loss_db", book.loss_db);
  }
  if (!book.volts_peak_along.empty()) write_line(out, book, part);
  if (const design::CoreWinding* core = design::core_of(part)) write_core(out, book, *core);
  if (!book.common_w.empty()) write_pair(out, book);
  write_values(out, part, variant);
  write_box_name(out, part, *variant.design);
  write_along(out, book, variant);
  if (!variant.ledger->frequencies_hz.empty()) write_highest(out, book, variant.ledger->frequencies_hz);
  out.close();
}

void write_load(JsonText& out, const ledger::LoadBook& book, const VariantResult& variant) {
  const design::Part& part = variant.design->parts[book.part.index];
  out.open('{');
  out.field("name", part.name);
  out.field("nodes", node_names(*variant.design, part.terminals));
  out.field("impedance_ohm", book.impedance_ohm);
  out.field("absorbed_w", book.absorbed_w);
  out.field("radiated_w", book.radiated_w);
  out.field("heat_w", book.heat_w);
  out.field("volts_peak", book.volts_peak);
  out.field("amps_rms", book.amps_rms);
  out.field("line", part.span.line());
  write_box_name(out, part, *variant.design);
  if (!variant.ledger->frequencies_hz.empty()) write_highest(out, book, variant.ledger->frequencies_hz);
  out.close();
}

void write_totals(JsonText& out, const ledger::Totals& totals) {
  out.open('{');
  out.field("available_w", totals.available_w);
  out.field("returned_w", totals.returned_w);
  out.field("heat_w", totals.heat_w);
  out.field("absorbed_w", totals.absorbed_w);
  out.field("radiated_w", totals.radiated_w);
  out.field("total_loss_db", totals.total_loss_db);
  out.field("efficiency", totals.efficiency);
  out.field("residual_w", totals.residual_w);
  out.field("common_mode_heat_w", totals.common_mode_heat_w);
  out.close();
}

/// SWR of impedances against a reference; infinite where nothing is taken.
ledger::Series swr_against(const ledger::ComplexSeries& impedances, std::complex<double> reference) {
  ledger::Series swr;
  for (const std::complex<double> impedance : impedances)
    swr.push_back(ledger::swr_of(ledger::reflection_of(impedance, reference)));
  return swr;
}

void write_plane(JsonText& out, const design::Plane& plane, const ledger::LookBook& book,
                 const VariantResult& variant) {
  out.open('{');
  out.field("name", plane.name);
  out.field("node", variant.design->nodes[plane.look.node.index].name);
  out.key("into");
  plane.look.into ? out.value(variant.design->parts[plane.look.into.index].name) : out.null();
  out.field("toward_load_ohm", book.toward_load_ohm);
  out.field("toward_source_ohm", book.toward_source_ohm);
  out.field("mismatch_db", book.mismatch_db);
  out.field("swr", swr_against(book.toward_load_ohm, variant.ledger->source.reference_ohm));
  out.close();
}

/// The end of a knob's key that says its unit. A plain number is a "choice" where it turns a selector.
std::string unit_suffix(const Dimension& dim) {
  if (dim == dimension::capacitance) return "_f";
  if (dim == dimension::inductance) return "_h";
  if (dim == dimension::resistance) return "_ohm";
  if (dim == dimension::length) return "_m";
  if (dim == dimension::frequency) return "_hz";
  if (dim == dimension::angle) return "_rad";
  if (dim == dimension::level) return "_db";
  if (dim == dimension::conductance) return "_s";
  return "";
}

const design::Part* selector_of(const design::Design& design, const design::Knob& knob) {
  for (const design::Part& part : design.parts) {
    if (part.name == knob.name && std::holds_alternative<design::Selector>(part.model)) return &part;
  }
  return nullptr;
}

void write_choices(JsonText& out, const design::Design& design, const design::Part& selector, const Setting& setting) {
  std::vector<std::size_t> choices;
  for (const double value : setting.values) choices.push_back(static_cast<std::size_t>(std::lround(value)));
  out.field("choice", choices);
  const std::vector<design::NodeId> nodes(selector.terminals.begin() + 1, selector.terminals.end());
  out.field("choice_nodes", node_names(design, nodes));
}

void write_setting(JsonText& out, const Setting& setting, const design::Design& design) {
  const design::Knob& knob = design.knobs[setting.knob.index];
  const std::string suffix = unit_suffix(knob.dim);
  out.open('{');
  out.field("knob", knob.name);
  if (const design::Part* selector = selector_of(design, knob)) {
    write_choices(out, design, *selector, setting);
  } else {
    out.field("value" + suffix, setting.values);
    out.field("at_end", setting.at_end);
    if (knob.choices.empty()) {
      out.field("lower" + suffix, knob.lower);
      out.field("upper" + suffix, knob.upper);
    } else {
      out.field("lower" + suffix, knob.choices.front());
      out.field("upper" + suffix, knob.choices.back());
      // A dial's steps say less one by one.
      if (knob.step)
        out.field("step" + suffix, *knob.step);
      else if (!knob.made.empty())
        write_made(out, knob, {setting.values.begin(), setting.values.end()});
      else
        out.field("choices" + suffix, knob.choices);
    }
  }
  out.close();
}

template <class Things, class Write>
void write_all(JsonText& out, std::string_view key, const Things& things, const Write& write) {
  out.key(key);
  out.open('[');
  for (const auto& thing : things) write(thing);
  out.close();
}

}  // namespace

void write_books(JsonText& out, const VariantResult& variant) {
  const ledger::Ledger& books = *variant.ledger;
  out.key("sources");
  out.open('[');
  write_source(out, variant);
  out.close();
  write_all(out, "parts", books.parts, [&](const ledger::PartBook& book) { write_part(out, book, variant); });
  write_all(out, "loads", books.loads, [&](const ledger::LoadBook& book) { write_load(out, book, variant); });
  out.key("totals");
  write_totals(out, books.totals);
  out.key("planes");
  out.open('[');
  for (std::size_t i = 0; i < variant.plane_looks.size(); ++i) {
    write_plane(out, variant.design->planes[i], books.looks[variant.plane_looks[i]], variant);
  }
  out.close();
  write_all(out, "settings", variant.settings, [&](const Setting& s) { write_setting(out, s, *variant.design); });
}

void write_couplings(JsonText& out, const VariantResult& variant) {
  const design::Design& design = *variant.design;
  out.open('[');
  for (const design::Coupling& coupling : design.couplings) {
    out.open('{', JsonText::Layout::one_line);
    out.field("name", coupling.name);
    out.field("parts", std::vector<std::string>{design.parts[coupling.first.index].name, design.parts[coupling.second.index].name});
    out.key("factor");
    coupling.factor.constant() ? out.value(coupling.factor.constant_value().real()) : out.null();
    out.close();
  }
  out.close();
}

void write_boxes(JsonText& out, const VariantResult& variant) {
  out.open('[');
  for (const ledger::BoxBook& book : variant.ledger->boxes) {
    const design::Box& box = variant.design->boxes[book.box.index];
    out.open('{');
    out.field("name", box.name);
    out.field("kind", box.kind);
    out.field("in_w", book.in_w);
    out.field("out_w", book.out_w);
    out.field("loss_db", book.loss_db);
    out.field("heat_w", book.heat_w);
    out.close();
  }
  out.close();
}

}  // namespace wattfall::report
