// Names and titles that try to be markup, or are very long, through every writer and verb.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "../support/program.hpp"
#include "measured/touchstone.hpp"
#include "renders.hpp"
#include "schema.hpp"

using nlohmann::json;
using wattfall::test::program;
using wattfall::test::read_file;
using wattfall::test::Scratch;

namespace {

const std::string hostile = "<script>alert(1)</script> & 'q' | *b* [c](d) `e` ]]> <!-- --";

std::string feed_of(const std::string& title) {
  return "design \"" + title + "\"\nsource rig at desk : 100 W, 50 ohm\nsweep at [7 MHz]\nrequire swr at desk below 1.2\n" + "variant \"" + title +
         " one\" {\n  load wires at desk : 75 ohm\n}\nvariant \"" + title + " two\" {\n  load wires at desk : 100 ohm\n}\n";
}

void check_everything(const std::string& title) {
  const Scratch scratch;
  scratch.write("a.feed", feed_of(title));
  for (const std::string verb : {"run", "compare", "check"}) {
    CAPTURE(verb);
    const auto ran = program({verb, "a.feed", "--to", "text=r.txt", "--to", "json=r.json", "--to", "csv=r.csv", "--to", "markdown=r.md", "--to", "junit=r.xml"},
                             {.folder = scratch.path()});
    CHECK(ran.err == "");
    REQUIRE(ran.code == 1);
    CHECK(formats::schema_faults(read_file(scratch / "r.json")) == "");
    CHECK(formats::junit_faults(read_file(scratch / "r.xml")) == "");
    CHECK(read_file(scratch / "r.xml").find("<script") == std::string::npos);
    const std::string html = formats::html_of(read_file(scratch / "r.md"));
    for (const char* tag : {"<script", "<em>", "<a ", "<code>", "<!--"}) {
      CAPTURE(tag);
      CHECK(html.find(tag) == std::string::npos);
    }
    for (const auto& table : formats::table_shapes(html))
      for (const std::size_t cells : table) CHECK(cells == table.front());
    // The text keeps its width, whatever the names.
    std::size_t begin = 0;
    const std::string text = read_file(scratch / "r.txt");
    for (std::size_t end = text.find('\n'); end != std::string::npos; begin = end + 1, end = text.find('\n', begin)) {
      std::size_t columns = 0;
      for (std::size_t i = begin; i < end; ++i) columns += (text[i] & 0xC0) != 0x80 ? 1 : 0;
      CHECK(columns <= 100);
    }
  }
  const auto snp = program({"run", "a.feed", "--variant", title + " one", "--to", "snp"}, {.folder = scratch.path()});
  CHECK(snp.code == 1);
  CHECK(wattfall::measured::read_touchstone(std::make_shared<const wattfall::Source>("a.s1p", snp.out), 1).ok());
  // A baseline with such names is read back and held.
  CHECK(program({"check", "a.feed", "--accept"}, {.folder = scratch.path()}).code == 1);
  const json held = json::parse(program({"check", "a.feed", "--to", "json"}, {.folder = scratch.path()}).out);
  CHECK(held["check"]["designs"][0]["baseline"]["state"] == "held");
  for (const json& variant : held["check"]["designs"][0]["variants"])
    for (const json& figure : variant["figures"]) CHECK(figure["state"] == "kept");
}

}  // namespace

TEST_CASE("a name that is markup stays text in every report") {
  check_everything(hostile);
}

TEST_CASE("a title of 10,000 characters breaks no report") {
  check_everything(std::string(10000, 'w'));
}
