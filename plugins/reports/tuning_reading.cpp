#include "tuning_reading.hpp"

#include <algorithm>
#include <cmath>

#include "clauses.hpp"
#include "text_sections.hpp"

namespace reports {

std::vector<const Json*> told_searches(const Json& variant) {
  const Json& searches = list(variant, "tuning");
  std::vector<const Json*> told;
  for (std::size_t first = 0; first < searches.size();) {
    std::size_t end = first + 1;
    while (end < searches.size() && member(searches[end], "line") == member(searches[first], "line")) ++end;
    if (text(searches[first], "when") == "each")
      told.push_back(&searches[first + (end - first - 1) / 2]);
    else
      for (std::size_t i = first; i < end; ++i) told.push_back(&searches[i]);
    first = end;
  }
  return told;
}

std::string place_of(const Json& search) {
  const Json& hertz = member(search, "frequencies_hz");
  if (hertz.size() < 2) return "at " + spell_frequency(item(hertz, 0));
  return "from " + spell_frequency(item(hertz, 0)) + " to " + spell_frequency(hertz.back());
}

std::vector<std::string> names_of(const Json& search) {
  std::vector<std::string> names;
  for (const Json& knob : list(search, "knobs")) names.push_back(text(knob, "name"));
  if (names.empty()) return names;
  std::string box = names.front().substr(0, names.front().rfind('.') + 1);
  const auto inside = [&](const std::string& name) { return name.compare(0, box.size(), box) == 0; };
  while (!box.empty() && !std::all_of(names.begin(), names.end(), inside))
    box = box.size() < 2 ? "" : box.substr(0, box.rfind('.', box.size() - 2) + 1);
  for (std::string& name : names) name = name.substr(box.size());
  return names;
}

std::string value_of(const Json& knob, double value) {
  const Json& nodes = member(knob, "choice_nodes");
  if (nodes.is_array()) return text(item(nodes, static_cast<std::size_t>(std::max(0.0, value))));
  const std::string unit = text(knob, "unit");
  return unit.empty() ? significant(value, 4) : spell(value, unit, 4);
}

std::string width_of(const Json& width) {
  const double hertz = number(width, "upper_hz") - number(width, "lower_hz");
  if (!std::isfinite(hertz)) return "-";
  return significant(1e-3 * hertz) + (flag(width, "lower_open") || flag(width, "upper_open") ? "+" : "");
}

std::vector<double> bounds_of(const Json& leeways) {
  std::vector<double> bounds;
  for (const Json& leeway : leeways) {
    const double bound = number(leeway, "swr");
    if (std::find(bounds.begin(), bounds.end(), bound) == bounds.end()) bounds.push_back(bound);
  }
  return bounds;
}

std::string range_of(const Json& leeway, const std::string& unit) {
  const double lower = number(leeway, "lower"), upper = number(leeway, "upper");
  if (!std::isfinite(lower) || !std::isfinite(upper)) return "-";
  const Scale scale = scale_for({lower, upper}, unit);
  return scale.show(lower) + (flag(leeway, "lower_open") ? "+" : "") + " to " + scale.show(upper) +
         (flag(leeway, "upper_open") ? "+" : "") + (scale.unit.empty() ? "" : ' ' + scale.unit);
}

std::vector<std::string> sayings_of(const Json& search) {
  std::vector<std::string> all;
  for (const char* key : {"more_room", "limits"})
    for (const Json& said : list(search, key)) all.push_back(sentence(text(said, "text")));
  const std::string why = text(search, "why"), sure = text(search, "certain_why");
  if (!why.empty()) all.push_back(sentence(why));
  if (!sure.empty()) all.push_back(sentence(text(search, "certainty") + ": " + sure));
  return all;
}

namespace {

/// The row of the least and the greatest of a figure.
std::pair<std::size_t, std::size_t> ends_of(const Json& settings, const char* key) {
  std::size_t least = 0, most = 0;
  for (std::size_t row = 1; row < settings.size(); ++row) {
    if (number(settings[row], key) < number(settings[least], key)) least = row;
    if (number(settings[row], key) > number(settings[most], key)) most = row;
  }
  return {least, most};
}

/// Whether they lie farther apart than tables show.
bool differ(const Json& settings, const char* key) {
  if (settings.empty()) return false;
  const auto [least, most] = ends_of(settings, key);
  return number(settings[most], key) - number(settings[least], key) > 1e-3 * number(settings[most], key);
}

}  // namespace

std::optional<Preferred> preferred_of(const Json& ridge) {
  const Json& settings = list(ridge, "settings");
  if (differ(settings, "load_w")) return Preferred{count(ridge, "best"), "loses least"};
  if (differ(settings, "volts_peak")) return Preferred{ends_of(settings, "volts_peak").first, "has the least volts"};
  return std::nullopt;
}

std::string ridge_heading(const Json& search) {
  return "One knob to spare " + place_of(search) + ": these all match, and lose " +
         (differ(list(member(search, "ridge"), "settings"), "load_w") ? "more or less" : "the same");
}

std::vector<std::vector<std::string>> made_rows(const std::string& knob, const Json& made, const std::string& unit) {
  std::vector<std::vector<std::string>> rows;
  for (const Json& one : made) {
    std::string parts = spell(number(one, "first"), unit, 4);
    parts += one.contains("second") ? " and " + spell(number(one, "second"), unit, 4) + " in " + text(one, "joined")
                                    : " alone";
    rows.push_back({knob, spell(number(one, "value"), unit, 4), parts});
  }
  return rows;
}

Shopping shopping_of(const Json& variant, const Json& tuner) {
  const bool several = list(variant, "frequencies_hz").size() > 1;
  const Scale hertz = frequency_scale_of(variant);
  Shopping shopping;
  shopping.heads = several ? std::vector<std::string>{"part", "range", "low at", "high at", "V peak",
                                                      "at",   "A rms", "at",     "heat, W", "at"}
                           : std::vector<std::string>{"part", "range", "V peak", "A rms", "heat, W"};
  for (const Json& part : list(tuner, "parts")) {
    const std::string unit = text(part, "unit");
    const auto at = [&](std::vector<std::string>& cells, const char* key) {
      if (several) cells.push_back(hertz.show(number(part, key)));
    };
    std::vector<std::string> cells{text(part, "part"),
                                   spell(number(part, "lower"), unit) + " to " + spell(number(part, "upper"), unit)};
    at(cells, "lower_at_hz");
    at(cells, "upper_at_hz");
    const std::pair<const char*, const char*> strains[] = {
        {"volts_peak", "volts_at_hz"}, {"amps_rms", "amps_at_hz"}, {"heat_w", "heat_at_hz"}};
    for (const auto& [strain, place] : strains) {
      cells.push_back(significant(number(part, strain)));
      at(cells, place);
    }
    shopping.rows.push_back(std::move(cells));
  }
  shopping.margins = margins_of(tuner);
  if (several)
    shopping.margins +=
        " Under at, in " + hertz.unit + ": where each end of the range and the most of each strain is needed.";
  return shopping;
}

}  // namespace reports
