// Powers in dBm and W, the volts and amps that they are in 50 ohm, ratios in dB, and the S meter's scale. A ratio is
// that of the power available to the power radiated by a load that radiates the rest's share.
#include "reference.hpp"

namespace wattfall::reference {
namespace {

constexpr const char* bird_41_1 = "Bird, chapter 41 problem 1 p.763, figures as printed by a textbook companion";
constexpr const char* bird_41_1_b =
    "Bird, chapter 41 problem 1 p.763, figures as printed by a textbook companion, (uses 2.303 for ln 10)";
constexpr const char* table = "table in an open encyclopedia, \"S meter\"";

}  // namespace

Setups levels() {
  return {
      {"-120 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : -120 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-069", available_watts, 1.0e-15, one)}},
      {"-73 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : -73 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-074", ant_volts, 0.000050059326485045336, one)}},
      {"10 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 10 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-079", available_watts, 0.01, one)}},
      {"20 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 20 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-081", available_watts, 0.1, one), exactly("CV-082", ant_volts, 2.2360679774997897, one)}},
      {"30 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 30 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-083", available_watts, 1.0, one), exactly("CV-084", ant_volts, 7.0710678118654752, one)}},
      {"37 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 37 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-085", available_watts, 5.0118723362727229, one)}},
      {"40 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 40 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-087", available_watts, 10.0, one), exactly("CV-088", ant_volts, 22.360679774997897, one)}},
      {"47 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 47 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-089", available_watts, 50.118723362727229, one),
        exactly("CV-090", ant_volts, 50.059326485045336, one)}},
      {"60 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 60 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-093", available_watts, 1000.0, one), exactly("CV-094", ant_volts, 223.60679774997897, one)}},
      {"61.76 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 61.76 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-096", ant_volts, 273.83250679040769, one)}},
      {"5 W in 50 ohm",
       "7 MHz",
       "source rig at desk : 5 W\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-098", "peak volts across ant", 22.360679774997897, one)}},
      {"100 W in 50 ohm",
       "7 MHz",
       "source rig at desk : 100 W\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-101", ant_volts, 70.710678118654752, one)}},
      {"400 W in 50 ohm",
       "7 MHz",
       "source rig at desk : 400 W\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-105", ant_volts, 141.4213562373095, one),
        exactly("CV-107", "rms amps through ant", 2.8284271247461901, one)}},
      {"1500 W in 50 ohm",
       "7 MHz",
       "source rig at desk : 1500 W\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-109", ant_volts, 273.86127875258306, one),
        exactly("CV-110", "peak volts across ant", 387.29833462074169, one),
        exactly("CV-111", "rms amps through ant", 5.4772255750516611, one)}},
      {"0 dBm in 50 ohm",
       "7 MHz",
       "source rig at desk : 0 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-113", ant_microvolts_db, 106.98970004336019, one)}},
      {"1500 W, by the level as given",
       "7 MHz",
       "source rig at desk : 61.760912590556812 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly_within("CV-112", available_watts, 1500, one, 2.1331e-5)}},
      {"power ratio 2",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm, radiates 1/2\n",
       {printed("CV-114", "total loss", 3.01, one, 0.005, bird_41_1),
        exactly("CV-114x", "total loss", 3.010299956639812, one)}},
      {"power ratio 25",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm, radiates 1/25\n",
       {printed("CV-115", "total loss", 13.98, one, 0.005, bird_41_1),
        exactly("CV-115x", "total loss", 13.979400086720376, one)}},
      {"power ratio 1000",
       "7 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50 ohm, radiates 1/1000\n",
       {printed("CV-116", "total loss", 29.99, one, 0.011, bird_41_1_b), exactly("CV-116x", "total loss", 30.0, one)}},
      {"S1 below 30 MHz, 50 ohm: -121 dBm",
       "7 MHz",
       "source rig at desk : -121 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-123", ant_volts, 0.19928976826775146, micro),
        printed("CV-148", ant_volts, 0.2, micro, 0.05, table)}},
      {"S2 below 30 MHz, 50 ohm: -115 dBm",
       "7 MHz",
       "source rig at desk : -115 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-125", ant_volts, 0.39763536438352533, micro)}},
      {"S3 below 30 MHz, 50 ohm: -109 dBm",
       "7 MHz",
       "source rig at desk : -109 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-127", ant_volts, 0.79338685765336673, micro),
        printed("CV-146", ant_volts, 0.8, micro, 0.05, table)}},
      {"S4 below 30 MHz, 50 ohm: -103 dBm",
       "7 MHz",
       "source rig at desk : -103 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-129", ant_volts, 1.5830148982673415, micro),
        printed("CV-145", ant_volts, 1.6, micro, 0.05, table)}},
      {"S5 below 30 MHz, 50 ohm: -97 dBm",
       "7 MHz",
       "source rig at desk : -97 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-131", ant_volts, 3.1585299705471212, micro),
        printed("CV-144", ant_volts, 3.2, micro, 0.05, table)}},
      {"S6 below 30 MHz, 50 ohm: -91 dBm",
       "7 MHz",
       "source rig at desk : -91 dBm\n"
       "load ant at desk : 50 ohm\n",
       {printed("CV-143", ant_volts, 6.3, micro, 0.05, table)}},
      {"S7 below 30 MHz, 50 ohm: -85 dBm",
       "7 MHz",
       "source rig at desk : -85 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-135", ant_volts, 12.574334296829354, micro)}},
      {"S8 below 30 MHz, 50 ohm: -79 dBm",
       "7 MHz",
       "source rig at desk : -79 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-137", ant_volts, 25.089095358284316, micro),
        printed("CV-141", ant_volts, 25.1, micro, 0.05, table)}},
      {"S9 below 30 MHz, 50 ohm: -73 dBm",
       "7 MHz",
       "source rig at desk : -73 dBm\n"
       "load ant at desk : 50 ohm\n",
       {exactly("CV-139", ant_volts, 50.059326485045336, micro),
        printed("CV-140", ant_volts, 50.2, micro, 0.15, table)}},
  };
}

}  // namespace wattfall::reference
