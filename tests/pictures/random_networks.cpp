#include "random_networks.hpp"

#include <algorithm>
#include <random>

namespace pictures_tests {

std::string random_feed(std::uint32_t seed, int nodes, int extra_parts) {
  std::mt19937 random(seed);
  const auto pick = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
  const auto node = [](int n) { return "node" + std::to_string(n); };
  int made = 0;
  const auto name = [&] {
    ++made;
    return (made % 7 == 3 ? "a_rather_long_part_name_" : "P") + std::to_string(made);
  };
  std::string feed = "design \"tangle " + std::to_string(seed) + "\"\nsource rig at node0 : 100 W, 50 ohm\n";
  const auto one_port = [&](const std::string& places) {
    switch (pick(3)) {
      case 0: feed += "resistor " + name() + ' ' + places + " : 120 ohm\n"; break;
      case 1: feed += "inductor " + name() + ' ' + places + " : 2.2 uH, Q 150\n"; break;
      default: feed += "capacitor " + name() + ' ' + places + " : 220 pF, Q 900\n";
    }
  };
  for (int n = 1; n < nodes; ++n) {
    const std::string places = "from " + node(n - 1 - pick(std::min(n, 2))) + " to " + node(n);
    if (pick(3) == 0) feed += "line " + name() + ' ' + places + " : 7 m of RG-58\n";
    else one_port(places);
  }
  for (int extra = 0; extra < extra_parts; ++extra) {
    const int a = pick(nodes), b = pick(nodes);
    const std::string places = "from " + node(a) + " to " + node(b);
    switch (a == b ? 0 : pick(9)) {
      case 0: one_port("at " + node(a)); break;
      case 1: feed += "stub " + name() + " at " + node(a) + " : 3 m of RG-213, " + (pick(2) == 0 ? "open\n" : "shorted\n"); break;
      case 2: feed += "transformer " + name() + ' ' + places + " : turns 1:2, winding 0.3 ohm, leakage 0.2 uH, magnetizing 20 uH\n"; break;
      case 3: {
        const std::string pair = "pair" + std::to_string(extra);
        feed += "choke " + name() + " from (" + node(a) + " ground) to (" + pair + "a " + pair + "b) : 800 ohm\n";
        one_port("from " + pair + "a to " + pair + "b");
        one_port("from " + pair + "b to " + node(b));
        break;
      }
      case 4: {
        const std::string end = "contact" + std::to_string(extra);
        feed += "selector " + name() + " from " + node(a) + " to (" + end + ' ' + node(b) + ") : " + end + '\n';
        one_port("at " + end);
        break;
      }
      case 5: feed += "pad " + name() + ' ' + places + " : 3 dB\n"; break;
      default: one_port(places);
    }
  }
  return feed + "load wires at " + node(nodes - 1) + " : 30 - j60 ohm, radiates 90 %\nsweep at [7.1 MHz]\n";
}

}  // namespace pictures_tests
