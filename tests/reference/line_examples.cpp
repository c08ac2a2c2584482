// Worked examples of lines: input impedance, volts and amps along, power and its phase. The source's open-circuit volts
// are given to the feed as the power available; phases are read off the solution.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* sadiku_11_2 =
    "Sadiku, Elements of Electromagnetics, example 11.2, figures as printed by a textbook companion";
constexpr const char* blake_14_5 =
    "Blake, Electronic Communication Systems, example 14.5, figures as printed by a textbook companion";
constexpr const char* sadiku_11_3 =
    "Sadiku, Elements of Electromagnetics, example 11.3, figures as printed by a textbook companion";
constexpr const char* sadiku_11_3_b =
    "Sadiku, Elements of Electromagnetics, example 11.3, figures as printed by a textbook companion, (the book prints "
    "35.10 mA, from memory)";
constexpr const char* sadiku_11_4 =
    "Sadiku, Elements of Electromagnetics, example 11.4, figures as printed by a textbook companion";
constexpr const char* misra_3_11 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.11 p.77, figures as printed by a textbook "
    "companion";
constexpr const char* misra_3_11_b =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.11 p.77 (prints 80.13, arctangent modulo "
    "180), figures as printed by a textbook companion";
constexpr const char* misra_3_9 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.9 p.76, figures as printed by a textbook "
    "companion";
constexpr const char* bird_44_10 =
    "Bird, Electrical Circuit Theory and Technology, chapter 44 problem 10 p.881, figures as printed by a textbook "
    "companion";
constexpr const char* pozar_2 =
    "Pozar, Microwave Engineering, chapter 2 lossy-line problem; statement from memory; figure computed two ways";
constexpr const char* pozar_2_b =
    "Pozar, Microwave Engineering, chapter 2 lossy-line problem; statement from memory; figure computed";
constexpr const char* stanley_14_8 =
    "Stanley and Jeffords, Electronic Communications, example 14.8, figures as printed by a textbook companion";
constexpr const char* liao_3_4_1 =
    "Liao, Microwave Devices and Circuits, example 3.4.1 p.99, figures as printed by a textbook companion";
constexpr const char* pozar_2_c =
    "Pozar, Microwave Engineering, chapter 2 problem; statement (80+j40 on 50 ohm coax) seen in search, answer from "
    "memory";
constexpr const char* bird_44_18 =
    "Bird, Electrical Circuit Theory and Technology, chapter 44 problem 18 p.897, figures as printed by a textbook "
    "companion";

}  // namespace

Setups line_examples() {
  return {
      {"u = 0.6 * 3e8 m/s, wavelength at 100 MHz",
       "100 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 360 deg at 100 MHz, 60 ohm, velocity 1.8e8/299792458\n"
       "load ant at feed : 60 ohm\n",
       {printed("TL-007", line_length_m, 1.8, one, 0.05, sadiku_11_2), exactly("TL-007x", line_length_m, 1.8, one)}},
      {"velocity factor 0.66, 45 degrees at 200 MHz, c = 3e8",
       "200 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 45 deg at 200 MHz, 50 ohm, velocity 0.66*3e8/299792458\n"
       "load ant at feed : 50 ohm\n",
       {printed("TL-122", line_length_m, 0.12375, one, 1.0e-9, blake_14_5),
        exactly("TL-122x", line_length_m, 0.12375, one)}},
      {"2 m of 60+j40 ohm, 8 dB/m, 1 rad/m; 20+j50 ohm; 10 V behind 40 ohm",
       "47713451.592369423 Hz",
       "source rig at desk : 10^2/(4*40) * 1 W, 40 ohm\n"
       "line w from desk to feed : 2 m, 60+j40 ohm, loss 8 dB/m at 47713451.592369423 Hz\n"
       "load ant at feed : 20+j50 ohm\n",
       {printed("TL-009", "reactance at desk", 38.79, one, 0.005, sadiku_11_3),
        exactly("TL-009x", "reactance at desk", 38.788983416575593, one),
        printed("TL-010", "rms amps through w", 93.03, milli, 0.005, sadiku_11_3),
        exactly("TL-010x", "rms amps through w", 93.030002486900431, milli),
        printed("TL-011", input_amps_degrees, -21.15, one, 0.005, sadiku_11_3),
        exactly("TL-011x", input_amps_degrees, -21.152647577714616, one),
        exactly("TL-014", line_passes, 0.011885002568405776, one),
        exactly("TL-015", line_end_gamma, 0.34240528516707336, one)}},
      {"2 m of 60+j40 ohm, 8 dB/m, 1 rad/m; 20+j50 ohm; 10 V behind 40 ohm; cut in the middle",
       "47713451.592369423 Hz",
       "source rig at desk : 10^2/(4*40) * 1 W, 40 ohm\n"
       "line w from desk to mid : 1 m, 60+j40 ohm, loss 8 dB/m at 47713451.592369423 Hz\n"
       "line v from mid to feed : 1 m, 60+j40 ohm, loss 8 dB/m at 47713451.592369423 Hz\n"
       "load ant at feed : 20+j50 ohm\n",
       {printed("TL-012", "rms amps through v", 34.92, milli, 0.005, sadiku_11_3_b),
        exactly("TL-012x", "rms amps through v", 34.917386589192992, milli),
        printed("TL-013", half_line_amps_degrees, 281, one, 0.5, sadiku_11_3),
        exactly("TL-013x", half_line_amps_degrees, 280.92241666837331, one)}},
      {"lossless 50 ohm, 30 m, 2 MHz, u = 0.6 * 3e8 m/s, 60+j40 ohm",
       "2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 30 m, 50 ohm, velocity 1.8e8/299792458\n"
       "load ant at feed : 60+j40 ohm\n",
       {printed("TL-018", "swr on w", 2.088, one, 0.0005, sadiku_11_4),
        exactly("TL-018x", "swr on w", 2.0876619008009103, one),
        printed("TL-019", "resistance at desk", 23.97, one, 0.005, sadiku_11_4),
        exactly("TL-019x", "resistance at desk", 23.972955408728924, one),
        printed("TL-020", "reactance at desk", 1.35, one, 0.005, sadiku_11_4),
        exactly("TL-020x", "reactance at desk", 1.3515496382448893, one)}},
      {"lossless 50 ohm, 30 m, 2 MHz, u = 0.6 * 3e8 m/s, 60+j40 ohm; the load alone",
       "2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 60+j40 ohm\n",
       {printed("TL-017", gamma_degrees, 56, one, 0.5, sadiku_11_4),
        exactly("TL-017x", gamma_degrees, 55.980650010173543, one)}},
      {"10 m of lossless 50 ohm, 2e8 m/s, 26 MHz, 100 V behind 50 ohm, 100+j50 ohm",
       "26 MHz",
       "source rig at desk : 100^2/(4*50) * 1 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 2e8/299792458\n"
       "load ant at feed : 100+j50 ohm\n",
       {printed("TL-059", "resistance at desk", 19.209, one, 0.0005, misra_3_11),
        exactly("TL-059x", "resistance at desk", 19.209272425674325, one),
        printed("TL-060", "reactance at desk", 3.521, one, 0.0005, misra_3_11),
        exactly("TL-060x", "reactance at desk", 3.5206131181055313, one),
        printed("TL-062", input_volts_degrees, 7.47, one, 0.02, misra_3_11),
        exactly("TL-062x", input_volts_degrees, 7.4736470931944301, one),
        printed("TL-063", ant_volts, 70.71, one, 0.005, misra_3_11),
        exactly("TL-063x", ant_volts, 70.710678118654752, one),
        printed("TL-064", ant_volts_degrees, -99.87, one, 0.02, misra_3_11_b),
        exactly("TL-064x", ant_volts_degrees, -99.869897645844021, one)}},
      {"Zoc = -j48.3 ohm, Zsc = j53.1 ohm, Zin = 30+j60 ohm; the load is the input seen through the rest of a half "
       "wave",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 133.64337989694887 deg at 10 MHz, sqrt(48.3*53.1) * 1 ohm\n"
       "load ant at feed : 30+j60 ohm\n",
       {printed("TL-047", "resistance at desk", 11.6343, one, 0.00005, misra_3_9),
        exactly("TL-047x", "resistance at desk", 11.634324156754869, one),
        printed("TL-048", "reactance at desk", 6.3001, one, 0.00005, misra_3_9),
        exactly("TL-048x", "reactance at desk", 6.3000897941149222, one)}},
      {"Zoc = -j48.3 ohm, Zsc = j53.1 ohm: a line of the Z0 found, shorted, shows the reactance measured",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk end) : 50 ohm\n"
       "stub w at end : 46.356620103051125 deg at 10 MHz, 50.6432 ohm, shorted\n",
       {printed("TL-046", "reactance at desk", 53.1, one, 5.2426e-5, misra_3_9)}},
      {"the same, Z0 exact",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk end) : 50 ohm\n"
       "stub w at end : 46.356620103051125 deg at 10 MHz, 50.643163408302211 ohm, shorted\n",
       {exactly_within("TL-046x", "reactance at desk", 53.1, one, 5.3097e-8)}},
      {"Zoc = -j54.6 ohm, Zsc = j103 ohm, 1.5 m: a line of the beta found, shorted, shows the reactance measured",
       "29947308.724015028 Hz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk end) : 50 ohm\n"
       "stub w at end : 1.5 m, sqrt(103*54.6) * 1 ohm, shorted\n",
       {exactly_within("TL-058", "reactance at desk", 103, one, 2.0378e-7)}},
      {"300 km, R 8 ohm, L 3 mH, G 0.25 uS, C 7500 pF a km, 1 kHz, matched, 10 V behind 400 ohm",
       "1 kHz",
       "source rig at desk : 10^2/(4*400) * 1 W, 400 ohm\n"
       "line w from desk to feed : 300 km, 646.30401264501656-j129.69011896595829 ohm, velocity 0.6888802897230142, "
       "loss 5.4487270824844945e-5 dB/m at 1 kHz\n"
       "load ant at feed : 646.30401264501656-j129.69011896595829 ohm\n",
       {printed("TL-109", input_amps_degrees, 7.07, one, 0.005, bird_44_10),
        exactly("TL-109x", input_amps_degrees, 7.0658134186801721, one),
        printed("TL-110", ant_amps, 1.445, milli, 0.0005, bird_44_10),
        exactly("TL-110x", ant_amps, 1.4445155249310395, milli),
        printed("TL-111", ant_amps_degrees, -155.88, one, 0.005, bird_44_10),
        exactly("TL-111x", ant_amps_degrees, -155.88313458918582, one)}},
      {"50 ohm, 2.3 wavelengths, 0.5 dB a wavelength, 10 V peak behind 50 ohm, 100 ohm",
       "10 MHz",
       "source rig at desk : 10^2/2/(4*50) * 1 W, 50 ohm\n"
       "line w from desk to feed : 2.3 * 360 deg at 10 MHz, 50 ohm, loss (0.5 dB/m) / 29.9792458 at 10 MHz\n"
       "load ant at feed : 100 ohm\n",
       {exactly("TL-094", line_in_watts, 0.23364323179567808, one, pozar_2),
        exactly("TL-095", "heat in w", 0.063118456381940541, one, pozar_2_b)}},
      {"matched line, 800 W in, 0.01 dB/m, 50 m",
       "10 MHz",
       "source rig at desk : 800 W, 50 ohm\n"
       "line w from desk to feed : 50 m, 50 ohm, loss 0.01 dB/m at 10 MHz\n"
       "load ant at feed : 50 ohm\n",
       {printed("TL-126", "power into ant", 713.0, one, 0.05, stanley_14_8),
        exactly("TL-126x", "power into ant", 713.00075050699642, one)}},
      {"75 ohm on 2.25 wavelengths of 50 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 810 deg at 10 MHz, 50 ohm\n"
       "load ant at feed : 75 ohm\n",
       {printed("TL-131", "resistance at desk", 33.33, one, 0.005, liao_3_4_1),
        exactly("TL-131x", "resistance at desk", 33.333333333333333, one)}},
      {"30 W into 50 ohm, antenna 80+j40 ohm",
       "10 MHz",
       "source rig at desk : 30 W, 50 ohm\n"
       "load ant at desk : 80+j40 ohm\n",
       {remembered("TL-093", "power into ant", 25.9, one, 0.06, pozar_2_c),
        exactly("TL-093x", "power into ant", 25.945945945945946, one)}},
      {"SWR 1.6, incident power 0.2 W",
       "10 MHz",
       "source rig at desk : 0.2 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 1.6\n",
       {printed("TL-115", returned_watts, 10.65, milli, 0.005, bird_44_18),
        exactly("TL-115x", returned_watts, 10.650887573964497, milli)}},
  };
}

}  // namespace wattfall::reference
