#include "tables.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "physics/materials.hpp"
#include "physics/plates.hpp"

namespace wattfall::app {
namespace {

/// Characters, not bytes: units and names hold a few that take two.
std::size_t characters(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string number(double value) {
  return fmt::format("{:g}", value);
}

}  // namespace

std::string table(const std::vector<Row>& rows) {
  std::vector<std::size_t> widths;
  for (const Row& row : rows)
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (c == widths.size()) widths.push_back(0);
      widths[c] = std::max(widths[c], characters(row[c]));
    }
  std::string text;
  for (const Row& row : rows) {
    for (std::size_t c = 0; c < row.size(); ++c)
      text += row[c] + (c + 1 < row.size() ? std::string(widths[c] - characters(row[c]) + 2, ' ') : "");
    text.erase(text.find_last_not_of(' ') + 1);
    text += '\n';
  }
  return text;
}

std::string metals() {
  std::vector<Row> rows{{"metal", "MS/m", "permeability", "source"}};
  for (const physics::Metal& metal : physics::metals())
    rows.push_back({std::string(metal.name), number(metal.conductivity_s_per_m / 1e6),
                    number(metal.relative_permeability), std::string(metal.source)});
  return table(rows) +
         "\nconductivity at 20 degrees Celsius; roughness, coatings and hysteresis are left out\n"
         "written as `metal brass` in coil(..), core(..), skin(..), coax(..), twowire(..), overground(..), dipole(..)\n";
}

std::string dielectrics() {
  std::vector<Row> rows{{"dielectric", "permittivity", "loss tangent", "source"}};
  for (const physics::Dielectric& one : physics::dielectrics())
    rows.push_back({std::string(one.name), number(one.relative_permittivity), number(one.loss_tangent),
                    std::string(one.source)});
  return table(rows) +
         "\ntypical from 1 MHz to 100 MHz; permeability 1\n"
         "written as `dielectric PTFE`, or `dielectric 2.1, tangent 0.0002`, in plates(..), coax(..), twowire(..), "
         "overground(..)\n";
}

std::string cores() {
  std::vector<Row> rows{{"core material", "saturation, T", "source"}};
  for (const physics::CoreMaterial& one : physics::core_materials())
    rows.push_back({std::string(one.name), number(one.saturation_t), std::string(one.source)});
  return table(rows) +
         "\nwritten as `material ferrite` in core(..); `saturation 300 mT` there is your own sheet's figure\n"
         "a core on the short waves is mostly too hot long before it saturates\n";
}

std::string capacitors() {
  std::vector<Row> rows{{"capacitor", "typical Q", "remark"}};
  for (const physics::CapacitorSort& one : physics::capacitor_sorts())
    rows.push_back({std::string(one.name), fmt::format("{:g} to {:g}", one.low_quality, one.high_quality),
                    std::string(one.remark)});
  std::vector<Row> gaps{{"gap of air", "arcs at, V peak"}};
  for (const double gap_mm : {0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 5.0, 10.0})
    gaps.push_back({fmt::format("{:g} mm", gap_mm),
                    fmt::format("{:.0f}", 10.0 * std::round(physics::air_breakdown(gap_mm * 1e-3).volts_peak / 10.0))});
  return table(rows) + "\n" + table(gaps) + "\n" + physics::breakdown_caution +
         "\n6.72 sqrt(pg) + 24.36 pg kV (bar cm): Kuffel, Zaengl, Kuffel, High Voltage Engineering, 2000; from memory\n";
}

}  // namespace wattfall::app
