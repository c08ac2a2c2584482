// One overload a kind of part. What no overload speaks of (a limit's spelling, a property that a kind gains) still shows in the statement's text.
#include "design/facts.hpp"

#include <cstdint>
#include <cstring>

#include "grammar/parse.hpp"
#include "grammar/quantity.hpp"

namespace wattfall::design {
namespace {

/// Enough that a change of the text shows, few enough that another machine's last digit does not.
constexpr int digits = 7;

std::string in_unit(double value, Dimension dim) {
  return spell({value, dim}, digits);
}

/// A fingerprint of numbers (FNV-1a, 32 bits): files of measured data are told apart by it.
class Fingerprint {
 public:
  void add(double number) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &number, sizeof bits);
    for (int byte = 0; byte < 8; ++byte) sum_ = (sum_ ^ static_cast<std::uint32_t>((bits >> (8 * byte)) & 0xFF)) * 16777619u;
  }
  void add(std::complex<double> number) {
    add(number.real());
    add(number.imag());
  }
  std::string text() const {
    constexpr const char* hex = "0123456789abcdef";
    std::string shown;
    for (int shift = 28; shift >= 0; shift -= 4) shown += hex[(sum_ >> shift) & 0xF];
    return shown;
  }

 private:
  std::uint32_t sum_ = 2166136261u;
};

std::string points_text(std::size_t points, const Fingerprint& sum) {
  return std::to_string(points) + (points == 1 ? " point" : " points") + ", sum " + sum.text();
}

class FactFinder {
 public:
  explicit FactFinder(const Design& design) : knobs_(design.starting_knobs()) {
    if (!design.frequencies_hz.empty()) middle_hz_ = design.frequencies_hz[design.frequencies_hz.size() / 2];
  }

  void operator()(const Resistor& part) {
    add("resistance", part.ohms, dimension::resistance);
    add("series inductance", part.inductance, dimension::inductance);
    add("capacitance across", part.capacitance, dimension::capacitance);
    if (part.skin) add(*part.skin);
  }
  void operator()(const Inductor& part) {
    if (part.wound != nullptr) {
      add("inductance of the winding", part.wound->inductance_h, dimension::inductance);
      add(part.wound->coil.section());
    } else if (part.core != nullptr) {
      add(*part.core);
    } else {
      add("inductance", part.henries, dimension::inductance);
    }
    add(part.loss);
    add("capacitance across", part.capacitance, dimension::capacitance);
    add("self-resonance", part.resonance_hz, dimension::frequency);
  }
  void operator()(const Capacitor& part) {
    add("capacitance", part.farads, dimension::capacitance);
    add(part.loss);
    add("tan d", part.tangent, dimension::number);
    add("series inductance", part.inductance, dimension::inductance);
  }
  void operator()(const Line& part) {
    add(part.make);
    add("common impedance", part.common_impedance, dimension::resistance);
  }
  void operator()(const Stub& part) {
    add(part.make);
    add("end", part.open ? "open" : "shorted");
  }
  void operator()(const Transformer& part) {
    add("turns ratio", part.ratio, dimension::number);
    add("winding resistance", part.winding_ohms, dimension::resistance);
    add("leakage", part.leakage_henries, dimension::inductance);
    add("magnetizing inductance", part.magnetizing_henries, dimension::inductance);
    add("core resistance", part.core_ohms, dimension::resistance);
    add("core Q", part.core_q, dimension::number);
    if (part.wound != nullptr) add(*part.wound);
  }
  void operator()(const TwoPort& part) { add(part.data); }
  void operator()(const Pad& part) {
    add("attenuation", part.attenuation_db, dimension::level);
    add("impedance", part.impedance_ohm, dimension::resistance);
  }
  void operator()(const Choke& part) {
    if (part.table) {
      add("impedance", *part.table);
    } else if (part.core != nullptr) {
      add(*part.core);
    } else {
      add_complex("impedance", part.impedance_ohm);
    }
  }
  void operator()(const Selector& part) { add("choice", part.choice, dimension::number); }
  void operator()(const PluginPart& part) {
    for (const Value& value : part.values) add_complex("value " + std::to_string(facts_.size() + 1), value);
  }
  void operator()(const Load& part) {
    std::visit([this](const auto& impedance) { add_impedance(impedance); }, part.impedance);
    if (const auto* share = std::get_if<Value>(&part.radiates)) {
      add("radiated share", *share, dimension::number);
    } else {
      add("radiated share", std::get<Table>(part.radiates));
    }
    add("loss resistance", part.loss_ohms, dimension::resistance);
  }

  void add(const std::string& what, std::string value) { facts_.push_back({what, std::move(value)}); }
  void add(const std::string& what, double value, Dimension dim) { add(what, in_unit(value, dim)); }
  void add(const std::string& what, const Value& value, Dimension dim) {
    if (value.plain_knob()) return;  // the knob is a thing of its own
    add(what, value.real_at(middle_hz_, knobs_), dim);
  }
  void add(const std::string& what, const std::optional<Value>& value, Dimension dim) {
    if (value) add(what, *value, dim);
  }
  void add_complex(const std::string& what, const Value& value) {
    if (value.plain_knob()) return;
    const std::complex<double> at = value.at(middle_hz_, knobs_);
    std::string text = in_unit(at.real(), dimension::number);
    if (at.imag() != 0.0) text += (at.imag() < 0.0 ? " - j" : " + j") + in_unit(std::abs(at.imag()), dimension::number);
    add(what, text);
  }
  void add(const physics::Section& section) {
    using physics::Profile;
    const bool tube = section.profile == Profile::tube, strip = section.profile == Profile::strip;
    add(tube ? "tube" : strip ? "strip" : "wire", section.width_m, dimension::length);
    if (tube || strip) add(tube ? "wall" : "thickness", section.thickness_m, dimension::length);
  }
  void add(const Limits& limits) {
    if (limits.volts_peak) add("limit of volts", *limits.volts_peak, dimension::voltage);
    if (limits.amps_rms) add("limit of amps", *limits.amps_rms, dimension::current);
    if (limits.watts) add("limit of heat", *limits.watts, dimension::power);
  }

  std::vector<Fact> take() { return std::move(facts_); }

 private:
  void add(const SeriesLoss& loss) {
    using enum SeriesLoss::Form;
    if (loss.form == none) return;
    add(loss.form == resistance ? "loss resistance" : "Q", loss.value, loss.form == resistance ? dimension::resistance : dimension::number);
    if (loss.form == q_at) add("frequency of its Q", loss.at_hz, dimension::frequency);
  }
  void add(const CoreWinding& core) {
    add("turns", core.turns, dimension::number);
    if (core.index_h) add("AL", *core.index_h, dimension::inductance);
    if (core.ring) {
      Fingerprint sum;
      for (const double size : {core.ring->outer_diameter_m, core.ring->inner_diameter_m, core.ring->height_m}) sum.add(size);
      add("ring", points_text(3, sum));
    }
  }
  void add(const LineMake& make) {
    add("length", make.length_m, dimension::length);
    if (!make.cable.empty()) add("cable", make.cable);
    add_complex("impedance in ohm", Value(make.impedance_ohm));
    add("velocity", make.velocity, dimension::number);
    if (make.losses.empty()) return;
    Fingerprint sum;
    for (const sdk::LossPoint& point : make.losses) {
      sum.add(point.frequency_hz);
      sum.add(point.db_per_100m);
    }
    add("matched loss table", points_text(make.losses.size(), sum));
  }
  void add(const std::string& what, const Table& table) {
    Fingerprint sum;
    for (const double hz : table.frequencies_hz) sum.add(hz);
    for (const std::complex<double> value : table.values) sum.add(value);
    add(what, points_text(table.values.size(), sum));
  }
  void add(const std::shared_ptr<const measured::Network>& data) {
    Fingerprint sum;
    for (const double hz : data->frequencies_hz) sum.add(hz);
    for (const std::complex<double> parameter : data->parameters) sum.add(parameter);
    for (const double ohms : data->reference_ohm) sum.add(ohms);
    add("measured data", points_text(data->frequencies_hz.size(), sum));
  }

  void add_impedance(const Value& value) { add_complex("impedance in ohm", value); }
  void add_impedance(const Table& table) { add("impedance", table); }
  void add_impedance(const std::shared_ptr<const measured::Network>& data) { add(data); }
  void add_impedance(const Load::Series& series) {
    add("resistance", series.ohms, dimension::resistance);
    add("inductance", series.henries, dimension::inductance);
    add("capacitance", series.farads, dimension::capacitance);
  }
  /// Given by its sizes, which stand in the statement.
  template <class Antenna>
  void add_impedance(const Antenna&) {}

  std::vector<double> knobs_;
  double middle_hz_ = 0.0;
  std::vector<Fact> facts_;
};

/// The statement without its comments, blanks and line ends made single.
std::string statement_text(const Span& span) {
  std::string text;
  bool comment = false, quoted = false, blank = false;
  for (const char c : span.text()) {
    if (c == '\n') comment = quoted = false;
    if (c == '"' && !comment) quoted = !quoted;
    if (c == '#' && !quoted) comment = true;
    if (comment) continue;
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      blank = !text.empty();
      continue;
    }
    if (blank) text += ' ';
    blank = false;
    text += c;
  }
  return text;
}

std::string wiring(const Design& design, const std::vector<NodeId>& nodes) {
  std::string text;
  for (const NodeId node : nodes) text += (text.empty() ? "" : " ") + design.nodes[node.index].name;
  return text;
}

Thing source_of(const Design& design) {
  const Source& source = design.source;
  FactFinder found(design);
  found.add("wiring", wiring(design, {source.node, source.other}));
  found.add("power", source.available_w, dimension::power);
  found.add_complex("impedance in ohm", source.impedance_ohm);
  if (source.reference_ohm) found.add_complex("reference in ohm", *source.reference_ohm);
  if (source.duty != 1.0) found.add("duty", source.duty, dimension::number);
  for (const auto& [swr, share] : source.foldback) found.add("power at an SWR of " + in_unit(swr, dimension::number), share, dimension::number);
  return {source.name, "source", found.take(), statement_text(source.span), source.span};
}

Thing part_of(const Design& design, const Part& part) {
  FactFinder found(design);
  found.add("wiring", wiring(design, part.terminals));
  std::visit(found, part.model);
  found.add(part.limits);
  return {part.name, part.kind, found.take(), statement_text(part.span), part.span};
}

Thing knob_of(const Design& design, const Knob& knob) {
  FactFinder found(design);
  if (knob.choices.empty()) {
    found.add("lower end", knob.lower, knob.dim);
    found.add("upper end", knob.upper, knob.dim);
  } else {
    Fingerprint sum;
    for (const double choice : knob.choices) sum.add(choice);
    found.add("choices", points_text(knob.choices.size(), sum));
  }
  if (knob.start) found.add("as written", *knob.start, knob.dim);
  return {knob.name, "knob", found.take(), statement_text(knob.span), knob.span};
}

Thing sweep_of(const Design& design) {
  Thing sweep{.name = "sweep", .kind = "sweep", .facts = {{"points", std::to_string(design.frequencies_hz.size())}}, .statement = {}, .span = {}};
  if (design.frequencies_hz.empty()) return sweep;
  sweep.facts.push_back({"from", in_unit(design.frequencies_hz.front(), dimension::frequency)});
  sweep.facts.push_back({"to", in_unit(design.frequencies_hz.back(), dimension::frequency)});
  return sweep;
}

Thing quantity_of(const syntax::Set& set, const Span& span) {
  const syntax::Phrase& value = set.properties[0];
  const bool literal = value.size() == 1 && value[0].kind == syntax::Term::Kind::number;
  return {std::string(set.name.text), "quantity", {{"value", literal ? spell(value[0].quantity, digits) : statement_text(syntax::span_of(value))}},
          statement_text(span), span};
}

/// Of one name the last stands: a variant's in place of the file's. One that is adjustable is a knob.
void add_quantities(const syntax::List<syntax::Statement>& statements, std::vector<Thing>& quantities) {
  for (const syntax::Statement& statement : statements) {
    const auto* set = std::get_if<syntax::Set>(&statement.what);
    if (set == nullptr || set->properties.size() != 1) continue;
    std::erase_if(quantities, [&](const Thing& one) { return one.name == set->name.text; });
    quantities.push_back(quantity_of(*set, statement.span));
  }
}

bool is_of(const std::optional<std::string>& variant, std::string_view name) {
  // The forms of a tuner are told apart behind the name of the variant.
  return variant && (*variant == name || variant->starts_with(std::string(name) + ", "));
}

}  // namespace

std::vector<Thing> quantities_of(const Design& design) {
  std::vector<Thing> quantities;
  std::vector<const syntax::Variant*> variants;
  std::vector<Result<syntax::File>> files;
  for (const SourcePtr& source : design.sources) files.push_back(parse(source));
  for (const Result<syntax::File>& file : files) {
    if (!file.value || !file.diagnostics.empty()) continue;  // a value from the command line, no file
    add_quantities(file.value->statements, quantities);
    for (const syntax::Statement& statement : file.value->statements)
      if (const auto* variant = std::get_if<syntax::Variant>(&statement.what); variant != nullptr && is_of(design.variant, variant->name.text))
        variants.push_back(variant);
  }
  for (const syntax::Variant* variant : variants) add_quantities(variant->body, quantities);
  return quantities;
}

std::vector<Thing> things_of(const Design& design) {
  std::vector<Thing> things{source_of(design)};
  for (const Part& part : design.parts) things.push_back(part_of(design, part));
  for (const Coupling& coupling : design.couplings) {
    FactFinder found(design);
    found.add("factor", coupling.factor, dimension::number);
    things.push_back({coupling.name, "coupling", found.take(), statement_text(coupling.span), coupling.span});
  }
  for (const Knob& knob : design.knobs) things.push_back(knob_of(design, knob));
  things.push_back(sweep_of(design));
  return things;
}

}  // namespace wattfall::design
