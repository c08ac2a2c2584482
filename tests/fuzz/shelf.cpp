#include "shelf.hpp"

#include <stdexcept>

extern "C" const wattfall::sdk::Plugin* wattfall_plugin();

namespace wattfall::fuzz {
namespace {

sdk::Status nothing(void*, const sdk::Complex*, const double*, std::size_t, sdk::Complex*, sdk::Complex*,
                    sdk::Failure*) {
  return sdk::Status::ok;
}

constexpr sdk::Property gap_properties[] = {{"resistance", "ohm", nullptr, "its loss"},
                                            {"voltage", "V", "2 kV", "where it fires"}};
constexpr sdk::Kind gap{"sparkgap", "invented", 1, gap_properties, 2, nullptr, nothing};
constexpr sdk::Property link_properties[] = {{"factor", "", "0.5", "how much"}};
constexpr sdk::Kind link{"link", "invented", 2, link_properties, 1, nullptr, nothing};

host::Registry& registry_of(const sdk::Registrar* registrar) {
  return *static_cast<host::Registry*>(registrar->self);
}

sdk::Status add_cable(const sdk::Registrar* registrar, const sdk::Cable* cable, sdk::Failure*) {
  registry_of(registrar).cables.push_back({cable, 0});
  return sdk::Status::ok;
}

sdk::Status add_line_model(const sdk::Registrar* registrar, const sdk::LineModel* model, sdk::Failure*) {
  registry_of(registrar).line_models.push_back({model, 0});
  return sdk::Status::ok;
}

host::Registry fill() {
  host::Registry registry;
  registry.plugins = {{"line-loss", "1.0", "linked in"}, {"invented", "1.0", "linked in"}};
  const sdk::Registrar registrar{&registry, nullptr, add_cable, add_line_model, nullptr, nullptr};
  sdk::Failure failure{};
  if (wattfall_plugin()->enroll(&registrar, &failure) != sdk::Status::ok) throw std::runtime_error(failure.text);
  registry.kinds = {{&gap, 1}, {&link, 1}};
  return registry;
}

}  // namespace

const host::Registry& shelf() {
  static const host::Registry registry = fill();
  return registry;
}

}  // namespace wattfall::fuzz
