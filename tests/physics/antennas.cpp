// Outside figures for dipoles, monopoles, loops and slots. Books take 120 pi ohm for the impedance of space.
#include <cmath>

#include "outside.hpp"
#include "physics/dipole.hpp"

namespace wattfall::physics {
namespace {

constexpr const char* kraus_antennas_self_resistance =
    "Kraus, Antennas (self resistance 73.13 ohm, as input of example 6-12.1); Balanis 73 ohm";
constexpr const char* independently = "independent 40-digit computation";
constexpr const char* handbook_73_13_j = "handbook 73.13+j42.55 (also 73+j42.5, seen in search); from memory";
constexpr const char* half_wave_dipole_73 = "half-wave dipole 73+j42.5 ohm, web page found in search";
constexpr const char* computed_30_eta_0 = "independent 40-digit computation: 30 -> eta0/(4 pi)=29.979";
constexpr const char* handbook_used_as_1 = "handbook; from memory (used as 1.64 in Kraus examples)";
constexpr const char* handbook = "handbook; from memory";
constexpr const char* computed_si_ci_closed =
    "independent 40-digit computation: Si/Ci closed form; numeric integral agrees to <0.5 percent";
constexpr const char* computed_si_ci_closed_2 =
    "independent 40-digit computation: Si/Ci closed form; numeric integral agrees to <0.1 percent";
constexpr const char* computed_numeric_integral = "independent 40-digit computation: numeric integral";
constexpr const char* balanis_antenna_theory_105 = "Balanis, Antenna Theory (105.49); from memory";
constexpr const char* balanis_kraus = "Balanis / Kraus; from memory";
constexpr const char* balanis_example_4_1 = "Balanis example 4.1";
constexpr const char* balanis_example_5_1 = "Balanis example 5.1, (book prints 0.788 and 50.43)";
constexpr const char* k_k_sharma_example = "K. K. Sharma, example 3.3";
constexpr const char* raju_antennas_wave_propagation = "Raju, Antennas and Wave Propagation, example 3.1";
constexpr const char* kraus_antennas_example_7 = "Kraus, Antennas, example 7-11.1";
constexpr const char* kraus_antennas_example_7_2 = "Kraus, Antennas, example 7-17.1";
constexpr const char* kraus_antennas_inputs_examples = "Kraus, Antennas, inputs of examples 6-8.2 and 6-12.1";
constexpr const char* computed_closed_form_numeric = "independent 40-digit computation: closed form = numeric";

constexpr double book_eta = 120.0 * pi;

/// At exactly a half wave sin(k l) is zero, and with it the wire's thickness.
std::complex<double> thin_half_wave(double eta_ohm) {
  return dipole_input_ohm(0.5, 1e-5, eta_ohm);
}
constexpr Conductor handbook_copper{5.8e7, 1.0};

double book_loop_loss(double frequency_hz) {
  return pi * round_wire_thin_skin(handbook_copper, 10e-3, frequency_hz).resistance_ohm_per_m;
}
/// 197 in place of 20 pi^2 = 197.39, and a speed of light of 3e8 m/s.
double book_loop_efficiency(double frequency_hz) {
  const double radiation = 197.0 / (20.0 * pi * pi) * small_loop_ohm(pi * frequency_hz / 3e8, 1.0, book_eta);
  return radiation / (radiation + book_loop_loss(frequency_hz));
}

}  // namespace

Topic antennas() {
  return {
      "Dipole and loop impedance",
      {
          {"DI-001", "thin half-wave dipole, eta=120 pi", "resistance [ohm]", thin_half_wave(book_eta).real(), 73.13,
           0.005, kraus_antennas_self_resistance, published},
          {"DI-001x", "thin half-wave dipole, eta=120 pi", "resistance [ohm]", thin_half_wave(book_eta).real(),
           73.129601791716732, 7.313e-8, independently, computed},
          {"DI-002", "thin half-wave dipole, eta=120 pi", "reactance [ohm]", thin_half_wave(book_eta).imag(), 42.55,
           0.01, handbook_73_13_j, from_memory},
          {"DI-002x", "thin half-wave dipole, eta=120 pi", "reactance [ohm]", thin_half_wave(book_eta).imag(),
           42.544547283978854, 4.254e-8, independently, computed},
          {"DI-003", "thin half-wave dipole", "reactance [ohm]", thin_half_wave(eta0_ohm).imag(), 42.5, 0.05,
           half_wave_dipole_73, published},
          {"DI-004", "thin half-wave dipole, eta=376.7303 ohm", "resistance [ohm]", thin_half_wave(eta0_ohm).real(),
           73.079010245666544, 7.308e-8, computed_30_eta_0, computed},
          {"DI-008", "quarter-wave monopole over perfect ground, eta=120 pi", "resistance [ohm]",
           0.5 * thin_half_wave(book_eta).real(), 36.564800895858366, 3.656e-8, independently, computed},
          {"DI-010", "quarter-wave monopole over perfect ground, eta0", "resistance [ohm]",
           0.5 * thin_half_wave(eta0_ohm).real(), 36.539505122833272, 3.654e-8, independently, computed},
          {"DI-011", "quarter-wave monopole over perfect ground, eta0", "reactance [ohm]",
           0.5 * thin_half_wave(eta0_ohm).imag(), 21.257557341268741, 2.126e-8, independently, computed},
          {"DI-012", "half-wave dipole", "directivity", dipole_broadside_directivity(0.5), 1.64, 0.005,
           handbook_used_as_1, published},
          {"DI-012x", "half-wave dipole", "directivity", dipole_broadside_directivity(0.5), 1.6409223769845852,
           1.641e-9, independently, computed},
          {"DI-013", "half-wave dipole", "directivity [dBi]", 10.0 * std::log10(dipole_broadside_directivity(0.5)),
           2.15, 0.005, handbook, from_memory},
          {"DI-013x", "half-wave dipole", "directivity [dBi]", 10.0 * std::log10(dipole_broadside_directivity(0.5)),
           2.150880374549228, 2.151e-9, independently, computed},
          {"DI-014", "two-wire folded half-wave dipole (4x), eta=120 pi", "resistance [ohm]",
           folded_dipole_ohm(thin_half_wave(book_eta), 2).real(), 292.51840716686693, 2.925e-7, independently,
           computed},
          {"DI-016", "dipole length 0.1 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.1, 1e-5).imag(), -2770.0439072669524, 0.00277,
           computed_si_ci_closed, computed},
          {"DI-018", "dipole length 0.2 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.2, 1e-5).imag(), -1345.7995073645788, 0.001346,
           computed_si_ci_closed, computed},
          {"DI-019", "dipole length 0.25 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.25, 1e-5).real(), 13.431190970554337, 0.00001343,
           computed_si_ci_closed_2, computed},
          {"DI-020", "dipole length 0.25 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.25, 1e-5).imag(), -998.91600752632652, 0.0009989,
           computed_si_ci_closed, computed},
          {"DI-022", "dipole length 0.3 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.3, 1e-5).imag(), -734.59635338537734, 0.0007346,
           computed_si_ci_closed, computed},
          {"DI-023", "dipole length 0.35 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.35, 1e-5).real(), 28.785119684909177, 0.00002879,
           computed_si_ci_closed_2, computed},
          {"DI-024", "dipole length 0.35 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.35, 1e-5).imag(), -515.34395945977938, 0.0005153,
           computed_si_ci_closed, computed},
          {"DI-025", "dipole length 0.4 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.4, 1e-5).real(), 39.915747350443812, 0.00003992,
           computed_si_ci_closed_2, computed},
          {"DI-026", "dipole length 0.4 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.4, 1e-5).imag(), -320.84143005479161, 0.0003208,
           computed_si_ci_closed, computed},
          {"DI-027", "dipole length 0.45 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.45, 1e-5).real(), 54.291832388184604, 0.00005429,
           computed_si_ci_closed_2, computed},
          {"DI-028", "dipole length 0.45 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.45, 1e-5).imag(), -138.1582981423034, 0.0001382,
           computed_si_ci_closed, computed},
          {"DI-029", "dipole length 0.48 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.48, 1e-5).real(), 64.936972524892851, 0.00006494,
           computed_si_ci_closed_2, computed},
          {"DI-030", "dipole length 0.48 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.48, 1e-5).imag(), -30.088210885822938, 0.00003009,
           computed_si_ci_closed, computed},
          {"DI-031", "dipole length 0.5 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.5, 1e-5).real(), 73.079010245666544, 0.00007308,
           computed_si_ci_closed_2, computed},
          {"DI-035", "dipole length 0.6 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.6, 1e-5).real(), 132.37609842757741, 0.0001324,
           computed_si_ci_closed_2, computed},
          {"DI-036", "dipole length 0.6 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(0.6, 1e-5).imag(), 435.40135775730954, 0.0004354,
           computed_si_ci_closed, computed},
          {"DI-037", "dipole length 0.75 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(0.75, 1e-5).real(), 371.36012161930574, 0.0003714,
           computed_si_ci_closed_2, computed},
          {"DI-039", "dipole length 1.25 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input resistance [ohm]", dipole_input_ohm(1.25, 1e-5).real(), 212.92644725535263, 0.0002129,
           computed_si_ci_closed_2, computed},
          {"DI-040", "dipole length 1.25 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(1.25, 1e-5).imag(), -1035.6435952336855, 0.001036,
           computed_si_ci_closed, computed},
          {"DI-042", "dipole length 1.5 wavelength, radius 1e-5 wavelength, eta0=376.7303, sinusoidal current",
           "input reactance (closed form) [ohm]", dipole_input_ohm(1.5, 1e-5).imag(), 45.509513263572336, 0.00004551,
           computed_si_ci_closed, computed},
          {"DI-043",
           "dipole length 0.5, radius 0.001 wavelength, exact field integral at the surface, sinusoidal current, eta0",
           "input resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.001).real(), 73.078418480343265, 0.0001,
           computed_numeric_integral, computed},
          {"DI-046",
           "dipole length 0.5, radius 0.005 wavelength, exact field integral at the surface, sinusoidal current, eta0",
           "input resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.005).real(), 73.064216874145288, 0.0001,
           computed_numeric_integral, computed},
          {"DI-048", "dipole length 0.5, radius 0.005 wavelength, Balanis closed form, sinusoidal current, eta0",
           "input reactance [ohm]", dipole_input_ohm(0.5, 0.005).imag(), 42.515114682537482, 4.252e-8, independently,
           computed},
          {"DI-051", "dipole length 0.48, radius 0.001 wavelength, Balanis closed form, sinusoidal current, eta0",
           "input reactance [ohm]", dipole_input_ohm(0.48, 0.001).imag(), 4.6556664155232685, 4.656e-9, independently,
           computed},
          {"DI-052",
           "dipole length 0.45, radius 0.0001 wavelength, exact field integral at the surface, sinusoidal current, "
           "eta0",
           "input resistance [ohm]", side_by_side_mutual_ohm(0.45, 0.0001).real(), 54.291828014114283, 0.0001,
           computed_numeric_integral, computed},
          {"DI-053",
           "dipole length 0.45, radius 0.0001 wavelength, exact field integral at the surface, sinusoidal current, "
           "eta0",
           "input reactance [ohm]", side_by_side_mutual_ohm(0.45, 0.0001).imag(), -94.465841417066306, 0.0001,
           computed_numeric_integral, computed},
          {"DI-055", "thin 3/2-wave dipole, eta=120 pi", "resistance at current maximum [ohm]",
           dipole_radiation_resistance_ohm(1.5, book_eta), 105.5, 0.05, balanis_antenna_theory_105, from_memory},
          {"DI-055x", "thin 3/2-wave dipole, eta=120 pi", "resistance at current maximum [ohm]",
           dipole_radiation_resistance_ohm(1.5, book_eta), 105.49423135769537, 1.055e-7, independently, computed},
          {"DI-056", "thin full-wave dipole, eta=120 pi", "resistance at current maximum [ohm]",
           dipole_radiation_resistance_ohm(1.0, book_eta), 199, 0.6, balanis_kraus, from_memory},
          {"DI-056x", "thin full-wave dipole, eta=120 pi", "resistance at current maximum [ohm]",
           dipole_radiation_resistance_ohm(1.0, book_eta), 199.08771063678463, 1.991e-7, independently, computed},
          {"DI-057", "infinitesimal dipole length lambda/50, uniform current",
           "radiation resistance 80 pi^2 (l/lambda)^2 [ohm]", short_uniform_dipole_ohm(1.0 / 50.0, book_eta), 0.3158,
           0.00005, balanis_example_4_1, published},
          {"DI-057x", "infinitesimal dipole length lambda/50, uniform current",
           "radiation resistance 80 pi^2 (l/lambda)^2 [ohm]", short_uniform_dipole_ohm(1.0 / 50.0, book_eta),
           0.31582734083485948, 3.158e-10, independently, computed},
          {"DI-058", "loop radius lambda/25, 1 turn(s), small-loop formula 20 pi^2 (C/lambda)^4 N^2",
           "radiation resistance [ohm]", small_loop_ohm(2.0 * pi / 25.0, 1.0, book_eta), 0.7876, 0.001,
           balanis_example_5_1, published},
          {"DI-058x", "loop radius lambda/25, 1 turn(s), small-loop formula 20 pi^2 (C/lambda)^4 N^2",
           "radiation resistance [ohm]", small_loop_ohm(2.0 * pi / 25.0, 1.0, book_eta), 0.78757002737688939, 7.876e-10,
           independently, computed},
          {"DI-060", "effective length 125 m, wavelength 1250 m, uniform", "radiation resistance [ohm]",
           short_uniform_dipole_ohm(125.0 / 1250.0, book_eta), 8, 0.5, k_k_sharma_example, published},
          {"DI-060x", "effective length 125 m, wavelength 1250 m, uniform", "radiation resistance [ohm]",
           short_uniform_dipole_ohm(125.0 / 1250.0, book_eta), 7.8956835208714869, 7.896e-9, independently, computed},
          {"DI-061", "short dipole length 0.02 wavelength, triangular current",
           "radiation resistance 20 pi^2 (L/lambda)^2 [ohm]", short_dipole_ohm(0.02, book_eta), 0.078956835208714869,
           7.896e-11, independently, computed},
          {"DI-064", "short monopole height 0.05 wavelength, triangular current, perfect ground",
           "radiation resistance 40 pi^2 (h/lambda)^2 [ohm]", short_monopole_ohm(0.05, book_eta), 0.98696044010893586,
           9.87e-10, independently, computed},
          {"DI-065", "short dipole length 0.1 wavelength, triangular current",
           "radiation resistance 20 pi^2 (L/lambda)^2 [ohm]", short_dipole_ohm(0.1, book_eta), 1.9739208802178717,
           1.974e-9, independently, computed},
          {"DI-066", "short monopole height 0.1 wavelength, triangular current, perfect ground",
           "radiation resistance 40 pi^2 (h/lambda)^2 [ohm]", short_monopole_ohm(0.1, book_eta), 3.9478417604357434,
           3.948e-9, independently, computed},
          {"DI-067", "infinitesimal dipole length lambda/40, uniform current", "radiation resistance [ohm]",
           short_uniform_dipole_ohm(1.0 / 40.0, book_eta), 0.493, 0.0005, raju_antennas_wave_propagation, published},
          {"DI-067x", "infinitesimal dipole length lambda/40, uniform current", "radiation resistance [ohm]",
           short_uniform_dipole_ohm(1.0 / 40.0, book_eta), 0.49348022005446793, 4.935e-10, independently, computed},
          {"DI-071",
           "one-turn copper loop circumference pi m, wire 10 mm, 1 MHz (c=3e8, Rr=197 (C/lambda)^4, thin skin, 5.8e7 "
           "S/m)",
           "radiation efficiency", book_loop_efficiency(1e6), 9.0e-5, 2.0e-6, kraus_antennas_example_7, published},
          {"DI-071x",
           "one-turn copper loop circumference pi m, wire 10 mm, 1 MHz (c=3e8, Rr=197 (C/lambda)^4, thin skin, 5.8e7 "
           "S/m)",
           "radiation efficiency", book_loop_efficiency(1e6), 0.000090797813769943386, 9.08e-14, independently,
           computed},
          {"DI-072",
           "one-turn copper loop circumference pi m, wire 10 mm, 1 MHz (c=3e8, Rr=197 (C/lambda)^4, thin skin, 5.8e7 "
           "S/m)",
           "radiation efficiency in dB [dB]", 10.0 * std::log10(book_loop_efficiency(1e6)), -40.4, 0.06,
           kraus_antennas_example_7, published},
          {"DI-072x",
           "one-turn copper loop circumference pi m, wire 10 mm, 1 MHz (c=3e8, Rr=197 (C/lambda)^4, thin skin, 5.8e7 "
           "S/m)",
           "radiation efficiency in dB [dB]", 10.0 * std::log10(book_loop_efficiency(1e6)), -40.4192460829698, 4.042e-8,
           independently, computed},
          {"DI-073", "one-turn copper loop circumference pi m, wire 10 mm, 1 MHz (c=3e8, thin skin, 5.8e7 S/m)",
           "loss resistance [mohm]", 1e3 * book_loop_loss(1e6), 26.089506942234866, 2.609e-8, independently, computed},
          {"DI-074", "one-turn loop circumference pi m, 1 MHz (c=3e8), 20 pi^2 (C/lambda)^4",
           "radiation resistance [mohm]", 1e3 * small_loop_ohm(pi * 1e6 / 3e8, 1.0, book_eta), 0.0023738004779637147,
           2.374e-12, independently, computed},
          {"DI-075",
           "one-turn copper loop circumference pi m, wire 10 mm, 10 MHz (c=3e8, Rr=197 (C/lambda)^4, thin skin, 5.8e7 "
           "S/m)",
           "radiation efficiency", book_loop_efficiency(10e6), 0.22, 0.005, kraus_antennas_example_7, published},
          {"DI-075x",
           "one-turn copper loop circumference pi m, wire 10 mm, 10 MHz (c=3e8, Rr=197 (C/lambda)^4, thin skin, 5.8e7 "
           "S/m)",
           "radiation efficiency", book_loop_efficiency(10e6), 0.22309216884123716, 2.231e-10, independently, computed},
          {"DI-077", "one-turn copper loop circumference pi m, wire 10 mm, 10 MHz (c=3e8, thin skin, 5.8e7 S/m)",
           "loss resistance [mohm]", 1e3 * book_loop_loss(10e6), 82.502264968237162, 8.25e-8, independently, computed},
          {"DI-079", "half-wave slot complementary to 73+j42.5 ohm, Z0=376.7", "resistance [ohm]",
           slot_impedance_ohm({73.0, 42.5}, 376.7).real(), 363, 0.5, kraus_antennas_example_7_2, published},
          {"DI-079x", "half-wave slot complementary to 73+j42.5 ohm, Z0=376.7", "resistance [ohm]",
           slot_impedance_ohm({73.0, 42.5}, 376.7).real(), 362.94842402158299, 3.629e-7, independently, computed},
          {"DI-080", "half-wave slot complementary to 73+j42.5 ohm, Z0=376.7", "reactance [ohm]",
           slot_impedance_ohm({73.0, 42.5}, 376.7).imag(), -211, 0.5, kraus_antennas_example_7_2, published},
          {"DI-080x", "half-wave slot complementary to 73+j42.5 ohm, Z0=376.7", "reactance [ohm]",
           slot_impedance_ohm({73.0, 42.5}, 376.7).imag(), -211.30558932763393, 2.113e-7, independently, computed},
          {"DI-081", "parallel side-by-side half-wave dipoles, spacing 0.125 wavelength, eta=120 pi",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.125, book_eta).real(), 64.4, 0.25,
           kraus_antennas_inputs_examples, published},
          {"DI-081x", "parallel side-by-side half-wave dipoles, spacing 0.125 wavelength, eta=120 pi",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.125, book_eta).real(), 64.182225852409963,
           6.418e-8, independently, computed},
          {"DI-082", "parallel side-by-side half-wave dipoles, spacing 0.4 wavelength, eta=120 pi",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.4, book_eta).real(), 6.3, 0.25,
           kraus_antennas_inputs_examples, published},
          {"DI-082x", "parallel side-by-side half-wave dipoles, spacing 0.4 wavelength, eta=120 pi",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.4, book_eta).real(), 6.2166855357858591, 6.217e-9,
           independently, computed},
          {"DI-084", "parallel side-by-side half-wave dipoles, spacing 0.6 wavelength, eta=120 pi",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.6, book_eta).real(), -23.381, 0.25,
           kraus_antennas_inputs_examples, published},
          {"DI-084x", "parallel side-by-side half-wave dipoles, spacing 0.6 wavelength, eta=120 pi",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.6, book_eta).real(), -23.31274448049697, 2.331e-8,
           independently, computed},
          {"DI-087", "parallel side-by-side half-wave dipoles, spacing 0.1 wavelength, eta0", "mutual reactance [ohm]",
           side_by_side_mutual_ohm(0.5, 0.1, eta0_ohm).imag(), 7.5325775166369035, 7.533e-9, independently, computed},
          {"DI-089", "parallel side-by-side half-wave dipoles, spacing 0.15 wavelength, eta0", "mutual reactance [ohm]",
           side_by_side_mutual_ohm(0.5, 0.15, eta0_ohm).imag(), -7.0915655612990151, 7.092e-9, independently, computed},
          {"DI-090", "parallel side-by-side half-wave dipoles, spacing 0.2 wavelength, eta0", "mutual resistance [ohm]",
           side_by_side_mutual_ohm(0.5, 0.2, eta0_ohm).real(), 51.361101260302402, 5.136e-8,
           computed_closed_form_numeric, computed},
          {"DI-091", "parallel side-by-side half-wave dipoles, spacing 0.2 wavelength, eta0", "mutual reactance [ohm]",
           side_by_side_mutual_ohm(0.5, 0.2, eta0_ohm).imag(), -19.158558684299914, 1.916e-8, independently, computed},
          {"DI-092", "parallel side-by-side half-wave dipoles, spacing 0.25 wavelength, eta0",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.25, eta0_ohm).real(), 40.757504025221295, 4.076e-8,
           computed_closed_form_numeric, computed},
          {"DI-094", "parallel side-by-side half-wave dipoles, spacing 0.5 wavelength, eta0", "mutual resistance [ohm]",
           side_by_side_mutual_ohm(0.5, 0.5, eta0_ohm).real(), -12.523407445632434, 1.252e-8,
           computed_closed_form_numeric, computed},
          {"DI-096", "parallel side-by-side half-wave dipoles, spacing 0.75 wavelength, eta0",
           "mutual resistance [ohm]", side_by_side_mutual_ohm(0.5, 0.75, eta0_ohm).real(), -22.48124395758131, 2.248e-8,
           computed_closed_form_numeric, computed},
          {"DI-097", "parallel side-by-side half-wave dipoles, spacing 0.75 wavelength, eta0", "mutual reactance [ohm]",
           side_by_side_mutual_ohm(0.5, 0.75, eta0_ohm).imag(), 6.6276438382940287, 6.628e-9, independently, computed},
          {"DI-098", "parallel side-by-side half-wave dipoles, spacing 1.0 wavelength, eta0", "mutual resistance [ohm]",
           side_by_side_mutual_ohm(0.5, 1.0, eta0_ohm).real(), 4.0088556903215294, 4.009e-9,
           computed_closed_form_numeric, computed},
          {"DI-099", "parallel side-by-side half-wave dipoles, spacing 1.0 wavelength, eta0", "mutual reactance [ohm]",
           side_by_side_mutual_ohm(0.5, 1.0, eta0_ohm).imag(), 17.729755281308499, 1.773e-8, independently, computed},
      }};
}

}  // namespace wattfall::physics
