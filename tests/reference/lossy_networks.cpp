// L networks of lossy parts, up and down, as designed and retuned, and chains of them: efficiency and what is seen at
// the input. The first-order formula 1 - Q/QL is printed too, and holds within its own tolerance.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* han =
    "Han and Perreault, Analysis and Design of High Efficiency Matching Networks, IEEE Trans. Power Electronics 21(5), "
    "2006, pp. 1484-1491; first-order closed form, from memory; formula eta ~ 1-Q/QL";

}  // namespace

Setups lossy_networks() {
  return {
      {"L network, resistance ratio 2, coil Q 50, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(2 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 2)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 50\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-058", accepted_to_ant, 0.9803921568627451, one)}},
      {"L network, resistance ratio 2, coil Q 100, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(2 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 2)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-059", accepted_to_ant, 0.99, one, 0.0001, han),
        exactly("PT-060", accepted_to_ant, 0.9900990099009901, one)}},
      {"L network, resistance ratio 2, coil Q 200, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(2 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 2)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-061", accepted_to_ant, 0.99502487562189055, one)}},
      {"L network, resistance ratio 4, coil Q 50, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(4 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 4)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 50\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-062", accepted_to_ant, 0.96651880641632204, one)}},
      {"L network, resistance ratio 4, coil Q 100, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(4 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 4)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-063", accepted_to_ant, 0.982679491924, one, 0.0003, han),
        exactly("PT-064", accepted_to_ant, 0.9829743842395831, one)}},
      {"L network, resistance ratio 4, coil Q 200, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(4 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 4)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-065", accepted_to_ant, 0.9914141020198071, one)}},
      {"L network, resistance ratio 10, coil Q 50, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(10 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 10)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 50\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-066", accepted_to_ant, 0.94339622641509434, one)}},
      {"L network, resistance ratio 10, coil Q 100, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(10 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 10)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-067", accepted_to_ant, 0.97, one, 0.0009, han),
        exactly("PT-068", accepted_to_ant, 0.97087378640776699, one)}},
      {"L network, resistance ratio 10, coil Q 200, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(10 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 10)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-069", accepted_to_ant, 0.98522167487684729, one)}},
      {"L network, resistance ratio 26, coil Q 50, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(26 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 26)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 50\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-070", accepted_to_ant, 0.90909090909090909, one)}},
      {"L network, resistance ratio 26, coil Q 100, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(26 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 26)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-071", accepted_to_ant, 0.95, one, 0.0025, han),
        exactly("PT-072", accepted_to_ant, 0.95238095238095238, one)}},
      {"L network, resistance ratio 26, coil Q 200, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(26 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 26)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-073", accepted_to_ant, 0.97560975609756098, one)}},
      {"L network, resistance ratio 50, coil Q 50, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(50 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 50)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 50\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-074", accepted_to_ant, 0.87719298245614035, one)}},
      {"L network, resistance ratio 50, coil Q 100, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(50 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 50)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {remembered("PT-075", accepted_to_ant, 0.93, one, 0.0049, han),
        exactly("PT-076", accepted_to_ant, 0.93457943925233645, one)}},
      {"L network, resistance ratio 100, coil Q 50, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(100 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 100)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 50\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-078", accepted_to_ant, 0.83403010472581842, one)}},
      {"L network, resistance ratio 100, coil Q 100, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(100 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 100)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-080", accepted_to_ant, 0.90950535934687204, one)}},
      {"L network, resistance ratio 100, coil Q 200, coil in series with the low resistance",
       "7.1 MHz",
       "set q = sqrt(100 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 10 ohm * 100)\n"
       "inductor L from desk to feed : q * 10 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-081", accepted_to_ant, 0.95260833377075161, one)}},
      {"50 ohm down to 12.5 ohm, shunt C and series L, coil Q 100, capacitor Q 500, as designed lossless",
       "7.1 MHz",
       "set q = sqrt(50/12.5 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 50 ohm), Q 500\n"
       "inductor L from desk to feed : q * 12.5 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 12.5 ohm\n",
       {exactly("PT-084", "reactance at desk", -0.731801761135358, one)}},
      {"50 ohm down to 12.5 ohm, shunt C and series L, coil Q 100, capacitor Q 500, retuned to 50 ohm: both values",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 29.236449462833821 ohm), Q 500\n"
       "inductor L from desk to feed : 21.82524228224553 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 12.5 ohm\n",
       {exactly("PT-088", accepted_to_ant, 0.9794777542747681, one),
        exactly_within("PT-086", "reactance at desk", 0, one, 8.5532e-8)}},
      {"50 ohm down to 12.5 ohm, shunt C and series L, coil Q 100, capacitor Q 500, retuned; the value of C as given",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 29.236449462833821 ohm), Q 500\n"
       "inductor L from desk to feed : 21.82524228224553 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 12.5 ohm\n",
       {exactly_within("PT-087", "swr at desk", 1, one, 1.7104e-9)}},
      {"50 ohm down to 5 ohm, shunt C and series L, coil Q 100, capacitor Q 1000, as designed lossless",
       "7.1 MHz",
       "set q = sqrt(50/5 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 50 ohm), Q 1000\n"
       "inductor L from desk to feed : q * 5 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 5 ohm\n",
       {exactly("PT-089", accepted_to_ant, 0.96803709282101506, one)}},
      {"50 ohm down to 5 ohm, shunt C and series L, coil Q 100, capacitor Q 1000, retuned to 50 ohm: both values",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 16.969357810625857 ohm), Q 1000\n"
       "inductor L from desk to feed : 15.22591471051425 ohm / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 5 ohm\n",
       {exactly("PT-095", accepted_to_ant, 0.96758867034696199, one),
        exactly_within("PT-093", "reactance at desk", 0, one, 1.4737e-7)}},
      {"50 ohm down to 2.5 ohm, shunt C and series L, coil Q 200, capacitor Q 1000, as designed lossless",
       "7.1 MHz",
       "set q = sqrt(50/2.5 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 50 ohm), Q 1000\n"
       "inductor L from desk to feed : q * 2.5 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 2.5 ohm\n",
       {exactly("PT-097", "resistance at desk", 48.828281485170287, one),
        exactly("PT-098", "reactance at desk", -0.456760049640417, one)}},
      {"50 ohm down to 2.5 ohm, shunt C and series L, coil Q 200, capacitor Q 1000, retuned to 50 ohm: both values",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 11.627094695504128 ohm), Q 1000\n"
       "inductor L from desk to feed : 11.035475119590892 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 2.5 ohm\n",
       {exactly("PT-102", accepted_to_ant, 0.9741982233862513, one),
        exactly_within("PT-100", "reactance at desk", 0, one, 2.1511e-7)}},
      {"50 ohm down to 2.5 ohm, shunt C and series L, coil Q 200, capacitor Q 1000, retuned; the value of C as given",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 11.627094695504128 ohm), Q 1000\n"
       "inductor L from desk to feed : 11.035475119590892 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 2.5 ohm\n",
       {exactly_within("PT-101", "swr at desk", 1, one, 4.3014e-9)}},
      {"50 ohm down to 1 ohm, shunt C and series L, coil Q 200, capacitor Q 2000, as designed lossless",
       "7.1 MHz",
       "set q = sqrt(50/1 - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : q / (2*pi*7.1 MHz * 50 ohm), Q 2000\n"
       "inductor L from desk to feed : q * 1 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 1 ohm\n",
       {exactly("PT-103", accepted_to_ant, 0.96292267689169094, one),
        exactly("PT-105", "reactance at desk", -0.46282326485667439, one)}},
      {"50 ohm down to 1 ohm, shunt C and series L, coil Q 200, capacitor Q 2000, retuned to 50 ohm: both values",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 7.2840200048459212 ohm), Q 2000\n"
       "inductor L from desk to feed : 7.13366304775771 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 1 ohm\n",
       {exactly("PT-109", accepted_to_ant, 0.96224613179713058, one),
        exactly_within("PT-107", "reactance at desk", 0, one, 3.4324e-7)}},
      {"50 ohm down to 1 ohm, shunt C and series L, coil Q 200, capacitor Q 2000, retuned; the value of C as given",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C at desk : 1 / (2*pi*7.1 MHz * 7.2840200048459212 ohm), Q 2000\n"
       "inductor L from desk to feed : 7.13366304775771 ohm / (2*pi*7.1 MHz), Q 200\n"
       "load ant at feed : 1 ohm\n",
       {exactly_within("PT-108", "swr at desk", 1, one, 6.8643e-9)}},
      {"ratio 50 in 3 L sections of equal ratio, coil Q 100, each made for a resistive load",
       "7.1 MHz",
       "set step = 50^(1/3)\n"
       "set q = sqrt(step - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C0 at desk : q / (2*pi*7.1 MHz * 10 ohm * step^3)\n"
       "inductor L0 from desk to n1 : q * 10 ohm * step^2 / (2*pi*7.1 MHz), Q 100\n"
       "capacitor C1 at n1 : q / (2*pi*7.1 MHz * 10 ohm * step^2)\n"
       "inductor L1 from n1 to n2 : q * 10 ohm * step^1 / (2*pi*7.1 MHz), Q 100\n"
       "capacitor C2 at n2 : q / (2*pi*7.1 MHz * 10 ohm * step^1)\n"
       "inductor L2 from n2 to feed : q * 10 ohm * step^0 / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-112", accepted_to_ant, 0.95241846052649574, one)}},
      {"ratio 50 in 4 L sections of equal ratio, coil Q 100, each made for a resistive load",
       "7.1 MHz",
       "set step = 50^(1/4)\n"
       "set q = sqrt(step - 1)\n"
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor C0 at desk : q / (2*pi*7.1 MHz * 10 ohm * step^4)\n"
       "inductor L0 from desk to n1 : q * 10 ohm * step^3 / (2*pi*7.1 MHz), Q 100\n"
       "capacitor C1 at n1 : q / (2*pi*7.1 MHz * 10 ohm * step^3)\n"
       "inductor L1 from n1 to n2 : q * 10 ohm * step^2 / (2*pi*7.1 MHz), Q 100\n"
       "capacitor C2 at n2 : q / (2*pi*7.1 MHz * 10 ohm * step^2)\n"
       "inductor L2 from n2 to n3 : q * 10 ohm * step^1 / (2*pi*7.1 MHz), Q 100\n"
       "capacitor C3 at n3 : q / (2*pi*7.1 MHz * 10 ohm * step^1)\n"
       "inductor L3 from n3 to feed : q * 10 ohm * step^0 / (2*pi*7.1 MHz), Q 100\n"
       "load ant at feed : 10 ohm\n",
       {exactly("PT-113", accepted_to_ant, 0.95009418285627158, one)}},
  };
}

}  // namespace wattfall::reference
