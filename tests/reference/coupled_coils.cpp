// Coupled coils (input impedance, efficiency, leakage with the other coil shorted, mutual inductance from the two in
// series) and transformers made of lines: one line with its output lifted on its input, two lines in parallel at one
// end and in series at the other.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* bird_43_3 =
    "Bird, Electrical Circuit Theory and Technology, chapter 43 problem 3 p.844, figures as printed by a textbook "
    "companion";
constexpr const char* bird_43_4 =
    "Bird, Electrical Circuit Theory and Technology, chapter 43 problem 4 p.845, figures as printed by a textbook "
    "companion";
constexpr const char* bird_43_5 =
    "Bird, Electrical Circuit Theory and Technology, chapter 43 problem 5 p.846, figures as printed by a textbook "
    "companion";
constexpr const char* ruthroff =
    "Ruthroff, Some broad-band transformers, Proc. IRE 47, 1959, pp. 1337-1342; formula from memory, re-derived from "
    "the line equations here";

}  // namespace

Setups coupled_coils() {
  return {
      {"L1 5.0e-6 H, L2 2.0e-5 H, k 0.99, R1 0.0, R2 0.0 ohm, 200 ohm, 3.6 MHz",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor La at desk : 5.0e-6 H\n"
       "inductor Lb at feed : 2.0e-5 H\n"
       "coupling K between La and Lb : factor 0.99\n"
       "load ant at feed : 200 ohm\n",
       {exactly("XF-057", "resistance at desk", 40.992937905865786, one),
        exactly("XF-058", "reactance at desk", 20.373494475858584, one)}},
      {"L1 5.0e-6 H, L2 2.0e-5 H, k 0.99, no loss, Lb shorted",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La at in : 5.0e-6 H\n"
       "inductor Lb at far : 2.0e-5 H\n"
       "coupling K between La and Lb : factor 0.99\n"
       "resistor short at far : 0 ohm\n",
       {exactly("XF-060", loop_henries, 0.0995, micro)}},
      {"L1 5.0e-6 H, L2 2.0e-5 H, k 0.99, no loss, in series, aiding: L1 + L2 + 2 M",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 5.0e-6 H\n"
       "inductor Lb from mid to ground : 2.0e-5 H\n"
       "coupling K between La and Lb : factor 0.99\n",
       {exactly_within("XF-056", loop_henries, 44.8, micro, 1.98e-8)}},
      {"L1 2.0e-6 H, L2 8.0e-6 H, k 0.9, R1 0.2, R2 0.8 ohm, 200 ohm, 7.1 MHz",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor La at desk : 2.0e-6 H, resistance 0.2 ohm\n"
       "inductor Lb at feed : 8.0e-6 H, resistance 0.8 ohm\n"
       "coupling K between La and Lb : factor 0.9\n"
       "load ant at feed : 200 ohm\n",
       {exactly("XF-063", "reactance at desk", 34.329241354361343, one)}},
      {"L1 2.0e-6 H, L2 8.0e-6 H, k 0.9, no loss, Lb shorted",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La at in : 2.0e-6 H\n"
       "inductor Lb at far : 8.0e-6 H\n"
       "coupling K between La and Lb : factor 0.9\n"
       "resistor short at far : 0 ohm\n",
       {exactly("XF-065", loop_henries, 0.38, micro)}},
      {"L1 1.0e-6 H, L2 2.5e-5 H, k 0.5, R1 0.3, R2 4.0 ohm, 50-j300 ohm, 14.2 MHz",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor La at desk : 1.0e-6 H, resistance 0.3 ohm\n"
       "inductor Lb at feed : 2.5e-5 H, resistance 4.0 ohm\n"
       "coupling K between La and Lb : factor 0.5\n"
       "load ant at feed : 50-j300 ohm\n",
       {exactly("XF-067", "resistance at desk", 1.0203060739543952, one),
        exactly("XF-068", "reactance at desk", 63.469878589612021, one),
        exactly("XF-069", accepted_to_ant, 0.65367646581912109, one)}},
      {"L1 1.0e-6 H, L2 2.5e-5 H, k 0.5, no loss, Lb shorted",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La at in : 1.0e-6 H\n"
       "inductor Lb at far : 2.5e-5 H\n"
       "coupling K between La and Lb : factor 0.5\n"
       "resistor short at far : 0 ohm\n",
       {exactly("XF-070", loop_henries, 0.75, micro)}},
      {"L1 1.0e-6 H, L2 2.5e-5 H, k 0.5, no loss, in series, aiding: L1 + L2 + 2 M",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 1.0e-6 H\n"
       "inductor Lb from mid to ground : 2.5e-5 H\n"
       "coupling K between La and Lb : factor 0.5\n",
       {exactly_within("XF-066", loop_henries, 31, micro, 5.0e-9)}},
      {"L1 1.0e-5 H, L2 1.0e-5 H, k 1.0 but for 1e-11: a factor of 1 is refused, R1 0.0, R2 0.0 ohm, 50 ohm, 1.85 MHz",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor La at desk : 1.0e-5 H\n"
       "inductor Lb at feed : 1.0e-5 H\n"
       "coupling K between La and Lb : factor 0.99999999999\n"
       "load ant at feed : 50 ohm\n",
       {exactly("XF-072", "resistance at desk", 42.193105557624823, one),
        exactly("XF-073", "reactance at desk", 18.149300848362463, one), exactly("XF-074", accepted_to_ant, 1.0, one)}},
      {"L1 1.0e-5 H, L2 1.0e-5 H, k 1.0 but for 1e-11: a factor of 1 is refused, no loss, in series, aiding: L1 + L2 + "
       "2 M",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 1.0e-5 H\n"
       "inductor Lb from mid to ground : 1.0e-5 H\n"
       "coupling K between La and Lb : factor 0.99999999999\n",
       {exactly_within("XF-071", loop_henries, 40, micro, 2.0e-8)}},
      {"L1 3.0e-6 H, L2 3.0e-6 H, k 0.1, R1 1.0, R2 1.0 ohm, 10 ohm, 14 MHz",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor La at desk : 3.0e-6 H, resistance 1.0 ohm\n"
       "inductor Lb at feed : 3.0e-6 H, resistance 1.0 ohm\n"
       "coupling K between La and Lb : factor 0.1\n"
       "load ant at feed : 10 ohm\n",
       {exactly("XF-077", "resistance at desk", 1.109809205521532, one),
        exactly("XF-078", "reactance at desk", 261.2594222976799, one),
        exactly("XF-079", accepted_to_ant, 0.089949290362219121, one)}},
      {"L1 3.0e-6 H, L2 3.0e-6 H, k 0.1, no loss, Lb shorted",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La at in : 3.0e-6 H\n"
       "inductor Lb at far : 3.0e-6 H\n"
       "coupling K between La and Lb : factor 0.1\n"
       "resistor short at far : 0 ohm\n",
       {exactly("XF-080", loop_henries, 2.97, micro)}},
      {"L1 3.0e-6 H, L2 3.0e-6 H, k 0.1, no loss, in series, aiding: L1 + L2 + 2 M",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 3.0e-6 H\n"
       "inductor Lb from mid to ground : 3.0e-6 H\n"
       "coupling K between La and Lb : factor 0.1\n",
       {exactly_within("XF-076", loop_henries, 6.6, micro, 6.0e-10)}},
      {"La 250 mH, Lb 400 mH, M 80 mH: in series with k as given",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 250 mH\n"
       "inductor Lb from mid to ground : 400 mH\n"
       "coupling K between La and Lb : factor 0.253\n",
       {printed("XF-012", loop_henries, 810, milli, 0.31623, bird_43_3)}},
      {"La 250 mH, Lb 400 mH, M 80 mH: in series with k as given",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 250 mH\n"
       "inductor Lb from mid to ground : 400 mH\n"
       "coupling K between La and Lb : factor 0.25298221281347035\n",
       {exactly_within("XF-012x", loop_henries, 810, milli, 1.6001e-7)}},
      {"La 80 mH, Lb 60 mH, M 62.5 mH: in series with k as given",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 80 mH\n"
       "inductor Lb from mid to ground : 60 mH\n"
       "coupling K between La and Lb : factor 0.902\n",
       {printed("XF-013", loop_henries, 265, milli, 0.069282, bird_43_4)}},
      {"La 80 mH, Lb 60 mH, M 62.5 mH: in series with k as given",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 80 mH\n"
       "inductor Lb from mid to ground : 60 mH\n"
       "coupling K between La and Lb : factor 0.90210979560879026\n",
       {exactly_within("XF-013x", loop_henries, 265, milli, 1.25e-7)}},
      {"La 40 mH, Lb 10 mH, M 5 mH: in series with k as given, 60 mH",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 40 mH\n"
       "inductor Lb from mid to ground : 10 mH\n"
       "coupling K between La and Lb : factor 0.25\n",
       {printed("XF-015", loop_henries, 60, milli, 4.0e-8, bird_43_5)}},
      {"La 40 mH, Lb 10 mH, M 5 mH: in series with k as given, 60 mH",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 40 mH\n"
       "inductor Lb from mid to ground : 10 mH\n"
       "coupling K between La and Lb : factor 0.25\n",
       {exactly_within("XF-015x", loop_henries, 60, milli, 1.0e-8)}},
      {"La 40 mH, Lb 10 mH, M as given: in series 60 mH",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 40 mH\n"
       "inductor Lb from mid to ground : 10 mH\n"
       "coupling K between La and Lb : factor 5/20\n",
       {printed("XF-014", loop_henries, 60, milli, 2.0e-9, bird_43_5)}},
      {"La 40 mH, Lb 10 mH, M as given: in series 60 mH",
       "1 kHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at (desk in) : 50 ohm\n"
       "inductor La from in to mid : 40 mH\n"
       "inductor Lb from mid to ground : 10 mH\n"
       "coupling K between La and Lb : factor 5.0/20\n",
       {exactly_within("XF-014x", loop_henries, 60, milli, 1.0e-8)}},
      {"1:4 of one 100 ohm line, 50 to 200 ohm, of no length to speak of",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (feed desk) : 1e-7 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 200 ohm\n",
       {exactly_within("XF-081", "total loss", 0.0, one, 1.0e-9, ruthroff)}},
      {"1:4 of one 100 ohm line, 50 to 200 ohm, 60 degrees",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (feed desk) : 60 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 200 ohm\n",
       {exactly_within("XF-083", "total loss", 0.11899223299707732, one, 1.0e-9, ruthroff)}},
      {"1:4 of one 100 ohm line, 50 to 200 ohm, 120 degrees",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (feed desk) : 120 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 200 ohm\n",
       {exactly_within("XF-085", "total loss", 5.1188336097887438, one, 1.0e-9, ruthroff)}},
      {"1:4 of one 100 ohm line, 50 to 200 ohm, 150 degrees",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (feed desk) : 150 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 200 ohm\n",
       {exactly_within("XF-086", "total loss", 16.945938922670228, one, 1.0e-9, ruthroff)}},
      {"two 100 ohm lines of 90 degrees, parallel at the input, in series at 200 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (top mid) : 90 deg at 10 MHz, 100 ohm\n"
       "line v from (desk ground) to (mid low) : 90 deg at 10 MHz, 100 ohm\n"
       "load ant at (top low) : 200 ohm\n",
       {exactly("XF-089", "resistance at desk", 50.0, one)}},
      {"two 100 ohm lines of 150 degrees, parallel at the input, in series at 200 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (top mid) : 150 deg at 10 MHz, 100 ohm\n"
       "line v from (desk ground) to (mid low) : 150 deg at 10 MHz, 100 ohm\n"
       "load ant at (top low) : 200 ohm\n",
       {exactly("XF-090", "resistance at desk", 50.0, one)}},
      {"two 50 ohm lines of 18 degrees, parallel at the input, in series at 200 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (top mid) : 18 deg at 10 MHz, 50 ohm\n"
       "line v from (desk ground) to (mid low) : 18 deg at 10 MHz, 50 ohm\n"
       "load ant at (top low) : 200 ohm\n",
       {exactly("XF-092", "reactance at desk", -17.133605692457638, one)}},
      {"two 75 ohm lines of 18 degrees, parallel at the input, in series at 200 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from (desk ground) to (top mid) : 18 deg at 10 MHz, 75 ohm\n"
       "line v from (desk ground) to (mid low) : 18 deg at 10 MHz, 75 ohm\n"
       "load ant at (top low) : 200 ohm\n",
       {exactly("XF-093", "resistance at desk", 46.543183368990326, one),
        exactly("XF-094", "reactance at desk", -7.979240727219072, one)}},
  };
}

}  // namespace wattfall::reference
