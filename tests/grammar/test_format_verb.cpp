// `wattfall format` from outside: what it writes, what it leaves alone, what it prints, and its exit codes.
#include <catch2/catch.hpp>
#include <filesystem>

#include "../support/program.hpp"

using namespace wattfall;
using wattfall::test::read_file;
using wattfall::test::Scratch;
namespace fs = std::filesystem;

namespace {

const std::string crooked = "set a=1 pF#c\r\n";
const std::string straight = "set a = 1 pF  #c\n";
const std::string wrong = "set a=1 pf\n";

}  // namespace

TEST_CASE("format rewrites a file, and keeps its permissions") {
  const Scratch scratch;
  const std::string file = scratch.write("a.feed", crooked);
  fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);
  const auto ran = test::program({"format", file});
  CHECK(ran.code == 0);
  CHECK(ran.out + ran.err == "");
  CHECK(read_file(file) == straight);
  CHECK(fs::status(file).permissions() == (fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read));
  CHECK(scratch.listing() == "a.feed\n");
}

TEST_CASE("format leaves a file alone that is in the standard layout already") {
  const Scratch scratch;
  const std::string file = scratch.write("a.feed", straight);
  const auto before = fs::last_write_time(file) - std::chrono::hours(1);
  fs::last_write_time(file, before);
  CHECK(test::program({"format", file}).code == 0);
  CHECK(fs::last_write_time(file) == before);
}

TEST_CASE("format - prints what standard input would become") {
  const auto ran = test::program({"format", "-"}, {.input = crooked});
  CHECK(ran.code == 0);
  CHECK(ran.out == straight);
  const auto bad = test::program({"format", "-"}, {.input = wrong});
  CHECK(bad.code == 3);
  CHECK(bad.out == "");
  CHECK(bad.err.find("unknown-unit") != std::string::npos);
  CHECK(test::program({"format", "-", "a.feed"}).code == 2);
}

TEST_CASE("format --check changes nothing and names the files that would change") {
  const Scratch scratch;
  const std::string bad = scratch.write("a.feed", crooked);
  const std::string good = scratch.write("b.feed", straight);
  const auto ran = test::program({"format", "--check", bad, good});
  CHECK(ran.code == 1);
  CHECK(ran.out == bad + ": not in the standard layout\n");
  CHECK(read_file(bad) == crooked);
  CHECK(test::program({"format", "--check", good}).code == 0);
  CHECK(test::program({"format", "--check", "--quiet", bad}).out == "");
  CHECK(test::program({"format", "--check", "-"}, {.input = crooked}).code == 1);
}

TEST_CASE("of several files, one with mistakes is left alone and the others are rewritten") {
  const Scratch scratch;
  const std::string bad = scratch.write("a.feed", wrong);
  const std::string good = scratch.write("b.feed", crooked);
  const auto ran = test::program({"format", bad, good});
  CHECK(ran.code == 3);
  CHECK(ran.out == "");
  CHECK(ran.err.find(bad + ":1:9: error") != std::string::npos);
  CHECK(read_file(bad) == wrong);
  CHECK(read_file(good) == straight);
  CHECK(test::program({"format", "--check", bad, scratch.write("c.feed", crooked)}).out == "");
}

TEST_CASE("format says which file it cannot read") {
  const Scratch scratch;
  const auto ran = test::program({"format", scratch / "none.feed"});
  CHECK(ran.code == 5);
  CHECK(ran.err.find("none.feed") != std::string::npos);
  CHECK(test::program({"format", scratch.path().string()}).code == 5);
  CHECK(test::program({"format"}).code == 2);
}
