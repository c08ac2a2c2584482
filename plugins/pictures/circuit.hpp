// The network as a drawing needs it, read from one variant of the result document: what stands between which nodes, and
// what to write beside it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "reading.hpp"

namespace pictures {

using reports::Json;

inline constexpr int ground = -1;

enum class Symbol {
  source,
  resistor,
  inductor,
  capacitor,
  line,
  stub_open,
  stub_shorted,
  antenna,
  load,
  transformer,
  coupled,
  choke,
  pad,
  two_port,
  one_port,
  selector
};

/// Where a script finds a value at another frequency: the path of a series within the variant, and how it is spelled.
struct Series {
  std::string path, unit, after;
};

struct Item {
  std::string name;   ///< whole, for the tooltip
  std::string label;  ///< shown: without its box's name where that is plain
  std::string value;  ///< "118.4 pF"; may be empty
  std::string kind;
  std::string box;
  Symbol symbol = Symbol::one_port;
  std::vector<int> nodes;  ///< as in the document; `ground` is -1
  bool adjustable = false;
  double impedance_ohm = 0.0;  ///< lines: their own; NaN where it is complex
  int choice = -1;             ///< selectors: which node is joined, from 0
  std::string watts;           ///< "1.4 W", "3.0 W heat"; empty where it is next to nothing
  Series live_value;           ///< what `value` is read from; empty where it is the same all over the sweep
  std::string
      live_heat;  ///< paths of series that add up to its heat, a blank between; empty where the drawing is not live
  std::vector<std::string> wider;  ///< other values and watts that will stand there as the frequency moves
  double warmest = 0.0;            ///< the largest share of the sweep
  double heat_w = 0.0;             ///< NaN where it does not exist
  double share = 0.0;              ///< of the available power
};

bool is_two_port(const Item& item);

struct BoxName {
  std::string name, kind;
};

struct Circuit {
  std::vector<std::string> nodes;
  std::vector<Item> items;  ///< [0] is the source
  std::vector<BoxName> boxes;
  std::string heading;    ///< the variant's name; may be empty
  std::string caption;    ///< "at 7.1 MHz, where least gets on the air: 71.6 of 100 W on the air, ..."
  bool switched = false;  ///< live: a selector does not stay where it is drawn
  std::size_t point = 0;  ///< index of the frequency shown
};

/// At the point where least gets on the air: there the heat is. Where that is a filter's stop band, at the best point.
/// One that is to be `live` knows too what will stand at the parts as the frequency moves.
Circuit read_circuit(const Json& variant, bool live = false);

}  // namespace pictures
