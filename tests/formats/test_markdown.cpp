// Markdown, rendered: tables come out as tables, each row as wide as its head.
#include <catch2/catch.hpp>

#include "../support/program.hpp"
#include "renders.hpp"

using wattfall::test::program;
using wattfall::test::Scratch;

namespace {

void check_tables(const std::string& markdown, std::size_t at_least) {
  const std::string html = formats::html_of(markdown);
  const auto tables = formats::table_shapes(html);
  CHECK(tables.size() >= at_least);
  for (const std::vector<std::size_t>& rows : tables) {
    CHECK(rows.size() >= 2);
    for (const std::size_t cells : rows) CHECK(cells == rows.front());
  }
  // A row that was not taken for one would stand as a paragraph that begins with a pipe.
  CHECK(html.find("<p>|") == std::string::npos);
  CHECK(html.find("\n|") == std::string::npos);
}

}  // namespace

TEST_CASE("the tables of a run, a comparison and a check render") {
  const std::string examples = WATTFALL_EXAMPLES;
  for (const char* feed : {"01_l_network_by_hand", "03_quarter_wave_section", "07_band_switch", "08_receiving_chain"}) {
    CAPTURE(feed);
    const auto ran = program({"run", examples + "/" + feed + ".feed", "--to", "markdown"});
    CHECK(ran.code <= 1);
    check_tables(ran.out, 4);
  }
  check_tables(program({"compare", examples + "/03_quarter_wave_section.feed", "--to", "markdown"}).out, 4);
  check_tables(program({"check", examples + "/01_l_network_by_hand.feed", "--to", "markdown"}).out, 1);
}
