// The work bench of one variant: the design that grows on it, the names met so far, and what every step needs to look
// at. Steps are free functions that take the bench; each leaves what it found wrong in `complaints`.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>
#include <vector>

#include "complaints.hpp"
#include "design/catalog.hpp"
#include "design/design.hpp"
#include "design/resolve.hpp"
#include "grammar/syntax.hpp"
#include "name_map.hpp"
#include "rules.hpp"

namespace wattfall::design {

class Files;
struct Scope;

/// What an expression comes to: a number, or a formula of `frequency` and knobs, with its dimension.
struct Settled {
  Formula formula;  ///< op constant where nothing varies
  Dimension dim;
  bool complex = false;  ///< may have an imaginary part
  bool uses_frequency = false, uses_knobs = false;
  int size = 1;  ///< operations in the formula

  bool constant() const { return formula.op == Formula::Op::constant; }
};

/// A named quantity: of the file (`set`), or of one use of a box (`with`). Settled when it is first asked for.
struct NamedQuantity {
  enum class State { fresh, busy, settled, failed };
  std::string_view name;  ///< with the box's before it
  Span span;                                 ///< where it is defined
  std::vector<syntax::Phrase> properties;    ///< first the expression, then `adjustable ...`
  Scope* home = nullptr;                     ///< where its own names are looked up
  const syntax::Phrase* fallback = nullptr;  ///< a box's default, whose dimension it must have
  Scope* fallback_home = nullptr;
  State state = State::fresh;
  Settled value;
};

/// Names of quantities; a box's scope looks outward to the file's.
struct Scope {
  Scope* outer = nullptr;
  std::unordered_map<std::string_view, NamedQuantity> quantities;
  std::vector<NamedQuantity*> in_order;
};

/// Where part statements stand: the file, or one use of a box.
struct Frame {
  std::string_view prefix;  ///< "" or "atu."
  Scope scope;
  std::unordered_map<std::string_view, NodeId> ports;
  BoxId box;
  int depth = 0;
};

/// Something that bears a part's name.
struct Named {
  enum class What { part, box, source, coupling };
  What what = What::part;
  int index = -1;
  Span span;  ///< of the name
  bool broken = false;  ///< could not be built; what asks for it says nothing more
};

/// A value that varies, to be checked at the ends of what it depends on.
struct LateCheck {
  Value value;
  Rule rule;
  Dimension dim;
  Span span;
};

/// Data over frequency, to be checked against the points that the design asks for.
struct DataRange {
  std::string what;  ///< "the table", "the measurement lake.s1p"
  double lower_hz = 0.0, upper_hz = 0.0;
  Span span;
};

/// A main value given from the command line, or properties given again by `change`.
struct Replacement {
  Span name;
  syntax::List<syntax::Phrase> properties;
  bool main_only = false;  ///< --set
  bool used = false;
  bool of_quantity = false;  ///< taken by a box's quantity, and no part's
};

struct PendingCoupling {
  Coupling coupling;
  std::string_view first, second;
  Span first_span, second_span;
};

/// A cable that the design names, looked up and fitted once.
struct KnownCable {
  const sdk::Cable* cable = nullptr;
  bool fitted = false;
  double k1 = 0.0, k2 = 0.0;
};

struct Bench {
  const Catalog& catalog;
  const host::Registry& registry;
  const ResolveOptions& options;
  Files& files;
  Complaints& complaints;

  syntax::Storage storage = {};  ///< what phrases taken apart are put together in
  Design design = {};
  Frame file_frame = {};
  /// By full name, which lies in the text, or in `storage` where it is of a box.
  NameMap<NodeId> nodes = {};
  NameMap<Named> names = {};
  std::unordered_map<std::string_view, const syntax::Box*> boxes = {};
  std::unordered_set<const syntax::Box*> looping_boxes = {};
  std::unordered_map<const syntax::Box*, KindInfo> box_kinds = {};
  std::unordered_map<std::string_view, std::vector<Replacement>> replacements = {};  ///< by part's full name
  std::unordered_map<std::string_view, KnobId> part_knobs = {}, quantity_knobs = {};
  std::unordered_map<std::string_view, std::pair<double, double>> bands = {};
  std::unordered_set<std::string_view> broken_bands = {};
  std::unordered_set<std::string_view> unknown_quantities = {};  ///< reported already
  std::vector<NamedQuantity*> settling = {};                ///< the chain being settled, to show loops
  std::vector<std::string_view> box_quantities = {};        ///< in full, where `--set` may name one
  bool settling_unused = false;                             ///< what nothing in this variant asks for
  std::vector<PendingCoupling> pending_couplings = {};
  std::vector<LateCheck> late_checks = {};
  std::vector<DataRange> data_ranges = {};
  std::unordered_map<std::string_view, KnownCable> cables = {};  ///< by the name as written
  bool source_seen = false;
  bool network_broken = false;  ///< some part could not be placed: what its absence would cause is not said
  bool too_deep_said = false;
  Span place = {};  ///< of the design or variant as a whole
  std::size_t parts_before = 0;  ///< of the variants resolved before this one: the limit is for all together
  int depth = 0;    ///< of expressions within expressions
};

/// The full name of what a text names in a frame.
inline std::string_view full_name(Bench& bench, const Frame& frame, std::string_view name) {
  return frame.prefix.empty() ? name : bench.storage.keep_text(std::string(frame.prefix).append(name));
}

/// The names in a map, for suggestions.
template <class Map>
std::vector<std::string> keys_of(const Map& map) {
  std::vector<std::string> keys;
  keys.reserve(map.size());
  for (const auto& [key, value] : map) keys.emplace_back(key);
  return keys;
}

}  // namespace wattfall::design
