// What the tuner says beside a setting, held to an independent ladder model, to brute force, and to published limits.
#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <iostream>

#include "feed.hpp"
#include "grammar/quantity.hpp"
#include "ladder_feed.hpp"
#include "tune/limit.hpp"
#include "tune/tune.hpp"

using namespace wattfall;
using test::exact;
using test::Feed;
using test::feed_text;

namespace {

constexpr double two_pi = 6.283185307179586477;

Result<tune::Tuning> try_tuning(const Feed& feed) {
  for (const Diagnostic& diagnostic : feed.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(feed.diagnostics.empty());
  return tune::tune(feed.design, feed.network, feed.plan, test::registry().find_optimizer());
}

tune::Tuning tuned(const Feed& feed) {
  Result<tune::Tuning> result = try_tuning(feed);
  for (const Diagnostic& diagnostic : result.diagnostics) UNSCOPED_INFO(diagnostic.text);
  REQUIRE(result.value.has_value());
  return std::move(*result.value);
}

std::vector<std::string> codes_of(const tune::Tuning& tuning) {
  std::vector<std::string> codes;
  for (const judge::Warning& warning : tuning.warnings) codes.push_back(warning.code);
  return codes;
}

double swr_of(const tuner_test::Ladder& ladder, std::vector<double> values) { return tuner_test::swr(tuner_test::solve(ladder, values.data()).input_ohm); }

const std::string head = "design \"t\"\nsource rig at desk : 100 W, 50 ohm\n";

}  // namespace

TEST_CASE("the SWR is what was said at the ends of a width and of a knob's leeway, and less between") {
  std::size_t widths = 0, leeways = 0, networks = 0;
  for (const tuner_test::Form& form : {tuner_test::form("pC sL"), tuner_test::form("sC pL sC"), tuner_test::form("pL sC")})
    for (unsigned seed = 1; seed <= std::min(20u, TUNE_SEEDS); ++seed) {
      const tuner_test::Ladder ladder = tuner_test::random_case(form, seed);
      const tune::Tuning tuning = tuned(Feed(feed_text(ladder, tuner_test::bounds_of(ladder), "most power into ant")));
      REQUIRE(tuning.searches.size() == 1);
      const tune::Search& search = tuning.searches[0];
      const std::vector<double>& values = search.matches[0].values;
      INFO(form.name << " seed " << seed);
      ++networks;
      for (const tune::Leeway& width : search.matches[0].widths_hz) {
        if (!width.range) {
          CHECK(swr_of(ladder, values) > width.swr);
          continue;
        }
        const auto at = [&](double hertz) {
          tuner_test::Ladder other = ladder;
          other.frequency_hz = hertz;
          return swr_of(other, values);
        };
        if (!width.range->lower_open) CHECK(at(width.range->lower) == Approx(width.swr).epsilon(1e-3));
        if (!width.range->upper_open) CHECK(at(width.range->upper) == Approx(width.swr).epsilon(1e-3));
        for (int i = 1; i < 50; ++i) CHECK(at(width.range->lower + (width.range->upper - width.range->lower) * i / 50) <= width.swr * 1.001);
        ++widths;
      }
      for (std::size_t k = 0; k < search.knobs.size(); ++k)
        for (const tune::Leeway& leeway : search.knobs[k].ranges) {
          if (!leeway.range) continue;
          const auto at = [&](double value) {
            std::vector<double> moved = values;
            moved[k] = value;
            return swr_of(ladder, moved);
          };
          if (!leeway.range->lower_open) CHECK(at(leeway.range->lower) == Approx(leeway.swr).epsilon(1e-3));
          if (!leeway.range->upper_open) CHECK(at(leeway.range->upper) == Approx(leeway.swr).epsilon(1e-3));
          for (int i = 1; i < 50; ++i) CHECK(at(leeway.range->lower + (leeway.range->upper - leeway.range->lower) * i / 50) <= leeway.swr * 1.001);
          ++leeways;
        }
    }
  CHECK(widths > networks / 3);
  CHECK(leeways > networks);
}

TEST_CASE("what is called the best of all settings is not bettered by brute force, and ladders of two and three knobs are always decided") {
  std::size_t proved = 0, all = 0;
  std::vector<tuner_test::Form> forms = tuner_test::two_knob_forms();
  for (const tuner_test::Form& form : tuner_test::three_knob_forms()) forms.push_back(form);
  for (const tuner_test::Form& form : forms)
    for (unsigned seed = 300; seed < 300 + std::min(25u, TUNE_SEEDS); ++seed) {
      const tuner_test::Ladder ladder = tuner_test::random_case(form, seed);
      const tuner_test::Bounds bounds = tuner_test::bounds_of(ladder);
      const tune::Tuning tuning = tuned(Feed(feed_text(ladder, bounds, seed % 3 == 0 ? "least swr at n0" : "most power into ant")));
      INFO(form.name << " seed " << seed);
      ++all;
      if (tuning.searches[0].certainty != "best of all settings") continue;
      ++proved;
      const int side = bounds.lower.size() == 2 ? 150 : 30, zoom = bounds.lower.size() == 2 ? 11 : 7;
      if (seed % 3 == 0) {
        const auto best = tuner_test::brute_force([&](const double* v) { return -tuner_test::swr(tuner_test::solve(ladder, v).input_ohm); }, bounds, side, zoom, 0.5, 4);
        const auto passed = [](double swr) { return 4 * swr / ((swr + 1) * (swr + 1)); };
        CHECK(passed(-best.score) <= passed(swr_of(ladder, tuning.settings[0])) + 1.0001e-3);
      } else {
        const auto best = tuner_test::brute_force([&](const double* v) { return tuner_test::load_power_w(ladder, v); }, bounds, side, zoom, 0.5, 4);
        CHECK(best.score <= tuner_test::load_power_w(ladder, tuning.settings[0].data()) + 0.10001);
      }
    }
  std::cout << "proved the best of all settings: " << proved << " of " << all << " networks\n";
  CHECK(proved == all);
}

TEST_CASE("a proof does not hold for a setting that is not the best") {
  // With what is kept, less than the most is reached: then nothing is proved.
  const Feed feed(head +
                  "capacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n"
                  "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant, keeping peak volts across L below 300 V\n");
  const tune::Tuning tuning = tuned(feed);
  CHECK(tuning.searches[0].certainty == "best found");
}

TEST_CASE("Bode's and Fano's limit has the values of the standard formulas") {
  // R. M. Fano, J. Franklin Inst. 249, 1950: exp(-pi/(dw R C)) and its three duals; values by 40-digit arithmetic, formula from memory.
  using Load = tune::ReactiveLoad;
  CHECK(tune::least_reflection(Load{false, 50, 0, 2e-9}, 3.5e6, 4e6) == Approx(0.000045399929762484852).epsilon(1e-9));
  CHECK(tune::least_reflection(Load{false, 1000, 0, 100e-12}, 1.8e6, 30e6) == Approx(0.83752433035142903).epsilon(1e-9));
  CHECK(tune::least_reflection(Load{true, 50, 10e-6, 0}, 7e6, 7.3e6) == Approx(0.00024036947641951421).epsilon(1e-9));
  CHECK(tune::least_reflection(Load{true, 5, 0, 100e-12}, 3.5e6, 4e6) == Approx(0.75854820948848007).epsilon(1e-9));
  CHECK(tune::least_reflection(Load{true, 36, 0, 1e-9}, 3.5e6, 4e6) == Approx(2.2844912785474198e-9).epsilon(1e-9));
  CHECK(tune::least_reflection(Load{false, 200, 5e-6, 0}, 1.8e6, 30e6) == Approx(0.38869429299900381).epsilon(1e-9));
  // A single resonance of Q at the band's geometric mean, a fraction b wide: exp(-pi/(Q b)), the same for coil and capacitor.
  const auto resonant = [](double q, double b) {
    const double f0 = 10e6, lower = f0 * (std::sqrt(1 + b * b / 4) - b / 2), upper = lower + b * f0, w0 = two_pi * f0;
    return tune::least_reflection(Load{true, 50, 50 * q / w0, 1 / (50 * q * w0)}, lower, upper);
  };
  CHECK(resonant(10, 0.1) == Approx(0.04321391826377225).epsilon(1e-9));
  CHECK(resonant(20, 0.05) == Approx(0.04321391826377225).epsilon(1e-9));
  CHECK(resonant(50, 0.07) == Approx(0.40754745421264832).epsilon(1e-9));
  const double r = resonant(5, 0.3);
  CHECK((1 + r) / (1 - r) == Approx(1.2808780710450446).epsilon(1e-9));
}

TEST_CASE("a load is known by its parts") {
  std::vector<double> hertz;
  std::vector<std::complex<double>> series, beside;
  for (double f = 3.5e6; f <= 4e6; f += 0.1e6) {
    const double w = two_pi * f;
    hertz.push_back(f);
    series.push_back({12, -1 / (w * 140e-12)});
    beside.push_back(1.0 / std::complex<double>(1.0 / 200, w * 300e-12 - 1 / (w * 7e-6)));
  }
  const auto rc = tune::reactive_load(hertz, series);
  REQUIRE(rc);
  CHECK(rc->series);
  CHECK(rc->ohms == Approx(12));
  CHECK(rc->farads == Approx(140e-12).epsilon(1e-6));
  CHECK(rc->henries == 0.0);
  const auto tank = tune::reactive_load(hertz, beside);
  REQUIRE(tank);
  CHECK_FALSE(tank->series);
  CHECK(tank->ohms == Approx(200));
  CHECK(tank->farads == Approx(300e-12).epsilon(1e-6));
  CHECK(tank->henries == Approx(7e-6).epsilon(1e-6));
  // A line's far end seen through half a wave of it is none of these.
  for (std::size_t i = 0; i < series.size(); ++i) series[i] = {12.0 + 20.0 * double(i % 2), 100.0 * double(i)};
  CHECK_FALSE(tune::reactive_load(hertz, series));
}

TEST_CASE("no L network brings more than Bode and Fano allow, on 10,000 random loads and bands") {
  std::mt19937_64 random(7);
  const auto ratio = [&](double a, double b) { return a * std::pow(b / a, tuner_test::uniform(random)); };
  double nearest = 0;
  for (int i = 0; i < 10'000; ++i) {
    const double lower = ratio(1.8e6, 28e6), upper = lower * ratio(1.01, 1.5), middle = std::sqrt(lower * upper);
    const double r = ratio(5, 3000), w = two_pi * middle, x = r * ratio(0.2, 50);
    const int kind = i % 4;  // series L, series C, parallel C, parallel L
    const tune::ReactiveLoad load = kind == 0   ? tune::ReactiveLoad{true, r, x / w, 0}
                                    : kind == 1 ? tune::ReactiveLoad{true, r, 0, 1 / (w * x)}
                                    : kind == 2 ? tune::ReactiveLoad{false, r, 0, x / (w * r * r)}
                                                : tune::ReactiveLoad{false, r, r * r / (w * x), 0};
    const auto ohms = [&](double hertz) -> tuner_test::Ohms {
      const double v = two_pi * hertz;
      const double reactive = (load.henries > 0 ? v * load.henries : 0) - (load.series && load.farads > 0 ? 1 / (v * load.farads) : 0);
      if (load.series) return {load.ohms, reactive};
      return 1.0 / tuner_test::Ohms(1 / load.ohms, (load.farads > 0 ? v * load.farads : 0) - (load.henries > 0 ? 1 / (v * load.henries) : 0));
    };
    // A shunt part at the side of the higher resistance and a series one match the middle of the band exactly (the textbook's L): both forms, both signs.
    const tuner_test::Ohms z = ohms(middle);
    for (const double sign : {-1.0, 1.0}) {
      double shunt_b = 0, series_x = 0;
      const bool at_rig = z.real() < 50;
      if (at_rig) {
        series_x = sign * std::sqrt(z.real() * (50 - z.real())) - z.imag();
        shunt_b = (z.imag() + series_x) / (std::norm(tuner_test::Ohms(z.real(), z.imag() + series_x)));
      } else {
        const tuner_test::Ohms y = 1.0 / z;
        if (y.real() * 50 > 1) continue;
        const double b = sign * std::sqrt(y.real() * (1 / 50.0 - y.real()));
        shunt_b = b - y.imag();
        series_x = -(1.0 / tuner_test::Ohms(y.real(), b)).imag();
      }
      double least_w = 1e9;
      for (int p = 0; p <= 32; ++p) {
        const double hertz = lower + (upper - lower) * p / 32, k = hertz / middle;
        const double xs = series_x > 0 ? series_x * k : series_x / k, bs = shunt_b > 0 ? shunt_b * k : shunt_b / k;
        const tuner_test::Ohms own = ohms(hertz);
        // Lossless: what the load does not take comes back.
        const tuner_test::Ohms in = at_rig ? 1.0 / (1.0 / (own + tuner_test::Ohms(0, xs)) + tuner_test::Ohms(0, bs))
                                           : 1.0 / (1.0 / own + tuner_test::Ohms(0, bs)) + tuner_test::Ohms(0, xs);
        least_w = std::min(least_w, 100 * (1 - std::norm((in - 50.0) / (in + 50.0))));
        if (p == 16 && i < 1000) CHECK(100 * (1 - std::norm((in - 50.0) / (in + 50.0))) > 90 * (upper / lower < 1.05));
      }
      const double reflection = tune::least_reflection(load, lower, upper);
      const double most_w = 100 * (1 - reflection * reflection);
      CHECK(least_w <= most_w * (1 + 1e-12));
      nearest = std::max(nearest, least_w / most_w);
    }
  }
  std::cout << "L networks against the limit over a band: at most " << nearest << " of it\n";
}

TEST_CASE("over a band the result stands beside the limit and below it") {
  const std::string text = head +
                           "capacitor C at desk : adjustable 10 pF to 4 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 40 uH, Q 400\n"
                           "load ant at feed : series(resistance 5 ohm, capacitance 100 pF)\n";
  const tune::Tuning fine = tuned(Feed(text + "sweep 3.5 MHz to 4 MHz, 11 points\ntune C, L over 3.5 MHz to 4 MHz for most power into ant\n"));
  const auto limit = [](const tune::Tuning& tuning) {
    for (const tune::Limit& one : tuning.searches[0].limits)
      if (one.kind == "bode-fano") return one;
    FAIL("no limit");
    return tune::Limit{};
  };
  // PT-123's load: |reflection| >= 0.7585.
  CHECK(limit(fine).reflection == Approx(0.75854820948848007).epsilon(1e-6));
  CHECK(fine.searches[0].matches[0].load_w < limit(fine).load_w);
}

TEST_CASE("parts without loss bring more, and a lossless match all that there is") {
  const Feed feed(head +
                  "capacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n"
                  "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant\n");
  const tune::Tuning tuning = tuned(feed);
  REQUIRE(tuning.searches[0].limits.size() == 2);
  CHECK(tuning.searches[0].limits[0].kind == "ideal parts");
  CHECK(tuning.searches[0].limits[0].load_w == Approx(100.0).epsilon(1e-9));
  CHECK(tuning.searches[0].limits[0].load_w <= 100.0 * (1 + 1e-12));
  CHECK(tuning.searches[0].matches[0].load_w < tuning.searches[0].limits[0].load_w);
  CHECK(tuning.searches[0].limits[1].kind == "any parts");
  CHECK(tuning.searches[0].limits[1].load_w == 100.0);
}

TEST_CASE("a single shunt stub has the textbook's two matches, both told") {
  // Pozar, Microwave Engineering, single-stub matching of 60 - j80 ohm (there at 2 GHz) by a shorted shunt stub: distances 0.110 and 0.260 wavelengths,
  // stubs 0.095 and 0.405 (from memory; to three places).
  const double wave_m = 299792458.0 / 30e6;
  const std::string half = exact(0.499 * wave_m) + " m", least = exact(1e-3 * wave_m) + " m";
  const tune::Tuning tuning = tuned(Feed(head + "stub S at desk : " + exact(0.2 * wave_m) + " m, adjustable " + least + " to " + half +
                                         ", 50 ohm, shorted\nline D from desk to feed : " + exact(0.2 * wave_m) + " m, adjustable " + least + " to " + half +
                                         ", 50 ohm\nload ant at feed : 60 - j80 ohm\nsweep at [30 MHz]\ntune S, D at 30 MHz for most power into ant\n"));
  // The line at its longest is a local best too, for a tenth of a wave above it there would be a match; it is none itself.
  std::vector<std::pair<double, double>> found;
  for (const tune::Match& match : tuning.searches[0].matches) {
    const std::pair<double, double> place{match.values[1] / wave_m, match.values[0] / wave_m};
    if (match.swr < 1.001) found.push_back(place);
    else CHECK(place.first == Approx(0.499).epsilon(1e-9));
  }
  // Power and volts are the same in both, since the same waves stand on the line.
  CHECK(tuning.searches[0].why == "the first and the second bring the same power to within 0.1 %: choose by the width, an SWR below 1.5 over 1.99 MHz against 6.26 MHz");
  REQUIRE(found.size() == 2);
  std::sort(found.begin(), found.end());
  CHECK(found[0].first == Approx(0.110).margin(6e-4));
  CHECK(found[0].second == Approx(0.095).margin(6e-4));
  CHECK(found[1].first == Approx(0.260).margin(6e-4));
  CHECK(found[1].second == Approx(0.405).margin(6e-4));
}

TEST_CASE("the widest band is found, and held to a plain grid") {
  // Shunt C, series L, a series circuit as load; the width by straight lines between 21 points, as the language says.
  const std::string parts =
      "capacitor C at desk : adjustable 10 pF to 1 nF, Q 1000\ninductor L from desk to feed : adjustable 0.1 uH to 10 "
      "uH, Q 200\n"
      "load ant at feed : series(resistance 12 ohm, inductance 5 uH, capacitance 50 pF)\nsweep 7 MHz to 7.2 MHz, 21 "
      "points\n";
  const auto swr = [&](double c, double l, double hertz) {
    const double w = two_pi * hertz;
    const std::complex<double> i(0, 1), z = 12.0 + i * (w * 5e-6 - 1 / (w * 50e-12)) + w * l * (i + 1.0 / 200);
    const std::complex<double> y = 1.0 / z + 1.0 / ((1.0 / 1000 - i) / (w * c));
    const double r = std::abs((1.0 / y - 50.0) / (1.0 / y + 50.0));
    return (1 + r) / (1 - r);
  };
  const auto width = [&](double c, double l) {
    std::vector<double> all;
    for (int s = 0; s <= 20; ++s) all.push_back(swr(c, l, 7e6 + 1e4 * s));
    const int best = int(std::min_element(all.begin(), all.end()) - all.begin());
    if (all[std::size_t(best)] > 2) return 0.0;
    double from = best, to = best;
    for (int s = best; s > 0; --s) {
      if (all[std::size_t(s - 1)] <= 2) {
        from = s - 1;
        continue;
      }
      from = s - (2 - all[std::size_t(s)]) / (all[std::size_t(s - 1)] - all[std::size_t(s)]);
      break;
    }
    for (int s = best; s < 20; ++s) {
      if (all[std::size_t(s + 1)] <= 2) {
        to = s + 1;
        continue;
      }
      to = s + (2 - all[std::size_t(s)]) / (all[std::size_t(s + 1)] - all[std::size_t(s)]);
      break;
    }
    return 1e4 * (to - from);
  };
  double most = 0;
  for (double c = 100e-12; c < 1e-9; c *= 1.004)
    for (double l = 5e-6; l < 6e-6; l *= 1.0005) most = std::max(most, width(c, l));
  REQUIRE(most > 100e3);
  const tune::Tuning widest =
      tuned(Feed(head + parts + "tune C, L over 7 MHz to 7.2 MHz for most width of swr at desk below 2\n"));
  const std::vector<double>& values = widest.searches[0].matches[0].values;
  CHECK(width(values[0], values[1]) >= most * 0.9999);
  CHECK(width(values[0], values[1]) <= most * 1.02);
  // Under `keeping`, and beyond what there is.
  const auto keeping = [&](double hertz) {
    return head + parts +
           "tune C, L over 7 MHz to 7.2 MHz for most power into ant, keeping width of swr at desk below 2 above " +
           exact(hertz) + " Hz\n";
  };
  const tune::Tuning kept = tuned(Feed(keeping(0.95 * most)));
  CHECK(width(kept.searches[0].matches[0].values[0], kept.searches[0].matches[0].values[1]) >=
        0.95 * most * (1 - 1e-9));
  CHECK(test::codes(try_tuning(Feed(keeping(1.1 * most))).diagnostics) ==
        std::vector<std::string>{"keeping-not-reached"});
  // An SWR that is reached nowhere has no width.
  const Feed never(head +
                   "capacitor C at desk : adjustable 10 pF to 12 pF\nload ant at desk : 12 - j200 ohm\nsweep 7 MHz to "
                   "7.2 MHz, 5 points\n"
                   "tune C over 7 MHz to 7.2 MHz for most width of swr at desk below 1.5\n");
  CHECK(test::codes(try_tuning(never).diagnostics) == std::vector<std::string>{"tune-failed"});
}

TEST_CASE(
    "what is kept over a range of its own is kept where the setting serves, beside the frequencies that it is tuned "
    "at") {
  // The same L as above, its figures by hand: C across the rig, L to 20 ohm in series with 100 pF.
  const std::string parts =
      "capacitor C at desk : adjustable 15 pF to 3300 pF, Q 1000\ninductor L from desk to feed : adjustable 0.2 uH to "
      "30 uH, Q 200\n"
      "load ant at feed : series(resistance 20 ohm, capacitance 100 pF)\nsweep 3.5 MHz to 3.8 MHz step 50 kHz\n";
  const std::complex<double> i(0, 1);
  const auto load = [&](double l, double hertz) {
    const double w = two_pi * hertz;
    return 20.0 + 1.0 / (i * w * 100e-12) + w * l * (i + 1.0 / 200);
  };
  const auto input = [&](double c, double l, double hertz) {
    return 1.0 / (1.0 / load(l, hertz) + 1.0 / ((1.0 / 1000 - i) / (two_pi * hertz * c)));
  };
  const auto swr = [&](double c, double l, double hertz) {
    const std::complex<double> z = input(c, l, hertz);
    const double r = std::abs((z - 50.0) / (z + 50.0));
    return (1 + r) / (1 - r);
  };
  const auto watts = [&](double c, double l, double hertz) {
    const std::complex<double> z = input(c, l, hertz),
                               amps = 2.0 * std::sqrt(50.0 * 100.0) / (z + 50.0) * z / load(l, hertz);
    return std::norm(amps) * 20.0;
  };
  const auto knobs = [](const tune::Tuning& tuning, std::size_t point) {
    return std::pair(tuning.settings[point][0], tuning.settings[point][1]);
  };

  // Tuned at 3.55 MHz, kept beside it.
  const auto [c, l] = knobs(
      tuned(
          Feed(head + parts +
               "tune C, L at 3.55 MHz for most power into ant, keeping swr at desk below 3 over 3.6 MHz to 3.7 MHz\n")),
      0);
  double most = 0;
  for (double cc = 100e-12; cc < 3e-9; cc *= 1.01)
    for (double ll = 15e-6; ll < 25e-6; ll *= 1.0005) {
      if (swr(cc, ll, 3.6e6) > 3 || swr(cc, ll, 3.65e6) > 3 || swr(cc, ll, 3.7e6) > 3) continue;
      most = std::max(most, watts(cc, ll, 3.55e6));
    }
  for (const double hertz : {3.6e6, 3.65e6, 3.7e6}) CHECK(swr(c, l, hertz) <= 3 * (1 + 1e-9));
  CHECK(watts(c, l, 3.55e6) >= most * (1 - 1e-6));
  CHECK(watts(c, l, 3.55e6) <= most * 1.01);

  // Beyond the stretch that the goal speaks of.
  const auto [c2, l2] = knobs(tuned(Feed(head + parts +
                                         "tune C, L over 3.5 MHz to 3.6 MHz for most power into ant, keeping swr at "
                                         "desk below 4 over 3.7 MHz to 3.75 MHz\n")),
                              0);
  CHECK(swr(c2, l2, 3.7e6) <= 4 * (1 + 1e-9));
  CHECK(swr(c2, l2, 3.75e6) <= 4 * (1 + 1e-9));

  // Of several settings each keeps it where it serves: the first serves up to 3.65 MHz, of which nothing is asked here,
  // and is free.
  const tune::Tuning two = tuned(Feed(head + parts +
                                      "tune C, L at [3.55 MHz, 3.75 MHz] for most power into ant, keeping swr at desk "
                                      "below 1.7 over 3.7 MHz to 3.8 MHz\n"));
  const auto [c3, l3] = knobs(two, 0);
  const auto [c4, l4] = knobs(two, 6);
  CHECK(swr(c3, l3, 3.55e6) < 1.05);
  for (const double hertz : {3.7e6, 3.75e6, 3.8e6}) CHECK(swr(c4, l4, hertz) <= 1.7 * (1 + 1e-9));

  // More than there is.
  CHECK(test::codes(try_tuning(Feed(head + parts +
                                    "tune C, L at 3.55 MHz for most power into ant, keeping swr at desk below 1.05 "
                                    "over 3.5 MHz to 3.8 MHz\n"))
                        .diagnostics) == std::vector<std::string>{"keeping-not-reached"});
}

TEST_CASE("of settings that match, one that keeps the ratings is taken, where it is worth more than less power") {
  // A T to 100 + j325 ohm at 7.1 MHz, whose setting of least loss puts 358 V across Cout; the ladder knows nothing of
  // the engine.
  const tuner_test::Ladder ladder{{{false, true, 1000}, {true, false, 200}, {false, true, 1000}}, {100, 325}, 7.1e6};
  const auto feed = [](const std::string& limit_of_cout, const std::string& more = "") {
    return Feed(head +
                "capacitor Cin from desk to mid : adjustable 2 pF to 1 nF, Q 1000\ninductor L at mid : adjustable 0.06 "
                "uH to 30 uH, Q 200" +
                more + "\ncapacitor Cout from mid to feed : adjustable 2 pF to 1 nF, Q 1000" + limit_of_cout +
                "\nload ant at feed : 100 + j325 ohm\nsweep at [7.1 MHz]\ntune Cin, L, Cout at 7.1 MHz for most power "
                "into ant\n");
  };
  const auto volts = [&](const double* values) {
    const double amps = std::sqrt(tuner_test::load_power_w(ladder, values) / 100);
    return std::sqrt(2.0) * amps * std::abs(tuner_test::part_impedance(ladder.parts[2], values[2], 7.1e6));
  };
  const tune::Search free = tuned(feed("")).searches[0];
  REQUIRE(volts(free.matches[0].values.data()) > 350);

  const tune::Tuning kept = tuned(feed(", limit 250 V"));
  const std::vector<double>& values = kept.searches[0].matches[0].values;
  const double watts = tuner_test::load_power_w(ladder, values.data());
  CHECK(volts(values.data()) <= 250 * (1 + 1e-9));
  CHECK(swr_of(ladder, values) <= 1.5);
  REQUIRE(kept.searches[0].limits[0].kind == "without ratings");
  CHECK(kept.searches[0].limits[0].load_w == Approx(free.matches[0].load_w));
  CHECK_THAT(kept.searches[0].limits[0].text, Catch::Contains("Cout takes 358 V peak, and is rated for 250 V"));
  CHECK(codes_of(kept).empty());
  // By brute force, the most of something at an SWR of 1.5 or less.
  const tuner_test::Bounds bounds{{2e-12, 0.06e-6, 2e-12}, {1e-9, 30e-6, 1e-9}};
  const auto most_of = [&](const std::function<double(const double* values)>& worth) {
    const auto matched = [&](const double* at) {
      return tuner_test::swr(tuner_test::solve(ladder, at).input_ohm) > 1.5 ? 0.0 : worth(at);
    };
    return tuner_test::brute_force(matched, bounds, 60, 21, 0.6, 4).score;
  };
  const double most =
      most_of([&](const double* at) { return volts(at) > 250 ? 0.0 : tuner_test::load_power_w(ladder, at); });
  CHECK(watts >= most * (1 - 1e-6));
  CHECK(watts <= most * (1 + 1e-3));

  // A limit that is kept anyway changes nothing, to the last digit.
  CHECK(tuned(feed(", limit 400 V")).settings == tuned(feed("")).settings);
  // One that is broken by a hair is kept at the cost of a hair.
  const tune::Tuning hair = tuned(feed(", limit 357 V"));
  CHECK(volts(hair.searches[0].matches[0].values.data()) <= 357 * (1 + 1e-9));
  CHECK(codes_of(hair).empty());
  // No match keeps 20 V. Of all settings the one is taken that brings most with as little power from the rig as keeps
  // them; at the setting of least loss that would be (20/358)^2 of it.
  const tune::Tuning broken = tuned(feed(", limit 20 V"));
  const auto within = [&](const double* at) {
    return tuner_test::load_power_w(ladder, at) * std::min(1.0, std::pow(20 / volts(at), 2));
  };
  const double* taken = broken.searches[0].matches[0].values.data();
  const double most_within = most_of(within);
  CHECK(most_within > 10 * within(free.matches[0].values.data()));
  CHECK(within(taken) >= most_within * (1 - 1e-4));
  CHECK(swr_of(ladder, broken.searches[0].matches[0].values) <= 1.5 * (1 + 1e-9));
  REQUIRE(codes_of(broken).front() == "ratings-not-kept");
  CHECK_THAT(
      broken.warnings[0].text,
      Catch::Contains("up to " + spell({100 * std::pow(20 / volts(taken), 2), dimension::power}, 3) + " from the rig"));
}

TEST_CASE("a rating is not kept by burning the power elsewhere") {
  // R1 stands across the load, 19.3 W of heat in it at the match; R2 before both could burn what is too much, at an SWR
  // below 1.5. R1 and the load share what comes through, so the load then gets what less power from the rig would bring
  // it, too.
  const auto feed = [](const std::string& limit) {
    return Feed(head + "resistor R1 at feed : 200 ohm" + limit +
                "\nresistor R2 from desk to feed : adjustable 1 ohm to 50 ohm\n"
                "load ant at feed : 50 ohm\nsweep at [7 MHz]\ntune R2 at 7 MHz for most power into ant\n");
  };
  const tune::Tuning free = tuned(feed("")), rated = tuned(feed(", limit 12 W"));
  CHECK(free.settings[0][0] == Approx(1));
  CHECK(rated.settings == free.settings);
  REQUIRE(codes_of(rated).front() == "ratings-not-kept");
  CHECK_THAT(rated.warnings[0].text,
             Catch::Contains("R1 takes 19.3 W of heat, and is rated for 12 W; up to 62.1 W from the rig"));
}

TEST_CASE("what lies beyond the knobs is spared by less power alone, and no search is made for it") {
  // Volts on the line go with what arrives, however the tuner stands.
  const auto feed = [](const std::string& limit, const std::string& own = "") {
    return Feed(head + "capacitor Cin from desk to mid : adjustable 15 pF to 330 pF, Q 1200" + own +
                "\ninductor L at mid : adjustable 0.2 uH to 20 uH, Q 180\n"
                "capacitor Cout from mid to out : adjustable 15 pF to 330 pF, Q 1200\nline coax from out to feed : 20 "
                "m, 50 ohm, loss 5 dB/100m at 7 MHz" +
                limit +
                "\nload ant at feed : 61 - j142 ohm\nsweep at [7.1 MHz]\ntune Cin, L, Cout at 7.1 MHz for most power "
                "into ant\n");
  };
  const tune::Tuning free = tuned(feed("")), rated = tuned(feed(", limit 100 V"));
  CHECK(rated.settings == free.settings);
  CHECK(rated.evaluations == free.evaluations);
  CHECK(codes_of(rated).front() == "ratings-not-kept");
  // A limit of the tuner's own capacitor is looked into.
  CHECK(tuned(feed("", ", limit 20 V")).evaluations > free.evaluations);
}

TEST_CASE("ratings are kept at each frequency, over a band, and of choices") {
  const auto feed = [](const std::string& asked, const std::string& cout) {
    return Feed(head +
                "capacitor Cin from desk to mid : adjustable 2 pF to 1 nF, Q 1000\ninductor L at mid : adjustable 0.06 "
                "uH to 30 uH, Q 200\n"
                "capacitor Cout from mid to feed : adjustable " +
                cout +
                ", Q 1000, limit 250 V\n"
                "load ant at feed : 100 + j325 ohm\nsweep 7 MHz to 7.2 MHz, 5 points\ntune Cin, L, Cout " +
                asked + " for most power into ant\n");
  };
  const auto volts = [](const tune::Tuning& tuning, std::size_t point, double hertz) {
    const tuner_test::Ladder ladder{{{false, true, 1000}, {true, false, 200}, {false, true, 1000}}, {100, 325}, hertz};
    const std::vector<double>& values = tuning.settings[point];
    return std::sqrt(2.0 * tuner_test::load_power_w(ladder, values.data()) / 100) *
           std::abs(tuner_test::part_impedance(ladder.parts[2], values[2], hertz));
  };
  const std::string range = "2 pF to 1 nF", choices = "series(E24, from 10 pF, to 1 nF)";
  for (const std::string& cout : {range, choices})
    for (const char* asked : {"at each frequency", "over 7 MHz to 7.2 MHz"}) {
      CAPTURE(cout, asked);
      const tune::Tuning tuning = tuned(feed(asked, cout));
      for (std::size_t point = 0; point < 5; ++point)
        CHECK(volts(tuning, point, 7e6 + 50e3 * double(point)) <= 250 * (1 + 1e-9));
      CHECK(codes_of(tuning).empty());
    }
}

TEST_CASE("choices that keep a rating at all but full power are taken") {
  // C across the rig, a coil to 30 - j250 ohm. At a match 100 V peak stand across C, less where the rig sees less than
  // 50 ohm: 80 V at an SWR of 1.5.
  const Feed feed(head +
                  "capacitor C at desk : adjustable series(E12, from 10 pF, to 2 nF), Q 1000, limit 80 V\n"
                  "inductor L from desk to feed : adjustable 0.5 uH to 20 uH, Q 150\nload ant at feed : 30 - j250 "
                  "ohm\nsweep at [7.1 MHz]\n"
                  "tune C, L at 7.1 MHz for most power into ant\n");
  const tune::Tuning tuning = tuned(feed);
  const tuner_test::Ladder ladder{{{false, false, 1000}, {true, true, 150}}, {30, -250}, 7.1e6};
  const auto within = [&](double c, double l) {
    const double values[] = {c, l};
    const tuner_test::Answer answer = tuner_test::solve(ladder, values);
    if (tuner_test::swr(answer.input_ohm) > 1.5 * (1 + 1e-6)) return 0.0;
    const double volts =
        std::sqrt(2.0) * 2 * std::sqrt(50.0 * 100.0) * std::abs(answer.input_ohm / (answer.input_ohm + 50.0));
    return answer.load_w * std::min(1.0, std::pow(80 / volts, 2));
  };
  double most = 0;
  for (double decade = 10e-12; decade < 2e-9; decade *= 10)
    for (double step : {1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2})
      if (decade * step <= 2e-9)
        for (double l = 5e-6; l < 7e-6; l *= 1.0001) most = std::max(most, within(decade * step, l));
  CHECK(within(tuning.settings[0][0], tuning.settings[0][1]) >= most * (1 - 1e-4));
  CHECK(most > 85);
}

TEST_CASE("two open stubs an eighth of a wave apart have the textbook's two matches") {
  // Pozar, Microwave Engineering, double-stub matching of 60 - j80 ohm: open stubs of 0.146 and 0.204, or 0.482 and 0.350 wavelengths (from memory).
  const double wave_m = 299792458.0 / 30e6;
  const std::string half = exact(0.4999 * wave_m) + " m", least = exact(1e-3 * wave_m) + " m", start = exact(0.3 * wave_m) + " m";
  const tune::Tuning tuning = tuned(Feed(head + "stub S2 at desk : " + start + ", adjustable " + least + " to " + half + ", 50 ohm, open\nline D from desk to feed : " +
                                         exact(0.125 * wave_m) + " m, 50 ohm\nstub S1 at feed : " + start + ", adjustable " + least + " to " + half +
                                         ", 50 ohm, open\nload ant at feed : 60 - j80 ohm\nsweep at [30 MHz]\ntune S1, S2 at 30 MHz for most power into ant\n"));
  // A stub at its shortest is a local best too, for half a wave below it there would be more; it does not match.
  std::vector<std::pair<double, double>> found;
  for (const tune::Match& match : tuning.searches[0].matches)
    if (match.swr < 1.001) found.push_back({match.values[0] / wave_m, match.values[1] / wave_m});
  REQUIRE(found.size() == 2);
  std::sort(found.begin(), found.end());
  CHECK(found[0].first == Approx(0.146).margin(6e-4));
  CHECK(found[0].second == Approx(0.204).margin(6e-4));
  CHECK(found[1].first == Approx(0.482).margin(6e-4));
  CHECK(found[1].second == Approx(0.350).margin(6e-4));
}

TEST_CASE("a selector among the knobs does as well as its choices one by one") {
  const std::string parts =
      "capacitor C at top : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n";
  for (const char* load : {"12 - j200 ohm", "400 - j300 ohm", "28 + j90 ohm"}) {
    const std::string ends = "load ant at feed : " + std::string(load) + "\nsweep at [7 MHz]\n";
    const tune::Tuning both = tuned(Feed(head + parts + ends + "selector side from top to (desk feed) : desk, adjustable\n"
                                                               "tune C, L, side at 7 MHz for most power into ant\n"));
    double best = 0;
    for (const char* side : {"desk", "feed"}) {
      const tune::Tuning one = tuned(Feed(head + parts + ends + "selector side from top to (desk feed) : " + side + "\ntune C, L at 7 MHz for most power into ant\n"));
      best = std::max(best, one.searches[0].matches[0].load_w);
    }
    CHECK(both.searches[0].matches[0].load_w == Approx(best).epsilon(1e-9));
  }
}

TEST_CASE("relays that switch all out are a setting too: a short has no admittance, and is found") {
  const tune::Tuning tuning = tuned(Feed(head +
                                         "inductor L from desk to feed : adjustable relays(5, smallest 0.2 uH), Q 200\ncapacitor C at desk : adjustable relays(5, smallest 20 pF), Q 1000\n"
                                         "load ant at feed : 50 ohm\nsweep at [7 MHz]\ntune L, C at 7 MHz for most power into ant\n"));
  CHECK(tuning.settings[0] == std::vector<double>{0.0, 0.0});
  CHECK(tuning.searches[0].certainty == "best of all settings");
  CHECK(tuning.searches[0].matches[0].load_w == Approx(100.0).epsilon(1e-9));
}

TEST_CASE("a dial with steps stands on one, on the best of all of them") {
  const std::string text = head +
                           "capacitor C at desk : adjustable 10 pF to 2 nF step 30 pF, Q 1000\ninductor L from desk to feed : adjustable 0.1 uH to 10 uH step 0.07 uH, Q 200\n"
                           "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant\n";
  const tune::Tuning tuning = tuned(Feed(text));
  const tuner_test::Ladder ladder{{{false, false, 1000}, {true, true, 200}}, {12, -200}, 7e6};
  double best = 0;
  std::vector<double> at;
  for (int i = 0; i <= 67; ++i)
    for (int k = 0; k <= 142; ++k) {
      const double values[] = {std::min(10e-12 + 30e-12 * i, 2e-9), std::min(0.1e-6 + 0.07e-6 * k, 10e-6)};
      const double power = tuner_test::load_power_w(ladder, values);
      if (power > best) best = power, at = {values[0], values[1]};
    }
  CHECK(tuning.settings[0][0] == Approx(at[0]).epsilon(1e-9));
  CHECK(tuning.settings[0][1] == Approx(at[1]).epsilon(1e-9));
  CHECK(tuning.searches[0].certainty == "best of all settings");
}

TEST_CASE("a T on fine steps, too many to try all, comes within half a percent of the best without steps") {
  const auto text = [](const char* c, const char* l) {
    return head + "capacitor C1 from desk to mid : adjustable 15 pF to 330 pF" + c + ", Q 1200\ninductor L at mid : adjustable 0.2 uH to 20 uH" + l +
           ", Q 180\ncapacitor C2 from mid to feed : adjustable 15 pF to 330 pF" + c + ", Q 1200\nload ant at feed : 61 - j142 ohm\nsweep at [7.1 MHz]\n" +
           "tune C1, L, C2 at 7.1 MHz for most power into ant\n";
  };
  const tune::Tuning smooth = tuned(Feed(text("", ""))), stepped = tuned(Feed(text(" step 1 pF", " step 20 nH")));
  CHECK(stepped.searches[0].matches[0].load_w > 0.995 * smooth.searches[0].matches[0].load_w);
  CHECK(stepped.searches[0].matches[0].load_w <= smooth.searches[0].matches[0].load_w * (1 + 1e-9));
  for (double farads : {stepped.settings[0][0], stepped.settings[0][2]}) CHECK(std::abs(std::remainder(farads - 15e-12, 1e-12)) < 1e-18);
}

TEST_CASE("knobs that change nothing, or the same, are named") {
  const std::string ends = "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\n";
  const tune::Tuning idle = tuned(Feed(head +
                                       "selector way from desk to (a b) : a\ncapacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from a to feed : adjustable 0.05 uH to 20 uH, Q 200\n"
                                       "capacitor Z at b : adjustable 10 pF to 2 nF\n" + ends + "tune C, L, Z at 7 MHz for most power into ant\n"));
  CHECK(codes_of(idle) == std::vector<std::string>{"knob-without-effect"});
  const tune::Tuning twins = tuned(Feed(head +
                                        "capacitor C1 at desk : adjustable 10 pF to 2 nF, Q 1000\ncapacitor C2 at desk : adjustable 10 pF to 2 nF, Q 1000\n"
                                        "inductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n" + ends + "tune C1, C2, L at 7 MHz for most power into ant\n"));
  const std::vector<std::string> said = codes_of(twins);
  CHECK(std::count(said.begin(), said.end(), "knobs-alike") == 1);
  const tune::Tuning plain = tuned(Feed(head +
                                        "capacitor C1 at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n" + ends +
                                        "tune C1, L at 7 MHz for most power into ant\n"));
  CHECK(codes_of(plain).empty());
}

TEST_CASE("requirements that contradict each other are said to, with what each could have alone") {
  const Result<tune::Tuning> result = try_tuning(Feed(head +
                                                      "capacitor C at desk : adjustable 10 pF to 2 nF, Q 1000\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH, Q 200\n"
                                                      "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\n"
                                                      "tune C, L at 7 MHz for most power into ant, keeping swr at desk below 1.2 and peak volts across L below 100 V\n"));
  REQUIRE(test::codes(result.diagnostics) == std::vector<std::string>{"keeping-not-reached"});
  CHECK_THAT(result.diagnostics[0].text, Catch::Contains("they contradict each other"));
  CHECK_THAT(result.diagnostics[0].text, Catch::Contains("swr at desk comes down to 1"));
}

TEST_CASE("the ridge of a T: settings that all match, the one taken losing least of them") {
  const Feed feed(head +
                  "capacitor C1 from desk to mid : adjustable 15 pF to 330 pF, Q 1200\ninductor L at mid : adjustable 0.2 uH to 20 uH, Q 180\n"
                  "capacitor C2 from mid to feed : adjustable 15 pF to 330 pF, Q 1200\nload ant at feed : 61 - j142 ohm\nsweep at [7.1 MHz]\n"
                  "tune C1, L, C2 at 7.1 MHz for most power into ant\n");
  const tune::Tuning tuning = tuned(feed);
  const auto& ridge = tuning.searches[0].ridge;
  REQUIRE(ridge.has_value());
  CHECK(ridge->settings.size() >= 5);
  const tuner_test::Ladder ladder{{{false, true, 1200}, {true, false, 180}, {false, true, 1200}}, {61, -142}, 7.1e6};
  double most = 0;
  for (const tune::Match& match : ridge->settings) {
    CHECK(swr_of(ladder, match.values) < 1.1);
    CHECK(match.load_w == Approx(tuner_test::load_power_w(ladder, match.values.data())).epsilon(1e-9));
    most = std::max(most, match.load_w);
  }
  CHECK(ridge->settings[ridge->best].load_w == most);
  CHECK(tuning.searches[0].matches[0].load_w >= most * (1 - 1e-9));
  // An L has none to spare.
  CHECK_FALSE(tuned(Feed(head +
                         "capacitor C at desk : adjustable 10 pF to 2 nF\ninductor L from desk to feed : adjustable 0.05 uH to 20 uH\n"
                         "load ant at feed : 12 - j200 ohm\nsweep at [7 MHz]\ntune C, L at 7 MHz for most power into ant\n"))
                  .searches[0]
                  .ridge.has_value());
}

namespace {

/// A tee whose second capacitor is never large enough, and an L that matches inside its ranges; each with a demand or none.
std::string tee_feed(double largest_pf, double largest_kv, const std::string& goal) {
  const std::string text = head + "capacitor C1 from desk to mid : adjustable 20 pF to 120 pF, Q 1500\ninductor L at mid : adjustable 0.3 uH to 20 uH, Q 150\n" +
                           "capacitor C2 from mid to ant : adjustable 20 pF to " + exact(largest_pf) + " pF, Q 1500\nload wire at ant : 12-j400 ohm\n" +
                           "sweep at [3.6 MHz]\ntune C1, L, C2 at 3.6 MHz for " + goal;
  return text + (largest_kv > 0.0 ? " keeping peak volts across L below " + exact(largest_kv) + " kV\n" : "\n");
}
std::string l_feed(double, double most_amps) {
  const std::string text = head + "capacitor C at desk : adjustable 50 pF to 5 nF, Q 1500\ninductor L from desk to ant : adjustable 0.1 uH to 20 uH, Q 150\n" +
                           "load wire at ant : 12-j40 ohm\nsweep at [3.6 MHz]\ntune C, L at 3.6 MHz for most power into wire";
  return text + (most_amps > 0.0 ? " keeping rms amps through L below " + exact(most_amps) + " A\n" : "\n");
}

}  // namespace

TEST_CASE("what one per cent more room brings is what tuning again with a little more of it finds") {
  constexpr double little = 1e-3;
  const auto tee = [](double pf, double kv) { return tee_feed(pf, kv, "most power into wire"); };
  struct Case {
    std::function<std::string(double, double)> feed;
    double end, bound;
    std::size_t knobs, demands;
  };
  for (const Case& one : {Case{tee, 240, 0, 1, 0}, Case{tee, 240, 1.5, 1, 1}, Case{l_feed, 1, 2.5, 0, 1}, Case{l_feed, 1, 0, 0, 0}}) {
    CAPTURE(one.end, one.bound);
    const auto watts = [&](double end, double bound) { return tuned(Feed(one.feed(end, bound))).searches[0].matches[0].load_w; };
    const tune::Search search = tuned(Feed(one.feed(one.end, one.bound))).searches[0];
    std::size_t knobs = 0, demands = 0;
    for (const tune::MoreRoom& room : search.more_room) {
      INFO(room.text);
      const double more = room.knob ? watts(one.end * (1 + little), one.bound) : watts(one.end, one.bound * (1 + little));
      CHECK(room.gain == Approx(0.01 / little * (more - search.matches[0].load_w)).epsilon(0.01));
      if (room.knob) CHECK(*room.knob == 2);
      if (room.demand) CHECK(*room.demand == 0);
      ++(room.knob ? knobs : demands);
    }
    CHECK(knobs == one.knobs);
    CHECK(demands == one.demands);
  }
}

TEST_CASE("an optimizer that stops on a slope is told by the slopes; one that reached the top is not") {
  const auto search_nothing = [](void*, const sdk::SearchProblem* problem, sdk::SearchResult* result, sdk::Failure* failure) {
    std::vector<double> slacks(problem->slack_count);
    for (std::size_t k = 0; k < problem->knob_count; ++k) result->setting[k] = problem->knobs[k].start;
    result->evaluations = 1;
    result->feasible = 1;
    return problem->evaluate(problem->self, result->setting, 1, &result->goal, slacks.data(), failure);
  };
  const sdk::Optimizer stays{"stays", "takes the first setting", nullptr, search_nothing};
  for (const char* goal : {"most power into wire", "least swr at desk", "least total loss"}) {
    CAPTURE(goal);
    const Feed feed(tee_feed(400, 0, goal));
    const Result<tune::Tuning> stopped = tune::tune(feed.design, feed.network, feed.plan, &stays);
    REQUIRE(stopped.value.has_value());
    const auto says = [](const tune::Tuning& tuning) {
      const auto codes = codes_of(tuning);
      return std::count(codes.begin(), codes.end(), "not-a-top");
    };
    CHECK(says(*stopped.value) == 1);
    CHECK(says(tuned(feed)) == 0);
  }
}
