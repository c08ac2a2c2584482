// The robust form of networks too large for a dense matrix, held against the fast path.
#include <catch2/catch.hpp>
#include <cmath>

#include "feed.hpp"

using namespace wattfall;
using test::Feed;

namespace {

/// Coils in series and capacitors across, with losses, `nodes` long; a section behind a transformer at its end, so that one node is tied.
std::string ladder(int nodes) {
  std::string text = "design \"ladder\"\nsource rig at n0 : 100 W, 50 ohm\n";
  for (int i = 0; i < nodes; ++i) {
    const std::string here = std::to_string(i), next = std::to_string(i + 1);
    text += "inductor L" + here + " from n" + here + " to n" + next + " : 0.05 uH, Q 5000\n";
    text += "capacitor C" + here + " at n" + next + " : 20 pF, Q 5000\n";
  }
  const std::string last = std::to_string(nodes);
  return text + "transformer T from (n" + last + " ground) to (p q) : turns 1:2\nload ant from p to q : 200 ohm\nsweep at [3 MHz, 14 MHz]\n";
}

}  // namespace

TEST_CASE("the robust form of a network of a thousand nodes is sparse and agrees with the fast path") {
  const std::string text = ladder(1000);
  const Feed fast(text), robust(text, solve::Method::robust);
  for (const Diagnostic& diagnostic : fast.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(fast.diagnostics.empty());
  CHECK(fast.solution.robust_count() == 0);
  for (std::size_t s = 0; s < 2; ++s) {
    CHECK(robust.solution.untrusted[s] == 0);
    double worst = 0.0;
    for (std::size_t e = 0; e < fast.network.elements.size(); ++e)
      worst = std::max(worst, std::abs(fast.solution.flows[e].heat1_w[s] - robust.solution.flows[e].heat1_w[s]));
    CHECK(worst <= 1e-9 * 100.0);
    CHECK(fast.load("ant").absorbed_w[s] > 1.0);
    CHECK(std::abs(robust.ledger.totals.residual_w[s]) <= 1e-9 * 100.0);
  }
}
