// Pieces of Markdown (tables as in the common extension with pipes), in which no name can turn into markup.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reading.hpp"

namespace reports {

class Markdown {
 public:
  void heading(int level, std::string_view text);
  void paragraph(std::string_view text);
  void bullet(std::string_view text);
  /// `right` says for each column whether it is numbers. All rows have as many cells as `heads`.
  void table(const std::vector<std::string>& heads, const std::vector<bool>& right, const std::vector<std::vector<std::string>>& rows);
  const std::string& text() const { return text_; }

 private:
  void gap();
  std::string text_;
  bool in_list_ = false;
};

/// Every character that could be markup, escaped; line ends as blanks.
std::string plain_markdown(std::string_view text);

/// Bold, the text itself escaped.
std::string bold(std::string_view text);

}  // namespace reports
