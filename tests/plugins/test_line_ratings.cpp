// The ratings of the cable table, which are from memory or computed, against heat given off by a cylinder in still air
// and against the corona of two wires. Each case prints its table.
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "line_under_test.hpp"

using namespace line_test;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double ambient_k = 313.15;  // 40 C

/// W/m from a horizontal cylinder in still air: convection 1.32 (dT/D)^(1/4) (W. H. McAdams, Heat Transmission, 1954;
/// from memory) and radiation (Stefan and Boltzmann, CODATA 2018).
double given_off_w_per_m(double diameter_m, double rise_k, double emissivity) {
  const double convection = 1.32 * std::pow(rise_k / diameter_m, 0.25) * rise_k;
  const double radiation = emissivity * 5.670374419e-8 * (std::pow(ambient_k + rise_k, 4.0) - std::pow(ambient_k, 4.0));
  return pi * diameter_m * (convection + radiation);
}

double rise_k(double diameter_m, double w_per_m, double emissivity) {
  double low = 0.0, high = 1000.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2.0;
    (given_off_w_per_m(diameter_m, middle, emissivity) < w_per_m ? low : high) = middle;
  }
  return low;
}

/// F. W. Peek, Dielectric Phenomena in High-Voltage Engineering, 1915 (from memory): peak volts between two smooth
/// wires in dry air of normal density.
double corona_v_peak(double radius_m, double spacing_m) {
  const double radius_cm = 100.0 * radius_m;
  return 2.0 * 30e3 * (1.0 + 0.301 / std::sqrt(radius_cm)) * radius_cm * std::log(spacing_m / radius_m);
}

/// A uniform gap: E. Kuffel, W. S. Zaengl, J. Kuffel, High Voltage Engineering: Fundamentals, 2000 (from memory).
double gap_v_peak(double gap_m) {
  return 1e3 * (6.72 * std::sqrt(100.0 * gap_m) + 24.36 * 100.0 * gap_m);
}

struct Jacket {
  const char* cable;
  double outer_mm;    ///< over the jacket: nominal, from memory
  double emissivity;  ///< of plastic 0.9, of bare copper 0.1; handbooks, from memory
  double least_k, most_k;
};

// Solid polyethylene bears some 80 C inside and PTFE 200 C: 40 K and 160 K above the air, of which the inner conductor
// takes a part. A rating that lifts the jacket by far less than its fellows do would be as wrong as one that lifts it
// more.
const Jacket jackets[] = {
    {"RG-58", 4.95, 0.9, 15, 30},
    {"RG-213", 10.3, 0.9, 15, 30},
    {"RG-8", 10.3, 0.9, 15, 30},
    {"RG-8X", 6.15, 0.9, 15, 30},
    {"RG-223", 5.4, 0.9, 15, 30},
    {"RG-174", 2.8, 0.9, 15, 30},
    {"RG-59", 6.15, 0.9, 15, 30},
    {"RG-6", 7.0, 0.9, 15, 30},
    {"RG-11", 10.3, 0.9, 15, 30},
    {"low-loss 10 mm", 10.3, 0.9, 15, 30},
    {"hardline 1/2", 16.0, 0.9, 15, 30},
    {"hardline 7/8", 28.0, 0.9, 15, 30},
    {"RG-316", 2.5, 0.9, 60, 120},
    {"RG-142", 4.95, 0.9, 60, 120},
    {"RG-400", 4.95, 0.9, 60, 120},
    {"RG-393", 9.9, 0.9, 60, 120},
    {"semi-rigid 0.141", 3.58, 0.1, 60, 120},
};

struct Wires {
  const char* cable;
  double wire_mm, spacing_mm, coat_mm, emissivity;
};

// Sizes of common practice, no source; 600 ohm: 1.63 mm wires at the spacing that acosh gives.
const Wires wires[] = {{"twin-lead 300", 0.9, 7.5, 2.0, 0.9},
                       {"window line 450", 1.02, 20.0, 1.5, 0.9},
                       {"open wire 600", 1.63, 121.0, 1.63, 0.5}};

}  // namespace

TEST_CASE("heat ratings of coaxial cables agree with what their jackets give off, and with each other") {
  std::printf("%-18s %8s %6s %9s %12s\n", "cable", "mm", "W/m", "rise", "at 100 MHz");
  std::size_t rated = 0;
  for (const Jacket& jacket : jackets) {
    const sdk::Cable& it = cable(jacket.cable);
    const double rise = rise_k(jacket.outer_mm * 1e-3, it.limit_watts_per_m, jacket.emissivity);
    const double alpha = propagate(it.impedance_ohm, it.velocity, fit_of(it), 100e6).alpha();
    std::printf("%-18s %8.2f %6.0f %7.0f K %10.0f W\n", it.name, jacket.outer_mm, it.limit_watts_per_m, rise,
                it.limit_watts_per_m / (2.0 * alpha));
    INFO(it.name << ": " << rise << " K");
    CHECK(rise >= jacket.least_k);
    CHECK(rise <= jacket.most_k);
    ++rated;
  }
  CHECK(rated + std::size(wires) == registry().cables.size());
}

TEST_CASE("the handbooks' average powers at 100 MHz are those that the heat ratings give") {
  // RG-58 200 W, RG-213 650 W, RG-174 60 W, RG-142 950 W, 1/2 inch hardline 3.5 kW; from memory. The ratings are
  // rounded.
  const std::pair<const char*, double> powers[] = {
      {"RG-58", 200}, {"RG-213", 650}, {"RG-174", 60}, {"RG-142", 950}, {"hardline 1/2", 3500}};
  for (const auto& [name, watts] : powers) {
    const sdk::Cable& it = cable(name);
    const double alpha = propagate(it.impedance_ohm, it.velocity, fit_of(it), 100e6).alpha();
    INFO(name);
    CHECK(it.limit_watts_per_m / (2.0 * alpha) == Approx(watts).epsilon(0.1));
  }
}

TEST_CASE("two wires in air are rated at half of their corona, and at a rise of some 20 to 30 K") {
  std::printf("%-18s %10s %12s %12s %9s %16s\n", "line", "V limit", "corona", "gap", "rise", "rms at 10 MHz");
  for (const Wires& pair : wires) {
    const sdk::Cable& it = cable(pair.cable);
    const double corona = corona_v_peak(pair.wire_mm * 0.5e-3, pair.spacing_mm * 1e-3);
    const double gap = gap_v_peak((pair.spacing_mm - pair.wire_mm) * 1e-3);
    const double rise = rise_k(pair.coat_mm * 1e-3, it.limit_watts_per_m / 2.0, pair.emissivity);
    const double alpha = propagate(it.impedance_ohm, it.velocity, fit_of(it), 10e6).alpha();
    const double amps = std::sqrt(it.limit_watts_per_m / (2.0 * alpha * it.impedance_ohm));
    std::printf("%-18s %8.0f V %10.0f V %10.0f V %7.0f K %14.1f A\n", it.name, it.limit_volts_peak, corona, gap, rise,
                amps);
    INFO(it.name);
    CHECK(it.limit_volts_peak == Approx(std::min(corona, gap) / 2.0).epsilon(0.03));
    CHECK(rise > 15.0);
    CHECK(rise < 35.0);
  }
  // Amps through the wires themselves: two of 0.161 ohm/m each (line_loss/README.md) make 6 W/m at 4.3 A.
  CHECK(std::sqrt(cable("open wire 600").limit_watts_per_m / (2.0 * 0.1611)) == Approx(4.3).epsilon(0.01));
}
