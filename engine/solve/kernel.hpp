// The compiled program run over one batch of states. Private to the room. One source (kernel.cpp), built once for each instruction
// set; `kernel()` picks the widest that the machine has.
#pragma once

#include "lanes.hpp"
#include "program.hpp"

namespace wattfall::solve {

/// Plain pointers into a Program and a workspace: what a kernel sees. The kernels call no library code, so that nothing built for a wide
/// instruction set can leak into the rest of the program.
struct Batch {
  const Program* program;
  // Program's lists, as pointers.
  const BranchCode* branches;
  const LineCode* lines;
  const Gather* gathers;
  const GatherTerm* terms;
  const Step* steps;
  const Chunk* chunks;
  const Scale* scales;
  const Update* updates;
  const Back* backs;
  const Coupled* coupled;
  const NodeCode* nodes;
  const BranchFlow* branch_flows;
  const LineFlow* line_flows;
  const FlowCode* flows;
  const MergedCode* merged;
  const CurrentTerm* currents_of_merged;
  std::size_t branch_count, line_count, gather_count, step_count, chunk_count, node_code_count, branch_flow_count, line_flow_count, flow_count, merged_count;
  std::uint32_t source_node, source_other, source_value, source_x, other_x, source_weight, other_weight;

  // The states' inputs.
  LaneReal omega, root_hz, source_ohms_re, source_ohms_im, available_w, source_volts;

  // Tables of the workspace.
  LaneReal* reals;
  LaneComplex* values;
  LaneComplex* entries;
  LaneComplex* factors;
  LaneComplex* inverses;
  LaneReal* rows;      ///< by place of a row: floor^2 times the square of the row's largest entry
  LaneComplex* volts;  ///< by node, then the currents that are unknowns
  LaneComplex* amps;   ///< by place of amps
  bool keep_amps;      ///< of branches and lines; else only what follows from them is kept
  /// Where the batch's heat goes, by place of heat; and the larger end's volts and amps by element, or null. `offset` is added to each.
  double* const* heat;
  double* const* volts_peak;
  double* const* amps_rms;
  std::size_t offset;
  LaneComplex source_amps;
  LaneReal imbalance;  ///< |available - returned - heat| / available
  /// All bits set in a flagged lane.
  VectorMask bad_pivot[pieces], bad_line[pieces], bad_branch[pieces];
};

/// A network reduced to the ports of the branches that change (see collapse.hpp), over a batch of states. Constants are [re, im] pairs.
struct CollapsedBatch {
  std::size_t active, watched;
  const double* z;        ///< active x active: volts at port p from 1 A into port q, all active branches at `reference`
  const double* v;        ///< active: volts at the ports, the source working
  const double* watch;    ///< (1 + watched) x (1 + active): volts at the source's port and across watched branches: working, then from 1 A into each port
  const double* watched_siemens;  ///< watched: heat per |V|^2
  double reference;               ///< siemens
  double source_volts, over_source_ohms[2];  ///< E, 1/Zs
  const LaneComplex* values;      ///< the branches' admittances stand at `y` of it
  const std::uint32_t* y;         ///< active
  const LaneReal* reals;          ///< and their heat per |V|^2 at `heat` of it
  const std::uint32_t* heat;      ///< active
  LaneComplex* work;              ///< active x (active + 2): the equations, then the admittances less the reference
  LaneComplex* volts;             ///< active
  /// Where answers go: [re, im] of the source's volts and amps, watched heat, watched volts, active heat, active volts, active amps; `offset` is added to each.
  double* const* answers;
  std::size_t offset;
};

struct Kernel {
  const char* name;
  /// Admittances, elimination, substitution, currents, heat, balance.
  void (*run)(Batch& batch);
  /// With the factors of the last run: 1 A into the node whose volts are `weight` (nowhere: 1) times those at `x`, the source silent. Writes volts, amps
  /// and source_amps, and leaves the heat alone.
  void (*probe)(Batch& batch, std::uint32_t node, std::uint32_t x, std::uint32_t weight);
  /// Parts of `run` for measurements, on admittances that are there: all entries of the matrix, one over the other where they share a place; entries and
  /// elimination.
  void (*gather)(Batch& batch);
  void (*eliminate)(Batch& batch);
  /// The branches' admittances alone.
  void (*admittances)(Batch& batch);
  /// Volts of a collapsed network: (1 + Z D) V = V0 with D the branches' admittances less the reference, by elimination without
  /// pivoting. A lane in which that fails gives numbers that are not finite.
  void (*collapsed)(CollapsedBatch& batch);
  /// sin, cos, sinh, cosh of lanes, for tests.
  void (*functions)(const double* x, double* sine, double* cosine, double* sinh, double* cosh);
};

namespace baseline {
extern const Kernel kernel;
}
#if defined(__x86_64__)
namespace v3 {
extern const Kernel kernel;
}
namespace v4 {
extern const Kernel kernel;
}
#endif

/// The widest kernel this machine can run; or the one named ("baseline", "v3", "v4") if it can, else null.
const Kernel& kernel();
const Kernel* kernel_named(const char* name);

}  // namespace wattfall::solve
