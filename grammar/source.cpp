// Finds the lines of a text once, so that every later question "where is byte n?" is a search in a short table.
// In: a name and the bytes. Out: lines and positions as people count them.
#include "grammar/source.hpp"

#include <algorithm>
#include <utility>

namespace wattfall {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool starts_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
}

}  // namespace

Source::Source(std::string name, std::string text) : name_(std::move(name)), text_(std::move(text)) {
  // A byte order mark is no part of the first line, or its columns would all be off by one.
  line_starts_.push_back(text_.starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
  for (std::size_t at = text_.find('\n'); at != std::string::npos; at = text_.find('\n', at + 1)) {
    line_starts_.push_back(at + 1);
  }
}

Position Source::position(std::size_t offset) const {
  offset = std::clamp(offset, line_starts_.front(), text_.size());
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const std::size_t start = *(after - 1);
  const auto before = std::string_view(text_).substr(start, offset - start);
  const auto characters = std::count_if(before.begin(), before.end(), starts_character);
  return {static_cast<int>(after - line_starts_.begin()), 1 + static_cast<int>(characters)};
}

std::string_view Source::line(int number) const {
  if (number < 1 || static_cast<std::size_t>(number) > line_starts_.size()) return {};
  const auto index = static_cast<std::size_t>(number - 1);
  const std::size_t start = line_starts_[index];
  const std::size_t end = index + 1 < line_starts_.size() ? line_starts_[index + 1] - 1 : text_.size();
  std::string_view found = std::string_view(text_).substr(start, end - start);
  if (found.ends_with('\r')) found.remove_suffix(1);
  return found;
}

}  // namespace wattfall
