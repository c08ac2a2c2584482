// The nearest preferred value to a wanted one, as the optimizer chooses it: a capacitor of the series beside a coil
// that wants the value for resonance.
#include "reference.hpp"

namespace wattfall::reference {

Setups preferred_values() {
  return {
      {"E12, nearest to 477.46e-9 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 477.46e-9 F)\n"
       "capacitor C from mid to feed : adjustable series(E12, from 5.96825e-8 F, to 3.81968e-6 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-159", knob_value, 4.7e-7, one)}},
      {"E24, nearest to 477.46e-9 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 477.46e-9 F)\n"
       "capacitor C from mid to feed : adjustable series(E24, from 5.96825e-8 F, to 3.81968e-6 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-160", knob_value, 4.7e-7, one)}},
      {"E96, nearest to 477.46e-9 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 477.46e-9 F)\n"
       "capacitor C from mid to feed : adjustable series(E96, from 5.96825e-8 F, to 3.81968e-6 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-161", knob_value, 4.75e-7, one)}},
      {"E6, nearest to 4.775e-12 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 4.775e-12 F)\n"
       "capacitor C from mid to feed : adjustable series(E6, from 5.96875e-13 F, to 3.82e-11 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-162", knob_value, 4.7e-12, one)}},
      {"E24, nearest to 4.775e-12 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 4.775e-12 F)\n"
       "capacitor C from mid to feed : adjustable series(E24, from 5.96875e-13 F, to 3.82e-11 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-164", knob_value, 4.7e-12, one)}},
      {"E96, nearest to 4.775e-12 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 4.775e-12 F)\n"
       "capacitor C from mid to feed : adjustable series(E96, from 5.96875e-13 F, to 3.82e-11 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-165", knob_value, 4.75e-12, one)}},
      {"E12, nearest to 1.27e-9 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 1.27e-9 F)\n"
       "capacitor C from mid to feed : adjustable series(E12, from 1.5875e-10 F, to 1.016e-8 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-167", knob_value, 1.2e-9, one)}},
      {"E6, nearest to 285e-12 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 285e-12 F)\n"
       "capacitor C from mid to feed : adjustable series(E6, from 3.5625e-11 F, to 2.28e-9 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-170", knob_value, 3.3e-10, one)}},
      {"E24, nearest to 285e-12 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 285e-12 F)\n"
       "capacitor C from mid to feed : adjustable series(E24, from 3.5625e-11 F, to 2.28e-9 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-172", knob_value, 3.0e-10, one)}},
      {"E96, nearest to 285e-12 F",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor L from desk to mid : 1 / ((2*pi*7 MHz)^2 * 285e-12 F)\n"
       "capacitor C from mid to feed : adjustable series(E96, from 3.5625e-11 F, to 2.28e-9 F)\n"
       "load ant at feed : 50 ohm\n"
       "tune C at 7 MHz for least swr at desk\n",
       {exactly("CV-173", knob_value, 2.87e-10, one)}},
  };
}

}  // namespace wattfall::reference
