// Transformers: ideal ratios, sources matched for most power, and real ones of magnetizing inductance, core loss and
// leakage, with the core's heat at 100 W accepted.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* bird_35_9 =
    "Bird, Electrical Circuit Theory and Technology, chapter 35 problem 9 p.625, figures as printed by a textbook "
    "companion";
constexpr const char* bird_35_10 =
    "Bird, Electrical Circuit Theory and Technology, chapter 35 problem 10 p.625, figures as printed by a textbook "
    "companion";
constexpr const char* bird_35_1 =
    "Bird, Electrical Circuit Theory and Technology, chapter 35 problem 1 p.620, figures as printed by a textbook "
    "companion";
constexpr const char* bird_35_2 =
    "Bird, Electrical Circuit Theory and Technology, chapter 35 problem 2 p.620, figures as printed by a textbook "
    "companion";
constexpr const char* bird_35_3 =
    "Bird, Electrical Circuit Theory and Technology, chapter 35 problem 3 p.620, figures as printed by a textbook "
    "companion";

}  // namespace

Setups transformers() {
  return {
      {"240 V behind 5 ohm, 240:1920 turns, 1600 ohm",
       "7 MHz",
       "source rig at desk : 240^2/(4*5) * 1 W, 5 ohm\n"
       "transformer T from desk to feed : turns 240:1920\n"
       "load ant at feed : 1600 ohm\n",
       {printed("XF-004", "power into ant", 1600, one, 1.0e-6, bird_35_9),
        exactly("XF-004x", "power into ant", 1600.0, one)}},
      {"30 V behind 20 kohm, turns 20:1, matched by the load as given",
       "7 MHz",
       "source rig at desk : 30^2/(4*20000) * 1 W, 20 kohm\n"
       "transformer T from desk to feed : turns 20:1\n"
       "load ant at feed : 50 ohm\n",
       {printed("XF-005", "resistance at desk", 50, 400, 1.0e-9, bird_35_10),
        exactly("XF-005x", "resistance at desk", 50.0, 400),
        printed("XF-006", "power into ant", 11.25, milli, 1.0e-9, bird_35_10),
        exactly("XF-006x", "power into ant", 11.25, milli)}},
      {"120 V behind 15+j20 ohm: the resistance for most power is the size of what the load sees",
       "7 MHz",
       "source rig at desk : 120^2/(4*15) * 1 W, 15 ohm\n"
       "inductor own from desk to feed : 20 ohm / (2*pi*7 MHz)\n"
       "load ant at feed : 25 ohm\n"
       "plane p at feed into ant\n",
       {printed("XF-007", source_side_ohms, 25, one, 1.0e-9, bird_35_1),
        exactly("XF-007x", source_side_ohms, 25.0, one)}},
      {"120 V behind 15+j20 ohm, conjugate load",
       "7 MHz",
       "source rig at desk : 120^2/(4*15) * 1 W, 15 ohm\n"
       "inductor own from desk to feed : 20 ohm / (2*pi*7 MHz)\n"
       "load ant at feed : 15-j20 ohm\n",
       {printed("XF-009", "power into ant", 240, one, 1.0e-9, bird_35_2),
        exactly("XF-009x", "power into ant", 240.0, one)}},
      {"100 ohm with 1 uF across at 1 kHz: the resistance for most power is the size of what the load sees",
       "1 kHz",
       "source rig at desk : 200^2/(4*100) * 1 W, 100 ohm\n"
       "capacitor own at desk : 1 uF\n"
       "load ant at desk : 80 ohm\n"
       "plane p at desk into ant\n",
       {printed("XF-010", source_side_ohms, 84.67, one, 0.005, bird_35_3),
        exactly("XF-010x", source_side_ohms, 84.673301596483043, one)}},
      {"ideal transformer 1:2 turns, 200 ohm",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:2\n"
       "load ant at feed : 200 ohm\n",
       {exactly("XF-016", "resistance at desk", 50.0, one)}},
      {"ideal transformer 1:3 turns, 450+j90 ohm",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:3\n"
       "load ant at feed : 450+j90 ohm\n",
       {exactly("XF-018", "resistance at desk", 50.0, one), exactly("XF-019", "reactance at desk", 10.0, one)}},
      {"ideal transformer 1:7 turns, 2450 ohm",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:7\n"
       "load ant at feed : 2450 ohm\n",
       {exactly("XF-020", "resistance at desk", 50.0, one)}},
      {"ideal transformer 1:1.5 turns, 100-j50 ohm",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:1.5\n"
       "load ant at feed : 100-j50 ohm\n",
       {exactly("XF-023", "reactance at desk", -22.222222222222222, one)}},
      {"ideal transformer 1:8 turns, 3200-j800 ohm",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:8\n"
       "load ant at feed : 3200-j800 ohm\n",
       {exactly("XF-024", "resistance at desk", 50.0, one), exactly("XF-025", "reactance at desk", -12.5, one)}},
      {"1:2 turns, Lm 5e-6 H, core 2000 ohm, leakage 0 H at the input, 200 ohm, 1.8 MHz",
       "1.8 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:2, magnetizing 5e-6 H, core 2000 ohm\n"
       "load ant at feed : 200 ohm\n",
       {exactly("XF-027", "reactance at desk", 24.126348610375403, one),
        exactly("XF-028", "swr at desk", 2.3350921060531308, one),
        exactly("XF-029", accepted_to_ant, 0.97560975609756098, one),
        exactly("XF-030", accepted_heat_t, 2.4390243902439024, 0.01)}},
      {"1:2 turns, Lm 5e-6 H, core 2000 ohm, leakage 0.1e-6 H at the input, 200 ohm, 28 MHz",
       "28 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:2, leakage 0.1e-6 H, magnetizing 5e-6 H, core 2000 ohm\n"
       "load ant at feed : 200 ohm\n",
       {exactly("XF-031", "resistance at desk", 48.63093687897711, one),
        exactly("XF-032", "reactance at desk", 20.289732097552025, one),
        exactly("XF-033", "swr at desk", 1.5061167793543767, one),
        exactly("XF-034", accepted_to_ant, 0.97560975609756098, one),
        exactly("XF-035", accepted_heat_t, 2.4390243902439024, 0.01)}},
      {"1:7 turns, Lm 8e-6 H, core 1500 ohm, leakage 0.3e-6 H at the input, 2450 ohm, 3.6 MHz",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:7, leakage 0.3e-6 H, magnetizing 8e-6 H, core 1500 ohm\n"
       "load ant at feed : 2450 ohm\n",
       {exactly("XF-036", "resistance at desk", 45.15822165022899, one),
        exactly("XF-037", "reactance at desk", 18.861031994780484, one),
        exactly("XF-038", "swr at desk", 1.5022794739567982, one),
        exactly("XF-039", accepted_to_ant, 0.96774193548387097, one),
        exactly("XF-040", accepted_heat_t, 3.2258064516129032, 0.01)}},
      {"1:7 turns, Lm 8e-6 H, core 1500 ohm, leakage 0.3e-6 H at the input, 2450 ohm, 14.2 MHz",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:7, leakage 0.3e-6 H, magnetizing 8e-6 H, core 1500 ohm\n"
       "load ant at feed : 2450 ohm\n",
       {exactly("XF-041", "resistance at desk", 48.165746011778525, one),
        exactly("XF-042", "reactance at desk", 30.031568422733421, one),
        exactly("XF-045", accepted_heat_t, 3.2258064516129032, 0.01)}},
      {"1:3 turns, Lm 10e-6 H, core 3000 ohm, leakage 0.05e-6 H at the input, 300-j400 ohm, 7.1 MHz",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:3, leakage 0.05e-6 H, magnetizing 10e-6 H, core 3000 ohm\n"
       "load ant at feed : 300-j400 ohm\n",
       {exactly("XF-046", "resistance at desk", 40.964906289416706, one),
        exactly("XF-047", "reactance at desk", -42.506020866085385, one),
        exactly("XF-048", "swr at desk", 2.526088327951556, one),
        exactly("XF-050", accepted_heat_t, 2.9940119760479042, 0.01)}},
      {"1:1 turns, Lm 15e-6 H, core 800 ohm, leakage 0.02e-6 H at the input, 50 ohm, 1.85 MHz",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "transformer T from desk to feed : turns 1:1, leakage 0.02e-6 H, magnetizing 15e-6 H, core 800 ohm\n"
       "load ant at feed : 50 ohm\n",
       {exactly("XF-051", "resistance at desk", 43.863603796267521, one),
        exactly("XF-052", "reactance at desk", 12.071137088586781, one),
        exactly("XF-053", "swr at desk", 1.3339610753638266, one),
        exactly("XF-054", accepted_to_ant, 0.94117647058823529, one),
        exactly("XF-055", accepted_heat_t, 5.8823529411764706, 0.01)}},
  };
}

}  // namespace wattfall::reference
