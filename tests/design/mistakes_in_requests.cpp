#include <catch2/catch.hpp>

#include "mistakes.hpp"

using namespace design_tests;

// Lines are counted in the text shown, which stands below the lines of `with_frame` unless it is whole.
TEST_CASE("mistakes in sweeps, figures and tuning are shown where they are") {
  const Mistake mistakes[] = {
      {"sweep at [frequency]", {{"varying-value", 1, 11, "frequency"}}},
      {"set c = 100 pF, adjustable 10 pF to 300 pF\n"
       "sweep at [1 / (c * 50 ohm)]",
       {{"varying-value", 2, 16, "c"}}},
      {"source rig at desk : 100\n"
       "load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"missing-unit", 1, 22, "100"}},
       true},
      {"source rig at desk : 0 W\n"
       "load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"value-out-of-range", 1, 22, "0 W"}},
       true},
      {"source rig at desk : 100 W, -50 ohm, reference 0 ohm, foldback [3: 100 %, 1.5: 25 %], duty 130 %, limit 1 kV\n"
       "load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"value-out-of-range", 1, 29, "-50 ohm"},
        {"value-out-of-range", 1, 48, "0 ohm"},
        {"falling-table", 1, 75, "1.5"},
        {"value-out-of-range", 1, 92, "130 %"},
        {"unknown-property", 1, 99, "limit"}},
       true},
      {"source rig at desk : 100 W, foldback [0.5: 100 %, 3]\n"
       "load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"value-out-of-range", 1, 39, "0.5"}, {"bad-table", 1, 51, "3"}},
       true},
      {"source rig at desk : 100 W, foldback 3\n"
       "load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"bad-table", 1, 29, "foldback 3"}},
       true},
      {"source rig at desk : 50 ohm\n"
       "load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"wrong-dimension", 1, 22, "50 ohm"}},
       true},
      {"load ant at desk : 50 ohm\n"
       "sweep at [7 MHz]",
       {{"no-source", 1, 1, "load ant at desk : 50 ohm"}},
       true},
      {"band \"40 m\" 7 MHz to 7.2 MHz\n"
       "band \"40 m\" 7 MHz to 7.2 MHz\n"
       "sweep band \"40 mm\", 21 points",
       {{"repeated-name", 2, 6, "\"40 m\""}, {"unknown-band", 3, 12, "\"40 mm\""}}},
      {"band \"x\" 7.2 MHz to 7 MHz\n"
       "sweep band \"x\", 3 points",
       {{"falling-range", 1, 10, "7.2 MHz to 7 MHz"}}},
      {"sweep 7.2 MHz to 7 MHz step 10 kHz", {{"falling-range", 1, 7, "7.2 MHz to 7 MHz"}}},
      {"sweep 7 MHz to 7 MHz step 10 kHz", {{"empty-range", 1, 7, "7 MHz to 7 MHz"}}},
      {"sweep 7 mHz to 7 MHz step 10 kHz", {{"frequency-too-low", 1, 7, "7 mHz"}}},
      {"sweep 7 MHz to 8 MHz step 0 Hz", {{"value-out-of-range", 1, 27, "0 Hz"}}},
      {"sweep 7 MHz to 8 MHz step 10", {{"missing-unit", 1, 27, "10"}}},
      {"sweep 7 MHz to 8 MHz, 1 points", {{"value-out-of-range", 1, 23, "1"}}},
      {"sweep 7 MHz to 8 MHz, 2.5 points", {{"value-out-of-range", 1, 23, "2.5"}}},
      {"sweep 7 MHz to 8 MHz, 2 MHz points", {{"wrong-dimension", 1, 23, "2 MHz"}}},
      {"sweep 7 MHz to 8 MHz step 0.1 Hz", {{"too-many-points", 1, 1, "sweep 7 MHz to 8 MHz step 0.1 Hz"}}},
      {"sweep 7 MHz to 8 MHz, 2000000 points", {{"too-many-points", 1, 1, "sweep 7 MHz to 8 MHz, 2000000 points"}}},
      {"sweep at [0 MHz, -3 MHz, 500 Hz]",
       {{"value-out-of-range", 1, 11, "0 MHz"},
        {"value-out-of-range", 1, 18, "-3 MHz"},
        {"frequency-too-low", 1, 26, "500 Hz"}}},
      {"require swr at desc below 1.5", {{"unknown-node", 1, 16, "desc"}}},
      {"require swr at ground below 1.5", {{"unknown-node", 1, 16, "ground"}}},
      {"require swr at desk below 1.5 V", {{"wrong-dimension", 1, 27, "1.5 V"}}},
      {"require swr at desk below 0.5", {{"value-out-of-range", 1, 27, "0.5"}}},
      {"require swrr at desk below 1.5", {{"unknown-figure", 1, 9, "swrr at"}}},
      {"require peak volts in join below 1.5 V", {{"unknown-figure", 1, 9, "peak volts in"}}},
      {"require loss in ant below 1 dB", {{"wrong-kind", 1, 17, "ant"}}},
      {"require swr on join below 2", {{"wrong-kind", 1, 16, "join"}}},
      {"require radiated from join above 1 W", {{"wrong-kind", 1, 23, "join"}}},
      {"require power into rig above 1 W", {{"wrong-kind", 1, 20, "rig"}}},
      {"require heat in jion below 1 W", {{"unknown-part", 1, 17, "jion"}}},
      {"require heat in join below 1", {{"missing-unit", 1, 28, "1"}}},
      {"require efficiency above 120 %", {{"value-out-of-range", 1, 26, "120 %"}}},
      {"require total loss below 1 W", {{"wrong-dimension", 1, 26, "1 W"}}},
      {"require swr at desk into ant below 2", {{"ambiguous-look", 1, 26, "ant"}}},
      {"require swr at desk into nobody below 2", {{"unknown-part", 1, 26, "nobody"}}},
      {"resistor r2 at feed : 100 ohm\n"
       "require swr at feed below 2",
       {{"ambiguous-look", 2, 16, "feed"}}},
      {"require swr at feed reference -50 ohm below 2", {{"value-out-of-range", 1, 31, "-50 ohm"}}},
      {"require swr at feed reference 50 m below 2", {{"wrong-dimension", 1, 31, "50 m"}}},
      {"require heat in join reference 50 ohm below 2 W", {{"unexpected-words", 1, 32, "50 ohm"}}},
      {"require width of swr at feed below 2 above 200", {{"missing-unit", 1, 44, "200"}}},
      {"require width of swr at feed below 1 above 200 kHz", {{"value-out-of-range", 1, 36, "1"}}},
      {"require swr at feed below 2 over 7.2 MHz to 7 MHz", {{"falling-range", 1, 34, "7.2 MHz to 7 MHz"}}},
      {"require swr at feed below 2 over band \"x\"", {{"unknown-band", 1, 39, "\"x\""}}},
      {"tune join at 7 MHz for most power into ant", {{"not-adjustable", 1, 6, "join"}}},
      {"capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune c at 7 MHz for most power into ant",
       {{"unknown-knob", 2, 6, "c"}}},
      {"capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune C, C at 7 MHz for most power into ant",
       {{"repeated-knob", 2, 9, "C"}}},
      {"capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune C at 7 MHz for most power into ant\n"
       "tune C at each frequency for most power into ant",
       {{"repeated-knob", 3, 6, "C"}}},
      {"capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune C at 7 mHz for most power into aunt",
       {{"frequency-too-low", 2, 11, "7 mHz"}, {"unknown-part", 2, 37, "aunt"}}},
      {"capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune C over 7.2 MHz to 7 MHz for most power into ant, keeping swr at desk below 1 V",
       {{"falling-range", 2, 13, "7.2 MHz to 7 MHz"}, {"wrong-dimension", 2, 81, "1 V"}}},
      {"capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune C at each frequency for most width of swr at desk below 2, keeping width of swr at desk below 3 above 1 "
       "kHz",
       {{"width-at-a-point", 2, 35, "width of swr at desk below 2"},
        {"width-at-a-point", 2, 73, "width of swr at desk below 3"}}},
      {"set C = adjustable 1 pF to 2 pF\n"
       "capacitor C at feed : adjustable 1 pF to 2 pF\n"
       "tune C at 7 MHz for most power into ant",
       {{"ambiguous-knob", 3, 6, "C"}}},
      {"plane p at nowhere\n"
       "plane q at feed into nobody\n"
       "plane p at feed",
       {{"unknown-node", 1, 12, "nowhere"}, {"unknown-part", 2, 22, "nobody"}, {"repeated-name", 3, 7, "p"}}},
      {"require efficiency below 2 V\n"
       "require width of swr at feed below 2 above 2 W",
       {{"wrong-dimension", 1, 26, "2 V"}, {"wrong-dimension", 2, 44, "2 W"}}},
      {"source rig at desk : 1 W\n"
       "load ant at feed : 1 ohm\n"
       "line a from desk to feed : 1 m of RG-58\n"
       "line b from feed to desk : 1 m of RG-58\n"
       "sweep at [7 MHz]\n"
       "resistor r from top to peak : 1 ohm\n"
       "resistor s from top to peak : 1 ohm\n"
       "require swr at top below 2",
       {{"ambiguous-look", 8, 16, "top"}},
       true},
  };
  for (const Mistake& mistake : mistakes) check(mistake);
}
