// What the tuner found beside the settings it took: other settings that match, how much leeway each knob has, and how
// sure the best is.
#include <algorithm>
#include <cmath>

#include "clauses.hpp"
#include "markup.hpp"
#include "page_sections.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

std::string knob_value(const Ref& knob, const Ref& value) {
  const Ref nodes = knob["choice_nodes"];
  if (!nodes.is_list()) return shown(value, knob["unit"].text().empty() ? "count" : knob["unit"].text(), 4);
  const auto choice = static_cast<std::size_t>(std::max(0.0, value.number()));
  return "<data value=\"" + exact(value.number()) + "\" data-at=\"" + escape(value.pointer()) + "\">" +
         escape(nodes[choice].text()) + "</data>";
}

std::string frequencies(const Ref& search) {
  const Ref list = search["frequencies_hz"];
  if (list.size() == 0) return "";
  const std::string first = reports::spell(list[std::size_t{0}].number(), "Hz", 6);
  return list.size() == 1 ? "at " + first : first + " to " + reports::spell(list[list.size() - 1].number(), "Hz", 6);
}

std::string settings_table(const Ref& search, const Ref& settings, const std::string& caption,
                           const std::string& variant) {
  const Ref knobs = search["knobs"];
  std::vector<Heading> headings{"Setting"};
  for (std::size_t k = 0; k < knobs.size(); ++k) headings.push_back(">" + escape(knobs[k]["name"].text()));
  headings.insert(headings.end(), {">Into the load", ">SWR", ">Heat", ">Most volts, peak", ">Most amps, rms"});
  std::vector<std::vector<Cell>> rows;
  for (std::size_t s = 0; s < settings.size() && s < 12; ++s) {
    const Ref one = settings[s];
    rows.push_back({{std::to_string(s + 1), true}});
    for (std::size_t k = 0; k < knobs.size(); ++k)
      rows.back().push_back({knob_value(knobs[k], one["values"][k]), false, true});
    const auto with_part = [&](const char* figure, const char* unit, const char* part) {
      return shown(one[figure], unit) +
             (one[part].text().empty() ? "" : " <small>" + escape(one[part].text()) + "</small>");
    };
    for (const std::string& cell :
         {shown(one["load_w"], "W", 4), shown(one["swr"], ""), shown(one["heat_w"], "W"),
          with_part("volts_peak", "V", "volts_part"), with_part("amps_rms", "A", "amps_part")})
      rows.back().push_back({cell, false, true});
  }
  return table(caption, variant, headings, rows);
}

/// Values of the settings above that one or two parts of a series make.
std::string made_table(const Ref& search, const std::string& caption, const std::string& variant) {
  const Ref knobs = search["knobs"];
  std::vector<std::vector<Cell>> rows;
  for (std::size_t k = 0; k < knobs.size(); ++k) {
    const Ref knob = knobs[k], made = knob["made"];
    for (std::size_t i = 0; i < made.size(); ++i) {
      const Ref one = made[i];
      const std::string joined = one["joined"].text();
      rows.push_back(
          {{escape(knob["name"].text()), true},
           {knob_value(knob, one["value"]), false, true},
           {knob_value(knob, one["first"]) +
            (joined.empty() ? " alone" : " and " + knob_value(knob, one["second"]) + " in " + escape(joined))}});
    }
  }
  return rows.empty() ? "" : table(caption, variant, {"Knob", ">Value", "Made of preferred values"}, rows);
}

/// What to buy for a tuner whose form was tried, and the frequency at which each is needed.
std::string shopping_table(const Ref& tuner, const std::string& variant) {
  const Ref parts = tuner["parts"];
  std::vector<std::vector<Cell>> rows;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Ref part = parts[i];
    const std::string unit = part["unit"].text();
    const auto needed = [&](const char* key, const std::string& of, const char* at) {
      return shown(part[key], of) +
             (!std::isfinite(part[at].number()) ? "" : " <small>at " + shown(part[at], "Hz", 6) + "</small>");
    };
    rows.push_back({{escape(part["part"].text()), true},
                    {unit.empty() ? "" : needed("lower", unit, "lower_at_hz"), false, true},
                    {unit.empty() ? "" : needed("upper", unit, "upper_at_hz"), false, true},
                    {needed("volts_peak", "V", "volts_at_hz"), false, true},
                    {needed("amps_rms", "A", "amps_at_hz"), false, true},
                    {needed("heat_w", "W", "heat_at_hz"), false, true}});
  }
  if (rows.empty()) return "";
  return table("What to buy for " + tuner["tuner"].text() + ": " + tuner["form"].text(), variant,
               {"Part", ">From", ">To", ">Volts, peak", ">Amps, rms", ">Heat"}, rows) +
         "<p class=\"note\">" + reports::margins_of(tuner.json()) + "</p>";
}

std::string leeway_table(const Ref& search, const std::string& caption, const std::string& variant) {
  const Ref list = search["leeway"], knobs = search["knobs"];
  std::vector<std::vector<Cell>> rows;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Ref one = list[i], knob = knobs[one["knob"].count()];
    const auto end = [&](const char* key, const char* open) {
      return knob_value(knob, one[key]) + (one[open].flag() ? " <small>end of its range</small>" : "");
    };
    rows.push_back({{escape(knob["name"].text()), true},
                    {shown(one["swr"], ""), false, true},
                    {end("lower", "lower_open"), false, true},
                    {end("upper", "upper_open"), false, true}});
  }
  return rows.empty() ? "" : table(caption, variant, {"Knob alone", ">SWR below", ">From", ">To"}, rows);
}

std::string sentence(std::string clause) {
  return pretty(reports::sentence(std::move(clause)));
}

std::string search_of(const Ref& search, const std::string& variant) {
  const std::string where = frequencies(search);
  std::string out;
  if (search["matches"].size() > 0)
    out += settings_table(
               search, search["matches"],
               (search["matches"].size() > 1 ? "Settings that stand out, best first, " : "The setting taken, ") + where,
               variant) +
           made_table(search, "Preferred values, " + where, variant);
  const std::string sure = search["certain_why"].text(), why = search["why"].text();
  if (!why.empty()) out += "<p class=\"note\">" + sentence(why) + "</p>";
  if (!sure.empty()) out += "<p class=\"note\">" + sentence(search["certainty"].text() + ": " + sure) + "</p>";
  for (const char* key : {"more_room", "limits"}) {
    const Ref said = search[key];
    for (std::size_t i = 0; i < said.size(); ++i) out += "<p class=\"note\">" + sentence(said[i]["text"].text()) + "</p>";
  }
  std::string more = leeway_table(search, "How far one knob may stand off, " + where, variant);
  if (search["ridge"]["settings"].size() > 0)
    more +=
        settings_table(search, search["ridge"]["settings"], "One knob to spare: these match too, " + where, variant);
  return out + (more.empty() ? "" : details("Leeway, and other ways to match, " + where, more));
}

}  // namespace

std::string section_tuning(const Ref& document) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const Ref variant = document["variants"][v], searches = variant["tuning"];
    std::string found;
    for (std::size_t s = 0; s < searches.size() && s < 6; ++s) found += search_of(searches[s], variant_name(variant));
    const Ref buy = variant["buy"];
    for (std::size_t t = 0; t < buy.size(); ++t) found += shopping_table(buy[t], variant_name(variant));
    if (!found.empty()) out += "<div" + variant_mark(v) + ">" + variant_heading(document, v) + found + "</div>\n";
  }
  return section("tuning", "What the tuner found", "The first setting is the one that was taken.", out);
}

}  // namespace pictures
