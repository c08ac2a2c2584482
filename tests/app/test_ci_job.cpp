// examples/ci: the job holds on the designs as they are, and a design made worse breaks it: the message names the figure, before and after, and the
// part that was changed.
#include <catch2/catch.hpp>
#include <fstream>

#include "cabin.hpp"

using namespace app_tests;

namespace fs = std::filesystem;

namespace {

Ran job(const Scratch& scratch) {
  return shell("examples/ci/check_designs examples/ci/designs reports", {.folder = scratch.path()});
}

void copy_job(const Scratch& scratch) {
  fs::create_directories(scratch.path() / "examples");
  fs::copy(fs::path(WATTFALL_EXAMPLES) / "ci", scratch.path() / "examples/ci", fs::copy_options::recursive);
}

void replace_in(const std::string& path, const std::string& old, const std::string& now) {
  std::string text = read_file(path);
  REQUIRE(text.find(old) != std::string::npos);
  text.replace(text.find(old), old.size(), now);
  std::ofstream(path, std::ios::binary) << text;
}

}  // namespace

TEST_CASE("the CI job holds on the designs as they are") {
  const Scratch scratch;
  copy_job(scratch);
  const Ran ran = job(scratch);
  CAPTURE(ran.out, ran.err);
  CHECK(ran.code == 0);
  CHECK(ran.out.find("Both designs pass.") != std::string::npos);
  CHECK(fs::exists(scratch / "reports/designs.xml"));
  CHECK(fs::exists(scratch / "reports/designs.md"));
}

TEST_CASE("a design made worse breaks the CI job, in the words that its page shows") {
  const Scratch scratch;
  copy_job(scratch);
  replace_in(scratch / "examples/ci/designs/allotment_vertical.feed", "20 m of RG-213", "60 m of RG-213");
  const Ran ran = job(scratch);
  CHECK(ran.code == 1);
  CHECK(ran.out.find("total loss was 2.54 dB and is 3.21 dB") != std::string::npos);
  CHECK(ran.out.find("coax, length: 20 m -> 60 m") != std::string::npos);
  CHECK(ran.err.find("--accept") != std::string::npos);
  const std::string page = read_file(fs::path(WATTFALL_EXAMPLES) / "ci/README.md");
  const std::size_t begin = page.find("```text\n") + 8;
  const std::string shown = page.substr(begin, page.find("```", begin) - begin);
  CHECK(!shown.empty());
  CHECK(ran.out.find(shown) != std::string::npos);
  CHECK(read_file(scratch / "reports/designs.xml").find("coax, length: 20 m -&gt; 60 m") != std::string::npos);
}

TEST_CASE("a design with a mistake ends the CI job with 3") {
  const Scratch scratch;
  copy_job(scratch);
  replace_in(scratch / "examples/ci/designs/attic_loop.feed", "0.56 uH", "0.56 uh");
  const Ran ran = job(scratch);
  CHECK(ran.code == 3);
  CHECK(ran.err.find("attic_loop.feed:") != std::string::npos);
}
