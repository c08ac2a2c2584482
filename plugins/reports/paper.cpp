// ANSI colours go round whole lines only, so that columns stay counted in characters that are seen.
#include "paper.hpp"

#include <algorithm>
#include <numeric>

#include "code_points.hpp"

namespace reports {
namespace {

const char* escape(Ink ink) {
  switch (ink) {
    case Ink::strong:
      return "\x1b[1m";
    case Ink::good:
      return "\x1b[32m";
    case Ink::bad:
      return "\x1b[31m";
    case Ink::faint:
      return "\x1b[2m";
    case Ink::plain:
      break;
  }
  return "";
}

/// Takes words off the front of `rest`, as many as fit; a word that never fits is broken.
std::string take_line(std::string_view& rest, std::size_t columns) {
  std::string taken;
  std::size_t used = 0;
  while (!rest.empty()) {
    const std::string_view word = rest.substr(0, rest.find(' '));
    const std::size_t needed = width(word) + (used == 0 ? 0 : 1);
    if (used != 0 && used + needed > columns) break;
    if (used == 0 && needed > columns) {
      std::size_t bytes = 0;
      while (used++ < columns) bytes += code_point_length(rest.substr(bytes));
      taken = rest.substr(0, bytes);
      rest.remove_prefix(bytes);
      return taken;
    }
    if (used != 0) taken += ' ';
    taken += word;
    used += needed;
    rest.remove_prefix(std::min(rest.size(), word.size() + 1));
  }
  return taken;
}

}  // namespace

void Paper::line(std::string_view text, Ink ink) {
  std::string shown = cut(text.substr(0, text.find_last_not_of(' ') + 1), columns_);
  const bool inked = color_ && ink != Ink::plain && !shown.empty();
  if (inked) text_ += escape(ink);
  text_ += shown;
  if (inked) text_ += "\x1b[0m";
  text_ += '\n';
}

void Paper::blank() {
  if (!text_.empty() && !text_.ends_with("\n\n")) text_ += '\n';
}

void Paper::paragraph(std::string_view first, std::string_view text, Ink ink) {
  const std::size_t indent = std::min(width(first), columns_ / 2);
  std::string margin = pad_right(cut(first, indent), indent);
  do {
    line(margin + take_line(text, columns_ - indent), ink);
    margin.assign(indent, ' ');
  } while (!text.empty());
}

void Paper::chapter(std::string_view title) {
  blank();
  line("");
  line(title, Ink::strong);
  line(std::string(std::min(width(title), columns_), '='), Ink::strong);
}

void Paper::section(std::string_view title) {
  blank();
  line(title, Ink::strong);
}

std::string Table::shown(const std::string& cell, std::size_t column) const {
  return sides_[column] == Side::left ? cut(cell, limit_) : cell;
}

std::vector<std::size_t> Table::widths() const {
  std::vector<std::size_t> widths(sides_.size(), 0);
  for (const Row& row : rows_) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) widths[i] = std::max(widths[i], width(shown(row.cells[i], i)));
  }
  return widths;
}

void Table::print(Paper& paper, std::size_t indent) const {
  const std::vector<std::size_t> columns = widths();
  const std::size_t all = std::accumulate(columns.begin(), columns.end(), 2 * (columns.size() - 1));
  for (const Row& row : rows_) {
    std::string text(indent, ' ');
    if (row.cells.empty()) text.append(std::min(all, paper.columns() - indent), '-');
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::string cell = shown(row.cells[i], i);
      if (i > 0) text += "  ";
      text += sides_[i] == Side::left ? pad_right(cell, columns[i]) : pad_left(cell, columns[i]);
    }
    paper.line(text, row.ink);
  }
}

}  // namespace reports
