#include <algorithm>
#include <cmath>
#include <memory>

#include "design/resolve.hpp"
#include "shelf.hpp"
#include "targets.hpp"

namespace wattfall::fuzz {
namespace {

const design::Catalog& catalog() {
  static const design::Catalog all(shelf());
  return all;
}

/// Included files and measurements are looked for where the examples lie, which have some of each.
const std::filesystem::path& folder() {
  static const std::filesystem::path path = WATTFALL_EXAMPLES;
  return path;
}

struct Input {
  design::ResolveOptions options;
  std::string_view text;
};

/// 0x80 in the first byte says that there are options, its other bits which: 1 as written, 2 --at, 4 --sweep, 8 --set,
/// 16 --variant, 32 another folder is allowed too. What they say is the first line, for `--set` split at its `=`.
Input options_of(std::string_view bytes) {
  Input input{{}, bytes};
  input.options.folder = folder();
  if (bytes.empty() || (static_cast<unsigned char>(bytes[0]) & 0x80U) == 0) return input;
  const auto bits = static_cast<unsigned char>(bytes[0]);
  const std::size_t line_end = std::min(bytes.find('\n'), bytes.size());
  const std::string line(bytes.substr(1, line_end - 1));
  input.text = bytes.substr(std::min(line_end + 1, bytes.size()));
  input.options.as_written = (bits & 1U) != 0;
  if ((bits & 2U) != 0) input.options.at = {line, "7 MHz"};
  if ((bits & 4U) != 0) input.options.sweep = line;
  if ((bits & 8U) != 0) {
    const std::size_t sign = std::min(line.find('='), line.size());
    input.options.settings = {{line.substr(0, sign), line.substr(std::min(sign + 1, line.size()))}};
  }
  if ((bits & 16U) != 0) input.options.variant = line;
  if ((bits & 32U) != 0) input.options.allow = {folder() / "parts"};
  return input;
}

void check_part(const design::Design& design, const design::Part& part) {
  promise(!part.name.empty() && !part.terminals.empty(), "a part has a name and terminals");
  for (const design::NodeId node : part.terminals)
    promise(node.index >= 0 && static_cast<std::size_t>(node.index) < design.nodes.size(), "a terminal is a node");
}

void check_knob(const design::Knob& knob) {
  promise(!knob.choices.empty() || (std::isfinite(knob.lower) && knob.lower <= knob.upper && std::isfinite(knob.upper)),
          "a knob has finite ends in order");
  promise(std::is_sorted(knob.choices.begin(), knob.choices.end()), "a knob's choices rise");
}

void check_design(const design::Design& design) {
  promise(!design.nodes.empty() && design.nodes[0].name == "ground", "node 0 is ground");
  promise(!design.frequencies_hz.empty(), "a design has a point");
  double before = 0.0;
  for (const double hertz : design.frequencies_hz) {
    promise(std::isfinite(hertz) && hertz > before, "the points rise and are finite");
    before = hertz;
  }
  for (const design::Part& part : design.parts) check_part(design, part);
  for (const design::Knob& knob : design.knobs) check_knob(knob);
  promise(design.starting_knobs().size() == design.knobs.size(), "every knob starts somewhere");
}

}  // namespace

void feed_resolve(std::string_view bytes) {
  const Input input = options_of(bytes);
  const auto source = std::make_shared<const Source>("fuzz.feed", std::string(input.text));
  static const Vocabulary vocabulary = catalog().vocabulary();
  Result<syntax::File> file = parse(source, vocabulary);
  // A tree with mistakes in it is resolved too, as the program does: what could be read is looked at.
  const Result<design::DesignSet> set = design::resolve(*file.value, catalog(), shelf(), input.options);
  check_diagnostics(set.diagnostics, bytes.size());
  promise(set.value.has_value() == set.diagnostics.empty(), "a set of designs, or reasons why there is none");
  if (!set.value || !file.ok()) return;
  promise(!set.value->variants.empty(), "there is a variant");
  for (const design::Design& design : set.value->variants) check_design(design);
}

}  // namespace wattfall::fuzz
