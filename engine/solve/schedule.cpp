#include "schedule.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <vector>

namespace wattfall::solve {
namespace {

/// Steps in a chunk: enough that its loops pay, and few enough that their tables stay in the first caches.
constexpr std::size_t steps_in_chunk = 16;

class Scheduler {
 public:
  explicit Scheduler(Program& program) : program_(program) {}

  void schedule() {
    part_steps();
    find_columns();
    find_first_touch();
    order_gathers();
    order_admittances();
    find_places();
    move();
  }

 private:
  std::size_t chunk_count() const { return program_.chunks.size(); }

  /// Panels stay whole.
  void part_steps() {
    chunk_of_step_.resize(program_.steps.size());
    for (std::size_t i = 0, begin = 0; i < program_.steps.size();) {
      const std::size_t next = i + program_.steps[i].panel;
      std::fill(chunk_of_step_.begin() + static_cast<std::ptrdiff_t>(i), chunk_of_step_.begin() + static_cast<std::ptrdiff_t>(next), chunk_count());
      i = next;
      if (i - begin < steps_in_chunk && i < program_.steps.size()) continue;
      program_.chunks.push_back({.branches = 0, .lines = 0, .gathers = 0, .steps = static_cast<std::uint32_t>(i)});
      begin = i;
    }
  }

  /// A step's column stands in one piece: its diagonal and what is below and beside it.
  static std::uint32_t size_of(const Step& step) { return 1 + step.scale_count; }

  void find_columns() {
    step_of_slot_.resize(program_.entry_count);
    step_of_unknown_.resize(program_.unknowns);
    for (std::size_t i = 0; i < program_.steps.size(); ++i) {
      const Step& step = program_.steps[i];
      step_of_unknown_[step.unknown] = i;
      std::fill_n(step_of_slot_.begin() + step.pivot, size_of(step), i);
    }
  }

  /// The first chunk that needs an entry. Each is needed by its own column's step at the latest.
  void find_first_touch() {
    touch_.assign(program_.entry_count, nowhere);
    for (std::size_t i = 0; i < program_.steps.size(); ++i) {
      const Step& step = program_.steps[i];
      const auto chunk = static_cast<std::uint32_t>(chunk_of_step_[i]);
      const auto touch = [&](std::uint32_t slot) { touch_[slot] = std::min(touch_[slot], chunk); };
      for (std::uint32_t slot = step.pivot; slot < step.pivot + size_of(step); ++slot) touch(slot);
      for (std::uint32_t u = step.first_update; u < step.first_update + step.update_count; ++u) touch(program_.updates[u].entry);
    }
  }

  /// `of_chunk(i)`: the chunk that needs the i-th thing of a list. Gives their order and how many of them are before each chunk's end.
  template <class OfChunk>
  std::vector<std::uint32_t> order_by_chunk(std::size_t count, OfChunk of_chunk, std::uint32_t Chunk::* end) {
    std::vector<std::uint32_t> order(count);
    std::iota(order.begin(), order.end(), 0u);
    std::stable_sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) { return of_chunk(a) < of_chunk(b); });
    std::size_t at = 0;
    for (std::size_t c = 0; c < chunk_count(); ++c) {
      while (at < count && of_chunk(order[at]) <= c) ++at;
      program_.chunks[c].*end = static_cast<std::uint32_t>(at);
    }
    // What no entry needs is still asked for by what flows.
    if (!program_.chunks.empty()) program_.chunks.back().*end = static_cast<std::uint32_t>(count);
    return order;
  }

  template <class Item>
  static void put_in_order(std::vector<Item>& items, const std::vector<std::uint32_t>& order) {
    std::vector<Item> ordered;
    ordered.reserve(items.size());
    for (std::uint32_t i : order) ordered.push_back(items[i]);
    items = std::move(ordered);
  }

  /// Within a chunk diagonals first: the pivot test's measure of a row starts with its own. (An entry beside one is not needed before it: what updates the
  /// one updates the other.)
  void order_gathers() {
    std::stable_partition(program_.gathers.begin(), program_.gathers.end(), [](const Gather& gather) { return gather.diagonal; });
    const auto order = order_by_chunk(program_.gathers.size(), [&](std::uint32_t g) { return touch_[program_.gathers[g].slot]; }, &Chunk::gathers);
    put_in_order(program_.gathers, order);
  }

  void order_admittances() {
    std::vector<std::uint32_t> needed(program_.value_count, nowhere);
    for (const Gather& gather : program_.gathers)
      for (std::uint32_t t = gather.first; t < gather.first + gather.count; ++t)
        needed[program_.terms[t].value] = std::min(needed[program_.terms[t].value], touch_[gather.slot]);
    put_in_order(program_.branches, order_by_chunk(program_.branches.size(), [&](std::uint32_t b) { return needed[program_.branches[b].value]; }, &Chunk::branches));
    const auto of_line = [&](std::uint32_t l) { return std::min(needed[program_.lines[l].value], needed[program_.lines[l].value + 1]); };
    const auto lines = order_by_chunk(program_.lines.size(), of_line, &Chunk::lines);
    put_in_order(program_.lines, lines);
    put_in_order(program_.make_of_line, lines);
    std::vector<std::uint32_t> place(lines.size());
    for (std::uint32_t l = 0; l < lines.size(); ++l) place[lines[l]] = l;
    for (std::uint32_t& line : program_.line_of_element)
      if (line != nowhere) line = place[line];
  }

  /// Columns take places that others of their size have left, or new ones.
  void find_places() {
    std::vector<std::vector<std::size_t>> come(chunk_count()), go(chunk_count());
    for (std::size_t i = 0; i < program_.steps.size(); ++i) {
      const Step& step = program_.steps[i];
      come[*std::min_element(touch_.begin() + step.pivot, touch_.begin() + step.pivot + size_of(step))].push_back(i);
      go[chunk_of_step_[i]].push_back(i);
    }
    place_of_step_.resize(program_.steps.size());
    row_of_step_.resize(program_.steps.size());
    std::map<std::uint32_t, std::vector<std::uint32_t>> left;
    std::vector<std::uint32_t> left_rows;
    const auto take = [](std::vector<std::uint32_t>& free, std::uint32_t& end, std::uint32_t size) {
      if (free.empty()) {
        end += size;
        return end - size;
      }
      const std::uint32_t place = free.back();
      free.pop_back();
      return place;
    };
    program_.entry_count = program_.row_count = 0;
    for (std::size_t c = 0; c < chunk_count(); ++c) {
      for (std::size_t i : come[c]) {
        const std::uint32_t size = size_of(program_.steps[i]);
        place_of_step_[i] = take(left[size], program_.entry_count, size);
        row_of_step_[i] = take(left_rows, program_.row_count, 1);
      }
      for (std::size_t i : go[c]) {
        left[size_of(program_.steps[i])].push_back(place_of_step_[i]);
        left_rows.push_back(row_of_step_[i]);
      }
    }
  }

  void move() {
    std::vector<std::uint32_t> old_pivot;
    for (const Step& step : program_.steps) old_pivot.push_back(step.pivot);
    const auto move_slot = [&](std::uint32_t& slot) {
      const std::size_t step = step_of_slot_[slot];
      slot = place_of_step_[step] + (slot - old_pivot[step]);
    };
    const auto row_of = [&](std::uint32_t unknown) { return row_of_step_[step_of_unknown_[unknown]]; };
    for (Gather& gather : program_.gathers) {
      move_slot(gather.slot);
      for (std::uint32_t& row : gather.rows)
        if (row != nowhere) row = row_of(row);
    }
    for (Scale& scale : program_.scales) move_slot(scale.entry);
    for (Update& update : program_.updates) {
      move_slot(update.entry);
      move_slot(update.other);
    }
    for (std::size_t i = 0; i < program_.steps.size(); ++i) {
      Step& step = program_.steps[i];
      move_slot(step.pivot);
      step.row = row_of_step_[i];
    }
  }

  Program& program_;
  std::vector<std::size_t> chunk_of_step_, step_of_slot_, step_of_unknown_;
  std::vector<std::uint32_t> touch_, place_of_step_, row_of_step_;
};

}  // namespace

void schedule(Program& program) { Scheduler(program).schedule(); }

}  // namespace wattfall::solve
