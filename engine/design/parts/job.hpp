// One part being built: its text, its properties, and the small readers that every builder in this folder uses.
#pragma once

#include <optional>
#include <string>

#include "adjust.hpp"
#include "properties.hpp"

namespace wattfall::design {

struct PartJob {
  Bench& bench;
  Frame& frame;
  const KindInfo& kind;
  const syntax::Part& text;
  Properties given;
  std::string_view name;  ///< in full, as in `Bench::names`
  Named& named;
  Part part;              ///< name, kind, terminals and span are set before a builder is called
  bool good = true;  ///< false once something was said
};

/// A property's value, none where it is not given. Where it is wrong, `job.good` falls.
std::optional<Value> optional_value(PartJob& job, const char* property, const Due& due);
/// The main value as written, or a knob that starts there.
std::optional<Value> main_value(PartJob& job, const char* property, const Due& due);
/// The same for values that are not plain expressions; `read` turns a phrase into the number that is turned.
std::optional<Value> main_value(PartJob& job, const Given* main, Dimension dim, const Reader& read,
                                const std::function<std::optional<Value>(const Given&)>& as_written);
/// Says that the main value is missing, unless something else was wrong before.
void say_missing(PartJob& job, const std::string& what, const std::string& expected);
/// Q, `Q n at f` or resistance.
SeriesLoss series_loss(PartJob& job);
/// `[f: z, ...]`, with or without `table` before it; keys rising. The range it covers is checked against the sweep
/// later.
std::optional<Table> table_of(PartJob& job, const syntax::Phrase& phrase, Scope& scope, const Due& due,
                              const std::string& what);
/// `measured "x.s1p"`: the network, checked for its number of ports.
std::shared_ptr<const measured::Network> measured_of(PartJob& job, const Given& given, int ports);


// ---- parts by their size (geometry.cpp): null or none where the group is wrong, which has been said -----------------

std::optional<physics::Section> skin_of(PartJob& job, const Given& given);
std::shared_ptr<const physics::WoundCoil> coil_of(PartJob& job, const Given& given);
enum class CoreUse { inductor, choke, transformer };
/// `turns`: those that a transformer's ratio says; none: the group must.
std::shared_ptr<const CoreWinding> core_of(PartJob& job, const Given& given, CoreUse use,
                                           std::optional<double> turns = std::nullopt);
/// `core(outer .., ...)`, and no expression in brackets.
bool is_group(const Given& given);
/// Farads and the loss tangent of the whole; the volts at which its gap of air arcs become the part's limit where it has none.
struct PlateCapacitor {
  double farads = 0.0, tangent = 0.0;
  std::string outside;  ///< what lies outside the model's range
};
std::optional<PlateCapacitor> plates_of(PartJob& job, const Given& given);
std::optional<physics::Dipole> dipole_of(PartJob& job, const Given& given);
std::optional<physics::Monopole> monopole_of(PartJob& job, const Given& given);
/// `coax`, `twowire` or `overground`, with the impedance and velocity that it has without loss.
bool read_section(PartJob& job, const Given& given, LineMake& make);

std::optional<Model> build_resistor(PartJob& job);
std::optional<Model> build_inductor(PartJob& job);
std::optional<Model> build_capacitor(PartJob& job);
std::optional<Model> build_line(PartJob& job);
std::optional<Model> build_stub(PartJob& job);
std::optional<Model> build_transformer(PartJob& job);
std::optional<Model> build_two_port(PartJob& job);
std::optional<Model> build_pad(PartJob& job);
std::optional<Model> build_choke(PartJob& job);
std::optional<Model> build_selector(PartJob& job);
std::optional<Model> build_plugin_part(PartJob& job);
std::optional<Model> build_load(PartJob& job);
/// Not parts of the network: they fill the design themselves.
void build_source(PartJob& job);
void build_coupling(PartJob& job);

/// `limit` and `tolerance`, for every kind.
void read_ratings(PartJob& job);

}  // namespace wattfall::design
