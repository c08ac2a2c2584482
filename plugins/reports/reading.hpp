// Reads the result document without trust: a key that is missing or of another type reads as nothing, so that a report
// of an older or newer document still comes out. Text is made safe to print.
#pragma once

#include <cstddef>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace reports {

using Json = nlohmann::json;

/// The value of a key or at an index; null where there is none.
const Json& member(const Json& object, const char* key);
const Json& item(const Json& array, std::size_t index);

/// The array of a key; an empty one where there is none.
const Json& list(const Json& object, const char* key);

/// NaN where it is no number.
double number(const Json& value);
inline double number(const Json& object, const char* key) {
  return number(member(object, key));
}
inline double number_at(const Json& object, const char* key, std::size_t index) {
  return number(item(member(object, key), index));
}

std::size_t count(const Json& object, const char* key);
bool flag(const Json& object, const char* key);

/// As it stands in the document.
std::string raw_text(const Json& value);
/// Safe to print: control and direction-changing characters as `?`.
std::string text(const Json& object, const char* key);
std::string text(const Json& value);

/// The first key of an object that begins with `prefix`: "value_f" for "value". Empty where there is none.
std::string key_with_prefix(const Json& object, std::string_view prefix);

}  // namespace reports
