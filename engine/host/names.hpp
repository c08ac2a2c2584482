// How the names of registered things compare: cables without regard to case, hyphens and blanks, all others letter by
// letter.
#pragma once

#include <string>
#include <string_view>

#include "wattfall/sdk.hpp"

namespace wattfall::host {

/// The name in lower case (ASCII) without hyphens and blanks: "RG-58 C" gives "rg58c".
inline std::string folded(std::string_view name) {
  std::string result;
  for (const char letter : name) {
    if (letter == '-' || letter == ' ' || letter == '\t') continue;
    result += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  }
  return result;
}

/// What two things of one sort must not share.
template <class Thing>
std::string key_of(const Thing& thing) {
  return thing.name;
}
inline std::string key_of(const sdk::Cable& cable) {
  return folded(cable.name);
}

/// What a thing is called in messages.
inline const char* word_for(const sdk::Kind&) {
  return "kind";
}
inline const char* word_for(const sdk::Cable&) {
  return "cable";
}
inline const char* word_for(const sdk::LineModel&) {
  return "line-loss model";
}
inline const char* word_for(const sdk::Optimizer&) {
  return "optimizer";
}
inline const char* word_for(const sdk::Writer&) {
  return "writer";
}
inline const char* word_for(const sdk::TunerForm&) {
  return "tuner form";
}

}  // namespace wattfall::host
