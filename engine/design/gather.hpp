// The statements of a file sorted by what they are for: those outside every variant, and each variant's. Included files
// are brought in where they are named.
#pragma once

#include <string>
#include <vector>

#include "complaints.hpp"
#include "files.hpp"
#include "grammar/syntax.hpp"

namespace wattfall::design {

struct Level {
  const syntax::Word* name = nullptr;  ///< of the variant; none: the file's own
  std::vector<const syntax::Statement*> parts;       ///< part statements, which are nearly all of a large file
  std::vector<const syntax::Statement*> statements;  ///< all others
  std::size_t bytes = 0;                             ///< of their text, a box's with its body
};

struct Gathered {
  const syntax::Word* title = nullptr;
  Level common;
  std::vector<Level> variants;
};

Gathered gather(const syntax::File& file, Files& files, Complaints& complaints);

}  // namespace wattfall::design
