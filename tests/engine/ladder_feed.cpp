#include "ladder_feed.hpp"

#include <sstream>

namespace wattfall::test {

std::string exact(double value) {
  std::ostringstream text;
  text.precision(17);
  text << value;
  return text.str();
}

std::string feed_text(const tuner_test::Ladder& ladder, const tuner_test::Bounds& bounds, const std::string& goal) {
  std::string text = "design \"random\"\nsource rig at n0 : 100 W, 50 ohm\n", knobs;
  int node = 0;
  for (std::size_t i = 0; i < ladder.parts.size(); ++i) {
    const tuner_test::Part& part = ladder.parts[i];
    const std::string here = "n" + std::to_string(node);
    const std::string name = "P" + std::to_string(i), unit = part.coil ? " H" : " F";
    text += (part.coil ? "inductor " : "capacitor ") + name +
            (part.series ? " from " + here + " to n" + std::to_string(++node) : " at " + here) + " : adjustable " +
            exact(bounds.lower[i]) + unit + " to " + exact(bounds.upper[i]) + unit + ", Q " + exact(part.q) + "\n";
    knobs += (i == 0 ? "" : ", ") + name;
  }
  const char* sign = ladder.load.imag() < 0 ? " - j" : " + j";
  text += "load ant at n" + std::to_string(node) + " : " + exact(ladder.load.real()) + sign + exact(std::abs(ladder.load.imag())) + " ohm\n";
  text += "sweep at [" + exact(ladder.frequency_hz) + " Hz]\n";
  return text + "tune " + knobs + " at " + exact(ladder.frequency_hz) + " Hz for " + goal + "\n";
}

}  // namespace wattfall::test
