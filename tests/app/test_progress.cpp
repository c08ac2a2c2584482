// Work that takes long is shown on a terminal, and nowhere else.
#include <catch2/catch.hpp>
#include <fcntl.h>
#include <stdlib.h>
#include <unistd.h>

#include <thread>

#include "cabin.hpp"
#include "progress/progress.hpp"

using namespace app_tests;
using wattfall::Progress;
using wattfall::progress_line;

namespace {

/// A terminal of its own, and what has been written to it.
class Terminal {
 public:
  Terminal() : master_(::posix_openpt(O_RDWR | O_NOCTTY)) {
    REQUIRE(master_ >= 0);
    REQUIRE(::grantpt(master_) == 0);
    REQUIRE(::unlockpt(master_) == 0);
    path_ = ::ptsname(master_);
    // Held open, so that what comes does not end before `said` is asked.
    slave_ = ::open(path_.c_str(), O_RDWR | O_NOCTTY);
    REQUIRE(slave_ >= 0);
    reader_ = std::thread([this] {
      char buffer[4096];
      for (ssize_t count = 0; (count = ::read(master_, buffer, sizeof buffer)) > 0;) said_.append(buffer, static_cast<std::size_t>(count));
    });
  }
  ~Terminal() {
    said();
    ::close(master_);
  }
  Terminal(const Terminal&) = delete;
  Terminal& operator=(const Terminal&) = delete;

  const std::string& path() const { return path_; }
  /// All of it; nothing more is read afterwards.
  const std::string& said() {
    if (reader_.joinable()) {
      ::close(slave_);
      reader_.join();
    }
    return said_;
  }

 private:
  int master_, slave_ = -1;
  std::string path_, said_;
  std::thread reader_;
};

/// Three knobs searched for at each of many points: seconds of work.
std::string long_work() {
  return "design \"long\"\n"
         "source rig at desk : 100 W, 50 ohm\n"
         "capacitor Cin from desk to mid : adjustable 15 pF to 330 pF, Q 1200\n"
         "inductor L at mid : adjustable 0.2 uH to 20 uH, Q 180 at 7 MHz\n"
         "capacitor Cout from mid to feed : adjustable 15 pF to 330 pF, Q 1200\n"
         "load ant at feed : 23 - j180 ohm\n"
         "sweep 6 MHz to 8 MHz, 4000 points\n"
         "tune Cin, L, Cout at each frequency for most power into ant\n";
}

/// `wattfall run` of it in JSON, standard error on the terminal, after these words of the shell.
Ran run_long(Terminal& terminal, const std::string& words) {
  return shell(words + " exec \"$WATTFALL\" run - --to json 2>\"$SCREEN\"", {.input = long_work(), .variables = {{"SCREEN", terminal.path()}}});
}

}  // namespace

TEST_CASE("a terminal sees how far long work is, and at the end nothing of it is left") {
  Terminal terminal;
  const Ran ran = run_long(terminal, "unset CI; TERM=xterm;");
  CHECK(ran.code == 0);
  CHECK(json::parse(ran.out).at("schema") == 1);
  const std::string said = terminal.said();
  INFO(said);
  CHECK(said.find("tuning, ") != std::string::npos);
  CHECK(said.find(" settings tried") != std::string::npos);
  CHECK(said.find(" %  ") != std::string::npos);
  CHECK(said.ends_with("\r\x1b[K"));
  CHECK(said.find('\n') == std::string::npos);
}

TEST_CASE("CI jobs, simple terminals and pipes are told nothing of it") {
  for (const std::string words : {"CI=true; TERM=xterm; export CI;", "unset CI; TERM=dumb;", "unset CI; unset TERM;"}) {
    INFO(words);
    Terminal terminal;
    const Ran ran = run_long(terminal, words);
    CHECK(ran.code == 0);
    CHECK(terminal.said().empty());
  }
  const Ran ran = shell("unset CI; export TERM=xterm; exec \"$WATTFALL\" run - --to json", {.input = long_work()});
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
}

TEST_CASE("a line of progress says what is being done, and how much of how much") {
  Progress progress;
  CHECK(progress_line(progress).empty());
  progress.expect(Progress::Work::variants, 2);
  progress.expect(Progress::Work::searches, 4);
  progress.expect(Progress::Work::points, 1000);
  progress.add(Progress::Work::searches, 1);
  progress.add(Progress::Work::settings, 1234);
  CHECK(progress_line(progress) == "[######------------------]  25 %  tuning, 1234 settings tried, 0 of 2 variants");
  progress.add(Progress::Work::searches, 3);
  progress.add(Progress::Work::variants, 1);
  CHECK(progress_line(progress) == "[############------------]  50 %  1 of 2 variants");
  progress.add(Progress::Work::variants, 1);
  progress.add(Progress::Work::points, 1000);
  CHECK(progress_line(progress) == "writing reports");
}

TEST_CASE("a line of progress of one design tells the sweep's points, of several the designs") {
  Progress one;
  one.expect(Progress::Work::designs, 1);
  one.expect(Progress::Work::variants, 1);
  one.expect(Progress::Work::points, 100000);
  one.add(Progress::Work::points, 75000);
  CHECK(progress_line(one) == "[##################------]  75 %  75000 of 100000 points");
  Progress several;
  several.expect(Progress::Work::designs, 40);
  several.add(Progress::Work::designs, 40);
  CHECK(progress_line(several) == "[########################] 100 %  40 of 40 designs");
  // Studies of a match search again.
  Progress more;
  more.expect(Progress::Work::searches, 1);
  more.expect(Progress::Work::points, 10);
  more.add(Progress::Work::searches, 5);
  more.add(Progress::Work::settings, 700);
  CHECK(progress_line(more) == "tuning, 700 settings tried");
}
