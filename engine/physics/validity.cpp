// Sentences of findings, built only where something is wrong.
#include "physics/validity.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace wattfall::physics {
namespace {

std::string with_figure(std::string text, double figure) {
  const auto hole = text.find("{}");
  if (hole == std::string::npos) return text;
  std::array<char, 32> room = {};
  std::snprintf(room.data(), room.size(), "%.4g", figure);
  return text.replace(hole, 2, room.data());
}

void fall_to(Validity& validity, Verdict verdict, const std::string& text) {
  validity.verdict = std::max(validity.verdict, verdict);
  if (!validity.sentence.empty()) validity.sentence += "; ";
  validity.sentence += text;
}

}  // namespace

Validity& Validity::expect(bool fine, Verdict fall, const char* text, double figure) {
  if (!fine) fall_to(*this, fall, with_figure(text, figure));
  return *this;
}

Validity& Validity::expect_positive(const char* what, double figure) {
  if (!(figure > 0.0) || std::isinf(figure))
    fall_to(*this, Verdict::impossible, with_figure(std::string(what) + " is {}, and must be above zero", figure));
  return *this;
}

Validity& Validity::join(const Validity& other) {
  if (!other.inside()) fall_to(*this, other.verdict, other.sentence);
  return *this;
}

}  // namespace wattfall::physics
