// What every radio amateur knows by heart or has on the back of an envelope: resistors in series and across, one L
// network for 28+j208 ohm on 30 m worked by hand both ways round, and a coax line that eats most of the power on a bad
// load.
#include <cmath>

#include "reference.hpp"

namespace wattfall::reference {
namespace {

const std::string rig = "source rig at desk : 100 W, 50 ohm\n";
const std::string coil = "inductor L at desk : 0.87 uH\n";
const std::string antenna = "load ant at feed : 28+j208 ohm\n";

constexpr double matched_db = 1.0;

/// Loss of a line of real impedance 50 ohm: 10 lg((A^2 - r^2)/(A (1 - r^2))), A = 10^(matched/10), r the load's
/// reflection.
double textbook_loss_db(std::complex<double> load_ohm) {
  const double a = std::pow(10.0, matched_db / 10.0), r = std::abs((load_ohm - 50.0) / (load_ohm + 50.0));
  return 10.0 * std::log10((a * a - r * r) / (a * (1.0 - r * r)));
}

/// 24 m with 1 dB of matched loss before a load. The share of the power accepted that stays in the line follows.
Setup bad_load(const char* label, const char* label_of_heat, const std::string& load, std::complex<double> load_ohm) {
  const double loss_db = textbook_loss_db(load_ohm), kept = 1.0 - std::pow(10.0, -loss_db / 10.0);
  return {
      "24 m of 50 ohm coax, 1 dB when matched, before a bad load: the textbook's formula",
      "7.1 MHz",
      rig + "line w from desk to feed : 24 m, 50 ohm, velocity 0.66, loss 1 dB/m / 24 at 7.1 MHz\nload ant at feed : " +
          load + "\n",
      {practice(label, "loss in w", loss_db, one, 1e-9 * loss_db),
       practice(label_of_heat, accepted_heat_w, kept, one, 1e-9 * kept)}};
}

}  // namespace

Setups trade_facts() {
  return {
      {"two resistors in series",
       "10.1 MHz",
       rig + "resistor R from desk to feed : 67.6 ohm\nload ant at feed : 326.55 ohm\n",
       {practice("two in series", "resistance at desk", 394, one, 0.5)}},
      {"two resistors across each other",
       "10.1 MHz",
       rig + "resistor R at desk : 67.6 ohm\nload ant at desk : 326.55 ohm\n",
       {practice("two across", input_ohms, 56.018, one, 0.0005),
        practice("two across, by division", input_ohms, 56.006, one, 0.0005)}},
      {"a vertical on 30 m, straight on the coax",
       "10.1 MHz",
       rig + "load ant at desk : 28+j208 ohm\n",
       {practice("bad SWR", "swr at desk", 33, one, 0.5)}},
      {"67.47 pF alone",
       "10.1 MHz",
       rig + "load ant at (desk end) : 50 ohm\ncapacitor C at end : 67.47 pF\n",
       {practice("capacitor", "reactance at desk", -233.55, one, 0.01)}},
      {"0.87 uH alone",
       "10.1 MHz",
       rig + "load ant at (desk end) : 50 ohm\ninductor L at end : 0.87 uH\n",
       {practice("coil", "reactance at desk", 55.2, one, 0.05)}},
      {"capacitor and antenna in series",
       "10.1 MHz",
       rig + "capacitor C from desk to feed : 67.47 pF\n" + antenna,
       {practice("series R", "resistance at desk", 28, one, 1e-9),
        practice("series X", "reactance at desk", -25.55, one, 0.01)}},
      {"the L network: coil across the rig, capacitor to the antenna",
       "10.1 MHz",
       rig + coil + "capacitor C from desk to feed : 67.47 pF\n" + antenna,
       {practice("matched R", input_ohms, 51, one, 0.5), practice("matched X", input_reactance, 0.85, one, 0.05),
        practice("matched SWR", "swr at desk", 1.03, one, 0.005),
        practice("all power", "power into ant", 100, one, 0.05),
        practice("ideal parts stay cold", heat_of_all_parts, 0, one, 1e-12),
        practice("matched at the rig", "mismatch at desk", 0, one, 0.002),
        practice("matched at the antenna", "mismatch at feed into ant", 0, one, 0.002)}},
      {"the other way round: the rig's 50 ohm with the coil across",
       "10.1 MHz",
       rig + coil + "load ant at desk : 50 ohm\n",
       {practice("rig's side R", input_ohms, 27.5, one, 0.05),
        practice("rig's side X", input_reactance, 24.9, one, 0.05)}},
      {"the other way round: and the capacitor after it",
       "10.1 MHz",
       "source rig at feed : 100 W, 50 ohm\ncapacitor C from feed to desk : 67.47 pF\n" + coil +
           "load ant at desk : 50 ohm\n",
       {practice("antenna's side R", "resistance at feed", 27.5, one, 0.05),
        practice("antenna's side X", "reactance at feed", -208.7, one, 0.05)}},
      {"receiving: the antenna is the source",
       "10.1 MHz",
       "source wire at feed : 1 mW, 28+j208 ohm\ncapacitor C from feed to desk : 67.47 pF\n" + coil +
           "load ant at desk : 50 ohm\n",
       {practice("receives all", "power into ant", 1, milli, 0.0005),
        practice("matched when receiving", "mismatch at feed", 0, one, 0.002),
        practice("cold when receiving", heat_of_all_parts, 0, milli, 1e-12)}},
      bad_load("coax on 28+j208 ohm", "its heat on 28+j208 ohm", "28+j208 ohm", {28, 208}),
      bad_load("coax on 5-j300 ohm", "its heat on 5-j300 ohm", "5-j300 ohm", {5, -300}),
      bad_load("coax on 1 ohm", "its heat on 1 ohm", "1 ohm", 1.0),
      bad_load("coax on 5 kohm", "its heat on 5 kohm", "5 kohm", 5000.0),
      bad_load("coax on 50 ohm", "its heat on 50 ohm", "50 ohm", 50.0),
  };
}

}  // namespace wattfall::reference
