// What the tests of this folder share: a registry with two invented cables, a model of lines and two kinds, and a
// resolver of texts that pretend to be files in the folder of the tests' data.
#pragma once

#include <string>
#include <vector>

#include "design/resolve.hpp"

namespace design_tests {

using namespace wattfall;
using namespace wattfall::design;

const host::Registry& registry();
const Catalog& catalog();

struct Resolved {
  SourcePtr source;
  Diagnostics diagnostics;
  DesignSet set;

  bool good() const { return diagnostics.empty(); }
  const Design& design() const { return set.variants.at(0); }
  const Part& part(const std::string& name) const;
  const Knob& knob(const std::string& name) const;
  std::string errors() const;  ///< as a user reads them
};

/// Parser and resolver; their diagnostics together.
Resolved resolve_text(const std::string& text, ResolveOptions options = {}, const std::string& name = "test.feed");
/// A design of one source, one load, a sweep, and these lines.
std::string with_frame(const std::string& lines);
std::filesystem::path data_folder();

}  // namespace design_tests
