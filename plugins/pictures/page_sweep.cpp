// SWR, R, X and what gets on the air, over frequency; all variants in one picture each.
#include <algorithm>
#include <cmath>

#include "markup.hpp"
#include "page_sections.hpp"
#include "plot.hpp"

namespace pictures {
namespace {

struct Figure {
  const char *id, *title, *unit, *path;
  int part;  ///< 0: the real part or a plain number, 1: the imaginary one
};

constexpr Figure figures[] = {
    {"swr", "SWR at the rig", "", "sources/0/swr", -1},
    {"air", "On the air, share of what the rig can give", "share", "totals/efficiency", -1},
    {"resistance", "R that the rig sees", "ohm", "sources/0/load_impedance_ohm", 0},
    {"reactance", "X that the rig sees", "ohm", "sources/0/load_impedance_ohm", 1},
};

Ref follow(Ref at, const std::string& path) {
  std::size_t from = 0;
  while (from < path.size()) {
    const std::size_t to = std::min(path.find('/', from), path.size());
    const std::string step = path.substr(from, to - from);
    at = std::isdigit(static_cast<unsigned char>(step[0])) ? at[static_cast<std::size_t>(std::stoul(step))]
                                                           : at[step.c_str()];
    from = to + 1;
  }
  return at;
}

std::vector<double> numbers(const Ref& series, int part) {
  std::vector<double> values;
  for (const Json& value : series.json())
    values.push_back(reports::number(part < 0 ? value : reports::item(value, static_cast<std::size_t>(part))));
  return values;
}

std::string table_of(const Ref& document, const Figure& figure) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const Ref variant = document["variants"][v], series = follow(variant, figure.path);
    std::vector<std::vector<Cell>> rows;
    for (const std::size_t point : shown_points(variant)) {
      const Ref value = figure.part < 0 ? series[point] : series[point][static_cast<std::size_t>(figure.part)];
      rows.push_back(
          {{shown(variant["frequencies_hz"][point], "Hz", 6), true}, {shown(value, figure.unit, 4), false, true}});
    }
    const std::string name = variant_name(variant);
    out += "<div" + variant_mark(v) + ">" + variant_heading(document, v) +
           table(figure.title, name, {"Frequency", std::string(">") + figure.title}, rows) + "</div>";
  }
  return out;
}

Plot plot_of(const Ref& document, const Figure& figure) {
  Plot plot;
  plot.id = std::string("plot-") + figure.id;
  plot.title = figure.title;
  plot.unit = figure.unit;
  plot.x_title = "frequency";
  plot.logarithmic = std::string(figure.id) == "swr";
  plot.from_zero = std::string(figure.id) == "air";
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const Ref variant = document["variants"][v];
    Curve curve;
    curve.x = numbers(variant["frequencies_hz"], -1);
    curve.marked = shown_points(variant);
    plot.x.insert(plot.x.end(), curve.x.begin(), curve.x.end());
    curve.name = variant_name(variant).empty() ? figure.title : variant_name(variant);
    curve.y = numbers(follow(variant, figure.path), figure.part);
    curve.style = curve.variant = v;
    curve.path = std::string(figure.path) + (figure.part < 0 ? "" : figure.part == 0 ? "|0" : "|1");
    plot.curves.push_back(std::move(curve));
  }
  std::sort(plot.x.begin(), plot.x.end());
  plot.x.erase(std::unique(plot.x.begin(), plot.x.end()), plot.x.end());
  plot.table = table_of(document, figure);
  return plot;
}

}  // namespace

std::vector<std::size_t> shown_points(const Ref& variant) {
  std::vector<std::size_t> points;
  for (const Json& point : variant["moments"]["shown"].json())
    if (point.is_number_unsigned()) points.push_back(point.get<std::size_t>());
  return points;
}

std::string section_sweep(const Ref& document) {
  const Ref first = document["variants"][std::size_t{0}];
  if (first["frequencies_hz"].size() == 0) return "";
  std::string out = "<div class=\"plots\">";
  for (const Figure& figure : figures) out += draw_plot(plot_of(document, figure));
  return section(
      "sweep", "Over the sweep",
      first["frequencies_hz"].size() == 1 ? "One frequency was asked for; a sweep would draw curves here." : "",
      out + "</div>");
}

}  // namespace pictures
