// SWR, reflection, return loss and mismatch loss, each from a load that has the SWR or the return loss by the
// language's own arithmetic.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* handbook = "handbook table; from memory";
constexpr const char* balanis_2_10 =
    "Balanis, Antenna Theory, example 2.10, figures as printed by a textbook companion";
constexpr double as_gain = -1.0;  ///< the row counts what is lost as a negative gain

}  // namespace

Setups reflections() {
  return {
      {"SWR 1.05",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 1.05\n",
       {exactly("CV-001", gamma, 0.024390243902439024, one),
        exactly("CV-002", "return loss at desk", 32.25567713439471, one),
        exactly("CV-003", "mismatch at desk", 0.0025843171360813537, one),
        exactly("CV-004", returned_share, 0.059488399762046401, percent)}},
      {"SWR 1.1",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 1.1\n",
       {exactly("CV-005", gamma, 0.047619047619047619, one),
        exactly("CV-006", "return loss at desk", 26.444385894678385, one)}},
      {"SWR 1.2",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 1.2\n",
       {exactly("CV-009", gamma, 0.090909090909090909, one),
        exactly("CV-010", "return loss at desk", 20.827853703164501, one),
        exactly("CV-011", "mismatch at desk", 0.036041242688252538, one),
        exactly("CV-012", returned_share, 0.82644628099173554, percent)}},
      {"SWR 1.5",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 1.5\n",
       {exactly("CV-013", gamma, 0.2, one), exactly("CV-015", "mismatch at desk", 0.17728766960431587, one),
        exactly("CV-016", returned_share, 4.0, percent),
        remembered("CV-049", "return loss at desk", 13.98, one, 0.005, handbook)}},
      {"SWR 2",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 2\n",
       {exactly("CV-019", "mismatch at desk", 0.51152522447381289, one),
        remembered("CV-051", "return loss at desk", 9.54, one, 0.005, handbook),
        remembered("CV-052", "mismatch at desk", 0.512, one, 0.0005, handbook)}},
      {"SWR 2.5",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 2.5\n",
       {exactly("CV-021", gamma, 0.42857142857142857, one),
        exactly("CV-022", "return loss at desk", 7.3595357058918879, one),
        exactly("CV-023", "mismatch at desk", 0.88136088700551271, one),
        exactly("CV-024", returned_share, 18.36734693877551, percent)}},
      {"SWR 3",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 3\n",
       {exactly("CV-025", gamma, 0.5, one), exactly("CV-026", "return loss at desk", 6.0205999132796239, one),
        remembered("CV-053", "return loss at desk", 6.02, one, 0.005, handbook)}},
      {"SWR 4",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 4\n",
       {exactly("CV-029", gamma, 0.6, one), exactly("CV-030", "return loss at desk", 4.4369749923271273, one),
        exactly("CV-031", "mismatch at desk", 1.9382002601611283, one),
        exactly("CV-032", returned_share, 36.0, percent)}},
      {"SWR 5",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 5\n",
       {exactly("CV-033", gamma, 0.66666666666666667, one),
        exactly("CV-034", "return loss at desk", 3.5218251811136248, one),
        exactly("CV-035", "mismatch at desk", 2.5527250510330607, one),
        exactly("CV-036", returned_share, 44.444444444444444, percent)}},
      {"SWR 10",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 10\n",
       {exactly("CV-037", gamma, 0.81818181818181818, one),
        exactly("CV-040", returned_share, 66.942148760330579, percent)}},
      {"SWR 20",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 20\n",
       {exactly("CV-042", "return loss at desk", 0.86931387562180613, one),
        exactly("CV-043", "mismatch at desk", 7.4134860247589495, one),
        exactly("CV-044", returned_share, 81.859410430839002, percent)}},
      {"SWR 50",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm * 50\n",
       {exactly("CV-045", gamma, 0.9607843137254902, one),
        exactly("CV-046", "return loss at desk", 0.34748192138845409, one),
        exactly("CV-048", returned_share, 92.310649750096117, percent)}},
      {"return loss 3 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-3/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-056", "swr at desk", 5.8480435928053617, one)}},
      {"return loss 6 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-6/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-057", gamma, 0.50118723362727229, one), exactly("CV-058", "swr at desk", 3.0095204750744904, one)}},
      {"return loss 10 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-10/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-059", gamma, 0.31622776601683793, one)}},
      {"return loss 14 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-14/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-061", gamma, 0.19952623149688796, one)}},
      {"return loss 20 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-20/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-063", gamma, 0.1, one)}},
      {"return loss 30 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-30/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-065", gamma, 0.031622776601683793, one)}},
      {"return loss 40 dB",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "set g = 10^(-40/20)\n"
       "load ant at desk : 50 ohm * (1 + g) / (1 - g)\n",
       {exactly("CV-067", gamma, 0.01, one), exactly("CV-068", "swr at desk", 1.0202020202020202, one)}},
      {"lossless half-wave dipole of 73 ohm on a 50 ohm line: reflection efficiency",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 10 m, 50 ohm\n"
       "load ant at feed : 73 ohm\n",
       {printed("DI-100", "mismatch at feed", -0.1546, as_gain, 0.00005, balanis_2_10),
        exactly("DI-100x", "mismatch at feed", -0.15457367094358767, as_gain)}},
  };
}

}  // namespace wattfall::reference
