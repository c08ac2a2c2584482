#include "solve/collapse.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "kernel.hpp"
#include "program.hpp"
#include "tableau.hpp"

namespace wattfall::solve {
namespace {

constexpr double reference_siemens = 0.02;

Complex across(const graph::Element& element, const std::vector<Complex>& volts) { return volts[element.node[0]] - volts[element.node[1]]; }

void append(std::vector<double>& pairs, Complex number) {
  pairs.push_back(number.real());
  pairs.push_back(number.imag());
}

}  // namespace

struct Collapsed::Body {
  const design::Design& design;
  const graph::Network& network;
  double hertz;
  std::vector<int> active, watched;
  Complex source_ohms;
  double available_w = 0.0, source_volts = 0.0;
  bool sound = false;
  std::vector<double> z, v, watch, watched_siemens;
  Program program;
  std::vector<LaneReal> reals;
  std::vector<LaneComplex> values, work, volts;
  std::vector<LaneReal> last;  ///< the answers to a batch in part
  std::vector<double*> answers, last_answers;
  Batch batch{};
  CollapsedBatch collapsed{};

  Body(const design::Design& given, const graph::Network& built, double frequency_hz, std::span<const double> knobs, const std::vector<int>& changing,
       const std::vector<int>& seen)
      : design(given), network(built), hertz(frequency_hz), active(changing), watched(seen), program(compile_branches(given, built, changing)) {
    source_ohms = design.source.impedance_ohm.at(hertz, knobs);
    available_w = design.source.available_w.real_at(hertz, knobs);
    source_volts = 2.0 * std::sqrt(available_w * source_ohms.real());
    reduce(knobs);
    allocate();
  }

  /// The fixed rest, every active branch at the reference, solved once for the source and once for each port.
  void reduce(std::span<const double> knobs) {
    std::vector<ElementValue> fixed;
    for (const graph::Element& element : network.elements) fixed.push_back(element_value(design, element, hertz, knobs));
    for (int e : watched) watched_siemens.push_back(fixed[e].loss / std::norm(fixed[e].n));
    for (int e : active) {
      fixed[e].n = 1.0 / reference_siemens;
      fixed[e].d = 1.0;
      fixed[e].loss = 1.0 / reference_siemens;
    }
    const Tableau<double> tableau(network, fixed, source_ohms);
    std::vector<StateFlows> responses{tableau.solve(source_volts)};
    for (int e : active) responses.push_back(tableau.respond(network.elements[e].node[0], network.elements[e].node[1]));
    for (int p : active) {
      append(v, across(network.elements[p], responses[0].volts));
      for (std::size_t q = 0; q < active.size(); ++q) append(z, across(network.elements[p], responses[q + 1].volts));
    }
    for (const StateFlows& response : responses) append(watch, response.volts[network.source_node] - response.volts[network.source_other]);
    for (int e : watched)
      for (const StateFlows& response : responses) append(watch, across(network.elements[e], response.volts));
    sound = tableau.trust() > 1e-14;
    for (const std::vector<double>* numbers : {&v, &z, &watch, &watched_siemens})
      for (double number : *numbers) sound &= std::isfinite(number);
  }

  void allocate() {
    reals.resize(program.real_count);
    values.resize(program.value_count);
    work.resize(active.size() * (active.size() + 2));
    volts.resize(active.size());
    last.resize(4 + 2 * watched.size() + 3 * active.size());
    for (LaneReal& answer : last) last_answers.push_back(answer.data());
    for (const Program::Constant& constant : program.constants) std::fill_n(reals[constant.real].data(), lanes, constant.number);
    std::fill_n(batch.omega.data(), lanes, 2.0 * std::numbers::pi * hertz);
    std::fill_n(batch.root_hz.data(), lanes, std::sqrt(hertz));
    batch.branches = program.branches.data();
    batch.branch_count = program.branches.size();
    batch.reals = reals.data();
    batch.values = values.data();
    collapsed.active = active.size();
    collapsed.watched = watched.size();
    collapsed.z = z.data();
    collapsed.v = v.data();
    collapsed.watch = watch.data();
    collapsed.watched_siemens = watched_siemens.data();
    collapsed.reference = reference_siemens;
    collapsed.source_volts = source_volts;
    collapsed.over_source_ohms[0] = (1.0 / source_ohms).real();
    collapsed.over_source_ohms[1] = (1.0 / source_ohms).imag();
    collapsed.values = values.data();
    collapsed.y = program.branch_values.data();
    collapsed.reals = reals.data();
    collapsed.heat = program.branch_heats.data();
    collapsed.work = work.data();
    collapsed.volts = volts.data();
  }

  void write_inputs(const double* settings, std::size_t used) {
    const std::size_t knob_count = design.knobs.size();
    const auto knobs = [&](std::size_t lane) { return std::span<const double>(settings + std::min(lane, used - 1) * knob_count, knob_count); };
    for (const Program::Varying& varying : program.varying) {
      double* numbers = reals[varying.real].data();
      if (varying.knob >= 0)
        for (std::size_t lane = 0; lane < lanes; ++lane) numbers[lane] = settings[std::min(lane, used - 1) * knob_count + static_cast<std::size_t>(varying.knob)];
      else
        for (std::size_t lane = 0; lane < lanes; ++lane) numbers[lane] = varying.read(hertz, knobs(lane));
    }
    for (const Program::Given& given : program.givens)
      for (std::size_t lane = 0; lane < lanes; ++lane) {
        const ElementValue value = element_value(design, network.elements[given.element], hertz, knobs(lane));
        const Complex admittance = value.d / value.n;
        values[given.value].real()[lane] = admittance.real();
        values[given.value].imag()[lane] = admittance.imag();
        reals[given.real].data()[lane] = value.loss / std::norm(value.n);
      }
  }

  /// In the order of CollapsedBatch::answers.
  void allocate_answers(CollapsedAnswer& answer, std::size_t count) {
    answers.clear();
    for (ComplexSeries* series : {&answer.source_volts, &answer.source_amps}) {
      series->resize(count);
      answers.insert(answers.end(), {series->real(), series->imag()});
    }
    const auto add = [&](std::vector<Series>& all, std::size_t size) {
      all.resize(size);
      for (Series& series : all) {
        series.resize(count);
        answers.push_back(series.data());
      }
    };
    add(answer.watched_w, watched.size());
    add(answer.watched_volts, watched.size());
    add(answer.active_w, active.size());
    add(answer.active_volts, active.size());
    add(answer.active_amps, active.size());
  }

  /// A whole batch's answers go where they are kept.
  void run_batch(std::size_t first, std::size_t used) {
    collapsed.answers = used < lanes ? last_answers.data() : answers.data();
    collapsed.offset = used < lanes ? 0 : first;
    kernel().collapsed(collapsed);
    if (used == lanes) return;
    for (std::size_t i = 0; i < answers.size(); ++i) std::copy_n(last_answers[i], used, answers[i] + first);
  }
};

Collapsed::Collapsed(const design::Design& design, const graph::Network& network, double frequency_hz, std::span<const double> knobs,
                     const std::vector<int>& active, const std::vector<int>& watched)
    : body_(std::make_unique<Body>(design, network, frequency_hz, knobs, active, watched)) {}
Collapsed::~Collapsed() = default;
Collapsed::Collapsed(Collapsed&&) noexcept = default;
Collapsed& Collapsed::operator=(Collapsed&&) noexcept = default;

bool Collapsed::sound() const { return body_->sound; }
double Collapsed::available_w() const { return body_->available_w; }
std::complex<double> Collapsed::source_ohms() const { return body_->source_ohms; }

CollapsedPorts Collapsed::ports() const {
  const auto complex = [](const std::vector<double>& pairs) {
    std::vector<Complex> numbers;
    for (std::size_t i = 0; i + 1 < pairs.size(); i += 2) numbers.emplace_back(pairs[i], pairs[i + 1]);
    return numbers;
  };
  return {body_->active.size(),      body_->watched.size(), reference_siemens,       body_->source_volts, complex(body_->v),
          complex(body_->z), complex(body_->watch),   body_->watched_siemens};
}

void Collapsed::evaluate(const double* settings, std::size_t count, CollapsedAnswer& answer) {
  Body& body = *body_;
  body.allocate_answers(answer, count);
  for (std::size_t first = 0; first < count; first += lanes) {
    const std::size_t used = std::min(lanes, count - first);
    body.write_inputs(settings + first * body.design.knobs.size(), used);
    kernel().admittances(body.batch);
    body.run_batch(first, used);
  }
}

}  // namespace wattfall::solve
