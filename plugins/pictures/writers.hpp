// The writers: the document in, the whole picture or page out.
#pragma once

#include <string>

#include "reading.hpp"

namespace pictures {

using reports::Json;

std::string write_drawing(const Json& document);
std::string write_page(const Json& document);

}  // namespace pictures
