#include "circuit.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "trade.hpp"

namespace pictures {
namespace {

using reports::item;
using reports::list;
using reports::member;
using reports::number;
using reports::number_at;
using reports::raw_text;
using reports::spell;
using reports::spell_complex;

const std::map<std::string, Symbol>& symbols() {
  static const std::map<std::string, Symbol> table = {
      {"resistor", Symbol::resistor}, {"inductor", Symbol::inductor}, {"capacitor", Symbol::capacitor},
      {"line", Symbol::line},         {"stub", Symbol::stub_shorted}, {"transformer", Symbol::transformer},
      {"balun", Symbol::choke},       {"choke", Symbol::choke},       {"pad", Symbol::pad},
      {"twoport", Symbol::two_port},  {"selector", Symbol::selector}};
  return table;
}

/// A value that is a number, or one a frequency.
const Json& at_point(const Json& part, const char* key, std::size_t point) {
  const Json& value = member(part, key);
  const bool pair = value.is_array() && value.size() == 2 && value[0].is_number() && value[1].is_number();
  return value.is_array() && !pair ? item(value, point) : value;
}

std::string spell_length(double m) {
  return m < 1.0 ? reports::significant(100.0 * m, 4) + " cm" : reports::significant(m, 4) + " m";
}

std::string value_of(const Json& part, std::size_t point) {
  const auto plain = [&](const char* key, const char* unit) {
    const double value = number(at_point(part, key, point));
    return std::isfinite(value) ? spell(value, unit, 4) : std::string();
  };
  for (const auto& [key, unit] : {std::pair{"value_f", "F"}, {"value_h", "H"}, {"value_ohm", "ohm"}}) {
    const std::string value = plain(key, unit);
    if (!value.empty()) return value;
  }
  if (const Json& z = at_point(part, "value_ohm", point); z.is_array() && z.size() == 2)
    return number(z[1]) == 0.0 ? spell(number(z[0]), "ohm", 4) : spell_complex(number(z[0]), number(z[1])) + " ohm";
  if (const double ratio = number(at_point(part, "turns_ratio", point)); std::isfinite(ratio))
    return ratio >= 1.0 ? "turns 1:" + reports::significant(ratio, 4)
                        : "turns " + reports::significant(1.0 / ratio, 4) + ":1";
  if (const double level = number(at_point(part, "attenuation_db", point)); std::isfinite(level))
    return reports::significant(level, 4) + " dB";
  if (const double length = number(at_point(part, "length_m", point)); std::isfinite(length)) {
    const std::string cable = raw_text(member(part, "cable"));
    const double z0 = number(at_point(part, "z0_ohm", point));
    const std::string what = !cable.empty()      ? " of " + cable
                             : std::isfinite(z0) ? ", " + reports::significant(z0) + " ohm"
                                                 : "";
    return spell_length(length) + what;
  }
  return "";
}

/// What of a part varies over the sweep, of what `value_of` says of it.
Series series_of(const Json& part, const std::string& path) {
  for (const auto& [key, unit] : {std::pair{"value_f", "F"},
                                  {"value_h", "H"},
                                  {"value_ohm", "ohm"},
                                  {"turns_ratio", "turns"},
                                  {"attenuation_db", "level"},
                                  {"length_m", "length"}}) {
    const Json& value = member(part, key);
    if (!value.is_array() || value.size() < 2 ||
        (value.size() == 2 && !value[0].is_array() && std::string(key) == "value_ohm"))
      continue;
    if (value[0].is_array()) return {path + '/' + key, "complex", ""};
    const std::string cable = raw_text(member(part, "cable")), said = value_of(part, 0);
    const std::size_t after = said.find(cable.empty() ? "," : " of ");
    return {path + '/' + key, unit,
            std::string(unit) == "length" && after != std::string::npos ? said.substr(after) : ""};
  }
  return {};
}

std::string watts_of(const Item& item, double heat_w, double share) {
  if (item.symbol == Symbol::source || !std::isfinite(heat_w) || share < 5e-6) return "";
  const std::string watts = heat_w >= 1.0 ? reports::fixed(heat_w, 1) + " W" : spell(heat_w, "W", 2);
  return item.symbol == Symbol::antenna || item.symbol == Symbol::load ? watts + " heat" : watts;
}

constexpr double next_to_nothing = 1e-3;

class Reader {
 public:
  Reader(const Json& variant, bool live) : variant_(variant), live_(live) {
    circuit_.point = point_of_interest();
    circuit_.heading = raw_text(member(variant, "name"));
    circuit_.caption = caption();
    for (const Json& box : list(variant, "boxes"))
      circuit_.boxes.push_back({raw_text(member(box, "name")), raw_text(member(box, "kind"))});
    read_source();
    const Json &parts = list(variant, "parts"), &loads = list(variant, "loads");
    for (std::size_t p = 0; p < parts.size(); ++p) read_part(parts[p], "parts/" + std::to_string(p));
    for (std::size_t l = 0; l < loads.size(); ++l) read_load(loads[l], "loads/" + std::to_string(l));
    merge_coupled();
    shorten_labels();
    for (Item& one : circuit_.items) one.watts = watts_of(one, one.heat_w, one.share);
    if (live_)
      for (Item& one : circuit_.items) look_ahead(one);
  }

  Circuit take() { return std::move(circuit_); }

 private:
  /// Where least gets on the air; where that is next to nothing (a filter's stop band), where most does.
  std::size_t point_of_interest() const {
    const Json& moments = member(variant_, "moments");
    const std::size_t worst = reports::count(moments, "worst");
    const double efficiency = number_at(member(variant_, "totals"), "efficiency", worst);
    return efficiency >= next_to_nothing ? worst : reports::count(moments, "best");
  }
  std::size_t point() const { return circuit_.point; }
  double available_w() const { return number_at(member(variant_, "totals"), "available_w", point()); }

  int node(const std::string& name) {
    if (name == "ground") return ground;
    const auto [found, fresh] = numbers_.try_emplace(name, static_cast<int>(circuit_.nodes.size()));
    if (fresh) circuit_.nodes.push_back(name);
    return found->second;
  }
  std::vector<int> nodes_of(const Json& thing) {
    std::vector<int> nodes;
    for (const Json& name : list(thing, "nodes")) nodes.push_back(node(raw_text(name)));
    return nodes;
  }

  Item start(const Json& thing, const std::string& kind) {
    Item one;
    one.name = one.label = raw_text(member(thing, "name"));
    one.kind = kind;
    one.box = raw_text(member(thing, "box"));
    one.nodes = nodes_of(thing);
    one.heat_w = number_at(thing, "heat_w", point());
    one.share = std::isfinite(one.heat_w / available_w()) ? std::max(0.0, one.heat_w / available_w()) : 0.0;
    return one;
  }

  void read_source() {
    const Json& source = item(member(variant_, "sources"), 0);
    Item one = start(source, "source");
    if (one.nodes.empty()) one.nodes = {node(raw_text(member(source, "node"))), ground};
    one.symbol = Symbol::source;
    one.value = spell(number_at(source, "available_w", point()), "W");
    if (live_) {
      one.live_value = {"sources/0/available_w", "W", ""};
      for (const std::size_t p : sampled()) keep(one, spell(number_at(source, "available_w", p), "W"));
    }
    one.heat_w = 0.0;
    circuit_.items.push_back(std::move(one));
  }

  void read_part(const Json& part, const std::string& path) {
    Item one = start(part, raw_text(member(part, "kind")));
    const auto known = symbols().find(one.kind);
    one.symbol = known != symbols().end() ? known->second : one.nodes.size() >= 4 ? Symbol::two_port : Symbol::one_port;
    if (one.symbol == Symbol::stub_shorted && raw_text(member(part, "end")) == "open") one.symbol = Symbol::stub_open;
    if (is_two_port(one) && one.nodes.size() != 4) one.symbol = Symbol::one_port;
    one.value = value_of(part, point());
    if (live_) {
      one.live_value = series_of(part, path);
      one.live_heat = path + "/heat_w";
      for (const std::size_t p : sampled()) keep(one, value_of(part, p));
    }
    one.impedance_ohm = number(at_point(part, "z0_ohm", point()));
    read_setting(one, part);
    circuit_.items.push_back(std::move(one));
  }

  void read_setting(Item& one, const Json& part) const {
    const double choice = number(at_point(part, "choice", point()));
    if (std::isfinite(choice)) one.choice = static_cast<int>(std::lround(choice));
    for (const Json& setting : list(variant_, "settings"))
      if (raw_text(member(setting, "knob")) == one.name) one.adjustable = true;
    for (const char* key : {"value_f", "value_h", "value_ohm"})
      if (const Json& value = member(part, key); value.is_array() && value.size() > 2) one.adjustable = true;
    if (const Json& choices = member(part, "choice"); live_ && choices.is_array())
      for (const Json& other : choices)
        if (number(other) != choice) keep(one, "elsewhere");
    if (one.symbol == Symbol::selector && one.choice >= 0 && one.choice + 1 < static_cast<int>(one.nodes.size())) {
      const int joined = one.nodes[static_cast<std::size_t>(one.choice) + 1];
      one.value = "on " + (joined == ground ? std::string("ground") : circuit_.nodes[static_cast<std::size_t>(joined)]);
    }
  }

  /// A load that is more than a plain resistance, or that says what it radiates, is an antenna; else it may be a
  /// receiver or a dummy.
  void read_load(const Json& load, const std::string& path) {
    Item one = start(load, "load");
    const Json& z = item(member(load, "impedance_ohm"), point());
    const double re = number(item(z, 0)), im = number(item(z, 1));
    const double heat = number_at(load, "heat_w", point());
    one.symbol = std::abs(im) > 1e-9 * std::abs(re) || heat > 0.0 ? Symbol::antenna : Symbol::load;
    one.value = std::isfinite(re) && std::isfinite(im) ? spell_complex(re, im) + " ohm" : "";
    if (im == 0.0) one.value = spell(re, "ohm");
    if (live_) {
      one.live_value = {path + "/impedance_ohm", "complex", ""};
      one.live_heat = path + "/heat_w";
      for (const std::size_t p : sampled()) {
        const Json& at = item(member(load, "impedance_ohm"), p);
        keep(one, spell_complex(number(item(at, 0)), number(item(at, 1))) + " ohm");
      }
    }
    circuit_.items.push_back(std::move(one));
  }

  /// Some points all over the sweep.
  std::vector<std::size_t> sampled() const {
    constexpr std::size_t most = 40;
    const std::size_t points = list(variant_, "frequencies_hz").size();
    std::vector<std::size_t> some;
    for (std::size_t k = 0; k < std::min(most, points); ++k)
      some.push_back(points <= most ? k : k * (points - 1) / (most - 1));
    return some;
  }

  static void keep(Item& one, const std::string& text) {
    if (text != one.value && std::find(one.wider.begin(), one.wider.end(), text) == one.wider.end())
      one.wider.push_back(text);
  }

  /// The heat that a part will have, and whether a selector will move.
  void look_ahead(Item& one) {
    if (one.wider.empty()) one.live_value = {};
    if (one.symbol == Symbol::selector) {
      circuit_.switched = circuit_.switched || !one.wider.empty();
      one.live_value = {};
    }
    for (const std::size_t p : sampled()) {
      double heat_w = 0.0;
      for (std::size_t from = 0; from < one.live_heat.size();) {
        const std::size_t to = std::min(one.live_heat.find(' ', from), one.live_heat.size());
        const std::string path = one.live_heat.substr(from, to - from);
        const Json& group = list(variant_, path.starts_with("parts/") ? "parts" : "loads");
        heat_w += number_at(item(group, std::stoul(path.substr(path.find('/') + 1))), "heat_w", p);
        from = to + 1;
      }
      const double share = heat_w / number_at(member(variant_, "totals"), "available_w", p);
      if (!std::isfinite(share)) continue;
      one.warmest = std::max(one.warmest, share);
      if (const std::string watts = watts_of(one, heat_w, share); watts != one.watts) one.wider.push_back(watts);
    }
    // Next to nothing here, but not everywhere: it has its place.
    if (one.watts.empty() && one.warmest >= 5e-6 && std::isfinite(one.heat_w)) one.watts = spell(one.heat_w, "W", 2);
  }

  /// Why this point of all.
  std::string reason() const {
    if (list(variant_, "frequencies_hz").size() < 2) return "";
    return point() == reports::count(member(variant_, "moments"), "worst") ? ", where least gets on the air"
                                                                           : ", where most gets on the air";
  }

  std::string caption() const {
    const Json& totals = member(variant_, "totals");
    const double hz = number(item(member(variant_, "frequencies_hz"), point()));
    std::string said = "at " + spell(hz, "Hz", 6) + reason();
    const double on_air = number_at(totals, "radiated_w", point()), loss = number_at(totals, "total_loss_db", point());
    if (std::isfinite(on_air)) said += ": " + spell(on_air, "W") + " of " + spell(available_w(), "W") + " on the air";
    if (std::isfinite(loss)) said += ", " + spell(loss, "dB") + " lost on the way";
    return said;
  }

  /// Two coils that share flux become one symbol; a third, coupled to both, stays by itself.
  void merge_coupled() {
    for (const Json& coupling : list(variant_, "couplings")) {
      const std::string first = raw_text(item(member(coupling, "parts"), 0)),
                        second = raw_text(item(member(coupling, "parts"), 1));
      auto& items = circuit_.items;
      const auto find = [&](const std::string& name) {
        return std::find_if(items.begin(), items.end(),
                            [&](const Item& i) { return i.name == name && i.symbol == Symbol::inductor; });
      };
      const auto a = find(first), b = find(second);
      if (a == items.end() || b == items.end() || a == b || a->nodes.size() != 2 || b->nodes.size() != 2) continue;
      a->label = a->name + ", " + b->name;
      a->name += " and " + b->name;
      const double factor = number(member(coupling, "factor"));
      a->value += (a->value.empty() || b->value.empty() ? "" : ", ") + b->value +
                  (std::isfinite(factor) ? ", k " + reports::significant(factor) : "");
      a->nodes.insert(a->nodes.end(), b->nodes.begin(), b->nodes.end());
      a->live_value = {};
      if (live_) a->live_heat += ' ' + b->live_heat;
      a->heat_w += b->heat_w;
      a->share += b->share;
      a->symbol = Symbol::coupled;
      items.erase(b);
    }
  }

  void shorten_labels() {
    std::map<std::string, int> uses;
    const auto leaf = [](const std::string& name) { return name.substr(name.rfind('.') + 1); };
    for (const Item& one : circuit_.items) ++uses[leaf(one.name)];
    for (Item& one : circuit_.items)
      if (one.symbol != Symbol::coupled && uses[leaf(one.name)] == 1) one.label = leaf(one.name);
  }

  const Json& variant_;
  const bool live_;
  Circuit circuit_;
  std::map<std::string, int> numbers_;
};

}  // namespace

bool is_two_port(const Item& item) {
  switch (item.symbol) {
    case Symbol::line:
    case Symbol::transformer:
    case Symbol::coupled:
    case Symbol::choke:
    case Symbol::pad:
    case Symbol::two_port:
      return true;
    default:
      return false;
  }
}

Circuit read_circuit(const Json& variant, bool live) {
  return Reader(variant, live).take();
}

}  // namespace pictures
