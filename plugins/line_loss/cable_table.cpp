// Typical figures of common cables, by military type number or by what they are. Losses are written as the handbooks
// print them, in MHz and dB a hundred feet, and turned into Hz and dB/100m here; limits are written in rms volts and
// turned into peak volts.
#include "cable_table.hpp"

#include <array>

namespace line_loss {
namespace {

using wattfall::sdk::Cable;
using wattfall::sdk::LossPoint;

/// 100 m are 100 / 30.48 times 100 ft (one foot is 0.3048 m by definition).
constexpr LossPoint nominal(double mhz, double db_per_100ft) {
  return {mhz * 1e6, db_per_100ft * 100.0 / 30.48};
}

/// The square root of two: crest of a sine over its rms value.
constexpr double rms_to_peak(double volts_rms) {
  return volts_rms * 1.4142135623730951;
}

constexpr const char* from_memory = "typical nominal value; from memory (W/m too)";
constexpr const char* handbook =
    "typical nominal value; a handbook's table of military RG cables, from memory (W/m from average power ratings, "
    "from memory too)";
/// Two wires in air: half of what the air between them bears in fair weather; the heat that lifts the wires 20 to 30 K
/// above still air. README.md has the sums, tests/plugins repeats them.
constexpr const char* wires_handbook =
    "typical nominal value; a handbook's table, from memory. V: computed, half of what starts a corona on the bare "
    "wires (Peek) in dry air; W/m: computed, wires some 20 K above still air of 40 C. Wet lines and their ends bear less";
constexpr const char* wires_computed =
    "computed: resistance of two 1.63 mm copper wires at 58 MS/m; velocity a typical nominal value, from memory. V: "
    "computed, half of what starts a corona on the bare wires (Peek) in dry air; W/m: computed, wires some 30 K above "
    "still air of 40 C. Wet lines and their ends bear less";

/// Heat that a metre may make [W/m], from memory: a handbook's average power rating P at 100 MHz in still air of 40 C
/// (RG-58 200 W, RG-213 650 W, RG-174 60 W, RG-142 950 W, 1/2 inch hardline 3.5 kW) times 2 alpha, rounded; the other
/// cables after those of their size and dielectric. tests/plugins holds them against what such a jacket gives off.
constexpr double heat_from_memory(double w_per_m) {
  return w_per_m;
}
/// Worked out for two wires in still air, tests/plugins.
constexpr double heat_of_wires(double w_per_m) {
  return w_per_m;
}

// ---- losses: where nothing else is said, a handbook's nominal table, from memory ---------------------------------

// 150, 450 and 850 MHz: radio-repeater training guide, appendix H (published), which has the same 3.30 at 50 MHz.
constexpr LossPoint rg58[] = {nominal(1, 0.42),    nominal(10, 1.4),  nominal(50, 3.3),  nominal(100, 4.9),
                              nominal(150, 6.1),   nominal(200, 7.3), nominal(400, 11.), nominal(450, 11.75),
                              nominal(850, 17.75), nominal(1000, 20.)};
// The same, and the same 1.50 at 50 MHz.
constexpr LossPoint rg213[] = {nominal(1, 0.18),   nominal(10, 0.60), nominal(50, 1.5),  nominal(100, 2.1),
                               nominal(150, 2.7),  nominal(200, 3.0), nominal(400, 4.7), nominal(450, 4.97),
                               nominal(850, 7.53), nominal(1000, 8.2)};
constexpr LossPoint rg8[] = {nominal(1, 0.16),  nominal(10, 0.55), nominal(50, 1.33), nominal(100, 1.9),
                             nominal(200, 2.7), nominal(400, 4.1), nominal(1000, 8.0)};
constexpr LossPoint rg8x[] = {nominal(10, 0.95), nominal(50, 2.2),  nominal(100, 3.2),
                              nominal(200, 4.7), nominal(400, 7.0), nominal(1000, 12.0)};
constexpr LossPoint rg59[] = {nominal(1, 0.34),  nominal(10, 1.1),  nominal(50, 2.4),   nominal(100, 3.4),
                              nominal(200, 4.9), nominal(400, 7.0), nominal(1000, 12.0)};
constexpr LossPoint rg6[] = {nominal(1, 0.2),   nominal(10, 0.6),  nominal(50, 1.4),  nominal(100, 2.0),
                             nominal(200, 2.8), nominal(400, 4.3), nominal(1000, 6.1)};
constexpr LossPoint rg11[] = {nominal(1, 0.21),  nominal(10, 0.66), nominal(50, 1.6),  nominal(100, 2.3),
                              nominal(200, 3.3), nominal(400, 4.9), nominal(1000, 8.0)};
// The handbook's 1.9 at 1 MHz is left out: there the thin conductor is no longer deep against the skin, and no curve of
// this model goes through it; README.md has the figures.
constexpr LossPoint rg174[] = {nominal(10, 3.3),  nominal(50, 6.6),   nominal(100, 8.9),
                               nominal(200, 12.), nominal(400, 17.5), nominal(1000, 31.)};
constexpr LossPoint rg316[] = {nominal(10, 2.7),  nominal(50, 5.7),   nominal(100, 8.3),
                               nominal(200, 12.), nominal(400, 17.3), nominal(1000, 28.5)};
constexpr LossPoint rg223[] = {nominal(10, 1.2),  nominal(50, 3.0),  nominal(100, 4.6),
                               nominal(200, 6.8), nominal(400, 10.), nominal(1000, 16.7)};
constexpr LossPoint rg142[] = {nominal(1, 0.34),  nominal(10, 1.1),  nominal(50, 2.7),   nominal(100, 3.9),
                               nominal(200, 5.6), nominal(400, 8.2), nominal(1000, 13.5)};
constexpr LossPoint rg400[] = {nominal(1, 0.4),   nominal(10, 1.2),  nominal(50, 2.9),   nominal(100, 4.1),
                               nominal(200, 6.0), nominal(400, 8.8), nominal(1000, 14.5)};
constexpr LossPoint rg393[] = {nominal(1, 0.18),  nominal(10, 0.6),  nominal(50, 1.4),  nominal(100, 2.1),
                               nominal(200, 3.1), nominal(400, 4.5), nominal(1000, 7.6)};
constexpr LossPoint semi_rigid_141[] = {nominal(10, 1.1),    nominal(100, 3.5),   nominal(400, 7.2),
                                        nominal(1000, 11.8), nominal(3000, 21.5), nominal(10000, 43.0)};
constexpr LossPoint foam_10mm[] = {nominal(10, 0.4),  nominal(30, 0.7),  nominal(50, 0.9),  nominal(150, 1.5),
                                   nominal(450, 2.7), nominal(900, 3.9), nominal(2000, 6.0)};
constexpr LossPoint hardline_half[] = {nominal(1, 0.066), nominal(10, 0.21), nominal(100, 0.68), nominal(450, 1.51),
                                       nominal(1000, 2.35)};
constexpr LossPoint hardline_seven_eighths[] = {nominal(1, 0.036), nominal(10, 0.115), nominal(100, 0.37),
                                                nominal(450, 0.83), nominal(1000, 1.29)};
constexpr LossPoint ribbon_300[] = {nominal(1, 0.09), nominal(10, 0.30), nominal(50, 0.75), nominal(100, 1.1)};
constexpr LossPoint window_450[] = {nominal(1, 0.02), nominal(10, 0.08), nominal(50, 0.21), nominal(100, 0.30)};
// Conductor loss of two round copper wires, alone: alpha = R / Z0 with R = 1 / (pi d sigma delta) a wire, 58 MS/m, d
// = 1.63 mm, delta = 20.9 um at 10 MHz: 1 / (pi * 1.63e-3 * 58e6 * 20.9e-6) = 0.1611 ohm/m, 0.1611 / 600 Np/m = 0.2332
// dB/100m.
constexpr LossPoint open_600[] = {{10e6, 0.2332}};

constexpr auto cables = std::to_array<Cable>({
    // Velocities: solid polyethylene 0.659, PTFE 0.695 (nominal of MIL-DTL-17, from memory); foams and open lines from
    // memory.
    {"RG-58", 50., 0.659, rg58, std::size(rg58), rms_to_peak(1400), "5 mm, solid polyethylene, stranded (C/U)",
     "typical nominal value; handbook table from memory, 50 to 850 MHz agree with a radio-repeater training guide; "
     "1400 V rms: MIL-C-17G sheet as quoted; W/m from memory",
     heat_from_memory(7.)},
    {"RG-213", 50., 0.659, rg213, std::size(rg213), rms_to_peak(3700), "10 mm, solid polyethylene, stranded",
     "typical nominal value; handbook table from memory, 50 to 850 MHz agree with a radio-repeater training guide; "
     "3700 V rms: MIL-C-17G sheet as quoted; W/m from memory",
     heat_from_memory(10.)},
    {"RG-8", 52., 0.659, rg8, std::size(rg8), rms_to_peak(3700), "10 mm, solid polyethylene, stranded (A/U)", handbook,
     heat_from_memory(10.)},
    {"RG-8X", 50., 0.80, rg8x, std::size(rg8x), 0., "6 mm, foamed polyethylene, stranded", from_memory,
     heat_from_memory(6.)},
    {"RG-223", 50., 0.659, rg223, std::size(rg223), rms_to_peak(1400), "5 mm, solid polyethylene, two braids",
     from_memory, heat_from_memory(7.)},
    {"RG-174", 50., 0.659, rg174, std::size(rg174), rms_to_peak(1100),
     "2.8 mm, solid polyethylene; below 10 MHz it loses more than its curve says", handbook, heat_from_memory(4.)},
    {"RG-316", 50., 0.695, rg316, std::size(rg316), rms_to_peak(900),
     "2.5 mm, PTFE; below 10 MHz it loses more than its curve says", from_memory, heat_from_memory(18.)},
    {"RG-142", 50., 0.695, rg142, std::size(rg142), rms_to_peak(1400), "5 mm, PTFE, two silvered braids", handbook,
     heat_from_memory(28.)},
    {"RG-400", 50., 0.695, rg400, std::size(rg400), rms_to_peak(1400), "5 mm, PTFE, two silvered braids, stranded",
     handbook, heat_from_memory(28.)},
    {"RG-393", 50., 0.695, rg393, std::size(rg393), rms_to_peak(2500), "10 mm, PTFE, two silvered braids", handbook,
     heat_from_memory(45.)},
    {"semi-rigid 0.141", 50., 0.695, semi_rigid_141, std::size(semi_rigid_141), rms_to_peak(1900),
     "3.6 mm copper tube, PTFE (M17/130)", handbook, heat_from_memory(25.)},
    {"RG-59", 75., 0.659, rg59, std::size(rg59), rms_to_peak(1700), "6 mm, solid polyethylene (B/U)", handbook,
     heat_from_memory(7.)},
    {"RG-6", 75., 0.82, rg6, std::size(rg6), 0., "7 mm, foamed polyethylene, foil and braid", handbook,
     heat_from_memory(6.)},
    {"RG-11", 75., 0.659, rg11, std::size(rg11), rms_to_peak(3700), "10 mm, solid polyethylene (A/U)", handbook,
     heat_from_memory(10.)},
    {"low-loss 10 mm", 50., 0.85, foam_10mm, std::size(foam_10mm), 0., "10 mm, foamed polyethylene, foil and braid",
     from_memory, heat_from_memory(10.)},
    {"hardline 1/2", 50., 0.88, hardline_half, std::size(hardline_half), 0.,
     "1/2 inch corrugated copper, foamed polyethylene", from_memory, heat_from_memory(18.)},
    {"hardline 7/8", 50., 0.89, hardline_seven_eighths, std::size(hardline_seven_eighths), 0.,
     "7/8 inch corrugated copper, foamed polyethylene", from_memory, heat_from_memory(24.)},
    {"twin-lead 300", 300., 0.82, ribbon_300, std::size(ribbon_300), 9000., "300 ohm ribbon, dry", wires_handbook,
     heat_of_wires(5.)},
    {"window line 450", 450., 0.91, window_450, std::size(window_450), 13000., "450 ohm ribbon with windows, dry",
     wires_handbook, heat_of_wires(5.)},
    {"open wire 600", 600., 0.97, open_600, std::size(open_600), 25000.,
     "600 ohm, two 1.6 mm copper wires on spreaders, dry", wires_computed, heat_of_wires(6.)},
});

}  // namespace

std::span<const wattfall::sdk::Cable> cable_table() {
  return cables;
}

}  // namespace line_loss
