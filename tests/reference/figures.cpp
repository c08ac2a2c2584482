// How each figure is read off a solved feed. Volts and amps are rms here; element values follow from reactance at the
// one frequency of the feed.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "reference.hpp"
#include "tune/tune.hpp"

namespace wattfall::reference {
namespace {

using Complex = std::complex<double>;

double omega(const Feed& feed) {
  return 2.0 * std::numbers::pi * feed.ledger.frequencies_hz.at(0);
}
Complex input_siemens(const Feed& feed) {
  return 1.0 / feed.source_impedance();
}
double degrees(Complex value) {
  return std::arg(value) * 180.0 / std::numbers::pi;
}

std::size_t part_index(const Feed& feed, const std::string& name) {
  const auto found =
      std::ranges::find_if(feed.design.parts, [&](const design::Part& part) { return part.name == name; });
  if (found == feed.design.parts.end()) throw std::runtime_error("no part " + name);
  return static_cast<std::size_t>(found - feed.design.parts.begin());
}

Complex open_circuit_volts(const Feed& feed) {
  const Complex source_ohm = feed.design.source.impedance_ohm.at(feed.ledger.frequencies_hz.at(0), {});
  return feed.solution.source_volts[0] + source_ohm * feed.solution.source_amps[0];
}

Complex across_ant(const Feed& feed) {
  const auto& nodes = feed.design.parts[part_index(feed, "ant")].terminals;
  return feed.solution.volts.at(nodes[0].index)[0] - feed.solution.volts.at(nodes[1].index)[0];
}

Complex into_part(const Feed& feed, const std::string& name) {
  const int element = feed.network.elements_of({static_cast<int>(part_index(feed, name))})[0];
  return feed.solution.flows.at(element).amps1[0];
}

double accepted(const Feed& feed) {
  return feed.ledger.source.accepted_w.at(0);
}
double heat_share(const Feed& feed, const char* name) {
  return feed.part(name).heat_w.at(0) / accepted(feed);
}

}  // namespace

double input_ohms(const Feed& feed) {
  return feed.source_impedance().real();
}
double input_reactance(const Feed& feed) {
  return feed.source_impedance().imag();
}
double input_conductance(const Feed& feed) {
  return input_siemens(feed).real();
}
double input_susceptance(const Feed& feed) {
  return input_siemens(feed).imag();
}
double gamma(const Feed& feed) {
  return std::abs(feed.ledger.source.reflection.at(0));
}
double gamma_degrees(const Feed& feed) {
  return degrees(feed.ledger.source.reflection.at(0));
}
double gamma_real(const Feed& feed) {
  return feed.ledger.source.reflection.at(0).real();
}
double gamma_imag(const Feed& feed) {
  return feed.ledger.source.reflection.at(0).imag();
}
double short_of_75_ohm(const Feed& feed) {
  return 75.0 - feed.source_impedance().real();
}
double loop_henries(const Feed& feed) {
  return feed.source_impedance().imag() / omega(feed);
}
double input_q(const Feed& feed) {
  return std::abs(feed.source_impedance().imag()) / feed.source_impedance().real();
}
double returned_share(const Feed& feed) {
  return returned_watts(feed) / available_watts(feed);
}
double returned_watts(const Feed& feed) {
  return feed.ledger.source.returned_w.at(0);
}
double available_watts(const Feed& feed) {
  return feed.ledger.source.available_w.at(0);
}
double source_side_ohms(const Feed& feed) {
  return std::abs(feed.ledger.looks.at(0).toward_source_ohm.at(0));
}

double missing_series_ohms(const Feed& feed) {
  return -feed.source_impedance().imag();
}
double missing_series_henries(const Feed& feed) {
  return missing_series_ohms(feed) / omega(feed);
}
double missing_series_farads(const Feed& feed) {
  return -1.0 / (omega(feed) * missing_series_ohms(feed));
}
double missing_shunt_siemens(const Feed& feed) {
  return -input_siemens(feed).imag();
}
double missing_shunt_ohms(const Feed& feed) {
  return std::abs(1.0 / missing_shunt_siemens(feed));
}
double missing_shunt_henries(const Feed& feed) {
  return -1.0 / (omega(feed) * missing_shunt_siemens(feed));
}
double missing_shunt_farads(const Feed& feed) {
  return missing_shunt_siemens(feed) / omega(feed);
}

double accepted_to_ant(const Feed& feed) {
  return feed.load("ant").absorbed_w.at(0) / accepted(feed);
}
double accepted_heat_c1(const Feed& feed) {
  return heat_share(feed, "C1");
}
double accepted_heat_c2(const Feed& feed) {
  return heat_share(feed, "C2");
}
double accepted_heat_l(const Feed& feed) {
  return heat_share(feed, "L");
}
double accepted_heat_t(const Feed& feed) {
  return heat_share(feed, "T");
}
double accepted_heat_w(const Feed& feed) {
  return heat_share(feed, "w");
}
double heat_of_all_parts(const Feed& feed) {
  return feed.ledger.totals.heat_w.at(0);
}

double ant_volts(const Feed& feed) {
  return feed.load("ant").volts_peak.at(0) / std::numbers::sqrt2;
}
double ant_volts_degrees(const Feed& feed) {
  return degrees(across_ant(feed) / open_circuit_volts(feed));
}
double ant_microvolts_db(const Feed& feed) {
  return 20.0 * std::log10(ant_volts(feed) / 1e-6);
}
double ant_amps(const Feed& feed) {
  return feed.load("ant").amps_rms.at(0);
}
double ant_amps_degrees(const Feed& feed) {
  return degrees(across_ant(feed) / feed.load("ant").impedance_ohm.at(0) / open_circuit_volts(feed));
}
double input_volts_degrees(const Feed& feed) {
  return degrees(feed.solution.source_volts[0] / open_circuit_volts(feed));
}
double input_amps_degrees(const Feed& feed) {
  return degrees(feed.solution.source_amps[0] / open_circuit_volts(feed));
}

double line_length_m(const Feed& feed) {
  const design::Part& part = feed.design.parts[part_index(feed, "w")];
  return std::get<design::Line>(part.model).make.length_m.at(feed.ledger.frequencies_hz.at(0), {}).real();
}
double line_passes(const Feed& feed) {
  return line_out_watts(feed) / line_in_watts(feed);
}
double line_in_watts(const Feed& feed) {
  return feed.part("w").in_w.at(0);
}
double line_out_watts(const Feed& feed) {
  return feed.part("w").out_w.at(0);
}
double line_matched_db(const Feed& feed) {
  return feed.part("w").matched_loss_db.at(0);
}
double line_added_db(const Feed& feed) {
  return feed.part("w").loss_db.at(0) - line_matched_db(feed);
}
double line_end_gamma(const Feed& feed) {
  const double swr = feed.part("w").swr_load_end.at(0);
  return (swr - 1.0) / (swr + 1.0);
}
double half_line_amps_degrees(const Feed& feed) {
  const double angle = degrees(into_part(feed, "v") / open_circuit_volts(feed));
  return angle < 0.0 ? angle + 360.0 : angle;
}

double knob_value(const Feed& feed) {
  const Result<tune::Tuning> tuned =
      tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
  if (!tuned.value) throw std::runtime_error("not tuned: " + tuned.diagnostics.front().text);
  return tuned.value->settings.at(0).at(0);
}

}  // namespace wattfall::reference
