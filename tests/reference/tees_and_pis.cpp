// T and pi networks: the printed three-element examples, tanks, and high-pass T tuners of ideal parts (which part is
// missing) and of lossy ones (input impedance, and the share of the accepted power that each part turns into heat).
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* bowick_4 = "Bowick, RF Circuit Design, chapter 4, three-element example; from memory";

}  // namespace

Setups tees_and_pis() {
  return {
      {"pi network, 100 ohm source, 1000 ohm load, Q 15 at the load; the load and its shunt part",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 15 / (2*pi*7 MHz * 1000 ohm)\n"
       "load ant at desk : 1000 ohm\n",
       {remembered("PT-001", "resistance at desk", 4.42, one, 0.005, bowick_4),
        exactly("PT-001x", "resistance at desk", 4.4247787610619469, one),
        remembered("PT-003", missing_series_ohms, 66.3, one, 0.1, bowick_4),
        exactly("PT-003x", missing_series_ohms, 66.371681415929204, one)}},
      {"pi network, 100 ohm source, 1000 ohm load, Q 15 at the load; the source and its shunt part",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : sqrt(100*226/1000 - 1) / (2*pi*7 MHz * 100 ohm)\n"
       "load ant at desk : 100 ohm\n",
       {remembered("PT-004", input_q, 4.6, one, 0.05, bowick_4), exactly("PT-004x", input_q, 4.6475800154489003, one),
        remembered("PT-006", missing_series_ohms, 20.51, one, 0.25, bowick_4),
        exactly("PT-006x", missing_series_ohms, 20.564513342694249, one)}},
      {"T network, 10 ohm source, 50 ohm load, Q 10 at the source; the source and its series part",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to feed : 10 * 10 ohm / (2*pi*7 MHz)\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-008", "reactance at desk", 100, one, 1.0e-9, bowick_4),
        exactly("PT-008x", "reactance at desk", 100.0, one)}},
      {"T network, 10 ohm source, 50 ohm load, Q 10 at the source; its admittance",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to feed : 10 * 10 ohm / (2*pi*7 MHz)\n"
       "capacitor C at desk : 10 / (2*pi*7 MHz * 1010 ohm)\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-007", "resistance at desk", 1010, one, 1.0e-9, bowick_4),
        exactly("PT-007x", "resistance at desk", 1010.0, one)}},
      {"T network, 10 ohm source, 50 ohm load, Q 10 at the source; the load and its series part",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to feed : sqrt(1010/50 - 1) * 50 ohm / (2*pi*7 MHz)\n"
       "load ant at feed : 50 ohm\n",
       {remembered("PT-010", input_q, 4.4, one, 0.05, bowick_4), exactly("PT-010x", input_q, 4.3817804600413289, one)}},
      {"pi tank 2000 ohm to 50 ohm, Q 12 at the high side, 3.75 MHz; L is missing",
       "3.75 MHz",
       "source rig at (tank feed) : 100 W, 50 ohm\n"
       "capacitor C1 at tank : 2.5464790894703254e-10 F\n"
       "resistor valve at tank : 2000 ohm\n"
       "capacitor C2 at feed : 1.3752558893979107e-9 F\n"
       "load ant at feed : 50 ohm\n",
       {exactly("PT-014", missing_series_henries, 7.973222239502905, micro)}},
      {"pi tank 2000 ohm to 50 ohm, Q 12 at the high side, 3.75 MHz; C2 is missing",
       "3.75 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 50 ohm\n"
       "inductor L from feed to tank : 7.973222239502905e-6 H\n"
       "capacitor C1 at tank : 2.5464790894703254e-10 F\n"
       "resistor valve at tank : 2000 ohm\n",
       {exactly("PT-015", missing_shunt_farads, 1375.2558893979107, pico)}},
      {"pi tank 3200 ohm to 50 ohm, Q 12 at the high side, 7.1 MHz; C1 is missing",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to feed : 6.4929651382803342e-6 H\n"
       "capacitor C2 at feed : 5.0436425627713311e-10 F\n"
       "load ant at feed : 50 ohm\n",
       {exactly("PT-016", missing_shunt_farads, 84.060709379522184, pico)}},
      {"pi tank 1500 ohm to 50 ohm, Q 10 at the high side, 14.2 MHz; C1 is missing",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to feed : 1.9206452939646199e-6 H\n"
       "capacitor C2 at feed : 3.4485007908509661e-10 F\n"
       "load ant at feed : 50 ohm\n",
       {exactly("PT-019", missing_shunt_farads, 74.720630559575275, pico)}},
      {"pi tank 1500 ohm to 50 ohm, Q 10 at the high side, 14.2 MHz; L is missing",
       "14.2 MHz",
       "source rig at (tank feed) : 100 W, 50 ohm\n"
       "capacitor C1 at tank : 7.4720630559575275e-11 F\n"
       "resistor valve at tank : 1500 ohm\n"
       "capacitor C2 at feed : 3.4485007908509661e-10 F\n"
       "load ant at feed : 50 ohm\n",
       {exactly("PT-020", missing_series_henries, 1.9206452939646199, micro)}},
      {"pi tank 1500 ohm to 50 ohm, Q 10 at the high side, 14.2 MHz; C2 is missing",
       "14.2 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 50 ohm\n"
       "inductor L from feed to tank : 1.9206452939646199e-6 H\n"
       "capacitor C1 at tank : 7.4720630559575275e-11 F\n"
       "resistor valve at tank : 1500 ohm\n",
       {exactly("PT-021", missing_shunt_farads, 344.85007908509661, pico)}},
      {"high-pass T, C2 200 pF, 200 ohm to 50 ohm, 3.6 MHz; C1 is missing",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L at desk : 5.0192850501588361e-6 H\n"
       "capacitor C2 from desk to feed : 200 pF\n"
       "load ant at feed : 200 ohm\n",
       {exactly("PT-022", missing_series_farads, 314.8563701088845, pico)}},
      {"high-pass T, C2 200 pF, 200 ohm to 50 ohm, 3.6 MHz, coil Q 200, capacitors Q 1000",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C1 from desk to mid : 3.148563701088845e-10 F, Q 1000\n"
       "inductor L at mid : 5.0192850501588361e-6 H, Q 200\n"
       "capacitor C2 from mid to feed : 200 pF, Q 1000\n"
       "load ant at feed : 200 ohm\n",
       {exactly("PT-025", "resistance at desk", 50.865280314782679, one),
        exactly("PT-026", "reactance at desk", -0.66336894583224679, one),
        exactly("PT-024", accepted_to_ant, 0.97702327594090975, one),
        exactly("PT-027", accepted_heat_c1, 0.0027604742756605476, one),
        exactly("PT-028", accepted_heat_c2, 0.0010798478047349489, one),
        exactly("PT-029", accepted_heat_l, 0.019136401978694749, one),
        exactly("PT-030", accepted_to_ant, 0.97702327594090975, one)}},
      {"high-pass T, C2 200 pF, 25-j100 ohm to 50 ohm, 7.1 MHz, coil Q 200, capacitors Q 1000",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C1 from desk to mid : 7.5263373568603836e-11 F, Q 1000\n"
       "inductor L at mid : 2.8317310751225041e-6 H, Q 200\n"
       "capacitor C2 from mid to feed : 200 pF, Q 1000\n"
       "load ant at feed : 25-j100 ohm\n",
       {exactly("PT-034", "resistance at desk", 53.880262415286239, one),
        exactly("PT-035", "reactance at desk", -1.3240969507093407, one),
        exactly("PT-033", accepted_to_ant, 0.92363826800865646, one),
        exactly("PT-036", accepted_heat_c1, 0.0055277500818196267, one),
        exactly("PT-037", accepted_heat_c2, 0.0041408900276736476, one),
        exactly("PT-038", accepted_heat_l, 0.066693091881850264, one),
        exactly("PT-039", accepted_to_ant, 0.92363826800865646, one)}},
      {"high-pass T, C2 100 pF, 1000+j300 ohm to 50 ohm, 14.2 MHz, coil Q 200, capacitors Q 1000",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C1 from desk to mid : 5.049629947755294e-11 F, Q 1000\n"
       "inductor L at mid : 2.7295212468136544e-6 H, Q 200\n"
       "capacitor C2 from mid to feed : 100 pF, Q 1000\n"
       "load ant at feed : 1000+j300 ohm\n",
       {exactly("PT-043", "resistance at desk", 51.177533108331659, one),
        exactly("PT-045", accepted_heat_c1, 0.0043370345959814759, one),
        exactly("PT-046", accepted_heat_c2, 0.00010925970158558049, one),
        exactly("PT-048", accepted_to_ant, 0.97482851137047064, one)}},
      {"high-pass T, C2 500 pF, 10-j300 ohm to 50 ohm, 1.85 MHz; C1 is missing",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L at desk : 2.8081983798790178e-5 H\n"
       "capacitor C2 from desk to feed : 500 pF\n"
       "load ant at feed : 10-j300 ohm\n",
       {exactly("PT-049", missing_series_farads, 81.574962812112438, pico)}},
      {"high-pass T, C2 500 pF, 10-j300 ohm to 50 ohm, 1.85 MHz; L is missing",
       "1.85 MHz",
       "source rig at mid : 100 W, 50 ohm\n"
       "capacitor C2 from mid to feed : 500 pF\n"
       "load ant at feed : 10-j300 ohm\n"
       "capacitor C1 from mid to desk : 8.1574962812112438e-11 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("PT-050", missing_shunt_henries, 28.081983798790178, micro)}},
      {"high-pass T, C2 500 pF, 10-j300 ohm to 50 ohm, 1.85 MHz, coil Q 200, capacitors Q 1000",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C1 from desk to mid : 8.1574962812112438e-11 F, Q 1000\n"
       "inductor L at mid : 2.8081983798790178e-5 H, Q 200\n"
       "capacitor C2 from mid to feed : 500 pF, Q 1000\n"
       "load ant at feed : 10-j300 ohm\n",
       {exactly("PT-052", "resistance at desk", 68.865795526893465, one),
        exactly("PT-053", "reactance at desk", -1.9490374596824314, one),
        exactly("PT-051", accepted_to_ant, 0.72473015313877478, one),
        exactly("PT-055", accepted_heat_c2, 0.012469663381598086, one),
        exactly("PT-056", accepted_heat_l, 0.24748620790714465, one),
        exactly("PT-057", accepted_to_ant, 0.72473015313877478, one)}},
  };
}

}  // namespace wattfall::reference
