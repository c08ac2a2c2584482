// A network at one frequency as functions of up to three knobs that each turn one coil, capacitor or resistor: every volt is N/D, N and D straight in each
// knob alone (Cramer's rule on the collapsed ports). What proofs and closed forms begin with. Private to the room.
#pragma once

#include <array>
#include <complex>
#include <optional>
#include <string>
#include <vector>

#include "search.hpp"
#include "solve/collapse.hpp"

namespace wattfall::tune {

class Straight {
 public:
  using Complex = std::complex<double>;
  static constexpr std::size_t most_knobs = 3, most_corners = 8;
  /// Values of such a function at the corners of the knobs' ranges: corner c has knob k at its upper end where bit k is set.
  using Corners = std::array<Complex, most_corners>;

  Straight(const Problem& problem, double hertz) : problem_(problem), hertz_(hertz) {}

  /// Reduces the network to the knobs' places; false where that cannot be, and a clause that says why.
  bool make(std::string& why_not);

  std::size_t knobs() const { return active_.size(); }
  std::size_t corners() const { return std::size_t{1} << active_.size(); }
  const Corners& d() const { return d_; }
  /// Times D: volts of the source (0), or across a load (1 ...).
  const Corners& volts(std::size_t place) const { return volts_[place]; }
  const std::vector<design::PartId>& loads() const { return loads_; }
  const solve::CollapsedPorts& ports() const { return ports_; }
  const solve::Collapsed& collapsed() const { return *collapsed_; }

  /// Times D and a factor that all have: the waves that come back to the source and go out, V - conj(R) I and V + R I.
  Corners back(Complex reference_ohm) const;
  Corners out(Complex reference_ohm) const;

 private:
  /// (n0 (1 - t) + n1 t)/(d0 (1 - t) + d1 t), t the share of the knob's range.
  struct Fraction {
    Complex n0, n1, d0, d1;
    Complex at(double t) const { return (n0 * (1.0 - t) + n1 * t) / (d0 * (1.0 - t) + d1 * t); }
  };
  /// n x n, n up to 3, row-major with stride 3.
  using Matrix = std::array<Complex, most_knobs * most_knobs>;

  bool find_ports(std::string& why_not);
  bool moves_one_branch(design::KnobId knob);
  Complex admittance(std::size_t port, design::KnobId id, double t) const;
  std::optional<Fraction> fit(std::size_t port, design::KnobId knob) const;
  Complex determinant(const Matrix& a) const;
  void fill_corner(std::size_t c);

  const Problem& problem_;
  double hertz_;
  std::vector<int> active_, watched_;
  std::vector<design::PartId> loads_;  ///< of watched_
  std::vector<Fraction> fractions_;
  std::optional<solve::Collapsed> collapsed_;
  solve::CollapsedPorts ports_;
  std::vector<Corners> volts_;
  Corners d_{};
};

/// Settings (by the statement's knobs) at which nothing comes back to the source, in closed form: with two knobs the two roots of a square equation, as for an
/// L network; with three, one of them held at several values in turn, the family of a T or pi with its spare degree of freedom. Losses and all that stands
/// between are in it. Beside them stand those that match least badly with a knob at an end of its range: more may
/// arrive there than at a match. Empty for other knobs, goals that are not about power or match, several frequencies, and where nothing within the ranges matches.
std::vector<std::vector<double>> matching_settings(const Problem& problem);

}  // namespace wattfall::tune
