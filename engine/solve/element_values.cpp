#include "solve/element_values.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "propagation.hpp"

namespace wattfall::solve {
namespace {

using namespace design;
constexpr Complex j{0.0, 1.0};

/// Where a part stands: its frequency, and the setting of the knobs.
struct Point {
  double frequency_hz;
  std::span<const double> knobs;
  double omega;

  Complex at(const Value& value) const { return value.at(frequency_hz, knobs); }
  double real(const Value& value) const { return value.at(frequency_hz, knobs).real(); }
  double real(const std::optional<Value>& value) const { return value ? real(*value) : 0.0; }
};

ElementValue branch(Complex n, Complex d, double loss) {
  ElementValue value;
  value.n = n;
  value.d = d;
  value.loss = loss;
  return value;
}

/// Series loss resistance of a reactance `reactance_at(w)` [ohm]: X/Q; or X(f0)/Q sqrt(f/f0), the square root being that of skin effect.
template <class Reactance>
double series_ohms(const SeriesLoss& loss, const Point& point, Reactance reactance_at) {
  switch (loss.form) {
    case SeriesLoss::Form::none: return 0.0;
    case SeriesLoss::Form::resistance: return point.real(loss.value);
    case SeriesLoss::Form::q: return reactance_at(point.omega) / point.real(loss.value);
    case SeriesLoss::Form::q_at: break;
  }
  const double f0 = point.real(loss.at_hz);
  return reactance_at(2.0 * std::numbers::pi * f0) / point.real(loss.value) * std::sqrt(point.frequency_hz / f0);
}

/// R + j w L, with C across both: n = R + j w L, d = 1 + j w C n, and Re(n conj d) = R exactly.
ElementValue series_with_capacitance(double ohms, double henries, double farads, double omega) {
  const Complex n{ohms, omega * henries};
  return branch(n, 1.0 + j * (omega * farads) * n, ohms);
}

double coil_ohms(const Inductor& coil, const Point& point) {
  const double henries = point.real(coil.henries);
  return series_ohms(coil.loss, point, [&](double omega) { return omega * henries; });
}

double coil_farads(const Inductor& coil, const Point& point) {
  if (!coil.resonance_hz) return point.real(coil.capacitance);
  const double omega0 = 2.0 * std::numbers::pi * point.real(*coil.resonance_hz);
  return 1.0 / (omega0 * omega0 * point.real(coil.henries));
}

ElementValue of(const Resistor& part, const Point& point) {
  double ohms = point.real(part.ohms);
  if (part.skin) ohms = physics::skin_scaled_resistance_ohm(ohms, *part.skin, point.frequency_hz);
  return series_with_capacitance(ohms, point.real(part.inductance), point.real(part.capacitance), point.omega);
}

/// A winding on a core: the core's impedance in series with the wire's loss.
Complex core_ohms(const CoreWinding& core, double frequency_hz) {
  if (!core.index_h) return physics::core_impedance(*core.ring, core.permeability, core.turns, frequency_hz).series_ohm;
  const double initial = core.permeability.points.empty() ? 1.0 : core.permeability.points.front().real;
  return physics::core_impedance(*core.index_h, initial, core.permeability, core.turns, frequency_hz).series_ohm;
}

/// The wire of so many turns close round the core, by skin effect; nothing where it is not told.
double wire_ohms(const CoreWinding& core, double turns, double frequency_hz) {
  if (!core.wire) return 0.0;
  const physics::InternalImpedance wire = physics::round_wire(core.wire->metal, core.wire->diameter_m, frequency_hz);
  return wire.resistance_ohm_per_m * physics::winding_length_m(*core.ring, turns, core.wire->diameter_m);
}

/// What a winding on a core loses outside it: the wire's loss and what is told.
double beside_core_ohms(const Inductor& part, double core_reactance, const Point& point) {
  const double inductance = core_reactance / point.omega;
  return wire_ohms(*part.core, part.core->turns, point.frequency_hz) +
         series_ohms(part.loss, point, [&](double omega) { return omega * inductance; });
}

/// The loss that is told in so many words goes before that of the geometry.
ElementValue by_size(const Inductor& part, const Point& point) {
  Complex z;
  double farads = part.capacitance ? point.real(*part.capacitance) : 0.0;
  if (part.wound != nullptr) {
    const physics::CoilAt at = physics::coil_at(*part.wound, point.frequency_hz);
    z = {at.resistance_ohm, point.omega * at.inductance_h};
    if (!part.capacitance) farads = part.wound->self_capacitance_f;
  } else {
    z = core_ohms(*part.core, point.frequency_hz) + wire_ohms(*part.core, part.core->turns, point.frequency_hz);
  }
  const double inductance = z.imag() / point.omega;
  const double told = series_ohms(part.loss, point, [&](double omega) { return omega * inductance; });
  const bool instead = part.wound != nullptr && part.loss.form != SeriesLoss::Form::none;
  z = {instead ? told : z.real() + told, z.imag()};
  if (part.resonance_hz) {
    const double omega0 = 2.0 * std::numbers::pi * point.real(*part.resonance_hz);
    farads = 1.0 / (omega0 * omega0 * inductance);
  }
  return series_with_capacitance(z.real(), inductance, farads, point.omega);
}

ElementValue of(const Inductor& part, const Point& point) {
  if (part.wound != nullptr || part.core != nullptr) return by_size(part, point);
  return series_with_capacitance(coil_ohms(part, point), point.real(part.henries), coil_farads(part, point), point.omega);
}

/// Z = R + j w L + 1/Y with Y = j w C + w C tan d: n = (R + j w L) Y + 1, d = Y, Re(n conj d) = R |Y|^2 + Re Y.
ElementValue of(const Capacitor& part, const Point& point) {
  const double farads = point.real(part.farads);
  const Complex y{point.omega * farads * point.real(part.tangent), point.omega * farads};
  const double ohms = farads == 0.0 ? 0.0 : series_ohms(part.loss, point, [&](double omega) { return 1.0 / (omega * farads); });
  const Complex series{ohms, point.omega * point.real(part.inductance)};
  return branch(series * y + 1.0, y, ohms * std::norm(y) + y.real());
}

ElementValue impedance_branch(Complex z) { return branch(z, 1.0, z.real()); }

ElementValue of(const Load& part, const Point& point) {
  if (const auto* value = std::get_if<Value>(&part.impedance)) return impedance_branch(point.at(*value));
  if (const auto* table = std::get_if<Table>(&part.impedance)) return impedance_branch(interpolate(*table, point.frequency_hz));
  if (const auto* dipole = std::get_if<physics::Dipole>(&part.impedance)) return impedance_branch(physics::dipole_at(*dipole, point.frequency_hz).input_ohm);
  if (const auto* monopole = std::get_if<physics::Monopole>(&part.impedance)) return impedance_branch(physics::monopole_at(*monopole, point.frequency_hz).input_ohm);
  if (const auto* series = std::get_if<Load::Series>(&part.impedance)) {
    Complex z{point.real(series->ohms), point.omega * point.real(series->henries)};
    if (series->farads) z += 1.0 / (j * point.omega * point.real(*series->farads));
    return impedance_branch(z);
  }
  // A measured reflection: Z = R (1 + S)/(1 - S), so an open (S = 1) needs no infinity.
  const auto& data = *std::get<std::shared_ptr<const measured::Network>>(part.impedance);
  Complex s{std::numeric_limits<double>::quiet_NaN(), 0.0};
  measured::parameters_at(data, point.frequency_hz, &s);
  const double r = data.reference_ohm[0];
  return branch(r * (1.0 + s), 1.0 - s, r * (1.0 - std::norm(s)));
}

ElementValue of_line(const Design& design, const graph::Element& element, const Point& point) {
  ElementValue value;
  Complex gamma = 0.0;
  if (!propagate(design, element, &point.frequency_hz, 1, &gamma, &value.impedance)) gamma = std::numeric_limits<double>::quiet_NaN();
  value.gamma_l = gamma * point.real(make_of(design, element).length_m);
  return value;
}

/// Both windings' wire as the from side sees it: R1 + R2/n^2.
double wires_of(const Transformer& part, const Point& point) {
  if (part.wound == nullptr || !part.wound->wire) return 0.0;
  const double ratio = point.real(part.ratio);
  return wire_ohms(*part.wound, part.wound->turns, point.frequency_hz) +
         wire_ohms(*part.wound, part.wound->turns * ratio, point.frequency_hz) / (ratio * ratio);
}

/// Winding resistance and leakage in series; magnetizing inductance and core loss across. Y = 1/Rc + 1/(j w Lm).
ElementValue of_transformer(const Transformer& part, graph::Element::Role role, const Point& point) {
  if (role == graph::Element::Role::winding)
    return series_with_capacitance(point.real(part.winding_ohms) + wires_of(part, point), point.real(part.leakage_henries), 0.0, point.omega);
  ElementValue value;
  value.ratio = point.real(part.ratio);
  if (role == graph::Element::Role::turns) return value;
  if (part.wound != nullptr) return impedance_branch(core_ohms(*part.wound, point.frequency_hz));
  const double reactance = part.magnetizing_henries ? point.omega * point.real(*part.magnetizing_henries) : 0.0;
  double conductance = part.core_ohms ? 1.0 / point.real(*part.core_ohms) : 0.0;
  if (part.core_q) conductance = 1.0 / (point.real(*part.core_q) * reactance);
  return branch(1.0, {conductance, reactance > 0.0 ? -1.0 / reactance : 0.0}, conductance);
}

/// From S with port references R: D (V - R I) = S D (V + R I), D = diag(1/sqrt R); rows scaled by sqrt R.
ElementValue from_scattering(const std::array<Complex, 4>& s, double r1, double r2) {
  const double r[2] = {r1, r2};
  ElementValue value;
  for (int row = 0; row < 2; ++row)
    for (int column = 0; column < 2; ++column) {
      const double unit = row == column ? 1.0 : 0.0;
      const double scale = std::sqrt(r[row] / r[column]);
      value.a[2 * row + column] = (unit - s[2 * row + column]) * scale;
      value.b[2 * row + column] = -(unit + s[2 * row + column]) * scale * r[column];
    }
  return value;
}

ElementValue of(const TwoPort& part, const Point& point) {
  std::array<Complex, 4> s;
  s.fill(std::numeric_limits<double>::quiet_NaN());
  measured::parameters_at(*part.data, point.frequency_hz, s.data());
  return from_scattering(s, part.data->reference_ohm[0], part.data->reference_ohm[1]);
}

/// An attenuator is matched both ways and passes the voltage ratio 10^(-dB/20).
ElementValue of(const Pad& part, const Point& point) {
  const double through = std::pow(10.0, -point.real(part.attenuation_db) / 20.0);
  const double r = point.real(part.impedance_ohm);
  return from_scattering({0.0, through, through, 0.0}, r, r);
}

ElementValue of(const Choke& part, const Point& point) {
  if (part.core != nullptr) return impedance_branch(core_ohms(*part.core, point.frequency_hz));
  return impedance_branch(part.table ? interpolate(*part.table, point.frequency_hz) : point.at(part.impedance_ohm));
}

ElementValue of_selector(const Selector& part, int choice, const Point& point) {
  const bool closed = std::lround(point.real(part.choice)) == choice;
  return closed ? branch(0.0, 1.0, 0.0) : branch(1.0, 0.0, 0.0);
}

ElementValue of(const PluginPart& part, const Point& point) {
  std::vector<sdk::Complex> values;
  for (const Value& value : part.values) {
    const Complex at = point.at(value);
    values.push_back({at.real(), at.imag()});
  }
  sdk::Complex a[4] = {}, b[4] = {};
  sdk::Failure failure{};
  const auto status = part.kind->rows(part.kind->self, values.data(), &point.frequency_hz, 1, a, b, &failure);
  if (status != sdk::Status::ok) a[0].re = std::numeric_limits<double>::quiet_NaN();
  ElementValue value;
  for (int i = 0; i < 4; ++i) {
    value.a[i] = {a[i].re, a[i].im};
    value.b[i] = {b[i].re, b[i].im};
  }
  if (part.kind->ports == 2) return value;
  return branch(-value.b[0], value.a[0], (-value.b[0] * std::conj(value.a[0])).real());
}

/// V = Z (I - j w C V), Z = [R1 + j w L1, j w M; j w M, R2 + j w L2]: A = 1 + Z j w C, B = -Z.
ElementValue of_coupled(const design::Design& design, const design::Coupling& coupling, const Point& point) {
  const PartId ids[2] = {coupling.first, coupling.second};
  ElementValue value;
  double henries[2];
  for (int i = 0; i < 2; ++i) {
    const auto& coil = std::get<Inductor>(design.parts[ids[i].index].model);
    if (coil.wound != nullptr || coil.core != nullptr) {
      // n = R + j w L and d = 1 + j w C n of the lone coil, read back.
      const ElementValue lone = by_size(coil, point);
      henries[i] = lone.n.imag() / point.omega;
      value.coil_ohms[i] = lone.n.real();
      value.coil_susceptance[i] = ((lone.d - 1.0) / lone.n).imag();
      continue;
    }
    henries[i] = point.real(coil.henries);
    value.coil_ohms[i] = coil_ohms(coil, point);
    value.coil_susceptance[i] = point.omega * coil_farads(coil, point);
  }
  const double mutual = point.real(coupling.factor) * std::sqrt(henries[0] * henries[1]);
  for (int row = 0; row < 2; ++row)
    for (int column = 0; column < 2; ++column) {
      const Complex z = row == column ? Complex{value.coil_ohms[row], point.omega * henries[row]} : Complex{0.0, point.omega * mutual};
      value.a[2 * row + column] = (row == column ? 1.0 : 0.0) + z * j * value.coil_susceptance[column];
      value.b[2 * row + column] = -z;
    }
  return value;
}

/// Elements of a coil in a set of three and more.
ElementValue of_set(const Inductor& coil, const graph::Element& element, const Point& point) {
  using Role = graph::Element::Role;
  ElementValue value;
  value.ratio = element.number;
  if (element.role == Role::own_flux)
    return impedance_branch(coil.core != nullptr ? element.number * core_ohms(*coil.core, point.frequency_hz) : j * point.omega * element.number);
  if (element.role == Role::shared_flux) return value;
  const ElementValue lone = of(coil, point);
  if (element.role == Role::own_loss && coil.core != nullptr) {
    const double ohms = beside_core_ohms(coil, lone.n.imag(), point);
    return branch(ohms, 1.0, ohms);
  }
  if (element.role == Role::own_loss) return branch(lone.n.real(), 1.0, lone.n.real());
  return branch(1.0, {0.0, ((lone.d - 1.0) / lone.n).imag()}, 0.0);
}

bool in_set(graph::Element::Role role) {
  using Role = graph::Element::Role;
  return role == Role::own_loss || role == Role::own_flux || role == Role::shared_flux || role == Role::own_stray;
}

}  // namespace

double core_share(const design::Part& part, double frequency_hz, std::span<const double> knobs) {
  const auto* coil = std::get_if<Inductor>(&part.model);
  if (coil == nullptr || coil->core == nullptr) return std::numeric_limits<double>::quiet_NaN();
  const double core = core_ohms(*coil->core, frequency_hz).real();
  const double all = by_size(*coil, {frequency_hz, knobs, 2.0 * std::numbers::pi * frequency_hz}).n.real();
  return all > 0.0 ? core / all : 0.0;
}

Complex interpolate(const design::Table& table, double frequency_hz) {
  const auto& keys = table.frequencies_hz;
  std::size_t i = 1;
  while (i + 1 < keys.size() && keys[i] < frequency_hz) ++i;
  if (keys.size() == 1) return table.values.front();
  const double share = (frequency_hz - keys[i - 1]) / (keys[i] - keys[i - 1]);
  return table.values[i - 1] + share * (table.values[i] - table.values[i - 1]);
}

ElementValue element_value(const design::Design& design, const graph::Element& element, double frequency_hz,
                           std::span<const double> knobs) {
  const Point point{frequency_hz, knobs, 2.0 * std::numbers::pi * frequency_hz};
  if (element.role == graph::Element::Role::coupled) return of_coupled(design, design.couplings[element.coupling], point);
  if (in_set(element.role)) return of_set(std::get<Inductor>(design.parts[element.part.index].model), element, point);
  return std::visit(
      [&](const auto& model) -> ElementValue {
        using Model = std::decay_t<decltype(model)>;
        if constexpr (std::is_same_v<Model, Line> || std::is_same_v<Model, Stub>) return of_line(design, element, point);
        else if constexpr (std::is_same_v<Model, Transformer>) return of_transformer(model, element.role, point);
        else if constexpr (std::is_same_v<Model, Selector>) return of_selector(model, element.choice, point);
        else return of(model, point);
      },
      design.parts[element.part.index].model);
}

}  // namespace wattfall::solve
