// Whether a model's figures may be believed: a verdict and a sentence that names the figure which is outside. A model
// never throws; an impossible geometry gives NaN and says why, one outside the model's range gives its best figure.
#pragma once

#include <string>

namespace wattfall::physics {

enum class Verdict {
  inside,     ///< within the range of validity stated in the README
  outside,    ///< computed, but a warning is due
  impossible  ///< no such thing: sizes not positive, a wire thicker than its spacing, a dielectric below 1
};

struct Validity {
  Verdict verdict = Verdict::inside;
  std::string sentence;  ///< empty while inside; several findings are joined by "; "

  bool inside() const { return verdict == Verdict::inside; }
  bool possible() const { return verdict != Verdict::impossible; }

  /// Unless `fine`, the verdict falls to `fall` and the text joins the sentence, its "{}" replaced by the figure.
  Validity& expect(bool fine, Verdict fall, const char* text, double figure);
  /// A size that must be above zero (NaN is not): impossible otherwise. `what` is its name, as "wire diameter".
  Validity& expect_positive(const char* what, double figure);
  /// Joins another model's findings.
  Validity& join(const Validity& other);
};

}  // namespace wattfall::physics
