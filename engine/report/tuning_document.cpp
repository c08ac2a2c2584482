// Each search with its matches, and how far frequency and knobs may move; then the dial table.
#include "tuning_document.hpp"

#include <algorithm>
#include <set>
#include <string_view>
#include <variant>

#include "report/spelling.hpp"

namespace wattfall::report {
namespace {

using Layout = JsonText::Layout;

/// SI unit of a knob; empty for plain numbers and choices.
std::string unit_of_knob(const Dimension& dim) {
  const std::pair<Dimension, const char*> units[] = {{dimension::capacitance, "F"}, {dimension::inductance, "H"}, {dimension::resistance, "ohm"},
                                                     {dimension::length, "m"},      {dimension::frequency, "Hz"}, {dimension::angle, "rad"},
                                                     {dimension::level, "dB"},      {dimension::conductance, "S"}};
  for (const auto& [known, unit] : units)
    if (dim == known) return unit;
  return "";
}

void write_knob(JsonText& out, const design::Design& design, design::KnobId id) {
  const design::Knob& knob = design.knobs[id.index];
  out.field("name", knob.name);
  out.field("unit", unit_of_knob(knob.dim));
  for (const design::Part& part : design.parts) {
    if (part.name != knob.name || !std::holds_alternative<design::Selector>(part.model)) continue;
    std::vector<std::string> nodes;
    for (std::size_t t = 1; t < part.terminals.size(); ++t) nodes.push_back(design.nodes[part.terminals[t].index].name);
    out.field("choice_nodes", nodes);
  }
}

/// A knob of a search; of preferred values, what those of its matches are made of.
void write_searched(JsonText& out, const design::Design& design, const tune::Search& search, std::size_t k) {
  const design::KnobId id = design.tunes[search.statement].knobs[k];
  write_knob(out, design, id);
  const design::Knob& knob = design.knobs[id.index];
  if (knob.made.empty()) return;
  std::set<double> values;
  for (const tune::Match& match : search.matches) values.insert(match.values[k]);
  write_made(out, knob, values);
}

void write_leeway(JsonText& out, const tune::Leeway& leeway, const std::string& suffix) {
  out.field("swr", leeway.swr);
  if (leeway.range) {
    out.field("lower" + suffix, leeway.range->lower);
    out.field("upper" + suffix, leeway.range->upper);
    out.field("lower_open", leeway.range->lower_open);
    out.field("upper_open", leeway.range->upper_open);
  }
}

void write_strain(JsonText& out, const std::string& figure, const std::string& part, const tune::Strain& strain) {
  out.field(figure, strain.value);
  out.field(part, strain.part);
}

void write_match(JsonText& out, const tune::Match& match) {
  out.open('{', Layout::one_line);
  out.field("values", match.values);
  out.field("at_end", match.at_end);
  out.field("load_w", match.load_w);
  out.field("radiated_w", match.radiated_w);
  out.field("returned_w", match.returned_w);
  out.field("heat_w", match.heat_w);
  out.field("swr", match.swr);
  write_strain(out, "volts_peak", "volts_part", match.volts_peak);
  write_strain(out, "amps_rms", "amps_part", match.amps_rms);
  write_strain(out, "hottest_w", "hottest_part", match.hottest_w);
  out.key("widths");
  out.open('[', Layout::one_line);
  for (const tune::Leeway& width : match.widths_hz) {
    out.open('{', Layout::one_line);
    write_leeway(out, width, "_hz");
    out.close();
  }
  out.close();
  out.close();
}

void write_leeways(JsonText& out, const tune::Search& search) {
  out.open('[');
  for (std::size_t k = 0; k < search.knobs.size(); ++k)
    for (const tune::Leeway& leeway : search.knobs[k].ranges) {
      out.open('{', Layout::one_line);
      out.field("knob", k);
      write_leeway(out, leeway, "");
      out.close();
    }
  out.close();
}

void write_limits(JsonText& out, const tune::Search& search) {
  out.open('[');
  for (const tune::Limit& limit : search.limits) {
    out.open('{', Layout::one_line);
    out.field("kind", limit.kind);
    out.field("load_w", limit.load_w);
    out.field("reflection", limit.reflection);
    out.field("text", limit.text);
    out.close();
  }
  out.close();
}

void write_more_room(JsonText& out, const tune::Search& search) {
  out.open('[');
  for (const tune::MoreRoom& room : search.more_room) {
    out.open('{', Layout::one_line);
    if (room.knob) out.field("knob", *room.knob);
    if (room.demand) out.field("keeping", *room.demand);
    out.field("gain", room.gain);
    out.field("text", room.text);
    out.close();
  }
  out.close();
}

void write_ridge(JsonText& out, const tune::Ridge& ridge) {
  out.open('{');
  out.field("held", ridge.held);
  out.field("best", ridge.best);
  out.key("settings");
  out.open('[');
  for (const tune::Match& match : ridge.settings) write_match(out, match);
  out.close();
  out.close();
}

void write_search(JsonText& out, const design::Design& design, const tune::Search& search) {
  const design::Tune& statement = design.tunes[search.statement];
  out.open('{');
  constexpr const char* when[] = {"at", "each", "over"};
  out.field("line", statement.span.line());
  out.field("when", when[static_cast<int>(statement.when)]);
  out.field("goal", (statement.most ? "most " : "least ") + statement.goal.text);
  out.field("frequencies_hz", search.frequencies_hz);
  out.key("knobs");
  out.open('[');
  for (std::size_t k = 0; k < statement.knobs.size(); ++k) {
    out.open('{', Layout::one_line);
    write_searched(out, design, search, k);
    out.close();
  }
  out.close();
  out.field("certainty", search.certainty);
  out.field("certain_why", search.certain_why);
  out.field("why", search.why);
  out.key("matches");
  out.open('[');
  for (const tune::Match& match : search.matches) write_match(out, match);
  out.close();
  out.key("leeway");
  write_leeways(out, search);
  out.key("limits");
  write_limits(out, search);
  out.key("more_room");
  write_more_room(out, search);
  if (search.ridge) {
    out.key("ridge");
    write_ridge(out, *search.ridge);
  }
  out.close();
}

/// The part on which most volts stand in each state; of a line, along it.
struct Highest {
  ledger::Series volts_peak;
  std::vector<std::string> part;
};

Highest highest_of(const VariantResult& variant) {
  Highest highest;
  for (std::size_t s = 0; s < variant.ledger->frequencies_hz.size(); ++s) {
    double most = 0.0;
    std::string name;
    for (const ledger::PartBook& book : variant.ledger->parts) {
      const double volts = (book.volts_peak_along.empty() ? book.volts_peak : book.volts_peak_along)[s];
      if (!ledger::exceeds(volts, most)) continue;
      most = volts;
      name = variant.design->parts[book.part.index].name;
    }
    highest.volts_peak.push_back(most);
    highest.part.push_back(std::move(name));
  }
  return highest;
}

/// Boxes made from a plugin's form are called so.
constexpr std::string_view tuner_box = "tuner ";

bool is_tuner(const design::Box& box) { return box.kind.starts_with(tuner_box); }

/// Common practice, no source: room beyond the range that was needed, and above what a part stood.
constexpr double more_range = 1.1, more_volts = 1.5, more_amps = 1.25, more_watts = 1.5;

const Setting* setting_of(const VariantResult& variant, const std::string& part) {
  for (const Setting& setting : variant.settings)
    if (variant.design->knobs[setting.knob.index].name == part) return &setting;
  return nullptr;
}

/// The most of a strain over the sweep, with its margin, and the first frequency at which it stands.
void write_most(JsonText& out, const std::string& key, const std::string& key_at, const ledger::Series& series,
                double margin, const std::vector<double>& hertz) {
  const auto most = std::max_element(series.begin(), series.end());
  out.field(key, most == series.end() ? 0.0 : margin * *most);
  if (most != series.end()) out.field(key_at, hertz[static_cast<std::size_t>(most - series.begin())]);
}

void write_bought(JsonText& out, const VariantResult& variant, const ledger::PartBook& book) {
  const design::Part& part = variant.design->parts[book.part.index];
  const std::vector<double>& hertz = variant.ledger->frequencies_hz;
  out.open('{', Layout::one_line);
  out.field("part", part.name);
  out.field("kind", part.kind);
  if (const Setting* setting = setting_of(variant, part.name); setting != nullptr && !setting->values.empty()) {
    const std::vector<double>& values = setting->values;
    const auto least = std::min_element(values.begin(), values.end()),
               largest = std::max_element(values.begin(), values.end());
    out.field("unit", unit_of_knob(variant.design->knobs[setting->knob.index].dim));
    out.field("lower", *least / more_range);
    out.field("lower_at_hz", hertz[static_cast<std::size_t>(least - values.begin())]);
    out.field("upper", *largest * more_range);
    out.field("upper_at_hz", hertz[static_cast<std::size_t>(largest - values.begin())]);
  }
  write_most(out, "volts_peak", "volts_at_hz", book.volts_peak, more_volts, hertz);
  write_most(out, "amps_rms", "amps_at_hz", book.amps_rms, more_amps, hertz);
  write_most(out, "heat_w", "heat_at_hz", book.heat_w, more_watts * variant.design->source.duty, hertz);
  out.close();
}

}  // namespace

void write_made(JsonText& out, const design::Knob& knob, const std::set<double>& values) {
  out.key("made");
  out.open('[');
  for (const double value : values) {
    const auto choice = std::find(knob.choices.begin(), knob.choices.end(), value);
    if (choice == knob.choices.end()) continue;
    const design::Made& made = knob.made[static_cast<std::size_t>(choice - knob.choices.begin())];
    out.open('{', Layout::one_line);
    out.field("value", value);
    out.field("first", made.first);
    if (made.second > 0.0) {
      out.field("second", made.second);
      out.field("joined", made.in_series ? "series" : "parallel");
    }
    out.close();
  }
  out.close();
}

bool has_tuner(const VariantResult& variant) {
  return std::any_of(variant.design->boxes.begin(), variant.design->boxes.end(), is_tuner);
}

void write_buy(JsonText& out, const VariantResult& variant) {
  out.open('[');
  for (const design::Box& box : variant.design->boxes) {
    if (!is_tuner(box)) continue;
    out.open('{');
    out.field("tuner", box.name);
    out.field("form", box.kind.substr(tuner_box.size()));
    out.field("range_margin", more_range);
    out.field("volts_margin", more_volts);
    out.field("amps_margin", more_amps);
    out.field("heat_margin", more_watts);
    out.key("parts");
    out.open('[');
    for (const ledger::PartBook& book : variant.ledger->parts)
      if (variant.design->parts[book.part.index].name.starts_with(box.name + '.')) write_bought(out, variant, book);
    out.close();
    out.close();
  }
  out.close();
}

void write_tuning(JsonText& out, const VariantResult& variant) {
  out.open('[');
  for (const tune::Search& search : variant.searches) write_search(out, *variant.design, search);
  out.close();
}

void write_dial(JsonText& out, const VariantResult& variant) {
  const Highest highest = highest_of(variant);
  out.open('{');
  out.key("knobs");
  out.open('[');
  for (const Setting& setting : variant.settings) {
    out.open('{');
    write_knob(out, *variant.design, setting.knob);
    out.field("values", setting.values);
    out.field("at_end", setting.at_end);
    out.close();
  }
  out.close();
  out.field("swr", variant.ledger->source.swr);
  out.field("absorbed_w", variant.ledger->totals.absorbed_w);
  out.field("radiated_w", variant.ledger->totals.radiated_w);
  out.field("volts_peak", highest.volts_peak);
  out.field("volts_part", highest.part);
  out.close();
}

}  // namespace wattfall::report
