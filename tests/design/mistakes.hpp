// A text with mistakes, and where each is shown: the code, line and column from 1, and the text underlined.
#pragma once

#include <string>
#include <vector>

namespace design_tests {

struct Shown {
  std::string code;
  int line;
  int column;
  std::string underlined;
};

struct Mistake {
  const char* text;
  std::vector<Shown> shown;  ///< sorted by place; all of them
  bool whole = false;        ///< has a source, a load and a sweep of its own, or lacks them on purpose
};

void check(const Mistake& mistake);

}  // namespace design_tests
