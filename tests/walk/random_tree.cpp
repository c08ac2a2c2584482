#include "random_tree.hpp"

#include <cmath>
#include <random>
#include <sstream>

namespace wattfall::test {
namespace {

class Grower {
 public:
  Grower(unsigned seed, bool lossless) : random_(seed), lossless_(lossless) {}

  std::string grow() {
    text_ = "design \"random tree\"\nsource rig at desk : 100 W, " + number(10.0, 200.0) + (pick(2) ? "+j" : "-j") + number(1.0, 100.0) + " ohm\n";
    branch("desk", "ground", 2 + pick(3), true);
    return text_ + "sweep at [1.83 MHz, 7.1 MHz, 28.4 MHz]\n";
  }

 private:
  int pick(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
  std::string number(double a, double b) {
    std::ostringstream text;
    text.precision(15);
    text << a * std::pow(b / a, static_cast<double>(random_() >> 11) * 0x1p-53);
    return text.str();
  }
  std::string fresh(const char* stem) { return stem + std::to_string(++count_); }
  void say(const std::string& kind, const std::string& places, const std::string& values) { text_ += kind + ' ' + fresh("p") + ' ' + places + " : " + values + '\n'; }

  /// Something between two nodes; `holds_load`: the load stands in it.
  void branch(const std::string& a, const std::string& b, int depth, bool holds_load) {
    if (depth == 0) return leaf(a, b, holds_load);
    const bool first = pick(2) == 0;
    switch (pick(4)) {
      case 0: {
        const std::string middle = fresh("n");
        branch(a, middle, depth - 1, holds_load && first);
        return branch(middle, b, depth - 1, holds_load && !first);
      }
      case 1:
        branch(a, b, depth - 1, holds_load && first);
        return branch(a, b, depth - 1, holds_load && !first);
      case 2:
        // Ports against ground, where one end is ground.
        if (b != "ground") return branch(a, b, depth - 1, holds_load);
        return through(a, depth, holds_load);
      default:
        return around(a, b, depth, holds_load);
    }
  }

  /// A two-port against ground with a branch behind it.
  void through(const std::string& a, int depth, bool holds_load) {
    const std::string far = fresh("n");
    two_port("from " + a + " to " + far, far);
    branch(far, "ground", depth - 1, holds_load);
  }

  /// The same between any two nodes, by pairs.
  void around(const std::string& a, const std::string& b, int depth, bool holds_load) {
    const std::string c = fresh("n"), d = fresh("n");
    const std::string places = "from (" + a + ' ' + b + ") to (" + c + ' ' + d + ')';
    pick(2) ? say("transformer", places, "turns 1:" + number(0.3, 3.0)) : say("line", places, line());
    branch(c, d, depth - 1, holds_load);
  }

  void two_port(const std::string& places, const std::string&) {
    switch (pick(lossless_ ? 2 : 4)) {
      case 0: return say("line", places, line());
      case 1: return say("transformer", places, "turns 1:" + number(0.3, 3.0));
      case 2: return say("transformer", places, "impedance 1:4, winding 0.2 ohm, leakage 100 nH, magnetizing 20 uH, core Q 5");
      default: return say("pad", places, number(0.1, 6.0) + " dB");
    }
  }

  std::string line() {
    return number(0.2, 40.0) + " m, " + number(25.0, 600.0) + " ohm, velocity 0.8" + (lossless_ ? "" : ", loss " + number(0.1, 8.0) + " dB/100m at 10 MHz");
  }

  void leaf(const std::string& a, const std::string& b, bool is_load) {
    const std::string places = b == "ground" ? "at " + a : "from " + a + " to " + b;
    if (is_load) {
      text_ += "load ant " + (b == "ground" ? "at " + a : "at (" + a + ' ' + b + ')') + " : " + number(5.0, 500.0) + (pick(2) ? "+j" : "-j") + number(1.0, 500.0) + " ohm\n";
      return;
    }
    switch (pick(lossless_ ? 2 : 4)) {
      case 0: return say("inductor", places, number(0.05, 30.0) + " uH" + (lossless_ ? "" : ", Q " + number(50.0, 400.0) + ", capacitance 2 pF"));
      case 1: return say("capacitor", places, number(5.0, 2000.0) + " pF" + (lossless_ ? "" : ", Q 1000, inductance 5 nH"));
      case 2: return say("resistor", places, number(1.0, 3000.0) + " ohm");
      default: return say("stub", b == "ground" ? places : "at (" + a + ' ' + b + ')', line() + (pick(2) ? ", open" : ", shorted"));
    }
  }

  std::mt19937_64 random_;
  bool lossless_;
  std::string text_;
  int count_ = 0;
};

}  // namespace

std::string random_tree(unsigned seed, bool lossless) { return Grower(seed, lossless).grow(); }

}  // namespace wattfall::test
