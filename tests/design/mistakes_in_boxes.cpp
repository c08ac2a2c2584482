#include <catch2/catch.hpp>

#include "mistakes.hpp"

using namespace design_tests;

// Lines are counted in the text shown, which stands below the lines of `with_frame` unless it is whole.
TEST_CASE("mistakes in boxes, variants and includes are shown where they are") {
  const Mistake mistakes[] = {
      {"box tee (in, out) with c = 1 pF {\n"
       "  capacitor C from in to out : c\n"
       "}\n"
       "tee t from desk to feed to ant\n"
       "tee u from desk to feed : c 2 m\n"
       "tee v from desk to feed : d 2 pF\n"
       "tee w from desk to feed : c\n"
       "tee x from desk to feed : 2 pF\n"
       "tee y from desk to feed : c 2 pF, c 3 pF\n"
       "tee z at desk",
       {{"port-count", 4, 7, "from desk to feed to ant"},
        {"wrong-dimension", 5, 29, "2 m"},
        {"unknown-property", 6, 27, "d"},
        {"missing-value", 7, 27, "c"},
        {"value-without-name", 8, 27, "2 pF"},
        {"repeated-property", 9, 35, "c 3 pF"},
        {"port-count", 10, 7, "at desk"}}},
      {"box capacitor (in) {\n"
       "  resistor r at in : 1 ohm\n"
       "}",
       {{"reserved-name", 1, 5, "capacitor"}}},
      {"box a (in) {\n"
       "  b x at in\n"
       "}\n"
       "box b (in) {\n"
       "  a x at in\n"
       "}\n"
       "a y at desk",
       {{"box-loop", 5, 3, "a"}}},
      {"box a (in, in) with c = 1, c = 2 {\n"
       "  resistor r at in : 1 ohm\n"
       "}",
       {{"repeated-name", 1, 12, "in"}, {"repeated-name", 1, 28, "c"}}},
      {"box a (ground) with pi = 1 {\n"
       "  resistor r at ground : 1 ohm\n"
       "}",
       {{"reserved-name", 1, 8, "ground"}, {"reserved-name", 1, 21, "pi"}}},
      {"box a (in) {\n"
       "  resistor r at in : 1 ohm\n"
       "}\n"
       "box a (out) {\n"
       "  resistor r at out : 1 ohm\n"
       "}",
       {{"repeated-name", 4, 5, "a"}}},
      {"box a (in) {\n"
       "  resistor r at in : 1 ohm\n"
       "  resistor r at in : 1 ohm\n"
       "}\n"
       "a x at desk",
       {{"repeated-name", 3, 12, "r"}}},
      {"box a (in) {\n"
       "  capacitor C at in : c\n"
       "}\n"
       "a x at desk",
       {{"unknown-quantity", 2, 23, "c"}}},
      {"box a (in) with c = c {\n"
       "  capacitor C at in : c\n"
       "}\n"
       "a x at desk",
       {{"quantity-loop", 1, 17, "c"}}},
      {"variant \"a\" {\n"
       "  source rig at desk : 50 W\n"
       "  load ant at desk : 50 ohm\n"
       "}\n"
       "variant \"b\" {\n"
       "  load ant at desk : 50 ohm\n"
       "}\n"
       "variant \"a\" {\n"
       "  load ant at desk : 50 ohm\n"
       "}\n"
       "sweep at [7 MHz]",
       {{"no-source", 5, 9, "\"b\""}, {"repeated-name", 8, 9, "\"a\""}},
       true},
      {"include \"nothing.feed\"\n"
       "include \"../test_example.cpp\"",
       {{"file-not-found", 1, 9, "\"nothing.feed\""}, {"file-outside", 2, 9, "\"../test_example.cpp\""}}},
      {"source rig at desk : 50 W\n"
       "load ant at desk : 50 ohm\n"
       "box a (in) {\n"
       "  resistor r at in : 1 ohm\n"
       "  resistor s at in : 1 ohm\n"
       "}\n"
       "a x at desk\n"
       "require swr at desk into x below 2\n"
       "require swr at desk into x.r below 2\n"
       "require heat in x below 2 W\n"
       "require loss in x below 2 dB\n"
       "require swr on x below 2\n"
       "require heat in x.q below 1 W\n"
       "sweep at [7 MHz]",
       {{"ambiguous-look", 8, 26, "x"}, {"wrong-kind", 12, 16, "x"}, {"unknown-part", 13, 17, "x.q"}},
       true},
      {"box b (a) with c = 1 ohm {\n"
       "  resistor R at a : c, tolerance 5 ohm\n"
       "  resistor S at a : c + 1 m\n"
       "}\n"
       "b x at desk : c 3 ohm\n"
       "b y at desk : c 3 ohm",
       {{"dimension-mismatch", 3, 23, "+"}}},
      {"source rig at desk : 1 W\n"
       "load ant at desk : 1 ohm\n"
       "sweep at [7 MHz]\n"
       "variant \"a\" {\n"
       "  change ant : 1 m\n"
       "  change rig : 1 ohm\n"
       "}",
       {{"wrong-dimension", 5, 16, "1 m"}, {"wrong-dimension", 6, 16, "1 ohm"}},
       true},
      {"source rig at desk : 1 W\n"
       "load ant at desk : 1 ohm\n"
       "sweep at [7 MHz]\n"
       "variant \"a\" {\n"
       "  resistr r at here : 1 ohm\n"
       "  require swr at here below 2\n"
       "  require heat in r below 2 W\n"
       "  tune r at 7 MHz for most efficiency\n"
       "}",
       {{"unknown-kind", 5, 3, "resistr"}},
       true},
      {"source rig at desk : 1 W\n"
       "load ant at desk : 1 ohm\n"
       "sweep at [7 MHz]\n"
       "box b (a) {\n"
       "  resistor r at a : 1 ohm\n"
       "}\n"
       "b x from desk to desk\n"
       "require heat in x.r below 1 W\n"
       "require heat in x below 1 W\n"
       "tune x.r at 7 MHz for most efficiency",
       {{"port-count", 7, 5, "from desk to desk"}},
       true},
  };
  for (const Mistake& mistake : mistakes) check(mistake);
}
