// Outside figures for R, L, G, C, Z0 and the propagation constant of lines. Rows that terminate a line are held by the
// solver's own tables (tests/reference).
#include <cmath>

#include "outside.hpp"
#include "physics/constants.hpp"
#include "physics/line_wave.hpp"

namespace wattfall::physics {
namespace {

constexpr const char* sadiku_elements_electromagnetics_example = "Sadiku, Elements of Electromagnetics, example 11.1";
constexpr const char* independently = "independent 40-digit computation";
constexpr const char* sadiku_elements_electromagnetics_example_2 = "Sadiku, Elements of Electromagnetics, example 11.2";
constexpr const char* misra_radio_frequency_microwave =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.3 p.66";
constexpr const char* misra_radio_frequency_microwave_2 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.8 p.75";
constexpr const char* bird_electrical_circuit_theory =
    "Bird, Electrical Circuit Theory and Technology, chapter 44 problem 7 p.877";
constexpr const char* bird_electrical_circuit_theory_2 =
    "Bird, Electrical Circuit Theory and Technology, chapter 44 problem 9 p.880";
constexpr const char* bird_electrical_circuit_theory_3 =
    "Bird, Electrical Circuit Theory and Technology, chapter 44 problem 10 p.881";
constexpr const char* bird_electrical_circuit_theory_4 =
    "Bird, Electrical Circuit Theory and Technology, chapter 44 problem 6 p.876";
constexpr const char* beasley_miller_modern_electronic =
    "Beasley and Miller, Modern Electronic Communication, example 12.1 p.573";
constexpr const char* computed_8_686_alpha = "independent 40-digit computation: 8.686*alpha*length";

LineWave wave(double ohm, double henry, double siemens, double farad, double frequency_hz) {
  return line_wave({ohm, henry, siemens, farad, {}}, frequency_hz);
}
/// At 100 MHz.
LineWave distortionless(double impedance_ohm, double alpha_np, double velocity_m_per_s) {
  return {{alpha_np, 2.0 * pi * 1e8 / velocity_m_per_s}, impedance_ohm, {}};
}
std::complex<double> at_angle(double size, double in_degrees) {
  return std::polar(size, in_degrees * pi / 180.0);
}
/// May be above one where Z0 is complex.
double reflection_size(std::complex<double> line_ohm, std::complex<double> load_ohm) {
  return std::abs((load_ohm - line_ohm) / (load_ohm + line_ohm));
}
double degrees(std::complex<double> value) {
  return std::arg(value) * 180.0 / pi;
}

}  // namespace

Topic waves() {
  return {
      "Transmission line",
      {
          {"TL-002", "air line Z0=70 ohm, beta=3 rad/m at 100 MHz, lossless", "capacitance per metre [pF/m]",
           1e12 * line_constants({{0.0, 3.0}, 70.0, {}}, 1e8).capacitance_f_per_m, 68.2, 0.05,
           sadiku_elements_electromagnetics_example, published},
          {"TL-002x", "air line Z0=70 ohm, beta=3 rad/m at 100 MHz, lossless", "capacitance per metre [pF/m]",
           1e12 * line_constants({{0.0, 3.0}, 70.0, {}}, 1e8).capacitance_f_per_m, 68.209261325098001, 6.821e-8,
           independently, computed},
          {"TL-003", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "R [ohm/m]",
           line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).resistance_ohm_per_m, 1.2, 0.05,
           sadiku_elements_electromagnetics_example_2, published},
          {"TL-003x", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "R [ohm/m]",
           line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).resistance_ohm_per_m, 1.2, 1.2e-9, independently,
           computed},
          {"TL-004", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "L [nH/m]",
           1e9 * line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).inductance_h_per_m, 333, 0.5,
           sadiku_elements_electromagnetics_example_2, published},
          {"TL-004x", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "L [nH/m]",
           1e9 * line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).inductance_h_per_m, 333.33333333333333,
           3.333e-7, independently, computed},
          {"TL-005", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "G [uS/m]",
           1e6 * line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).conductance_s_per_m, 333, 0.5,
           sadiku_elements_electromagnetics_example_2, published},
          {"TL-005x", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "G [uS/m]",
           1e6 * line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).conductance_s_per_m, 333.33333333333333,
           3.333e-7, independently, computed},
          {"TL-006", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "C [pF/m]",
           1e12 * line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).capacitance_f_per_m, 92.59, 0.005,
           sadiku_elements_electromagnetics_example_2, published},
          {"TL-006x", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "C [pF/m]",
           1e12 * line_constants(distortionless(60.0, 20e-3, 1.8e8), 1e8).capacitance_f_per_m, 92.592592592592593,
           9.259e-8, independently, computed},
          {"TL-007", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "wavelength at 100 MHz [m]",
           distortionless(60.0, 20e-3, 1.8e8).wavelength_m(), 1.8, 0.05, sadiku_elements_electromagnetics_example_2,
           published},
          {"TL-007x", "distortionless line Z0=60 ohm, alpha=20 mNp/m, u=0.6*3e8 m/s", "wavelength at 100 MHz [m]",
           distortionless(60.0, 20e-3, 1.8e8).wavelength_m(), 1.8, 1.8e-9, independently, computed},
          {"TL-036", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "Z0 real [ohm]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).impedance_ohm.real(), 179.43, 0.005, misra_radio_frequency_microwave,
           published},
          {"TL-036x", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "Z0 real [ohm]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).impedance_ohm.real(), 179.42741499976313, 1.794e-7, independently,
           computed},
          {"TL-037", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "Z0 imag [ohm]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).impedance_ohm.imag(), 26.51, 0.005, misra_radio_frequency_microwave,
           published},
          {"TL-037x", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "Z0 imag [ohm]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).impedance_ohm.imag(), 26.505987704417239, 2.651e-8, independently,
           computed},
          {"TL-038", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "propagation constant real [1/m]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).gamma_per_m.real(), 0.0514, 0.0002, misra_radio_frequency_microwave,
           published},
          {"TL-038x", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "propagation constant real [1/m]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).gamma_per_m.real(), 0.051409040025645816, 5.141e-11, independently,
           computed},
          {"TL-039", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "propagation constant imag [1/m]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).gamma_per_m.imag(), 0.2725, 0.0002, misra_radio_frequency_microwave,
           published},
          {"TL-039x", "R=2 ohm/m, L=8 nH/m, G=0.5 mS/m, C=0.23 pF/m, f=1 GHz", "propagation constant imag [1/m]",
           wave(2.0, 8e-9, 0.5e-3, 0.23e-12, 1e9).gamma_per_m.imag(), 0.27254940430750556, 2.725e-10, independently,
           computed},
          {"TL-043", "distortionless line Z0=50 ohm, C=100 pF/m, alpha=1.15e-3 Np/m", "L [nH/m]",
           1e9 * line_constants(distortionless(50.0, 1.15e-3, 1.0 / (50.0 * 100e-12)), 1e8).inductance_h_per_m, 250,
           1.0e-6, misra_radio_frequency_microwave_2, published},
          {"TL-043x", "distortionless line Z0=50 ohm, C=100 pF/m, alpha=1.15e-3 Np/m", "L [nH/m]",
           1e9 * line_constants(distortionless(50.0, 1.15e-3, 1.0 / (50.0 * 100e-12)), 1e8).inductance_h_per_m, 250.0,
           2.5e-7, independently, computed},
          {"TL-045", "distortionless line Z0=50 ohm, C=100 pF/m, alpha=1.15e-3 Np/m", "phase velocity [m/s]",
           distortionless(50.0, 1.15e-3, 1.0 / (50.0 * 100e-12)).velocity_m_per_s(1e8), 2e8, 1.0,
           misra_radio_frequency_microwave_2, published},
          {"TL-045x", "distortionless line Z0=50 ohm, C=100 pF/m, alpha=1.15e-3 Np/m", "phase velocity [m/s]",
           distortionless(50.0, 1.15e-3, 1.0 / (50.0 * 100e-12)).velocity_m_per_s(1e8), 200000000.0, 0.2, independently,
           computed},
          {"TL-097", "R=15 ohm/km, L=3.4 mH/km, G=3 uS/km, C=10 nF/km, f=2 kHz", "|Z0| [ohm]",
           std::abs(wave(15e-3, 3.4e-6, 3e-9, 10e-12, 2e3).impedance_ohm), 600, 0.5, bird_electrical_circuit_theory,
           published},
          {"TL-097x", "R=15 ohm/km, L=3.4 mH/km, G=3 uS/km, C=10 nF/km, f=2 kHz", "|Z0| [ohm]",
           std::abs(wave(15e-3, 3.4e-6, 3e-9, 10e-12, 2e3).impedance_ohm), 600.20166792182955, 6.002e-7, independently,
           computed},
          {"TL-098", "R=15 ohm/km, L=3.4 mH/km, G=3 uS/km, C=10 nF/km, f=2 kHz", "angle of Z0 [deg]",
           degrees(wave(15e-3, 3.4e-6, 3e-9, 10e-12, 2e3).impedance_ohm), -8.99, 0.005, bird_electrical_circuit_theory,
           published},
          {"TL-098x", "R=15 ohm/km, L=3.4 mH/km, G=3 uS/km, C=10 nF/km, f=2 kHz", "angle of Z0 [deg]",
           degrees(wave(15e-3, 3.4e-6, 3e-9, 10e-12, 2e3).impedance_ohm), -8.9887144792625825, 8.989e-9, independently,
           computed},
          {"TL-099", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "|Z0| [ohm]",
           std::abs(wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).impedance_ohm), 390.16, 0.005,
           bird_electrical_circuit_theory_2, published},
          {"TL-099x", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "|Z0| [ohm]",
           std::abs(wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).impedance_ohm), 390.15768597149832, 3.902e-7, independently,
           computed},
          {"TL-100", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "angle of Z0 [deg]",
           degrees(wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).impedance_ohm), -10.43, 0.005,
           bird_electrical_circuit_theory_2, published},
          {"TL-100x", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "angle of Z0 [deg]",
           degrees(wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).impedance_ohm), -10.427550051276859, 1.043e-8, independently,
           computed},
          {"TL-102", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "alpha [Np/km]",
           1e3 * wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).gamma_per_m.real(), 0.0484, 0.00005,
           bird_electrical_circuit_theory_2, published},
          {"TL-102x", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "alpha [Np/km]",
           1e3 * wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).gamma_per_m.real(), 0.048444721724027159, 4.844e-11,
           independently, computed},
          {"TL-103", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "beta [rad/km]",
           1e3 * wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).gamma_per_m.imag(), 0.0908, 0.00005,
           bird_electrical_circuit_theory_2, published},
          {"TL-103x", "R=25 ohm/km, L=5 mH/km, G=80 uS/km, C=0.04 uF/km, f=1 kHz", "beta [rad/km]",
           1e3 * wave(25e-3, 5e-6, 80e-9, 0.04e-9, 1e3).gamma_per_m.imag(), 0.09078862585032288, 9.079e-11,
           independently, computed},
          {"TL-104",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "|Z0| [ohm]", std::abs(wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).impedance_ohm), 659.2, 0.05,
           bird_electrical_circuit_theory_3, published},
          {"TL-104x",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "|Z0| [ohm]", std::abs(wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).impedance_ohm), 659.1876847442268, 6.592e-7,
           independently, computed},
          {"TL-105",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "angle of Z0 [deg]", degrees(wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).impedance_ohm), -11.35, 0.005,
           bird_electrical_circuit_theory_3, published},
          {"TL-105x",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "angle of Z0 [deg]", degrees(wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).impedance_ohm), -11.34652348623855,
           1.135e-8, independently, computed},
          {"TL-107",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "beta [rad/km]", 1e3 * wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).gamma_per_m.imag(), 0.03042, 5.0e-6,
           bird_electrical_circuit_theory_3, published},
          {"TL-107x",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "beta [rad/km]", 1e3 * wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).gamma_per_m.imag(), 0.030423936541926343,
           3.042e-11, independently, computed},
          {"TL-112",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "wavelength [km]", wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).wavelength_m() / 1e3, 206.5, 0.05,
           bird_electrical_circuit_theory_3, published},
          {"TL-112x",
           "300 km line, R=8 ohm/km, L=3 mH/km, G=0.25 uS/km, C=7500 pF/km, f=1 kHz, matched, 10 V behind 400 ohm",
           "wavelength [km]", wave(8e-3, 3e-6, 0.25e-9, 7500e-15, 1e3).wavelength_m() / 1e3, 206.52111532381457,
           2.065e-7, independently, computed},
          {"TL-118", "Zoc=800 at -50 deg, Zsc=413 at -20 deg", "|Z0| [ohm]",
           std::abs(impedance_from_open_and_short_ohm(at_angle(800.0, -50.0), at_angle(413.0, -20.0))), 575, 0.5,
           bird_electrical_circuit_theory_4, published},
          {"TL-118x", "Zoc=800 at -50 deg, Zsc=413 at -20 deg", "|Z0| [ohm]",
           std::abs(impedance_from_open_and_short_ohm(at_angle(800.0, -50.0), at_angle(413.0, -20.0))),
           574.80431452799656, 5.748e-7, independently, computed},
          {"TL-119", "Zoc=800 at -50 deg, Zsc=413 at -20 deg", "angle of Z0 [deg]",
           degrees(impedance_from_open_and_short_ohm(at_angle(800.0, -50.0), at_angle(413.0, -20.0))), -35, 1.0e-6,
           bird_electrical_circuit_theory_4, published},
          {"TL-119x", "Zoc=800 at -50 deg, Zsc=413 at -20 deg", "angle of Z0 [deg]",
           degrees(impedance_from_open_and_short_ohm(at_angle(800.0, -50.0), at_angle(413.0, -20.0))), -35.0, 3.5e-8,
           independently, computed},
          {"TL-136", "L=73.75 nH/ft, C=29.5 pF/ft (RG-8A/U)", "Z0 [ohm]",
           line_wave({0.0, 73.75e-9, 0.0, 29.5e-12, {}}, 1e8).impedance_ohm.real(), 50, 1.0e-9,
           beasley_miller_modern_electronic, published},
          {"TL-136x", "L=73.75 nH/ft, C=29.5 pF/ft (RG-8A/U)", "Z0 [ohm]",
           line_wave({0.0, 73.75e-9, 0.0, 29.5e-12, {}}, 1e8).impedance_ohm.real(), 50.0, 5.0e-8, independently,
           computed},
          {"TL-191", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=25.0+100j ohm",
           "Z0 real [ohm]", wave(0.5, 250e-9, 1e-5, 100e-12, 3.5e6).impedance_ohm.real(), 50.056337396078279, 5.006e-8,
           independently, computed},
          {"TL-192", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=25.0+100j ohm",
           "Z0 imag [ohm]", wave(0.5, 250e-9, 1e-5, 100e-12, 3.5e6).impedance_ohm.imag(), -2.1574843386868672, 2.157e-9,
           independently, computed},
          {"TL-194", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=25.0+100j ohm",
           "beta [rad/m]", wave(0.5, 250e-9, 1e-5, 100e-12, 3.5e6).gamma_per_m.imag(), 0.11005806043700522, 1.101e-10,
           independently, computed},
          {"TL-199", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=25.0+100j ohm",
           "matched loss (termination Z0) [dB]", 30.0 * wave(0.5, 250e-9, 1e-5, 100e-12, 3.5e6).loss_db_per_m(),
           1.3667558051975801, 1.367e-9, computed_8_686_alpha, computed},
          {"TL-202", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=5.0-300j ohm",
           "Z0 imag [ohm]", wave(0.5, 250e-9, 1e-5, 100e-12, 3.5e6).impedance_ohm.imag(), -2.1574843386868672, 2.157e-9,
           independently, computed},
          {"TL-204", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=5.0-300j ohm",
           "beta [rad/m]", wave(0.5, 250e-9, 1e-5, 100e-12, 3.5e6).gamma_per_m.imag(), 0.11005806043700522, 1.101e-10,
           independently, computed},
          {"TL-214", "R=0.2 ohm/m, L=250e-9 H/m, G=0 S/m, C=100e-12 F/m, f=1.85 MHz, length 60 m, ZL=1000.0+0j ohm",
           "beta [rad/m]", wave(0.2, 250e-9, 0.0, 100e-12, 1.85e6).gamma_per_m.imag(), 0.058153825160071069, 5.815e-11,
           independently, computed},
          {"TL-219", "R=0.2 ohm/m, L=250e-9 H/m, G=0 S/m, C=100e-12 F/m, f=1.85 MHz, length 60 m, ZL=1000.0+0j ohm",
           "matched loss (termination Z0) [dB]", 60.0 * wave(0.2, 250e-9, 0.0, 100e-12, 1.85e6).loss_db_per_m(),
           1.0416908938291365, 1.042e-9, computed_8_686_alpha, computed},
          {"TL-221", "R=0.05 ohm/m, L=2e-6 H/m, G=0 S/m, C=5.6e-12 F/m, f=7.1 MHz, length 40 m, ZL=50.0-1200j ohm",
           "Z0 real [ohm]", wave(0.05, 2e-6, 0.0, 5.6e-12, 7.1e6).impedance_ohm.real(), 597.61432812754957, 5.976e-7,
           independently, computed},
          {"TL-222", "R=0.05 ohm/m, L=2e-6 H/m, G=0 S/m, C=5.6e-12 F/m, f=7.1 MHz, length 40 m, ZL=50.0-1200j ohm",
           "Z0 imag [ohm]", wave(0.05, 2e-6, 0.0, 5.6e-12, 7.1e6).impedance_ohm.imag(), -0.16745293471193548, 1.675e-10,
           independently, computed},
          {"TL-223", "R=0.05 ohm/m, L=2e-6 H/m, G=0 S/m, C=5.6e-12 F/m, f=7.1 MHz, length 40 m, ZL=50.0-1200j ohm",
           "alpha [dB/m]", wave(0.05, 2e-6, 0.0, 5.6e-12, 7.1e6).loss_db_per_m(), 0.00036335681848859539, 3.634e-13,
           independently, computed},
          {"TL-224", "R=0.05 ohm/m, L=2e-6 H/m, G=0 S/m, C=5.6e-12 F/m, f=7.1 MHz, length 40 m, ZL=50.0-1200j ohm",
           "beta [rad/m]", wave(0.05, 2e-6, 0.0, 5.6e-12, 7.1e6).gamma_per_m.imag(), 0.14929568145823654, 1.493e-10,
           independently, computed},
          {"TL-229", "R=0.05 ohm/m, L=2e-6 H/m, G=0 S/m, C=5.6e-12 F/m, f=7.1 MHz, length 40 m, ZL=50.0-1200j ohm",
           "matched loss (termination Z0) [dB]", 40.0 * wave(0.05, 2e-6, 0.0, 5.6e-12, 7.1e6).loss_db_per_m(),
           0.014534272739543815, 1.453e-11, computed_8_686_alpha, computed},
          {"TL-231", "R=1.5 ohm/m, L=260e-9 H/m, G=2e-5 S/m, C=98e-12 F/m, f=14.2 MHz, length 25 m, ZL=150.0-75j ohm",
           "Z0 real [ohm]", wave(1.5, 260e-9, 2e-5, 98e-12, 14.2e6).impedance_ohm.real(), 51.536563228952666, 5.154e-8,
           independently, computed},
          {"TL-234", "R=1.5 ohm/m, L=260e-9 H/m, G=2e-5 S/m, C=98e-12 F/m, f=14.2 MHz, length 25 m, ZL=150.0-75j ohm",
           "beta [rad/m]", wave(1.5, 260e-9, 2e-5, 98e-12, 14.2e6).gamma_per_m.imag(), 0.45058714204217719, 4.506e-10,
           independently, computed},
          {"TL-241", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=28.5 MHz, length 40 m, ZL=2.0+0j ohm",
           "Z0 real [ohm]", wave(0.5, 250e-9, 1e-5, 100e-12, 28.5e6).impedance_ohm.real(), 50.000851718006226, 5.0e-8,
           independently, computed},
          {"TL-243", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=28.5 MHz, length 40 m, ZL=2.0+0j ohm",
           "alpha [dB/m]", wave(0.5, 250e-9, 1e-5, 100e-12, 28.5e6).loss_db_per_m(), 0.04560027892166301, 4.56e-11,
           independently, computed},
          {"TL-244", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=28.5 MHz, length 40 m, ZL=2.0+0j ohm",
           "beta [rad/m]", wave(0.5, 250e-9, 1e-5, 100e-12, 28.5e6).gamma_per_m.imag(), 0.89536650551759604, 8.954e-10,
           independently, computed},
          {"TL-249", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=28.5 MHz, length 40 m, ZL=2.0+0j ohm",
           "matched loss (termination Z0) [dB]", 40.0 * wave(0.5, 250e-9, 1e-5, 100e-12, 28.5e6).loss_db_per_m(),
           1.8240111568665204, 1.824e-9, computed_8_686_alpha, computed},
          {"TL-251", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=0.5 MHz, length 30 m, ZL=0.5+55j ohm",
           "Z0 real [ohm]", wave(0.5, 250e-9, 1e-5, 100e-12, 0.5e6).impedance_ohm.real(), 52.489028637075129, 5.249e-8,
           independently, computed},
          {"TL-252", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=0.5 MHz, length 30 m, ZL=0.5+55j ohm",
           "Z0 imag [ohm]", wave(0.5, 250e-9, 1e-5, 100e-12, 0.5e6).impedance_ohm.imag(), -14.388164549087978, 1.439e-8,
           independently, computed},
          {"TL-254", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=0.5 MHz, length 30 m, ZL=0.5+55j ohm",
           "beta [rad/m]", wave(0.5, 250e-9, 1e-5, 100e-12, 0.5e6).gamma_per_m.imag(), 0.01634603303053907, 1.635e-11,
           independently, computed},
          {"TL-257", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=0.5 MHz, length 30 m, ZL=0.5+55j ohm",
           "|Gamma| at load (Z-Z0)/(Z+Z0)",
           reflection_size(wave(0.5, 250e-9, 1e-5, 100e-12, 0.5e6).impedance_ohm, {0.5, 55.0}), 1.2987031575634722,
           1.299e-9, independently, computed},
          {"TL-259", "R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=0.5 MHz, length 30 m, ZL=0.5+55j ohm",
           "matched loss (termination Z0) [dB]", 30.0 * wave(0.5, 250e-9, 1e-5, 100e-12, 0.5e6).loss_db_per_m(),
           1.3146264621429267, 1.315e-9, computed_8_686_alpha, computed},
      }};
}

}  // namespace wattfall::physics
