#include "enrollment.hpp"

#include <utility>

#include "names.hpp"
#include "validate.hpp"

namespace wattfall::host {

Enrollment::Enrollment(const Registry& known, PluginInfo newcomer)
    : draft_(known),
      registrar_{this,
                 &add<sdk::Kind, &Registry::kinds>,
                 &add<sdk::Cable, &Registry::cables>,
                 &add<sdk::LineModel, &Registry::line_models>,
                 &add<sdk::Optimizer, &Registry::optimizers>,
                 &add<sdk::Writer, &Registry::writers>,
                 &add<sdk::TunerForm, &Registry::tuner_forms>} {
  draft_.plugins.push_back(std::move(newcomer));
}

/// The door that the plugin calls through: no exception of ours may leave it.
template <class Thing, std::vector<Entry<Thing>> Registry::*shelf>
sdk::Status Enrollment::add(const sdk::Registrar* host, const Thing* thing, sdk::Failure* failure) {
  if (host == nullptr || host->self == nullptr) return sdk::fail(failure, "the registrar handed back is null");
  Enrollment& enrollment = *static_cast<Enrollment*>(host->self);
  return sdk::guarded(failure, [&] { return enrollment.take(enrollment.draft_.*shelf, thing, failure); });
}

template <class Thing>
sdk::Status Enrollment::take(std::vector<Entry<Thing>>& shelf, const Thing* thing, sdk::Failure* failure) {
  std::string complaint = what_is_wrong(thing);
  if (complaint.empty()) complaint = clash(shelf, *thing);
  if (complaint.empty()) {
    shelf.push_back({thing, draft_.plugins.size() - 1});
    return sdk::Status::ok;
  }
  if (refusal_.empty()) refusal_ = complaint;
  return sdk::fail(failure, complaint.c_str());
}

template <class Thing>
std::string Enrollment::clash(const std::vector<Entry<Thing>>& shelf, const Thing& thing) const {
  for (const Entry<Thing>& other : shelf) {
    if (key_of(*other.thing) != key_of(thing)) continue;
    const std::string subject = std::string(word_for(thing)) + " `" + thing.name + "`";
    if (other.plugin + 1 == draft_.plugins.size()) return subject + " is registered twice by this plugin";
    const PluginInfo& owner = draft_.plugins[other.plugin];
    const std::string as =
        std::string(other.thing->name) == thing.name ? "" : " as `" + std::string(other.thing->name) + "`";
    return subject + " is there already" + as + ", from plugin `" + owner.name + "` (" + owner.path + ")";
  }
  return "";
}

}  // namespace wattfall::host
