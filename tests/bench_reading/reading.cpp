// How long a netlist of 1 MiB takes to be read (parsed and resolved), against reading the same file line by line and
// doing nothing with it. What was read is checked first; then both run in turns, and the medians are compared. Graph
// and plan of the same design are timed along, without a rival.
//
// Aimed at: 40 times the lines. Measured, on a machine with other work (processor time): 74 to 81 times, parse 20 to 29 ms
// and resolve 21 to 36 ms against 0.55 to 0.8 ms; at best 1.0 us a part in each. The profile is flat: no function of ours takes
// more than 3.1 % of the run (the table of names, waiting for memory), the allocator and the C library 17 %, and the kernel 24 %,
// nearly all of it handing out pages: 32 MiB a round, for a part costs about 1 KiB of tree and design (a term is 96 bytes,
// a statement 160, a part 488). Twice as fast means half of these bytes: parts apart by their kind, terms without the
// quantity that most lack. That changes every room behind the design, and 1 MiB of netlist is read in a twentieth of a second.
#include <malloc.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <vector>

#include "design/resolve.hpp"
#include "graph/build_graph.hpp"
#include "plan/make_plan.hpp"
#include "shelf.hpp"

namespace {

using namespace wattfall;
namespace fs = std::filesystem;

constexpr std::size_t rounds = 31;

/// A ladder of parts of every sort as they stand in feed files, with a comment here and there: as much as 1 MiB holds.
std::string netlist(std::size_t& parts) {
  std::string text =
      "design \"a long ladder\"\nset q = 200\nsource rig at n0 : 100 W, 50 ohm\nsweep 7 MHz to 7.2 MHz step 10 kHz\n";
  parts = 0;
  std::size_t n = 0;
  while (text.size() < (1U << 20U) - 400) {
    const std::string here = " from n" + std::to_string(n) + " to n" + std::to_string(n + 1) + " : ";
    const std::string shunt = std::to_string(n) + " at n" + std::to_string(n + 1) + " : ";
    const std::string number = std::to_string(n);
    if (n % 4 == 0) text += "inductor L" + number + here + "0.87 uH, Q q at 7 MHz\n";
    if (n % 4 == 1) text += "line T" + number + here + "3 m of RG-213\n";
    if (n % 4 == 2) text += "resistor R" + number + here + "0.1 ohm  # a joint\n";
    if (n % 4 == 3) text += "capacitor S" + number + here + "2 * 470 pF, Q 1500, limit 1 kV\n";
    text += "capacitor C" + shunt + "67.4 pF, limit 2 kV\n";
    parts += 2;
    ++n;
  }
  text += "load wires at n" + std::to_string(n) + " : 28+j208 ohm, radiates 92 %\n";
  ++parts;
  return text;
}

std::size_t count_lines(const fs::path& path) {
  std::ifstream file(path);
  std::size_t lines = 0;
  for (std::string line; std::getline(file, line);) lines += line.empty() ? 0 : 1;
  return lines;
}

SourcePtr read_source(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::string text(fs::file_size(path), '\0');
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  return std::make_shared<const Source>(path.string(), std::move(text));
}

/// Of the processor, all of the work being done by one thread: so other work on the machine counts little.
double milliseconds(const std::function<void()>& work) {
  const std::clock_t begin = std::clock();
  work();
  return 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

struct Timing {
  const char* what;
  std::function<void()> work;
  std::function<void()> clear = [] {};  ///< what the round before has left, which is no part of the work
  std::vector<double> ms = {};

  double median() {
    std::nth_element(ms.begin(), ms.begin() + static_cast<std::ptrdiff_t>(ms.size() / 2), ms.end());
    return ms[ms.size() / 2];
  }
};

void refuse(bool bad, const std::string& why) {
  if (!bad) return;
  std::fprintf(stderr, "%s\n", why.c_str());
  std::exit(1);
}

}  // namespace

int main() {
  std::size_t parts = 0;
  const std::string text = netlist(parts);
  const std::string own = std::to_string(::getpid());  // another run of this may be under way
  const fs::path path = fs::temp_directory_path() / ("wattfall-reading-" + own + ".feed");
  std::ofstream(path, std::ios::binary) << text;
  const design::Catalog catalog(fuzz::shelf());

  Result<syntax::File> file;
  Result<design::DesignSet> set;
  Result<graph::Network> network;
  plan::Plan plan;
  std::size_t lines = 0;
  std::vector<Timing> timings = {
      {"lines by std::getline", [&] { lines = count_lines(path); }},
      {"parse", [&] { file = parse(read_source(path), catalog.vocabulary()); }, [&] { file = {}; }},
      {"resolve", [&] { set = design::resolve(*file.value, catalog, fuzz::shelf(), {}); }, [&] { set = {}; }},
      {"build the graph", [&] { network = graph::build_graph(set.value->variants.front()); }, [&] { network = {}; }},
      {"plan", [&] { plan = plan::make_plan(*network.value); }, [&] { plan = {}; }},
  };

  // Once for the answer, and to warm up.
  timings[0].work();
  refuse(lines != static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')), "lines were lost");
  timings[1].work();
  refuse(!file.ok(), render(file.diagnostics, false));
  timings[2].work();
  refuse(!set.ok(), render(set.diagnostics, false));
  refuse(set.value->variants.front().parts.size() != parts, "parts were lost");
  timings[3].work();
  refuse(!network.ok(), render(network.diagnostics, false));
  timings[4].work();

  for (std::size_t round = 0; round < rounds; ++round) {
    for (auto timing = timings.rbegin(); timing != timings.rend(); ++timing) timing->clear();
    malloc_trim(0);  // the program reads once, with a heap that nothing has been cut out of
    for (Timing& timing : timings) timing.ms.push_back(milliseconds(timing.work));
  }
  fs::remove(path);

  std::printf("%zu bytes, %zu lines, %zu parts; medians of %zu rounds in turns\n", text.size(), lines, parts, rounds);
  for (Timing& timing : timings) {
    const double median = timing.median();
    std::printf("%-24s %8.2f ms  (least %.2f)\n", timing.what, median,
                *std::min_element(timing.ms.begin(), timing.ms.end()));
  }
  std::printf("parse and resolve together take %.1f times as long as the lines\n",
              (timings[1].median() + timings[2].median()) / timings[0].median());
  return 0;
}
