// The hand calculation: a network reduced in series and in parallel, a step a part, from the load to the source and from the source to the
// load. It uses the elements' own values and none of the solver's potentials, so that the two check each other.
#pragma once

#include <complex>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "graph/network.hpp"
#include "ledger/ledger.hpp"

namespace wattfall::walk {

/// An impedance [ohm]; none where it is open.
using Ohms = std::optional<std::complex<double>>;

enum class Rule {
  start,     ///< what the reduction begins with; of a branch beside, its first part
  series,    ///< Z + Zp: the same current through both
  parallel,  ///< Y + Yp: the same voltage across both
  line,      ///< Z0 (Z + Z0 tanh gamma l)/(Z0 + Z tanh gamma l), the telegrapher's equation
  turns,     ///< Z times, or over, the square of the turns' ratio
  two_port,  ///< by its chain form: (A Z + B)/(C Z + D)
  coupled,   ///< two coils that share flux
  choke,     ///< equal and opposite currents pass it unchanged
  box,       ///< a box's steps as one
};

struct Step {
  enum class End { none, open, shorted };
  Rule rule = Rule::start;
  std::vector<design::PartId> parts;  ///< what it adds, in the order met
  std::vector<int> elements;          ///< the same, of the network
  graph::Element::Role role = graph::Element::Role::whole;  ///< of a single element
  bool toward_in = true;              ///< two-ports: from the out to the in end
  End end = End::none;                ///< Rule::start of a branch beside: the far end of a line that ends in nothing or in a short
  design::BoxId box;                  ///< Rule::box
  int before_node = 0, before_other = 0;  ///< network nodes between which `before` stands, and `after`
  int node = 0, other = 0;
  Ohms before, added, after;              ///< `added`: series and parallel alone
  std::complex<double> gamma_l, line_impedance_ohm;  ///< Rule::line
  double factor = 1.0;                    ///< Rule::turns: after = factor * before
  double lost_w = 0.0;                    ///< heat in what it adds
  double taken_w = 0.0;                   ///< what loads in it take
  std::vector<Step> inside;               ///< of a branch beside: its own reduction; of a box: the steps in it
};

/// Where no rule applies any more.
struct Stop {
  enum class Why {
    crossing,  ///< three or more paths meet at a node, and none of them ends there
    not_port,  ///< the conductors of a two-port do not carry equal and opposite currents
    cut_off,   ///< nothing leads on
    numbers,   ///< a value that does not exist
  };
  Why why = Why::crossing;
  int node = 0;                      ///< where the reduction stands
  std::vector<design::PartId> parts; ///< that meet there
};

/// One direction. `steps` are outermost first; those of a box are inside one of Rule::box.
struct Way {
  Ohms start, end;
  std::vector<Step> steps;
  std::optional<Stop> stop;  ///< none: it came through
};

/// Both ways from a place: what a source and a load must be to each other.
struct Plane {
  enum class Where { source, load, named };
  Where where = Where::named;
  int named = -1;             ///< index into design.planes
  int node = 0, other = 0;    ///< network nodes between which one looks
  Ohms toward_load, toward_source;
  double mismatch_db = 0.0;   ///< NaN where nothing passes
};

struct Walk {
  double frequency_hz = 0.0;
  design::PartId load;         ///< that the ways begin and end at
  Way to_source, to_load;
  std::vector<Plane> planes;   ///< only those that both ways pass
  double available_w = 0.0, accepted_w = 0.0;  ///< NaN where `to_source` stopped
  std::vector<double> part_w;  ///< by part: heat, of a load what it takes; of two coupled coils the first has both. Empty where `to_source` stopped
  std::vector<design::PartId> idle;  ///< parts that no current reaches at this setting
};

/// Reduces the network at a frequency and setting of the knobs, beginning at `load`. Where the source folds back, powers are scaled as the books are. Never
/// throws for numbers. Cost: O(parts) for ladders, O(parts^2) at worst.
Walk take_walk(const design::Design& design, const graph::Network& network, double frequency_hz, std::span<const double> knobs, design::PartId load);

/// The load that a walk begins at, of several: the one that takes most of the power in state `state` of the books.
design::PartId choose_load(const ledger::Ledger& ledger, std::size_t state);

/// Where the ways stopped, the heat of the steps that were walked is taken from the solver's books.
void take_powers_from_books(Walk& walk, const design::Design& design, const ledger::Ledger& ledger, std::size_t state);

/// What the walk and the solver say of the same thing.
struct Check {
  enum class What { source, load, plane, power };
  What what = What::source;
  int plane = -1;              ///< index into walk.planes
  design::PartId part;         ///< power: the part whose books differ most
  std::complex<double> walk, solver;  ///< [ohm]; power: [W]
  double relative = 0.0;       ///< |difference| over |solver's|; powers over the available power
};

/// Every impedance and power that both know; `looks` are those the books were made for. Impedances between two conductors of which neither is ground are
/// checked by the powers alone. NaN where one of the two does not exist.
std::vector<Check> compare(const Walk& walk, const design::Design& design, const ledger::Ledger& ledger, std::size_t state);

/// The largest `relative` of them; 0 of none.
double worst(const std::vector<Check>& checks);

}  // namespace wattfall::walk
