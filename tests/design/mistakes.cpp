#include "mistakes.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "bench_design.hpp"

namespace design_tests {

void check(const Mistake& mistake) {
  const std::string text = mistake.text;
  const Resolved resolved = resolve_text(mistake.whole ? text : with_frame(text));
  const std::string frame = mistake.whole ? "" : with_frame("");
  const int before = mistake.whole ? 0 : static_cast<int>(std::count(frame.begin(), frame.end(), '\n')) - 1;
  INFO(text << '\n' << resolved.errors());
  REQUIRE(resolved.diagnostics.size() == mistake.shown.size());
  for (std::size_t i = 0; i < mistake.shown.size(); ++i) {
    const Diagnostic& found = resolved.diagnostics[i];
    const Shown& due = mistake.shown[i];
    CHECK(found.code == due.code);
    CHECK(std::string(found.span.text()) == due.underlined);
    if (found.span.source == nullptr) continue;
    const Position position = found.span.source->position(found.span.begin);
    CHECK(position.line - before == due.line);
    CHECK(position.column == due.column);
    CHECK_FALSE(found.text.empty());
  }
}

}  // namespace design_tests
