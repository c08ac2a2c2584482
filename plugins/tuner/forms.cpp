// See forms.hpp. Ranges of 1 to 500 hold the coils and capacitors that a band of a few octaves takes.
#include "forms.hpp"

namespace wattfall::tuner {
namespace {

#define HEAD \
  "box form (in, out) with coil_Q = 200,  # of every coil, at every frequency\n" \
  "    capacitor_Q = 1000,                # of every capacitor, at every frequency\n" \
  "    largest_coil = 30 uH,              # that a coil reaches; the least is 1/500 of it\n" \
  "    largest_capacitor = 1 nF {         # that a capacitor reaches; the least is 1/500 of it\n"
#define COIL(name, place) \
  "  inductor " name " " place " : adjustable largest_coil / 500 to largest_coil, Q coil_Q\n"
#define CAPACITOR(name, place) \
  "  capacitor " name " " place " : adjustable largest_capacitor / 500 to largest_capacitor, Q capacitor_Q\n"

constexpr sdk::TunerForm all[] = {
    {"low-pass L, C at the rig", "l-network", "a capacitor across the source's side, a coil in series",
     HEAD CAPACITOR("C", "at in") COIL("L", "from in to out") "}\n"},
    {"low-pass L, C at the antenna", "l-network", "a coil in series, a capacitor across the load's side",
     HEAD COIL("L", "from in to out") CAPACITOR("C", "at out") "}\n"},
    {"high-pass L, coil at the rig", "l-network", "a coil across the source's side, a capacitor in series",
     HEAD COIL("L", "at in") CAPACITOR("C", "from in to out") "}\n"},
    {"high-pass L, coil at the antenna", "l-network", "a capacitor in series, a coil across the load's side",
     HEAD CAPACITOR("C", "from in to out") COIL("L", "at out") "}\n"},
    {"low-pass pi", "pi", "a coil in series between two capacitors across",
     HEAD CAPACITOR("Cin", "at in") COIL("L", "from in to out") CAPACITOR("Cout", "at out") "}\n"},
    {"high-pass tee", "tee", "a coil across between two capacitors in series",
     HEAD CAPACITOR("Cin", "from in to mid") COIL("L", "from mid to ground") CAPACITOR("Cout", "from mid to out") "}\n"},
};

#undef HEAD
#undef COIL
#undef CAPACITOR

}  // namespace

std::span<const sdk::TunerForm> forms() {
  return all;
}

}  // namespace wattfall::tuner
