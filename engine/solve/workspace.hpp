// A program's tables for one batch of states, and the Batch that points into them: a thread's own. Private to the room, to its tests and to
// benchmarks.
#pragma once

#include <algorithm>
#include <vector>

#include "kernel.hpp"

namespace wattfall::solve {

struct Workspace {
  explicit Workspace(const Program& compiled) : program(compiled) {
    reals.resize(program.real_count);
    values.resize(program.value_count);
    entries.resize(program.entry_count);
    factors.resize(program.factor_count);
    inverses.resize(program.steps.size());
    rows.resize(program.unknowns);
    // Never written: ground, and sections of it.
    volts.resize(program.node_count + program.unknowns);
    amps.resize(program.amps_count);
    heat.resize(program.heat_count);
    figures.resize(2 * program.element_count);
    for (const Program::Constant& constant : program.constants) std::fill_n(reals[constant.real].data(), lanes, constant.number);
    for (const Program::FixedValue& fixed : program.fixed_values) {
      std::fill_n(values[fixed.value].real(), lanes, fixed.number.real());
      std::fill_n(values[fixed.value].imag(), lanes, fixed.number.imag());
    }
    for (LaneReal& real : heat) heat_here.push_back(real.data());
    for (std::size_t e = 0; e < program.element_count; ++e) {
      volts_peak_here.push_back(figures[2 * e].data());
      amps_rms_here.push_back(figures[2 * e + 1].data());
    }
    describe();
  }
  Workspace(const Workspace&) = delete;
  Workspace& operator=(const Workspace&) = delete;

  /// Answers go to the tables here.
  void answer_here(bool with_figures) {
    batch.heat = heat_here.data();
    batch.volts_peak = with_figures ? volts_peak_here.data() : nullptr;
    batch.amps_rms = with_figures ? amps_rms_here.data() : nullptr;
    batch.offset = 0;
  }

  const Program& program;
  Batch batch{};
  std::vector<LaneReal> reals, rows, heat, figures;
  std::vector<LaneComplex> values, entries, factors, inverses, volts, amps;
  std::vector<double*> heat_here, volts_peak_here, amps_rms_here;

 private:
  void describe() {
    batch.branches = program.branches.data();
    batch.lines = program.lines.data();
    batch.gathers = program.gathers.data();
    batch.terms = program.terms.data();
    batch.steps = program.steps.data();
    batch.scales = program.scales.data();
    batch.updates = program.updates.data();
    batch.backs = program.backs.data();
    batch.coupled = program.coupled.data();
    batch.nodes = program.nodes.data();
    batch.branch_flows = program.branch_flows.data();
    batch.line_flows = program.line_flows.data();
    batch.flows = program.flows.data();
    batch.merged = program.merged.data();
    batch.currents_of_merged = program.currents.data();
    batch.branch_count = program.branches.size();
    batch.line_count = program.lines.size();
    batch.gather_count = program.gathers.size();
    batch.step_count = program.steps.size();
    batch.node_code_count = program.nodes.size();
    batch.branch_flow_count = program.branch_flows.size();
    batch.line_flow_count = program.line_flows.size();
    batch.flow_count = program.flows.size();
    batch.merged_count = program.merged.size();
    batch.source_node = program.source_node;
    batch.source_other = program.source_other;
    batch.source_value = program.source_value;
    batch.source_x = program.source_x;
    batch.other_x = program.other_x;
    batch.source_weight = program.source_weight;
    batch.other_weight = program.other_weight;
    batch.reals = reals.data();
    batch.values = values.data();
    batch.entries = entries.data();
    batch.factors = factors.data();
    batch.inverses = inverses.data();
    batch.rows = rows.data();
    batch.volts = volts.data();
    batch.amps = amps.data();
    batch.keep_amps = true;
    answer_here(false);
  }
};

}  // namespace wattfall::solve
