// The sheet a text report is written on: lines of limited width, headings, paragraphs that wrap, tables, and colour
// where it is wanted. Nothing that is written here is wider than the sheet.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace reports {

enum class Ink { plain, strong, good, bad, faint };

class Paper {
 public:
  Paper(std::size_t columns, bool color) : columns_(columns), color_(color) {}

  /// A line, cut where it is too wide.
  void line(std::string_view text, Ink ink = Ink::plain);
  void blank();
  /// A paragraph, wrapped; its first line begins with `first`, the others with as many blanks.
  void paragraph(std::string_view first, std::string_view text, Ink ink = Ink::plain);
  /// A chapter: underlined. A section: a line with a blank one before.
  void chapter(std::string_view title);
  void section(std::string_view title);

  std::size_t columns() const { return columns_; }
  const std::string& text() const { return text_; }

 private:
  std::size_t columns_;
  bool color_;
  std::string text_;
};

/// Columns as wide as their widest cell, two blanks apart. A row may have fewer cells than the table has columns.
class Table {
 public:
  enum class Side { left, right };
  explicit Table(std::vector<Side> sides) : sides_(std::move(sides)) {}

  void heads(std::vector<std::string> cells) { add(std::move(cells), Ink::faint); }
  void add(std::vector<std::string> cells, Ink ink = Ink::plain) { rows_.push_back({std::move(cells), ink}); }
  /// A rule across all columns.
  void rule() { rows_.push_back({{}, Ink::faint}); }
  /// Cells of a left column are cut to at most `columns`.
  void limit(std::size_t columns) { limit_ = columns; }
  void print(Paper& paper, std::size_t indent = 2) const;

 private:
  struct Row {
    std::vector<std::string> cells;
    Ink ink;
  };
  std::vector<std::size_t> widths() const;
  std::string shown(const std::string& cell, std::size_t column) const;

  std::vector<Side> sides_;
  std::vector<Row> rows_;
  std::size_t limit_ = 60;
};

}  // namespace reports
