// What a walk says in words: of each step what it adds, by which rule, and one sentence that teaches it.
#pragma once

#include <string>

#include "report/walk_document.hpp"

namespace wattfall::report {

class WalkWords {
 public:
  explicit WalkWords(const WalkResult& result) : result_(result), design_(*result.variant->design) {}

  std::string name(const walk::Step& step) const;      ///< "atu.L", "L and C"; the source's for its impedance
  std::string what(const walk::Step& step) const;      ///< "inductor, 2.407 uH"
  std::string rule(const walk::Step& step) const;      ///< "in series"; short
  std::string sentence(const walk::Step& step, bool outermost) const;
  std::string place(int node, int other) const;        ///< "mast", "(left right)"
  std::string stop(const walk::Stop& stop) const;
  std::string agreement() const;
  std::string chosen() const;                          ///< why this frequency; empty where there is but one

 private:
  std::string start(const walk::Step& step, bool outermost) const;
  std::string series(const walk::Step& step) const;
  std::string parallel(const walk::Step& step) const;
  std::string line(const walk::Step& step) const;
  std::string stub(const walk::Step& step, double degrees, std::complex<double> z0) const;
  std::string turns(const walk::Step& step) const;
  std::string two_port(const walk::Step& step) const;
  std::string value_of(const design::Part& part) const;
  const design::Part& part(design::PartId id) const { return design_.parts[id.index]; }

  const WalkResult& result_;
  const design::Design& design_;
};

/// A stable name of a rule: "series", "two_port".
std::string name_of(walk::Rule rule);

}  // namespace wattfall::report
