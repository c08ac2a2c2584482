// The kernels: their own sine, cosine, sinh and cosh against the C library in 80-bit numbers, over the range that lines need.
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>
#include <random>

#include "../../engine/solve/kernel.hpp"
#include "feed.hpp"

using namespace wattfall::solve;

namespace {

/// Error in units of the larger of 1 ulp-like relative size: |f - g| / max(|g|, tiny).
double relative(double found, long double exact) { return static_cast<double>(std::abs(found - exact) / std::abs(exact)); }

struct Worst {
  double sine = 0.0, cosine = 0.0, sinh = 0.0, cosh = 0.0;
};

Worst measure(const Kernel& kernel, double limit, int batches) {
  std::mt19937_64 random(11);
  Worst worst;
  for (int i = 0; i < batches; ++i) {
    double x[8], s[8], c[8], big_s[8], big_c[8];
    for (double& at : x) at = limit * (2.0 * static_cast<double>(random() >> 11) * 0x1p-53 - 1.0);
    kernel.functions(x, s, c, big_s, big_c);
    for (int k = 0; k < 8; ++k) {
      const long double at = x[k];
      // Absolute for sine and cosine: where they vanish, guards send the lane away.
      worst.sine = std::max(worst.sine, static_cast<double>(std::abs(s[k] - std::sin(at))));
      worst.cosine = std::max(worst.cosine, static_cast<double>(std::abs(c[k] - std::cos(at))));
      if (std::abs(x[k]) < 64.0) {
        worst.sinh = std::max(worst.sinh, relative(big_s[k], std::sinh(std::abs(at))));
        worst.cosh = std::max(worst.cosh, relative(big_c[k], std::cosh(at)));
      }
    }
  }
  return worst;
}

}  // namespace

TEST_CASE("the kernels' own functions are right to 4e-16 over the range of lines") {
  for (const char* name : {"baseline", "v3", "v4"}) {
    const Kernel* kernel = kernel_named(name);
    if (kernel == nullptr) {
      std::cout << "kernel " << name << ": this machine cannot run it, skipped\n";
      continue;
    }
    INFO(name);
    const Worst near = measure(*kernel, 1.0, 40000), far = measure(*kernel, 1000.0, 40000);
    std::cout << "kernel " << name << ": sine " << far.sine << ", cosine " << far.cosine << ", sinh " << near.sinh << ", cosh " << near.cosh << '\n';
    CHECK(near.sine <= 4e-16);
    CHECK(near.cosine <= 4e-16);
    CHECK(far.sine <= 4e-16);
    CHECK(far.cosine <= 4e-16);
    CHECK(near.sinh <= 4e-16);
    CHECK(near.cosh <= 4e-16);
    // Doubling back costs a factor of a few per doubling beyond 1 Np (8.7 dB): a line that loses half a billion hides it.
    CHECK(measure(*kernel, 20.0, 10000).sinh <= 1e-14);
  }
}

TEST_CASE("the chosen kernel is one of those built") {
  CHECK(kernel_named(kernel().name) == &kernel());
}

TEST_CASE("the solution is the same to the last bit for any number of threads") {
  const wattfall::test::Feed feed(
      "design \"t\"\nsource rig at desk : 100 W, 50 ohm\nsweep 1 MHz to 30 MHz, 5003 points\ninductor L from desk to mid : 2 uH, Q 200\n"
      "line w from mid to feed : 15 m of RG-58\nload ant at feed : 28+j208 ohm\nplane p at feed\n");
  REQUIRE(feed.diagnostics.empty());
  for (unsigned threads : {2u, 3u, 8u}) {
    const Solution other = solve(feed.design, feed.network, feed.plan, feed.solution.states, feed.looks, Method::guarded, threads);
    bool same = true;
    for (std::size_t s = 0; s < other.states.size(); ++s) {
      same &= other.source_volts[s] == feed.solution.source_volts[s] && other.source_amps[s] == feed.solution.source_amps[s];
      same &= other.looks[0].admittance_behind[s] == feed.solution.looks[0].admittance_behind[s];
      for (std::size_t e = 0; e < other.flows.size(); ++e) same &= other.flows[e].heat1_w[s] == feed.solution.flows[e].heat1_w[s];
    }
    CHECK(same);
  }
}
