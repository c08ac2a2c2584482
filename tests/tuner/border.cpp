// The plugin as the host meets it: opened, asked for its description, enrolled, and its optimizer run through the
// border.
#include <dlfcn.h>

#include <catch2/catch.hpp>

#include "cases.hpp"

namespace {

using namespace tuner_test;

sdk::Status keep(const sdk::Registrar* host, const sdk::Optimizer* optimizer, sdk::Failure*) {
  *static_cast<const sdk::Optimizer**>(host->self) = optimizer;
  return sdk::Status::ok;
}

sdk::Status count_form(const sdk::Registrar*, const sdk::TunerForm* form, sdk::Failure*) {
  return form->box != nullptr ? sdk::Status::ok : sdk::Status::failed;
}

sdk::Status minus_square(void*, const double* settings, std::size_t count, double* goals, double*,
                         sdk::Failure* failure) {
  for (std::size_t i = 0; i < count; ++i) goals[i] = -(settings[i] - 3) * (settings[i] - 3);
  return settings[0] > 1e6 ? sdk::fail(failure, "too far") : sdk::Status::ok;
}

}  // namespace

TEST_CASE("the plugin says who it is and enrols one optimizer, which runs and fails in words") {
  void* library = dlopen(TUNER_PLUGIN, RTLD_NOW);
  REQUIRE(library != nullptr);
  const auto open = reinterpret_cast<const sdk::Plugin* (*)()>(dlsym(library, "wattfall_plugin"));
  REQUIRE(open != nullptr);
  const sdk::Plugin* plugin = open();
  CHECK(plugin->interface_number == sdk::interface_number);
  CHECK(std::string(plugin->name) == "tuner");

  const sdk::Optimizer* optimizer = nullptr;
  const sdk::Registrar host{&optimizer, nullptr, nullptr, nullptr, keep, nullptr, count_form};
  sdk::Failure failure{};
  REQUIRE(plugin->enroll(&host, &failure) == sdk::Status::ok);
  REQUIRE(optimizer != nullptr);
  CHECK(std::string(optimizer->name) == "ridge-search");

  double setting = 0;
  sdk::SearchResult result{};
  result.setting = &setting;
  sdk::KnobRange knob = linear_knob(0, 10);
  sdk::SearchProblem problem{&knob, 1, 0, nullptr, 0, nullptr, minus_square};
  REQUIRE(optimizer->search(optimizer->self, &problem, &result, &failure) == sdk::Status::ok);
  CHECK(setting == Approx(3).epsilon(1e-7));
  knob = linear_knob(2e6, 3e6);
  CHECK(optimizer->search(optimizer->self, &problem, &result, &failure) == sdk::Status::failed);
  CHECK(std::string(failure.text) == "too far");
  dlclose(library);
}
