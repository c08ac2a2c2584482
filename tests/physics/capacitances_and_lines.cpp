// Outside figures for plates, coaxial lines, pairs and wires over ground. Rows of books that take 8.85e-12 F/m for the
// electric constant are scaled to it. GE-081x names the handbooks' 276 log10 but gives the value of the acosh form
// (they differ by 5e-5 there), so that is what it is held against.
#include <cmath>

#include "outside.hpp"
#include "physics/constants.hpp"
#include "physics/line_geometry.hpp"

namespace wattfall::physics {
namespace {

constexpr const char* independently = "independent 40-digit computation";
constexpr const char* bird_electrical_circuit_theory =
    "Bird, Electrical Circuit Theory and Technology, chapter 40 problem 3 p.726";
constexpr const char* bird_electrical_circuit_theory_2 =
    "Bird, Electrical Circuit Theory and Technology, chapter 40 problem 5 p.728, (printed with unit slip pF/km)";
constexpr const char* bird_electrical_circuit_theory_3 =
    "Bird, Electrical Circuit Theory and Technology, chapter 40 problem 16 p.744";
constexpr const char* blake_electronic_communication_systems = "Blake, Electronic Communication Systems, example 14.2";
constexpr const char* blake_electronic_communication_systems_2 =
    "Blake, Electronic Communication Systems, example 14.3";
constexpr const char* kennedy_davis_electronic_communication =
    "Kennedy and Davis, Electronic Communication Systems, example 9.1";
constexpr const char* kennedy_davis_electronic_communication_2 =
    "Kennedy and Davis, Electronic Communication Systems, example 9.2";
constexpr const char* misra_example_5_5 = "Misra, example 5.5 p.175";
constexpr const char* stanley_jeffords_electronic_communications =
    "Stanley and Jeffords, Electronic Communications, example 14.6.1";
constexpr const char* stanley_jeffords_electronic_communications_2 =
    "Stanley and Jeffords, Electronic Communications, example 14.6.1, (printed with the unit slip nH/m; eps 55.56 "
    "pF/m)";
constexpr const char* stanley_jeffords_electronic_communications_3 =
    "Stanley and Jeffords, Electronic Communications, example 14.6.1, (factor 60)";
constexpr const char* beasley_miller_modern_electronic =
    "Beasley and Miller, Modern Electronic Communication, example 12.2";
constexpr const char* bird_electrical_circuit_theory_4 =
    "Bird, Electrical Circuit Theory and Technology, chapter 40 problem 10 p.736";
constexpr const char* bird_electrical_circuit_theory_5 =
    "Bird, Electrical Circuit Theory and Technology, chapter 40 problem 20 p.748";
constexpr const char* amateur_handbook_rule = "amateur handbook rule; from memory";

constexpr double high_hz = 1e9;  // lossless figures do not depend on it

Coax coax(double inner_m, double outer_m, double permittivity, double tangent = 0.0, double conductivity = 5.8e7) {
  return {inner_m, outer_m, 0.0, {conductivity}, {conductivity}, {permittivity, tangent}};
}
/// Sizes in one unit of any kind.
double coax_farad(double inner, double outer, double permittivity) {
  return coax_constants(coax(inner * 1e-3, outer * 1e-3, permittivity), high_hz, Skin::thin).capacitance_f_per_m;
}
double coax_henry(double inner, double outer) {
  return coax_constants(coax(inner * 1e-3, outer * 1e-3, 1.0), high_hz, Skin::thin).inductance_h_per_m;
}
/// The core's internal inductance at low frequencies, and none in the shell.
double coax_henry_of_core_current(double inner_m, double outer_m) {
  return coax_henry(inner_m * 1e3, outer_m * 1e3) + round_wire({}, inner_m, 0.0).inductance_h_per_m;
}
double inductance_of(double impedance_ohm, double farad_per_m) {
  const LineConstants line =
      line_constants({{0.0, 2.0 * pi * high_hz * impedance_ohm * farad_per_m}, impedance_ohm, {}}, high_hz);
  return line.inductance_h_per_m;
}
double pair_farad(double wire, double spacing, double permittivity) {
  const TwoWire line{wire * 1e-3, spacing * 1e-3, {}, {permittivity}};
  return two_wire_constants(line, 1e6, Skin::thin).capacitance_f_per_m;
}
double pair_henry(double wire, double spacing) {
  return two_wire_constants({wire * 1e-3, spacing * 1e-3, {}, {}}, 1e6, Skin::thin).inductance_h_per_m;
}
/// With the handbooks' rounded 276 in place of eta0 ln 10/pi = 276.12, which is the far form at 2s/d = 10.
double handbook_pair_ohm(double spacing_over_diameter) {
  return 276.0 / two_wire_far_impedance_ohm(5.0) * two_wire_far_impedance_ohm(spacing_over_diameter);
}
/// By the far form of the impedance: C = 1/(c Z0).
double far_pair_farad(double spacing_over_diameter) {
  return 1.0 / (speed_of_light_m_per_s * two_wire_far_impedance_ohm(spacing_over_diameter));
}
/// Uniform current: far below the frequency where skin begins.
double slow_pair_henry(double wire_m, double spacing_m) {
  return two_wire_constants({wire_m, spacing_m, {}, {}}, 1e-3).inductance_h_per_m;
}
double over_ground_farad(double wire_m, double height_m) {
  return over_ground_constants({wire_m, height_m, {}, {}}, 1e6, Skin::thin).capacitance_f_per_m;
}
double conductor_loss(const Coax& line, double frequency_hz) {
  return low_loss_attenuation(coax_constants(line, frequency_hz, Skin::thin)).conductor_np_per_m;
}
double dielectric_loss(const Coax& line, double frequency_hz) {
  return low_loss_attenuation(coax_constants(line, frequency_hz, Skin::thin)).dielectric_np_per_m;
}
double pair_db_per_100m(double wire_m, double spacing_m, double frequency_hz) {
  const LineConstants line = two_wire_constants({wire_m, spacing_m, {}, {}}, frequency_hz, Skin::thin);
  return 100.0 * decibels_per_neper * low_loss_attenuation(line).conductor_np_per_m;
}

}  // namespace

Topic capacitances_and_lines() {
  return {
      "Capacitance and line geometry",
      {
          {"GE-001", "mu0=4 pi 1e-7, c=299792458 (CODATA 2018/2022 values differ by < 2e-10 relative)", "eps0 [pF/m]",
           1e12 * eps0_f_per_m, 8.8541878176203899, 8.854e-9, independently, computed},
          {"GE-002", "mu0=4 pi 1e-7, c=299792458", "eta0 = mu0 c [ohm]", eta0_ohm, 376.73031346177066, 3.767e-7,
           independently, computed},
          {"GE-004", "mu0=4 pi 1e-7, c=299792458", "eta0/pi (two-wire factor) [ohm]",
           two_wire_far_impedance_ohm(std::numbers::e / 2.0), 119.9169832, 1.199e-7, independently, computed},
          {"GE-005", "mu0=4 pi 1e-7, c=299792458", "coax factor for log10 [ohm]", coax_impedance_ohm(10.0),
           138.05952895656871, 1.381e-7, independently, computed},
          {"GE-008", "plate area 0.0025 m2, gap 0.0015 m, er=1, 12 gaps, no fringing", "capacitance [pF]",
           1e12 * plate_figures({.width_m = 0.05, .length_m = 0.05, .gap_m = 0.0015, .plates = 13, .fringe = false})
                      .capacitance_f,
           177.0837563524078, 1.771e-7, independently, computed},
          {"GE-009", "coax er=2.7, inner radius 0.5 mm, outer 6 mm (eps0=8.85e-12)", "capacitance [pF/m]",
           1e12 * coax_farad(1.0, 12.0, 2.7) * 8.85e-12 / eps0_f_per_m, 60.42, 0.005, bird_electrical_circuit_theory,
           published},
          {"GE-009x", "coax er=2.7, inner radius 0.5 mm, outer 6 mm (eps0=8.85e-12)", "capacitance [pF/m]",
           1e12 * coax_farad(1.0, 12.0, 2.7) * 8.85e-12 / eps0_f_per_m, 60.419457981596663, 6e-8, independently,
           computed},
          {"GE-010", "coax er=3.5, diameters 80 and 32 mm (eps0=8.85e-12)", "capacitance [pF/m]",
           1e12 * coax_farad(32.0, 80.0, 3.5) * 8.85e-12 / eps0_f_per_m, 212.4, 0.05, bird_electrical_circuit_theory_2,
           published},
          {"GE-010x", "coax er=3.5, diameters 80 and 32 mm (eps0=8.85e-12)", "capacitance [pF/m]",
           1e12 * coax_farad(32.0, 80.0, 3.5) * 8.85e-12 / eps0_f_per_m, 212.40165170263597, 2.124e-7, independently,
           computed},
          {"GE-011", "coax radii a=1 mm, b=4 mm, uniform current in core", "inductance [uH/m]",
           1e6 * coax_henry_of_core_current(2e-3, 8e-3), 0.33, 0.005, bird_electrical_circuit_theory_3, published},
          {"GE-011x", "coax radii a=1 mm, b=4 mm, uniform current in core", "inductance [uH/m]",
           1e6 * coax_henry_of_core_current(2e-3, 8e-3), 0.32725887222397812, 3.273e-10, independently, computed},
          {"GE-013", "coax er=2.3, diameters 2 and 8 mm", "Z0 [ohm]", coax_impedance_ohm(4.0, 2.3), 54.784, 0.04,
           blake_electronic_communication_systems, published},
          {"GE-013x", "coax er=2.3, diameters 2 and 8 mm", "Z0 [ohm]", coax_impedance_ohm(4.0, 2.3), 54.807783287234788,
           5.481e-8, independently, computed},
          {"GE-014", "open wire diameter 3 mm, spacing 10 mm", "far form of Z0, 276 log10(2D/d) [ohm]",
           two_wire_far_impedance_ohm(10.0 / 3.0), 227.399, 0.15, blake_electronic_communication_systems, published},
          {"GE-014x", "open wire diameter 3 mm, spacing 10 mm", "far form of Z0, 276 log10(2D/d) [ohm]",
           two_wire_far_impedance_ohm(10.0 / 3.0), 227.49690535594448, 2.275e-7, independently, computed},
          {"GE-015", "open wire diameter 3 mm, spacing 10 mm", "Z0 = (eta0/pi) acosh(D/d) [ohm]",
           two_wire_impedance_ohm(10.0 / 3.0), 224.70287054297988, 2.247e-7, independently, computed},
          {"GE-016", "PTFE er=2.1", "velocity factor",
           1.0 / std::sqrt(coax_farad(1.0, 4.0, 2.1) * coax_henry(1.0, 4.0)) / speed_of_light_m_per_s, 0.690, 0.0005,
           blake_electronic_communication_systems_2, published},
          {"GE-016x", "PTFE er=2.1", "velocity factor",
           1.0 / std::sqrt(coax_farad(1.0, 4.0, 2.1) * coax_henry(1.0, 4.0)) / speed_of_light_m_per_s,
           0.69006555934235422, 6.901e-10, independently, computed},
          {"GE-017", "coax Z0=75 ohm, C=69 pF/m", "inductance [uH/m]", 1e6 * inductance_of(75.0, 69e-12), 0.388, 0.0005,
           kennedy_davis_electronic_communication, published},
          {"GE-017x", "coax Z0=75 ohm, C=69 pF/m", "inductance [uH/m]", 1e6 * inductance_of(75.0, 69e-12), 0.388125,
           3.881e-10, independently, computed},
          {"GE-019", "two wires touching, s=d", "far form of Z0, 276 log10(2s/d) [ohm]", handbook_pair_ohm(1.0), 83,
           0.5, kennedy_davis_electronic_communication_2, published},
          {"GE-019x", "two wires touching, s=d", "far form of Z0, 276 log10(2s/d) [ohm]", handbook_pair_ohm(1.0),
           83.08427880325881, 8.308e-8, independently, computed},
          {"GE-020", "air coax radii 0.455 and 1.499 mm, copper 5.813e7, 5 GHz", "conductor attenuation [Np/m]",
           conductor_loss(coax(0.91e-3, 2.998e-3, 1.0, 0.0, 5.813e7), 5e9), 0.058768, 0.00002, misra_example_5_5,
           published},
          {"GE-020x", "air coax radii 0.455 and 1.499 mm, copper 5.813e7, 5 GHz", "conductor attenuation [Np/m]",
           conductor_loss(coax(0.91e-3, 2.998e-3, 1.0, 0.0, 5.813e7), 5e9), 0.058768706337462566, 5.877e-11,
           independently, computed},
          {"GE-021", "air coax radii 0.455 and 1.499 mm, copper 5.813e7, 5 GHz; with er=2.08",
           "conductor attenuation [Np/m]", conductor_loss(coax(0.91e-3, 2.998e-3, 2.08, 0.0, 5.813e7), 5e9), 0.084757,
           0.00002, misra_example_5_5, published},
          {"GE-021x", "air coax radii 0.455 and 1.499 mm, copper 5.813e7, 5 GHz; with er=2.08",
           "conductor attenuation [Np/m]", conductor_loss(coax(0.91e-3, 2.998e-3, 2.08, 0.0, 5.813e7), 5e9),
           0.084757433636962714, 8.476e-11, independently, computed},
          {"GE-022", "er=2.08, tan d=0.0004, 5 GHz", "dielectric attenuation [Np/m]",
           dielectric_loss(coax(0.91e-3, 2.998e-3, 2.08, 0.0004), 5e9), 0.030226, 0.00002, misra_example_5_5,
           published},
          {"GE-022x", "er=2.08, tan d=0.0004, 5 GHz", "dielectric attenuation [Np/m]",
           dielectric_loss(coax(0.91e-3, 2.998e-3, 2.08, 0.0004), 5e9), 0.030226706768290956, 3.023e-11, independently,
           computed},
          {"GE-023", "coax D=2.3026 d=1 (same unit), er=1", "Z0 [ohm]", coax_impedance_ohm(2.3026 / 1.0, 1.0),
           50.007715534369516, 5.001e-8, independently, computed},
          {"GE-024", "coax D=2.3026 d=1 (same unit), er=1", "capacitance [pF/m]", 1e12 * coax_farad(1.0, 2.3026, 1.0),
           66.702526126973086, 6.67e-8, independently, computed},
          {"GE-025", "coax D=2.3026 d=1 (same unit), er=1", "external inductance [nH/m]", 1e9 * coax_henry(1.0, 2.3026),
           166.8077838514854, 1.668e-7, independently, computed},
          {"GE-027", "coax D=7.24 d=2.1 (same unit), er=2.25", "Z0 [ohm]", coax_impedance_ohm(7.24 / 2.1, 2.25),
           49.473104948860794, 4.947e-8, independently, computed},
          {"GE-029", "coax D=7.24 d=2.1 (same unit), er=2.25", "external inductance [nH/m]",
           1e9 * coax_henry(2.1, 7.24), 247.53677233364954, 2.475e-7, independently, computed},
          {"GE-032", "coax D=2.985 d=0.92 (same unit), er=2.04", "capacitance [pF/m]",
           1e12 * coax_farad(0.92, 2.985, 2.04), 96.424896757951568, 9.642e-8, independently, computed},
          {"GE-033", "coax D=2.985 d=0.92 (same unit), er=2.04", "external inductance [nH/m]",
           1e9 * coax_henry(0.92, 2.985), 235.39627115672329, 2.354e-7, independently, computed},
          {"GE-036", "coax D=4.57 d=1.0 (same unit), er=2.25", "capacitance [pF/m]", 1e12 * coax_farad(1.0, 4.57, 2.25),
           82.377126373025621, 8.238e-8, independently, computed},
          {"GE-039", "coax D=100 d=43.5 (same unit), er=1", "Z0 [ohm]", coax_impedance_ohm(100.0 / 43.5, 1.0),
           49.910002897581917, 4.991e-8, independently, computed},
          {"GE-040", "coax D=100 d=43.5 (same unit), er=1", "capacitance [pF/m]", 1e12 * coax_farad(43.5, 100.0, 1.0),
           66.833114773133554, 6.683e-8, independently, computed},
          {"GE-041", "coax D=100 d=43.5 (same unit), er=1", "external inductance [nH/m]", 1e9 * coax_henry(43.5, 100.0),
           166.48184957869059, 1.665e-7, independently, computed},
          {"GE-044", "coax D=3.5911215 d=1 (same unit), er=1", "capacitance [pF/m]",
           1e12 * coax_farad(1.0, 3.5911215, 1.0), 43.515092252630381, 4.352e-8, independently, computed},
          {"GE-045", "coax D=3.5911215 d=1 (same unit), er=1", "external inductance [nH/m]",
           1e9 * coax_henry(1.0, 3.5911215), 255.69290985160705, 2.557e-7, independently, computed},
          {"GE-046", "coax D=3.5911215 d=1 (same unit), er=1", "velocity factor",
           1.0 / std::sqrt(coax_farad(1.0, 3.5911215, 1.0) * coax_henry(1.0, 3.5911215)) / speed_of_light_m_per_s, 1.0,
           1.0e-9, independently, computed},
          {"GE-047", "coax d=0.3 cm, D=1.02 cm, er=2.25", "inductance [nH/m]", 1e9 * coax_henry(0.3, 1.02), 244.8, 0.05,
           stanley_jeffords_electronic_communications, published},
          {"GE-047x", "coax d=0.3 cm, D=1.02 cm, er=2.25", "inductance [nH/m]", 1e9 * coax_henry(0.3, 1.02),
           244.75508632442314, 2.448e-7, independently, computed},
          {"GE-048", "coax d=0.3 cm, D=1.02 cm, er=2.25", "capacitance [pF/m]", 1e12 * coax_farad(0.3, 1.02, 2.25),
           102.15, 0.15, stanley_jeffords_electronic_communications_2, published},
          {"GE-048x", "coax d=0.3 cm, D=1.02 cm, er=2.25", "capacitance [pF/m]", 1e12 * coax_farad(0.3, 1.02, 2.25),
           102.28439636193296, 1.023e-7, independently, computed},
          {"GE-049", "coax d=0.3 cm, D=1.02 cm, er=2.25", "Z0 [ohm]", coax_impedance_ohm(1.02 / 0.3, 2.25), 48.951,
           0.04, stanley_jeffords_electronic_communications_3, published},
          {"GE-049x", "coax d=0.3 cm, D=1.02 cm, er=2.25", "Z0 [ohm]", coax_impedance_ohm(1.02 / 0.3, 2.25),
           48.917152624800666, 4.892e-8, independently, computed},
          {"GE-050", "coax D/d=2.35, air", "Z0 [ohm]", coax_impedance_ohm(2.35), 51.2, 0.06,
           beasley_miller_modern_electronic, published},
          {"GE-050x", "coax D/d=2.35, air", "Z0 [ohm]", coax_impedance_ohm(2.35), 51.229454276156822, 5.123e-8,
           independently, computed},
          {"GE-051", "coax D=0.285 d=0.08, er=2.3", "Z0 [ohm]", coax_impedance_ohm(0.285 / 0.08, 2.3), 50, 0.5,
           beasley_miller_modern_electronic, published},
          {"GE-051x", "coax D=0.285 d=0.08, er=2.3", "Z0 [ohm]", coax_impedance_ohm(0.285 / 0.08, 2.3),
           50.228319342838931, 5.023e-8, independently, computed},
          {"GE-052", "two-wire spacing/diameter=2, air", "far form of Z0, 276 log10(2s/d) [ohm]",
           two_wire_far_impedance_ohm(2.0), 166, 0.5, beasley_miller_modern_electronic, published},
          {"GE-052x", "two-wire spacing/diameter=2, air", "far form of Z0, 276 log10(2s/d) [ohm]",
           two_wire_far_impedance_ohm(2.0), 166.24023761266866, 1.662e-7, independently, computed},
          {"GE-055", "wires radius 4 mm, 1.2 m apart (eps0=8.85e-12, far form)", "capacitance per km [nF]",
           1e9 * 1000.0 * far_pair_farad(150.0) * 8.85e-12 / eps0_f_per_m, 4.87, 0.005,
           bird_electrical_circuit_theory_4, published},
          {"GE-055x", "wires radius 4 mm, 1.2 m apart (eps0=8.85e-12, far form)", "capacitance per km [nF]",
           1e9 * 1000.0 * far_pair_farad(150.0) * 8.85e-12 / eps0_f_per_m, 4.8745012818788323, 4.875e-9, independently,
           computed},
          {"GE-056", "wires radius 5 mm, 0.8 m apart, uniform current", "inductance per km [mH]",
           1e3 * 1000.0 * slow_pair_henry(0.01, 0.8), 2.13, 0.005, bird_electrical_circuit_theory_5, published},
          {"GE-056x", "wires radius 5 mm, 0.8 m apart, uniform current", "inductance per km [mH]",
           1e3 * 1000.0 * slow_pair_henry(0.01, 0.8), 2.1300695260935308, 2.13e-9, independently, computed},
          {"GE-061", "AWG 14 (1.628 mm) wires 101.6 mm apart", "Z0 = (eta0/pi) acosh(D/d)/sqrt(er) [ohm]",
           two_wire_impedance_ohm(101.6 / 1.628, 1.0), 578.81220698643045, 5.788e-7, independently, computed},
          {"GE-063", "AWG 14 (1.628 mm) wires 101.6 mm apart", "capacitance [pF/m]",
           1e12 * pair_farad(1.628, 101.6, 1.0), 5.7629070564154853, 5.763e-9, independently, computed},
          {"GE-065", "AWG 18 (1.024 mm) wires 20.6 mm apart in air", "Z0 = (eta0/pi) acosh(D/d)/sqrt(er) [ohm]",
           two_wire_impedance_ohm(20.6 / 1.024, 1.0), 442.98573738258291, 4.43e-7, independently, computed},
          {"GE-066", "AWG 18 (1.024 mm) wires 20.6 mm apart in air", "far form (eta0/pi) ln(2D/d)/sqrt(er) [ohm]",
           two_wire_far_impedance_ohm(20.6 / 1.024, 1.0), 443.05988359368643, 4.431e-7, independently, computed},
          {"GE-067", "AWG 18 (1.024 mm) wires 20.6 mm apart in air", "capacitance [pF/m]",
           1e12 * pair_farad(1.024, 20.6, 1.0), 7.5299059777644876, 7.53e-9, independently, computed},
          {"GE-069", "two 1 mm wires 2 mm apart", "Z0 = (eta0/pi) acosh(D/d)/sqrt(er) [ohm]",
           two_wire_impedance_ohm(2.0 / 1.0, 1.0), 157.92561800064058, 1.579e-7, independently, computed},
          {"GE-071", "two 1 mm wires 2 mm apart", "capacitance [pF/m]", 1e12 * pair_farad(1.0, 2.0, 1.0),
           21.121595053488982, 2.112e-8, independently, computed},
          {"GE-072", "two 1 mm wires 2 mm apart", "external inductance [nH/m]", 1e9 * pair_henry(1.0, 2.0),
           526.78315876992668, 5.268e-7, independently, computed},
          {"GE-073", "two 0.8 mm wires 7.5 mm apart, effective er=1.5", "Z0 = (eta0/pi) acosh(D/d)/sqrt(er) [ohm]",
           two_wire_impedance_ohm(7.5 / 0.8, 1.5), 286.71877576615689, 2.867e-7, independently, computed},
          {"GE-075", "two 0.8 mm wires 7.5 mm apart, effective er=1.5", "capacitance [pF/m]",
           1e12 * pair_farad(0.8, 7.5, 1.5), 14.248488393641287, 1.425e-8, independently, computed},
          {"GE-077", "two wires spacing/diameter=10", "Z0 = (eta0/pi) acosh(D/d)/sqrt(er) [ohm]",
           two_wire_impedance_ohm(10.0 / 1.0, 1.0), 358.9382537527934, 3.589e-7, independently, computed},
          {"GE-080", "two wires spacing/diameter=10", "external inductance [nH/m]", 1e9 * pair_henry(1.0, 10.0),
           1197.2891384505524, 1.197e-6, independently, computed},
          {"GE-081", "AWG 12 (0.0808 in) wires 6 in apart", "Z0 = 276 log10(2S/d) [ohm]",
           handbook_pair_ohm(6.0 / 0.0808), 600, 1.0, amateur_handbook_rule, from_memory},
          {"GE-081x", "AWG 12 (0.0808 in) wires 6 in apart", "Z0 = 276 log10(2S/d) [ohm]",
           two_wire_impedance_ohm(6.0 / 0.0808), 599.66161758640403, 5.997e-7, independently, computed},
          {"GE-082", "wire diameter 0.002053 m, axis 10 m above perfect ground", "Z0 = (eta0/2pi) acosh(2h/d) [ohm]",
           over_ground_impedance_ohm(10.0 / 0.002053), 592.22996327332186, 5.922e-7, independently, computed},
          {"GE-083", "wire diameter 0.002053 m, axis 10 m above perfect ground", "capacitance [pF/m]",
           1e12 * over_ground_farad(0.002053, 10.0), 5.6323407440330382, 5.632e-9, independently, computed},
          {"GE-084", "wire diameter 0.01 m, axis 0.05 m above perfect ground", "Z0 = (eta0/2pi) acosh(2h/d) [ohm]",
           over_ground_impedance_ohm(0.05 / 0.01), 179.4691268763967, 1.795e-7, independently, computed},
          {"GE-085", "wire diameter 0.01 m, axis 0.05 m above perfect ground", "capacitance [pF/m]",
           1e12 * over_ground_farad(0.01, 0.05), 18.586154677616672, 1.859e-8, independently, computed},
          {"GE-086", "wire diameter 0.0254 m, axis 1 m above perfect ground", "Z0 = (eta0/2pi) acosh(2h/d) [ohm]",
           over_ground_impedance_ohm(1.0 / 0.0254), 303.3456066746653, 3.033e-7, independently, computed},
          {"GE-088", "wire diameter 0.001 m, axis 0.002 m above perfect ground", "Z0 = (eta0/2pi) acosh(2h/d) [ohm]",
           over_ground_impedance_ohm(0.002 / 0.001), 123.72057416250309, 1.237e-7, independently, computed},
          {"GE-091", "AWG 12 (2.053 mm) at 152.4 mm, open wire, f=3.6 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(2.053e-3, 152.4e-3, 3.6e6),
           0.11118713475067036, 1.112e-10, independently, computed},
          {"GE-095", "AWG 14 (1.628 mm) at 101.6 mm, open wire, f=3.6 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(1.628e-3, 101.6e-3, 3.6e6),
           0.14525973084161893, 1.453e-10, independently, computed},
          {"GE-096", "AWG 14 (1.628 mm) at 101.6 mm, open wire, f=14.2 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(1.628e-3, 101.6e-3, 14.2e6),
           0.28849491115257224, 2.885e-10, independently, computed},
          {"GE-098", "AWG 18 (1.024 mm) at 20.6 mm, air, f=1.85 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(1.024e-3, 20.6e-3, 1.85e6),
           0.21655274621122622, 2.166e-10, independently, computed},
          {"GE-099", "AWG 18 (1.024 mm) at 20.6 mm, air, f=3.6 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(1.024e-3, 20.6e-3, 3.6e6),
           0.30208494492653527, 3.021e-10, independently, computed},
          {"GE-100", "AWG 18 (1.024 mm) at 20.6 mm, air, f=14.2 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(1.024e-3, 20.6e-3, 14.2e6),
           0.59995959542381857, 6.0e-10, independently, computed},
          {"GE-101", "AWG 18 (1.024 mm) at 20.6 mm, air, f=28.5 MHz",
           "matched loss (conductor only, with proximity) [dB/100m]", pair_db_per_100m(1.024e-3, 20.6e-3, 28.5e6),
           0.84996347104696433, 8.5e-10, independently, computed},
          {"GE-104", "semi-rigid 0.141 geometry D=2.985 mm d=0.92 mm er=2.04 tan d=0.0002, solid copper both, f=10 MHz",
           "conductor loss [dB/100m]",
           100.0 * decibels_per_neper * conductor_loss(coax(0.92e-3, 2.985e-3, 2.04, 0.0002), 10e6), 3.2823431898466218,
           3.282e-9, independently, computed},
          {"GE-105", "semi-rigid 0.141 geometry D=2.985 mm d=0.92 mm er=2.04 tan d=0.0002, f=10 MHz",
           "dielectric loss [dB/100m]",
           100.0 * decibels_per_neper * dielectric_loss(coax(0.92e-3, 2.985e-3, 2.04, 0.0002), 10e6),
           0.026000910484700091, 2.6e-11, independently, computed},
          {"GE-109", "semi-rigid 0.141 geometry D=2.985 mm d=0.92 mm er=2.04 tan d=0.0002, f=400 MHz",
           "dielectric loss [dB/100m]",
           100.0 * decibels_per_neper * dielectric_loss(coax(0.92e-3, 2.985e-3, 2.04, 0.0002), 400e6),
           1.0400364193880036, 1.04e-9, independently, computed},
          {"GE-110",
           "semi-rigid 0.141 geometry D=2.985 mm d=0.92 mm er=2.04 tan d=0.0002, solid copper both, f=1000 MHz",
           "conductor loss [dB/100m]",
           100.0 * decibels_per_neper * conductor_loss(coax(0.92e-3, 2.985e-3, 2.04, 0.0002), 1000e6),
           32.823431898466218, 3.282e-8, independently, computed},
          {"GE-113", "PE coax D=7.24 mm d=2.1 mm er=2.25 tan d=0.0003, f=1 MHz", "dielectric loss [dB/100m]",
           100.0 * decibels_per_neper * dielectric_loss(coax(2.1e-3, 7.24e-3, 2.25, 0.0003), 1e6), 0.004095962675811068,
           4.096e-12, independently, computed},
          {"GE-114", "PE coax D=7.24 mm d=2.1 mm er=2.25 tan d=0.0003, solid copper both, f=10 MHz",
           "conductor loss [dB/100m]",
           100.0 * decibels_per_neper * conductor_loss(coax(2.1e-3, 7.24e-3, 2.25, 0.0003), 10e6), 1.4161855468329844,
           1.416e-9, independently, computed},
          {"GE-116", "PE coax D=7.24 mm d=2.1 mm er=2.25 tan d=0.0003, solid copper both, f=100 MHz",
           "conductor loss [dB/100m]",
           100.0 * decibels_per_neper * conductor_loss(coax(2.1e-3, 7.24e-3, 2.25, 0.0003), 100e6), 4.4783719174032868,
           4.478e-9, independently, computed},
          {"GE-117", "PE coax D=7.24 mm d=2.1 mm er=2.25 tan d=0.0003, f=100 MHz", "dielectric loss [dB/100m]",
           100.0 * decibels_per_neper * dielectric_loss(coax(2.1e-3, 7.24e-3, 2.25, 0.0003), 100e6), 0.4095962675811068,
           4.096e-10, independently, computed},
          {"GE-118", "PE coax D=7.24 mm d=2.1 mm er=2.25 tan d=0.0003, solid copper both, f=400 MHz",
           "conductor loss [dB/100m]",
           100.0 * decibels_per_neper * conductor_loss(coax(2.1e-3, 7.24e-3, 2.25, 0.0003), 400e6), 8.9567438348065737,
           8.957e-9, independently, computed},
          {"GE-121", "PE coax D=7.24 mm d=2.1 mm er=2.25 tan d=0.0003, f=1000 MHz", "dielectric loss [dB/100m]",
           100.0 * decibels_per_neper * dielectric_loss(coax(2.1e-3, 7.24e-3, 2.25, 0.0003), 1000e6), 4.095962675811068,
           4.096e-9, independently, computed},
      }};
}

}  // namespace wattfall::physics
