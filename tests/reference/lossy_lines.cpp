// Lines of a given R, L, G and C a metre, told to the feed as complex impedance, velocity and loss at the frequency:
// input impedance, reflection at the load, matched, added and total loss. Between them they have long lines, reactive
// loads and a reflection above 1.
#include "reference.hpp"

namespace wattfall::reference {

Setups lossy_lines() {
  return {
      {"R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=25.0+100j ohm",
       "3.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 30 m, 50.056337396078279-j2.1574843386868672 ohm, velocity 0.66650798203276882, "
       "loss 0.045558526839919336 dB/m at 3.5 MHz\n"
       "load ant at feed : 25+j100 ohm\n",
       {exactly("TL-195", "resistance at desk", 93.78626664768602, one),
        exactly("TL-196", "reactance at desk", 95.102931972363473, one),
        exactly("TL-197", line_end_gamma, 0.85298088638456765, one),
        exactly("TL-198", "loss in w", 4.2560186105060582, one),
        exactly("TL-199", line_matched_db, 1.3667558051975801, one),
        exactly("TL-200", line_added_db, 2.8892628053084781, one)}},
      {"R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=3.5 MHz, length 30 m, ZL=5.0-300j ohm",
       "3.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 30 m, 50.056337396078279-j2.1574843386868672 ohm, velocity 0.66650798203276882, "
       "loss 0.045558526839919336 dB/m at 3.5 MHz\n"
       "load ant at feed : 5-j300 ohm\n",
       {exactly("TL-205", "resistance at desk", 60.348722651914379, one),
        exactly("TL-207", line_end_gamma, 0.98078596702477252, one),
        exactly("TL-208", "loss in w", 17.63238305016483, one)}},
      {"R=0.2 ohm/m, L=250e-9 H/m, G=0 S/m, C=100e-12 F/m, f=1.85 MHz, length 60 m, ZL=1000.0+0j ohm",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 60 m, 50.029560723930498-j1.7195773403511363 ohm, velocity 0.66673400759763074, "
       "loss 0.017361514897152274 dB/m at 1.85 MHz\n"
       "load ant at feed : 1000 ohm\n",
       {exactly("TL-215", "resistance at desk", 56.344180951867574, one),
        exactly("TL-216", "reactance at desk", -112.78074688436873, one),
        exactly("TL-217", line_end_gamma, 0.90470855039532981, one),
        exactly("TL-218", "loss in w", 5.0957540716160661, one),
        exactly("TL-219", line_matched_db, 1.0416908938291365, one)}},
      {"R=0.05 ohm/m, L=2e-6 H/m, G=0 S/m, C=5.6e-12 F/m, f=7.1 MHz, length 40 m, ZL=50.0-1200j ohm",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 40 m, 597.61432812754957-j0.16745293471193548 ohm, velocity 0.99671333494127626, "
       "loss 0.00036335681848859539 dB/m at 7.1 MHz\n"
       "load ant at feed : 50-j1200 ohm\n",
       {exactly("TL-226", "reactance at desk", -3891.6894088524204, one),
        exactly("TL-229", line_matched_db, 0.014534272739543815, one)}},
      {"R=1.5 ohm/m, L=260e-9 H/m, G=2e-5 S/m, C=98e-12 F/m, f=14.2 MHz, length 25 m, ZL=150.0-75j ohm",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 25 m, 51.536563228952666-j1.6054919969115431 ohm, velocity 0.66049375436745385, "
       "loss 0.13088454932880105 dB/m at 14.2 MHz\n"
       "load ant at feed : 150-j75 ohm\n",
       {exactly("TL-235", "resistance at desk", 33.662917612468551, one),
        exactly("TL-238", "loss in w", 4.7709057869890491, one),
        exactly("TL-240", line_added_db, 1.4987920537690229, one)}},
      {"R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=28.5 MHz, length 40 m, ZL=2.0+0j ohm",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 40 m, 50.000851718006226-j0.26525363733884029 ohm, velocity 0.66711880283139614, "
       "loss 0.04560027892166301 dB/m at 28.5 MHz\n"
       "load ant at feed : 2 ohm\n",
       {exactly("TL-245", "resistance at desk", 82.48564619331189, one),
        exactly("TL-246", "reactance at desk", 91.8657352748022, one),
        exactly("TL-247", line_end_gamma, 0.92308026781138102, one),
        exactly("TL-249", line_matched_db, 1.8240111568665204, one),
        exactly("TL-250", line_added_db, 6.3335504070681049, one)}},
      {"R=0.5 ohm/m, L=250e-9 H/m, G=1e-5 S/m, C=100e-12 F/m, f=0.5 MHz, length 30 m, ZL=0.5+55j ohm",
       "0.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 30 m, 52.489028637075129-j14.388164549087978 ohm, velocity 0.64108674503350237, "
       "loss 0.043820882071430891 dB/m at 0.5 MHz\n"
       "load ant at feed : 0.5+j55 ohm\n",
       {exactly("TL-255", "resistance at desk", 61.281800996479496, one),
        exactly("TL-256", "reactance at desk", 171.62639480480518, one),
        exactly("TL-259", line_matched_db, 1.3146264621429267, one)}},
  };
}

}  // namespace wattfall::reference
