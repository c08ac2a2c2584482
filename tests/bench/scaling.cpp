// How the cost of a point grows with the network: ladders and grids, a row of CSV each. Sizes up to those given: ladder
// nodes, grid side.
#include <chrono>
#include <cstdlib>
#include <iostream>

#include "cases.hpp"
#include "designs.hpp"

namespace {

using namespace wattfall;
using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

/// Bytes in use, from the kernel's books of this process.
double resident_bytes() {
  std::FILE* file = std::fopen("/proc/self/statm", "r");
  long total = 0, resident = 0;
  if (file == nullptr) return 0.0;
  if (std::fscanf(file, "%ld %ld", &total, &resident) != 2) resident = 0;
  std::fclose(file);
  return static_cast<double>(resident) * 4096.0;
}

void measure(const char* kind, const design::Design& design, std::size_t repetitions) {
  Result<graph::Network> built = graph::build_graph(design);
  for (const Diagnostic& diagnostic : built.diagnostics) throw std::runtime_error(diagnostic.text);
  const graph::Network& network = *built.value;
  const Clock::time_point planned = Clock::now();
  const plan::Plan plan = plan::make_plan(network);
  const double plan_s = seconds_since(planned);
  const double before = resident_bytes();
  const Clock::time_point compiled = Clock::now();
  solve::Solver solver(design, network, plan);
  const double compile_s = seconds_since(compiled);
  solve::Solution solution;
  solve::States states;
  for (double hertz : bench::frequencies(16)) states.add(hertz, {});
  std::vector<double> seconds;
  for (std::size_t i = 0; i < repetitions; ++i) {
    const Clock::time_point start = Clock::now();
    solver.run(states, solution, solve::Keep::figures);
    seconds.push_back(seconds_since(start) / 16.0);
  }
  std::sort(seconds.begin(), seconds.end());
  const double used = resident_bytes() - before;
  std::cout << kind << ',' << plan.unknowns << ',' << seconds[seconds.size() / 2] * 1e9 << ',' << plan.operations.size()
            << ',' << used / plan.unknowns << ',' << plan_s << ',' << compile_s << ',' << solution.robust_count()
            << std::endl;
}

}  // namespace

int main(int argc, char** argv) {
  const std::size_t most_nodes = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 100000;
  const std::size_t most_side = argc > 2 ? std::strtoul(argv[2], nullptr, 10) : 100;
  const test::Feed small(bench::ladder(4));
  std::cout << "kind,unknowns,ns_per_point,operations,bytes_per_unknown,plan_s,compile_s,robust_states\n";
  for (std::size_t n : {10, 30, 100, 300, 1000, 3000, 10000, 30000, 100000})
    if (n <= most_nodes) measure("ladder", bench::ladder(small.design, n), n > 3000 ? 9 : 101);
  for (std::size_t side : {4, 6, 10, 16, 25, 40, 63, 100, 160})
    if (side <= most_side) measure("grid", bench::grid(small.design, side), side > 30 ? 9 : 101);
}
