// Loads on lines: reflection, SWR, return loss and mismatch loss, the impedance that they make at the line's input, and
// loads found from the standing wave. Where a row is a design value the feed is built with it, and the figure is what
// it was designed for: the tolerance is the row's own, times how fast that figure moves with the value.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* sadiku_11_5 =
    "Sadiku, Elements of Electromagnetics, example 11.5, figures as printed by a textbook companion";
constexpr const char* sadiku_11_6 =
    "Sadiku, Elements of Electromagnetics, example 11.6 (Smith chart reading 1.4+j0.75), figures as printed by a "
    "textbook companion";
constexpr const char* misra_6_3 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.3 p.199, figures as printed by a textbook "
    "companion";
constexpr const char* misra_3_13 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.13 p.84, figures as printed by a textbook "
    "companion";
constexpr const char* misra_3_14 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.14 p.85, figures as printed by a textbook "
    "companion";
constexpr const char* misra_3_15 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.15 p.87, figures as printed by a textbook "
    "companion";
constexpr const char* pozar_2_3 =
    "Pozar, Microwave Engineering, example 2.3, figures as printed by a textbook companion";
constexpr const char* pozar_2_4 = "Pozar example 2.4: set-up (SWR 1.5, 4.2 and 2.72 cm); impedance figure from memory";
constexpr const char* pozar_2_2 = "Pozar, Microwave Engineering, example 2.2 (Smith chart); from memory";
constexpr const char* pozar_2 =
    "Pozar, Microwave Engineering, admittance example (chapter 2); figures 0.0080-j0.0040 S and 0.0122+j0.0132 S (a "
    "slide show on the net), line length from memory";
constexpr const char* textbook = "textbook problem solution";
constexpr const char* roddy_13_11_1 =
    "Roddy and Coolen, Electronic Communications, example 13.11.1, figures as printed by a textbook companion";
constexpr const char* stanley_14_11 =
    "Stanley and Jeffords, Electronic Communications, example 14.11, figures as printed by a textbook companion";
constexpr const char* stanley_14_9 =
    "Stanley and Jeffords, Electronic Communications, example 14.9, figures as printed by a textbook companion";
constexpr const char* liao_3_2_1 =
    "Liao, Microwave Devices and Circuits, example 3.2.1 p.89 (Z0=75+j0.01), figures as printed by a textbook "
    "companion";
constexpr const char* liao_3_2_1_b =
    "Liao, Microwave Devices and Circuits, example 3.2.1 p.89, figures as printed by a textbook companion";

}  // namespace

Setups line_loads() {
  return {
      {"75 ohm, 100+j150 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 75 ohm\n"
       "load ant at desk : 100+j150 ohm\n",
       {printed("TL-021", gamma, 0.66, one, 0.005, sadiku_11_5), exactly("TL-021x", gamma, 0.65976823024988012, one),
        printed("TL-022", gamma_degrees, 40, one, 0.5, sadiku_11_5),
        exactly("TL-022x", gamma_degrees, 39.936383146969915, one),
        printed("TL-023", "swr at desk", 4.88, one, 0.005, sadiku_11_5),
        exactly("TL-023x", "swr at desk", 4.8783458154683254, one)}},
      {"75 ohm, 100+j150 ohm, 0.4 wavelength away",
       "10 MHz",
       "source rig at desk : 100 W, 75 ohm\n"
       "line w from desk to feed : 0.4 * 360 deg at 10 MHz, 75 ohm\n"
       "load ant at feed : 100+j150 ohm\n",
       {printed("TL-026", "resistance at desk", 21.96, one, 0.005, sadiku_11_5),
        exactly("TL-026x", "resistance at desk", 21.964531135441009, one)}},
      {"50 ohm, SWR 2, wavelength 16 cm; the load stands 5 cm from a minimum, on its load side",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : (16 - 2*5)/2/16 * 360 deg at 10 MHz, 50 ohm\n"
       "load ant at feed : 50 ohm / 2\n",
       {printed("TL-028", "resistance at desk", 70, one, 1.5, sadiku_11_6),
        exactly("TL-028x", "resistance at desk", 69.47629603472822, one),
        printed("TL-029", "reactance at desk", 37.5, one, 1.5, sadiku_11_6),
        exactly("TL-029x", "reactance at desk", 36.845370043410275, one)}},
      {"reflection of 0.4 at -30 degrees",
       "10 MHz",
       "set g = 0.4 * (cos(30 deg) - j1 * sin(30 deg))\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {printed("TL-049", "resistance at desk", 1.7980, 50, 0.00005, misra_6_3),
        exactly("TL-049x", "resistance at desk", 1.7980234188344995, 50),
        printed("TL-050", "reactance at desk", -0.8562, 50, 0.00005, misra_6_3),
        exactly("TL-050x", "reactance at desk", -0.85620162801642834, 50)}},
      {"reflection of 0.2 at 45 degrees",
       "10 MHz",
       "set g = 0.2 * (cos(45 deg) + j1 * sin(45 deg))\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {printed("TL-051", "resistance at desk", 1.2679, 50, 0.00005, misra_6_3),
        exactly("TL-051x", "resistance at desk", 1.2679003633942035, 50),
        printed("TL-052", "reactance at desk", 0.3736, 50, 0.00005, misra_6_3),
        exactly("TL-052x", "reactance at desk", 0.37355872701038715, 50)}},
      {"73-j42.5 ohm on 50 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 73-j42.5 ohm\n",
       {printed("TL-066", gamma_degrees, -42.53, one, 0.03, misra_3_13),
        exactly("TL-066x", gamma_degrees, -42.517303117148718, one),
        printed("TL-067", "swr at desk", 2.1818, one, 0.001, misra_3_13),
        exactly("TL-067x", "swr at desk", 2.1813662252859102, one)}},
      {"100 ohm, beta pi rad/m, SWR 2.4, minimum 0.4 m from the load",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : (1 - 0.4)/2 * 360 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 100 ohm / 2.4\n",
       {printed("TL-068", "resistance at desk", 165.00, one, 0.005, misra_3_14),
        exactly("TL-068x", "resistance at desk", 165.00066941530712, one),
        printed("TL-069", "reactance at desk", -96.18, one, 0.005, misra_3_14),
        exactly("TL-069x", "reactance at desk", -96.176752099864058, one)}},
      {"quarter wave of 50 ohm, 50+j100 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 50 ohm\n"
       "load ant at feed : 50+j100 ohm\n",
       {printed("TL-070", "resistance at desk", 10, one, 1.0e-9, misra_3_15),
        exactly("TL-070x", "resistance at desk", 10.0, one),
        printed("TL-071", "reactance at desk", -20, one, 1.0e-9, misra_3_15),
        exactly("TL-071x", "reactance at desk", -20.0, one)}},
      {"80-j40 ohm on 50 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 80-j40 ohm\n",
       {printed("TL-077", "return loss at desk", 8.692, one, 0.0005, pozar_2_3),
        exactly("TL-077x", "return loss at desk", 8.6923171973097619, one)}},
      {"50 ohm, SWR 1.5, wavelength 4 cm, load 1.48 cm beyond the minimum",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : (2 - 1.48)/4 * 360 deg at 10 MHz, 50 ohm\n"
       "load ant at feed : 50 ohm / 1.5\n",
       {remembered("TL-079", "resistance at desk", 47.3, one, 0.05, pozar_2_4),
        exactly("TL-079x", "resistance at desk", 47.296055340979721, one),
        remembered("TL-080", "reactance at desk", 19.7, one, 0.05, pozar_2_4),
        exactly("TL-080x", "reactance at desk", 19.667803074800196, one)}},
      {"40+j70 ohm on 100 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "load ant at desk : 40+j70 ohm\n",
       {remembered("TL-084", gamma, 0.59, one, 0.005, pozar_2_2), exactly("TL-084x", gamma, 0.58901508937395151, one),
        remembered("TL-085", "swr at desk", 3.87, one, 0.005, pozar_2_2),
        exactly("TL-085x", "swr at desk", 3.8663587112077265, one),
        remembered("TL-086", "return loss at desk", 4.6, one, 0.05, pozar_2_2),
        exactly("TL-086x", "return loss at desk", 4.5974715865023973, one)}},
      {"100+j50 ohm, 0.15 wavelength of 50 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 0.15 * 360 deg at 10 MHz, 50 ohm\n"
       "load ant at feed : 100+j50 ohm\n",
       {printed("TL-091", input_conductance, 0.0122, one, 0.0003, pozar_2),
        exactly("TL-091x", input_conductance, 0.012001119005175054, one),
        printed("TL-092", input_susceptance, 0.0132, one, 0.0003, pozar_2),
        exactly("TL-092x", input_susceptance, 0.013268017294762973, one)}},
      {"75 ohm in series with C on 50 ohm at 10 MHz: SWR 3 with C as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : series(resistance 75 ohm, capacitance 241 pF)\n",
       {printed("TL-120", "swr at desk", 3, one, 0.0054308, textbook)}},
      {"75 ohm in series with C on 50 ohm at 10 MHz: SWR 3 with C as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : series(resistance 75 ohm, capacitance 240.61965677016708 pF)\n",
       {exactly_within("TL-120x", "swr at desk", 3, one, 2.6248e-9)}},
      {"0.1 wavelength of shorted 50 ohm line",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk end) : 50 ohm\n"
       "stub w at end : 0.1 * 360 deg at 10 MHz, 50 ohm, shorted\n",
       {printed("TL-123", "reactance at desk", 36.33, one, 0.005, roddy_13_11_1),
        exactly("TL-123x", "reactance at desk", 36.327126400268044, one)}},
      {"100 ohm on 300 ohm line",
       "10 MHz",
       "source rig at desk : 100 W, 300 ohm\n"
       "load ant at desk : 100 ohm\n",
       {printed("TL-127", "mismatch at desk", 1.25, one, 0.005, stanley_14_11),
        exactly("TL-127x", "mismatch at desk", 1.2493873660829995, one)}},
      {"50+j100 ohm on 50 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50+j100 ohm\n",
       {printed("TL-128", "swr at desk", 5.828, one, 0.0005, stanley_14_9)}},
      {"70+j50 ohm on 75 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 75 ohm\n"
       "load ant at desk : 70+j50 ohm\n",
       {printed("TL-129", gamma_real, 0.08, one, 0.005, liao_3_2_1),
        exactly("TL-129x", gamma_real, 0.075451647183846971, one),
        printed("TL-130", gamma_imag, 0.32, one, 0.005, liao_3_2_1_b),
        exactly("TL-130x", gamma_imag, 0.31880977683315622, one)}},
      {"50 ohm, half wave, 100-j25 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 180 deg at 10 MHz, 50 ohm\n"
       "load ant at feed : 100-j25 ohm\n",
       {exactly("TL-262", "resistance at desk", 100.0, one)}},
      {"shorted 50 ohm line, an eighth of a wave",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk end) : 50 ohm\n"
       "stub w at end : 45 deg at 10 MHz, 50 ohm, shorted\n",
       {exactly("TL-264", "reactance at desk", 50.0, one)}},
      {"open 50 ohm line, an eighth of a wave",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk end) : 50 ohm\n"
       "stub w at end : 45 deg at 10 MHz, 50 ohm, open\n",
       {exactly("TL-265", "reactance at desk", -50.0, one)}},
  };
}

}  // namespace wattfall::reference
