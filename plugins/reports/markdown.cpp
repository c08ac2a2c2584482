// Escapes are CommonMark's: a backslash before ASCII punctuation, and entities where a renderer takes HTML.
#include "markdown.hpp"

namespace reports {

std::string plain_markdown(std::string_view text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '&') {
      plain += "&amp;";
    } else if (c == '<') {
      plain += "&lt;";
    } else if (c == '>') {
      plain += "&gt;";
    } else if (c == '\n' || c == '\r' || c == '\t') {
      plain += ' ';
    } else {
      // Underscores inside a word are no markup, and names are full of them.
      const bool marks = std::string_view("\\`*[]|~$").find(c) != std::string_view::npos;
      const bool at_edge = (c == '_') && (i == 0 || i + 1 == text.size() || text[i - 1] == ' ' || text[i + 1] == ' ');
      const bool opens_a_line = i == 0 && std::string_view("#+-=").find(c) != std::string_view::npos;
      if (marks || at_edge || opens_a_line) plain += '\\';
      plain += c;
    }
  }
  // "1." at the start of a line would begin a list.
  const std::size_t digits = plain.find_first_not_of("0123456789");
  if (digits != std::string::npos && digits > 0 && (plain[digits] == '.' || plain[digits] == ')') && (digits + 1 == plain.size() || plain[digits + 1] == ' '))
    plain.insert(digits, 1, '\\');
  return plain;
}

std::string bold(std::string_view text) {
  return text.empty() ? "" : "**" + plain_markdown(text) + "**";
}

void Markdown::gap() {
  if (!text_.empty()) text_ += '\n';
  in_list_ = false;
}

void Markdown::heading(int level, std::string_view text) {
  gap();
  text_ += std::string(static_cast<std::size_t>(level), '#') + ' ' + std::string(text) + '\n';
}

void Markdown::paragraph(std::string_view text) {
  gap();
  text_ += std::string(text) + '\n';
}

void Markdown::bullet(std::string_view text) {
  if (!in_list_) gap();
  in_list_ = true;
  text_ += "- " + std::string(text) + '\n';
}

void Markdown::table(const std::vector<std::string>& heads, const std::vector<bool>& right, const std::vector<std::vector<std::string>>& rows) {
  gap();
  const auto row = [this](const std::vector<std::string>& cells) {
    text_ += '|';
    for (const std::string& cell : cells) text_ += ' ' + (cell.empty() ? std::string("&nbsp;") : cell) + " |";
    text_ += '\n';
  };
  row(heads);
  text_ += '|';
  for (const bool side : right) text_ += side ? " ---: |" : " --- |";
  text_ += '\n';
  for (const std::vector<std::string>& cells : rows) row(cells);
}

}  // namespace reports
