// Quarter waves, stubs and pads that match. Where a row is a design value the feed is built with it, and the figure is
// what it was designed for: the tolerance is the row's own, times how fast that figure moves with the value.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* sadiku_11_7 =
    "Sadiku, Elements of Electromagnetics, example 11.7 (Smith chart), figures as printed by a textbook companion";
constexpr const char* misra_6_5 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 6.5 p.208, figures as printed by a textbook "
    "companion";
constexpr const char* misra_3_5 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 3.5 p.70, figures as printed by a textbook "
    "companion";
constexpr const char* pozar_2_5 =
    "Pozar, Microwave Engineering, example 2.5, figures as printed by a textbook companion";
constexpr const char* pozar_5_5 =
    "Pozar, Microwave Engineering, example 5.5, figures as printed by a textbook companion";
constexpr const char* misra_7_1 =
    "Misra, Radio-Frequency and Microwave Communication Circuits, example 7.1 p.236, figures as printed by a textbook "
    "companion";

}  // namespace

Setups line_matching() {
  return {
      {"40+j30 ohm on 100 ohm, at 0.0325 wavelengths: the stub is missing",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "line w from desk to feed : 0.032502554189316053 * 360 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 40+j30 ohm\n",
       {printed("TL-031", missing_shunt_siemens, 10.4, milli, 0.25, sadiku_11_7),
        exactly("TL-031x", missing_shunt_siemens, 10.606601717798213, milli)}},
      {"40+j30 ohm on 100 ohm, at 0.3601 wavelengths: the stub is missing",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "line w from desk to feed : 0.36010908954932258 * 360 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 40+j30 ohm\n",
       {printed("TL-034", missing_shunt_siemens, -10.4, milli, 0.25, sadiku_11_7),
        exactly("TL-034x", missing_shunt_siemens, -10.606601717798213, milli)}},
      {"the same; the distance as given brings the conductance to 10 mS",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "line w from desk to feed : 0.36 * 360 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 40+j30 ohm\n",
       {printed("TL-033", input_conductance, 10, milli, 0.66643, sadiku_11_7)}},
      {"the same; the distance as given brings the conductance to 10 mS",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "line w from desk to feed : 0.36010908954932258 * 360 deg at 10 MHz, 100 ohm\n"
       "load ant at feed : 40+j30 ohm\n",
       {exactly_within("TL-033x", input_conductance, 10, milli, 4.7996e-8)}},
      {"the same; the shorted stub as given has the susceptance",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "load ant at desk : 100 ohm\n"
       "stub w at desk : 0.1222 * 360 deg at 10 MHz, 100 ohm, shorted\n",
       {printed("TL-035", input_susceptance, -10.606601717798213, milli, 0.40055, sadiku_11_7)}},
      {"the same; the shorted stub as given has the susceptance",
       "10 MHz",
       "source rig at desk : 100 W, 100 ohm\n"
       "load ant at desk : 100 ohm\n"
       "stub w at desk : 0.1203162684952307 * 360 deg at 10 MHz, 100 ohm, shorted\n",
       {exactly_within("TL-035x", input_susceptance, -10.606601717798213, milli, 1.6062e-8)}},
      {"minimum-loss pad 75 to 50 ohm; the series part is missing: what is seen lacks R1 to 75 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 75 ohm\n"
       "resistor R2 at desk : 75 ohm / sqrt(1 - 50/75) * 50/75\n"
       "load ant at desk : 50 ohm\n",
       {printed("TL-053", short_of_75_ohm, 43.3, one, 0.05, misra_6_5),
        exactly("TL-053x", short_of_75_ohm, 43.301270189221932, one)}},
      {"minimum-loss pad 75 to 50 ohm",
       "10 MHz",
       "source rig at desk : 100 W, 75 ohm\n"
       "resistor R1 from desk to feed : 75 ohm * sqrt(1 - 50/75)\n"
       "resistor R2 at feed : 50 ohm / sqrt(1 - 50/75)\n"
       "load ant at feed : 50 ohm\n",
       {exactly("TL-056", "total loss", 5.719475475333594, one)}},
      {"quarter-wave match 300 to 150 ohm with the section as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 212.132 ohm\n"
       "load ant at feed : 300 ohm\n",
       {printed("TL-074", "resistance at desk", 150, one, 0.00070781, misra_3_5)}},
      {"quarter-wave match 300 to 150 ohm with the section as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 212.13203435596426 ohm\n"
       "load ant at feed : 300 ohm\n",
       {exactly_within("TL-074x", "resistance at desk", 150, one, 3.0025e-7)}},
      {"quarter-wave match 100 to 50 ohm with the section as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 70.71 ohm\n"
       "load ant at feed : 100 ohm\n",
       {printed("TL-078", "resistance at desk", 50, one, 0.0070781, pozar_2_5)}},
      {"quarter-wave match 100 to 50 ohm with the section as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 70.710678118654752 ohm\n"
       "load ant at feed : 100 ohm\n",
       {exactly_within("TL-078x", "resistance at desk", 50, one, 1.001e-7)}},
      {"quarter-wave match 10 to 50 ohm with the section as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 22.36 ohm\n"
       "load ant at feed : 10 ohm\n",
       {printed("TL-081", "resistance at desk", 50, one, 0.022382, pozar_5_5)}},
      {"quarter-wave match 10 to 50 ohm with the section as given",
       "10 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, 22.360679774997897 ohm\n"
       "load ant at feed : 10 ohm\n",
       {exactly_within("TL-081x", "resistance at desk", 50, one, 1.001e-7)}},
      {"quarter-wave section 100 to 50 ohm: the reflection is 0.05 at the edges of the band as given",
       "9.0955165 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, sqrt(100*50) * 1 ohm\n"
       "load ant at feed : 100 ohm\n",
       {printed("TL-083", gamma, 0.05, one, 1.3693e-8, misra_7_1)}},
      {"quarter-wave section 100 to 50 ohm: the reflection is 0.05 at the edges of the band as given",
       "9.0955163224094674 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "line w from desk to feed : 90 deg at 10 MHz, sqrt(100*50) * 1 ohm\n"
       "load ant at feed : 100 ohm\n",
       {exactly_within("TL-083x", gamma, 0.05, one, 4.954e-11)}},
  };
}

}  // namespace wattfall::reference
