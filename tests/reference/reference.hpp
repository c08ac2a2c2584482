// Outside check values held against the whole pipeline: a feed text goes in, a figure comes out. A Setup is one feed
// text with the rows read off it; a Row is one printed or computed figure with its source, and the words or the
// function that reads it. Labels are those of the collection that the rows come from; one that ends in `x` is the exact
// partner of a printed row.
#pragma once

#include <string>
#include <vector>

#include "../support/feed.hpp"

namespace wattfall::reference {

using test::Feed;

enum class Status { published, from_memory, computed, trade };

/// What a row reads: a figure in the language's own words, judged by the product, or a function over the solved feed.
struct Figure {
  Figure(const char* in_words) : words(in_words) {}
  Figure(double (*function)(const Feed&)) : of(function) {}
  std::string words;
  double (*of)(const Feed&) = nullptr;
};

struct Row {
  const char* label;
  Figure figure;
  double expected;
  double unit;       ///< of the row, in SI: the figure is expected * unit
  double tolerance;  ///< absolute, in the row's unit
  const char* source;
  Status status;
};

struct Setup {
  const char* inputs;     ///< in the source's words
  const char* frequency;  ///< in the language's; the source's, or any where the figure does not depend on it
  std::string feed;       ///< without `design` and `sweep`
  std::vector<Row> rows;
};

using Setups = std::vector<Setup>;

// ---- kinds of rows ----------------------------------------------------------------------------------------------

/// An independent computation with 40 digits; its figure is held at 1e-9 relative.
inline constexpr const char* exact = "independent computation with 40 digits";

inline Row printed(const char* label, Figure figure, double expected, double unit, double tolerance,
                   const char* source) {
  return {label, std::move(figure), expected, unit, tolerance, source, Status::published};
}
inline Row remembered(const char* label, Figure figure, double expected, double unit, double tolerance,
                      const char* source) {
  return {label, std::move(figure), expected, unit, tolerance, source, Status::from_memory};
}
inline Row exactly(const char* label, Figure figure, double expected, double unit, const char* source = exact) {
  return {label,  std::move(figure), expected, unit, 1e-9 * (expected < 0 ? -expected : expected),
          source, Status::computed};
}
/// Exact too, but of something else's size: a zero, or a target that the row's value is to reach.
inline Row exactly_within(const char* label, Figure figure, double expected, double unit, double tolerance,
                          const char* source = exact) {
  return {label, std::move(figure), expected, unit, tolerance, source, Status::computed};
}
inline Row practice(const char* label, Figure figure, double expected, double unit, double tolerance) {
  return {label, std::move(figure), expected, unit, tolerance, "common practice, no source", Status::trade};
}

// ---- units of rows ----------------------------------------------------------------------------------------------

inline constexpr double one = 1.0, percent = 0.01, milli = 1e-3, micro = 1e-6, nano = 1e-9, pico = 1e-12;

// ---- figures ----------------------------------------------------------------------------------------------------

// What the source sees.
double input_ohms(const Feed& feed);  ///< R
double input_reactance(const Feed& feed);
double input_conductance(const Feed& feed);
double input_susceptance(const Feed& feed);
double gamma(const Feed& feed);  ///< |reflection|
double gamma_degrees(const Feed& feed);
double gamma_real(const Feed& feed);
double gamma_imag(const Feed& feed);
double short_of_75_ohm(const Feed& feed);  ///< what the resistance lacks to 75 ohm
double loop_henries(const Feed& feed);     ///< X/w
double input_q(const Feed& feed);          ///< |X|/R
double returned_share(const Feed& feed);   ///< of the available power
double returned_watts(const Feed& feed);
double available_watts(const Feed& feed);
double source_side_ohms(const Feed& feed);  ///< |Z| that the first plane's look finds towards the source

// What is still missing: the part that, put beside the source (across it for a shunt part, in its loop for a series
// part), cancels what the source sees. The network is built without the row's part, and says what that part must be.
double missing_series_ohms(const Feed& feed);
double missing_series_henries(const Feed& feed);
double missing_series_farads(const Feed& feed);
double missing_shunt_siemens(const Feed& feed);
double missing_shunt_ohms(const Feed& feed);
double missing_shunt_henries(const Feed& feed);
double missing_shunt_farads(const Feed& feed);

// The power accepted, and where it goes; per unit of it.
double accepted_to_ant(const Feed& feed);  ///< what the load `ant` absorbs
double accepted_heat_c1(const Feed& feed);
double accepted_heat_c2(const Feed& feed);
double accepted_heat_l(const Feed& feed);
double accepted_heat_t(const Feed& feed);
double accepted_heat_w(const Feed& feed);
double heat_of_all_parts(const Feed& feed);

// The load `ant`, rms, and the phase against the source's open-circuit volts.
double ant_volts(const Feed& feed);
double ant_volts_degrees(const Feed& feed);
double ant_microvolts_db(const Feed& feed);
double ant_amps(const Feed& feed);
double ant_amps_degrees(const Feed& feed);
double input_volts_degrees(const Feed& feed);
double input_amps_degrees(const Feed& feed);

// The line `w`, and the second of two halves, `v`.
double line_length_m(const Feed& feed);
double line_passes(const Feed& feed);  ///< power out / power in
double line_in_watts(const Feed& feed);
double line_out_watts(const Feed& feed);
double line_matched_db(const Feed& feed);
double line_added_db(const Feed& feed);
double line_end_gamma(const Feed& feed);          ///< |reflection| at the load's end, of `swr on w`
double half_line_amps_degrees(const Feed& feed);  ///< into `v`, 0 to 360

double knob_value(const Feed& feed);  ///< of the first, as the optimizer leaves it

// ---- the topics -------------------------------------------------------------------------------------------------

Setups l_networks_of_books();
Setups l_networks_computed();
Setups tees_and_pis();
Setups lossy_networks();
Setups line_examples();
Setups line_loads();
Setups line_matching();
Setups mismatched_lines();
Setups lossy_lines();
Setups transformers();
Setups coupled_coils();
Setups reflections();
Setups levels();
Setups preferred_values();
Setups trade_facts();

}  // namespace wattfall::reference
