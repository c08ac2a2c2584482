// The printer: walks a file as its lines stand, and prints each statement, comment and bracket anew. In: a text that
// parses. Out: the same in the standard layout. What stands between statements (comments, empty lines, braces) is read
// from the text, statements from the tree.
#include "grammar/print.hpp"

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

#include "letters.hpp"
#include "print_lines.hpp"
#include "print_tokens.hpp"
#include "words.hpp"

namespace wattfall {
namespace {

using print::Line;
using print::Token;
using syntax::Statement;

/// What stands on lines of its own.
struct Item {
  enum class Kind { statement, header, close, comment };
  Kind kind = Kind::statement;
  std::size_t depth = 0;
  bool blank_before = false;
  const Statement* statement = nullptr;
  std::string comment = {};  ///< the comment itself, or the one behind the item
  std::vector<Token> tokens = {};
  std::vector<Line> lines = {};
};

// --- From text to items ---

class Collector {
 public:
  explicit Collector(std::string_view text) : text_(text), at_(text.starts_with("\xEF\xBB\xBF") ? 3 : 0) {}

  std::vector<Item> run(const std::vector<Statement>& statements) {
    body(statements, 0);
    return std::move(items_);
  }

 private:
  /// The statements of a block, and all comments to its end.
  void body(syntax::List<Statement> statements, std::size_t depth) {
    for (const Statement& statement : statements) {
      gap(statement.span.begin, depth);
      at_ = statement.span.end;
      const syntax::List<Statement>* block = block_of(statement);
      add({block == nullptr ? Item::Kind::statement : Item::Kind::header, depth, false, &statement});
      if (block == nullptr) continue;
      at_ = text_.find('{', at_) + 1;  // nothing but blanks stands before it
      body(*block, depth + 1);
      close(depth);
    }
    gap(text_.size(), depth);
  }

  static const syntax::List<Statement>* block_of(const Statement& statement) {
    if (const auto* box = std::get_if<syntax::Box>(&statement.what)) return &box->body;
    const auto* variant = std::get_if<syntax::Variant>(&statement.what);
    return variant == nullptr ? nullptr : &variant->body;
  }

  void close(std::size_t depth) {
    ++at_;
    line_ends_ = 1;  // no empty line before it
    add({Item::Kind::close, depth});
  }

  void add(Item item) {
    const bool inside = !items_.empty() && items_.back().kind != Item::Kind::header;
    item.blank_before = inside && line_ends_ > 1;
    line_ends_ = 0;
    items_.push_back(std::move(item));
  }

  /// Comments and line ends up to `until`, or a brace.
  void gap(std::size_t until, std::size_t depth) {
    for (; at_ < until && text_[at_] != '}'; ++at_) {
      if (text_[at_] == '\n') ++line_ends_;
      if (text_[at_] == '#') comment(depth);
    }
  }

  /// Leaves `at_` on the comment's last character.
  void comment(std::size_t depth) {
    const std::size_t end = std::min(text_.find('\n', at_), text_.size());
    std::string text(text_.substr(at_, end - at_));
    while (is_space(text.back())) text.pop_back();
    at_ = end - 1;
    if (line_ends_ > 0 || items_.empty()) {
      add({Item::Kind::comment, depth, false, nullptr, std::move(text)});
    } else {
      items_.back().comment = std::move(text);
    }
  }

  std::string_view text_;
  std::size_t at_;
  std::size_t line_ends_ = 0;
  std::vector<Item> items_;
};

// --- From items to lines ---

/// A statement that no line break is good for stays as it was written, but for blanks at its lines' ends.
std::vector<Line> lines_as_written(const Item& item) {
  std::vector<Line> lines;
  std::string_view text = item.statement->span.text();
  std::string indent(item.depth * print::block_step, ' ');
  while (true) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string line = std::exchange(indent, {}) + std::string(text.substr(0, end));
    while (!line.empty() && is_space(line.back())) line.pop_back();
    if (!line.empty()) lines.push_back({std::move(line)});
    if (end == text.size()) return lines;
    text.remove_prefix(end + 1);
  }
}

void make_lines(Item& item, const layout::Words& words) {
  const std::size_t indent = item.depth * print::block_step;
  const bool header = item.kind == Item::Kind::header;
  if (item.kind == Item::Kind::comment || item.kind == Item::Kind::close) {
    const bool close = item.kind == Item::Kind::close;
    item.lines = {{std::string(indent, ' ') + (close ? "}" : std::exchange(item.comment, {}))}};
  } else if (auto lines = print::break_into_lines(item.tokens, indent, header ? " {" : "", words)) {
    item.lines = *std::move(lines);
  } else {
    item.lines = lines_as_written(item);
    if (header) item.lines.back().text += " {";
  }
  item.lines.back().comment = std::exchange(item.comment, {});
}

bool is_part(const Item& item) {
  return item.kind == Item::Kind::statement && std::holds_alternative<syntax::Part>(item.statement->what);
}

/// Past the items that stand with the one at `first` without an empty line between, as far as neighbours fit together.
template <class Together>
std::size_t past_group(const std::vector<Item>& items, std::size_t first, Together together) {
  std::size_t past = first + 1;
  while (past < items.size() && !items[past].blank_before && together(items[past - 1], items[past])) ++past;
  return past;
}

void align_groups_of_parts(std::vector<Item>& items) {
  for (std::size_t first = 0; first < items.size();) {
    const std::size_t past =
        past_group(items, first, [](const Item& l, const Item& r) { return is_part(l) && is_part(r); });
    std::vector<std::vector<Token>*> group;
    for (std::size_t i = first; i < past; ++i) {
      if (is_part(items[i])) group.push_back(&items[i].tokens);
    }
    print::align_columns(group);
    first = past;
  }
}

/// Where the comments of a group's lines stand: two blanks behind the longest that has one.
std::size_t comment_column(const std::vector<Item>& items, std::size_t first, std::size_t past) {
  std::size_t widest = 0;
  for (std::size_t i = first; i < past; ++i) {
    for (const Line& line : items[i].lines) {
      const std::size_t width = line.comment.empty() ? 0 : print::characters(line.text);
      if (width <= print::widest_line) widest = std::max(widest, width);
    }
  }
  return widest + 2;
}

void put_line(std::string& text, const Line& line, std::size_t column) {
  text += line.text;
  if (!line.comment.empty()) {
    const std::size_t width = print::characters(line.text);
    text.append(width + 2 < column ? column - width : 2, ' ').append(line.comment);
  }
  text += '\n';
}

/// Statements of one sort, a line each: their comments form a column. Longer ones have a column of their own.
bool share_column(const Item& left, const Item& right) {
  const auto fits = [](const Item& item) { return item.kind == Item::Kind::statement && item.lines.size() == 1; };
  return fits(left) && fits(right) && left.statement->what.index() == right.statement->what.index();
}

std::string put_together(const std::vector<Item>& items) {
  std::string text;
  for (std::size_t first = 0; first < items.size();) {
    const std::size_t past = past_group(items, first, share_column);
    const std::size_t column = comment_column(items, first, past);
    for (; first < past; ++first) {
      if (items[first].blank_before) text += '\n';
      for (const Line& line : items[first].lines) put_line(text, line, column);
    }
  }
  return text;
}

// --- Limits ---

/// Blanks may carry a text past a limit that it just met.
Diagnostics past_limits(const SourcePtr& source, const std::string& text) {
  const Span all{source.get(), 0, 0};
  if (text.size() > layout::longest_file) {
    return {
        {"file-too-long", all, "in the standard layout this file would be longer than 1 MiB", "a shorter file", ""}};
  }
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    if (end - at > layout::longest_line) {
      return {{"line-too-long", all, "in the standard layout a line of this file would be longer than 64 KiB",
               "shorter lines", ""}};
    }
    at = end + 1;
  }
  return {};
}

}  // namespace

Result<std::string> format(const SourcePtr& source, const Vocabulary& vocabulary) {
  const Result<syntax::File> file = parse(source, vocabulary);
  if (!file.ok()) return {std::nullopt, file.diagnostics};
  const layout::Words words = words_of(*source, vocabulary);
  std::vector<Item> items = Collector(source->text()).run(file.value->statements);
  for (Item& item : items) {
    if (item.statement != nullptr) item.tokens = print::tokens_of(*item.statement);
  }
  align_groups_of_parts(items);
  for (Item& item : items) make_lines(item, words);
  std::string text = put_together(items);
  Diagnostics wrong = past_limits(source, text);
  if (!wrong.empty()) return {std::nullopt, std::move(wrong)};
  return {std::move(text)};
}

}  // namespace wattfall
