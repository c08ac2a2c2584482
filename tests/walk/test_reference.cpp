// Worked examples of books and 40-digit figures, walked by hand: wherever a figure follows from what the source sees, the walk's impedance is
// put in the place of the solver's, and has to give the figure too.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>
#include <set>
#include <string>

#include "../reference/reference.hpp"
#include "walked.hpp"

using namespace wattfall;
using namespace wattfall::reference;

namespace {

using Function = double (*)(const Feed&);

/// Those that read the impedance at the source and nothing else of the solution.
const std::set<Function> of_the_impedance{
    input_ohms, input_reactance, input_conductance, input_susceptance, gamma, gamma_degrees, gamma_real, gamma_imag, short_of_75_ohm, loop_henries,
    input_q, missing_series_ohms, missing_series_henries, missing_series_farads, missing_shunt_siemens, missing_shunt_ohms, missing_shunt_henries,
    missing_shunt_farads};

void hold(const Setups& setups, std::size_t& rows, std::size_t& books) {
  for (const Setup& setup : setups) {
    const bool any = std::any_of(setup.rows.begin(), setup.rows.end(), [](const Row& row) { return of_the_impedance.contains(row.figure.of); });
    if (!any) continue;
    INFO(setup.inputs << '\n' << setup.feed);
    Feed feed(setup.feed + "sweep at [" + setup.frequency + "]\n");
    REQUIRE(feed.diagnostics.empty());
    const walk::Walk walk = test::walked(feed);
    if (walk.to_source.stop) continue;
    REQUIRE(walk.to_source.end.has_value());
    const std::complex<double> seen = *walk.to_source.end, reference_ohm = feed.ledger.source.reference_ohm;
    feed.ledger.source.load_impedance_ohm.at(0) = seen;
    feed.ledger.source.reflection.at(0) = (seen - std::conj(reference_ohm)) / (seen + reference_ohm);
    for (const Row& row : setup.rows) {
      if (!of_the_impedance.contains(row.figure.of)) continue;
      INFO(row.label << ", " << row.source);
      const double walked = row.figure.of(feed) / row.unit;
      CHECK(std::abs(walked - row.expected) <= row.tolerance);
      ++rows;
      books += row.status == Status::published || row.status == Status::from_memory ? 1 : 0;
    }
  }
}

}  // namespace

TEST_CASE("the walk gives the figures of books and of an independent computation") {
  std::size_t rows = 0, books = 0;
  for (const Setups& setups : {l_networks_of_books(), l_networks_computed(), tees_and_pis(), line_examples(), line_loads(), line_matching(),
                               mismatched_lines(), lossy_lines(), transformers(), coupled_coils()})
    hold(setups, rows, books);
  std::cout << "figures walked: " << rows << ", of books " << books << '\n';
  CHECK(rows > 100);
  CHECK(books > 30);
}
