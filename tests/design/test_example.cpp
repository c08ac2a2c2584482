#include <catch2/catch.hpp>

#include "bench_design.hpp"

using namespace design_tests;

namespace {

const char* const example = R"(design "40 m doublet at the lake cabin"

set run = 24 m                                   # a named quantity

source    rig   at desk : 100 W, 50 ohm
load      wires at feed : measured "lake-doublet.s1p", radiates 92 %

box tee (in, out) with c = 120 pF, l = 2 uH {
  capacitor Cin  from in  to mid    : c, adjustable 12 pF to 240 pF, Q 1500, limit 1 kV
  inductor  L    from mid to ground : l, adjustable 0.1 uH to 18 uH, Q 200 at 7 MHz
  capacitor Cout from mid to out    : c, adjustable 12 pF to 240 pF, Q 1500, limit 1 kV
}

variant "coupler at the desk" {
  tee  atu  from desk to wall
  line coax from wall to feed : run of RG-213
}
variant "coupler at the mast" {
  line coax from desk to mast : run of RG-213
  tee  atu  from mast to feed : c 100 pF
}

sweep 7.0 MHz to 7.2 MHz step 10 kHz
tune atu.Cin, atu.L, atu.Cout at each frequency for most power into wires, keeping swr at desk below 1.5
require swr at desk below 1.5
require total loss below 2 dB
require peak volts across atu.Cout below 1 kV
)";

}  // namespace

TEST_CASE("the language's example resolves into its two variants") {
  const Resolved resolved = resolve_text(example);
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  REQUIRE(resolved.set.variants.size() == 2);
}
