// Writing SVG and HTML: escaped text and short numbers. Names come from files that others may have written, so
// everything that is text goes through `escape`.
#pragma once

#include <string>
#include <string_view>

namespace pictures {

/// For text and for quoted attributes: & < > " ' as references. What XML forbids, and what turns the direction of
/// reading, becomes `?`.
std::string escape(std::string_view text);

/// A coordinate: two decimals at most, "-0" as "0".
std::string coordinate(double value);

/// The shortest digits that read back the same; "null" where it does not exist.
std::string exact(double value);

}  // namespace pictures
