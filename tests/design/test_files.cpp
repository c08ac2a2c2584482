#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "bench_design.hpp"

using namespace design_tests;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> codes_of(const Resolved& resolved) {
  std::vector<std::string> codes;
  for (const Diagnostic& one : resolved.diagnostics) codes.push_back(one.code);
  return codes;
}

/// A folder of this test's own, gone afterwards.
struct Scratch {
  fs::path path =
      fs::temp_directory_path() /
      ("wattfall-design-" + std::to_string(std::hash<std::string>{}(Catch::getResultCapture().getCurrentTestName())));
  Scratch() {
    fs::remove_all(path);
    fs::create_directories(path / "design");
  }
  ~Scratch() { fs::remove_all(path); }
  void write(const std::string& name, const std::string& text) const { std::ofstream(path / name) << text; }
};

const char* const load_file = "# MHz S RI R 50\n7 0.5 0\n7.2 0.5 0\n";

Resolved with_measured(const fs::path& folder, const std::string& file, std::vector<fs::path> allow = {}) {
  ResolveOptions options;
  options.folder = folder;
  options.allow = std::move(allow);
  return resolve_text(with_frame("load two at feed : measured \"" + file + "\""), options);
}

}  // namespace

TEST_CASE("an include brings quantities, boxes and parts, and includes of its own from beside it") {
  const Resolved resolved =
      resolve_text(with_frame("include \"library/boxes.feed\"\nshunt s at feed\nchoke_coil l from desk to feed"));
  INFO(resolved.errors());
  REQUIRE(resolved.good());
  CHECK(std::get<Capacitor>(resolved.part("s.C").model).farads.constant_value().real() == Approx(47e-12));
  CHECK(resolved.part("bleeder").span.source->name() == "library/coils.feed");
  CHECK(resolved.design().sources.size() == 3);
}

TEST_CASE("a file included twice is brought in once") {
  CHECK(resolve_text(with_frame("include \"library/coils.feed\"\ninclude \"library/boxes.feed\"")).good());
}

TEST_CASE("includes that lead back are shown as a loop") {
  const Resolved resolved = resolve_text(with_frame("include \"loop_a.feed\""));
  REQUIRE(codes_of(resolved) == std::vector<std::string>{"include-loop"});
  CHECK(resolved.diagnostics[0].text == "this file includes itself: loop_a.feed -> loop_b.feed -> loop_a.feed");
  CHECK(resolved.diagnostics[0].span.source->name() == "loop_b.feed");
  CHECK(resolved.diagnostics[0].notes.size() == 2);
}

TEST_CASE("an included file's own mistakes are shown in it") {
  const Resolved resolved = resolve_text(with_frame("include \"mistaken.feed\"\ninclude \"misplaced.feed\""));
  const auto codes = codes_of(resolved);
  CHECK(std::find(codes.begin(), codes.end(), "dimension-mismatch") != codes.end());
  CHECK(std::find(codes.begin(), codes.end(), "not-in-an-include") != codes.end());
  for (const Diagnostic& one : resolved.diagnostics) CHECK(one.span.source->name() != "test.feed");
}

TEST_CASE("a missing file, a broken one and one of other ports are file faults, shown where they are named") {
  const auto fault = [](const char* lines) {
    const Resolved resolved = resolve_text(with_frame(lines));
    REQUIRE_FALSE(resolved.good());
    CHECK(exit_code(resolved.diagnostics) == 5);
    return resolved.diagnostics.front().code + " " + resolved.diagnostics.back().code;
  };
  CHECK(fault("load two at feed : measured \"none.s1p\"") == "file-not-found file-not-found");
  CHECK(fault("load two at feed : measured \"two.s2p\"") == "wrong-port-count wrong-port-count");
  CHECK(fault("load two at feed : measured \"library\"") == "file-not-read file-not-read");
  CHECK(fault("include \"none.feed\"") == "file-not-found file-not-found");
  const Resolved broken = resolve_text(with_frame("load two at feed : measured \"broken.s1p\""));
  REQUIRE(broken.diagnostics.size() >= 2);
  CHECK(exit_code(broken.diagnostics) == 5);
  std::string all;
  for (const Diagnostic& one : broken.diagnostics) all += one.code + '@' + one.span.source->name() + ' ';
  CHECK(all.find("broken-measurement@test.feed") != std::string::npos);
  CHECK(all.find("touchstone-") != std::string::npos);
}

TEST_CASE("a file outside the design's folder is refused, links and dots seen through, unless it is allowed") {
  const Scratch scratch;
  scratch.write("outside.s1p", load_file);
  scratch.write("design/inside.s1p", load_file);
  fs::create_directories(scratch.path / "design/sub");
  fs::create_symlink(scratch.path / "outside.s1p", scratch.path / "design/link.s1p");
  fs::create_directories(scratch.path / "design-other");
  scratch.write("design-other/near.s1p", load_file);
  const fs::path folder = scratch.path / "design";
  CHECK(with_measured(folder, "inside.s1p").good());
  CHECK(with_measured(folder, "sub/../inside.s1p").good());
  CHECK(codes_of(with_measured(folder, "../outside.s1p")) == std::vector<std::string>{"file-outside"});
  CHECK(codes_of(with_measured(folder, "link.s1p")) == std::vector<std::string>{"file-outside"});
  CHECK(codes_of(with_measured(folder, "../design-other/near.s1p")) == std::vector<std::string>{"file-outside"});
  CHECK(codes_of(with_measured(folder, (scratch.path / "outside.s1p").string())) ==
        std::vector<std::string>{"file-outside"});
  CHECK(codes_of(with_measured(folder, "../not-there.s1p")) == std::vector<std::string>{"file-outside"});
  CHECK(with_measured(folder, "../outside.s1p", {scratch.path}).good());
  CHECK(with_measured(folder, "link.s1p", {scratch.path}).good());
}

TEST_CASE("data asked outside its frequencies is an error at the load, which says the range") {
  const Resolved measured = resolve_text(
      "source rig at desk : 1 W\nload ant at desk : measured \"lake-doublet.s1p\"\nsweep at [7 MHz, 14 MHz]\n");
  REQUIRE(measured.diagnostics.size() == 1);
  CHECK(measured.diagnostics[0].code == "outside-data");
  CHECK(measured.diagnostics[0].span.text() == "measured \"lake-doublet.s1p\"");
  CHECK(measured.diagnostics[0].expected == "frequencies from 6.9 MHz to 7.3 MHz");
  const Resolved tuned = resolve_text(
      "source rig at desk : 1 W\nload ant at desk : table [7 MHz: 50 ohm, 7.1 MHz: 40 ohm]\nsweep at [7 MHz]\n"
      "capacitor C at desk : adjustable 1 pF to 2 pF\ntune C at 7.2 MHz for most efficiency\n");
  REQUIRE(tuned.diagnostics.size() == 1);
  CHECK(tuned.diagnostics[0].code == "outside-data");
}

TEST_CASE("diagnostics outlive everything that was read for them") {
  Diagnostics kept;
  {
    Resolved resolved = resolve_text(
        with_frame("include \"loop_a.feed\"\ninclude \"mistaken.feed\"\nload l at feed : measured \"broken.s1p\""));
    kept = std::move(resolved.diagnostics);
    std::erase_if(kept, [](const Diagnostic& one) { return one.span.source->name() == "test.feed"; });
  }
  REQUIRE(kept.size() >= 3);
  CHECK(render(kept, false).find("loop_b.feed:1:9") != std::string::npos);
}
