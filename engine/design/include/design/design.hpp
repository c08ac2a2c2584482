// A design: one variant of a feed file with every name, unit, default and box settled. Plain data, indices not names; each
// thing keeps the Span of the text it came from. Units are SI; node 0 is ground.
#pragma once

#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "design/ids.hpp"
#include "design/value.hpp"
#include "grammar/quantity.hpp"
#include "grammar/source.hpp"
#include "measured/touchstone.hpp"
#include "physics/dipole.hpp"
#include "physics/line_geometry.hpp"
#include "physics/solenoid.hpp"
#include "physics/toroid.hpp"
#include "wattfall/sdk.hpp"

namespace wattfall::design {

struct Node {
  std::string name;  ///< "desk", "atu.mid"
  Span span;         ///< where it is named first
};

// ---- what parts are made of -------------------------------------------------------------------------------------

/// How a coil's or capacitor's series loss resistance is given.
struct SeriesLoss {
  enum class Form {
    none,
    q,           ///< resistance X/Q at every frequency
    q_at,        ///< X/Q at `at_hz`, and growing as sqrt(f/at_hz)
    resistance,  ///< ohms in series
  };
  Form form = Form::none;
  Value value;  ///< Q or ohms
  Value at_hz;
};

/// A table over frequency, keys rising; linear between its points, real and imaginary parts apart.
struct Table {
  std::vector<double> frequencies_hz;
  std::vector<std::complex<double>> values;
};

/// A wire of round section whose resistance grows by skin effect.
struct RoundWire {
  double diameter_m = 0.0;
  physics::Conductor metal;
};

/// A winding on a closed core: from AL, or from the ring's dimensions and its permeability over frequency.
struct CoreWinding {
  double turns = 0.0;                  ///< a transformer's: those of the from side
  std::optional<double> index_h;       ///< AL [H/turn^2]
  std::optional<physics::Ring> ring;   ///< instead; or beside AL, for the flux and the wire's length alone
  physics::Permeability permeability;  ///< with AL: empty where the core's loss is not told
  std::optional<RoundWire> wire;       ///< of all windings, one layer close round the ring
  double saturation_t = 0.25;          ///< where a caution is due; ferrites' low typical figure unless told
};

struct Resistor {
  Value ohms;
  std::optional<physics::Section> skin;  ///< ohms are then those at direct current
  std::optional<Value> inductance;   ///< in series
  std::optional<Value> capacitance;  ///< across all
};

struct Inductor {
  Value henries;
  SeriesLoss loss;
  std::shared_ptr<const physics::WoundCoil> wound;  ///< by its size: instead of henries; its own loss where `loss` is none
  std::shared_ptr<const CoreWinding> core;          ///< on a core: instead of henries; `loss` is the wire's
  std::optional<Value> capacitance;   ///< across the lossy coil
  std::optional<Value> resonance_hz;  ///< instead: C = 1/(w0^2 L)
};

struct Capacitor {
  Value farads;
  SeriesLoss loss;
  std::optional<Value> tangent;     ///< conductance w C tan d across C
  std::optional<Value> inductance;  ///< in series with all
  std::string outside;  ///< plates by their size: what lies outside their model's range, with its figure; empty inside
};

/// What a length of line is, apart from where it stands. Loss points are constants; the model's plugin has fitted k1, k2.
struct LineMake {
  std::string cable;   ///< the cable's name; empty where the figures are given
  Value length_m;      ///< > 0
  std::complex<double> impedance_ohm;
  double velocity = 1.0;
  std::vector<sdk::LossPoint> losses;  ///< empty: lossless
  /// By its cross-section: R, L, G, C at each frequency, instead of impedance, velocity and losses (which then hold the figures without loss).
  std::variant<std::monostate, physics::Coax, physics::TwoWire, physics::WireOverGround> section;
  const sdk::LineModel* model = nullptr;
  double k1 = 0.0, k2 = 0.0;
};

struct Line {
  LineMake make;
  std::optional<Value> common_impedance;  ///< of both conductors together against ground
};

struct Stub {
  LineMake make;
  bool open = false;  ///< at its far end; else shorted
};

/// On the from side, in this order from its terminals: winding and leakage in series, magnetizing and core across; then ideal.
struct Transformer {
  Value ratio;  ///< turns of the to side over turns of the from side: V_to = ratio V_from
  std::optional<Value> winding_ohms;
  std::optional<Value> leakage_henries;
  std::optional<Value> magnetizing_henries;
  std::optional<Value> core_ohms;  ///< loss resistance across
  std::optional<Value> core_q;     ///< instead: R = Q w Lm, across
  std::shared_ptr<const CoreWinding> wound;  ///< instead of magnetizing and core: by its core and turns
};

struct TwoPort { std::shared_ptr<const measured::Network> data; };

struct Pad {
  Value attenuation_db;
  Value impedance_ohm;
};

/// A choke: the two conductors of a pair wound together. Differential currents pass; the common one meets `impedance`.
struct Choke {
  Value impedance_ohm;
  std::optional<Table> table;               ///< instead, over frequency
  std::shared_ptr<const CoreWinding> core;  ///< instead, by its core and turns
};

/// Joins nodes[0] to nodes[1 + choice]; the others are left open.
struct Selector { Value choice; };

/// A kind brought by a plugin.
struct PluginPart {
  const sdk::Kind* kind = nullptr;
  std::vector<Value> values;  ///< in the order of kind->properties
};

/// A load's own impedance, and what of the power it takes is radiated.
struct Load {
  struct Series { std::optional<Value> ohms, henries, farads; };
  std::variant<Value, Table, std::shared_ptr<const measured::Network>, Series, physics::Dipole, physics::Monopole> impedance;
  std::variant<Value, Table> radiates = Value(1.0);  ///< share of the absorbed power
  std::optional<Value> loss_ohms;                    ///< instead: a part of the load's own resistance
};

/// The Thevenin source behind the rig's terminals. Limits and duty apply to the parts, not to it.
struct Source {
  std::string name;
  NodeId node, other = ground;
  Value available_w;
  Value impedance_ohm = Value(50.0);
  std::optional<Value> reference_ohm;  ///< for SWR; default: the impedance's real part
  std::vector<std::pair<double, double>> foldback;  ///< SWR, share of the available power
  double duty = 1.0;
  Span span;

  /// What its SWR is taken against [ohm]: `reference_ohm`, else the resistance of its impedance. `knobs` as in Value::at.
  std::complex<double> reference_at(double frequency_hz, std::span<const double> knobs) const;
  bool reference_depends_on(KnobId knob) const;
};

using Model = std::variant<Resistor, Inductor, Capacitor, Line, Stub, Transformer, TwoPort, Pad, Choke, Selector, PluginPart, Load>;

struct Limits {
  std::optional<double> volts_peak, amps_rms, watts;
  std::optional<double> watts_per_m;  ///< lines: heat at their worst place
  bool volts_of_air_gap = false;      ///< volts_peak is where a gap of air arcs at its best
  Span span;
};

struct Tolerance {
  double amount = 0.0;      ///< relative, or absolute in the main value's unit
  bool relative = true;
  bool normal = false;      ///< `amount` is three sigma; else uniform
};

/// A part or a load. `terminals`: one-ports {a, b}; two-ports {in, in's other conductor, out, out's other conductor}.
/// selectors: {n, choices...}.
struct Part {
  std::string name;  ///< "atu.Cin"
  std::string kind;  ///< as written: "capacitor"
  Model model;
  std::vector<NodeId> terminals;
  Limits limits;
  std::optional<Tolerance> tolerance;
  BoxId box;  ///< the innermost box it stands in
  Span span;  ///< of the statement
};

bool is_two_port(const Part& part);
bool is_load(const Part& part);
/// The core that an inductor, choke or transformer is wound on; null where there is none.
const CoreWinding* core_of(const Part& part);

/// Two coils share flux: M = factor sqrt(La Lb).
struct Coupling {
  std::string name;
  PartId first, second;
  Value factor;
  Span span;
};

/// A use of a box. `ports` are the nodes outside, in the order of the box's ports.
struct Box {
  std::string name;  ///< "atu", "pair.first"
  std::string kind;  ///< the box's own name: "tee"
  std::vector<NodeId> ports;
  BoxId parent;
  Span span;
};

// ---- what may be turned -----------------------------------------------------------------------------------------

/// What a preferred value is made of: one part, or two that are bought and joined.
struct Made {
  double first = 0.0, second = 0.0;  ///< [SI]; second 0: one part alone
  bool in_series = false;            ///< the two; else side by side
};

struct Knob {
  std::string name;  ///< the part's or quantity's name
  Dimension dim;
  double lower = 0.0, upper = 0.0;  ///< continuous
  std::vector<double> choices;      ///< or one of these values, rising; empty for a continuous knob
  std::vector<Made> made;           ///< by choice, where pairs of preferred values were asked for; else empty
  std::optional<double> step;       ///< choices are every step of a range, its upper end among them: what a dial can be set to
  std::optional<double> start;      ///< as written; none: mid-range
  Span span;
};

// ---- what is asked ----------------------------------------------------------------------------------------------

enum class FigureKind {
  swr_at, return_loss_at, resistance_at, reactance_at, mismatch_at, swr_on, power_into, radiated_from, heat_in, loss_in,
  total_loss, efficiency, peak_volts_across, rms_amps_through, peak_volts_on, rms_amps_on, width_of_swr_at
};

/// A place from which to look both ways: the terminal of `into` at `node` parts the source's side from the load's.
struct Look {
  NodeId node;
  PartId into;
};

struct Figure {
  FigureKind kind = FigureKind::total_loss;
  Look look;   ///< figures at a node (`into` is settled: the part on the load's side)
  PartId part;
  BoxId box;   ///< instead of part: `heat in`, `loss in`, `power into` of a box
  std::optional<Value> reference;  ///< default: the source's
  double below = 0.0;              ///< width_of_swr_at
  std::string text;                ///< as written, blanks made single
  Span span;
};

struct Requirement {
  Figure figure;
  bool below = true;   ///< figure <= value; else >=
  double value = 0.0;  ///< in the figure's own unit [SI; dB; ratio]
  std::optional<std::pair<double, double>> over_hz;
  std::string text;  ///< the whole requirement as written, without `require`
  Span span;

  /// Whether it is asked for there. Ends of a band that were reached by adding steps up count as inside it.
  bool asks_at(double frequency_hz) const;
};

struct Tune {
  enum class When { at, at_each, over };
  std::vector<KnobId> knobs;
  When when = When::at;
  std::vector<double> at_hz;              ///< at: one or several
  std::pair<double, double> over_hz{0, 0};
  bool most = true;
  Figure goal;
  std::vector<Requirement> keeping;
  Span span;
};

struct Plane {
  std::string name;
  Look look;
  Span span;
};

struct Design {
  std::string title;
  std::string file;
  std::optional<std::string> variant;  ///< its name: as written, and the form
  std::optional<std::string> written;  ///< the variant of the text; none outside all of them
  std::string form;         ///< which forms of tuner this one tries, where the text leaves a choice; else empty
  std::vector<Node> nodes;  ///< [0] is ground
  Source source;
  std::vector<Part> parts;  ///< loads among them, in the order of the text
  std::vector<Coupling> couplings;
  std::vector<Box> boxes;
  std::vector<Knob> knobs;
  std::vector<double> frequencies_hz;  ///< the points of all sweeps, rising, without repetitions
  /// The frequencies between which all its tables and measurements have values.
  std::pair<double, double> data_hz{0.0, std::numeric_limits<double>::infinity()};
  std::vector<Tune> tunes;
  std::vector<Requirement> requirements;
  std::vector<Figure> figures;  ///< asked for on the command line, required by nobody
  std::vector<Plane> planes;
  std::vector<SourcePtr> sources;  ///< keeps every Span alive

  /// Knob values before tuning: as written, else mid-range (geometric mean of a range above zero).
  std::vector<double> starting_knobs() const;
};

/// The variants of a file, in the order of the text; one without a name where it has none.
struct DesignSet {
  std::vector<Design> variants;
};

}  // namespace wattfall::design
