#include "picture_parts.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdlib>
#include <map>
#include <stdexcept>

namespace pictures_tests {
namespace {

/// Every coordinate of a path of absolute M, L, H, V, C. Control points lie outside a curve, so the box is on the safe side.
Box box_of_path(const std::string& data) {
  Box box;
  char command = 'M';
  double x = 0.0, y = 0.0;
  const char* at = data.c_str();
  while (*at != '\0') {
    if (std::isalpha(static_cast<unsigned char>(*at))) {
      command = *at++;
      if (std::string("MLHVCZ").find(command) == std::string::npos) throw std::runtime_error("unexpected path command in " + data);
      continue;
    }
    char* end = nullptr;
    const double value = std::strtod(at, &end);
    if (end == at) {
      ++at;
      continue;
    }
    at = end;
    if (command == 'V') y = value;
    else x = value;
    if (command != 'H' && command != 'V') {
      y = std::strtod(at, &end);
      if (end == at) throw std::runtime_error("half a point in " + data);
      at = end;
    }
    box.add(x, y);
  }
  return box;
}

/// The mean of a wide face: 0.6 of the letter height, 0.66 where bold; more beyond ASCII.
Box box_of_text(const pugi::xml_node& text) {
  const std::string style = text.attribute("class").value(), said = text.child_value();
  const bool bold = style == "t-name" || style == "t-watts" || style == "t-box";
  const double pixels = style == "t-name" ? 13.0 : style == "t-node" || style == "t-box" ? 11.5 : 12.5;
  double width = 0.0;
  for (const char byte : said) {
    const auto c = static_cast<unsigned char>(byte);
    if ((c & 0xC0) != 0x80) width += pixels * (c < 0x80 ? (bold ? 0.66 : 0.60) : 1.0);
  }
  const double x = text.attribute("x").as_double(), y = text.attribute("y").as_double();
  const double from = std::string(text.attribute("text-anchor").value()) == "middle" ? x - width / 2.0 : x;
  return {from, y - 0.76 * pixels, from + width, y + 0.24 * pixels};
}

Net read_net(const pugi::xml_node& svg) {
  Net net;
  for (const pugi::xml_node& wire : svg.select_node("g[@class='wires']").node().children("path")) {
    net.wires.push_back({wire.attribute("d").value(), box_of_path(wire.attribute("d").value())});
    net.nodes.push_back(wire.attribute("data-node").as_int());
  }
  for (const pugi::xml_node& joint : svg.select_node("g[@class='wires']").node().children("circle")) {
    const double x = joint.attribute("cx").as_double(), y = joint.attribute("cy").as_double();
    net.joints.push_back({x, y, x, y});
  }
  for (const pugi::xpath_node& part : svg.select_nodes("g[@class='part']")) {
    const std::string name = part.node().child_value("title");
    for (const pugi::xml_node& stroke : part.node().children()) {
      if (std::string(stroke.name()) == "path") net.symbols.push_back({name, box_of_path(stroke.attribute("d").value())});
      if (std::string(stroke.name()) == "circle") {
        const double x = stroke.attribute("cx").as_double(), y = stroke.attribute("cy").as_double(), r = stroke.attribute("r").as_double();
        net.symbols.push_back({name, {x - r, y - r, x + r, y + r}});
      }
    }
  }
  for (const pugi::xml_node& text : svg.select_node("g[@class='letters']").node().children("text"))
    net.letters.push_back({text.child_value(), box_of_text(text)});
  return net;
}

/// Whether a wire goes on from (x, y) to the left, right, up, down.
unsigned ways_from(const Box& wire, double x, double y) {
  if (x < wire.x0 - 0.01 || x > wire.x1 + 0.01 || y < wire.y0 - 0.01 || y > wire.y1 + 0.01) return 0;
  return (x > wire.x0 + 0.01 ? 1U : 0U) | (x < wire.x1 - 0.01 ? 2U : 0U) | (y > wire.y0 + 0.01 ? 4U : 0U) | (y < wire.y1 - 0.01 ? 8U : 0U);
}

void check_meeting(const Net& net, double x, double y, std::vector<std::string>& all) {
  std::map<int, unsigned> ways;
  for (std::size_t w = 0; w < net.wires.size(); ++w) {
    const unsigned here = ways_from(net.wires[w].box, x, y);
    for (const auto& [node, others] : ways)
      if (node != net.nodes[w] && (here & others) != 0) all.push_back("wires of two nodes share a stretch at " + net.wires[w].name);
    if (here != 0) ways[net.nodes[w]] |= here;
  }
  if (ways.size() > 1 && std::any_of(ways.begin(), ways.end(), [](const auto& one) { return std::popcount(one.second) == 1; }))
    all.push_back("a wire ends on another node's at " + std::to_string(x) + ' ' + std::to_string(y));
  const bool joined = std::any_of(net.joints.begin(), net.joints.end(), [&](const Box& j) { return std::abs(j.x0 - x) < 0.05 && std::abs(j.y0 - y) < 0.05; });
  const bool three = std::any_of(ways.begin(), ways.end(), [](const auto& one) { return std::popcount(one.second) >= 3; });
  if (three != joined) all.push_back((three ? "no joint at " : "a joint for nothing at ") + std::to_string(x) + ' ' + std::to_string(y));
}

void check_meetings(const Net& net, std::vector<std::string>& all) {
  for (const Named& one : net.wires)
    for (const Named& other : net.wires)
      if (one.box.x0 == one.box.x1 && other.box.y0 == other.box.y1) check_meeting(net, one.box.x0, other.box.y0, all);
}

}  // namespace

void Box::add(double x, double y) {
  x0 = std::min(x0, x);
  y0 = std::min(y0, y);
  x1 = std::max(x1, x);
  y1 = std::max(y1, y);
}

std::vector<Net> read_nets(const std::string& svg) {
  pugi::xml_document document;
  const pugi::xml_parse_result parsed = document.load_buffer(svg.data(), svg.size(), pugi::parse_full);
  if (!parsed) throw std::runtime_error(std::string("no XML: ") + parsed.description());
  std::vector<Net> nets;
  for (const pugi::xpath_node& found : document.select_nodes("//svg[@class='net']")) nets.push_back(read_net(found.node()));
  if (nets.empty()) throw std::runtime_error("no network in the drawing");
  return nets;
}

std::vector<std::string> faults(const Net& net) {
  std::vector<std::string> all;
  for (std::size_t i = 0; i < net.letters.size(); ++i) {
    const Named& text = net.letters[i];
    for (std::size_t k = 0; k < i; ++k)
      if (text.box.meets(net.letters[k].box)) all.push_back("`" + text.name + "` lies over `" + net.letters[k].name + "`");
    for (const Named& wire : net.wires)
      if (text.box.meets(wire.box.grown(0.9))) all.push_back("a wire " + wire.name + " runs through `" + text.name + "`");
    for (const Named& symbol : net.symbols)
      if (text.box.meets(symbol.box)) all.push_back("`" + text.name + "` lies over the symbol of " + symbol.name);
  }
  for (const Named& symbol : net.symbols) {
    for (const Named& wire : net.wires) {
      // Wires end at a symbol's edge: only what reaches further in than the width of a stroke is a fault.
      const Box inside = symbol.box.grown(-1.0);
      if (inside.x0 < inside.x1 && inside.y0 < inside.y1 && wire.box.meets(inside)) all.push_back("a wire " + wire.name + " runs through " + symbol.name);
    }
    for (const Named& other : net.symbols)
      if (symbol.name < other.name && symbol.box.grown(-1.0).meets(other.box.grown(-1.0))) all.push_back(symbol.name + " lies over " + other.name);
  }
  check_meetings(net, all);
  return all;
}

}  // namespace pictures_tests
