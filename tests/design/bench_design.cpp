#include "bench_design.hpp"

#include <cmath>
#include <stdexcept>

namespace design_tests {
namespace {

/// k1 sqrt(f) through the first point; refuses velocities below 0.1, so that refusal can be tested.
sdk::Status fit(void*, const sdk::LineData* line, double* k1, double* k2, double* worst, sdk::Failure* failure) {
  if (line->velocity < 0.1) return sdk::fail(failure, "too slow a line");
  *k1 = line->loss_count == 0 ? 0.0 : line->losses[0].db_per_100m / 100.0 / std::sqrt(line->losses[0].frequency_hz);
  *k2 = 0.0;
  *worst = 0.0;
  return sdk::Status::ok;
}

sdk::Status nothing(void*, const sdk::Complex*, const double*, std::size_t, sdk::Complex*, sdk::Complex*,
                    sdk::Failure*) {
  return sdk::Status::ok;
}

constexpr sdk::LossPoint thick_losses[] = {{10e6, 2.0}, {100e6, 7.0}};
constexpr sdk::LossPoint thin_losses[] = {{10e6, 4.5}};
constexpr sdk::Cable thick{"RG-213", 50.0, 0.66, thick_losses, 2, 5000.0, "thick", "invented for the tests"};
constexpr sdk::Cable thin{"RG-58", 50.0, 0.66, thin_losses, 1, 0.0, "thin", "invented for the tests"};
constexpr sdk::LineModel model{"skin", "for the tests", nullptr, fit, nullptr};
constexpr sdk::Property gap_properties[] = {{"resistance", "ohm", nullptr, "its loss"},
                                            {"voltage", "V", "2 kV", "where it fires"}};
constexpr sdk::Kind gap{"sparkgap", "for the tests", 1, gap_properties, 2, nullptr, nothing};
constexpr sdk::Property link_properties[] = {{"factor", "", "0.5", "how much"}};
constexpr sdk::Kind link{"link", "for the tests", 2, link_properties, 1, nullptr, nothing};

host::Registry make_registry() {
  host::Registry all;
  all.plugins.push_back({"tests", "1.0", "tests.so"});
  all.cables = {{&thick, 0}, {&thin, 0}};
  all.line_models = {{&model, 0}};
  all.kinds = {{&gap, 0}, {&link, 0}};
  return all;
}

}  // namespace

const host::Registry& registry() {
  static const host::Registry all = make_registry();
  return all;
}

const Catalog& catalog() {
  static const Catalog all(registry());
  return all;
}

std::filesystem::path data_folder() {
  return std::filesystem::path(WATTFALL_TEST_DATA) / "data";
}

const Part& Resolved::part(const std::string& name) const {
  for (const Part& one : design().parts)
    if (one.name == name) return one;
  throw std::out_of_range("no part " + name);
}

const Knob& Resolved::knob(const std::string& name) const {
  for (const Knob& one : design().knobs)
    if (one.name == name) return one;
  throw std::out_of_range("no knob " + name);
}

std::string Resolved::errors() const {
  return render(diagnostics, false);
}

Resolved resolve_text(const std::string& text, ResolveOptions options, const std::string& name) {
  Resolved result;
  if (options.folder.empty()) options.folder = data_folder();
  result.source = std::make_shared<const wattfall::Source>(name, text);
  auto parsed = parse(result.source, catalog().vocabulary());
  result.diagnostics = std::move(parsed.diagnostics);
  if (!parsed.value) return result;
  auto resolved = resolve(*parsed.value, catalog(), registry(), options);
  result.diagnostics.insert(result.diagnostics.end(), resolved.diagnostics.begin(), resolved.diagnostics.end());
  sort_by_place(result.diagnostics);
  if (resolved.value) result.set = std::move(*resolved.value);
  return result;
}

std::string with_frame(const std::string& lines) {
  return "source rig at desk : 100 W\nload ant at feed : 50 ohm\nresistor join from desk to feed : 1 ohm\n"
         "sweep 7 MHz to 7.2 MHz step 100 kHz\n" +
         lines + "\n";
}

}  // namespace design_tests
