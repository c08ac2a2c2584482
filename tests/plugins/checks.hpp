// Outside check values for the line plugin, carried over from the project's reference collection with their ids,
// sources and status: `published` was read in the named source, `from_memory` is a remembered citation that was not
// looked up, `computed` is exact, from a 40-digit computation by an independent method, and is held to 1e-9 of its
// value. An id that ends in x is the exact partner of the printed row.
#pragma once

#include <complex>
#include <cstddef>
#include <iterator>

#include "wattfall/sdk.hpp"

namespace checks {

namespace sdk = wattfall::sdk;

inline constexpr double c0 = 299792458.0;  // [m/s], exact

enum class Status { published, from_memory, computed };

struct CableRow {
  const char* id;
  const char* cable;
  double mhz;
  double expected, tolerance;
  Status status;
  const char* source;
};

struct CapacitanceRow {
  const char* id;
  double impedance_ohm, velocity, per_m;
  double expected, tolerance;
  Status status;
  const char* source;
};

struct FitRow {
  const char* id;
  const sdk::LossPoint* points;  // dB/100ft
  std::size_t count;
  int coefficient;  // 1: [dB/100ft/sqrt(MHz)], 2: [dB/100ft/MHz]
  double expected, tolerance;
  Status status;
  const char* source;
};

enum class MismatchFigure { added, total, input_swr };

struct MismatchRow {
  const char* id;
  double matched_db, load_swr;
  MismatchFigure figure;
  double expected, tolerance;
  Status status;
  const char* source;
};

enum class Figure {
  resistance,
  reactance,
  conductance,
  susceptance,
  alpha,
  beta,
  z0_real,
  z0_imag,
  total_loss,
  matched_loss
};

struct LosslessRow {
  const char* id;
  double impedance_ohm, velocity, frequency_hz, length_m, wavelengths;
  std::complex<double> load_ohm;
  Figure figure;
  double expected, tolerance;
  Status status;
  const char* source;
};

struct LossyRow {
  const char* id;
  double r, l, g, c, frequency_hz, length_m;
  std::complex<double> load_ohm;
  Figure figure;
  double expected, tolerance;
  Status status;
  const char* source;
};

struct Single {
  const char* id;
  double expected, tolerance;
  Status status;
  const char* source;
};

inline constexpr const char* source_1 = "40-digit computation";
inline constexpr const char* source_2 = "coaxial cable specification sheet, an amateur compilation";
inline constexpr const char* source_3 =
    "MIL-C-17G sheets 28C (RG-58) and 74C (RG-213), quoted in a 2004 mailing-list post (values read off graphs)";
inline constexpr const char* source_4 = "MIL-DTL-17 nominal figures; from memory";
inline constexpr const char* source_5 = "MIL-DTL-17 sheet; from memory";
inline constexpr const char* source_6 =
    "radio-repeater training guide, appendix H cable losses (nominal dB/100 ft column)";
inline constexpr const char* source_7 = "mailing-list measurement 2010";
inline constexpr const char* source_8 =
    "handbook nominal table for military RG cables (Reference Data for Radio Engineers / MIL-HDBK-216 style); from "
    "memory, not located in search";
inline constexpr const char* source_9 = "handbook nominal; from memory";
inline constexpr const char* source_10 = "40-digit computation: NNLS";
inline constexpr const char* source_11 =
    "worked examples in a mailing-list post of March 1999; formula Lt=10 log10[((1-p^2) e^(2a))/(1-p^2 e^(4a))] in "
    "nepers";
inline constexpr const char* source_12 =
    "40-digit computation: standard closed form with real Z0: total loss = 10 log10[(B^2-r^2)/(B(1-r^2))], "
    "B=10^(ML/10), r=(S-1)/(S+1) at the load (handbook formula, from memory)";
inline constexpr const char* source_13 =
    "Sadiku, Elements of Electromagnetics, example 11.4, figures as printed by an open textbook companion";
inline constexpr const char* source_14 =
    "Sadiku, Elements of Electromagnetics, example 11.5, figures as printed by an open textbook companion";
inline constexpr const char* source_15 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.11 p.77, figures as printed by an open "
    "textbook companion";
inline constexpr const char* source_16 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.15 p.87, figures as printed by an open "
    "textbook companion";
inline constexpr const char* source_17 =
    "Pozar, Microwave Engineering, admittance example (chapter 2); figures 0.0080-j0.0040 S and 0.0122+j0.0132 S "
    "(scribd presentation 468473066), line length from memory";
inline constexpr const char* source_18 =
    "Roddy and Coolen, Electronic Communications, example 13.11.1, figures as printed by an open textbook companion";
inline constexpr const char* source_19 =
    "Liao, Microwave Devices and Circuits, example 3.4.1 p.99, figures as printed by an open textbook companion";
inline constexpr const char* source_20 = "40-digit computation: chain matrix = travelling waves";
inline constexpr const char* source_21 = "40-digit computation: 8.686*alpha*length";
inline constexpr const char* source_22 =
    "MIL-DTL-28830 page 14, formula Z0 = 101670/(velocity percent * capacitance pF/ft)";
inline constexpr const char* source_23 =
    "Sadiku, Elements of Electromagnetics, example 11.3, figures as printed by an open textbook companion";
inline constexpr const char* source_24 = "40-digit computation: chain matrix";
inline constexpr const char* source_25 =
    "Pozar, Microwave Engineering, chapter 2 lossy-line problem; statement from memory; figure computed two ways";
inline constexpr const char* source_26 =
    "Pozar, Microwave Engineering, chapter 2 lossy-line problem; statement from memory; figure computed";
inline constexpr const char* source_27 =
    "Blake, Electronic Communication Systems, example 14.5, figures as printed by an open textbook companion";
inline constexpr const char* source_28 =
    "Stanley and Jeffords, Electronic Communications, example 14.8, figures as printed by an open textbook companion";
inline constexpr const char* source_29 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.8 p.75, figures as printed by an open "
    "textbook companion";

// clang-format off

/// Matched loss [dB/100ft] of a cable of the table.
inline constexpr CableRow loss_rows[] = {
    {"CA-038", "RG-58", 50, 3.30, 0.165, Status::published, source_6},
    {"CA-040", "RG-58", 450, 11.75, 0.5875, Status::published, source_6},
    {"CA-049", "RG-213", 50, 1.50, 0.075, Status::published, source_6},
    {"CA-052", "RG-213", 850, 7.53, 0.3765, Status::published, source_6},
    {"CA-060", "RG-393", 50, 1.40, 0.07, Status::published, source_6},
    {"CA-062", "RG-393", 450, 4.75, 0.2375, Status::published, source_6},
    {"CA-071", "RG-213", 432, 4.5, 0.2, Status::published, source_7},
    {"CA-073", "RG-58", 10, 1.4, 0.15, Status::published, source_2},
    {"CA-074", "RG-174", 10, 3.3, 0.15, Status::published, source_2},
    {"CA-075", "RG-11", 10, 0.7, 0.15, Status::published, source_2},
    {"CA-076", "RG-59", 10, 1.1, 0.15, Status::published, source_2},
    {"CA-077", "RG-142", 10, 1.1, 0.15, Status::published, source_2},  // printed for RG-141: the same conductors under one braid
    {"CA-078", "RG-223", 10, 1.2, 0.15, Status::published, source_2},
    {"CA-079", "RG-8", 1, 0.16, 0.0192, Status::from_memory, source_8},
    {"CA-080", "RG-8", 10, 0.55, 0.066, Status::from_memory, source_8},
    {"CA-081", "RG-8", 50, 1.33, 0.1596, Status::from_memory, source_8},
    {"CA-082", "RG-8", 100, 1.9, 0.228, Status::from_memory, source_8},
    {"CA-083", "RG-8", 200, 2.7, 0.324, Status::from_memory, source_8},
    {"CA-084", "RG-8", 400, 4.1, 0.492, Status::from_memory, source_8},
    {"CA-085", "RG-8", 1000, 8.0, 0.96, Status::from_memory, source_8},
    {"CA-093", "RG-213", 1, 0.18, 0.0216, Status::from_memory, source_8},
    {"CA-094", "RG-213", 10, 0.60, 0.072, Status::from_memory, source_8},
    {"CA-095", "RG-213", 50, 1.5, 0.18, Status::from_memory, source_8},
    {"CA-096", "RG-213", 100, 2.1, 0.252, Status::from_memory, source_8},
    {"CA-097", "RG-213", 200, 3.0, 0.36, Status::from_memory, source_8},
    {"CA-098", "RG-213", 400, 4.7, 0.564, Status::from_memory, source_8},
    {"CA-108", "RG-58", 10, 1.4, 0.168, Status::from_memory, source_8},
    {"CA-109", "RG-58", 50, 3.3, 0.396, Status::from_memory, source_8},
    {"CA-110", "RG-58", 100, 4.9, 0.588, Status::from_memory, source_8},
    {"CA-111", "RG-58", 200, 7.3, 0.876, Status::from_memory, source_8},
    {"CA-112", "RG-58", 400, 11.0, 1.32, Status::from_memory, source_8},
    {"CA-113", "RG-58", 1000, 20.0, 2.4, Status::from_memory, source_8},
    {"CA-121", "RG-59", 1, 0.34, 0.0408, Status::from_memory, source_8},
    {"CA-123", "RG-59", 50, 2.4, 0.288, Status::from_memory, source_8},
    {"CA-124", "RG-59", 100, 3.4, 0.408, Status::from_memory, source_8},
    {"CA-125", "RG-59", 200, 4.9, 0.588, Status::from_memory, source_8},
    {"CA-126", "RG-59", 400, 7.0, 0.84, Status::from_memory, source_8},
    {"CA-127", "RG-59", 1000, 12.0, 1.44, Status::from_memory, source_8},
    {"CA-136", "RG-6", 10, 0.6, 0.09, Status::from_memory, source_8},
    {"CA-138", "RG-6", 100, 2.0, 0.3, Status::from_memory, source_8},
    {"CA-139", "RG-6", 200, 2.8, 0.42, Status::from_memory, source_8},
    {"CA-140", "RG-6", 400, 4.3, 0.645, Status::from_memory, source_8},
    {"CA-141", "RG-6", 1000, 6.1, 0.915, Status::from_memory, source_8},
    {"CA-150", "RG-11", 10, 0.66, 0.0792, Status::from_memory, source_8},
    {"CA-152", "RG-11", 100, 2.3, 0.276, Status::from_memory, source_8},
    {"CA-154", "RG-11", 400, 4.9, 0.588, Status::from_memory, source_8},
    {"CA-155", "RG-11", 1000, 8.0, 0.96, Status::from_memory, source_8},
    {"CA-163", "RG-174", 1, 1.9, 0.285, Status::from_memory, source_8},
    {"CA-164", "RG-174", 10, 3.3, 0.495, Status::from_memory, source_8},
    {"CA-165", "RG-174", 50, 6.6, 0.99, Status::from_memory, source_8},
    {"CA-177", "RG-142", 1, 0.34, 0.0408, Status::from_memory, source_8},
    {"CA-178", "RG-142", 10, 1.1, 0.132, Status::from_memory, source_8},
    {"CA-179", "RG-142", 50, 2.7, 0.324, Status::from_memory, source_8},
    {"CA-180", "RG-142", 100, 3.9, 0.468, Status::from_memory, source_8},
    {"CA-181", "RG-142", 200, 5.6, 0.672, Status::from_memory, source_8},
    {"CA-182", "RG-142", 400, 8.2, 0.984, Status::from_memory, source_8},
    {"CA-183", "RG-142", 1000, 13.5, 1.62, Status::from_memory, source_8},
    {"CA-191", "RG-400", 1, 0.4, 0.06, Status::from_memory, source_8},
    {"CA-192", "RG-400", 10, 1.2, 0.18, Status::from_memory, source_8},
    {"CA-193", "RG-400", 50, 2.9, 0.435, Status::from_memory, source_8},
    {"CA-195", "RG-400", 200, 6.0, 0.9, Status::from_memory, source_8},
    {"CA-196", "RG-400", 400, 8.8, 1.32, Status::from_memory, source_8},
    {"CA-206", "RG-393", 10, 0.6, 0.09, Status::from_memory, source_8},
    {"CA-207", "RG-393", 50, 1.4, 0.21, Status::from_memory, source_8},
    {"CA-208", "RG-393", 100, 2.1, 0.315, Status::from_memory, source_8},
    {"CA-209", "RG-393", 200, 3.1, 0.465, Status::from_memory, source_8},
    {"CA-210", "RG-393", 400, 4.5, 0.675, Status::from_memory, source_8},
    {"CA-211", "RG-393", 1000, 7.6, 1.14, Status::from_memory, source_8},
    {"CA-219", "semi-rigid 0.141", 10, 1.1, 0.132, Status::from_memory, source_8},
    {"CA-221", "semi-rigid 0.141", 400, 7.2, 0.864, Status::from_memory, source_8},
    {"CA-222", "semi-rigid 0.141", 1000, 11.8, 1.416, Status::from_memory, source_8},
    {"CA-223", "semi-rigid 0.141", 3000, 21.5, 2.58, Status::from_memory, source_8},
    {"CA-224", "semi-rigid 0.141", 10000, 43.0, 5.16, Status::from_memory, source_8},
    {"CA-232", "twin-lead 300", 1, 0.09, 0.0225, Status::from_memory, source_8},
    {"CA-234", "twin-lead 300", 50, 0.75, 0.1875, Status::from_memory, source_8},
    {"CA-243", "window line 450", 1, 0.02, 0.007, Status::from_memory, source_8},
    {"CA-245", "window line 450", 50, 0.21, 0.0735, Status::from_memory, source_8},
    {"CA-246", "window line 450", 100, 0.30, 0.105, Status::from_memory, source_8},
};

/// Upper limits of matched loss [dB/100ft] in a specification.
inline constexpr CableRow loss_bound_rows[] = {
    {"CA-015", "RG-58", 50, 4, 1, Status::published, source_3},
    {"CA-016", "RG-58", 1000, 28, 1, Status::published, source_3},
    {"CA-017", "RG-213", 50, 1.2, 0.5, Status::published, source_3},
    {"CA-018", "RG-213", 1000, 9, 0.5, Status::published, source_3},
};

/// Working voltage [V rms]; the frequency is of no meaning.
inline constexpr CableRow volts_rows[] = {
    {"CA-012", "RG-58", 0., 1400, 50, Status::published, source_3},
    {"CA-013", "RG-213", 0., 3700, 50, Status::published, source_3},
    {"CA-027", "RG-59", 0., 1700, 300, Status::from_memory, source_5},
    {"CA-029", "RG-11", 0., 3700, 300, Status::from_memory, source_5},
    {"CA-031", "RG-142", 0., 1400, 300, Status::from_memory, source_5},
    {"CA-035", "RG-393", 0., 2500, 300, Status::from_memory, source_5},
    {"CA-037", "semi-rigid 0.141", 0., 1900, 300, Status::from_memory, source_5},
};

/// Velocity, of light's; the frequency is of no meaning.
inline constexpr CableRow velocity_rows[] = {
    {"CA-254", "RG-213", 0., 0.66, 0.03, Status::from_memory, source_9},
    {"CA-255", "RG-400", 0., 0.69, 0.03, Status::from_memory, source_9},
    {"CA-256", "twin-lead 300", 0., 0.82, 0.03, Status::from_memory, source_9},
    {"CA-257", "window line 450", 0., 0.91, 0.03, Status::from_memory, source_9},
    {"CA-258", "open wire 600", 0., 0.97, 0.03, Status::from_memory, source_9},
};

/// Capacitance [pF per length] that impedance and velocity imply.
inline constexpr CapacitanceRow capacitance_rows[] = {
    {"CA-003", 50., 0.66, 1.0, 101.08002884792486, 1.0108e-07, Status::computed, source_1},
    {"CA-006", 75., 0.66, 0.3048, 21, 1, Status::published, source_2},
    {"CA-006x", 75., 0.66, 0.3048, 20.539461861898332, 2.05395e-08, Status::computed, source_1},
    {"CA-007", 75., 0.66, 1.0, 67.386685898616576, 6.73867e-08, Status::computed, source_1},
    {"CA-008", 75., 0.66, 0.3048, 21, 1, Status::published, source_2},
    {"CA-008x", 75., 0.66, 0.3048, 20.539461861898332, 2.05395e-08, Status::computed, source_1},
    {"CA-009", 50., 0.7, 0.3048, 29, 1, Status::published, source_2},
    {"CA-009x", 50., 0.7, 0.3048, 29.04866749039907, 2.90487e-08, Status::computed, source_1},
    {"CA-010", 50., 0.7, 1.0, 95.304027199472014, 9.5304e-08, Status::computed, source_1},
    {"CA-022", 50., 0.659, 0.3048, 30.8, 0.3, Status::from_memory, source_4},
    {"CA-022x", 50., 0.659, 0.3048, 30.855944223489149, 3.08559e-08, Status::computed, source_1},
    {"CA-026", 75., 0.659, 0.3048, 20.6, 0.3, Status::from_memory, source_4},
    {"CA-026x", 75., 0.659, 0.3048, 20.570629482326099, 2.05706e-08, Status::computed, source_1},
    {"CA-028", 75., 0.659, 0.3048, 20.6, 0.3, Status::from_memory, source_4},
    {"CA-028x", 75., 0.659, 0.3048, 20.570629482326099, 2.05706e-08, Status::computed, source_1},
    {"CA-032", 50., 0.695, 0.3048, 29.4, 0.3, Status::from_memory, source_4},
    {"CA-032x", 50., 0.695, 0.3048, 29.257650709754459, 2.92577e-08, Status::computed, source_1},
    {"CA-034", 50., 0.695, 0.3048, 29.4, 0.3, Status::from_memory, source_4},
    {"CA-034x", 50., 0.695, 0.3048, 29.257650709754459, 2.92577e-08, Status::computed, source_1},
    {"CA-036", 50., 0.695, 0.3048, 29.4, 0.3, Status::from_memory, source_4},
    {"CA-036x", 50., 0.695, 0.3048, 29.257650709754459, 2.92577e-08, Status::computed, source_1},
};

// dB/100ft over Hz, as the reference prints them.
inline constexpr sdk::LossPoint points_1[] = {{50e6, 1.40}, {150e6, 2.60}, {450e6, 4.75}, {850e6, 6.50}};
inline constexpr sdk::LossPoint points_2[] = {{1e6, 0.16}, {10e6, 0.55}, {50e6, 1.33}, {100e6, 1.9}, {200e6, 2.7}, {400e6, 4.1}, {1000e6, 8.0}};
inline constexpr sdk::LossPoint points_3[] = {{1e6, 0.18}, {10e6, 0.60}, {50e6, 1.5}, {100e6, 2.1}, {200e6, 3.0}, {400e6, 4.7}, {1000e6, 8.2}};
inline constexpr sdk::LossPoint points_4[] = {{1e6, 0.42}, {10e6, 1.4}, {50e6, 3.3}, {100e6, 4.9}, {200e6, 7.3}, {400e6, 11.0}, {1000e6, 20.0}};
inline constexpr sdk::LossPoint points_5[] = {{1e6, 0.21}, {10e6, 0.66}, {50e6, 1.6}, {100e6, 2.3}, {200e6, 3.3}, {400e6, 4.9}, {1000e6, 8.0}};
inline constexpr sdk::LossPoint points_6[] = {{1e6, 0.34}, {10e6, 1.1}, {50e6, 2.7}, {100e6, 3.9}, {200e6, 5.6}, {400e6, 8.2}, {1000e6, 13.5}};
inline constexpr sdk::LossPoint points_7[] = {{1e6, 0.18}, {10e6, 0.6}, {50e6, 1.4}, {100e6, 2.1}, {200e6, 3.1}, {400e6, 4.5}, {1000e6, 7.6}};
inline constexpr sdk::LossPoint points_8[] = {{1e6, 0.09}, {10e6, 0.30}, {50e6, 0.75}, {100e6, 1.1}};
inline constexpr sdk::LossPoint points_9[] = {{1e6, 0.02}, {10e6, 0.08}, {50e6, 0.21}, {100e6, 0.30}};

/// Non-negative least squares of the relative errors. The reference fits a constant too: here are the rows where it comes out as 0.
inline constexpr FitRow fit_rows[] = {
    {"CA-069", points_1, std::size(points_1), 1, 0.19419117999265106, 1.94191e-10, Status::computed, source_10},
    {"CA-092", points_2, std::size(points_2), 2, 0.0026053274102973306, 2.60533e-12, Status::computed, source_10},
    {"CA-105", points_3, std::size(points_3), 1, 0.18277248616747965, 1.82772e-10, Status::computed, source_10},
    {"CA-106", points_3, std::size(points_3), 2, 0.0024944229198804128, 2.49442e-12, Status::computed, source_10},
    {"CA-119", points_4, std::size(points_4), 1, 0.41808756160872584, 4.18088e-10, Status::computed, source_10},
    {"CA-120", points_4, std::size(points_4), 2, 0.0067966345238047723, 6.79663e-12, Status::computed, source_10},
    {"CA-161", points_5, std::size(points_5), 1, 0.21034354690732504, 2.10344e-10, Status::computed, source_10},
    {"CA-162", points_5, std::size(points_5), 2, 0.0015260422161076073, 1.52604e-12, Status::computed, source_10},
    {"CA-189", points_6, std::size(points_6), 1, 0.34805626845474547, 3.48056e-10, Status::computed, source_10},
    {"CA-190", points_6, std::size(points_6), 2, 0.0029016696135040244, 2.90167e-12, Status::computed, source_10},
    {"CA-217", points_7, std::size(points_7), 1, 0.18383633409078134, 1.83836e-10, Status::computed, source_10},
    {"CA-242", points_8, std::size(points_8), 2, 0.0023310800587089059, 2.33108e-12, Status::computed, source_10},
    {"CA-253", points_9, std::size(points_9), 2, 0.0011762320927525402, 1.17623e-12, Status::computed, source_10},
};

/// Matched loss [dB] and load SWR against total or added loss [dB] or the SWR at the input.
inline constexpr MismatchRow mismatch_rows[] = {
    {"TL-137", 2.0, 8, MismatchFigure::total, 4.837, 0.0005, Status::published, source_11},
    {"TL-137x", 2.0, 8, MismatchFigure::total, 4.8367392753586075, 4.83674e-09, Status::computed, source_1},
    {"TL-139", 0.04, 20, MismatchFigure::total, 0.38372699828611508, 3.83727e-10, Status::computed, source_1},
    {"TL-143", 0.5, 3, MismatchFigure::added, 0.2879779735108897, 2.87978e-10, Status::computed, source_12},
    {"TL-144", 0.5, 5, MismatchFigure::added, 0.66153445348120024, 6.61534e-10, Status::computed, source_12},
    {"TL-145", 0.5, 10, MismatchFigure::added, 1.5121207942682994, 1.51212e-09, Status::computed, source_12},
    {"TL-146", 0.5, 20, MismatchFigure::added, 2.8512816730163321, 2.85128e-09, Status::computed, source_12},
    {"TL-147", 1, 1.5, MismatchFigure::added, 0.066272264311925931, 6.62723e-11, Status::computed, source_12},
    {"TL-149", 1, 3, MismatchFigure::added, 0.50385254907822054, 5.03853e-10, Status::computed, source_12},
    {"TL-150", 1, 5, MismatchFigure::added, 1.1234827787801701, 1.12348e-09, Status::computed, source_12},
    {"TL-151", 1, 10, MismatchFigure::added, 2.4237030478183333, 2.4237e-09, Status::computed, source_12},
    {"TL-153", 2, 1.5, MismatchFigure::added, 0.10757280585251746, 1.07573e-10, Status::computed, source_12},
    {"TL-154", 2, 2, MismatchFigure::added, 0.31504040406558749, 3.1504e-10, Status::computed, source_12},
    {"TL-159", 3, 1.5, MismatchFigure::added, 0.13343103636453212, 1.33431e-10, Status::computed, source_12},
    {"TL-163", 3, 10, MismatchFigure::added, 4.007698386097013, 4.0077e-09, Status::computed, source_12},
    {"TL-166", 6, 2, MismatchFigure::added, 0.48097118691985518, 4.80971e-10, Status::computed, source_12},
    {"TL-167", 6, 3, MismatchFigure::added, 1.1803359937764967, 1.18034e-09, Status::computed, source_12},
    {"TL-168", 6, 5, MismatchFigure::added, 2.4291975866582633, 2.4292e-09, Status::computed, source_12},
    {"TL-169", 6, 10, MismatchFigure::added, 4.6198314409639572, 4.61983e-09, Status::computed, source_12},
    {"TL-170", 6, 20, MismatchFigure::added, 7.1831734432990796, 7.18317e-09, Status::computed, source_12},
    {"TL-171", 0.5, 2, MismatchFigure::input_swr, 1.8452887583930765, 1.84529e-09, Status::computed, source_1},
    {"TL-173", 0.5, 5, MismatchFigure::input_swr, 3.9281390115047382, 3.92814e-09, Status::computed, source_1},
    {"TL-174", 0.5, 10, MismatchFigure::input_swr, 6.3856692769484644, 6.38567e-09, Status::computed, source_1},
    {"TL-176", 1, 3, MismatchFigure::input_swr, 2.3176525445839414, 2.31765e-09, Status::computed, source_1},
    {"TL-177", 1, 5, MismatchFigure::input_swr, 3.2512682916084175, 3.25127e-09, Status::computed, source_1},
    {"TL-179", 2, 2, MismatchFigure::input_swr, 1.5326686229224951, 1.53267e-09, Status::computed, source_1},
    {"TL-181", 2, 5, MismatchFigure::input_swr, 2.4520745108945065, 2.45207e-09, Status::computed, source_1},
    {"TL-183", 3, 2, MismatchFigure::input_swr, 1.4011402857964383, 1.40114e-09, Status::computed, source_1},
    {"TL-184", 3, 3, MismatchFigure::input_swr, 1.6687789760961191, 1.66878e-09, Status::computed, source_1},
    {"TL-185", 3, 5, MismatchFigure::input_swr, 2.0035659344791431, 2.00357e-09, Status::computed, source_1},
    {"TL-186", 3, 10, MismatchFigure::input_swr, 2.3901883862915291, 2.39019e-09, Status::computed, source_1},
    {"TL-187", 6, 2, MismatchFigure::input_swr, 1.1827616453381473, 1.18276e-09, Status::computed, source_1},
    {"TL-188", 6, 3, MismatchFigure::input_swr, 1.2872678544397636, 1.28727e-09, Status::computed, source_1},
};

/// Lossless lines: input impedance [ohm] or admittance [S]. The length is in metres, or in wavelengths where that is not 0.
inline constexpr LosslessRow lossless_rows[] = {
    {"TL-019", 50., 0.6 * 3e8 / c0, 2e+06, 30., 0, {60., 40.}, Figure::resistance, 23.97, 0.005, Status::published, source_13},
    {"TL-019x", 50., 0.6 * 3e8 / c0, 2e+06, 30., 0, {60., 40.}, Figure::resistance, 23.972955408728924, 2.3973e-08, Status::computed, source_1},
    {"TL-020", 50., 0.6 * 3e8 / c0, 2e+06, 30., 0, {60., 40.}, Figure::reactance, 1.35, 0.005, Status::published, source_13},
    {"TL-020x", 50., 0.6 * 3e8 / c0, 2e+06, 30., 0, {60., 40.}, Figure::reactance, 1.3515496382448893, 1.35155e-09, Status::computed, source_1},
    {"TL-026", 75., 1.0, 1e+08, 0., 0.4, {100., 150.}, Figure::resistance, 21.96, 0.005, Status::published, source_14},
    {"TL-026x", 75., 1.0, 1e+08, 0., 0.4, {100., 150.}, Figure::resistance, 21.964531135441009, 2.19645e-08, Status::computed, source_1},
    {"TL-059", 50., 2e8 / c0, 2.6e+07, 10., 0, {100., 50.}, Figure::resistance, 19.209, 0.0005, Status::published, source_15},
    {"TL-059x", 50., 2e8 / c0, 2.6e+07, 10., 0, {100., 50.}, Figure::resistance, 19.209272425674325, 1.92093e-08, Status::computed, source_1},
    {"TL-060", 50., 2e8 / c0, 2.6e+07, 10., 0, {100., 50.}, Figure::reactance, 3.521, 0.0005, Status::published, source_15},
    {"TL-060x", 50., 2e8 / c0, 2.6e+07, 10., 0, {100., 50.}, Figure::reactance, 3.5206131181055313, 3.52061e-09, Status::computed, source_1},
    {"TL-070", 50., 1.0, 1e+08, 0., 0.25, {50., 100.}, Figure::resistance, 10, 1e-09, Status::published, source_16},
    {"TL-070x", 50., 1.0, 1e+08, 0., 0.25, {50., 100.}, Figure::resistance, 10.0, 1e-08, Status::computed, source_1},
    {"TL-071", 50., 1.0, 1e+08, 0., 0.25, {50., 100.}, Figure::reactance, -20, 1e-09, Status::published, source_16},
    {"TL-071x", 50., 1.0, 1e+08, 0., 0.25, {50., 100.}, Figure::reactance, -20.0, 2e-08, Status::computed, source_1},
    {"TL-091", 50., 1.0, 1e+08, 0., 0.15, {100., 50.}, Figure::conductance, 0.0122, 0.0003, Status::published, source_17},
    {"TL-091x", 50., 1.0, 1e+08, 0., 0.15, {100., 50.}, Figure::conductance, 0.012001119005175054, 1.20011e-11, Status::computed, source_1},
    {"TL-092", 50., 1.0, 1e+08, 0., 0.15, {100., 50.}, Figure::susceptance, 0.0132, 0.0003, Status::published, source_17},
    {"TL-092x", 50., 1.0, 1e+08, 0., 0.15, {100., 50.}, Figure::susceptance, 0.013268017294762973, 1.3268e-11, Status::computed, source_1},
    {"TL-123", 50., 1.0, 1e+08, 0., 0.1, {0., 0.}, Figure::reactance, 36.33, 0.005, Status::published, source_18},
    {"TL-123x", 50., 1.0, 1e+08, 0., 0.1, {0., 0.}, Figure::reactance, 36.327126400268044, 3.63271e-08, Status::computed, source_1},
    {"TL-131", 50., 1.0, 1e+08, 0., 2.25, {75., 0.}, Figure::resistance, 33.33, 0.005, Status::published, source_19},
    {"TL-131x", 50., 1.0, 1e+08, 0., 2.25, {75., 0.}, Figure::resistance, 33.333333333333333, 3.33333e-08, Status::computed, source_1},
    {"TL-262", 50., 1.0, 1e+08, 0., 0.5, {100., -25.}, Figure::resistance, 100.0, 1e-07, Status::computed, source_1},
    {"TL-264", 50., 1.0, 1e+08, 0., 0.125, {0., 0.}, Figure::reactance, 50.0, 5e-08, Status::computed, source_1},
    {"TL-265", 50., 1.0, 1e+08, 0., 0.125, {1e15, 0.}, Figure::reactance, -50.0, 5e-08, Status::computed, source_1},
};

/// Lossy lines by their constants a metre: R, L, G, C.
inline constexpr LossyRow lossy_rows[] = {
    {"TL-191", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::z0_real, 50.056337396078279, 5.00563e-08, Status::computed, source_1},
    {"TL-192", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::z0_imag, -2.1574843386868672, 2.15748e-09, Status::computed, source_1},
    {"TL-194", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::beta, 0.11005806043700522, 1.10058e-10, Status::computed, source_1},
    {"TL-195", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::resistance, 93.78626664768602, 9.37863e-08, Status::computed, source_1},
    {"TL-196", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::reactance, 95.102931972363473, 9.51029e-08, Status::computed, source_1},
    {"TL-198", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::total_loss, 4.2560186105060582, 4.25602e-09, Status::computed, source_20},
    {"TL-199", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {25.0, 100}, Figure::matched_loss, 1.3667558051975801, 1.36676e-09, Status::computed, source_21},
    {"TL-202", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {5.0, -300}, Figure::z0_imag, -2.1574843386868672, 2.15748e-09, Status::computed, source_1},
    {"TL-204", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {5.0, -300}, Figure::beta, 0.11005806043700522, 1.10058e-10, Status::computed, source_1},
    {"TL-205", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {5.0, -300}, Figure::resistance, 60.348722651914379, 6.03487e-08, Status::computed, source_1},
    {"TL-208", 0.5, 250e-9, 1e-5, 100e-12, 3.5e6, 30., {5.0, -300}, Figure::total_loss, 17.63238305016483, 1.76324e-08, Status::computed, source_20},
    {"TL-214", 0.2, 250e-9, 0, 100e-12, 1.85e6, 60., {1000.0, 0}, Figure::beta, 0.058153825160071069, 5.81538e-11, Status::computed, source_1},
    {"TL-215", 0.2, 250e-9, 0, 100e-12, 1.85e6, 60., {1000.0, 0}, Figure::resistance, 56.344180951867574, 5.63442e-08, Status::computed, source_1},
    {"TL-216", 0.2, 250e-9, 0, 100e-12, 1.85e6, 60., {1000.0, 0}, Figure::reactance, -112.78074688436873, 1.12781e-07, Status::computed, source_1},
    {"TL-218", 0.2, 250e-9, 0, 100e-12, 1.85e6, 60., {1000.0, 0}, Figure::total_loss, 5.0957540716160661, 5.09575e-09, Status::computed, source_20},
    {"TL-219", 0.2, 250e-9, 0, 100e-12, 1.85e6, 60., {1000.0, 0}, Figure::matched_loss, 1.0416908938291365, 1.04169e-09, Status::computed, source_21},
    {"TL-221", 0.05, 2e-6, 0, 5.6e-12, 7.1e6, 40., {50.0, -1200}, Figure::z0_real, 597.61432812754957, 5.97614e-07, Status::computed, source_1},
    {"TL-222", 0.05, 2e-6, 0, 5.6e-12, 7.1e6, 40., {50.0, -1200}, Figure::z0_imag, -0.16745293471193548, 1.67453e-10, Status::computed, source_1},
    {"TL-223", 0.05, 2e-6, 0, 5.6e-12, 7.1e6, 40., {50.0, -1200}, Figure::alpha, 0.00036335681848859539, 3.63357e-13, Status::computed, source_1},
    {"TL-224", 0.05, 2e-6, 0, 5.6e-12, 7.1e6, 40., {50.0, -1200}, Figure::beta, 0.14929568145823654, 1.49296e-10, Status::computed, source_1},
    {"TL-226", 0.05, 2e-6, 0, 5.6e-12, 7.1e6, 40., {50.0, -1200}, Figure::reactance, -3891.6894088524204, 3.89169e-06, Status::computed, source_1},
    {"TL-229", 0.05, 2e-6, 0, 5.6e-12, 7.1e6, 40., {50.0, -1200}, Figure::matched_loss, 0.014534272739543815, 1.45343e-11, Status::computed, source_21},
    {"TL-231", 1.5, 260e-9, 2e-5, 98e-12, 14.2e6, 25., {150.0, -75}, Figure::z0_real, 51.536563228952666, 5.15366e-08, Status::computed, source_1},
    {"TL-234", 1.5, 260e-9, 2e-5, 98e-12, 14.2e6, 25., {150.0, -75}, Figure::beta, 0.45058714204217719, 4.50587e-10, Status::computed, source_1},
    {"TL-235", 1.5, 260e-9, 2e-5, 98e-12, 14.2e6, 25., {150.0, -75}, Figure::resistance, 33.662917612468551, 3.36629e-08, Status::computed, source_1},
    {"TL-238", 1.5, 260e-9, 2e-5, 98e-12, 14.2e6, 25., {150.0, -75}, Figure::total_loss, 4.7709057869890491, 4.77091e-09, Status::computed, source_20},
    {"TL-241", 0.5, 250e-9, 1e-5, 100e-12, 28.5e6, 40., {2.0, 0}, Figure::z0_real, 50.000851718006226, 5.00009e-08, Status::computed, source_1},
    {"TL-243", 0.5, 250e-9, 1e-5, 100e-12, 28.5e6, 40., {2.0, 0}, Figure::alpha, 0.04560027892166301, 4.56003e-11, Status::computed, source_1},
    {"TL-244", 0.5, 250e-9, 1e-5, 100e-12, 28.5e6, 40., {2.0, 0}, Figure::beta, 0.89536650551759604, 8.95367e-10, Status::computed, source_1},
    {"TL-245", 0.5, 250e-9, 1e-5, 100e-12, 28.5e6, 40., {2.0, 0}, Figure::resistance, 82.48564619331189, 8.24856e-08, Status::computed, source_1},
    {"TL-246", 0.5, 250e-9, 1e-5, 100e-12, 28.5e6, 40., {2.0, 0}, Figure::reactance, 91.8657352748022, 9.18657e-08, Status::computed, source_1},
    {"TL-249", 0.5, 250e-9, 1e-5, 100e-12, 28.5e6, 40., {2.0, 0}, Figure::matched_loss, 1.8240111568665204, 1.82401e-09, Status::computed, source_21},
    {"TL-251", 0.5, 250e-9, 1e-5, 100e-12, 0.5e6, 30., {0.5, 55}, Figure::z0_real, 52.489028637075129, 5.2489e-08, Status::computed, source_1},
    {"TL-252", 0.5, 250e-9, 1e-5, 100e-12, 0.5e6, 30., {0.5, 55}, Figure::z0_imag, -14.388164549087978, 1.43882e-08, Status::computed, source_1},
    {"TL-254", 0.5, 250e-9, 1e-5, 100e-12, 0.5e6, 30., {0.5, 55}, Figure::beta, 0.01634603303053907, 1.6346e-11, Status::computed, source_1},
    {"TL-255", 0.5, 250e-9, 1e-5, 100e-12, 0.5e6, 30., {0.5, 55}, Figure::resistance, 61.281800996479496, 6.12818e-08, Status::computed, source_1},
    {"TL-256", 0.5, 250e-9, 1e-5, 100e-12, 0.5e6, 30., {0.5, 55}, Figure::reactance, 171.62639480480518, 1.71626e-07, Status::computed, source_1},
    {"TL-259", 0.5, 250e-9, 1e-5, 100e-12, 0.5e6, 30., {0.5, 55}, Figure::matched_loss, 1.3146264621429267, 1.31463e-09, Status::computed, source_21},
};

/// Rows that the test works out one by one.
inline constexpr Single single_rows[] = {
    {"CA-001", 101670, 1, Status::published, source_22},
    {"CA-001x", 101670.33621639674, 0.00010167, Status::computed, source_1},
    {"CA-019", 39200.0, 3.92e-05, Status::computed, source_1},
    {"CA-021", 68450.0, 6.845e-05, Status::computed, source_1},
    {"CA-261", 8.6858896380650366, 8.68589e-09, Status::computed, source_1},
    {"TL-009", 38.79, 0.005, Status::published, source_23},
    {"TL-009x", 38.788983416575593, 3.8789e-08, Status::computed, source_1},
    {"TL-014", 0.011885002568405776, 1.1885e-11, Status::computed, source_24},
    {"TL-094", 0.23364323179567808, 2.33643e-10, Status::computed, source_25},
    {"TL-095", 0.063118456381940541, 6.31185e-11, Status::computed, source_26},
    {"TL-122", 0.12375, 1e-09, Status::published, source_27},
    {"TL-122x", 0.12375, 1.2375e-10, Status::computed, source_1},
    {"TL-126", 713.0, 0.05, Status::published, source_28},
    {"TL-126x", 713.00075050699642, 7.13001e-07, Status::computed, source_1},
    {"TL-045", 2e8, 1, Status::published, source_29},
    {"TL-045x", 200000000.0, 0.2, Status::computed, source_1},
};
// clang-format on

}  // namespace checks
