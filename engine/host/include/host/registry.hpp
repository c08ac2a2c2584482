// What plugins have brought, by name. Filled once at start-up, read-only afterwards, so any thread may look things up.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "grammar/diagnostic.hpp"
#include "wattfall/sdk.hpp"

namespace wattfall::host {

struct PluginInfo {
  std::string name;
  std::string version;
  std::string path;
};

/// Something registered, and the plugin that brought it (an index into Registry::plugins).
template <class Thing>
struct Entry {
  const Thing* thing = nullptr;
  std::size_t plugin = 0;
};

struct Registry {
  std::vector<PluginInfo> plugins;
  std::vector<Entry<sdk::Kind>> kinds;
  std::vector<Entry<sdk::Cable>> cables;
  std::vector<Entry<sdk::LineModel>> line_models;
  std::vector<Entry<sdk::Optimizer>> optimizers;
  std::vector<Entry<sdk::Writer>> writers;
  std::vector<Entry<sdk::TunerForm>> tuner_forms;

  const sdk::Kind* find_kind(std::string_view name) const;
  /// Without regard to case, hyphens and blanks.
  const sdk::Cable* find_cable(std::string_view name) const;
  /// The first registered where `name` is empty.
  const sdk::LineModel* find_line_model(std::string_view name = {}) const;
  const sdk::Optimizer* find_optimizer(std::string_view name = {}) const;
  const sdk::Writer* find_writer(std::string_view name) const;
};

}  // namespace wattfall::host
