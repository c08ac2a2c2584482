// Volts and amps along each line, where the reports dwell.
#include <algorithm>

#include "markup.hpp"
#include "page_sections.hpp"
#include "plot.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

/// The curve at a point, else the first.
Ref sampled_at(const Ref& along, std::size_t point) {
  for (std::size_t a = 0; a < along.size(); ++a)
    if (along[a]["point"].count() == point) return along[a];
  return along[std::size_t{0}];
}

std::string curve_table(const Ref& samples, const std::string& variant, const std::string& name, const char* key,
                        const char* title, const char* unit) {
  std::vector<std::vector<Cell>> rows;
  const std::size_t count = samples["from_load_m"].size(), stride = std::max<std::size_t>(1, (count - 1) / 12);
  for (std::size_t i = 0; i < count; i += stride)
    rows.push_back({{shown(samples["from_load_m"][i], "m", 4), true}, {shown(samples[key][i], unit), false, true}});
  return table("Along " + name + ": " + title, variant, {"From the load end", std::string(">") + title}, rows);
}

std::vector<double> list_of(const Ref& series) {
  std::vector<double> values;
  for (const Json& value : series.json()) values.push_back(reports::number(value));
  return values;
}

/// "26 m of RG-58", or its impedance where it is no cable.
std::string made_of(const Ref& part, std::size_t point) {
  const Ref length = part["length_m"];
  const std::string cable = part["cable"].text();
  const std::string kind = cable.empty() ? ", " + shown(part["z0_ohm"], "ohm") : " of " + escape(cable);
  return shown(length.is_list() ? length[point] : length, "m", 4) + kind;
}

std::string curves_of(const Ref& variant, std::size_t v, std::size_t p) {
  const Ref part = variant["parts"][p], samples = sampled_at(part["along"], variant["moments"]["worst"].count());
  const std::string name = part["name"].text();
  std::string out;
  for (const auto& [key, title, unit] :
       {std::tuple{"volts_peak", "volts, peak", "V"}, std::tuple{"amps_rms", "amps, rms", "A"}}) {
    Plot plot;
    plot.id = "along-" + std::to_string(v) + '-' + std::to_string(p) + '-' + unit;
    plot.title = name + ": " + title + ", at " + reports::spell(samples["frequency_hz"].number(), "Hz", 6);
    plot.unit = unit;
    plot.at_hz = samples["frequency_hz"].number();
    plot.x_title = "from the load end";
    plot.x_unit = "m";
    plot.x = list_of(samples["from_load_m"]);
    plot.from_zero = true;
    plot.height = 210.0;
    plot.curves.push_back(
        {name, plot.x, list_of(samples[key]), {}, v, v, "parts/" + std::to_string(p) + "/along/" + key});
    plot.table = curve_table(samples, variant_name(variant), name, key, title, unit);
    out += draw_plot(plot);
  }
  return out;
}

}  // namespace

std::string section_lines(const Ref& document) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const Ref variant = document["variants"][v], parts = variant["parts"];
    std::vector<std::vector<Cell>> rows;
    std::string curves;
    const std::size_t worst = variant["moments"]["worst"].count();
    for (std::size_t p = 0; p < parts.size(); ++p) {
      if (!parts[p]["volts_peak_along"].is_list()) continue;
      const Ref part = parts[p], highest = part["highest"];
      rows.push_back({{escape(part["name"].text()), true},
                      {made_of(part, worst)},
                      {shown(part["loss_db"][worst], "dB"), false, true},
                      {shown(part["matched_loss_db"][worst], "dB"), false, true},
                      {shown(part["swr_load_end"][worst], ""), false, true},
                      {shown(highest["volts_peak"], "V") + " at " + shown(highest["volts_at_m"], "m"), false, true},
                      {shown(highest["amps_rms"], "A") + " at " + shown(highest["amps_at_m"], "m"), false, true}});
      if (part["along"].size() > 0 && rows.size() <= 8) curves += curves_of(variant, v, p);
    }
    if (rows.empty()) continue;
    const std::string name = variant_name(variant);
    out += "<div" + variant_mark(v) + ">" + variant_heading(document, v) +
           table("The lines where least gets on the air", name,
                 {"Line", "Made of", ">Loss as it stands", ">Loss if matched", ">SWR at the load end",
                  ">Most volts, peak", ">Most amps, rms"},
                 rows, Narrow::stacks) +
           "<div class=\"plots\">" + curves + "</div></div>\n";
  }
  return section("lines", "On the lines",
                 "Metres count from the load end. The most volts and amps are those of the whole sweep.", out);
}

}  // namespace pictures
