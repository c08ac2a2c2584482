// Total and added loss of a mismatched line, and the SWR at its input, by the handbooks' closed form for a real
// impedance. The line is 10 m of 50 ohm; only its matched loss and the load's SWR matter.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* worked =
    "worked examples in a mailing-list post of March 1999; formula Lt=10 log10[((1-p^2) e^(2a))/(1-p^2 e^(4a))] in "
    "nepers";

}  // namespace

Setups mismatched_lines() {
  return {
      {"matched loss 0.04 dB, load SWR 20",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 0.04 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 20\n",
       {exactly("TL-139", "loss in w", 0.38372699828611508, one)}},
      {"matched loss 0.5 dB, load SWR 2",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 0.5 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 2\n",
       {exactly("TL-171", "swr at desk", 1.8452887583930765, one)}},
      {"matched loss 0.5 dB, load SWR 3",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 0.5 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 3\n",
       {exactly("TL-143", line_added_db, 0.2879779735108897, one)}},
      {"matched loss 0.5 dB, load SWR 5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 0.5 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 5\n",
       {exactly("TL-144", line_added_db, 0.66153445348120024, one),
        exactly("TL-173", "swr at desk", 3.9281390115047382, one)}},
      {"matched loss 0.5 dB, load SWR 10",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 0.5 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 10\n",
       {exactly("TL-145", line_added_db, 1.5121207942682994, one),
        exactly("TL-174", "swr at desk", 6.3856692769484644, one)}},
      {"matched loss 0.5 dB, load SWR 20",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 0.5 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 20\n",
       {exactly("TL-146", line_added_db, 2.8512816730163321, one)}},
      {"matched loss 1 dB, load SWR 1.5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 1 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 1.5\n",
       {exactly("TL-147", line_added_db, 0.066272264311925931, one)}},
      {"matched loss 1 dB, load SWR 3",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 1 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 3\n",
       {exactly("TL-149", line_added_db, 0.50385254907822054, one),
        exactly("TL-176", "swr at desk", 2.3176525445839414, one)}},
      {"matched loss 1 dB, load SWR 5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 1 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 5\n",
       {exactly("TL-150", line_added_db, 1.1234827787801701, one),
        exactly("TL-177", "swr at desk", 3.2512682916084175, one)}},
      {"matched loss 1 dB, load SWR 10",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 1 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 10\n",
       {exactly("TL-151", line_added_db, 2.4237030478183333, one)}},
      {"matched loss 2 dB, load SWR 1.5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 2 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 1.5\n",
       {exactly("TL-153", line_added_db, 0.10757280585251746, one)}},
      {"matched loss 2 dB, load SWR 2",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 2 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 2\n",
       {exactly("TL-154", line_added_db, 0.31504040406558749, one),
        exactly("TL-179", "swr at desk", 1.5326686229224951, one)}},
      {"matched loss 2 dB, load SWR 5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 2 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 5\n",
       {exactly("TL-181", "swr at desk", 2.4520745108945065, one)}},
      {"matched loss 2.0 dB, load SWR 8",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 2.0 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 8\n",
       {printed("TL-137", "loss in w", 4.837, one, 0.0005, worked),
        exactly("TL-137x", "loss in w", 4.8367392753586075, one)}},
      {"matched loss 3 dB, load SWR 1.5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 3 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 1.5\n",
       {exactly("TL-159", line_added_db, 0.13343103636453212, one)}},
      {"matched loss 3 dB, load SWR 2",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 3 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 2\n",
       {exactly("TL-183", "swr at desk", 1.4011402857964383, one)}},
      {"matched loss 3 dB, load SWR 3",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 3 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 3\n",
       {exactly("TL-184", "swr at desk", 1.6687789760961191, one)}},
      {"matched loss 3 dB, load SWR 5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 3 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 5\n",
       {exactly("TL-185", "swr at desk", 2.0035659344791431, one)}},
      {"matched loss 3 dB, load SWR 10",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 3 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 10\n",
       {exactly("TL-163", line_added_db, 4.007698386097013, one),
        exactly("TL-186", "swr at desk", 2.3901883862915291, one)}},
      {"matched loss 6 dB, load SWR 2",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 6 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 2\n",
       {exactly("TL-166", line_added_db, 0.48097118691985518, one),
        exactly("TL-187", "swr at desk", 1.1827616453381473, one)}},
      {"matched loss 6 dB, load SWR 3",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 6 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 3\n",
       {exactly("TL-167", line_added_db, 1.1803359937764967, one),
        exactly("TL-188", "swr at desk", 1.2872678544397636, one)}},
      {"matched loss 6 dB, load SWR 5",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 6 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 5\n",
       {exactly("TL-168", line_added_db, 2.4291975866582633, one)}},
      {"matched loss 6 dB, load SWR 10",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 6 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 10\n",
       {exactly("TL-169", line_added_db, 4.6198314409639572, one)}},
      {"matched loss 6 dB, load SWR 20",
       "14 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm, velocity 0.66, loss 6 dB/m / 10 at 14 MHz\n"
       "load ant at feed : 50 ohm * 20\n",
       {exactly("TL-170", line_added_db, 7.1831734432990796, one)}},
  };
}

}  // namespace wattfall::reference
