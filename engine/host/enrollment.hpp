// One plugin's registration, all or nothing: the plugin registers into a draft, a copy of the registry, which takes the
// registry's place only where nothing was refused. Any refusal counts, even one whose status the plugin did not look
// at.
#pragma once

#include <string>
#include <vector>

#include "host/registry.hpp"

namespace wattfall::host {

class Enrollment {
 public:
  /// `newcomer` is the plugin that is about to register; the draft starts as `known` with it added.
  Enrollment(const Registry& known, PluginInfo newcomer);
  Enrollment(const Enrollment&) = delete;
  Enrollment& operator=(const Enrollment&) = delete;

  /// What the plugin's `enroll` is called with. Valid as long as this is.
  const sdk::Registrar* registrar() const { return &registrar_; }
  /// The first refusal, in full; empty where all was taken.
  const std::string& refusal() const { return refusal_; }
  const Registry& draft() const { return draft_; }

 private:
  template <class Thing>
  sdk::Status take(std::vector<Entry<Thing>>& shelf, const Thing* thing, sdk::Failure* failure);
  template <class Thing>
  std::string clash(const std::vector<Entry<Thing>>& shelf, const Thing& thing) const;
  template <class Thing, std::vector<Entry<Thing>> Registry::*shelf>
  static sdk::Status add(const sdk::Registrar* host, const Thing* thing, sdk::Failure* failure);

  Registry draft_;
  sdk::Registrar registrar_;
  std::string refusal_;
};

}  // namespace wattfall::host
