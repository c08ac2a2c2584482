// The language's own kinds, one table each, and those that plugins bring. A property whose form begins with a bracket
// is written as a group, `coil(turns 10, ...)`; the builders in parts/ give each its meaning.
#include "design/catalog.hpp"

#include <algorithm>
#include <utility>

#include "grammar/syntax.hpp"

namespace wattfall::design {
namespace {

using Places = KindInfo::Places;
using Properties = std::vector<PropertyInfo>;
constexpr std::nullopt_t none = std::nullopt;

PropertyInfo main_value(const char* name, const char* form, std::optional<Dimension> dim, const char* meaning, bool bare = false) {
  return {name, form, dim, "", meaning, true, bare};
}

PropertyInfo property(const char* name, const char* form, std::optional<Dimension> dim, const char* meaning,
                      const char* fallback = "") {
  return {name, form, dim, fallback, meaning, false, false};
}

PropertyInfo bare_property(const char* name, const char* form, std::optional<Dimension> dim, const char* meaning,
                           const char* fallback = "") {
  return {name, form, dim, fallback, meaning, false, true};
}

PropertyInfo adjustable() {
  return property("adjustable", "A to B | [v1, v2, ...] | series(E24, from A, to B [, pairs]) | relays(8, smallest x)", none,
                  "makes the main value a knob");
}

PropertyInfo tolerance() {
  return property("tolerance", "5 % [normal] | 2 pF [normal]", none,
                  "spread of the main value: uniform, or three sigma of a normal one");
}

PropertyInfo limit() {
  return property("limit", "1 kV | 5 A | 10 W | 8 W/m", none,
                  "rating: peak volts across, rms amps through, watts of heat, or of a line heat per metre; one of each");
}

Properties with_common(Properties properties) {
  properties.push_back(adjustable());
  properties.push_back(tolerance());
  properties.push_back(limit());
  return properties;
}

KindInfo kind(const char* name, Places places, const char* places_text, const char* meaning, Properties properties) {
  return {name, places, places_text, meaning, std::move(properties), "wattfall", nullptr};
}

constexpr const char* one_port_text = "at n | from a to b | at (a b)";
constexpr const char* two_port_text = "from a to b | from (a b) to (c d)";

KindInfo source() {
  return kind(
      "source", Places::one_port, one_port_text, "the transmitter, behind its output impedance",
      {main_value("power", "100 W | 50 dBm", dimension::power, "power available into the conjugate of its impedance"),
       bare_property("impedance", "50 ohm", dimension::resistance, "output impedance", "50 ohm"),
       property("reference", "50 ohm", dimension::resistance,
                "what SWR is taken against; the impedance's real part unless given"),
       property("foldback", "[1.5: 100 %, 3: 25 %]", dimension::number, "share of the power left at an SWR"),
       property("duty", "30 %", dimension::number,
                "share of the time that it sends; scales heat against limits in watts", "100 %")});
}

KindInfo load() {
  return kind(
      "load", Places::one_port, one_port_text, "an antenna or a dummy: where power is meant to go",
      {main_value("impedance", "50 - j12 ohm", dimension::resistance, "its impedance", true),
       main_value("table", "[f: z, ...]", dimension::resistance, "impedance over frequency; straight lines between"),
       main_value("measured", "\"x.s1p\"", none, "a Touchstone file with one port"),
       main_value("series", "(resistance .., inductance .., capacitance ..)", dimension::resistance,
                  "a series circuit"),
       main_value("dipole", "(length .., diameter .. [, metal ..])", dimension::resistance, "a dipole's impedance from its size"),
       main_value("monopole", "(height .., diameter .. [, ground .., metal ..])", dimension::resistance,
                  "a vertical's over perfect ground, and the ground's loss in series"),
       property("radiates", "92 % | [f: %, ...]", dimension::number, "share of the absorbed power that is radiated",
                "100 %"),
       property("loss", "3 ohm", dimension::resistance, "instead: a part of its own resistance that only makes heat"),
       tolerance(), limit()});
}

KindInfo resistor() {
  return kind("resistor", Places::one_port, one_port_text, "a resistor",
              with_common({main_value("resistance", "50 ohm", dimension::resistance, "its resistance"),
                           property("inductance", "10 nH", dimension::inductance, "in series"),
                           property("capacitance", "1 pF", dimension::capacitance, "across all"),
                           property("skin", "(diameter .. | tube .., wall .. | strip .., thickness .. [, metal ..])", dimension::resistance,
                                    "resistance growing with frequency")}));
}

KindInfo inductor() {
  return kind(
      "inductor", Places::one_port, one_port_text, "a coil",
      with_common({main_value("inductance", "2 uH", dimension::inductance, "its inductance"),
                   main_value("coil", "(turns .., diameter .., length .., wire .. | tube .., wall .. | strip .., thickness .. [, metal ..])", dimension::inductance,
                              "an air coil by its size"),
                   main_value("core", "(AL .., turns ..) | (outer .., inner .., height .., turns .., permeability .. [, wire .., material ..])", dimension::inductance, "a coil on a core"),
                   property("Q", "n | n at f", dimension::number,
                            "series loss X/Q at every frequency, or at f and growing as its root"),
                   property("resistance", "0.5 ohm", dimension::resistance, "instead: loss resistance in series"),
                   property("capacitance", "3 pF", dimension::capacitance, "across the lossy coil"),
                   property("resonance", "30 MHz", dimension::frequency,
                            "instead: where the coil and its capacitance resonate")}));
}

KindInfo capacitor() {
  return kind(
      "capacitor", Places::one_port, one_port_text, "a capacitor",
      with_common(
          {main_value("capacitance", "100 pF", dimension::capacitance, "its capacitance"),
           main_value("plates", "(width .., length .., gap .. [, plates .., dielectric ..])", dimension::capacitance, "by the size of its plates"),
           property("Q", "n | n at f", dimension::number,
                    "series loss X/Q at every frequency, or at f and growing as its root"),
           property("resistance", "0.1 ohm", dimension::resistance, "instead: loss resistance in series"),
           property("tangent", "0.001", dimension::number, "loss of the dielectric: a conductance w C tan d across it"),
           property("inductance", "5 nH", dimension::inductance, "in series with all")}));
}

Properties line_properties() {
  return {
      main_value("length", "24 m of RG-213 | 24 m | 90 deg at 7.1 MHz", dimension::length, "its length, and the cable"),
      bare_property("impedance", "450 ohm", dimension::resistance, "characteristic impedance"),
      property("velocity", "66 %", dimension::number, "speed of its waves over that of light", "1"),
      property("loss", "3.1 dB/100m at 10 MHz | [x at f, y at g]", dimension::level_per_length,
               "matched loss; none: lossless"),
      property("coax", "(outer .., inner .. [, wall .., dielectric .., metal ..])", dimension::resistance, "by the size of a coaxial line"),
      property("twowire", "(spacing .., diameter .. [, dielectric .., metal ..])", dimension::resistance, "by the size of a two-wire line"),
      property("overground", "(height .., diameter .. [, dielectric .., metal ..])", dimension::resistance, "by the size of a wire over ground")};
}

KindInfo line() {
  Properties properties = line_properties();
  properties.push_back(
      property("common impedance", "300 ohm", dimension::resistance, "of both conductors together against ground"));
  return kind("line", Places::two_port, two_port_text, "a length of transmission line",
              with_common(std::move(properties)));
}

KindInfo stub() {
  Properties properties = line_properties();
  properties.push_back(property("open", "", none, "open at its far end"));
  properties.push_back(property("shorted", "", none, "shorted at its far end"));
  return kind("stub", Places::one_port, one_port_text, "a line with its far end open or shorted",
              with_common(std::move(properties)));
}

KindInfo transformer() {
  return kind("transformer", Places::two_port, two_port_text, "a transformer, its losses on the from side",
              with_common({main_value("turns", "1:3", dimension::number, "turns, from side : to side"),
                           main_value("impedance", "1:9", dimension::number, "impedances, from side : to side"),
                           property("winding", "0.2 ohm", dimension::resistance, "winding resistance, in series"),
                           property("leakage", "0.1 uH", dimension::inductance, "leakage inductance, in series"),
                           property("magnetizing", "20 uH", dimension::inductance, "magnetizing inductance, across"),
                           property("core", "5000 ohm | (outer .., inner .., height .., permeability .. [, wire .., material ..])", dimension::resistance,
                                    "core loss resistance, across; or magnetizing and core loss by the core, with the from side's turns"),
                           property("core Q", "20", dimension::number,
                                    "instead: core loss as the Q of the magnetizing inductance")}));
}

KindInfo choke(const char* name) {
  return kind(name, Places::node_pair, "from (a b) to (c d)", "a common-mode choke: two conductors wound together",
              {main_value("impedance", "2000+j3000 ohm", dimension::resistance, "common-mode impedance of the pair"),
               main_value("table", "[f: z, ...]", dimension::resistance, "common-mode impedance over frequency"),
               main_value("core", "(outer .., inner .., height .., turns .., permeability ..)", dimension::resistance, "by its core"), tolerance(), limit()});
}

KindInfo coupling() {
  return kind(
      "coupling", Places::between, "between La and Lb", "two coils share flux",
      {main_value("factor", "0.35", dimension::number, "coupling factor: M = factor sqrt(La Lb)"), adjustable()});
}

KindInfo pad() {
  return kind(
      "pad", Places::two_port, two_port_text, "an attenuator",
      with_common(
          {main_value("attenuation", "10 dB", dimension::level, "attenuation between its own impedance"),
           bare_property("impedance", "50 ohm", dimension::resistance, "the impedance it is made for", "50 ohm")}));
}

KindInfo twoport() {
  return kind("twoport", Places::two_port, two_port_text, "a measured two-port",
              {main_value("measured", "\"x.s2p\"", none, "a Touchstone file with two ports"), limit()});
}

KindInfo selector() {
  return kind("selector", Places::selector, "from n to (a b c)", "a switch that joins a node to one of several",
              {main_value("choice", "a", none, "the node it stands on"),
               property("adjustable", "", none, "makes it a knob"), limit()});
}

std::vector<KindInfo> language_kinds() {
  return {source(),      load(),         resistor(),     inductor(), capacitor(), line(),    stub(),
          transformer(), choke("balun"), choke("choke"), coupling(), pad(),       twoport(), selector()};
}

/// What stands behind a quantity of a form's box, on its line, as a comment: what it means.
std::string comment_behind(const Span& value) {
  const std::string_view text = value.source->text();
  const std::string_view line = text.substr(value.end, text.find('\n', value.end) - value.end);
  const std::size_t sign = line.find_first_not_of(", \t{");
  if (sign == std::string_view::npos || line[sign] != '#') return "";
  const std::size_t word = line.find_first_not_of("# \t", sign);
  return word == std::string_view::npos ? "" : std::string(line.substr(word));
}

/// The quantities of a form's box are properties of the tuner: `coil_Q` is given as `coil Q 200`.
void add_properties_of(const sdk::TunerForm& form, const Vocabulary& vocabulary, Properties& properties) {
  const auto source = std::make_shared<const wattfall::Source>(form.name, form.box);
  const Result<syntax::File> file = parse(source, vocabulary);
  const bool one = file.value && file.value->statements.size() == 1;
  const auto* box = one ? std::get_if<syntax::Box>(&file.value->statements[0].what) : nullptr;
  if (box == nullptr) return;  // said where the form is used
  for (const auto& [word, value] : box->with) {
    const Span span = syntax::span_of(value);
    std::string name(word.text);
    std::replace(name.begin(), name.end(), '_', ' ');
    if (std::any_of(properties.begin(), properties.end(), [&](const auto& known) { return known.name == name; })) continue;
    PropertyInfo info = property("", "", none, "");
    info.name = name;
    info.form = info.fallback = span.text();
    info.meaning = comment_behind(span);
    if (value.size() == 1 && value[0].kind == syntax::Term::Kind::number) info.dim = value[0].quantity.dim;
    properties.push_back(std::move(info));
  }
}

KindInfo tuner(const host::Registry& registry, const Vocabulary& vocabulary) {
  KindInfo info{"tuner", Places::box, "from a to b", "a tuner of a form that is tried: each makes a design, side by side", {},
                registry.plugins[registry.tuner_forms.front().plugin].name, nullptr};
  std::string groups = "any";
  for (const auto& entry : registry.tuner_forms) {
    const std::string group = entry.thing->group;
    if (groups.find(group) == std::string::npos) groups += " | " + group;
  }
  info.properties.push_back({"form", groups + " | \"NAME\"", none, "any", "which forms to try", true, false});
  for (const auto& entry : registry.tuner_forms) add_properties_of(*entry.thing, vocabulary, info.properties);
  return info;
}

KindInfo plugin_kind(const sdk::Kind& kind_of_plugin, const std::string& plugin) {
  KindInfo info{kind_of_plugin.name, Places::one_port, one_port_text, kind_of_plugin.meaning, {}, plugin,
                &kind_of_plugin};
  if (kind_of_plugin.ports == 2) {
    info.places = Places::two_port;
    info.places_text = two_port_text;
  }
  for (std::size_t i = 0; i < kind_of_plugin.property_count; ++i) {
    const sdk::Property& given = kind_of_plugin.properties[i];
    const std::string unit = given.unit == nullptr ? "" : given.unit;
    PropertyInfo one{given.name,
                     unit.empty() ? "n" : "x " + unit,
                     dimension::number,
                     given.fallback == nullptr ? "" : given.fallback,
                     given.meaning,
                     i == 0,
                     false};
    if (const auto known = find_unit(unit)) one.dim = known->dim;
    info.properties.push_back(std::move(one));
  }
  info.properties = with_common(std::move(info.properties));
  return info;
}

}  // namespace

Catalog::Catalog(const host::Registry& registry) : kinds_(language_kinds()) {
  for (const auto& entry : registry.kinds)
    if (find(entry.thing->name) == nullptr)
      kinds_.push_back(plugin_kind(*entry.thing, registry.plugins[entry.plugin].name));
  if (!registry.tuner_forms.empty()) kinds_.push_back(tuner(registry, vocabulary()));
}

const KindInfo* Catalog::find(std::string_view kind_name) const {
  for (const KindInfo& info : kinds_)
    if (info.name == kind_name) return &info;
  return nullptr;
}

std::vector<std::string> Catalog::names() const {
  std::vector<std::string> all;
  for (const KindInfo& info : kinds_) all.push_back(info.name);
  return all;
}

Vocabulary Catalog::vocabulary() const {
  return {names()};
}

}  // namespace wattfall::design
