// One overload a kind of part. A value may depend on frequency and on the knobs, so it is evaluated at each point.
#include "part_values.hpp"

#include <algorithm>
#include <cmath>

namespace wattfall::report {
namespace {

using design::Value;

class ValueWriter {
 public:
  ValueWriter(JsonText& out, const VariantResult& variant) : out_(out), variant_(variant) {}

  void operator()(const design::Resistor& part) { real("value_ohm", part.ohms); }
  void operator()(const design::Inductor& part) {
    if (part.wound == nullptr && part.core == nullptr) real("value_h", part.henries);
  }
  void operator()(const design::Capacitor& part) { real("value_f", part.farads); }
  void operator()(const design::Line& part) {
    if (!part.make.length_m.constant()) real("length_m", part.make.length_m);
    z0(part.make);
  }
  void operator()(const design::Stub& part) {
    real("length_m", part.make.length_m);
    out_.field("cable", part.make.cable);
    z0(part.make);
    out_.field("end", part.open ? "open" : "shorted");
  }
  void operator()(const design::Transformer& part) { real("turns_ratio", part.ratio); }
  void operator()(const design::TwoPort&) {}
  void operator()(const design::Pad& part) { real("attenuation_db", part.attenuation_db); }
  void operator()(const design::Choke& part) {
    if (!part.table && part.core == nullptr) complex("value_ohm", part.impedance_ohm);
  }
  void operator()(const design::Selector& part) { real("choice", part.choice); }
  void operator()(const design::PluginPart&) {}
  void operator()(const design::Load&) {}

 private:
  void z0(const design::LineMake& line) {
    line.impedance_ohm.imag() == 0.0 ? out_.field("z0_ohm", line.impedance_ohm.real())
                                     : out_.field("z0_ohm", line.impedance_ohm);
  }

  void real(std::string_view key, const Value& value) {
    std::vector<double> values;
    for (const std::complex<double> one : at_points(value)) values.push_back(one.real());
    same(values) ? out_.field(key, values.front()) : out_.field(key, values);
  }
  void complex(std::string_view key, const Value& value) {
    const std::vector<std::complex<double>> values = at_points(value);
    same(values) ? out_.field(key, values.front()) : out_.field(key, values);
  }

  template <class Number>
  static bool same(const std::vector<Number>& values) {
    return !values.empty() &&
           std::all_of(values.begin(), values.end(), [&](const Number& value) { return value == values.front(); });
  }

  std::vector<std::complex<double>> at_points(const Value& value) const {
    if (value.constant()) return {value.constant_value()};
    std::vector<std::complex<double>> values;
    const ledger::Series& frequencies_hz = variant_.ledger->frequencies_hz;
    std::vector<double> knobs(variant_.settings.size());
    for (std::size_t point = 0; point < frequencies_hz.size(); ++point) {
      for (std::size_t k = 0; k < knobs.size(); ++k) knobs[k] = variant_.settings[k].values[point];
      values.push_back(value.at(frequencies_hz[point], knobs));
    }
    return values;
  }

  JsonText& out_;
  const VariantResult& variant_;
};

}  // namespace

void write_values(JsonText& out, const design::Part& part, const VariantResult& variant) {
  if (variant.settings.size() != variant.design->knobs.size()) return;
  std::visit(ValueWriter(out, variant), part.model);
}

void write_box_name(JsonText& out, const design::Part& part, const design::Design& design) {
  out.key("box");
  part.box ? out.value(design.boxes[part.box.index].name) : out.null();
}

}  // namespace wattfall::report
