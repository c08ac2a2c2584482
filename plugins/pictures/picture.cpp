#include "picture.hpp"

#include <algorithm>
#include <cmath>

#include "html.hpp"
#include "markup.hpp"
#include "sheet.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

std::string attribute(const char* name, double value) {
  return std::string(" ") + name + "=\"" + coordinate(value) + '"';
}

std::string where(const Circuit& circuit, const Item& item) {
  std::string said;
  for (const int node : item.nodes) {
    said += said.empty() ? "" : ", ";
    said += node == ground ? std::string("ground") : circuit.nodes[static_cast<std::size_t>(node)];
  }
  return said;
}

std::string sentence(const Circuit& circuit, const Item& item) {
  std::string said = item.kind + ' ' + item.name;
  if (!item.value.empty()) said += ", " + item.value;
  said += " (" + where(circuit, item) + ')';
  if (item.symbol != Symbol::source && std::isfinite(item.heat_w)) said += ", heat " + reports::spell(item.heat_w, "W");
  return said;
}

std::string describe(const Circuit& circuit) {
  std::string said = "The network from the source to the loads, " + circuit.caption + ". ";
  for (std::size_t i = 0; i < circuit.items.size() && i < 60; ++i)
    said += (i == 0 ? "" : "; ") + sentence(circuit, circuit.items[i]);
  return said + '.';
}

void write_wires(std::string& out, const Sheet& sheet) {
  out += "<g class=\"wires\">";
  for (const Wire& wire : sheet.wires)
    out += "<path class=\"w\" data-node=\"" + std::to_string(wire.node) + "\" d=\"M" + coordinate(wire.from.x) + ' ' +
           coordinate(wire.from.y) + 'L' + coordinate(wire.to.x) + ' ' + coordinate(wire.to.y) + "\"/>";
  for (const Point& joint : sheet.joints)
    out += "<circle class=\"joint\"" + attribute("cx", joint.x) + attribute("cy", joint.y) + " r=\"3.6\"/>";
  out += "</g>";
}

/// What a script needs to say it again at another frequency.
std::string live(const Circuit& circuit, const Lettering& text) {
  if (text.item < 0) return "";
  const Item& item = circuit.items[static_cast<std::size_t>(text.item)];
  const Series& series = item.live_value;
  const std::string style = text.style;
  if (style == "watts" && !item.live_heat.empty())
    return " data-watts=\"" + item.live_heat + "\"" + (item.watts.ends_with(" heat") ? " data-after=\" heat\"" : "");
  if (style != "value" || series.path.empty()) return "";
  return " data-value=\"" + series.path + "\" data-unit=\"" + series.unit + "\"" +
         (series.after.empty() ? "" : " data-after=\"" + pretty(series.after) + '"');
}

void write_heat(std::string& out, const Circuit& circuit, const Sheet& sheet) {
  out += "<g class=\"heats\">";
  for (const Figure& figure : sheet.figures)
    if (!figure.heat.empty()) {
      const std::string& paths = circuit.items[static_cast<std::size_t>(figure.item)].live_heat;
      out += "<path class=\"heat\"" + (paths.empty() ? "" : " data-heat=\"" + paths + '"') + " d=\"" + figure.heat +
             "\" stroke-width=\"" + coordinate(figure.heat_width) + "\"/>";
    }
  out += "</g>";
}

void write_figures(std::string& out, const Circuit& circuit, const Sheet& sheet) {
  for (const Figure& figure : sheet.figures) {
    const Item& item = circuit.items[static_cast<std::size_t>(figure.item)];
    out += "<g class=\"part\"><title>" + escape(sentence(circuit, item)) + "</title>" + figure.svg + "</g>";
  }
}

void write_letterings(std::string& out, const Circuit& circuit, const Sheet& sheet) {
  out += "<g class=\"letters\">";
  for (const Lettering& text : sheet.letterings) {
    out += std::string("<text class=\"t-") + text.style + '"' + attribute("x", text.at.x) + attribute("y", text.at.y);
    if (text.centred) out += " text-anchor=\"middle\"";
    out += live(circuit, text);
    const bool name =
        std::string(text.style) == "name" || std::string(text.style) == "node" || std::string(text.style) == "box";
    out += '>' + (name ? escape(text.text) : pretty(text.text)) + "</text>";
  }
  out += "</g>";
}

void write_frames(std::string& out, const Sheet& sheet) {
  for (const Frame& frame : sheet.frames)
    out += "<rect class=\"frame\" rx=\"6\"" + attribute("x", frame.extent.x0) + attribute("y", frame.extent.y0) +
           attribute("width", frame.extent.x1 - frame.extent.x0) +
           attribute("height", frame.extent.y1 - frame.extent.y0) + "/>";
}

/// The source, the loads and what is hottest.
Circuit thinned(const Circuit& circuit) {
  std::vector<std::size_t> rank(circuit.items.size());
  for (std::size_t i = 0; i < rank.size(); ++i) rank[i] = i;
  std::stable_sort(rank.begin() + 1, rank.end(),
                   [&](std::size_t a, std::size_t b) { return circuit.items[a].share > circuit.items[b].share; });
  rank.resize(most_parts);
  std::sort(rank.begin(), rank.end());
  Circuit fewer = circuit;
  fewer.items.clear();
  for (const std::size_t i : rank) fewer.items.push_back(circuit.items[i]);
  std::vector<int> number(circuit.nodes.size(), ground);
  fewer.nodes.clear();
  for (Item& item : fewer.items)
    for (int& node : item.nodes) {
      if (node == ground) continue;
      int& kept = number[static_cast<std::size_t>(node)];
      if (kept == ground) {
        kept = static_cast<int>(fewer.nodes.size());
        fewer.nodes.push_back(circuit.nodes[static_cast<std::size_t>(node)]);
      }
      node = kept;
    }
  return fewer;
}

}  // namespace

Picture draw(const Circuit& whole) {
  const bool carpet = whole.items.size() > most_parts;
  const Circuit circuit = carpet ? thinned(whole) : whole;
  const Sheet sheet = lay_out(circuit, arrange(circuit));
  Picture picture;
  write_frames(picture.svg, sheet);
  write_heat(picture.svg, circuit, sheet);
  write_wires(picture.svg, sheet);
  write_figures(picture.svg, circuit, sheet);
  write_letterings(picture.svg, circuit, sheet);
  constexpr double margin = 14.0;
  picture.x = sheet.extent.x0 - margin;
  picture.y = sheet.extent.y0 - margin;
  picture.width = sheet.extent.x1 - sheet.extent.x0 + 2.0 * margin;
  picture.height = sheet.extent.y1 - sheet.extent.y0 + 2.0 * margin;
  picture.description = describe(circuit);
  picture.left_out = whole.items.size() - circuit.items.size();
  return picture;
}

}  // namespace pictures
