// L networks as the books print them. Each feed lacks one part; what the source sees says which part that must be: its
// reactance in the loop or its susceptance across, beside the other part's exact value.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* pozar_5_1 = "Pozar example 5.1, printed solution; from memory";
constexpr const char* pozar_5_1_b = "Pozar example 5.1 p.254, figures as printed by a textbook companion";
constexpr const char* pozar_5_1_c = "Pozar example 5.1, printed; from memory";
constexpr const char* pozar_5_1_d = "Pozar example 5.1, printed; from memory (exact: 2.598989337445587)";
constexpr const char* misra_6_6 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.6 p.210, figures as printed by a textbook "
    "companion";
constexpr const char* misra_6_7 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.7 p.212, figures as printed by a textbook "
    "companion";
constexpr const char* misra_6_7_b =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.7 p.212, figures as printed by a textbook "
    "companion, (prints 1.569778 from 173.2 ohm)";
constexpr const char* misra_6_8 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.8 p.213, figures as printed by a textbook "
    "companion";
constexpr const char* misra_6_9 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.9 p.215, figures as printed by a textbook "
    "companion";
constexpr const char* bowick_4 = "Bowick, RF Circuit Design, chapter 4, L-network example; from memory";
constexpr const char* bowick_4_b =
    "Bowick, RF Circuit Design, chapter 4, L-network example; from memory (exact: 12.796538903422617)";

}  // namespace

Setups l_networks_of_books() {
  return {
      {"200-j100 ohm to 100 ohm at 500 MHz; the series part is missing",
       "500 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "capacitor Cp at desk : 9.2277383009977087e-13 F\n"
       "load ant at desk : 200-j100 ohm\n",
       {remembered("LN-002", missing_series_ohms, 1.22, 100, 0.005, pozar_5_1),
        exactly("LN-002x", missing_series_ohms, 1.224744871391589, 100),
        printed("LN-009", missing_series_henries, 38.985, nano, 0.0005, pozar_5_1_b)}},
      {"200-j100 ohm to 100 ohm at 500 MHz; the shunt part is missing",
       "500 MHz",
       "source rig at feed : 100 W, 100 ohm\n"
       "load ant at feed : 200-j100 ohm\n"
       "inductor Ls from feed to desk : 3.8984840061683805e-8 H\n"
       "resistor rig_side at desk : 100 ohm\n",
       {remembered("LN-001", missing_shunt_siemens, 0.29, 0.01, 0.005, pozar_5_1),
        exactly("LN-001x", missing_shunt_siemens, 0.28989794855663562, 0.01),
        remembered("LN-005", missing_shunt_farads, 0.92, pico, 0.005, pozar_5_1_c),
        exactly("LN-005x", missing_shunt_farads, 0.92277383009977087, pico)}},
      {"200-j100 ohm to 100 ohm at 500 MHz; the series part is missing",
       "500 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "inductor Lp at desk : 4.6138691504988544e-8 H\n"
       "load ant at desk : 200-j100 ohm\n",
       {remembered("LN-008", missing_series_farads, 2.61, pico, 0.012, pozar_5_1_d),
        exactly("LN-008x", missing_series_farads, 2.598989337445587, pico),
        printed("LN-012", missing_series_farads, 2.599, pico, 0.0005, pozar_5_1_b)}},
      {"200-j100 ohm to 100 ohm at 500 MHz; the shunt part is missing",
       "500 MHz",
       "source rig at feed : 100 W, 100 ohm\n"
       "load ant at feed : 200-j100 ohm\n"
       "capacitor Cs from feed to desk : 2.598989337445587e-12 F\n"
       "resistor rig_side at desk : 100 ohm\n",
       {remembered("LN-007", missing_shunt_henries, 46.1, nano, 0.05, pozar_5_1_c),
        exactly("LN-007x", missing_shunt_henries, 46.138691504988544, nano),
        printed("LN-011", missing_shunt_henries, 46.139, nano, 0.0005, pozar_5_1_b)}},
      {"600 ohm to 50 ohm at 400 MHz, low pass; the series part is missing",
       "400 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cp at desk : 2.1994051240257623e-12 F\n"
       "load ant at desk : 600 ohm\n",
       {printed("LN-014", missing_series_ohms, 165.8312, one, 0.00005, misra_6_6),
        exactly("LN-014x", missing_series_ohms, 165.83123951776999, one),
        printed("LN-013", input_q, 3.3166, one, 0.00005, misra_6_6),
        exactly("LN-013x", input_q, 3.3166247903553998, one)}},
      {"600 ohm to 50 ohm at 400 MHz, low pass; the shunt part is missing",
       "400 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 600 ohm\n"
       "inductor Ls from feed to desk : 6.598215372077287e-8 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {printed("LN-015", missing_shunt_ohms, 180.9068, one, 0.00005, misra_6_6),
        exactly("LN-015x", missing_shunt_ohms, 180.90680674665817, one),
        printed("LN-019", missing_shunt_farads, 2.20, pico, 0.005, misra_6_6),
        exactly("LN-019x", missing_shunt_farads, 2.1994051240257623, pico)}},
      {"600 ohm to 50 ohm at 400 MHz, high pass; the series part is missing",
       "400 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 7.1980531331752222e-8 H\n"
       "load ant at desk : 600 ohm\n",
       {printed("LN-016", missing_series_farads, 2.40, pico, 0.005, misra_6_6),
        exactly("LN-016x", missing_series_farads, 2.3993510443917407, pico)}},
      {"600 ohm to 50 ohm at 400 MHz, high pass; the shunt part is missing",
       "400 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 600 ohm\n"
       "capacitor Cs from feed to desk : 2.3993510443917407e-12 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {printed("LN-017", missing_shunt_henries, 71.98, nano, 0.005, misra_6_6),
        exactly("LN-017x", missing_shunt_henries, 71.980531331752222, nano)}},
      {"600 ohm to 50 ohm at 400 MHz in two sections of equal Q, the first; the series part is missing",
       "400 MHz",
       "source rig at desk : 100 W, 173.20508075688773 ohm\n"
       "capacitor Cp at desk : 1.0409699592172936e-12 F\n"
       "load ant at desk : 600 ohm\n",
       {printed("LN-021", missing_series_ohms, 271.89, one, 0.05, misra_6_7),
        exactly("LN-021x", missing_series_ohms, 271.88793363099554, one),
        printed("LN-020", input_q, 1.5698, one, 0.0005, misra_6_7_b),
        exactly("LN-020x", input_q, 1.5697457167126638, one)}},
      {"600 ohm to 50 ohm at 400 MHz in two sections of equal Q, the first; the shunt part is missing",
       "400 MHz",
       "source rig at feed : 100 W, 173.20508075688773 ohm\n"
       "load ant at feed : 600 ohm\n"
       "inductor Ls from feed to desk : 1.0818077151103528e-7 H\n"
       "resistor rig_side at desk : 173.20508075688773 ohm\n",
       {printed("LN-022", missing_shunt_ohms, 382.22, one, 0.05, misra_6_7),
        exactly("LN-022x", missing_shunt_ohms, 382.22751214541316, one)}},
      {"600 ohm to 50 ohm at 400 MHz in two sections of equal Q, the second; the series part is missing",
       "400 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cp at desk : 3.6060257170345093e-12 F\n"
       "load ant at desk : 173.20508075688773 ohm\n",
       {printed("LN-023", missing_series_ohms, 78.49, one, 0.01, misra_6_7),
        exactly("LN-023x", missing_series_ohms, 78.487285835633191, one)}},
      {"10+j10 ohm to 50 ohm at 500 MHz; the series part is missing",
       "500 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 10+j10 ohm\n"
       "capacitor Cp at desk : 1.2732395447351627e-11 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {printed("LN-025", missing_series_henries, 3.1831, nano, 0.00005, misra_6_8),
        exactly("LN-025x", missing_series_henries, 3.1830988618379067, nano)}},
      {"10+j10 ohm to 50 ohm at 500 MHz; the shunt part is missing",
       "500 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 3.1830988618379067e-9 H\n"
       "load ant at feed : 10+j10 ohm\n",
       {printed("LN-026", missing_shunt_farads, 12.732, pico, 0.0005, misra_6_8),
        exactly("LN-026x", missing_shunt_farads, 12.732395447351627, pico)}},
      {"10+j10 ohm to 50 ohm at 500 MHz; the shunt part is missing",
       "500 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 1.0610329539459689e-11 F\n"
       "load ant at feed : 10+j10 ohm\n",
       {printed("LN-028", missing_shunt_henries, 7.9577, nano, 0.00005, misra_6_8),
        exactly("LN-028x", missing_shunt_henries, 7.9577471545947668, nano)}},
      {"8-j12 mS to 50 ohm at 1 GHz, as an impedance",
       "1 GHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 1/(8 mS - j12 mS)\n",
       {printed("LN-029", "resistance at desk", 38.4615, one, 0.00005, misra_6_9)}},
      {"8-j12 mS to 50 ohm at 1 GHz; the shunt part is missing",
       "1 GHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 2.0207954955728123e-12 F\n"
       "load ant at feed : 38.461538461538462+j57.692307692307692 ohm\n",
       {printed("LN-033", missing_shunt_henries, 14.529, nano, 0.0005, misra_6_9),
        exactly("LN-033x", missing_shunt_henries, 14.528792078313681, nano)}},
      {"8-j12 mS to 50 ohm at 1 GHz; the series part is missing",
       "1 GHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 38.461538461538462+j57.692307692307692 ohm\n"
       "capacitor Cp at desk : 1.7434550493976417e-12 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-035", missing_series_farads, 4.3454022281030012, pico)}},
      {"8-j12 mS to 50 ohm at 1 GHz; the shunt part is missing",
       "1 GHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 4.3454022281030012e-12 F\n"
       "load ant at feed : 38.461538461538462+j57.692307692307692 ohm\n",
       {printed("LN-032", missing_shunt_ohms, 91.2871, one, 0.00005, misra_6_9),
        exactly("LN-032x", missing_shunt_ohms, 91.287092917527686, one)}},
      {"8-j12 mS to 50 ohm at 1 GHz, Q of the series arm",
       "1 GHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 4.3454022281030012e-12 F\n"
       "load ant at feed : 38.461538461538462+j57.692307692307692 ohm\n",
       {printed("LN-031", input_q, 0.5477, one, 0.00005, misra_6_9),
        exactly("LN-031x", input_q, 0.54772255750516611, one)}},
      {"100 ohm to 1000 ohm at 100 MHz; the series part is missing",
       "100 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "capacitor Cp at desk : 4.7746482927568601e-12 F\n"
       "load ant at desk : 1000 ohm\n",
       {remembered("LN-036", input_q, 3, one, 1.0e-9, bowick_4), exactly("LN-036x", input_q, 3.0, one)}},
      {"100+j126 ohm source, 1000 ohm across 2 pF, 100 MHz; the series part is missing",
       "100 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "inductor own from desk to mid : 126 ohm / (2*pi*100 MHz)\n"
       "load ant at mid : 1000 ohm\n"
       "capacitor stray at mid : 2 pF\n"
       "capacitor C at mid : 2.7746482927568601e-12 F\n",
       {remembered("LN-039", missing_series_henries, 277, nano, 0.5, bowick_4),
        exactly("LN-039x", missing_series_henries, 276.92960097989788, nano)}},
      {"the same; the added shunt part is missing",
       "100 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 1000 ohm\n"
       "capacitor stray at feed : 2 pF\n"
       "inductor L from feed to mid : 2.7692960097989788e-7 H\n"
       "inductor own from mid to desk : 126 ohm / (2*pi*100 MHz)\n"
       "resistor rig_side at desk : 100 ohm\n",
       {remembered("LN-040", missing_shunt_farads, 2.8, pico, 0.05, bowick_4),
        exactly("LN-040x", missing_shunt_farads, 2.7746482927568601, pico)}},
      {"50 ohm to 600 ohm across 40 pF at 75 MHz; the series part is missing",
       "75 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 8.705102902940038e-8 H\n"
       "load ant at desk : 4.6544074164210805-j52.640107726472338 ohm\n",
       {remembered("LN-042", missing_series_farads, 12.78, pico, 0.017, bowick_4_b),
        exactly("LN-042x", missing_series_farads, 12.796538903422617, pico)}},
      {"50 ohm to 600 ohm across 40 pF at 75 MHz; the shunt part is missing",
       "75 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 4.6544074164210805-j52.640107726472338 ohm\n"
       "capacitor Cs from feed to desk : 1.2796538903422617e-11 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {remembered("LN-044", missing_shunt_henries, 87, nano, 0.5, bowick_4),
        exactly("LN-044x", missing_shunt_henries, 87.05102902940038, nano)}},
  };
}

}  // namespace wattfall::reference
