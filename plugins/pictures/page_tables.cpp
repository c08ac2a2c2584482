// Planes, ratings, knobs, warnings, cautions, and how far to trust it all.
#include <algorithm>
#include <cmath>

#include "markup.hpp"
#include "page_sections.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

std::string for_each_variant(const Ref& document, std::string (*inside)(const Ref& variant)) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const std::string one = inside(document["variants"][v]);
    if (!one.empty()) out += "<div" + variant_mark(v) + ">" + variant_heading(document, v) + one + "</div>\n";
  }
  return out;
}

std::string planes_of(const Ref& variant) {
  const Ref planes = variant["planes"];
  std::string out;
  for (std::size_t p = 0; p < planes.size(); ++p) {
    const Ref plane = planes[p];
    std::vector<std::vector<Cell>> rows;
    for (const std::size_t point : shown_points(variant))
      rows.push_back({{shown(variant["frequencies_hz"][point], "Hz", 6), true},
                      {shown_complex(plane["toward_load_ohm"][point]), false, true},
                      {shown_complex(plane["toward_source_ohm"][point]), false, true},
                      {shown(plane["mismatch_db"][point], "dB"), false, true},
                      {shown(plane["swr"][point], ""), false, true}});
    const std::string into = plane["into"].text();
    out += table(plane["name"].text() + ", at " + plane["node"].text() + (into.empty() ? "" : " into " + into),
                 variant_name(variant), {"Frequency", ">Toward the load", ">Toward the source", ">Mismatch", ">SWR"},
                 rows);
  }
  return out;
}

std::string bar(double share) {
  const double wide = std::clamp(std::isfinite(share) ? share : 0.0, 0.0, 1.25) / 1.25 * 100.0;
  return "<svg class=\"bar\" viewBox=\"0 0 100 12\" preserveAspectRatio=\"none\" aria-hidden=\"true\"><rect "
         "class=\"room\" width=\"100\" height=\"12\"/><rect class=\"" +
         std::string(share > 1.0    ? "over"
                     : share >= 0.7 ? "near"
                                    : "used") +
         "\" width=\"" + coordinate(wide) + "\" height=\"12\"/><path class=\"limit\" d=\"M80 0V12\"/></svg>";
}

std::string unit_word(const std::string& unit) {
  return unit == "V" ? "volts, peak" : unit == "A" ? "amps, rms" : "watts, heat";
}

std::string ratings_of(const Ref& variant) {
  const Ref ratings = variant["ratings"];
  std::vector<std::size_t> order(ratings.size());
  for (std::size_t r = 0; r < order.size(); ++r) order[r] = r;
  const auto strain = [&](std::size_t r) { return ratings[r]["worst"].number() / ratings[r]["limit"].number(); };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return strain(a) > strain(b); });
  std::vector<std::vector<Cell>> rows;
  for (const std::size_t r : order) {
    const Ref one = ratings[r];
    const std::string unit = one["unit"].text();
    const bool kept = one["kept"].flag();
    rows.push_back(
        {{escape(one["part"].text()), true},
         {escape(unit_word(unit))},
         {shown(one["worst"], unit), false, true},
         {shown(one["limit"], unit), false, true},
         {bar(strain(r))},
         {badge(kept, !kept                ? "over"
                      : one["near"].flag() ? "near"
                                           : "kept")},
         {shown(one["margin_percent"], "%") + (one["margin_percent"].json().is_number() ? " %" : ""), false, true},
         {shown(one["worst_at_hz"], "Hz", 6), false, true}});
  }
  std::string out;
  if (!rows.empty())
    out = table("Ratings, nearest first", variant_name(variant),
                {"Part", "What", ">Worst", ">Limit", "Worst against limit", "Kept", ">Margin", ">At"}, rows,
                Narrow::stacks);

  std::vector<std::vector<Cell>> all;
  for (const char* group : {"parts", "loads"})
    for (std::size_t p = 0; p < variant[group].size(); ++p) {
      const Ref highest = variant[group][p]["highest"];
      all.push_back({{escape(variant[group][p]["name"].text()), true},
                     {shown(highest["volts_peak"], "V"), false, true},
                     {shown(highest["amps_rms"], "A"), false, true},
                     {shown(highest["heat_w"], "W"), false, true}});
    }
  if (all.empty()) return out;
  return out + details("The largest volts, amps and heat of every part",
                       table("The largest over the sweep", variant_name(variant),
                             {"Part", ">Volts, peak", ">Amps, rms", ">Heat"}, all));
}

std::string setting_cell(const Ref& setting, const std::string& key, const std::string& unit, std::size_t point) {
  if (key == "choice") {
    const Ref choice = setting["choice"][point];
    return "<data value=\"" + exact(choice.number()) + "\" data-at=\"" + escape(choice.pointer()) + "\">" +
           escape(setting["choice_nodes"][choice.count()].text()) + "</data>";
  }
  const std::string value = shown(setting[key.c_str()][point], unit, 4);
  return setting["at_end"][point].flag() ? value +
                                               " <b class=\"end\" title=\"at the end of its range\">!</b><span "
                                               "class=\"sr\"> at the end of its range</span>"
                                         : value;
}

std::string settings_of(const Ref& variant) {
  const Ref settings = variant["settings"];
  if (settings.size() == 0) return "";
  struct Knob {
    std::string key, unit;
  };
  std::vector<Knob> knobs;
  std::vector<Heading> headings{"Frequency"};
  for (std::size_t k = 0; k < settings.size(); ++k) {
    const std::string key =
        settings[k]["choice"].is_list() ? "choice" : reports::key_with_prefix(settings[k].json(), "value");
    const std::string unit = key == "value_f"     ? "F"
                             : key == "value_h"   ? "H"
                             : key == "value_ohm" ? "ohm"
                             : key == "value_hz"  ? "Hz"
                             : key == "value_m"   ? "m"
                                                  : "count";
    knobs.push_back({key, unit});
    const std::string lower = "lower" + key.substr(std::min<std::size_t>(5, key.size())),
                      upper = "upper" + key.substr(std::min<std::size_t>(5, key.size()));
    const bool range = key != "choice" && settings[k][lower.c_str()].json().is_number();
    headings.push_back(">" + escape(settings[k]["knob"].text()) +
                       (range ? "<br><small>" + shown(settings[k][lower.c_str()], unit) + " to " +
                                    shown(settings[k][upper.c_str()], unit) + "</small>"
                              : ""));
  }
  const Ref volts = variant["dial"]["volts_peak"];
  std::vector<std::vector<Cell>> rows;
  for (const std::size_t point : shown_points(variant)) {
    rows.push_back({{shown(variant["frequencies_hz"][point], "Hz", 6), true}});
    for (std::size_t k = 0; k < knobs.size(); ++k)
      rows.back().push_back({setting_cell(settings[k], knobs[k].key, knobs[k].unit, point), false, true});
    rows.back().push_back({shown(variant["sources"][std::size_t{0}]["swr"][point], ""), false, true});
    rows.back().push_back({shown(variant["totals"]["radiated_w"][point], "W"), false, true});
    if (volts.is_list())
      rows.back().push_back(
          {shown(volts[point], "V") + " <small>" + escape(variant["dial"]["volts_part"][point].text()) + "</small>",
           false, true});
  }
  std::string made;
  for (std::size_t k = 0; k < settings.size(); ++k) {
    const Ref values = settings[k]["made"];
    for (std::size_t i = 0; i < values.size(); ++i) {
      const Ref one = values[i];
      made += "<li>" + escape(settings[k]["knob"].text()) + ": " + shown(one["value"], knobs[k].unit, 4) + " is " + shown(one["first"], knobs[k].unit, 4) +
              (one["second"].json().is_number() ? " and " + shown(one["second"], knobs[k].unit, 4) + " in " + escape(one["joined"].text()) : " alone") + "</li>";
    }
  }
  if (!made.empty()) made = "<p>Made of preferred values:</p><ul>" + made + "</ul>";
  headings.insert(headings.end(), {">SWR", ">On the air"});
  if (volts.is_list()) headings.push_back(">Most volts, peak");
  return "<p class=\"note\">" +
         std::string(variant["tuned"].flag() ? "As the tuner set them." : "As written; nothing was tuned.") + "</p>" +
         table("Dial table", variant_name(variant), headings, rows) + made;
}

std::string warnings_of(const Ref& variant) {
  const Ref warnings = variant["warnings"];
  if (warnings.size() == 0) return "";
  std::string out = "<ul class=\"warnings\">";
  for (std::size_t w = 0; w < warnings.size(); ++w)
    out += "<li><span class=\"sign\" aria-hidden=\"true\">!</span><span>" + escape(warnings[w]["text"].text()) +
           " <code>" + escape(warnings[w]["code"].text()) + "</code></span></li>";
  return out + "</ul>";
}

}  // namespace

std::string section_planes(const Ref& document) {
  return section("planes", "Both ways from a plane",
                 "What stands toward the load, what stands toward the source, and what of the power the two let pass: "
                 "a mismatch of 0 dB is a conjugate match.",
                 for_each_variant(document, planes_of));
}

std::string section_ratings(const Ref& document) {
  return section("ratings", "What each part must stand",
                 "The upright mark in a bar is the limit. Near is from 70 % of it.",
                 for_each_variant(document, ratings_of));
}

std::string section_settings(const Ref& document) {
  return section("dial", "How to set the knobs",
                 "For the inside of the tuner\u2019s lid. ! marks a knob at the end of its range.",
                 for_each_variant(document, settings_of));
}

std::string section_warnings(const Ref& document) {
  return section("warnings", "Warnings", "", for_each_variant(document, warnings_of));
}

std::string section_cautions(const Ref& document) {
  const Ref cautions = document["cautions"];
  if (cautions.size() == 0) return "";
  std::string out = "<ul class=\"cautions\">";
  for (std::size_t c = 0; c < cautions.size(); ++c) out += "<li>" + escape(cautions[c].text()) + "</li>";
  return section("cautions", "Before you switch on", "", out + "</ul>");
}

std::string section_trust(const Ref& document) {
  return section("trust", "How far to trust the numbers", "", for_each_variant(document, [](const Ref& variant) {
                   const std::string sentence = variant["story"]["sentence"].text();
                   return sentence.empty() ? std::string() : "<p>" + escape(sentence) + "</p>";
                 }));
}

}  // namespace pictures
