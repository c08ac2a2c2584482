// Load and impedance on the chart of the reflection coefficient: the circle holds every passive impedance, its middle
// is the reference.
#include <cmath>
#include <complex>

#include "lettering.hpp"
#include "markup.hpp"
#include "page_sections.hpp"
#include "plot.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

using Complex = std::complex<double>;
constexpr double centre = 190.0, radius = 160.0;

std::string at(Complex reflection) {
  const double share = std::abs(reflection) > 1.0 ? 1.0 / std::abs(reflection) : 1.0;
  const auto round = [](double value) { return coordinate(std::round(value * 10.0) / 10.0); };
  return round(centre + radius * share * reflection.real()) + ' ' + round(centre - radius * share * reflection.imag());
}

Complex place_of(Complex normalized) {
  return (normalized - 1.0) / (normalized + 1.0);
}

/// Circles of equal resistance, arcs of equal reactance, and circles of equal SWR around the middle.
std::string grid(double reference_ohm) {
  std::string out = "<circle class=\"rim\" cx=\"190\" cy=\"190\" r=\"160\"/><path class=\"axis\" d=\"M30 190H350\"/>";
  for (const double r : {0.2, 0.5, 1.0, 2.0, 5.0}) {
    const double from = centre + radius * place_of(r).real(), wide = centre + radius - from;
    out += "<circle class=\"grid\" cx=\"" + coordinate(from + wide / 2.0) + "\" cy=\"190\" r=\"" +
           coordinate(wide / 2.0) + "\"/>";
  }
  for (const double x : {0.2, 0.5, 1.0, 2.0, 5.0})
    for (const double side : {1.0, -1.0}) {
      std::string path;
      for (const double r : {0.0, 0.1, 0.2, 0.35, 0.5, 0.75, 1.0, 1.4, 2.0, 3.0, 5.0, 10.0, 30.0, 1000.0})
        path += (path.empty() ? 'M' : 'L') + at(place_of({r, side * x}));
      out += "<path class=\"grid\" d=\"" + path + "\"/>";
      const Complex end = place_of({0.0, side * x}) * 1.075;
      out += "<text class=\"tick\" text-anchor=\"middle\" x=\"" + coordinate(centre + radius * end.real()) + "\" y=\"" +
             coordinate(centre - radius * end.imag() + 4.0) + "\">" + (side > 0.0 ? "j" : "\u2212j") +
             pretty(reports::significant(x * reference_ohm, 3)) + "</text>";
    }
  for (const double swr : {1.5, 3.0}) {
    const double ring = radius * (swr - 1.0) / (swr + 1.0);
    out += "<circle class=\"ring\" cx=\"190\" cy=\"190\" r=\"" + coordinate(ring) +
           "\"/><text class=\"tick\" text-anchor=\"middle\" x=\"190\" y=\"" + coordinate(centre + ring + 4.0) +
           "\">SWR " + reports::significant(swr) + "</text>";
  }
  // The middle is left free for what is matched; the caption says what it is.
  for (const double r : {0.2, 0.5, 2.0, 5.0})
    out += "<text class=\"tick\" text-anchor=\"middle\" x=\"" + coordinate(centre + radius * place_of(r).real()) +
           "\" y=\"186\">" + pretty(reports::significant(r * reference_ohm, 3)) + "</text>";
  return out;
}

struct Trace {
  std::string name, path;
  std::vector<Complex> points;
};

std::string load_marker(int load) {
  constexpr const char* markers[] = {"3o", "1o", "2o"};
  return markers[load % 3];
}

std::string load_swatch(int load) {
  return "<svg class=\"swatch\" viewBox=\"0 0 34 12\" width=\"34\" height=\"12\" aria-hidden=\"true\"><path "
         "class=\"line vl\" d=\"M1 6H33\"/><use href=\"#m" +
         load_marker(load) + "\" class=\"mark vl\" x=\"17\" y=\"6\"/></svg>";
}

std::string trace_svg(const Trace& trace, const std::vector<double>& frequencies_hz,
                      const std::vector<std::size_t>& marked, std::size_t v, int load) {
  const Axis bands(frequencies_hz, 0.0, 1.0);
  // Loads are no variants, and have a colour of their own; several are told apart by their markers.
  const std::string kind = load < 0 ? std::to_string(v % 4) : "l", marker = load < 0 ? kind : load_marker(load);
  const std::size_t stride = std::max<std::size_t>(1, trace.points.size() / 300);
  std::string path;
  bool down = false;
  std::size_t band = 0;
  for (std::size_t i = 0; i < trace.points.size() && i < frequencies_hz.size(); ++i) {
    if (bands.piece_of(frequencies_hz[i]) != band) down = false;
    band = bands.piece_of(frequencies_hz[i]);
    if (i % stride != 0 && i + 1 != trace.points.size()) continue;
    if (!std::isfinite(std::abs(trace.points[i]))) {
      down = false;
      continue;
    }
    path += (down ? 'L' : 'M') + at(trace.points[i]);
    down = true;
  }
  std::string out = "<g class=\"trace" + std::string(load >= 0 ? " load" : "") + '"' + variant_mark(v) +
                    " data-path=\"" + trace.path + "\" data-name=\"" + escape(trace.name) + "\"><path class=\"line v" +
                    kind + "\" d=\"" + path + "\"/>";
  for (const std::size_t i : marked) {
    if (i >= trace.points.size() || !std::isfinite(std::abs(trace.points[i]))) continue;
    const std::string place = at(trace.points[i]);
    const std::size_t blank = place.find(' ');
    out += "<use href=\"#m" + marker + "\" class=\"mark v" + kind + "\" x=\"" + place.substr(0, blank) + "\" y=\"" +
           place.substr(blank + 1) + "\"/>";
  }
  return out + "</g>";
}

std::vector<double> list_of(const Ref& series) {
  std::vector<double> values;
  for (const Json& value : series.json()) values.push_back(reports::number(value));
  return values;
}

std::vector<Complex> complex_list(const Ref& series) {
  std::vector<Complex> values;
  for (const Json& value : series.json())
    values.push_back({reports::number(reports::item(value, 0)), reports::number(reports::item(value, 1))});
  return values;
}

std::string chart_of(const Ref& document, std::size_t v, double reference_ohm) {
  const Ref variant = document["variants"][v], source = variant["sources"][std::size_t{0}], loads = variant["loads"];
  const std::vector<double> frequencies_hz = list_of(variant["frequencies_hz"]);
  const std::vector<std::size_t> marked = shown_points(variant);
  std::string svg = grid(reference_ohm), legend, rows;
  const auto add = [&](const std::string& name, const std::string& path, std::vector<Complex> impedances, int load) {
    for (Complex& one : impedances) one = place_of(one / reference_ohm);
    svg += trace_svg({name, path, impedances}, frequencies_hz, marked, v, load);
    legend += "<li>" + (load < 0 ? swatch(v) : load_swatch(load)) + "<span>" + escape(name) + "</span></li>";
  };
  for (std::size_t l = 0; l < loads.size() && l < 3; ++l)
    add("load " + loads[l]["name"].text(), "loads/" + std::to_string(l) + "/impedance_ohm",
        complex_list(loads[l]["impedance_ohm"]), static_cast<int>(l));
  add("what the rig sees", "sources/0/load_impedance_ohm", complex_list(source["load_impedance_ohm"]), -1);

  std::vector<Heading> headings{"Frequency", ">The rig sees", ">SWR"};
  for (std::size_t l = 0; l < loads.size(); ++l) headings.push_back(">Load " + escape(loads[l]["name"].text()));
  std::vector<std::vector<Cell>> table_rows;
  for (const std::size_t point : marked) {
    table_rows.push_back({{shown(variant["frequencies_hz"][point], "Hz", 6), true},
                          {shown_complex(source["load_impedance_ohm"][point]), false, true},
                          {shown(source["swr"][point], ""), false, true}});
    for (std::size_t l = 0; l < loads.size(); ++l)
      table_rows.back().push_back({shown_complex(loads[l]["impedance_ohm"][point]), false, true});
  }
  const std::string name = variant_name(variant), id = "circle-" + std::to_string(v);
  return "<figure class=\"plot circle\"" + variant_mark(v) + "><figcaption id=\"" + id + "\">" +
         (name.empty() ? "Reflection chart" : escape(name)) + ", middle " +
         pretty(reports::spell(reference_ohm, "ohm")) +
         "</figcaption><svg viewBox=\"0 0 380 380\" role=\"img\" aria-labelledby=\"" + id +
         "\" data-plot=\"circle\" data-reference=\"" + exact(reference_ohm) + "\">" + svg +
         "<g class=\"cursor\"></g></svg><ul class=\"legend\">" + legend + "</ul><p class=\"readout\" hidden></p>" +
         details("These numbers as a table", table("Impedances", name, headings, table_rows)) + "</figure>\n";
}

}  // namespace

std::string section_reflection(const Ref& document) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const Ref source = document["variants"][v]["sources"][std::size_t{0}];
    double reference_ohm = source["reference_ohm"].number();
    if (!std::isfinite(reference_ohm)) reference_ohm = source["reference_ohm"][std::size_t{0}].number();
    if (reference_ohm > 0.0) out += chart_of(document, v, reference_ohm);
  }
  return section("reflection", "Load and match on the reflection chart",
                 "Right of the middle is high resistance, left is low; above is inductive, below capacitive; the rim "
                 "reflects all. On a dashed ring the SWR is the same all round. Numbers are ohms.",
                 out.empty() ? "" : "<div class=\"plots\">" + out + "</div>");
}

}  // namespace pictures
