// Batches of states through the compiled kernel; flagged ones through the dense tableau; all into one structure of arrays.
#include "solve/solve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <functional>
#include <future>
#include <limits>
#include <numbers>
#include <thread>

#include "flows.hpp"
#include "kernel.hpp"
#include "propagation.hpp"
#include "solve_on.hpp"
#include "tableau.hpp"
#include "workspace.hpp"

namespace wattfall::solve {
namespace {

/// What the books of the fast path may be off at most, as a share of the available power: half of what the ledger promises.
constexpr double most_imbalance = 5e-13;

void set(LaneComplex& value, std::size_t lane, Complex number) {
  value.real()[lane] = number.real();
  value.imag()[lane] = number.imag();
}

Complex get(const LaneComplex& value, std::size_t lane) { return {value.real()[lane], value.imag()[lane]}; }

/// The four port admittances of A V + B I = 0, Y = -B^-1 A; false where B is singular or nearly so.
bool matrix_admittances(const ElementValue& value, std::array<Complex, 4>& y) {
  const auto& a = value.a;
  const auto& b = value.b;
  const Complex determinant = b[0] * b[3] - b[1] * b[2];
  const double size = std::norm(b[0]) + std::norm(b[1]) + std::norm(b[2]) + std::norm(b[3]);
  if (!(std::abs(determinant) >= pivot_floor * size)) return false;
  y = {-(b[3] * a[0] - b[1] * a[2]) / determinant, -(b[3] * a[1] - b[1] * a[3]) / determinant, -(b[0] * a[2] - b[2] * a[0]) / determinant,
       -(b[0] * a[3] - b[2] * a[1]) / determinant};
  return true;
}

/// What the books leave over, as a share of the available power.
double imbalance(Complex source_ohms, double available_w, Complex volts, const StateFlows& state) {
  const double returned = std::norm(volts - std::conj(source_ohms) * state.source_amps) / (4.0 * source_ohms.real());
  double heat = 0.0;
  for (const ElementFlow& flow : state.elements) heat += flow.heat1 + flow.heat2;
  return std::abs(available_w - returned - heat) / available_w;
}

/// Where a solution keeps what the kernel writes by itself: by place of heat, by element.
struct Answers {
  std::vector<double*> heat, volts_peak, amps_rms;
};

Answers answers_of(Solution& solution) {
  Answers answers;
  for (Flow& flow : solution.flows) {
    answers.heat.push_back(flow.heat1_w.data());
    answers.volts_peak.push_back(flow.volts_peak.data());
    answers.amps_rms.push_back(flow.amps_rms.data());
  }
  for (Flow& flow : solution.flows)
    if (!flow.heat2_w.empty()) answers.heat.push_back(flow.heat2_w.data());
  return answers;
}

/// One thread's workspace over the program that all share. Threads write to states of their own.
class Worker {
 public:
  Worker(const design::Design& design, const graph::Network& network, const std::vector<design::Look>& looks, const Program& program, const Kernel& kernel)
      : design_(design), network_(network), looks_(looks), kernel_(kernel), space_(program) {
    fixed_source_ = design.source.impedance_ohm.constant() && design.source.available_w.constant();
  }

  /// The states from `begin` to `end`, of which the first is a multiple of the lanes.
  void run(Solution& solution, const Answers& answers, Keep keep, Method method, std::size_t begin, std::size_t end, Progress* progress) {
    solution_ = &solution;
    answers_ = &answers;
    figures_ = keep == Keep::figures;
    batch_.keep_amps = !figures_ || batch_.merged_count > 0 || !looks_.empty();
    new_run_ = true;
    for (std::size_t first = begin; first < end; first += lanes) {
      const std::size_t used = std::min(lanes, end - first);
      write_inputs(first, used);
      if (method == Method::guarded) {
        direct_answers(first, used);
        kernel_.run(batch_);
        judge_lanes(first, used);
        store_batch(first, used);
        for (std::size_t k = 0; k < looks_.size(); ++k) probe_look(k, first, used);
      }
      for (std::size_t lane = 0; lane < used; ++lane) {
        if (method == Method::robust) solution.guards[first + lane] = Guard::pivot;
        if (solution.guards[first + lane] != Guard::none) robust_state(first + lane, lane);
      }
      if (progress != nullptr) progress->add(Progress::Work::points, used);
    }
  }

 private:
  /// A whole batch's heat and figures go where they are kept; that of a last one in part goes by the workspace.
  void direct_answers(std::size_t first, std::size_t used) {
    if (used < lanes) return space_.answer_here(figures_);
    batch_.heat = answers_->heat.data();
    batch_.volts_peak = figures_ ? answers_->volts_peak.data() : nullptr;
    batch_.amps_rms = figures_ ? answers_->amps_rms.data() : nullptr;
    batch_.offset = first;
  }

  // ---- what goes in ----

  /// Lanes beyond the last state repeat it, so that they hold sound numbers.
  std::size_t state_of(std::size_t first, std::size_t used, std::size_t lane) const { return first + std::min(lane, used - 1); }

  double* lane_numbers(std::uint32_t real) { return batch_.reals[real].data(); }

  void write_inputs(std::size_t first, std::size_t used) {
    const States& states = solution_->states;
    given_guards_.fill(Guard::none);
    std::array<double, lanes> hertz;
    std::copy_n(states.frequencies_hz.data() + first, used, hertz.data());
    std::fill(hertz.begin() + static_cast<std::ptrdiff_t>(used), hertz.end(), hertz[used - 1]);
    if (new_run_ || hertz != hertz_) {
      hertz_ = hertz;
      write_frequencies();
    }
    for (const Program::Varying& varying : space_.program.varying) {
      double* numbers = lane_numbers(varying.real);
      if (varying.knob >= 0)
        for (std::size_t lane = 0; lane < lanes; ++lane)
          numbers[lane] = states.knobs[state_of(first, used, lane) * states.knob_count + static_cast<std::size_t>(varying.knob)];
      else
        for (std::size_t lane = 0; lane < lanes; ++lane) numbers[lane] = varying.read(hertz_[lane], states.knobs_at(state_of(first, used, lane)));
    }
    if (new_run_ || !fixed_source_) write_source(first, used);
    for (const Program::Given& given : space_.program.givens)
      if (!given.constant || new_run_) write_given(given, first, used);
    new_run_ = false;
  }

  void write_frequencies() {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      batch_.omega.data()[lane] = 2.0 * std::numbers::pi * hertz_[lane];
      batch_.root_hz.data()[lane] = std::sqrt(hertz_[lane]);
    }
    for (const Program::GivenMake& given : space_.program.given_makes) write_make(given);
  }

  void write_source(std::size_t first, std::size_t used) {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const auto knobs = solution_->states.knobs_at(state_of(first, used, lane));
      const Complex ohms = design_.source.impedance_ohm.at(hertz_[lane], knobs);
      const double available = design_.source.available_w.real_at(hertz_[lane], knobs);
      batch_.source_ohms_re.data()[lane] = ohms.real();
      batch_.source_ohms_im.data()[lane] = ohms.imag();
      batch_.available_w.data()[lane] = available;
      batch_.source_volts.data()[lane] = 2.0 * std::sqrt(available * ohms.real());
      set(space_.values[space_.program.source_value], lane, 1.0 / ohms);
    }
  }

  void write_make(const Program::GivenMake& given) {
    std::array<Complex, lanes> gamma{}, impedance{};
    const bool good = propagate(design_, network_.elements[given.element], hertz_.data(), lanes, gamma.data(), impedance.data());
    if (!good) gamma.fill(std::numeric_limits<double>::quiet_NaN());
    split(gamma, space_.values[given.gamma]);
    split(impedance, space_.values[given.impedance]);
    // Written out, so that it is done for several lanes at once.
    const LaneComplex& z = space_.values[given.impedance];
    LaneComplex& y = space_.values[given.admittance];
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const double size = z.real()[lane] * z.real()[lane] + z.imag()[lane] * z.imag()[lane];
      y.real()[lane] = z.real()[lane] / size;
      y.imag()[lane] = -z.imag()[lane] / size;
    }
  }

  static void split(const std::array<Complex, lanes>& numbers, LaneComplex& to) {
    for (std::size_t lane = 0; lane < lanes; ++lane) set(to, lane, numbers[lane]);
  }

  /// An element whose admittances the kernel has no formula for.
  void write_given(const Program::Given& given, std::size_t first, std::size_t used) {
    const graph::Element& element = network_.elements[given.element];
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const ElementValue value = element_value(design_, element, hertz_[lane], solution_->states.knobs_at(state_of(first, used, lane)));
      if (element.form == graph::Element::Form::branch) write_branch(given, value, lane);
      else write_matrix(given, value, lane);
    }
  }

  void flag(std::size_t lane, Guard why) {
    if (given_guards_[lane] == Guard::none) given_guards_[lane] = why;
  }

  void write_branch(const Program::Given& given, const ElementValue& value, std::size_t lane) {
    const bool sound = std::norm(value.n) >= 1e-12 * std::norm(value.d);
    if (!sound) flag(lane, Guard::shorted);
    set(space_.values[given.value], lane, sound ? value.d / value.n : 1.0);
    lane_numbers(given.real)[lane] = sound ? value.loss / std::norm(value.n) : 0.0;
  }

  void write_matrix(const Program::Given& given, const ElementValue& value, std::size_t lane) {
    std::array<Complex, 4> y{1.0, 0.0, 0.0, 1.0};
    if (!matrix_admittances(value, y)) flag(lane, Guard::two_port);
    for (std::uint32_t i = 0; i < 4; ++i) set(space_.values[given.value + i], lane, y[i]);
    if (network_.elements[given.element].role != graph::Element::Role::coupled) return;
    for (std::uint32_t i = 0; i < 2; ++i) {
      lane_numbers(given.real + i)[lane] = value.coil_ohms[i];
      lane_numbers(given.real + 2 + i)[lane] = value.coil_susceptance[i];
    }
  }

  // ---- what comes out ----

  void judge_lanes(std::size_t first, std::size_t used) {
    const auto flagged = [](const VectorMask* masks, std::size_t lane) {
      return reinterpret_cast<const std::int64_t*>(masks)[lane] != 0;
    };
    std::int64_t any = 0;
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const auto bits = [&](const VectorMask* masks) { return reinterpret_cast<const std::int64_t*>(masks)[lane]; };
      any |= bits(batch_.bad_line) | bits(batch_.bad_branch) | bits(batch_.bad_pivot) | (batch_.imbalance.data()[lane] < most_imbalance ? 0 : 1) |
             static_cast<std::int64_t>(given_guards_[lane]);
    }
    if (any == 0) return;  // as they were set for the run
    for (std::size_t lane = 0; lane < used; ++lane) {
      Guard guard = given_guards_[lane];
      if (guard == Guard::none && flagged(batch_.bad_line, lane)) guard = Guard::line;
      if (guard == Guard::none && flagged(batch_.bad_branch, lane)) guard = Guard::shorted;
      if (guard == Guard::none && flagged(batch_.bad_pivot, lane)) guard = Guard::pivot;
      if (guard == Guard::none && !(batch_.imbalance.data()[lane] < most_imbalance)) guard = Guard::balance;
      solution_->guards[first + lane] = guard;
    }
  }

  static void copy(const LaneReal& from, Series& to, std::size_t first, std::size_t used) {
    std::memcpy(to.data() + first, from.data(), used * sizeof(double));
  }
  static void copy(const LaneComplex& from, ComplexSeries& to, std::size_t first, std::size_t used) {
    std::memcpy(to.real() + first, from.real(), used * sizeof(double));
    std::memcpy(to.imag() + first, from.imag(), used * sizeof(double));
  }

  void store_batch(std::size_t first, std::size_t used) {
    Solution& solution = *solution_;
    const Program& program = space_.program;
    if (used < lanes) store_part(first, used);
    if (!figures_) store_waves(first, used);
    copy(batch_.available_w, solution.available_w, first, used);
    copy(batch_.source_amps, solution.source_amps, first, used);
    const LaneComplex &node = space_.volts[program.source_node], &other = space_.volts[program.source_other];
    double *const re = solution.source_volts.real() + first, *const im = solution.source_volts.imag() + first;
    for (std::size_t lane = 0; lane < used; ++lane) {
      re[lane] = node.real()[lane] - other.real()[lane];
      im[lane] = node.imag()[lane] - other.imag()[lane];
    }
    for (std::size_t k = 0; k < looks_.size(); ++k)
      for (std::size_t lane = 0; lane < used; ++lane)
        solution.looks[k].admittance_into.set(first + lane, lane_amps_of_look(k, lane) / get(space_.volts[looks_[k].node.index], lane));
  }

  /// A batch's heat and figures out of the workspace.
  void store_part(std::size_t first, std::size_t used) {
    const auto copy_all = [&](const std::vector<double*>& from, const std::vector<double*>& to) {
      for (std::size_t i = 0; i < to.size(); ++i) std::copy_n(from[i], used, to[i] + first);
    };
    copy_all(space_.heat_here, answers_->heat);
    if (!figures_) return;
    copy_all(space_.volts_peak_here, answers_->volts_peak);
    copy_all(space_.amps_rms_here, answers_->amps_rms);
  }

  /// Potentials and currents, for the books.
  void store_waves(std::size_t first, std::size_t used) {
    const Program& program = space_.program;
    for (std::size_t node = 1; node < solution_->volts.size(); ++node) copy(space_.volts[node], solution_->volts[node], first, used);
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      Flow& flow = solution_->flows[e];
      const std::uint32_t amps = program.amps_of_element[e], line = program.line_of_element[e];
      copy(space_.amps[amps], flow.amps1, first, used);
      if (!flow.amps2.empty()) copy(space_.amps[amps + 1], flow.amps2, first, used);
      if (line == nowhere) continue;
      const LineCode& code = program.lines[line];
      for (std::size_t lane = 0; lane < used; ++lane) {
        const double length = code.length.real == nowhere ? code.length.number : space_.reals[code.length.real].data()[lane];
        flow.gamma_l.set(first + lane, get(space_.values[code.gamma], lane) * length);
      }
      copy(space_.values[program.given_makes[program.make_of_line[line]].impedance], flow.impedance_ohm, first, used);
    }
  }

  /// Current from a look's node into its part in a lane; with none, into everything but the source.
  Complex lane_amps_of_look(std::size_t k, std::size_t lane) const {
    Complex sum = 0.0;
    const auto add = [&](int e, int port, double sign) { sum += sign * get(space_.amps[space_.program.amps_of_element[e] + static_cast<std::uint32_t>(port)], lane); };
    if (looks_[k].into) network_.visit_terminals(looks_[k].into, looks_[k].node.index, add);
    else
      for (std::size_t p = 0; p < design_.parts.size(); ++p)
        network_.visit_terminals(design::PartId{static_cast<int>(p)}, looks_[k].node.index, add);
    return sum;
  }

  void probe_look(std::size_t k, std::size_t first, std::size_t used) {
    const int node = looks_[k].node.index;
    const Program& program = space_.program;
    if (program.x_of_node[node] != nowhere)
      kernel_.probe(batch_, static_cast<std::uint32_t>(node), program.x_of_node[node], program.weight_of_node[node]);
    for (std::size_t lane = 0; lane < used; ++lane)
      solution_->looks[k].admittance_behind.set(first + lane, (1.0 - lane_amps_of_look(k, lane)) / get(space_.volts[node], lane));
  }

  void robust_state(std::size_t index, std::size_t lane) {
    const double hertz = solution_->states.frequencies_hz[index];
    const auto knobs = solution_->states.knobs_at(index);
    std::vector<ElementValue> values;
    for (const graph::Element& element : network_.elements) values.push_back(element_value(design_, element, hertz, knobs));
    const Complex ohms{batch_.source_ohms_re.data()[lane], batch_.source_ohms_im.data()[lane]};
    const Tableau<double> tableau(network_, values, ohms);
    const StateFlows state = tableau.solve(batch_.source_volts.data()[lane]);
    store_state(index, lane, state, values);
    const Complex port = state.volts[network_.source_node] - state.volts[network_.source_other];
    const bool closes = imbalance(ohms, batch_.available_w.data()[lane], port, state) < 1e-9;
    solution_->untrusted[index] = !(tableau.trust() > 1e-15) || !closes;
    for (std::size_t k = 0; k < looks_.size(); ++k) {
      const int node = looks_[k].node.index;
      solution_->looks[k].admittance_into.set(index, amps_of_look(design_, network_, looks_[k], state) / state.volts[node]);
      const StateFlows probe = tableau.respond(node);
      solution_->looks[k].admittance_behind.set(index, (1.0 - amps_of_look(design_, network_, looks_[k], probe)) / probe.volts[node]);
    }
  }

  void store_state(std::size_t index, std::size_t lane, const StateFlows& state, const std::vector<ElementValue>& values) {
    store(network_, values, state, index, *solution_);
    solution_->available_w[index] = batch_.available_w.data()[lane];
    if (!figures_) return;
    for (std::size_t e = 0; e < network_.elements.size(); ++e) store_figures(index, network_.elements[e], state, state.elements[e], solution_->flows[e]);
  }

  static void store_figures(std::size_t index, const graph::Element& element, const StateFlows& state, const ElementFlow& found, Flow& flow) {
    double volts = 0.0;
    for (int port = 0; port < element.ports(); ++port)
      volts = std::max(volts, std::abs(state.volts[element.node[2 * port]] - state.volts[element.node[2 * port + 1]]));
    flow.volts_peak[index] = std::numbers::sqrt2 * volts;
    flow.amps_rms[index] = element.ports() == 2 ? std::max(std::abs(found.amps1), std::abs(found.amps2)) : std::abs(found.amps1);
  }

  const design::Design& design_;
  const graph::Network& network_;
  const std::vector<design::Look>& looks_;
  const Kernel& kernel_;
  Workspace space_;
  Batch& batch_ = space_.batch;
  Solution* solution_ = nullptr;
  const Answers* answers_ = nullptr;
  bool figures_ = false, fixed_source_ = false, new_run_ = true;
  std::array<double, lanes> hertz_{};
  std::array<Guard, lanes> given_guards_{};
};

/// A program and those who run it.
struct Crew {
  const design::Design& design;
  const graph::Network& network;
  const std::vector<design::Look> looks;
  const Kernel& kernel;
  const Program program;
  Answers answers;
  std::vector<std::unique_ptr<Worker>> workers;

  /// Every thread takes one run of whole batches.
  void run(const States& states, Solution& solution, Keep keep, Method method, unsigned threads, Progress* progress) {
    solution.states = states;
    allocate(network, looks.size(), states.size(), keep, solution);
    answers = answers_of(solution);
    const std::size_t batches = (states.size() + lanes - 1) / lanes, most = std::min<std::size_t>(std::max(1u, threads), std::max<std::size_t>(1, batches));
    while (workers.size() < most) workers.push_back(std::make_unique<Worker>(design, network, looks, program, kernel));
    const auto share = [&](std::size_t t) {
      const std::size_t end = std::min(states.size(), batches * (t + 1) / most * lanes);
      workers[t]->run(solution, answers, keep, method, batches * t / most * lanes, end, progress);
    };
    std::vector<std::jthread> others;
    for (std::size_t t = 1; t < most; ++t) others.emplace_back(share, t);
    share(0);
  }
};

}  // namespace

struct Solver::Body : Crew {};

Solver::Solver(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const std::vector<design::Look>& looks)
    : body_(new Body{{design, network, looks, kernel(), compile(design, network, plan), {}, {}}}) {}
Solver::~Solver() = default;
Solver::Solver(Solver&&) noexcept = default;
Solver& Solver::operator=(Solver&&) noexcept = default;

void Solver::run(const States& states, Solution& solution, Keep keep, Method method, unsigned threads, Progress* progress) {
  body_->run(states, solution, keep, method, threads, progress);
}

Solution solve(const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
               const std::vector<design::Look>& looks, Method method, unsigned threads, Progress* progress) {
  Solution solution;
  Solver(design, network, plan, looks).run(states, solution, Keep::books, method, threads, progress);
  return solution;
}

Solution solve_on(const Kernel& kernel, const design::Design& design, const graph::Network& network, const plan::Plan& plan, const States& states,
                  const std::vector<design::Look>& looks) {
  Solution solution;
  Crew{design, network, looks, kernel, compile(design, network, plan), {}, {}}.run(states, solution, Keep::books, Method::guarded, 1, nullptr);
  return solution;
}

}  // namespace wattfall::solve
