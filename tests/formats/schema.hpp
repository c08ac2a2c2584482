// The repo's JSON Schema, and JUnit's XSD, asked of a text. An empty answer: it is valid.
#pragma once

#include <string>

namespace formats {

std::string schema_faults(const std::string& json);
std::string junit_faults(const std::string& xml);

}  // namespace formats
