// Outside figures for pairs of coupled coils: the rows that give their constants. Those that load them are held by the
// solver's own tables (tests/reference).
#include "outside.hpp"
#include "physics/coupling.hpp"

namespace wattfall::physics {
namespace {

constexpr const char* bird_electrical_circuit_theory =
    "Bird, Electrical Circuit Theory and Technology, chapter 43 problem 3 p.844";
constexpr const char* independently = "independent 40-digit computation";
constexpr const char* bird_electrical_circuit_theory_2 =
    "Bird, Electrical Circuit Theory and Technology, chapter 43 problem 4 p.845";
constexpr const char* bird_electrical_circuit_theory_3 =
    "Bird, Electrical Circuit Theory and Technology, chapter 43 problem 5 p.846";

}  // namespace

Topic couplings() {
  return {"Transformers",
          {
              {"XF-012", "La=250 mH, Lb=400 mH, M=80 mH", "k", coupling_factor(80e-3, 250e-3, 400e-3), 0.253, 0.0005,
               bird_electrical_circuit_theory, published},
              {"XF-012x", "La=250 mH, Lb=400 mH, M=80 mH", "k", coupling_factor(80e-3, 250e-3, 400e-3),
               0.25298221281347035, 2.53e-10, independently, computed},
              {"XF-013", "Lx=80 mH, Ly=60 mH, M=62.5 mH", "k", coupling_factor(62.5e-3, 80e-3, 60e-3), 0.902, 0.0005,
               bird_electrical_circuit_theory_2, published},
              {"XF-013x", "Lx=80 mH, Ly=60 mH, M=62.5 mH", "k", coupling_factor(62.5e-3, 80e-3, 60e-3),
               0.90210979560879026, 9.021e-10, independently, computed},
              {"XF-014", "La=40 mH, Lb=10 mH, series aiding 60 mH", "M [mH]",
               1e3 * mutual_from_series_aiding_h(60e-3, 40e-3, 10e-3), 5, 1.0e-9, bird_electrical_circuit_theory_3,
               published},
              {"XF-014x", "La=40 mH, Lb=10 mH, series aiding 60 mH", "M [mH]",
               1e3 * mutual_from_series_aiding_h(60e-3, 40e-3, 10e-3), 5.0, 5.0e-9, independently, computed},
              {"XF-015", "La=40 mH, Lb=10 mH, M=5 mH", "k", coupling_factor(5e-3, 40e-3, 10e-3), 0.25, 1.0e-9,
               bird_electrical_circuit_theory_3, published},
              {"XF-015x", "La=40 mH, Lb=10 mH, M=5 mH", "k", coupling_factor(5e-3, 40e-3, 10e-3), 0.25, 2.5e-10,
               independently, computed},
              {"XF-056",
               "coupled coils L1=5.0e-6 H, L2=2.0e-5 H, k=0.99, series R1=0.0, R2=0.0 ohm, ZL=200.0+0j ohm, f=3.6 MHz",
               "mutual inductance [uH]", 1e6 * mutual_from_factor_h(0.99, 5.0e-6, 2.0e-5), 9.9, 9.9e-9, independently,
               computed},
              {"XF-060",
               "coupled coils L1=5.0e-6 H, L2=2.0e-5 H, k=0.99, series R1=0.0, R2=0.0 ohm, ZL=200.0+0j ohm, f=3.6 MHz",
               "leakage inductance L1(1-k^2) [uH]", 1e6 * leakage_inductance_h(0.99, 5.0e-6), 0.0995, 9.95e-11,
               independently, computed},
              {"XF-065",
               "coupled coils L1=2.0e-6 H, L2=8.0e-6 H, k=0.9, series R1=0.2, R2=0.8 ohm, ZL=200.0+0j ohm, f=7.1 MHz",
               "leakage inductance L1(1-k^2) [uH]", 1e6 * leakage_inductance_h(0.9, 2.0e-6), 0.38, 3.8e-10,
               independently, computed},
              {"XF-066",
               "coupled coils L1=1.0e-6 H, L2=2.5e-5 H, k=0.5, series R1=0.3, R2=4.0 ohm, ZL=50.0-300j ohm, f=14.2 MHz",
               "mutual inductance [uH]", 1e6 * mutual_from_factor_h(0.5, 1.0e-6, 2.5e-5), 2.5, 2.5e-9, independently,
               computed},
              {"XF-070",
               "coupled coils L1=1.0e-6 H, L2=2.5e-5 H, k=0.5, series R1=0.3, R2=4.0 ohm, ZL=50.0-300j ohm, f=14.2 MHz",
               "leakage inductance L1(1-k^2) [uH]", 1e6 * leakage_inductance_h(0.5, 1.0e-6), 0.75, 7.5e-10,
               independently, computed},
              {"XF-071",
               "coupled coils L1=1.0e-5 H, L2=1.0e-5 H, k=1.0, series R1=0.0, R2=0.0 ohm, ZL=50.0+0j ohm, f=1.85 MHz",
               "mutual inductance [uH]", 1e6 * mutual_from_factor_h(1.0, 1.0e-5, 1.0e-5), 10.0, 1.0e-8, independently,
               computed},
              {"XF-075",
               "coupled coils L1=1.0e-5 H, L2=1.0e-5 H, k=1.0, series R1=0.0, R2=0.0 ohm, ZL=50.0+0j ohm, f=1.85 MHz",
               "leakage inductance L1(1-k^2) [uH]", 1e6 * leakage_inductance_h(1.0, 1.0e-5), 0.0, 1.0e-12,
               independently, computed},
              {"XF-076",
               "coupled coils L1=3.0e-6 H, L2=3.0e-6 H, k=0.1, series R1=1.0, R2=1.0 ohm, ZL=10.0+0j ohm, f=14 MHz",
               "mutual inductance [uH]", 1e6 * mutual_from_factor_h(0.1, 3.0e-6, 3.0e-6), 0.3, 3.0e-10, independently,
               computed},
              {"XF-080",
               "coupled coils L1=3.0e-6 H, L2=3.0e-6 H, k=0.1, series R1=1.0, R2=1.0 ohm, ZL=10.0+0j ohm, f=14 MHz",
               "leakage inductance L1(1-k^2) [uH]", 1e6 * leakage_inductance_h(0.1, 3.0e-6), 2.97, 2.97e-9,
               independently, computed},
          }};
}

}  // namespace wattfall::physics
