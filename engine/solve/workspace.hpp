// A program's tables for one batch of states, and the Batch that points into them: a thread's own. Private to the room, to its tests and to
// benchmarks.
#pragma once

#include <algorithm>
#include <span>
#include <vector>

#include "kernel.hpp"
#include "lane_memory.hpp"

namespace wattfall::solve {

struct Workspace {
  explicit Workspace(const Program& compiled)
      : program(compiled), memory(sizeof(LaneReal) * (compiled.real_count + compiled.row_count) +
                                  sizeof(LaneComplex) * (compiled.value_count + compiled.entry_count + compiled.factor_count + compiled.steps.size() +
                                                         compiled.node_count + compiled.unknowns + compiled.amps_count)) {
    place(reals, program.real_count);
    place(values, program.value_count);
    place(entries, program.entry_count);
    place(factors, program.factor_count);
    place(inverses, program.steps.size());
    place(rows, program.row_count);
    // Never written: ground, and sections of it.
    place(volts, program.node_count + program.unknowns);
    place(amps, program.amps_count);
    for (const Program::Constant& constant : program.constants) std::fill_n(reals[constant.real].data(), lanes, constant.number);
    for (const Program::FixedValue& fixed : program.fixed_values) {
      std::fill_n(values[fixed.value].real(), lanes, fixed.number.real());
      std::fill_n(values[fixed.value].imag(), lanes, fixed.number.imag());
    }
    describe();
  }
  Workspace(const Workspace&) = delete;
  Workspace& operator=(const Workspace&) = delete;

  /// Answers go to tables here, made when they are first needed.
  void answer_here(bool with_figures) {
    if (heat_here.empty()) make_room_for_answers();
    batch.heat = heat_here.data();
    batch.volts_peak = with_figures ? volts_peak_here.data() : nullptr;
    batch.amps_rms = with_figures ? amps_rms_here.data() : nullptr;
    batch.offset = 0;
  }

  const Program& program;
  LaneMemory memory;
  Batch batch{};
  std::span<LaneReal> reals, rows;
  std::span<LaneComplex> values, entries, factors, inverses, volts, amps;
  std::vector<LaneReal> heat, figures;
  std::vector<double*> heat_here, volts_peak_here, amps_rms_here;

 private:
  template <class Table>
  void place(std::span<Table>& table, std::size_t count) {
    static_assert(sizeof(Table) % 64 == 0);
    table = {reinterpret_cast<Table*>(memory.data() + placed_), count};
    placed_ += count * sizeof(Table);
  }

  void make_room_for_answers() {
    heat.resize(program.heat_count);
    figures.resize(2 * program.element_count);
    for (LaneReal& real : heat) heat_here.push_back(real.data());
    for (std::size_t e = 0; e < program.element_count; ++e) {
      volts_peak_here.push_back(figures[2 * e].data());
      amps_rms_here.push_back(figures[2 * e + 1].data());
    }
  }

  void describe() {
    batch.branches = program.branches.data();
    batch.lines = program.lines.data();
    batch.gathers = program.gathers.data();
    batch.terms = program.terms.data();
    batch.steps = program.steps.data();
    batch.chunks = program.chunks.data();
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
    batch.chunk_count = program.chunks.size();
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
  }

  std::size_t placed_ = 0;
};

}  // namespace wattfall::solve
