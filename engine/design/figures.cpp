// Every figure that can be required, tuned for or weighed, in the order of the language's page.
#include "figures.hpp"

#include "design/catalog.hpp"

namespace wattfall::design {
namespace {

FigureInfo info(const char* words, const char* operand, const char* unit, const char* meaning) {
  FigureInfo figure;
  figure.words = words;
  figure.operand = operand;
  figure.unit = unit;
  figure.meaning = meaning;
  return figure;
}

}  // namespace

const std::vector<FigureInfo>& figures() {
  static const std::vector<FigureInfo> all{
      info("swr at", "node", "", "standing wave ratio, looking from the source's side into the load's"),
      info("return loss at", "node", "dB", "how far the reflected power is below the forward one"),
      info("resistance at", "node", "ohm", "real part of the impedance seen"),
      info("reactance at", "node", "ohm", "imaginary part of the impedance seen"),
      info("mismatch at", "node", "dB", "short of a conjugate match of the impedances looking both ways"),
      info("swr on", "line", "", "standing wave ratio at the load's end, against the line's own impedance"),
      info("power into", "part", "W", "power that goes into it"),
      info("radiated from", "load", "W", "power that a load radiates"),
      info("heat in", "part", "W", "power that turns into heat in it"),
      info("loss in", "part", "dB", "power into it over power out of it"),
      info("total loss", "", "dB", "available power over radiated power"),
      info("efficiency", "", "", "radiated power over available power"),
      info("peak volts across", "part", "V", "peak of the voltage across it; two-ports: the larger end"),
      info("rms amps through", "part", "A", "rms of the current through it; two-ports: the larger end"),
      info("peak volts on", "line", "V", "largest peak voltage along a line"),
      info("rms amps on", "line", "A", "largest rms current along a line"),
      info("width of swr at", "node", "Hz",
           "width of the band around the best point in which the SWR stays below a value"),
  };
  return all;
}

Dimension dimension_of(FigureKind kind) {
  const std::string& unit = figures()[static_cast<std::size_t>(kind)].unit;
  const auto known = find_unit(unit);
  return unit.empty() || !known ? dimension::number : known->dim;
}

}  // namespace wattfall::design
