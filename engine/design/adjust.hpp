// `adjustable ...`: what makes a main value or a quantity a knob.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "expression.hpp"

namespace wattfall::design {

/// Reads one end, choice or step of a knob: most are values of a dimension, a transformer's are ratios.
using Reader = std::function<std::optional<double>(const syntax::Phrase&)>;

struct KnobRequest {
  std::string_view name = {};
  Dimension dim = {};
  syntax::Phrase range = {};  ///< what follows `adjustable`
  Span span = {};             ///< of the whole property
  Scope* scope = nullptr;
  Reader read = {};
  std::optional<double> start = {};
  Span start_span = {};
};

/// Checks the range and the start, and adds the knob to the design.
std::optional<KnobId> make_knob(Bench& bench, const KnobRequest& request);
/// The knob as a value.
Settled settled_knob(KnobId knob, Dimension dim);

bool is_adjustable(const NamedQuantity& quantity);
std::optional<Settled> settle_adjustable(Bench& bench, NamedQuantity& quantity);

}  // namespace wattfall::design
