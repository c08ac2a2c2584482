#include "random_feed.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <sstream>

namespace wattfall::test {
namespace {

class Maker {
 public:
  Maker(unsigned seed, Choices choices) : random_(seed), choices_(choices) {}

  RandomFeed make() {
    feed_.statements.push_back("source rig at @desk : 100 W, 50 ohm");
    std::string here = "@desk";
    const int sections = 2 + pick(5);
    for (int i = 0; i < sections; ++i) {
      const std::string there = i + 1 == sections ? "@feed" : "@m" + std::to_string(i);
      section(here, there);
      if (pick(2) == 0) across(there);
      nodes_.push_back(there);
      here = there;
    }
    if (pick(3) == 0) around();
    if (pick(4) == 0) coupled_coils();
    add("load ant at @feed : " + number(5.0, 2000.0) + (pick(2) ? " + j" : " - j") + number(1.0, 1500.0) + " ohm");
    add("sweep at [1.83 MHz, 7.1 MHz, 28.4 MHz]");
    return feed_;
  }

 private:
  int pick(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
  double between(double a, double b) { return a * std::pow(b / a, static_cast<double>(random_() >> 11) * 0x1p-53); }
  std::string number(double a, double b) {
    std::ostringstream text;
    text.precision(15);
    text << between(a, b);
    return text.str();
  }
  std::string name(const char* stem) { return stem + std::to_string(++parts_); }
  void add(const std::string& statement) { feed_.statements.push_back(statement); }

  std::string coil() {
    std::string text = number(0.05, 30.0) + " uH";
    if (choices_.lossless) return text;
    const char* losses[] = {", Q ", ", resistance "};
    const int which = pick(2);
    text += losses[which] + (which == 0 ? number(50.0, 400.0) + (pick(2) ? " at 7 MHz" : "") : number(0.05, 5.0) + " ohm");
    const int stray = pick(4);
    if (stray == 0) text += ", capacitance " + number(0.5, 10.0) + " pF";
    if (stray == 1) text += ", resonance " + number(20.0, 200.0) + " MHz";
    return text;
  }

  std::string capacitor() {
    std::string text = number(5.0, 2000.0) + " pF";
    if (choices_.lossless) return text;
    if (pick(2)) text += ", Q " + number(300.0, 3000.0);
    if (pick(3) == 0) text += ", tangent " + number(1e-5, 1e-2);
    if (pick(3) == 0) text += ", inductance " + number(1.0, 50.0) + " nH";
    return text;
  }

  std::string line() {
    std::string text = choices_.awkward && pick(2) ? std::to_string(90 * (1 + pick(6))) + " deg at 7.1 MHz" : number(0.2, 60.0) + " m";
    text += ", " + number(25.0, 600.0) + " ohm, velocity " + number(0.6, 0.99);
    if (!choices_.lossless && pick(4)) text += ", loss " + number(0.1, 8.0) + " dB/100m at 10 MHz";
    return text;
  }

  void section(const std::string& a, const std::string& b) {
    const std::string places = " from " + a + " to " + b + " : ";
    switch (pick(choices_.lossless ? 5 : 8)) {
      case 0: return add("inductor " + name("L") + places + coil());
      case 1: return add("capacitor " + name("C") + places + capacitor());
      case 2: return add("line " + name("W") + places + line());
      case 3: return transformer(places);
      case 4: return balanced(a, b);
      case 5: return add("resistor " + name("R") + places + number(0.1, 300.0) + " ohm, inductance " + number(1.0, 100.0) + " nH");
      case 6: return add("pad " + name("A") + places + number(0.1, 20.0) + " dB, " + number(25.0, 100.0) + " ohm");
      default: return add("line " + name("W") + places + number(3.0, 50.0) + " m of RG-58");
    }
  }

  void transformer(const std::string& places) {
    std::string text = "transformer " + name("T") + places + "turns 1:" + number(0.2, 7.0);
    if (!choices_.lossless && pick(3)) {
      text += ", winding " + number(0.05, 1.0) + " ohm, core " + number(500.0, 20000.0) + " ohm";
      if (pick(2)) text += ", magnetizing " + number(5.0, 100.0) + " uH";
    }
    if (!choices_.awkward && pick(2)) text += ", leakage " + number(10.0, 500.0) + " nH";
    add(text);
  }

  /// Into a pair of wires, along it, and back: a section that no conductor joins to ground.
  void balanced(const std::string& a, const std::string& b) {
    const std::string p = "@p" + std::to_string(++parts_), q = "@q" + std::to_string(parts_), r = "@r" + std::to_string(parts_),
                      s = "@s" + std::to_string(parts_);
    add("transformer " + name("T") + " from (" + a + " ground) to (" + p + " " + q + ") : turns 1:" + number(0.5, 3.0));
    add("line " + name("W") + " from (" + p + " " + q + ") to (" + r + " " + s + ") : " + line());
    if (pick(2)) add("capacitor " + name("C") + " from " + r + " to " + s + " : " + capacitor());
    add("transformer " + name("T") + " from (" + r + " " + s + ") to (" + b + " ground) : turns 1:" + number(0.3, 2.0));
  }

  void across(const std::string& node) {
    switch (pick(5)) {
      case 0: return add("inductor " + name("L") + " at " + node + " : " + coil());
      case 1: return add("capacitor " + name("C") + " at " + node + " : " + capacitor());
      case 2: return add("stub " + name("S") + " at " + node + " : " + line() + (pick(2) ? ", open" : ", shorted"));
      case 3: return resonant_pair(node);
      default:
        return add(choices_.lossless ? "capacitor " + name("C") + " at " + node + " : " + capacitor()
                                     : "resistor " + name("R") + " at " + node + " : " + number(20.0, 5000.0) + " ohm, capacitance " + number(0.5, 20.0) + " pF");
    }
  }

  /// Coil and capacitor in series to ground; awkward: resonant at 7.1 MHz to a few parts in 1e9, where a trap shorts all to ground.
  void resonant_pair(const std::string& node) {
    const std::string inner = "@x" + std::to_string(++parts_);
    const double henries = between(0.5e-6, 20e-6);
    const double w = 2.0 * 3.141592653589793 * 7.1e6 * (choices_.awkward ? 1.0 + 1e-4 : 1.3);
    std::ostringstream coil_text, capacitor_text;
    coil_text.precision(15);
    capacitor_text.precision(15);
    coil_text << henries * 1e6 << " uH" << (choices_.lossless ? "" : ", Q 250");
    capacitor_text << 1e12 / (w * w * henries) << " pF";
    add("inductor " + name("L") + " from " + node + " to " + inner + " : " + coil_text.str());
    add("capacitor " + name("C") + " at " + inner + " : " + capacitor_text.str());
  }

  void around() {
    const std::string a = nodes_[pick(static_cast<int>(nodes_.size()))];
    if (a != "@desk") add("capacitor " + name("C") + " from @desk to " + a + " : " + capacitor());
  }

  void coupled_coils() {
    const std::string first = name("L"), second = name("L");
    add("inductor " + first + " at @feed : " + coil());
    add("inductor " + second + " at " + nodes_[pick(static_cast<int>(nodes_.size()))] + " : " + coil());
    add("coupling " + name("K") + " between " + first + " and " + second + " : factor " + number(0.05, 0.9));
  }

  std::mt19937_64 random_;
  Choices choices_;
  RandomFeed feed_;
  std::vector<std::string> nodes_;
  int parts_ = 0;
};

/// Statements with every @node replaced by `rename(node)`.
template <class Rename>
std::string written(const std::vector<std::string>& statements, Rename rename) {
  std::string text = "design \"random\"\n";
  for (const std::string& statement : statements) {
    for (std::size_t i = 0; i < statement.size(); ++i) {
      if (statement[i] != '@') {
        text += statement[i];
        continue;
      }
      std::size_t end = i + 1;
      while (end < statement.size() && std::isalnum(static_cast<unsigned char>(statement[end]))) ++end;
      text += rename(statement.substr(i + 1, end - i - 1));
      i = end - 1;
    }
    text += '\n';
  }
  return text;
}

}  // namespace

std::string RandomFeed::text() const {
  return written(statements, [](const std::string& node) { return node; });
}

std::string RandomFeed::shuffled_and_renamed(unsigned seed) const {
  std::vector<std::string> order = statements;
  std::mt19937_64 random(seed);
  for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[random() % i]);
  std::map<std::string, std::string> names;
  return written(order, [&](const std::string& node) { return names.try_emplace(node, "z" + std::to_string(1000 - names.size())).first->second; });
}

RandomFeed random_feed(unsigned seed, Choices choices) { return Maker(seed, choices).make(); }

}  // namespace wattfall::test
