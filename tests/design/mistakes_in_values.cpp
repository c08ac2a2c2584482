#include <catch2/catch.hpp>

#include "mistakes.hpp"

using namespace design_tests;

// Lines are counted in the text shown, which stands below the lines of `with_frame` unless it is whole.
TEST_CASE("mistakes in values are shown where they are") {
  const Mistake mistakes[] = {
      {"capacitor C at desk : 2 m + 3 pF", {{"dimension-mismatch", 1, 27, "+"}}},
      {"capacitor C at desk : 100", {{"missing-unit", 1, 23, "100"}}},
      {"set c = 3 + j2 ohm\n"
       "capacitor C at desk : 1 / (2 * pi * 7 MHz * c)",
       {{"complex-value", 2, 23, "1 / (2 * pi * 7 MHz * c)"}}},
      {"capacitor C at desk : cc", {{"unknown-quantity", 1, 23, "cc"}}},
      {"set cap = 10 pF\n"
       "capacitor C at desk : cab\n"
       "resistor R at desk : 1 ohm, capacitance cab",
       {{"unknown-quantity", 2, 23, "cab"}}},
      {"set a = b\n"
       "set b = c + 1 pF\n"
       "set c = a\n"
       "capacitor C at desk : a",
       {{"quantity-loop", 1, 5, "a"}}},
      {"set a = 1 ohm / 0", {{"division-by-zero", 1, 15, "/"}}},
      {"set a = sqrt(2 m)", {{"dimension-mismatch", 1, 9, "sqrt(2 m)"}}},
      {"set a = sqrt(-2)", {{"bad-argument", 1, 9, "sqrt(-2)"}}},
      {"set a = ln(0)", {{"bad-argument", 1, 9, "ln(0)"}}},
      {"set a = ln(3 m)", {{"dimension-mismatch", 1, 9, "ln(3 m)"}}},
      {"set a = sin(3 m)", {{"dimension-mismatch", 1, 9, "sin(3 m)"}}},
      {"set a = exp(1000)", {{"not-finite", 1, 9, "exp(1000)"}}},
      {"set a = min(1 m, 2)", {{"dimension-mismatch", 1, 9, "min(1 m, 2)"}}},
      {"set a = max(1+j1 ohm, 2 ohm)", {{"complex-value", 1, 9, "max(1+j1 ohm, 2 ohm)"}}},
      {"set a = sqrt(1, 2)", {{"wrong-argument-count", 1, 9, "sqrt(1, 2)"}}},
      {"set a = foo(1)", {{"unknown-function", 1, 9, "foo(1)"}}},
      {"set a = sqr(4)", {{"unknown-function", 1, 9, "sqr(4)"}}},
      {"set a = 2 ^ (3 m)", {{"bad-exponent", 1, 11, "^"}}},
      {"set a = (2 m) ^ 0.5", {{"bad-exponent", 1, 15, "^"}}},
      {"set a = (2 m) ^ frequency", {{"bad-exponent", 1, 15, "^"}}},
      {"set a = (-2) ^ 0.5", {{"bad-argument", 1, 14, "^"}}},
      {"set a = (1 m) ^ 50 * (1 m) ^ 60", {{"dimension-too-large", 1, 20, "*"}}},
      {"set a = \"x\"", {{"not-a-value", 1, 9, "\"x\""}}},
      {"set a = [1, 2]", {{"not-a-value", 1, 9, "[1, 2]"}}},
      {"set a = 1:2", {{"not-a-value", 1, 9, "1:2"}}},
      {"set pi = 3", {{"reserved-name", 1, 5, "pi"}}},
      {"set sqrt = 3", {{"reserved-name", 1, 5, "sqrt"}}},
      {"set a = 1\n"
       "set a = 2",
       {{"repeated-name", 2, 5, "a"}}},
      {"set a = 1 dB + 1", {{"dimension-mismatch", 1, 14, "+"}}},
      {"inductor L at desk : 1 uH, Q 200 at 7", {{"missing-unit", 1, 37, "7"}}},
      {"capacitor C at desk : 3+j4 pF", {{"complex-value", 1, 23, "3+j4 pF"}}},
      {"capacitor C at desk : frequency * 1 pF / 1 MHz, adjustable 1 pF to 2 pF",
       {{"varying-value", 1, 23, "frequency * 1 pF / 1 MHz"}}},
      {"capacitor C at desk : 100 pF, limit 5", {{"missing-unit", 1, 37, "5"}}},
      {"line a from desk to feed : 24 of RG-58", {{"missing-unit", 1, 28, "24"}}},
      {"line a from desk to feed : run of RG-58", {{"unknown-quantity", 1, 28, "run"}}},
      {"pad p from desk to feed : 10", {{"missing-unit", 1, 27, "10"}}},
      {"pad p from desk to feed : 3 dB, 50+j3 ohm", {{"complex-value", 1, 33, "50+j3 ohm"}}},
      {"set c = 1 pF, tolerance 5 %", {{"unknown-property", 1, 15, "tolerance 5 %"}}},
      {"set c = 1 pF, adjustable 5 pF to 7 pF", {{"start-outside-range", 1, 9, "1 pF"}}},
      {"set c = adjustable 5 pF", {{"bad-adjustable", 1, 20, "5 pF"}}},
      {"set c = adjustable [5 pF, 3 m]", {{"wrong-dimension", 1, 27, "3 m"}}},
      {"set x = 2\n"
       "resistor r at desk : x ohm",
       {{"stray-unit", 2, 24, "ohm"}}},
      {"inductor L at feed : (Q)", {{"unknown-quantity", 1, 23, "Q"}}},
      {"set Q = 1 uH\n"
       "inductor L at feed : (Q)\n"
       "inductor M at feed : 1 uH, Q (200)\n"
       "inductor N at feed : Q",
       {{"missing-value", 4, 10, "N"}, {"missing-value", 4, 22, "Q"}}},
      {"set a = 1 m * (2 m) ^ 100", {{"dimension-too-large", 1, 13, "*"}}},
      {"set a = (1 m) ^ -101", {{"bad-exponent", 1, 15, "^"}}},
      {"set a = (0 m) ^ -1", {{"division-by-zero", 1, 15, "^"}}},
      {"set a = 1e308 * 1e308", {{"not-finite", 1, 15, "*"}}},
      {"set a = abs()", {{"wrong-argument-count", 1, 9, "abs()"}}},
      {"set q = frequency / 1 MHz\n"
       "set r = sqrt(q) + 1 m",
       {{"dimension-mismatch", 2, 17, "+"}}},
      {"line a from desk to feed : 10 m of RG-58, adjustable 5 m to frequency * 1 m / 1 MHz",
       {{"varying-value", 1, 61, "frequency"}}},
      {"transformer t from desk to feed : turns 1:2, winding 3", {{"missing-unit", 1, 54, "3"}}},
  };
  for (const Mistake& mistake : mistakes) check(mistake);
}
