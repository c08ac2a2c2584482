// What the tuner knows beside its settings: the others that match, and how exactly the knobs must stand.
#include <algorithm>
#include <cmath>

#include "text_sections.hpp"

namespace reports {
namespace {

using Side = Table::Side;

/// Knobs that a table of matches has room for.
constexpr std::size_t most_knobs = 4;

std::string place_of(const Json& search) {
  const Json& hertz = member(search, "frequencies_hz");
  if (hertz.size() < 2) return "at " + spell_frequency(item(hertz, 0));
  return "from " + spell_frequency(item(hertz, 0)) + " to " + spell_frequency(hertz.back());
}

/// The names of a search's knobs without the box that all of them stand in.
std::vector<std::string> names_of(const Json& search) {
  std::vector<std::string> names;
  for (const Json& knob : list(search, "knobs")) names.push_back(text(knob, "name"));
  if (names.empty()) return names;
  std::string box = names.front().substr(0, names.front().rfind('.') + 1);
  const auto inside = [&](const std::string& name) { return name.compare(0, box.size(), box) == 0; };
  while (!box.empty() && !std::all_of(names.begin(), names.end(), inside))
    box = box.size() < 2 ? "" : box.substr(0, box.rfind('.', box.size() - 2) + 1);
  for (std::string& name : names) name = cut_name(name.substr(box.size()), 14);
  return names;
}

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

/// How wide a stretch of frequency [kHz]; where an end is not known, as much at least.
std::string width_of(const Json& width) {
  const double hertz = number(width, "upper_hz") - number(width, "lower_hz");
  if (!std::isfinite(hertz)) return "-";
  return significant(1e-3 * hertz) + (flag(width, "lower_open") || flag(width, "upper_open") ? "+" : "");
}

/// A document's clause as a sentence.
std::string sentence(std::string clause) {
  if (!clause.empty() && clause.front() >= 'a' && clause.front() <= 'z') clause.front() = static_cast<char>(clause.front() - 'a' + 'A');
  return clause + '.';
}

void write_match_rows(Table& table, const Json& search) {
  const std::vector<Scale> scales = scales_of(search);
  std::vector<double> volts;
  for (const Json& match : list(search, "matches")) volts.push_back(number(match, "volts_peak"));
  const Scale volt = scale_for(volts, "V");
  std::vector<std::string> heads{""};
  for (std::size_t k = 0; k < scales.size(); ++k) {
    heads.push_back(names_of(search)[k] + (scales[k].unit.empty() ? "" : ", " + scales[k].unit) + ' ');
  }
  heads.insert(heads.end(), {"load, W", "SWR", "heat, W", volt.unit + " peak", "A rms"});
  for (const Json& width : list(item(member(search, "matches"), 0), "widths"))
    heads.push_back("<" + spell(number(width, "swr"), "") + ", kHz");
  table.heads(heads);
  std::size_t row = 0;
  for (const Json& match : list(search, "matches")) {
    std::vector<std::string> cells{std::to_string(++row)};
    for (std::size_t k = 0; k < scales.size(); ++k) {
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

void write_matches(Paper& paper, const Json& search) {
  const std::size_t knobs = list(search, "knobs").size(), matches = list(search, "matches").size();
  if (matches == 0) return;
  paper.section(matches > 1 ? "The settings that stand out " + place_of(search) + ", best first" : "The setting taken " + place_of(search));
  if (knobs <= most_knobs) {
    Table table(std::vector<Side>(knobs + 6 + list(item(member(search, "matches"), 0), "widths").size(), Side::right));
    write_match_rows(table, search);
    table.print(paper);
    paper.line("  <1.5, <2: how wide a stretch of frequency the SWR stays below that, nothing retuned; + at least", Ink::faint);
  }
  for (const char* key : {"more_room", "limits"})
    for (const Json& said : list(search, key)) paper.paragraph("  ", sentence(text(said, "text")));
  const std::string why = text(search, "why"), sure = text(search, "certain_why");
  if (!why.empty()) paper.paragraph("  ", sentence(why));
  if (!sure.empty()) paper.paragraph("  ", sentence(text(search, "certainty") + ": " + sure));
}

/// Along a spare degree of freedom.
void write_ridge(Paper& paper, const Json& search) {
  const Json& ridge = member(search, "ridge");
  const Json& settings = list(ridge, "settings");
  if (settings.empty()) return;
  paper.section("One knob to spare " + place_of(search) + ": these all match, and lose more or less");
  const Json& knobs = list(search, "knobs");
  std::vector<Scale> scales;
  std::vector<double> volts;
  std::vector<std::string> heads;
  for (std::size_t k = 0; k < knobs.size(); ++k) {
    std::vector<double> values;
    for (const Json& match : settings) values.push_back(number_at(match, "values", k));
    scales.push_back(scale_for(values, text(knobs[k], "unit")));
    heads.push_back(names_of(search)[k] + ", " + scales.back().unit + ' ');
  }
  for (const Json& match : settings) volts.push_back(number(match, "volts_peak"));
  const Scale volt = scale_for(volts, "V");
  heads.insert(heads.end(), {"load, W", "SWR", "heat, W", volt.unit + " peak", "A rms", ""});
  std::vector<Side> sides(heads.size(), Side::right);
  sides.back() = Side::left;
  Table table(sides);
  table.heads(heads);
  for (std::size_t row = 0; row < settings.size(); ++row) {
    const Json& match = settings[row];
    std::vector<std::string> cells;
    for (std::size_t k = 0; k < knobs.size(); ++k)
      cells.push_back(scales[k].show(number_at(match, "values", k)) + (item(member(match, "at_end"), k) == Json(true) ? '!' : ' '));
    const bool least = row == count(ridge, "best");
    cells.insert(cells.end(), {significant(number(match, "load_w"), 4), spell(number(match, "swr"), ""), significant(number(match, "heat_w")),
                               volt.show(number(match, "volts_peak")), significant(number(match, "amps_rms")), least ? "loses least" : ""});
    table.add(std::move(cells), least ? Ink::strong : Ink::plain);
  }
  table.print(paper);
}

/// "112 to 125 pF"; the end of a range stands with a `+`: the knob may go there, and no farther.
std::string range_of(const Json& leeway, const std::string& unit) {
  const double lower = number(leeway, "lower"), upper = number(leeway, "upper");
  if (!std::isfinite(lower) || !std::isfinite(upper)) return "-";
  const Scale scale = scale_for({lower, upper}, unit);
  return scale.show(lower) + (flag(leeway, "lower_open") ? "+" : "") + " to " + scale.show(upper) +
         (flag(leeway, "upper_open") ? "+" : "") + (scale.unit.empty() ? "" : ' ' + scale.unit);
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
  std::vector<double> bounds;
  for (const Json& leeway : leeways) {
    const double bound = number(leeway, "swr");
    if (std::find(bounds.begin(), bounds.end(), bound) == bounds.end()) bounds.push_back(bound);
  }
  for (const double bound : bounds) heads.push_back("SWR " + spell(bound, "") + " or less");
  Table table(std::vector<Side>(heads.size(), Side::left));
  table.heads(heads);
  bool open = false;
  for (std::size_t k = 0; k < list(search, "knobs").size(); ++k) {
    const Json& knob = item(member(search, "knobs"), k);
    if (knob.contains("choice_nodes")) continue;
    const std::string unit = text(knob, "unit");
    const double value = number_at(best, "values", k);
    std::vector<std::string> cells{cut_name(text(knob, "name")), unit.empty() ? significant(value, 4) : spell(value, unit, 4)};
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

std::string per_cent(const Json& tuner, const char* margin) {
  return significant(100.0 * (number(tuner, margin) - 1.0)) + " %";
}

void write_shopping(Paper& paper, const Json& tuner) {
  paper.section("What to buy for " + cut_name(text(tuner, "tuner")) + ": " + text(tuner, "form"));
  Table table({Side::left, Side::left, Side::right, Side::right, Side::right});
  table.heads({"part", "range", "V peak", "A rms", "heat, W"});
  for (const Json& part : list(tuner, "parts")) {
    const std::string unit = text(part, "unit");
    table.add({cut_name(text(part, "part")), spell(number(part, "lower"), unit) + " to " + spell(number(part, "upper"), unit),
               significant(number(part, "volts_peak")), significant(number(part, "amps_rms")), significant(number(part, "heat_w"))});
  }
  table.print(paper);
  paper.paragraph("  ", "With room to spare: " + per_cent(tuner, "range_margin") + " of range, " + per_cent(tuner, "volts_margin") + " of volts, " +
                            per_cent(tuner, "amps_margin") + " of amps, " + per_cent(tuner, "heat_margin") + " of heat.");
}

}  // namespace

void write_tuning(Paper& paper, const Json& variant) {
  const Json& searches = list(variant, "tuning");
  for (std::size_t first = 0; first < searches.size();) {
    std::size_t end = first + 1;
    while (end < searches.size() && member(searches[end], "line") == member(searches[first], "line")) ++end;
    // Of a dial table's searches the middle one speaks for all.
    const bool each = text(searches[first], "when") == "each";
    for (std::size_t i = each ? first + (end - first - 1) / 2 : first; i < end; ++i) {
      write_matches(paper, searches[i]);
      write_ridge(paper, searches[i]);
      write_leeway(paper, searches[i]);
      if (each) break;
    }
    first = end;
  }
  for (const Json& tuner : list(variant, "buy")) write_shopping(paper, tuner);
}

}  // namespace reports
