// Null is what a missing key reads as. What a terminal could take for a command, or what would turn the direction of
// reading, never gets through `text`.
#include "reading.hpp"

#include <limits>

#include "code_points.hpp"

namespace reports {
namespace {

const Json null_value;
const Json empty_list = Json::array();

bool harmless(char32_t c) {
  const bool control = c < 0x20 || (c >= 0x7F && c < 0xA0);
  const bool invisible = (c >= 0x200B && c <= 0x200F) || (c >= 0x2028 && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) ||
                         c == 0xFEFF || c == 0x061C;
  return !control && !invisible;
}

}  // namespace

const Json& member(const Json& object, const char* key) {
  if (!object.is_object()) return null_value;
  const auto found = object.find(key);
  return found == object.end() ? null_value : *found;
}

const Json& item(const Json& array, std::size_t index) {
  return array.is_array() && index < array.size() ? array[index] : null_value;
}

const Json& list(const Json& object, const char* key) {
  const Json& value = member(object, key);
  return value.is_array() ? value : empty_list;
}

double number(const Json& value) {
  return value.is_number() ? value.get<double>() : std::numeric_limits<double>::quiet_NaN();
}

std::size_t count(const Json& object, const char* key) {
  const Json& value = member(object, key);
  return value.is_number_unsigned() ? value.get<std::size_t>() : 0;
}

bool flag(const Json& object, const char* key) {
  const Json& value = member(object, key);
  return value.is_boolean() && value.get<bool>();
}

std::string raw_text(const Json& value) {
  return value.is_string() ? value.get<std::string>() : "";
}

std::string text(const Json& value) {
  const std::string raw = raw_text(value);
  std::string safe;
  std::string_view rest = raw;
  while (!rest.empty()) {
    const std::size_t length = code_point_length(rest);
    if (harmless(code_point(rest.substr(0, length)))) {
      safe += rest.substr(0, length);
    } else {
      safe += '?';
    }
    rest.remove_prefix(length);
  }
  return safe;
}

std::string text(const Json& object, const char* key) {
  return text(member(object, key));
}

std::string key_with_prefix(const Json& object, std::string_view prefix) {
  if (!object.is_object()) return "";
  for (const auto& [key, value] : object.items()) {
    if (key.starts_with(prefix)) return key;
  }
  return "";
}

}  // namespace reports
