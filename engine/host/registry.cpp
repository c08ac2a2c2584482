// Looks things up by name. The shelves are short (tens of entries) and read once a part, so a walk along them is
// enough.
#include "host/registry.hpp"

#include <algorithm>

#include "names.hpp"

namespace wattfall::host {
namespace {

template <class Thing>
const Thing* find(const std::vector<Entry<Thing>>& shelf, std::string_view name) {
  const auto found =
      std::find_if(shelf.begin(), shelf.end(), [&](const auto& entry) { return entry.thing->name == name; });
  return found == shelf.end() ? nullptr : found->thing;
}

template <class Thing>
const Thing* find_or_first(const std::vector<Entry<Thing>>& shelf, std::string_view name) {
  if (!name.empty()) return find(shelf, name);
  return shelf.empty() ? nullptr : shelf.front().thing;
}

}  // namespace

const sdk::Kind* Registry::find_kind(std::string_view name) const {
  return find(kinds, name);
}

const sdk::Cable* Registry::find_cable(std::string_view name) const {
  const std::string wanted = folded(name);
  for (const auto& entry : cables) {
    if (folded(entry.thing->name) == wanted) return entry.thing;
  }
  return nullptr;
}

const sdk::LineModel* Registry::find_line_model(std::string_view name) const {
  return find_or_first(line_models, name);
}

const sdk::Optimizer* Registry::find_optimizer(std::string_view name) const {
  return find_or_first(optimizers, name);
}

const sdk::Writer* Registry::find_writer(std::string_view name) const {
  return find(writers, name);
}

}  // namespace wattfall::host
