// All local bests, not the best alone: held to the local bests of a dense grid, which knows nothing of the search.
#include <catch2/catch.hpp>
#include <complex>
#include <cstdio>
#include <random>

#include "cases.hpp"

namespace {

using namespace tuner_test;

constexpr std::size_t side = 300;

double share(const Bounds& bounds, std::size_t knob, double value) {
  return std::log(value / bounds.lower[knob]) / std::log(bounds.upper[knob] / bounds.lower[knob]);
}

double value_at(const Bounds& bounds, std::size_t knob, double place) {
  return bounds.lower[knob] * std::pow(bounds.upper[knob] / bounds.lower[knob], place);
}

double apart(const Bounds& bounds, const std::vector<double>& a, const std::vector<double>& b) {
  double most = 0;
  for (std::size_t k = 0; k < a.size(); ++k)
    most = std::max(most, std::abs(share(bounds, k, a[k]) - share(bounds, k, b[k])));
  return most;
}

/// From a place, ever smaller steps to the best of its eight neighbours.
std::vector<double> climbed(const Ladder& ladder, const Bounds& bounds, double x, double y) {
  const auto power = [&](double a, double b) {
    const double values[] = {value_at(bounds, 0, a), value_at(bounds, 1, b)};
    return load_power_w(ladder, values);
  };
  for (double step = 1.0 / side; step > 1e-9; step /= 2) {
    for (bool better = true; better;) {
      better = false;
      double best = power(x, y), to_x = x, to_y = y;
      for (double dx : {-step, 0.0, step})
        for (double dy : {-step, 0.0, step}) {
          const double a = std::clamp(x + dx, 0.0, 1.0), b = std::clamp(y + dy, 0.0, 1.0);
          if (power(a, b) > best * (1 + 1e-13)) best = power(a, b), to_x = a, to_y = b, better = true;
        }
      x = to_x;
      y = to_y;
    }
  }
  return {value_at(bounds, 0, x), value_at(bounds, 1, y)};
}

/// Local bests of at least a quarter of the best one's power.
std::vector<std::vector<double>> brute_tops(const Ladder& ladder, const Bounds& bounds) {
  std::vector<double> grid(side * side);
  for (std::size_t i = 0; i < side; ++i)
    for (std::size_t j = 0; j < side; ++j) {
      const double values[] = {value_at(bounds, 0, double(i) / (side - 1)), value_at(bounds, 1, double(j) / (side - 1))};
      grid[i * side + j] = load_power_w(ladder, values);
    }
  std::vector<std::vector<double>> tops;
  for (std::size_t i = 0; i < side; ++i)
    for (std::size_t j = 0; j < side; ++j) {
      bool top = true;
      for (std::size_t a = i - (i > 0); a <= std::min(side - 1, i + 1); ++a)
        for (std::size_t b = j - (j > 0); b <= std::min(side - 1, j + 1); ++b) top &= grid[a * side + b] <= grid[i * side + j];
      if (!top) continue;
      const auto place = climbed(ladder, bounds, double(i) / (side - 1), double(j) / (side - 1));
      const bool known = std::any_of(tops.begin(), tops.end(), [&](const auto& other) { return apart(bounds, place, other) < 0.02; });
      if (!known) tops.push_back(place);
    }
  double best = 0;
  for (const auto& top : tops) best = std::max(best, load_power_w(ladder, top.data()));
  std::erase_if(tops, [&](const auto& top) { return load_power_w(ladder, top.data()) < 0.25 * best; });
  return tops;
}

/// A round hill of height 1.
double hill(const double* x, std::size_t knobs, std::initializer_list<double> top, double width) {
  double sum = 0;
  for (std::size_t k = 0; k < knobs; ++k) sum += (x[k] - top.begin()[k]) * (x[k] - top.begin()[k]);
  return std::exp(-sum / (2 * width * width));
}

/// The best setting and the others, best first.
std::vector<std::vector<double>> all_told(const Found& found) {
  std::vector<std::vector<double>> all{found.setting};
  all.insert(all.end(), found.others.begin(), found.others.end());
  return all;
}

/// Whether what was found are these places, best first, and nothing else.
void check_tops(const Found& found, const std::vector<std::vector<double>>& places, double within = 1e-3) {
  REQUIRE(found.ok);
  const std::vector<std::vector<double>> listed = all_told(found);
  REQUIRE(listed.size() == places.size());
  for (std::size_t i = 0; i < places.size(); ++i)
    for (std::size_t k = 0; k < places[i].size(); ++k) {
      INFO("top " << i << ", knob " << k);
      CHECK(std::abs(listed[i][k] - places[i][k]) <= within);
    }
}

/// Of a grid around a place, `half` to either side in shares of the ranges, the greatest power.
double best_around(const Ladder& ladder, const Bounds& bounds, const std::vector<double>& setting, double half, int points) {
  std::vector<double> centre;
  for (std::size_t k = 0; k < setting.size(); ++k) centre.push_back(share(bounds, k, setting[k]));
  return brute::best_of_grid([&](const double* values) { return load_power_w(ladder, values); }, bounds, centre, half, points);
}

double furthest(const std::vector<double>& a, const std::vector<double>& b) {
  double most = 0;
  for (std::size_t k = 0; k < a.size(); ++k) most = std::max(most, std::abs(a[k] - b[k]));
  return most;
}

}  // namespace

TEST_CASE("every local best of an L form is found, and nothing that is none") {
  std::size_t networks = 0, several = 0, tops_all = 0;
  for (const Form& form : two_knob_forms())
    for (unsigned seed = 1; seed <= std::max(1u, TUNER_SEEDS / 4); ++seed) {
      const Ladder ladder = random_case(form, seed);
      const Bounds bounds = bounds_of(ladder);
      const auto power = [&](const double* values, double*) { return load_power_w(ladder, values); };
      Found found = ask(knobs_of(bounds), power, 0, {}, 12);
      INFO(form.name << " seed " << seed << " load " << ladder.load << " at " << ladder.frequency_hz);
      REQUIRE(found.ok);
      const std::vector<std::vector<double>> listed = all_told(found);
      const auto tops = brute_tops(ladder, bounds);
      for (const auto& top : tops) {
        INFO("top " << top[0] << ", " << top[1] << ": " << load_power_w(ladder, top.data()) << " W of " << found.goal);
        CHECK(std::any_of(listed.begin(), listed.end(), [&](const auto& one) { return apart(bounds, one, top) < 0.02; }));
      }
      for (const auto& one : listed) {
        if (load_power_w(ladder, one.data()) < 0.25 * found.goal) continue;
        INFO("listed " << one[0] << ", " << one[1] << ": " << load_power_w(ladder, one.data()) << " W");
        CHECK(std::any_of(tops.begin(), tops.end(), [&](const auto& top) { return apart(bounds, one, top) < 0.02; }));
      }
      ++networks;
      several += tops.size() > 1;
      tops_all += tops.size();
    }
  std::printf("all tops: %zu networks, %zu of them with several, %zu tops\n", networks, several, tops_all);
}

TEST_CASE("a level ridge is one top, not as many as climbers stood on it") {
  // A T of ideal parts has a spare knob: along a curve everything arrives.
  Ladder ladder{{{false, true, 1e9}, {true, false, 1e9}, {false, true, 1e9}}, {61, -142}, 7.1e6};
  const Bounds bounds{{15e-12, 0.2e-6, 15e-12}, {330e-12, 20e-6, 330e-12}};
  const Found found = ask(
      knobs_of(bounds), [&](const double* values, double*) { return load_power_w(ladder, values); }, 0, {}, 12);
  REQUIRE(found.ok);
  CHECK(found.goal == Approx(100).epsilon(1e-6));
  CHECK(found.others.empty());
}

TEST_CASE("of choices all local bests are told, and that all were tried") {
  // Two hills on a grid of 40 x 40, the second lower.
  std::vector<double> choices(40);
  for (std::size_t i = 0; i < choices.size(); ++i) choices[i] = double(i);
  const auto hill = [](double x, double y, double cx, double cy) { return std::exp(-((x - cx) * (x - cx) + (y - cy) * (y - cy)) / 18); };
  const Found found = ask(
      {choice_knob(choices), choice_knob(choices)},
      [&](const double* s, double*) { return 2 * hill(s[0], s[1], 8, 30) + hill(s[0], s[1], 31, 6); }, 0, {}, 5);
  REQUIRE(found.ok);
  CHECK(found.exhaustive);
  CHECK(found.setting == std::vector<double>{8, 30});
  REQUIRE(found.others.size() == 1);
  CHECK(found.others[0] == std::vector<double>{31, 6});
}

TEST_CASE("of a T or pi with losses each one told is a local best, and none is above the first") {
  std::size_t networks = 0, told = 0;
  for (const Form& form : three_knob_forms())
    for (unsigned seed = 1; seed <= std::max(1u, TUNER_SEEDS / 8); ++seed) {
      const Ladder ladder = random_case(form, seed);
      const Bounds bounds = bounds_of(ladder);
      const auto power = [&](const double* values, double*) { return load_power_w(ladder, values); };
      const Found found = ask(knobs_of(bounds), power, 0, {}, 12), alone = ask(knobs_of(bounds), power);
      INFO(form.name << " seed " << seed << " load " << ladder.load << " at " << ladder.frequency_hz);
      REQUIRE(found.ok);
      // Asking for all must not cost the best.
      CHECK(found.goal >= (1 - 1e-6) * alone.goal);
      const std::vector<std::vector<double>> listed = all_told(found);
      for (const auto& one : listed) {
        const double own = load_power_w(ladder, one.data());
        INFO("listed " << one[0] << ", " << one[1] << ", " << one[2] << ": " << own << " W");
        CHECK(own <= found.goal * (1 + 1e-9));
        // Grids of ever smaller spacing, for ridges are narrow.
        for (double half : {1e-2, 1e-3, 1e-4, 1e-5}) CHECK(best_around(ladder, bounds, one, half, 21) <= own * (1 + 1e-6));
      }
      ++networks;
      told += listed.size();
    }
  std::printf("all tops of T and pi: %zu networks, %zu tops\n", networks, told);
}

TEST_CASE("two tops that stand near each other are told apart, whichever is the higher") {
  for (const bool left : {true, false}) {
    const double a = left ? 1.0 : 0.9, b = left ? 0.9 : 1.0;
    const auto goal = [&](const double* x, double*) {
      return a * hill(x, 2, {0.40, 0.5}, 0.03) + b * hill(x, 2, {0.53, 0.5}, 0.03);
    };
    const std::vector<double> first{0.40, 0.5}, second{0.53, 0.5};
    check_tops(ask({linear_knob(0, 1), linear_knob(0, 1)}, goal, 0, {}, 12), left ? std::vector{first, second} : std::vector{second, first}, 3e-3);
  }
}

TEST_CASE("a single stub's two matches are both told, where the textbook's square equation has them") {
  // A load, a line of length d, a shorted stub of length l across its end; knobs in wavelengths, both lines of 50 ohm.
  // Where the stub is put, the line's admittance must be 1 + jb: two places in half a wavelength (Pozar, Microwave
  // Engineering, single-stub tuning, shunt stubs; from memory).
  const double pi = 3.14159265358979323846;
  std::mt19937 random(7);
  std::uniform_real_distribution<double> resistance(std::log(5.0), std::log(3000.0)), reactance(-1500, 1500);
  std::size_t networks = 0, missed = 0, near = 0;
  for (int network = 0; network < 4000; ++network) {
    const std::complex<double> z = std::complex<double>(std::exp(resistance(random)), reactance(random)) / 50.0;
    const std::complex<double> back = (z - 1.0) / (z + 1.0);
    const auto arriving = [&](const double* x, double*) {
      const std::complex<double> turned = back * std::polar(1.0, -4 * pi * x[0]);
      const std::complex<double> y =
          (1.0 - turned) / (1.0 + turned) - std::complex<double>(0, 1 / std::tan(2 * pi * x[1]));
      return 100 * (1 - std::norm((1.0 - y) / (1.0 + y)));
    };
    std::vector<std::vector<double>> matches;
    const double r = z.real(), x = z.imag();
    for (const double sign : {-1.0, 1.0}) {
      const double t = (x + sign * std::sqrt(r * ((1 - r) * (1 - r) + x * x))) / (r - 1);
      double d = std::atan(t) / (2 * pi);
      if (d < 0) d += 0.5;
      const std::complex<double> there = z + std::complex<double>(0, t), below = 1.0 + z * std::complex<double>(0, t);
      double l = std::atan(1 / (below / there).imag()) / (2 * pi);
      if (l < 0) l += 0.5;
      matches.push_back({d, l});
    }
    // Nearer to an end than the range goes, a match is out of it.
    const double least = 0.002, most = 0.498;
    const bool inside = std::all_of(matches.begin(), matches.end(), [&](const auto& m) {
      return m[0] > least && m[0] < most && m[1] > least && m[1] < most;
    });
    if (!inside) continue;
    const Found found = ask({linear_knob(least, most), linear_knob(least, most)}, arriving, 0, {}, 12);
    INFO("load " << 50.0 * z << ", matches at " << matches[0][0] << ", " << matches[0][1] << " and " << matches[1][0]
                 << ", " << matches[1][1]);
    REQUIRE(found.ok);
    const std::vector<std::vector<double>> listed = all_told(found);
    for (const auto& match : matches)
      missed += std::none_of(listed.begin(), listed.end(), [&](const auto& one) {
        return std::abs(one[0] - match[0]) < 1e-4 && std::abs(one[1] - match[1]) < 1e-4;
      });
    std::size_t matched = 0;
    for (const auto& one : listed) matched += arriving(one.data(), nullptr) > 99.99;
    CHECK((matched == 1 || matched == 2));
    // At least 99.9 % of the best, which is 100; short of that by needles that are 1e-5 of a range wide.
    CHECK(arriving(listed[0].data(), nullptr) > 99.9);
    ++networks;
    near += std::abs(matches[0][0] - matches[1][0]) < 0.1;
  }
  std::printf("single stubs: %zu networks, %zu with matches near each other, %zu matches missed\n", networks, near,
              missed);
  CHECK(networks > 3500);
  CHECK(near > 1000);
  // Nothing finds every needle; this is what a scan of 1,000 places reaches (README, range of validity).
  CHECK(missed <= networks / 1000);
}

TEST_CASE("of random hills every top is told, and nothing else") {
  // Five round hills a network, 0.05 to 0.12 wide and half to once as high; those that have merged have fewer tops. The
  // tops by a plain method: from each hill's centre ever smaller steps along one knob after the other.
  for (const std::size_t knobs : {std::size_t{1}, std::size_t{2}, std::size_t{3}}) {
    std::mt19937 random(unsigned(11 * knobs));
    std::uniform_real_distribution<double> place(0, 1), width(0.05, 0.12), tall(0.5, 1);
    std::size_t tops_all = 0, missed = 0, strange = 0;
    for (int network = 0; network < 200; ++network) {
      std::vector<std::vector<double>> centres(5, std::vector<double>(knobs));
      std::vector<double> widths, heights;
      for (std::vector<double>& centre : centres) {
        for (double& x : centre) x = place(random);
        widths.push_back(width(random));
        heights.push_back(tall(random));
      }
      const auto goal = [&](const double* x, double*) {
        double sum = 0;
        for (std::size_t h = 0; h < centres.size(); ++h) {
          double far = 0;
          for (std::size_t k = 0; k < knobs; ++k) far += (x[k] - centres[h][k]) * (x[k] - centres[h][k]);
          sum += heights[h] * std::exp(-far / (2 * widths[h] * widths[h]));
        }
        return sum;
      };
      std::vector<std::vector<double>> tops;
      for (std::vector<double> at : centres) {
        for (double step = 0.01; step > 1e-7; step /= 2)
          for (bool better = true; better;) {
            better = false;
            for (std::size_t k = 0; k < knobs; ++k)
              for (const double side : {-step, step}) {
                std::vector<double> next = at;
                next[k] = std::clamp(next[k] + side, 0.0, 1.0);
                if (goal(next.data(), nullptr) > goal(at.data(), nullptr)) at = next, better = true;
              }
          }
        const bool known =
            std::any_of(tops.begin(), tops.end(), [&](const auto& top) { return furthest(top, at) < 0.01; });
        if (!known) tops.push_back(at);
      }
      const Found found = ask(std::vector<sdk::KnobRange>(knobs, linear_knob(0, 1)), goal, 0, {}, 12);
      REQUIRE(found.ok);
      const std::vector<std::vector<double>> listed = all_told(found);
      const auto among = [](const auto& all, const auto& one) {
        return std::any_of(all.begin(), all.end(), [&](const auto& other) { return furthest(other, one) < 0.01; });
      };
      tops_all += tops.size();
      for (const auto& top : tops) missed += !among(listed, top);
      for (const auto& one : listed) strange += !among(tops, one);
      double best = 0;
      for (const auto& top : tops) best = std::max(best, goal(top.data(), nullptr));
      CHECK(found.goal >= best * (1 - 1e-9));
    }
    std::printf("random hills, %zu knobs: %zu tops, %zu missed, %zu strange\n", knobs, tops_all, missed, strange);
    CHECK(tops_all > 500);
    CHECK(strange == 0);
    // Shoulders of higher hills that are all but none: 4, 1 and 3 when this was written.
    CHECK(missed <= tops_all / 100);
  }
}

TEST_CASE("one knob may have several tops, one of them at its end") {
  const auto goal = [](const double* x, double*) {
    return hill(x, 1, {0.2}, 0.03) + 0.8 * hill(x, 1, {0.5}, 0.03) + 0.6 * std::exp((x[0] - 1) / 0.05);
  };
  check_tops(ask({linear_knob(0, 1)}, goal, 0, {}, 12), {{0.2}, {0.5}, {1.0}});
}

TEST_CASE("tops are looked for at each position of a switch") {
  const std::vector<double> positions{0, 1};
  const auto goal = [](const double* x, double*) {
    return x[0] == 0 ? hill(x + 1, 1, {0.3}, 0.05) + 0.6 * hill(x + 1, 1, {0.8}, 0.05) : 0.8 * hill(x + 1, 1, {0.5}, 0.05);
  };
  check_tops(ask({choice_knob(positions), linear_knob(0, 1)}, goal, 0, {}, 12), {{0, 0.3}, {1, 0.5}, {0, 0.8}});
}

TEST_CASE("a top may be where a slack ends it") {
  const auto goal = [](const double* x, double* slacks) {
    slacks[0] = x[0] - 0.4;
    return hill(x, 2, {0.3, 0.5}, 0.08) + 0.8 * hill(x, 2, {0.7, 0.5}, 0.08);
  };
  check_tops(ask({linear_knob(0, 1), linear_knob(0, 1)}, goal, 1, {}, 12), {{0.7, 0.5}, {0.4, 0.5}});
}

TEST_CASE("tops with creases are told like others") {
  const auto pyramid = [](const double* x, double top) { return 1 - 3 * std::max(std::abs(x[0] - top), std::abs(x[1] - 0.5)); };
  const auto goal = [&](const double* x, double*) { return std::max(pyramid(x, 0.25), pyramid(x, 0.75) - 0.1); };
  check_tops(ask({linear_knob(0, 1), linear_knob(0, 1)}, goal, 0, {}, 12), {{0.25, 0.5}, {0.75, 0.5}});
}

namespace {

double worst_of_five_w(const Ladder& ladder, const double* values) {
  return worst_power_w(ladder, {0.97, 0.985, 1.0, 1.015, 1.03}, values);
}

using OfPlace = std::function<double(const std::vector<double>& place)>;

/// The greatest with one knob held, the others within `half` of where they stand: grids around the best of the last,
/// for goals with creases.
double best_beside(const OfPlace& goal, std::vector<double>& place, std::size_t held, double half) {
  constexpr int points = 9;
  double best = goal(place);
  for (; half > 1e-9; half /= 2.5) {
    const std::vector<double> centre = place;
    const int count = place.size() == 2 ? points : points * points;
    for (int i = 0; i < count; ++i) {
      std::vector<double> other = centre;
      int left = i;
      for (std::size_t k = 0; k < other.size(); ++k) {
        if (k == held) continue;
        other[k] = std::clamp(centre[k] + half * (2.0 * (left % points) / (points - 1) - 1), 0.0, 1.0);
        left /= points;
      }
      if (const double value = goal(other); value > best) best = value, place = other;
    }
  }
  return best;
}

/// Whether a way leads up from here without a dip: along one knob by small steps, the others following.
bool goes_on_rising(const OfPlace& goal, const std::vector<double>& top, double gain) {
  const double own = goal(top);
  for (std::size_t knob = 0; knob < top.size(); ++knob)
    for (const double step : {-2e-3, 2e-3}) {
      std::vector<double> place = top;
      for (int i = 0; i < 200; ++i) {
        place[knob] += step;
        if (place[knob] < 0 || place[knob] > 1) break;
        const double value = best_beside(goal, place, knob, 0.02);
        if (value > own + gain) return true;
        if (value < own - 1e-3 * gain) break;
      }
    }
  return false;
}

}  // namespace

TEST_CASE("of the worst of five frequencies what is told are tops, not places along a crease") {
  const auto count = [](const std::vector<Form>& forms, unsigned seeds) {
    std::size_t networks = 0, told = 0, rising = 0;
    for (const Form& form : forms)
      for (unsigned seed = 1; seed <= seeds; ++seed) {
        const Ladder ladder = random_case(form, seed);
        const Bounds bounds = bounds_of(ladder);
        const OfPlace goal = [&](const std::vector<double>& place) {
          std::vector<double> values;
          for (std::size_t k = 0; k < place.size(); ++k) values.push_back(value_at(bounds, k, place[k]));
          return worst_of_five_w(ladder, values.data());
        };
        const Found found = ask(
            knobs_of(bounds), [&](const double* x, double*) { return worst_of_five_w(ladder, x); }, 0, {}, 12);
        REQUIRE(found.ok);
        ++networks;
        for (const auto& one : all_told(found)) {
          const double own = worst_of_five_w(ladder, one.data());
          if (own < 0.25 * found.goal) continue;
          ++told;
          std::vector<double> place;
          for (std::size_t k = 0; k < one.size(); ++k) place.push_back(share(bounds, k, one[k]));
          if (!goes_on_rising(goal, place, 1e-3 * found.goal)) continue;
          ++rising;
          std::printf("%s seed %u: %.4g of %.4g W goes on rising\n", form.name.c_str(), seed, own, found.goal);
        }
      }
    std::printf("worst of five frequencies: %zu networks, %zu tops told, %zu of them go on rising\n", networks, told,
                rising);
    CHECK(told >= networks);
    // One crest rises by 0.1 % over a third of the range; that is one of 161 tops, and of the few that sanitizers have
    // time for one as well.
    CHECK(rising <= std::max<std::size_t>(1, told / 100));
  };
  count(two_knob_forms(), std::max(2u, TUNER_SEEDS / 10));
  count(three_knob_forms(), std::max(1u, TUNER_SEEDS / 10));
}
