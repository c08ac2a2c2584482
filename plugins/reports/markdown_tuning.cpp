// What the tuner found, as Markdown: the settings that stand out, the ridge, the leeway, and what to buy.
#include <algorithm>

#include "markdown_sections.hpp"
#include "text_sections.hpp"
#include "tuning_reading.hpp"

namespace reports {
namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Settings a row: number, knobs, outcome; with the width of each where it is known.
void write_settings_table(Markdown& page, const Json& search, const Json& settings, bool widths) {
  const Json& knobs = list(search, "knobs");
  std::vector<std::string> heads{""};
  for (const std::string& name : names_of(search)) heads.push_back(plain_markdown(name));
  heads.insert(heads.end(), {"into the load", "SWR", "heat", "most volts, peak", "most amps, rms"});
  if (widths)
    for (const Json& width : list(item(settings, 0), "widths"))
      heads.push_back("kHz below " + spell(number(width, "swr"), ""));
  Rows rows;
  for (const Json& match : settings) {
    std::vector<std::string> cells{std::to_string(rows.size() + 1)};
    for (std::size_t k = 0; k < knobs.size(); ++k) {
      const bool at_end = !knobs[k].contains("choice_nodes") && item(member(match, "at_end"), k) == Json(true);
      cells.push_back(plain_markdown(value_of(knobs[k], number_at(match, "values", k))) +
                      (at_end ? ", end of its range" : ""));
    }
    const auto on = [&](const char* key) {
      return text(match, key).empty() ? "" : " on " + plain_markdown(text(match, key));
    };
    cells.insert(cells.end(),
                 {spell(number(match, "load_w"), "W", 4), spell(number(match, "swr"), ""),
                  spell(number(match, "heat_w"), "W"), spell(number(match, "volts_peak"), "V") + on("volts_part"),
                  spell(number(match, "amps_rms"), "A") + on("amps_part")});
    if (widths)
      for (const Json& width : list(match, "widths")) cells.push_back(width_of(width));
    // A document by another program may have less of one than of another.
    cells.resize(heads.size(), "-");
    rows.push_back(std::move(cells));
  }
  page.table(heads, std::vector<bool>(heads.size(), true), rows);
}

void write_made(Markdown& page, const Json& search) {
  Rows rows;
  for (const Json& knob : list(search, "knobs"))
    for (std::vector<std::string>& row :
         made_rows(plain_markdown(text(knob, "name")), list(knob, "made"), text(knob, "unit")))
      rows.push_back(std::move(row));
  write_made_table(page, rows);
}

void write_matches(Markdown& page, const Json& search, int level) {
  const Json& matches = list(search, "matches");
  if (matches.empty()) return;
  page.heading(level, (matches.size() > 1 ? "The settings that stand out " + place_of(search) + ", best first"
                                          : "The setting taken " + place_of(search)));
  write_settings_table(page, search, matches, true);
  // Those of one that is taken alone stand with the knobs.
  if (matches.size() > 1) write_made(page, search);
  for (const std::string& said : sayings_of(search)) page.bullet(plain_markdown(said));
}

void write_ridge(Markdown& page, const Json& search, int level) {
  const Json& ridge = member(search, "ridge");
  const Json& settings = list(ridge, "settings");
  if (settings.empty()) return;
  page.heading(level, ridge_heading(search));
  write_settings_table(page, search, settings, false);
  if (const auto preferred = preferred_of(ridge))
    page.paragraph("Setting " + std::to_string(preferred->row + 1) + ' ' + preferred->why + '.');
}

void write_leeway(Markdown& page, const Json& search, int level) {
  const Json &leeways = list(search, "leeway"), &knobs = list(search, "knobs");
  std::vector<std::string> heads{"knob", "stands at"};
  for (const double bound : bounds_of(leeways)) heads.push_back("SWR " + spell(bound, "") + " or less");
  Rows rows;
  for (std::size_t k = 0; k < knobs.size(); ++k) {
    if (knobs[k].contains("choice_nodes")) continue;
    std::vector<std::string> cells{plain_markdown(text(knobs[k], "name")),
                                   value_of(knobs[k], number_at(item(member(search, "matches"), 0), "values", k))};
    for (const Json& leeway : leeways)
      if (count(leeway, "knob") == k) cells.push_back(plain_markdown(range_of(leeway, text(knobs[k], "unit"))));
    cells.resize(heads.size(), "-");
    rows.push_back(std::move(cells));
  }
  const bool any =
      std::any_of(leeways.begin(), leeways.end(), [](const Json& leeway) { return leeway.contains("lower"); });
  if (rows.empty() || !any) return;
  page.heading(level, "How far each knob alone may be off " + place_of(search) + ", by the SWR at the source");
  page.table(heads, std::vector<bool>(heads.size(), false), rows);
}

void write_shopping(Markdown& page, const Json& variant, const Json& tuner, int level) {
  const Shopping shopping = shopping_of(variant, tuner);
  if (shopping.rows.empty()) return;
  page.heading(level,
               "What to buy for " + plain_markdown(text(tuner, "tuner")) + ": " + plain_markdown(text(tuner, "form")));
  std::vector<bool> right(shopping.heads.size(), true);
  right[0] = right[1] = false;
  Rows rows = shopping.rows;
  for (std::vector<std::string>& cells : rows) cells[0] = plain_markdown(cells[0]);
  page.table(shopping.heads, right, rows);
  page.paragraph(shopping.margins);
}

}  // namespace

void write_made_table(Markdown& page, const Rows& rows) {
  if (!rows.empty()) page.table({"made of preferred values", "value", "parts"}, {false, true, false}, rows);
}

void write_tuning(Markdown& page, const Json& variant, int level) {
  for (const Json* search : told_searches(variant)) {
    write_matches(page, *search, level);
    write_ridge(page, *search, level);
    write_leeway(page, *search, level);
  }
  for (const Json& tuner : list(variant, "buy")) write_shopping(page, variant, tuner, level);
}

}  // namespace reports
