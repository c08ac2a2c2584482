// What is refused of what plugins register, one row a fault: a sound thing with one thing changed.
#include <catch2/catch.hpp>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "validate.hpp"

using namespace wattfall::host;
namespace sdk = wattfall::sdk;

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

sdk::Status rows(void*, const sdk::Complex*, const double*, std::size_t, sdk::Complex*, sdk::Complex*, sdk::Failure*) {
  return sdk::Status::ok;
}
sdk::Status fit(void*, const sdk::LineData*, double*, double*, double*, sdk::Failure*) {
  return sdk::Status::ok;
}
sdk::Status propagate(void*, const sdk::LineData*, double, double, const double*, std::size_t, sdk::Complex*,
                      sdk::Complex*, sdk::Failure*) {
  return sdk::Status::ok;
}
sdk::Status search(void*, const sdk::SearchProblem*, sdk::SearchResult*, sdk::Failure*) {
  return sdk::Status::ok;
}
sdk::Status write(void*, const char*, std::size_t, const sdk::WriterOptions*, const sdk::Sink*, sdk::Failure*) {
  return sdk::Status::ok;
}

struct KindUnderTest {
  sdk::Property properties[2] = {{"resistance", "ohm", nullptr, "of it"}, {"gap width", "m", "1 m", "of it"}};
  sdk::Kind kind{"spark", "a gap", 1, properties, 2, nullptr, rows};
};

struct CableUnderTest {
  sdk::LossPoint losses[2] = {{10e6, 1.0}, {100e6, 4.0}};
  sdk::Cable cable{"RG-0", 50.0, 0.66, losses, 2, 1000.0, "a cable", "invented"};
};

template <class Subject>
struct Row {
  std::function<void(Subject&)> change;
  std::string complaint;
};

const std::vector<Row<KindUnderTest>> kind_rows = {
    {[](auto&) {}, ""},
    {[](auto& s) { s.kind.ports = 2; }, ""},
    {[](auto& s) { s.properties[0].unit = ""; }, ""},
    {[](auto& s) { s.properties[0].unit = "deg"; }, ""},
    {[](auto& s) { s.kind.name = nullptr; }, "a kind has no name"},
    {[](auto& s) { s.kind.name = ""; }, "a kind has no name"},
    {[](auto& s) { s.kind.meaning = nullptr; }, "kind `spark` does not say what it is (`meaning`)"},
    {[](auto& s) { s.kind.name = "spark-gap"; },
     "kind `spark-gap` has a name that cannot be written: a letter, then letters, digits and `_`"},
    {[](auto& s) { s.kind.name = "9spark"; },
     "kind `9spark` has a name that cannot be written: a letter, then letters, digits and `_`"},
    {[](auto& s) { s.kind.ports = 0; }, "kind `spark` has 0 ports, and a part has one or two"},
    {[](auto& s) { s.kind.ports = 3; }, "kind `spark` has 3 ports, and a part has one or two"},
    {[](auto& s) { s.kind.rows = nullptr; }, "kind `spark` has no function `rows`"},
    {[](auto& s) { s.kind.properties = nullptr; }, "kind `spark` has no properties, and a part needs a main value"},
    {[](auto& s) { s.kind.property_count = 0; }, "kind `spark` has no properties, and a part needs a main value"},
    {[](auto& s) { s.properties[1].name = nullptr; }, "kind `spark`: property 2 has no name"},
    {[](auto& s) { s.properties[1].name = ""; }, "kind `spark`: property 2 has no name"},
    {[](auto& s) { s.properties[1].name = "gap  width"; },
     "kind `spark`: property `gap  width` has a name that cannot be written: words of letters, digits and `_`"},
    {[](auto& s) { s.properties[1].name = "gap "; },
     "kind `spark`: property `gap ` has a name that cannot be written: words of letters, digits and `_`"},
    {[](auto& s) { s.properties[1].name = "resistance"; }, "kind `spark` has the property `resistance` twice"},
    {[](auto& s) { s.properties[0].unit = nullptr; }, "kind `spark`: property `resistance` has a null unit"},
    {[](auto& s) { s.properties[0].unit = "parsec"; },
     "kind `spark`: property `resistance` has the unit `parsec`, which the feed language does not know"},
    {[](auto& s) { s.properties[0].unit = "pF"; },
     "kind `spark`: property `resistance` has the unit `pF`, and values are handed over in SI units"},
    {[](auto& s) { s.properties[0].unit = "dBm"; },
     "kind `spark`: property `resistance` has the unit `dBm`, and values are handed over in SI units"},
    {[](auto& s) { s.properties[0].fallback = ""; },
     "kind `spark`: property `resistance` has an empty fallback: null means it must be given"},
    {[](auto& s) { s.properties[0].meaning = nullptr; },
     "kind `spark`: property `resistance` does not say what it is (`meaning`)"},
};

const std::vector<Row<CableUnderTest>> cable_rows = {
    {[](auto&) {}, ""},
    {[](auto& s) { s.cable.losses = nullptr, s.cable.loss_count = 0; }, ""},
    {[](auto& s) { s.cable.limit_volts_peak = 0.0; }, ""},
    {[](auto& s) { s.cable.name = nullptr; }, "a cable has no name"},
    {[](auto& s) { s.cable.name = "- -"; }, "cable `- -` has a name that cannot be written"},
    {[](auto& s) { s.cable.name = "two\nlines"; }, "cable `two\nlines` has a name that cannot be written"},
    {[](auto& s) { s.cable.meaning = ""; }, "cable `RG-0` does not say what it is (`meaning`)"},
    {[](auto& s) { s.cable.origin = nullptr; }, "cable `RG-0`: it does not say where its figures come from (`origin`)"},
    {[](auto& s) { s.cable.impedance_ohm = nan; }, "cable `RG-0`: its impedance is nan ohm"},
    {[](auto& s) { s.cable.impedance_ohm = -50.0; }, "cable `RG-0`: its impedance is -50 ohm"},
    {[](auto& s) { s.cable.velocity = 66.0; },
     "cable `RG-0`: its velocity is 66 of light's, and has to lie above 0 and at most at 1"},
    {[](auto& s) { s.cable.velocity = nan; },
     "cable `RG-0`: its velocity is nan of light's, and has to lie above 0 and at most at 1"},
    {[](auto& s) { s.cable.limit_volts_peak = infinity; }, "cable `RG-0`: its limit is inf V"},
    {[](auto& s) { s.cable.losses = nullptr; }, "cable `RG-0`: losses and loss_count contradict each other"},
    {[](auto& s) { s.losses[1].frequency_hz = nan; }, "cable `RG-0`: loss point 2 stands at nan Hz"},
    {[](auto& s) { s.losses[1].frequency_hz = 10e6; }, "cable `RG-0`: loss point 2 does not rise in frequency"},
    {[](auto& s) { s.losses[0].db_per_100m = 0.0; }, "cable `RG-0`: loss point 1 is 0 dB/100m, and a loss is positive"},
};

}  // namespace

TEST_CASE("a kind with a fault is refused in a sentence") {
  for (const auto& row : kind_rows) {
    KindUnderTest subject;
    row.change(subject);
    CHECK(what_is_wrong(&subject.kind) == row.complaint);
  }
}

TEST_CASE("a cable with a fault is refused in a sentence") {
  for (const auto& row : cable_rows) {
    CableUnderTest subject;
    row.change(subject);
    CHECK(what_is_wrong(&subject.cable) == row.complaint);
  }
}

TEST_CASE("a null pointer is refused in a sentence") {
  CHECK(what_is_wrong(static_cast<const sdk::Kind*>(nullptr)) == "a kind is a null pointer");
  CHECK(what_is_wrong(static_cast<const sdk::Cable*>(nullptr)) == "a cable is a null pointer");
  CHECK(what_is_wrong(static_cast<const sdk::LineModel*>(nullptr)) == "a line-loss model is a null pointer");
  CHECK(what_is_wrong(static_cast<const sdk::Optimizer*>(nullptr)) == "an optimizer is a null pointer");
  CHECK(what_is_wrong(static_cast<const sdk::Writer*>(nullptr)) == "a writer is a null pointer");
}

TEST_CASE("forms of tuners need a group and a box") {
  sdk::TunerForm form{"low-pass L", "l-network", "a coil and a capacitor", "box form (in, out) {\n}\n"};
  CHECK(what_is_wrong(&form) == "");
  form.group = "two words";
  CHECK(what_is_wrong(&form) == "tuner form `low-pass L` has no group, a word by which it is asked for");
  form.group = "l-network";
  form.box = nullptr;
  CHECK(what_is_wrong(&form) == "tuner form `low-pass L` has no box");
}

TEST_CASE("line-loss models, optimizers and writers need their functions and a name for options") {
  sdk::LineModel model{"skin", "a model", nullptr, fit, propagate};
  CHECK(what_is_wrong(&model) == "");
  model.propagate = nullptr;
  CHECK(what_is_wrong(&model) == "line-loss model `skin` lacks `fit` or `propagate`");

  sdk::Optimizer optimizer{"by-steps", "a search", nullptr, search};
  CHECK(what_is_wrong(&optimizer) == "");
  optimizer.search = nullptr;
  CHECK(what_is_wrong(&optimizer) == "optimizer `by-steps` has no function `search`");

  sdk::Writer writer{"text", "a report", "txt", nullptr, write};
  CHECK(what_is_wrong(&writer) == "");
  writer.extension = nullptr;
  CHECK(what_is_wrong(&writer) == "writer `text` has no file extension of letters and digits");
  writer = {"text", "a report", "txt", nullptr, nullptr};
  CHECK(what_is_wrong(&writer) == "writer `text` has no function `write`");
  writer = {"text=x", "a report", "txt", nullptr, write};
  CHECK(what_is_wrong(&writer) ==
        "writer `text=x` has a name that cannot be written: a letter, then letters, digits, `_` and hyphens");
}
