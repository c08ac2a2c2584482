// `wattfall list`: what is known, and which plugin brought it.
#include <cmath>
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "deliver.hpp"
#include "design/catalog.hpp"
#include "grammar/nearest_name.hpp"
#include "tables.hpp"
#include "verbs.hpp"

namespace wattfall::app {
namespace {

std::string brought_by(const host::Registry& registry, std::size_t plugin) {
  return registry.plugins[plugin].name;
}

std::string plugins(const host::Registry& registry) {
  std::vector<Row> rows{{"plugin", "version", "brings", "from"}};
  for (std::size_t p = 0; p < registry.plugins.size(); ++p) {
    std::string brings;
    const auto count = [&](const auto& entries, const char* one, const char* several) {
      const auto found =
          std::count_if(entries.begin(), entries.end(), [p](const auto& entry) { return entry.plugin == p; });
      if (found > 0) brings += fmt::format("{}{} {}", brings.empty() ? "" : ", ", found, found == 1 ? one : several);
    };
    count(registry.kinds, "kind", "kinds");
    count(registry.cables, "cable", "cables");
    count(registry.line_models, "line model", "line models");
    count(registry.optimizers, "optimizer", "optimizers");
    count(registry.writers, "writer", "writers");
    count(registry.tuner_forms, "tuner form", "tuner forms");
    rows.push_back({registry.plugins[p].name, registry.plugins[p].version, brings, registry.plugins[p].path});
  }
  return table(rows);
}

std::string kinds(const design::Catalog& catalog) {
  std::vector<Row> rows{{"kind", "stands", "what it is", "brought by"}};
  for (const design::KindInfo& kind : catalog.kinds())
    rows.push_back({kind.name, kind.places_text, kind.meaning, kind.brought_by});
  return table(rows);
}

/// Where a resistance may be complex it is called an impedance.
std::string measures(const design::PropertyInfo& property) {
  if (!property.dim) return "";
  const bool complex = property.name.ends_with("impedance") || property.name == "table" || property.name == "series" ||
                       property.name == "dipole" || property.name == "monopole";
  return complex && property.dim == dimension::resistance ? "an impedance" : describe(*property.dim);
}

std::string one_kind(const design::KindInfo& kind, const host::Registry& registry) {
  std::string text = fmt::format("{} NAME {} : ...\n{} (brought by {})\n\n", kind.name, kind.places_text, kind.meaning,
                                 kind.brought_by);
  std::vector<Row> rows{{"property", "written", "measures", "default", "meaning"}};
  for (const design::PropertyInfo& property : kind.properties)
    rows.push_back({property.name + (property.main ? " (main)" : ""), property.form,
                    measures(property), property.fallback, property.meaning});
  text += table(rows);
  if (kind.name != "tuner" || registry.tuner_forms.empty()) return text;
  rows = {{"form", "of", "what it is", "brought by"}};
  for (const auto& entry : registry.tuner_forms)
    rows.push_back({fmt::format("\"{}\"", entry.thing->name), entry.thing->group, entry.thing->meaning,
                    brought_by(registry, entry.plugin)});
  return text + '\n' + table(rows);
}

std::string cables(const host::Registry& registry) {
  std::vector<Row> rows{{"cable", "ohm", "velocity", "dB/100 m at 10 MHz", "what it is", "brought by"}};
  const sdk::LineModel* model = registry.find_line_model();
  for (const auto& entry : registry.cables) {
    const sdk::Cable& cable = *entry.thing;
    const sdk::LineData data{{cable.impedance_ohm, 0.0}, cable.velocity, cable.losses, cable.loss_count};
    double k1 = 0.0, k2 = 0.0, worst = 0.0;
    sdk::Failure failure{};
    const double hertz = 10e6;
    sdk::Complex gamma{}, impedance{};
    const bool fitted =
        model != nullptr && model->fit(model->self, &data, &k1, &k2, &worst, &failure) == sdk::Status::ok &&
        model->propagate(model->self, &data, k1, k2, &hertz, 1, &gamma, &impedance, &failure) == sdk::Status::ok;
    // 20 lg e: decibels in a neper.
    rows.push_back({cable.name, fmt::format("{:g}", cable.impedance_ohm), fmt::format("{:g}", cable.velocity),
                    fitted ? fmt::format("{:.2f}", 868.588963806504 * gamma.re) : "?", cable.meaning,
                    brought_by(registry, entry.plugin)});
  }
  return table(rows);
}

/// The power [W] that makes the most heat a metre may make, on a line without reflection; 0 where it is not known.
double rated_power(const sdk::Cable& cable, double db_per_100m) {
  if (cable.limit_watts_per_m <= 0.0 || db_per_100m <= 0.0) return 0.0;
  // Heat per metre is 2 alpha P; 20 lg e decibels in a neper.
  return cable.limit_watts_per_m / (2.0 * db_per_100m / 868.588963806504);
}

std::string limits_of(const sdk::Cable& cable) {
  return (cable.limit_volts_peak > 0.0 ? fmt::format("limit {:g} V peak\n", cable.limit_volts_peak) : "limit of volts: none is given\n") +
         (cable.limit_watts_per_m > 0.0 ? fmt::format("limit {:g} W/m of heat where it is hottest, in still air\n", cable.limit_watts_per_m)
                                        : "limit of heat: none is given\n");
}

std::string one_cable(const sdk::Cable& cable, const host::Registry& registry) {
  std::string text =
      fmt::format("{}: {}\n{:g} ohm, velocity {:g}\n", cable.name, cable.meaning, cable.impedance_ohm, cable.velocity);
  text += limits_of(cable) + fmt::format("figures: {}\n\n", cable.origin);
  const bool rated = cable.limit_watts_per_m > 0.0;
  std::vector<Row> rows{{"frequency", "matched loss", rated ? "carries" : "", rated ? "at" : ""}};
  for (std::size_t i = 0; i < cable.loss_count; ++i) {
    const double watts = rated_power(cable, cable.losses[i].db_per_100m), amps = std::sqrt(watts / cable.impedance_ohm);
    rows.push_back({spell({cable.losses[i].frequency_hz, dimension::frequency}), fmt::format("{:g} dB/100m", cable.losses[i].db_per_100m),
                    watts > 0.0 ? spell({watts, dimension::power}, 2) : "", watts > 0.0 ? spell({amps, dimension::current}, 2) + " rms" : ""});
  }
  text += table(rows);
  if (rated) text += "carries: average power without reflection, and its amps; at an SWR about that power divided by it\n";
  const sdk::LineModel* model = registry.find_line_model();
  const sdk::LineData data{{cable.impedance_ohm, 0.0}, cable.velocity, cable.losses, cable.loss_count};
  double k1 = 0.0, k2 = 0.0, worst = 0.0;
  sdk::Failure failure{};
  if (model != nullptr && model->fit(model->self, &data, &k1, &k2, &worst, &failure) == sdk::Status::ok)
    text += fmt::format("\nfitted by {}: dB/m = {:.4g} sqrt(f/Hz) + {:.4g} f/Hz; at worst {:.2g} % from the table\n",
                        model->name, k1, k2, 100.0 * worst);
  return text;
}

std::string figures() {
  std::vector<Row> rows{{"figure", "of a", "unit", "meaning"}};
  for (const design::FigureInfo& figure : design::figures())
    rows.push_back({figure.words, figure.operand, figure.unit, figure.meaning});
  return table(rows);
}

std::string units() {
  std::vector<Row> rows{{"unit", "measures"}};
  for (const char* symbol :
       {"Hz",   "kHz", "MHz", "GHz", "F",  "uF", "nF", "pF", "H",  "mH",  "uH",  "nH",   "ohm",     "kohm",
        "Mohm", "S",   "V",   "kV",  "A",  "mA", "W",  "mW", "kW", "W/m", "T",  "mT", "dBm", "dB",  "dB/m", "dB/100m", "dB/ft", "dB/100ft",
        "pF/m", "pF/ft", "m",   "cm",  "mm",  "km", "ft", "in", "s",  "ns", "us",  "deg", "°",    "%",       "turns"})
    if (const auto unit = find_unit(symbol)) rows.push_back({symbol, describe(unit->dim)});
  return table(rows) + "\nprefixes f p n u (or µ) m c (of metres alone) k M G; the case of letters counts\n";
}

std::string writers(const host::Registry& registry) {
  std::vector<Row> rows{{"writer", "what it writes", "brought by"}};
  for (const auto& entry : registry.writers)
    rows.push_back({entry.thing->name, entry.thing->meaning, brought_by(registry, entry.plugin)});
  return table(rows);
}

Diagnostic unknown(const std::string& sort, const std::string& name, const std::vector<std::string>& known) {
  return {.code = "unknown-name",
          .span = {},
          .text = "there is no " + sort + " `" + name + "`",
          .expected = nearest_first(name, known),
          .hint = nearest_name(name, known),
          .fault = Fault::usage};
}

}  // namespace

int list_verb(const Arguments& arguments, const host::Plugins& loaded) {
  const host::Registry& registry = loaded.registry();
  const design::Catalog catalog(registry);
  std::string text;
  if (arguments.what == "kinds" && !arguments.name.empty()) {
    const design::KindInfo* kind = catalog.find(arguments.name);
    if (kind == nullptr) return say({unknown("kind", arguments.name, catalog.names())}, arguments.color);
    text = one_kind(*kind, registry);
  } else if (arguments.what == "cables" && !arguments.name.empty()) {
    const sdk::Cable* cable = registry.find_cable(arguments.name);
    std::vector<std::string> names;
    for (const auto& entry : registry.cables) names.emplace_back(entry.thing->name);
    if (cable == nullptr) return say({unknown("cable", arguments.name, names)}, arguments.color);
    text = one_cable(*cable, registry);
  } else if (arguments.what == "kinds") {
    text = kinds(catalog);
  } else if (arguments.what == "cables") {
    text = cables(registry);
  } else if (arguments.what == "metals") {
    text = metals();
  } else if (arguments.what == "dielectrics") {
    text = dielectrics();
  } else if (arguments.what == "cores") {
    text = cores();
  } else if (arguments.what == "capacitors") {
    text = capacitors();
  } else if (arguments.what == "figures") {
    text = figures();
  } else if (arguments.what == "units") {
    text = units();
  } else if (arguments.what == "writers") {
    text = writers(registry);
  } else {
    text = plugins(registry);
  }
  const Diagnostics wrong = print(text);
  return wrong.empty() ? 0 : say(wrong, arguments.color);
}

}  // namespace wattfall::app
