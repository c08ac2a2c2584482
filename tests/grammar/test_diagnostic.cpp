// Sources, diagnostics and spelling: places as people count them, the readable form letter for letter, the exit code.
#include <catch2/catch.hpp>
#include <string>

#include "grammar/diagnostic.hpp"
#include "grammar/nearest_name.hpp"
#include "support.hpp"

using namespace wattfall;
using wattfall::test::source;

namespace {

Diagnostic at(const SourcePtr& text, std::uint32_t begin, std::uint32_t end) {
  return {"some-code", {text.get(), begin, end}, "something is wrong", "", ""};
}

}  // namespace

TEST_CASE("positions count lines and characters from one") {
  const Source text("x", "ab\n\u00B5\u2126c\r\n\nlast");
  CHECK(text.position(0).line == 1);
  CHECK(text.position(2).column == 3);
  CHECK(text.position(3).line == 2);
  CHECK(text.position(5).column == 2);
  CHECK(text.position(8).column == 3);
  CHECK(text.line(2) == "\u00B5\u2126c");
  CHECK(text.line(3).empty());
  CHECK(text.line(4) == "last");
  CHECK(text.line(0).empty());
  CHECK(text.line(5).empty());
  CHECK(text.position(1000).line == 4);
  CHECK(text.position(1000).column == 5);
}

TEST_CASE("a byte order mark takes no column") {
  const Source text("x",
                    "\xEF\xBB\xBF"
                    "ab");
  CHECK(text.position(3).column == 1);
  CHECK(text.position(4).column == 2);
  CHECK(text.line(1) == "ab");
}

TEST_CASE("spans join, and say their line") {
  const auto text = source("one\ntwo");
  const Span one{text.get(), 0, 3}, two{text.get(), 4, 7};
  CHECK(join(two, one).text() == "one\ntwo");
  CHECK(join({}, two).text() == "two");
  CHECK(join(one, {}).text() == "one");
  CHECK(two.line() == 2);
  CHECK(Span{}.line() == 0);
  CHECK(Span{}.text().empty());
}

TEST_CASE("the readable form is as documented") {
  const auto text = std::make_shared<const Source>("coupler.feed", "\n\n\n\n\n\nsweep 7 mhz to 7.2 MHz step 10 kHz\n");
  const auto result = parse(text);
  REQUIRE(result.diagnostics.size() == 1);
  CHECK(render(result.diagnostics[0], false) ==
        "coupler.feed:7:9: error: `mhz` is not a unit [unknown-unit]\n"
        "   7 | sweep 7 mhz to 7.2 MHz step 10 kHz\n"
        "     |         ^~~\n"
        "  expected: a frequency, such as 7 MHz\n"
        "  did you mean: MHz\n");
}

TEST_CASE("tabs, characters of several bytes and control characters keep the marks below what they mark") {
  const auto text = source("\t\u00B5\u2126 bad\x01 x");
  CHECK(render(at(text, 7, 10), false) ==
        "test.feed:1:5: error: something is wrong [some-code]\n"
        "   1 |  \u00B5\u2126 bad? x\n"
        "     |     ^~~\n");
}

TEST_CASE("bytes that are no text are shown as question marks") {
  const auto text = source(
      "a\xFF\xC3(b\u202E"
      "c\x7F");
  const std::string shown = render(at(text, 1, 2), false);
  CHECK(shown.find("a?"
                   "?(b?c?") != std::string::npos);
}

TEST_CASE("a span of several lines is marked on its first, an empty one by a caret") {
  const auto text = source("one two\nthree");
  CHECK(render(at(text, 4, 13), false).find("|     ^~~\n") != std::string::npos);
  CHECK(render(at(text, 7, 7), false).find("|        ^\n") != std::string::npos);
  CHECK(render(at(text, 13, 13), false).find("test.feed:2:6") != std::string::npos);
}

TEST_CASE("a long line is cut to a window round the span") {
  const auto text = source(std::string(5000, 'a') + "WRONG" + std::string(5000, 'b'));
  const std::string shown = render(at(text, 5000, 5005), false);
  CHECK(shown.size() < 400);
  CHECK(shown.find("...aaa") != std::string::npos);
  CHECK(shown.find("bbb...") != std::string::npos);
  const std::size_t line = shown.find("| ...");
  const std::size_t marks = shown.find("| ", line + 2);
  CHECK(shown.find("WRONG") - line == shown.find("^~~~~\n") - marks);
  CHECK(render(at(text, 0, 10005), false).size() < 400);
}

TEST_CASE("notes show the other place, and a diagnostic without a place is one line") {
  const auto text = source("set a = (2]");
  const auto result = parse(text);
  REQUIRE(result.diagnostics.size() == 1);
  CHECK(render(result.diagnostics, false) ==
        "test.feed:1:11: error: `]` does not close `(` [mismatched-bracket]\n"
        "   1 | set a = (2]\n"
        "     |           ^\n"
        "  did you mean: )\n"
        "test.feed:1:9: note: opened here\n"
        "   1 | set a = (2]\n"
        "     |         ^\n");
  CHECK(render(Diagnostic{"x", {}, "no such plugin", "", ""}, false) == "error: no such plugin [x]\n");
}

TEST_CASE("colour adds escape sequences and changes nothing else") {
  const auto text = source("abc");
  std::string colored = render(at(text, 0, 1), true);
  CHECK(colored.find("\x1b[") != std::string::npos);
  for (std::size_t i = colored.find('\x1b'); i != std::string::npos; i = colored.find('\x1b')) {
    colored.erase(i, colored.find('m', i) - i + 1);
  }
  CHECK(colored == render(at(text, 0, 1), false));
}

TEST_CASE("diagnostics are sorted by place and said once") {
  const auto a = source("aaaa"), b = source("bbbb");
  Diagnostics list = {at(b, 2, 3), at(a, 1, 2), at(b, 0, 1), at(a, 1, 2), at(b, 2, 3), at(a, 0, 1)};
  sort_by_place(list);
  REQUIRE(list.size() == 4);
  CHECK(list[0].span.source == b.get());
  CHECK(list[0].span.begin == 0);
  CHECK(list[1].span.begin == 2);
  CHECK(list[2].span.source == a.get());
  CHECK(list[3].span.begin == 1);
}

TEST_CASE("the gravest fault decides the exit code") {
  const auto code = [](std::vector<Fault> faults) {
    Diagnostics list;
    for (const Fault fault : faults) {
      list.push_back({"x", {}, "x", "", ""});
      list.back().fault = fault;
    }
    return exit_code(list);
  };
  CHECK(code({}) == 0);
  CHECK(code({Fault::usage}) == 2);
  CHECK(code({Fault::usage, Fault::design}) == 3);
  CHECK(code({Fault::design, Fault::numeric}) == 4);
  CHECK(code({Fault::file, Fault::numeric, Fault::design}) == 5);
}

TEST_CASE("a near name is offered, a far one is not") {
  const std::vector<std::string> known = {"capacitor", "inductor", "resistor", "line", "Q"};
  CHECK(nearest_name("capasitor", known) == "capacitor");
  CHECK(nearest_name("cpaacitor", known) == "capacitor");
  CHECK(nearest_name("CAPACITOR", known) == "capacitor");
  CHECK(nearest_name("lnie", known) == "line");
  // One that was left off early is nearer than one of another letter.
  CHECK(nearest_name("atu.C", {"atu.L", "atu.Cin", "atu.Cout"}) == "atu.Cin");
  CHECK(nearest_first("atu.C", {"atu.L", "atu.Cout", "atu.Cin"}, 9) == "atu.Cout, atu.Cin, atu.L");
  CHECK(nearest_name("lin", known) == "line");
  CHECK(nearest_name("q", known) == "Q");
  CHECK(nearest_name("x", known).empty());
  CHECK(nearest_name("transformer", known).empty());
  CHECK(nearest_name("", known).empty());
  CHECK(nearest_name("line", {}).empty());
  CHECK(nearest_first("lien", known) == "line, Q, resistor, capacitor, inductor");
  CHECK(nearest_first("line", known, 1) == "line, ...");
  CHECK(nearest_first("line", {}).empty());
}
