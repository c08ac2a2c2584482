#include "baselines.hpp"

#include <klu.h>

#include <Eigen/Dense>
#include <Eigen/SparseCore>
#include <Eigen/SparseLU>
#include <array>
#include <cmath>
#include <cstring>
#include <map>
#include <numbers>
#include <utility>

namespace wattfall::bench {
namespace {

using Complex = std::complex<double>;
constexpr Complex j{0.0, 1.0};
constexpr double light_m_per_s = 299792458.0;

/// y11 and y12 of a line, y of all else; heat is that of Re(V conj I), as it falls out.
struct Admittance {
  Complex own, through;
};

Admittance admittance(const FlatPart& part, double hertz, const double* knobs) {
  const double omega = 2.0 * std::numbers::pi * hertz;
  const double main = part.knob >= 0 ? knobs[part.knob] : part.main;
  // Loss of X/Q, or of (X/Q at a frequency) growing as the root of frequency.
  const auto loss = [&](double reactance, double at_given) {
    if (part.q == 0.0) return 0.0;
    return part.q_at_hz == 0.0 ? reactance / part.q : at_given / part.q * std::sqrt(hertz / part.q_at_hz);
  };
  switch (part.kind) {
    case FlatPart::Kind::coil: {
      const double x = omega * main;
      return {1.0 / Complex{part.ohms + loss(x, 2.0 * std::numbers::pi * part.q_at_hz * main), x}, 0.0};
    }
    case FlatPart::Kind::capacitor: {
      const double b = omega * main;
      if (b == 0.0) return {0.0, 0.0};
      return {1.0 / Complex{part.ohms + loss(1.0 / b, 1.0 / (2.0 * std::numbers::pi * part.q_at_hz * main)), -1.0 / b},
              0.0};
    }
    case FlatPart::Kind::core:
      return {Complex{1.0 / part.ohms, -1.0 / (omega * main)}, 0.0};
    case FlatPart::Kind::impedance:
      return {1.0 / part.impedance, 0.0};
    case FlatPart::Kind::line:
      break;
  }
  const double alpha = (part.k1 * std::sqrt(hertz) + part.k2 * hertz) * std::numbers::ln10 / 20.0;
  const double a = alpha * main, b = omega / (part.velocity * light_m_per_s) * main;
  const double sinh = std::sinh(a), cosh = std::cosh(a), sine = std::sin(b), cosine = std::cos(b);
  const Complex over_z_sinh = 1.0 / (part.impedance * Complex{sinh * cosine, cosh * sine});
  return {Complex{cosh * cosine, sinh * sine} * over_z_sinh, -over_z_sinh};
}

/// All but the matrix's form: `Own` has clear(), add(i, j, value) and solve(x).
template <class Own>
class OnePoint : public Baseline {
 public:
  explicit OnePoint(const FlatNetwork& network) : network_(network), own_(network), admittances_(network.parts.size()) {
    x_.resize(static_cast<std::size_t>(network.unknowns));
  }

  void run(const FlatStates& states, FlatAnswer& answer) override {
    const std::size_t parts = network_.parts.size();
    for (std::vector<double>* all : {&answer.heat_w, &answer.volts_peak, &answer.amps_rms})
      all->resize(parts * states.count);
    answer.returned_w.resize(states.count);
    for (std::size_t s = 0; s < states.count; ++s) {
      const double* knobs = states.knobs == nullptr ? nullptr : states.knobs + s * states.knob_count;
      for (std::size_t p = 0; p < parts; ++p) admittances_[p] = admittance(network_.parts[p], states.hertz[s], knobs);
      assemble();
      own_.solve(x_.data());
      book(s, answer);
    }
  }

 private:
  void assemble() {
    own_.clear();
    std::size_t at = 0;
    for (std::size_t p = 0; p < network_.parts.size(); ++p) {
      const FlatPart& part = network_.parts[p];
      const int terminals = part.kind == FlatPart::Kind::line ? 4 : 2;
      for (int s = 0; s < terminals; ++s) {
        if (part.unknown[s] < 0) continue;
        for (int t = 0; t < terminals; ++t) {
          if (part.unknown[t] < 0) continue;
          const Complex y = s / 2 == t / 2 ? admittances_[p].own : admittances_[p].through;
          const double weight = part.weight[s] * part.weight[t] * ((s + t) % 2 == 0 ? 1.0 : -1.0);
          own_.add(at++, part.unknown[s], part.unknown[t], weight * y);
        }
      }
    }
    own_.add(at, network_.source_unknown, network_.source_unknown, 1.0 / network_.source_ohms);
    std::fill(x_.begin(), x_.end(), 0.0);
    x_[static_cast<std::size_t>(network_.source_unknown)] = source_volts() / network_.source_ohms;
  }

  double source_volts() const { return 2.0 * std::sqrt(network_.available_w * network_.source_ohms); }

  Complex across(const FlatPart& part, int port) const {
    Complex volts = 0.0;
    for (int s = 2 * port; s < 2 * port + 2; ++s)
      if (part.unknown[s] >= 0)
        volts += (s % 2 == 0 ? 1.0 : -1.0) * part.weight[s] * x_[static_cast<std::size_t>(part.unknown[s])];
    return volts;
  }

  void book(std::size_t state, FlatAnswer& answer) const {
    const std::size_t first = state * network_.parts.size();
    for (std::size_t p = 0; p < network_.parts.size(); ++p) {
      const FlatPart& part = network_.parts[p];
      const Complex v1 = across(part, 0);
      Complex i1 = admittances_[p].own * v1;
      double volts = std::sqrt(std::norm(v1)), heat = 0.0, amps = 0.0;
      if (part.kind == FlatPart::Kind::line) {
        const Complex v2 = across(part, 1);
        i1 += admittances_[p].through * v2;
        const Complex i2 = admittances_[p].through * v1 + admittances_[p].own * v2;
        heat = (v1 * std::conj(i1)).real() + (v2 * std::conj(i2)).real();
        volts = std::max(volts, std::sqrt(std::norm(v2)));
        amps = std::max(std::sqrt(std::norm(i1)), std::sqrt(std::norm(i2)));
      } else {
        heat = (v1 * std::conj(i1)).real();
        amps = std::sqrt(std::norm(i1));
      }
      answer.heat_w[first + p] = heat;
      answer.volts_peak[first + p] = std::numbers::sqrt2 * volts;
      answer.amps_rms[first + p] = amps;
    }
    const Complex v = x_[static_cast<std::size_t>(network_.source_unknown)];
    const Complex i = (source_volts() - v) / network_.source_ohms;
    answer.returned_w[state] = std::norm(v - network_.source_ohms * i) / (4.0 * network_.source_ohms);
  }

  const FlatNetwork network_;
  Own own_;
  std::vector<Admittance> admittances_;
  std::vector<Complex> x_;
};

template <int Size>
class Dense {
 public:
  explicit Dense(const FlatNetwork& network)
      : matrix_(network.unknowns, network.unknowns), factors_(network.unknowns) {}
  void clear() { matrix_.setZero(); }
  void add(std::size_t, int i, int k, Complex value) { matrix_(i, k) += value; }
  void solve(Complex* x) {
    factors_.compute(matrix_);
    Eigen::Map<Eigen::Matrix<Complex, Size, 1>> right(x, matrix_.rows());
    right = factors_.solve(right).eval();
  }

 private:
  Eigen::Matrix<Complex, Size, Size> matrix_;
  Eigen::PartialPivLU<Eigen::Matrix<Complex, Size, Size>> factors_;
};

/// Compressed columns; the n-th contribution of a point always goes to the same place, found once.
class Pattern {
 public:
  explicit Pattern(const FlatNetwork& network) : size_(network.unknowns) {
    std::map<std::pair<int, int>, int> places;
    std::vector<std::pair<int, int>> stamped;
    for (const FlatPart& part : network.parts)
      for (int s = 0; s < 4; ++s)
        for (int t = 0; t < 4; ++t)
          if (part.unknown[s] >= 0 && part.unknown[t] >= 0) stamped.emplace_back(part.unknown[t], part.unknown[s]);
    stamped.emplace_back(network.source_unknown, network.source_unknown);
    for (const auto& place : stamped) places[place];
    columns.assign(static_cast<std::size_t>(size_) + 1, 0);
    int next = 0;
    for (auto& [place, index] : places) {
      index = next++;
      rows.push_back(place.second);
      ++columns[static_cast<std::size_t>(place.first) + 1];
    }
    for (std::size_t k = 1; k < columns.size(); ++k) columns[k] += columns[k - 1];
    for (const auto& place : stamped) slots.push_back(places[place]);
    values.resize(rows.size());
  }
  int size() const { return size_; }

  std::vector<int> columns, rows, slots;
  std::vector<Complex> values;

 private:
  int size_;
};

class Sparse {
 public:
  explicit Sparse(const FlatNetwork& network) : pattern_(network) {}
  void clear() { std::fill(pattern_.values.begin(), pattern_.values.end(), 0.0); }
  void add(std::size_t at, int, int, Complex value) {
    pattern_.values[static_cast<std::size_t>(pattern_.slots[at])] += value;
  }
  void solve(Complex* x) {
    const Eigen::Map<const Eigen::SparseMatrix<Complex>> matrix(
        pattern_.size(), pattern_.size(), static_cast<int>(pattern_.rows.size()), pattern_.columns.data(),
        pattern_.rows.data(), pattern_.values.data());
    copy_ = matrix;
    if (!analysed_) factors_.analyzePattern(copy_);
    analysed_ = true;
    factors_.factorize(copy_);
    Eigen::Map<Eigen::VectorXcd> right(x, pattern_.size());
    right = factors_.solve(right).eval();
  }

 private:
  Pattern pattern_;
  Eigen::SparseMatrix<Complex> copy_;
  Eigen::SparseLU<Eigen::SparseMatrix<Complex>, Eigen::COLAMDOrdering<int>> factors_;
  bool analysed_ = false;
};

class Klu {
 public:
  explicit Klu(const FlatNetwork& network) : pattern_(network) { klu_defaults(&common_); }
  ~Klu() {
    if (numeric_ != nullptr) klu_z_free_numeric(&numeric_, &common_);
    if (symbolic_ != nullptr) klu_free_symbolic(&symbolic_, &common_);
  }
  Klu(const Klu&) = delete;
  Klu& operator=(const Klu&) = delete;
  void clear() { std::fill(pattern_.values.begin(), pattern_.values.end(), 0.0); }
  void add(std::size_t at, int, int, Complex value) {
    pattern_.values[static_cast<std::size_t>(pattern_.slots[at])] += value;
  }
  void solve(Complex* x) {
    auto* values = reinterpret_cast<double*>(pattern_.values.data());
    if (numeric_ == nullptr) {
      symbolic_ = klu_analyze(pattern_.size(), pattern_.columns.data(), pattern_.rows.data(), &common_);
      numeric_ = klu_z_factor(pattern_.columns.data(), pattern_.rows.data(), values, symbolic_, &common_);
    } else {
      klu_z_refactor(pattern_.columns.data(), pattern_.rows.data(), values, symbolic_, numeric_, &common_);
    }
    klu_z_solve(symbolic_, numeric_, pattern_.size(), 1, reinterpret_cast<double*>(x), &common_);
  }

 private:
  Pattern pattern_;
  klu_common common_{};
  klu_symbolic* symbolic_ = nullptr;
  klu_numeric* numeric_ = nullptr;
};

}  // namespace

std::unique_ptr<Baseline> make_baseline(const char* name, const FlatNetwork& network) {
  if (std::strcmp(name, "dense") == 0) return std::make_unique<OnePoint<Dense<Eigen::Dynamic>>>(network);
  if (std::strcmp(name, "sparse") == 0) return std::make_unique<OnePoint<Sparse>>(network);
  if (std::strcmp(name, "klu") == 0) return std::make_unique<OnePoint<Klu>>(network);
  if (std::strcmp(name, "fixed") == 0 && network.unknowns == 5) return std::make_unique<OnePoint<Dense<5>>>(network);
  if (std::strcmp(name, "fixed") == 0 && network.unknowns == 3) return std::make_unique<OnePoint<Dense<3>>>(network);
  return nullptr;
}

}  // namespace wattfall::bench
