// Requirements and ratings: what is met, where the worst stands, and what is said.
#include <catch2/catch.hpp>
#include <cmath>

#include "feed.hpp"
#include "judge/judge.hpp"

using namespace wattfall;
using test::Feed;

namespace {

/// A series coil makes the SWR grow with frequency: |Z| = 50 + j w L.
Feed rising(const std::string& asked) {
  return Feed("design \"t\"\nsource rig at desk : 100 W, 50 ohm, duty 50 %\nsweep 1 MHz to 10 MHz, 10 points\n"
              "inductor L from desk to feed : 1 uH, resistance 10 ohm" + asked);
}

}  // namespace

TEST_CASE("the worst point of a requirement is where it is farthest on the wrong side") {
  const Feed feed = rising("\nload ant at feed : 40 ohm\nrequire swr at desk below 2\nrequire swr at desk below 2 over 1 MHz to 3 MHz\n"
                           "require efficiency above 10 %\n");
  REQUIRE(feed.diagnostics.empty());
  const judge::Judgement judgement = judge::judge(feed.design, feed.ledger, feed.solution);
  REQUIRE(judgement.verdicts.size() == 3);
  CHECK_FALSE(judgement.verdicts[0].met);
  CHECK(judgement.verdicts[0].worst_at_hz == 10e6);
  CHECK(judgement.verdicts[1].met);
  CHECK(judgement.verdicts[1].worst_at_hz == 3e6);
  CHECK(judgement.verdicts[2].met);
  CHECK(judgement.verdicts[2].worst_at_hz == 10e6);
  CHECK_FALSE(judgement.all_met());
}

TEST_CASE("a requirement without a point in its range is not judged, and that is said") {
  Feed feed = rising("\nload ant at feed : 40 ohm\nrequire swr at desk below 2 over 1 MHz to 3 MHz\n");
  REQUIRE(feed.diagnostics.empty());
  feed.design.requirements[0].over_hz = std::pair{11e6, 12e6};
  const judge::Judgement judgement = judge::judge(feed.design, feed.ledger, feed.solution);
  CHECK(judgement.verdicts.empty());
  REQUIRE(judgement.warnings.size() == 1);
  CHECK(judgement.warnings[0].code == "not-judged");
}

TEST_CASE("volts and amps are judged at the peak of the envelope, watts by the duty") {
  const Feed feed = rising(", limit 90 V, limit 5 A, limit 9 W\nload ant at feed : 40 ohm\n");
  REQUIRE(feed.diagnostics.empty());
  const judge::Judgement judgement = judge::judge(feed.design, feed.ledger, feed.solution);
  REQUIRE(judgement.ratings.size() == 3);
  for (const judge::Rating& rating : judgement.ratings) {
    if (rating.unit == 'W') CHECK(rating.worst == Approx(0.5 * feed.part("L").heat_w[0]).epsilon(1e-12));
    if (rating.unit == 'V') CHECK(rating.worst == Approx(feed.part("L").volts_peak[9]).epsilon(1e-12));
    if (rating.unit == 'A') CHECK(rating.worst == Approx(feed.part("L").amps_rms[0]).epsilon(1e-12));
  }
  // 2 A of 5 and 10 W of 9 (100 W, 10 of 100 ohm, half the time: 20 W x 0.5 = 10 W), 90 V passed at the upper end.
  std::vector<std::string> broken;
  for (const judge::Warning& warning : judgement.warnings) broken.push_back(warning.code);
  CHECK(broken == std::vector<std::string>{"rating-volts", "rating-watts"});
}

TEST_CASE("the width of the SWR is measured around the best point, edges between the points") {
  // SWR of 50 + j w L on 50 ohm: rho = wL/sqrt(4 R^2 + (wL)^2); SWR 2 is rho 1/3, wL = 2 R/sqrt 8. From the sweep's lower end.
  const Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep 1 kHz to 10 MHz, 100001 points\ninductor L from desk to feed : 1 uH\n"
      "load ant at feed : 50 ohm\nrequire width of swr at desk below 2 above 1 MHz\n");
  REQUIRE(feed.diagnostics.empty());
  const judge::Judgement judgement = judge::judge(feed.design, feed.ledger, feed.solution);
  REQUIRE(judgement.verdicts.size() == 1);
  const double edge = 100.0 / std::sqrt(8.0) / (2.0 * M_PI * 1e-6);
  CHECK(judgement.verdicts[0].worst == Approx(edge - 1e3).epsilon(1e-6));
  CHECK(judgement.verdicts[0].met);
}
