// A walk's steps as rows, for every writer that shows them.
#pragma once

#include <string>
#include <vector>

#include "reading.hpp"

namespace reports {

/// A step of the document, numbered as it stands: "3", inside it "3.1".
struct WalkRow {
  std::string number;
  const Json* step = nullptr;
  std::size_t depth = 0;
};

/// The steps of a way and those inside them, in order.
std::vector<WalkRow> rows_of(const Json& way);

/// R and X of a column, each with its decimals under the other's: " 61     -j142".
class ImpedanceColumn {
 public:
  void see(const Json& impedance);
  /// "open" where it is null; else both, padded so that all are equally wide.
  std::string show(const Json& impedance) const;
  std::string head() const;

 private:
  std::size_t whole_r_ = 4, rest_r_ = 0, whole_x_ = 5, rest_x_ = 0;  ///< at least room for "open" and the heading
};

/// "61 - j142 ohm"; "open".
std::string walk_ohms(const Json& impedance);

/// What was walked, where and why; what is left aside.
std::vector<std::string> walk_head(const Json& variant);

/// Where the watts went.
std::string walk_power(const Json& variant);

inline constexpr const char* conjugate_sentence =
    "Best would be the conjugate of what lies toward the rig: the same R, and an X of the opposite sign. Then all passes that the rig has to give, less what "
    "is lost on the way.";

}  // namespace reports
