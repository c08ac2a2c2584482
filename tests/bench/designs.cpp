#include "designs.hpp"

#include <sstream>

namespace wattfall::bench {
namespace {

constexpr const char* source = "source rig at n0 : 100 W, 50 ohm\n";
constexpr const char* sweep = "sweep at [7 MHz]\n";

std::string node(std::size_t i) {
  std::string name = "n";
  name += std::to_string(i);
  return name;
}

/// Numbers that differ from part to part without a pattern: the fractional parts of multiples of the golden section.
double spread(std::size_t i) {
  const double multiple = 0.6180339887498949 * static_cast<double>(i + 1);
  return multiple - static_cast<double>(static_cast<std::size_t>(multiple));
}

}  // namespace

std::string t_network() {
  return "design \"A\"\n"
         "source rig at desk : 100 W, 50 ohm\n"
         "capacitor Cin from desk to mid : 180 pF, Q 1200\n"
         "inductor L at mid : 1.9 uH, Q 180 at 7 MHz\n"
         "capacitor Cout from mid to out : 160 pF, Q 1200\n"
         "line coax from out to far : 30 m of RG-58\n"
         "transformer T from far to feed : turns 1:2, winding 0.1 ohm, leakage 0.1 uH, magnetizing 20 uH, core 5000 "
         "ohm\n"
         "load ant at feed : 180 - j60 ohm\n" +
         std::string(sweep);
}

std::string ladder(std::size_t unknowns) {
  std::ostringstream text;
  text.precision(15);
  text << "design \"ladder\"\n" << source;
  for (std::size_t i = 0; i + 1 < unknowns; ++i) {
    if (i % 2 == 0)
      text << "line W" << i << " from " << node(i) << " to " << node(i + 1) << " : " << 0.3 + 3.0 * spread(i)
           << " m, 50 ohm, velocity 0.66, loss 4.6 dB/100m at 10 MHz\n";
    else
      text << "inductor L" << i << " from " << node(i) << " to " << node(i + 1) << " : " << 0.03 + 0.05 * spread(i)
           << " uH, Q 200\n";
    text << "capacitor C" << i << " at " << node(i + 1) << " : " << 5.0 + 20.0 * spread(2 * i) << " pF, Q 1000\n";
  }
  text << "load ant at " << node(unknowns - 1) << " : 60 + j10 ohm\n" << sweep;
  return text.str();
}

namespace {

/// Copies of a small design's line, coil, capacitor and load.
class Builder {
 public:
  Builder(const design::Design& small, std::size_t nodes) : small_(small), design_(small) {
    design_.nodes.assign(nodes + 1, {});
    for (std::size_t i = 0; i < nodes; ++i) design_.nodes[i + 1].name = node(i);
    design_.source.node = at(0);
    design_.parts.clear();
  }

  void line(std::size_t i, std::size_t from, std::size_t to) {
    design::Part& part = add("W", i, {at(from), design::ground, at(to), design::ground});
    std::get<design::Line>(part.model).make.length_m = design::Value(0.3 + 3.0 * spread(i));
  }
  void coil(std::size_t i, std::size_t from, std::size_t to) {
    design::Part& part = add("L", i, {at(from), at(to)});
    std::get<design::Inductor>(part.model).henries = design::Value((0.03 + 0.05 * spread(i)) * 1e-6);
  }
  void capacitor(std::size_t i, std::size_t on) {
    design::Part& part = add("C", i, {at(on), design::ground});
    std::get<design::Capacitor>(part.model).farads = design::Value((5.0 + 20.0 * spread(2 * i)) * 1e-12);
  }
  design::Design finish(std::size_t load_on) {
    add("a", 0, {at(load_on), design::ground});
    return std::move(design_);
  }

 private:
  static design::NodeId at(std::size_t i) { return design::NodeId{static_cast<int>(i) + 1}; }

  design::Part& add(const char* stem, std::size_t i, std::vector<design::NodeId> terminals) {
    for (const design::Part& pattern : small_.parts)
      if (pattern.name[0] == stem[0]) {
        design_.parts.push_back(pattern);
        break;
      }
    design::Part& part = design_.parts.back();
    part.name = stem + std::to_string(i);
    part.terminals = std::move(terminals);
    return part;
  }

  const design::Design& small_;
  design::Design design_;
};

}  // namespace

design::Design ladder(const design::Design& small, std::size_t unknowns) {
  Builder builder(small, unknowns);
  for (std::size_t i = 0; i + 1 < unknowns; ++i) {
    i % 2 == 0 ? builder.line(i, i, i + 1) : builder.coil(i, i, i + 1);
    builder.capacitor(i, i + 1);
  }
  return builder.finish(unknowns - 1);
}

design::Design grid(const design::Design& small, std::size_t side) {
  Builder builder(small, side * side);
  for (std::size_t row = 0; row < side; ++row)
    for (std::size_t column = 0; column < side; ++column) {
      const std::size_t i = row * side + column;
      if (column + 1 < side) builder.line(i, i, i + 1);
      if (row + 1 < side) builder.coil(i, i, i + side);
      builder.capacitor(i, i);
    }
  return builder.finish(side * side - 1);
}

std::string relay_network() {
  return "design \"D\"\n"
         "source rig at desk : 100 W, 50 ohm\n"
         "capacitor Cin at desk : adjustable 1 pF to 5 nF, Q 1000\n"
         "inductor L from desk to feed : adjustable 50 nH to 30 uH, Q 200\n"
         "capacitor Cout at feed : adjustable 1 pF to 5 nF, Q 1000\n"
         "line coax from feed to far : 30 m of RG-58\n"
         "load ant at far : 23 - j180 ohm\n"
         "sweep at [7.1 MHz]\n";
}

std::vector<double> relay_states() {
  constexpr double stray_h = 50e-9, coil_h = 0.1e-6, capacitor_f = 10e-12;
  std::vector<double> knobs;
  knobs.reserve(3 * 131072);
  for (int side = 0; side < 2; ++side)
    for (int coils = 0; coils < 256; ++coils)
      for (int capacitors = 0; capacitors < 256; ++capacitors) {
        const double farads = capacitor_f * capacitors;
        knobs.insert(knobs.end(), {side == 0 ? farads : 0.0, stray_h + coil_h * coils, side == 0 ? 0.0 : farads});
      }
  return knobs;
}

std::vector<double> frequencies(std::size_t count) {
  std::vector<double> hertz(count);
  for (std::size_t i = 0; i < count; ++i)
    hertz[i] = 1.8e6 + 28.2e6 * static_cast<double>(i) / static_cast<double>(count > 1 ? count - 1 : 1);
  return hertz;
}

}  // namespace wattfall::bench
