// Columns and line breaks. In: tokens. Out: padded tokens; lines. All decisions depend on tokens, comments and breaks
// that are kept alone, never on blanks: so what has been formatted once stays as it is.
#include "print_lines.hpp"

#include <algorithm>
#include <utility>

namespace wattfall::print {
namespace {

using Kind = Token::Kind;

/// Wider cells than this do not widen their column: one long name should not push its neighbours off the page.
constexpr std::size_t widest_cell = 40;
/// Kind, name and four places: more are never read as a table.
constexpr std::size_t most_columns = 6;

// --- Columns ---

/// A part's statement up to its colon: where each cell begins (kind, name, places), and where the last one ends.
struct Cells {
  std::vector<std::size_t> begins;
  std::size_t end = 0;
  bool colon = false;
};

std::size_t past_place(const std::vector<Token>& tokens, std::size_t at) {
  if (at >= tokens.size() || tokens[at].kind != Kind::open) return at + 1;
  while (at < tokens.size() && tokens[at].kind != Kind::close) ++at;
  return at + 1;
}

/// None where a comment stands among the places.
std::optional<Cells> cells_of(const std::vector<Token>& tokens) {
  Cells cells{{0, 1}};
  std::size_t at = 2;
  while (at < tokens.size() && tokens[at].kind == Kind::word) {
    cells.begins.push_back(at);
    at = past_place(tokens, at + 1);
  }
  cells.end = std::min(at, tokens.size());
  cells.colon = at < tokens.size() && tokens[at].kind == Kind::colon;
  for (std::size_t i = 0; i < cells.end; ++i) {
    if (tokens[i].kind == Kind::comment) return std::nullopt;
  }
  return cells;
}

std::size_t width_of(const std::vector<Token>& tokens, std::size_t begin, std::size_t end) {
  std::size_t width = 0;
  for (std::size_t i = begin; i < end; ++i) {
    if (i > begin) width += blanks_between(tokens[i - 1], tokens[i]);
    width += tokens[i].width;
  }
  return width;
}

struct Row {
  std::vector<Token>* tokens;
  Cells cells;
  bool wide = false;  ///< a cell is too wide for its column: what follows it is not aligned

  /// The first token behind the cell; none where nothing is to be aligned there.
  std::optional<std::size_t> past(std::size_t cell) const {
    const std::size_t count = cells.begins.size();
    if (wide || cell >= count || (cell + 1 == count && !cells.colon)) return std::nullopt;
    return cell + 1 < count ? cells.begins[cell + 1] : cells.end;
  }
};

/// Makes what follows the cells begin in one column. The colon follows the last cell, whichever that is.
template <class CellOf>
void align(std::vector<Row>& rows, CellOf cell_of) {
  std::size_t widest = 0;
  for (Row& row : rows) {
    const std::size_t cell = cell_of(row);
    const std::optional<std::size_t> past = row.past(cell);
    if (!past) continue;
    row.wide = width_of(*row.tokens, row.cells.begins[cell], *past) > widest_cell;
    if (!row.wide) widest = std::max(widest, width_of(*row.tokens, 0, *past));
  }
  for (Row& row : rows) {
    const std::optional<std::size_t> past = row.past(cell_of(row));
    if (past) (*row.tokens)[*past].pad = widest - width_of(*row.tokens, 0, *past);
  }
}

}  // namespace

void align_columns(const std::vector<std::vector<Token>*>& parts) {
  std::vector<Row> rows;
  std::size_t columns = 0;
  for (std::vector<Token>* tokens : parts) {
    std::optional<Cells> cells = cells_of(*tokens);
    if (!cells) continue;
    columns = std::max(columns, cells->begins.size());
    rows.push_back({tokens, *std::move(cells)});
  }
  columns = std::min(columns, most_columns);
  for (std::size_t cell = 0; cell + 1 < columns; ++cell) {
    align(rows, [cell](const Row& row) { return cell + 1 < row.cells.begins.size() ? cell : row.cells.begins.size(); });
  }
  align(rows, [](const Row& row) { return row.cells.begins.size() - 1; });
}

// --- Breaks ---

namespace {

class Breaker {
 public:
  Breaker(const std::vector<Token>& tokens, std::size_t indent, std::string_view tail, const layout::Words& words)
      : tokens_(tokens), indent_(indent), tail_(tail), words_(words) {}

  std::optional<std::vector<Line>> run() {
    line_.assign(indent_, ' ');
    column_ = indent_;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].kind == Kind::comment) {
        comment(tokens_[i]);
      } else if (!token(i)) {
        return std::nullopt;
      }
    }
    line_ += tail_;
    end_line();
    return std::move(lines_);
  }

 private:
  void end_line() {
    lines_.push_back({std::exchange(line_, std::string(indent_ + continued_step, ' '))});
    column_ = line_.size();
    fresh_ = true;
  }

  void comment(const Token& token) {
    if (!token.new_line && !fresh_) {
      end_line();
      lines_.back().comment = token.text;
      return;
    }
    if (!fresh_) end_line();
    line_ += token.text;
    end_line();
  }

  /// False where it may not stand where it must: at the beginning of a line.
  bool token(std::size_t i) {
    const Token& token = tokens_[i];
    const bool forced = i > 0 && fresh_;
    if (forced && begins_statement(token)) return false;
    if (!fresh_ && should_break(i)) end_line();
    if (!fresh_) put(std::string(blanks_between(tokens_[i - 1], token), ' '), blanks_between(tokens_[i - 1], token));
    put(token.text, token.width);
    fresh_ = false;
    return true;
  }

  void put(const std::string& text, std::size_t width) {
    line_ += text;
    column_ += width;
  }

  bool begins_statement(const Token& token) const { return token.kind == Kind::word && words_.contains(token.text); }

  bool after_comma(std::size_t i) const {
    return tokens_[i - 1].kind == Kind::comma && tokens_[i].kind != Kind::comment && !begins_statement(tokens_[i]);
  }

  /// A break that stands there already, in brackets.
  bool old_break(std::size_t i) const {
    const Token& token = tokens_[i];
    return token.new_line && token.depth > 0 && token.kind != Kind::comment && !token.glued_left &&
           !begins_statement(token);
  }

  bool should_break(std::size_t i) const {
    if (after_comma(i)) return !fits(i, [&](std::size_t k) { return tokens_[k - 1].depth <= tokens_[i - 1].depth; });
    return old_break(i) && !fits(i, [](std::size_t) { return true; });
  }

  /// Whether what stands from token `i` to the next place for a break that counts has room on this line. (Breaks that
  /// stand there already count for one another only: they vanish where they are not needed.)
  template <class Counts>
  bool fits(std::size_t i, Counts counts) const {
    const bool old = !after_comma(i);
    std::size_t column = column_ + blanks_between(tokens_[i - 1], tokens_[i]) + tokens_[i].width;
    for (std::size_t k = i + 1; column <= widest_line; ++k) {
      if (k == tokens_.size()) return column + tail_.size() <= widest_line;
      if (tokens_[k].kind == Kind::comment) return true;
      if ((after_comma(k) && counts(k)) || (old && old_break(k))) return true;
      column += blanks_between(tokens_[k - 1], tokens_[k]) + tokens_[k].width;
    }
    return false;
  }

  const std::vector<Token>& tokens_;
  std::size_t indent_;
  std::string_view tail_;
  const layout::Words& words_;
  std::vector<Line> lines_;
  std::string line_;
  std::size_t column_ = 0;
  bool fresh_ = true;  ///< nothing but indentation stands on the line
};

}  // namespace

std::optional<std::vector<Line>> break_into_lines(const std::vector<Token>& tokens, std::size_t indent,
                                                  std::string_view tail, const layout::Words& words) {
  return Breaker(tokens, indent, tail, words).run();
}

}  // namespace wattfall::print
