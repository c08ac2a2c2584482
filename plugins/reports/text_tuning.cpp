// What the tuner knows beside its settings: the others that match, and how exactly the knobs must stand.
#include <algorithm>
#include <cmath>

#include "text_sections.hpp"
#include "tuning_reading.hpp"

namespace reports {
namespace {

using Side = Table::Side;

/// Knobs that a table of matches has room for.
constexpr std::size_t most_knobs = 4;

std::string show_value(const Json& knob, double value, const Scale& scale) {
  const Json& nodes = member(knob, "choice_nodes");
  if (nodes.is_array()) return cut_name(text(item(nodes, static_cast<std::size_t>(std::max(0.0, value)))), 12);
  return scale.show(value);
}

std::vector<Scale> scales_of(const Json& search) {
  std::vector<Scale> scales;
  for (std::size_t k = 0; k < list(search, "knobs").size(); ++k) {
    std::vector<double> values;
    for (const Json& match : list(search, "matches")) values.push_back(number_at(match, "values", k));
    scales.push_back(scale_for(values, text(item(member(search, "knobs"), k), "unit")));
  }
  return scales;
}

/// `shown`: as many knobs as there is room for.
void write_match_rows(Table& table, const Json& search, std::size_t shown) {
  const std::vector<Scale> scales = scales_of(search);
  std::vector<double> volts;
  for (const Json& match : list(search, "matches")) volts.push_back(number(match, "volts_peak"));
  const Scale volt = scale_for(volts, "V");
  std::vector<std::string> heads{""};
  for (std::size_t k = 0; k < shown; ++k) {
    heads.push_back(cut_name(names_of(search)[k], 14) + (scales[k].unit.empty() ? "" : ", " + scales[k].unit) + ' ');
  }
  heads.insert(heads.end(), {"load, W", "SWR", "heat, W", volt.unit + " peak", "A rms"});
  for (const Json& width : list(item(member(search, "matches"), 0), "widths"))
    heads.push_back("<" + spell(number(width, "swr"), "") + ", kHz");
  table.heads(heads);
  std::size_t row = 0;
  for (const Json& match : list(search, "matches")) {
    std::vector<std::string> cells{std::to_string(++row)};
    for (std::size_t k = 0; k < shown; ++k) {
      const Json& knob = item(member(search, "knobs"), k);
      const bool at_end = !knob.contains("choice_nodes") && item(member(match, "at_end"), k) == Json(true);
      cells.push_back(show_value(knob, number_at(match, "values", k), scales[k]) + (at_end ? '!' : ' '));
    }
    cells.insert(cells.end(), {significant(number(match, "load_w"), 4), spell(number(match, "swr"), ""),
                               significant(number(match, "heat_w")), volt.show(number(match, "volts_peak")),
                               significant(number(match, "amps_rms"))});
    for (const Json& width : list(match, "widths")) cells.push_back(width_of(width));
    table.add(std::move(cells), row == 1 ? Ink::strong : Ink::plain);
  }
}

/// Values of the settings above that one or two parts of a series make; those of the one that is taken stand with the
/// knobs.
void write_made(Paper& paper, const Json& search) {
  Table table({Side::left, Side::right, Side::left});
  const Json& knobs = list(search, "knobs");
  const std::vector<std::string> names = names_of(search);
  bool any = false;
  for (std::size_t k = 0; k < knobs.size(); ++k)
    for (std::vector<std::string>& row :
         made_rows(cut_name(names[k], 14), list(knobs[k], "made"), text(knobs[k], "unit"))) {
      table.add(std::move(row), Ink::faint);
      any = true;
    }
  if (any) table.print(paper);
}

void write_matches(Paper& paper, const Json& search) {
  const std::size_t knobs = list(search, "knobs").size(), matches = list(search, "matches").size();
  if (matches == 0) return;
  paper.section(matches > 1 ? "The settings that stand out " + place_of(search) + ", best first" : "The setting taken " + place_of(search));
  // Of many knobs the values of the setting taken stand in a list of their own, above.
  const std::size_t shown = knobs <= most_knobs ? knobs : 0;
  Table table(std::vector<Side>(shown + 6 + list(item(member(search, "matches"), 0), "widths").size(), Side::right));
  write_match_rows(table, search, shown);
  table.print(paper);
  paper.line("  <1.5, <2: how wide a stretch of frequency the SWR stays below that, nothing retuned; + at least", Ink::faint);
  if (matches > 1) write_made(paper, search);
  for (const std::string& said : sayings_of(search)) paper.paragraph("  ", said);
}

/// Along a spare degree of freedom.
void write_ridge(Paper& paper, const Json& search) {
  const Json& ridge = member(search, "ridge");
  const Json& settings = list(ridge, "settings");
  if (settings.empty()) return;
  paper.section(ridge_heading(search));
  const Json& knobs = list(search, "knobs");
  std::vector<Scale> scales;
  std::vector<double> volts;
  std::vector<std::string> heads;
  for (std::size_t k = 0; k < knobs.size(); ++k) {
    std::vector<double> values;
    for (const Json& match : settings) values.push_back(number_at(match, "values", k));
    scales.push_back(scale_for(values, text(knobs[k], "unit")));
    heads.push_back(cut_name(names_of(search)[k], 14) + ", " + scales.back().unit + ' ');
  }
  for (const Json& match : settings) volts.push_back(number(match, "volts_peak"));
  const Scale volt = scale_for(volts, "V");
  heads.insert(heads.end(), {"load, W", "SWR", "heat, W", volt.unit + " peak", "A rms", ""});
  std::vector<Side> sides(heads.size(), Side::right);
  sides.back() = Side::left;
  Table table(sides);
  table.heads(heads);
  const auto preferred = preferred_of(ridge);
  for (std::size_t row = 0; row < settings.size(); ++row) {
    const Json& match = settings[row];
    std::vector<std::string> cells;
    for (std::size_t k = 0; k < knobs.size(); ++k)
      cells.push_back(scales[k].show(number_at(match, "values", k)) + (item(member(match, "at_end"), k) == Json(true) ? '!' : ' '));
    const bool best = preferred && row == preferred->row;
    cells.insert(cells.end(), {significant(number(match, "load_w"), 4), spell(number(match, "swr"), ""),
                               significant(number(match, "heat_w")), volt.show(number(match, "volts_peak")),
                               significant(number(match, "amps_rms")), best ? preferred->why : ""});
    table.add(std::move(cells), best ? Ink::strong : Ink::plain);
  }
  table.print(paper);
}

void write_leeway(Paper& paper, const Json& search) {
  const Json& leeways = list(search, "leeway");
  const Json& best = item(member(search, "matches"), 0);
  const bool any = std::any_of(leeways.begin(), leeways.end(), [&](const Json& leeway) {
    return leeway.contains("lower") && !item(member(search, "knobs"), count(leeway, "knob")).contains("choice_nodes");
  });
  if (!any) return;
  paper.section("How far each knob alone may be off " + place_of(search) + ", by the SWR at the source");
  std::vector<std::string> heads{"knob", "stands at"};
  for (const double bound : bounds_of(leeways)) heads.push_back("SWR " + spell(bound, "") + " or less");
  Table table(std::vector<Side>(heads.size(), Side::left));
  table.heads(heads);
  bool open = false;
  for (std::size_t k = 0; k < list(search, "knobs").size(); ++k) {
    const Json& knob = item(member(search, "knobs"), k);
    if (knob.contains("choice_nodes")) continue;
    const std::string unit = text(knob, "unit");
    const double value = number_at(best, "values", k);
    std::vector<std::string> cells{cut_name(text(knob, "name")), value_of(knob, value)};
    for (const Json& leeway : leeways) {
      if (count(leeway, "knob") != k) continue;
      cells.push_back(range_of(leeway, unit));
      open |= flag(leeway, "lower_open") || flag(leeway, "upper_open");
    }
    table.add(std::move(cells));
  }
  table.print(paper);
  if (open) paper.line("  +  the end of the knob's range", Ink::faint);
}

void write_shopping(Paper& paper, const Json& variant, const Json& tuner) {
  paper.section("What to buy for " + cut_name(text(tuner, "tuner")) + ": " + text(tuner, "form"));
  const Shopping shopping = shopping_of(variant, tuner);
  std::vector<Side> sides(shopping.heads.size(), Side::right);
  sides[0] = sides[1] = Side::left;
  Table table(sides);
  table.heads(shopping.heads);
  for (std::vector<std::string> cells : shopping.rows) {
    cells[0] = cut_name(cells[0]);
    table.add(std::move(cells));
  }
  table.print(paper);
  paper.paragraph("  ", shopping.margins);
}

}  // namespace

void write_tuning(Paper& paper, const Json& variant) {
  for (const Json* search : told_searches(variant)) {
    write_matches(paper, *search);
    write_ridge(paper, *search);
    write_leeway(paper, *search);
  }
  for (const Json& tuner : list(variant, "buy")) write_shopping(paper, variant, tuner);
}

}  // namespace reports
