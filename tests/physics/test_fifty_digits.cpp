// Closed forms against values of fifty decimal digits and more: 1e-12 relative wherever the formula is exact. Complex
// figures are held by their size, |found - exact|/|exact|, since a part of a phasor that fades has no digits of its
// own. Each case prints its worst difference. What needs Bessel functions or sine integrals takes them from their
// series with a thousand digits (many_digits.hpp); a few forms are in the cases of their own topic: Nagaoka and circles
// (test_coils.cpp), round wires (test_special_functions.cpp), radiation resistance (test_antennas.cpp).
#include <array>
#include <boost/math/constants/constants.hpp>
#include <boost/multiprecision/cpp_dec_float.hpp>
#include <catch2/catch.hpp>
#include <cstdio>
#include <string>

#include "many_digits.hpp"
#include "physics/constants.hpp"
#include "physics/dipole.hpp"
#include "physics/line_geometry.hpp"
#include "physics/plates.hpp"
#include "physics/skin.hpp"
#include "physics/solenoid.hpp"
#include "physics/straight_wire.hpp"
#include "physics/toroid.hpp"

namespace wattfall::physics {
namespace {

using Real = boost::multiprecision::cpp_dec_float_50;

const Real pi50 = boost::math::constants::pi<Real>();
const Real light50 = 299792458;
const Real mu50 = 4 * pi50 / 10000000;
const Real eta50 = mu50 * light50;
const Real eps50 = 1 / (mu50 * light50 * light50);

/// The worst of one formula's relative differences.
class Worst {
 public:
  explicit Worst(const char* formula) : formula_(formula) {}
  Worst(const Worst&) = delete;
  ~Worst() {
    std::printf("%-34s %4d values, worst relative difference %.1e (%s)\n", formula_, count_, worst_, where_.c_str());
  }

  void hold(double found, const Real& exact, const std::string& where) {
    note(Real(abs((Real(found) - exact) / exact)).convert_to<double>(), where);
  }
  /// By size.
  void hold(std::complex<double> found, const Real& re, const Real& im, const std::string& where) {
    const Real off_re = Real(found.real()) - re, off_im = Real(found.imag()) - im;
    note(Real(sqrt((off_re * off_re + off_im * off_im) / (re * re + im * im))).convert_to<double>(), where);
  }
  void hold(std::complex<double> found, const many_digits::Complex& exact, const std::string& where) {
    const many_digits::Real re = found.real() - exact.real(), im = found.imag() - exact.imag();
    const many_digits::Real size = exact.real() * exact.real() + exact.imag() * exact.imag();
    note(many_digits::Real(sqrt((re * re + im * im) / size)).convert_to<double>(), where);
  }

 private:
  void note(double off, const std::string& where) {
    INFO(formula_ << " at " << where);
    CHECK(off < 1e-12);
    ++count_;
    if (off > worst_ || count_ == 1) worst_ = off, where_ = where;
  }
  const char* formula_;
  int count_ = 0;
  double worst_ = 0.0;
  std::string where_;
};

std::string named(const char* name, double value, const char* other = nullptr, double other_value = 0.0) {
  std::array<char, 96> room = {};
  if (other == nullptr)
    std::snprintf(room.data(), room.size(), "%s %g", name, value);
  else
    std::snprintf(room.data(), room.size(), "%s %g, %s %g", name, value, other, other_value);
  return room.data();
}

constexpr double ratios[] = {1.0001, 1.01, 1.1, 1.5, 2.0, 3.4, 10.0, 60.0, 1e3, 1e6};
constexpr double permittivities[] = {1.0, 1.00059, 2.25, 10.0};
constexpr Conductor copper{5.8e7, 1.0};

}  // namespace

TEST_CASE("impedances of coax, two wires and a wire over ground keep 1e-12") {
  Worst coax("coax, ln(D/d)"), pair("two wires, acosh(s/d)"), ground("over ground, acosh(2h/d)"),
      far("two wires, ln(2s/d)"), proximity("proximity of two wires");
  for (const double ratio : ratios) {
    for (const double er : permittivities) {
      const std::string where = named("ratio", ratio, "er", er);
      const Real u = ratio, root = sqrt(Real(er));
      coax.hold(coax_impedance_ohm(ratio, er), eta50 / (2 * pi50) * log(u) / root, where);
      pair.hold(two_wire_impedance_ohm(ratio, er), eta50 / pi50 * log(u + sqrt(u * u - 1)) / root, where);
      ground.hold(over_ground_impedance_ohm(ratio, er), eta50 / (2 * pi50) * log(2 * u + sqrt(4 * u * u - 1)) / root,
                  where);
      far.hold(two_wire_far_impedance_ohm(ratio, er), eta50 / pi50 * log(2 * u) / root, where);
    }
    proximity.hold(two_wire_proximity_ratio(ratio), Real(ratio) / sqrt(Real(ratio) * ratio - 1), named("s/d", ratio));
  }
}

TEST_CASE("inductance and capacitance of lines from their sizes keep 1e-12") {
  Worst henry("external inductance of lines"), farad("capacitance of lines"),
      siemens("dielectric conductance of lines");
  for (const double ratio : {1.1, 1.5, 2.0, 3.4, 10.0, 60.0, 1e3}) {
    const double d = 1.37e-3, big = d * ratio, hz = 14.1e6, er = 2.25, tangent = 3e-4;
    const Real u = Real(big) / d, w = 2 * pi50 * hz;
    const std::string where = named("ratio", ratio);
    const LineConstants coax = coax_constants({d, big, 0.0, copper, copper, {er, tangent}}, hz, Skin::thin);
    henry.hold(coax.inductance_h_per_m, mu50 / (2 * pi50) * log(u), where);
    farad.hold(coax.capacitance_f_per_m, 2 * pi50 * eps50 * er / log(u), where);
    siemens.hold(coax.conductance_s_per_m, w * tangent * 2 * pi50 * eps50 * er / log(u), where);
    const Real near = log(u + sqrt(u * u - 1)), image = log(2 * u + sqrt(4 * u * u - 1));
    const LineConstants pair = two_wire_constants({d, big, copper, {er, tangent}}, hz, Skin::thin);
    henry.hold(pair.inductance_h_per_m, mu50 / pi50 * near, where);
    farad.hold(pair.capacitance_f_per_m, pi50 * eps50 * er / near, where);
    const LineConstants ground = over_ground_constants({d, big, copper, {er, tangent}}, hz, Skin::thin);
    henry.hold(ground.inductance_h_per_m, mu50 / (2 * pi50) * image, where);
    farad.hold(ground.capacitance_f_per_m, 2 * pi50 * eps50 * er / image, where);
  }
}

TEST_CASE("the wave on a line keeps 1e-12 in each of its four figures") {
  Worst alpha("attenuation"), beta("phase constant"), real("Re Z0"), imaginary("Im Z0");
  for (const double ohm : {1e-9, 1e-3, 0.5, 20.0})
    for (const double siemens : {0.0, 1e-9, 1e-5, 1e-2})
      for (const double hz : {50.0, 1.8e6, 432e6}) {
        const LineWave found = line_wave({ohm, 250e-9, siemens, 100e-12, {}}, hz);
        const Real w = 2 * pi50 * hz, x = w * Real(250e-9), b = w * Real(100e-12), r = ohm, g = siemens;
        const Real size_z = sqrt(r * r + x * x), size_y = sqrt(g * g + b * b), product = r * g - x * b;
        const Real turned = r * b + g * x;  // Im of zy
        const std::string where = named("R", ohm, "G", siemens) + named(", f", hz);
        const Real beta50 = sqrt((size_z * size_y - product) / 2);
        alpha.hold(found.gamma_per_m.real(), turned / (2 * beta50), where);
        beta.hold(found.gamma_per_m.imag(), beta50, where);
        // sqrt(z/y) = sqrt(z conj y)/|y|
        const Real level = r * g + x * b, aslant = x * g - r * b;
        const Real real50 = sqrt((size_z * size_y + level) / 2) / size_y;
        real.hold(found.impedance_ohm.real(), real50, where);
        if (abs(aslant) > Real(1e-9) * level)  // near Heaviside's condition there is nothing left to hold
          imaginary.hold(found.impedance_ohm.imag(), aslant / (2 * real50 * size_y * size_y), where);
      }
}

TEST_CASE("tubes and shells keep 1e-12 of their impedance") {
  Worst tube("tube, return outside"), shell("shell, return inside");
  using many_digits::Complex;
  for (const double wall_share : {0.04, 0.1, 0.4})                          // thinner: a thousand digits run out
    for (const double thickness : {0.01, 0.1, 0.5, 1.0, 2.0, 5.0, 20.0}) {  // wall over skin depth
      const double outer = 5e-3, wall = wall_share * outer, inner = outer - wall;
      const double depth = wall / thickness,
                   hz = 1.0 / (pi * mu0_h_per_m * copper.conductivity_s_per_m * depth * depth);
      // The exact values take the same doubles: radii, conductivity, frequency.
      const many_digits::Real pi1000 = boost::math::constants::pi<many_digits::Real>();
      const many_digits::Real m_size =
          sqrt(2 * pi1000 * hz * (4 * pi1000 / 10000000) * many_digits::Real(copper.conductivity_s_per_m));
      const auto bessel = [&](double radius) {
        return many_digits::bessel_on_diagonal(m_size * many_digits::Real(radius));
      };
      const many_digits::Bessel a = bessel(inner), b = bessel(outer);
      const Complex below = b.i1 * a.k1 - a.i1 * b.k1, sigma(copper.conductivity_s_per_m);
      const many_digits::Real part = m_size / sqrt(many_digits::Real(2));
      const Complex m(part, part);
      const auto around = [&](double radius) { return m / (Complex(2 * pi1000 * many_digits::Real(radius)) * sigma); };
      const Complex outside = around(outer) * (b.i0 * a.k1 + b.k0 * a.i1) / below;
      const Complex inside = around(inner) * (a.i0 * b.k1 + a.k0 * b.i1) / below;
      const std::string where = named("wall/radius", wall_share, "wall/skin", thickness);
      tube.hold(round_tube(copper, 2.0 * outer, wall, hz).impedance_ohm_per_m(hz), outside, where);
      shell.hold(round_shell(copper, 2.0 * inner, wall, hz).impedance_ohm_per_m(hz), inside, where);
    }
}

TEST_CASE("a strip keeps 1e-12 of its impedance") {
  Worst strip("strip, coth");
  for (const Faces faces : {Faces::one, Faces::both})
    for (const double hz : {50.0, 1e3, 1e5, 1.8e6, 30e6, 1e9}) {
      const double width = 10e-3, thick = 0.7e-3;
      const Real n = static_cast<int>(faces), sigma = copper.conductivity_s_per_m;
      const Real rs = sqrt(pi50 * hz * mu50 / sigma), y = 2 * (Real(thick) / n) * sqrt(pi50 * hz * mu50 * sigma);
      const Real scale = rs / (n * Real(width)), grow = (exp(y) - exp(-y)) / 2, below = (exp(y) + exp(-y)) / 2 - cos(y);
      strip.hold(flat_strip(copper, width, thick, faces, hz).impedance_ohm_per_m(hz), scale * (grow + sin(y)) / below,
                 scale * (grow - sin(y)) / below, named("f", hz));
    }
}

TEST_CASE("skin depth and surface resistance keep 1e-12") {
  Worst depth("skin depth"), surface("surface resistance");
  for (const double hz : {50.0, 1e6, 1e9}) {
    const Real sigma = copper.conductivity_s_per_m;
    depth.hold(skin_depth_m(copper, hz), 1 / sqrt(pi50 * hz * mu50 * sigma), named("f", hz));
    surface.hold(surface_resistance_ohm(copper, hz), sqrt(pi50 * hz * mu50 / sigma), named("f", hz));
  }
}

TEST_CASE("plates, spheres and rings keep 1e-12") {
  Worst plates("parallel plates"), sphere("spheres"), ring("ring core, ln(OD/ID)");
  for (const double gap : {0.1e-3, 1e-3, 13e-3})
    for (const double er : permittivities) {
      const std::string where = named("gap", gap, "er", er);
      const Plates two{.width_m = 0.05, .length_m = 0.08, .gap_m = gap, .fringe = false, .insulation = {er, 0.0}};
      plates.hold(plate_figures(two).capacitance_f, eps50 * er * Real(0.05) * Real(0.08) / gap, where);
      const Plates discs{.shape = PlateShape::disc,
                         .width_m = 0.05,
                         .gap_m = gap,
                         .plates = 7,
                         .fringe = false,
                         .insulation = {er, 0.0}};
      plates.hold(plate_figures(discs).capacitance_f, 6 * eps50 * er * pi50 * Real(0.05) * Real(0.05) / 4 / gap, where);
      sphere.hold(sphere_capacitance_f(gap, er), 2 * pi50 * eps50 * er * gap, where);
      sphere.hold(nested_spheres_capacitance_f(gap, 0.1, er), 2 * pi50 * eps50 * er / (1 / Real(gap) - 1 / Real(0.1)),
                  where);
    }
  for (const double inner : {5e-3, 30e-3, 60e-3})
    ring.hold(air_inductance_index_h({0.061, inner, 0.0127}),
              mu50 * Real(0.0127) * log(Real(0.061) / inner) / (2 * pi50), named("inner diameter", inner));
}

TEST_CASE("straight wires and loops keep 1e-12") {
  Worst wire("straight wire, asinh"), loop("round loop, ln(8a/r)");
  for (const double length : {0.01, 0.1, 1.0, 30.0}) {
    const double d = 1e-3;
    const Real q = 2 * Real(length) / d;
    const Real surface = log(q + sqrt(q * q + 1)) - sqrt(1 + 1 / (q * q)) + 1 / q;
    wire.hold(straight_wire_inductance_h(length, d, Current::surface), mu50 * length / (2 * pi50) * surface,
              named("length", length));
    wire.hold(straight_wire_inductance_h(length, d, Current::uniform),
              mu50 * length / (2 * pi50) * (surface + Real(0.25)), named("length", length));
    loop.hold(round_loop_inductance_h(length, d, Current::surface), mu50 * length / 2 * (log(8 * Real(length) / d) - 2),
              named("diameter", length));
  }
}

TEST_CASE("the current sheet's inductance and Rosa's corrections keep 1e-12") {
  Worst self("Rosa's A"), mutual("Rosa's B, of 1 + B");
  for (const double fill : {0.01, 0.2, 0.5, 0.999})
    self.hold(rosa_self_correction(fill), Real(1.25) - log(2 / Real(fill)), named("d/p", fill));
  // B fades to 0 at one turn; the coil needs A + B, so B is held against one.
  for (const int turns : {1, 2, 3, 5, 11, 12, 13, 40, 200}) {
    const auto f = [](int m) { return m > 0 ? Real(m) * m * log(Real(m)) / 2 : Real(0); };
    Real sum = 0;
    for (int m = 1; m < turns; ++m) sum += (turns - m) * (f(m + 1) - 2 * f(m) + f(m - 1) - Real(1.5) - log(Real(m)));
    mutual.hold(1.0 + rosa_mutual_correction(turns), 1 - 2 * sum / turns, named("turns", turns));
  }
}

TEST_CASE("a dipole's input impedance keeps 1e-12 of the induced-field closed form") {
  Worst thin("dipole, Si and Ci");
  using many_digits::Complex;
  using Long = many_digits::Real;
  const Long pi1000 = boost::math::constants::pi<Long>(), eta = Long(4) * pi1000 / 10000000 * 299792458;
  for (const double length : {0.02, 0.1, 0.159, 0.16, 0.25, 0.4, 0.48, 0.5, 0.6, 0.75})
    for (const double radius : {1e-6, 1e-4, 1e-3}) {
      const Long x = 2 * pi1000 * Long(length), si = many_digits::sine_integral(x),
                 si2 = many_digits::sine_integral(2 * x);
      const Long cin = many_digits::entire_cosine_integral(x), cin2 = many_digits::entire_cosine_integral(2 * x);
      const Long ratio = Long(radius) / Long(length), half = sin(x / 2);
      const Long thickness = many_digits::cosine_integral(2 * x * ratio * ratio);
      const Long ci = 2 * many_digits::cosine_integral(x) - many_digits::cosine_integral(2 * x) - thickness;
      const Long r = cin + sin(x) * (si2 - 2 * si) / 2 + cos(x) * (2 * cin - cin2) / 2;
      const Long reactance = (2 * si + cos(x) * (2 * si - si2) - sin(x) * ci) / 2;
      const Complex exact(eta / (2 * pi1000) * r / (half * half), eta / (2 * pi1000) * reactance / (half * half));
      thin.hold(dipole_input_ohm(length, radius), exact, named("length", length, "radius", radius));
    }
}

}  // namespace wattfall::physics
