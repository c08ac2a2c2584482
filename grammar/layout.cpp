// Splits a feed file into statements and blocks, and finds what is wrong with its strings, brackets and braces. A plain
// scanner rather than PEGTL rules: it must go on after any mistake, wherever it stands. In: a source. Out: stretches.
#include "layout.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

namespace wattfall::layout {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r';
}
bool is_space(char c) {
  return is_blank(c) || c == '\n';
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_word(char c) {
  return is_letter(c) || is_digit(c) || c == '_';
}

std::size_t end_of_line(std::string_view text, std::size_t at) {
  return std::min(text.find('\n', at), text.size());
}

/// The length of the UTF-8 sequence at `at`, 0 if it is none. Overlong forms, surrogates and values past U+10FFFF are
/// none.
std::size_t utf8_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const bool fits = (first != 0xE0 || byte(1) >= 0xA0) && (first != 0xED || byte(1) < 0xA0);
    return fits && follows(1) && follows(2) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const bool fits = (first != 0xF0 || byte(1) >= 0x90) && (first != 0xF4 || byte(1) < 0x90);
    return fits && follows(1) && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

/// Characters that no line of a feed file may hold, not even in a string: they would hide what the file says. (U+202A
/// and its like turn the direction of writing.)
bool is_forbidden(std::string_view character) {
  const auto first = static_cast<unsigned char>(character.front());
  if (character.size() == 1) return first < 0x20 || first == 0x7F;
  if (first == 0xC2) return static_cast<unsigned char>(character[1]) < 0xA0;
  return (character >= "\u2028" && character <= "\u202E" && character.size() == 3) ||
         (character >= "\u2066" && character <= "\u2069" && character.size() == 3);
}

/// Characters that may stand anywhere, as nearly all do.
bool are_plain(std::string_view text) {
  unsigned odd = 0;
  for (const char c : text) odd |= static_cast<unsigned>((c < 0x20 && c != '\n') || c == 0x7F);
  return odd == 0;
}

/// What a character is to this pass.
enum class Meaning : char { none, blank, some };

const std::array<Meaning, 256>& meanings() {
  static const auto table = [] {
    std::array<Meaning, 256> meaning{};
    for (const char c : std::string_view(" \t\r")) meaning[static_cast<unsigned char>(c)] = Meaning::blank;
    for (const char c : std::string_view("\n#\"()[]{},")) meaning[static_cast<unsigned char>(c)] = Meaning::some;
    return meaning;
  }();
  return table;
}

class Splitter {
 public:
  Splitter(const Source& source, const Words& words, Diagnostics& diagnostics)
      : source_(source), text_(source.text()), words_(words), diagnostics_(diagnostics) {}

  std::vector<Stretch> run() {
    if (text_.size() > longest_file) {
      complain("file-too-long", 0, 0, "the file is longer than 1 MiB", "a file of at most 1048576 bytes");
      return {};
    }
    check_characters();
    check_lines();
    top_.reserve(static_cast<std::size_t>(std::count(text_.begin(), text_.end(), '\n')) + 1);
    at_ = text_.starts_with("\xEF\xBB\xBF") ? 3 : 0;
    while (skip_to_statement()) {
      if (text_[at_] == '}') {
        close_block();
      } else if (text_[at_] == '{') {
        open_late_block();
      } else {
        read_statement();
      }
    }
    for (Stretch* block : open_) block->unclosed = true;
    for (const std::uint32_t brace : open_braces_) complain_of_open_block(brace);
    return std::move(top_);
  }

 private:
  struct Bracket {
    char kind;
    std::uint32_t at;
  };

  Diagnostic& complain(const char* code, std::size_t begin, std::size_t end, std::string text,
                       std::string expected = {}, std::string hint = {}) {
    const Span span{&source_, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
    diagnostics_.push_back({code, span, std::move(text), std::move(expected), std::move(hint)});
    return diagnostics_.back();
  }

  /// Marks a range that no statement may be read from.
  void spoil(std::size_t begin, std::size_t end) { spoiled_.emplace_back(begin, end); }

  void check_characters() {
    constexpr int most_shown = 3;  // a file that is no text at all would give thousands
    int shown = 0;
    for (std::size_t at = text_.starts_with("\xEF\xBB\xBF") ? 3 : 0; at < text_.size();) {
      constexpr std::size_t many = 64;
      if (at + many <= text_.size() && are_plain(text_.substr(at, many))) {
        at += many;
        continue;
      }
      const std::size_t length = utf8_length(text_, at);
      const std::size_t step = std::max<std::size_t>(length, 1);
      const char c = text_[at];
      const bool line_end = c == '\n' || (c == '\r' && at + 1 < text_.size() && text_[at + 1] == '\n');
      const bool bad = length == 0 || (c != '\t' && !line_end && is_forbidden(text_.substr(at, step)));
      if (bad) {
        spoil(at, at + step);
        if (shown < most_shown) complain_of_character(at, step, length == 0);
        ++shown;
      }
      at += step;
    }
  }

  void complain_of_character(std::size_t at, std::size_t length, bool broken) {
    if (broken) {
      complain("invalid-utf8", at, at + length, "this byte is no UTF-8 text", "a file saved as UTF-8");
      return;
    }
    const char* what = text_[at] == '\0'   ? "a NUL byte stands here"
                       : text_[at] == '\r' ? "a carriage return without a line feed stands here"
                                           : "an invisible control character stands here";
    complain("invalid-character", at, at + length, what, "readable text");
  }

  void check_lines() {
    for (std::size_t at = 0; at < text_.size();) {
      const std::size_t end = end_of_line(text_, at);
      if (end - at > longest_line) {
        complain("line-too-long", at, end, "this line is longer than 64 KiB", "lines of at most 65536 bytes");
        spoil(at, end);
      }
      at = end + 1;
    }
    std::sort(spoiled_.begin(), spoiled_.end());
  }

  /// Moves over blanks, line ends and comments; false at the end of the text.
  bool skip_to_statement() {
    while (at_ < text_.size()) {
      if (is_space(text_[at_])) {
        ++at_;
      } else if (text_[at_] == '#') {
        at_ = end_of_line(text_, at_);
      } else {
        return true;
      }
    }
    return false;
  }

  std::vector<Stretch>& body() { return open_.empty() ? top_ : open_.back()->body; }

  void close_block() {
    const std::size_t brace = at_++;
    if (ignored_blocks_ > 0) {
      --ignored_blocks_;
    } else if (open_.empty()) {
      complain("stray-brace", brace, brace + 1, "this `}` closes nothing");
    } else {
      open_.pop_back();
      open_braces_.pop_back();
    }
    while (at_ < text_.size() && is_blank(text_[at_])) ++at_;
    const std::size_t end = end_of_line(text_, at_);
    if (at_ < end && text_[at_] != '#') {
      complain("brace-not-alone", brace, brace + 1, "`}` stands on a line of its own", "a line end after `}`");
    }
  }

  void complain_of_open_block(std::uint32_t brace) {
    complain("unclosed-block", brace, brace + 1, "this `{` is never closed",
             "`}` on a line of its own, after the block");
  }

  /// `variant` never stands in a block. One that begins no further right than the block's own header shows that the `}`
  /// before it was forgotten; taking it so spares the reader a complaint at every line that follows.
  void close_forgotten_blocks(std::size_t begin) {
    if (word_at(begin) != "variant" || open_.empty() || !lacks_braces()) return;
    while (!open_.empty() && column_of(begin) <= column_of(open_.back()->begin)) {
      open_.back()->unclosed = true;
      complain_of_open_block(open_braces_.back());
      open_.pop_back();
      open_braces_.pop_back();
    }
  }

  /// Whether more blocks are opened than closed in the whole text. (Braces in strings count too: this only decides
  /// which of two complaints is the likelier.)
  bool lacks_braces() {
    if (!brace_balance_) {
      const auto opened = std::count(text_.begin(), text_.end(), '{');
      brace_balance_ = opened - std::count(text_.begin(), text_.end(), '}');
    }
    return *brace_balance_ > 0;
  }

  std::size_t column_of(std::size_t at) const {
    const std::size_t before = at == 0 ? std::string_view::npos : text_.rfind('\n', at - 1);
    return before == std::string_view::npos ? at : at - before - 1;
  }

  std::string_view word_at(std::size_t at) const {
    std::size_t end = at;
    while (end < text_.size() && is_word(text_[end])) ++end;
    return text_.substr(at, end - at);
  }

  void read_statement() {
    close_forgotten_blocks(at_);
    current_ = Stretch{};
    current_.begin = static_cast<std::uint32_t>(at_);
    brackets_.clear();
    last_ = at_;
    comma_ = false;
    done_ = false;
    while (!done_) step();
    current_.end = static_cast<std::uint32_t>(std::max<std::size_t>(last_, current_.begin));
    finish();
  }

  void step() {
    if (at_ >= text_.size()) return end_at_line();
    const char c = text_[at_];
    switch (c) {
      case '\n':
        return end_at_line();
      case '#':
        at_ = end_of_line(text_, at_);
        return;
      case '"':
        return read_string();
      case '(':
      case '[':
        return open_bracket(c);
      case ')':
      case ']':
        return close_bracket(c);
      case '{':
        return open_block();
      case '}':
        return end_before_brace();
      default:
        break;
    }
    if (!is_blank(c)) {
      comma_ = c == ',';
      last_ = at_ + 1;
    }
    ++at_;
    pass_words();
  }

  /// To the next character that means something here.
  void pass_words() {
    std::size_t last = 0;
    for (; at_ < text_.size(); ++at_) {
      const Meaning meaning = meanings_[static_cast<unsigned char>(text_[at_])];
      if (meaning == Meaning::some) break;
      if (meaning == Meaning::none) last = at_ + 1;
    }
    if (last == 0) return;
    last_ = last;
    comma_ = false;
  }

  void take_one() {
    comma_ = false;
    last_ = ++at_;
  }

  void read_string() {
    if (is_inch_mark(text_, at_)) return take_one();
    const std::size_t past = past_token(text_, at_);
    const std::size_t line_end = end_of_line(text_, at_);
    if (past <= line_end) {
      comma_ = false;
      last_ = at_ = past;
      return;
    }
    std::size_t end = line_end;
    while (end > at_ && is_blank(text_[end - 1])) --end;
    complain("unclosed-string", at_, end, "this string is not closed on its line", "`\"` at the string's end");
    current_.broken = true;
    comma_ = text_[end - 1] == ',';
    // What the string has swallowed may be the start of a block; to see it so saves the block's lines from being
    // misread.
    last_ = at_ = text_[end - 1] == '{' ? end - 1 : line_end;
  }

  void open_bracket(char c) {
    brackets_.push_back({c, static_cast<std::uint32_t>(at_)});
    if (brackets_.size() == most_levels + 1) {
      if (!current_.broken) {
        complain("too-deep", at_, at_ + 1, "brackets are more than 64 levels deep", "at most 64 levels");
      }
      current_.broken = true;
    }
    take_one();
  }

  void close_bracket(char c) {
    if (brackets_.empty()) {
      if (!current_.broken) {
        complain("stray-bracket", at_, at_ + 1, std::string("this `") + c + "` closes nothing");
      }
      current_.broken = true;
      return take_one();
    }
    const Bracket open = brackets_.back();
    brackets_.pop_back();
    const char wanted = open.kind == '(' ? ')' : ']';
    if (c != wanted && !current_.broken) {
      Diagnostic& diagnostic =
          complain("mismatched-bracket", at_, at_ + 1, std::string("`") + c + "` does not close `" + open.kind + "`",
                   "", std::string(1, wanted));
      diagnostic.notes.push_back({{&source_, open.at, open.at + 1}, "opened here"});
      current_.broken = true;
    }
    take_one();
  }

  /// A line's end: of the statement too, unless a comma or an open bracket carries it on.
  void end_at_line() {
    if (brackets_.empty() && !comma_) {
      done_ = true;
      return;
    }
    if (skip_to_statement() && text_[at_] != '}' && !begins_statement(at_)) return;
    complain_of_cut();
    done_ = true;
  }

  bool begins_statement(std::size_t at) const {
    const std::string_view word = word_at(at);
    const std::size_t after = at + word.size();
    if (after >= text_.size() || !is_blank(text_[after])) return false;
    if (words_.keywords.contains(word)) return true;
    if (!words_.kinds.contains(word)) return false;
    // A kind's word may be a quantity's or a property's name too; what follows a kind is a part's name.
    std::size_t next = after;
    while (next < text_.size() && is_blank(text_[next])) ++next;
    return next < text_.size() && is_letter(text_[next]);
  }

  /// The statement was to go on, but what comes next is another one (or nothing).
  void complain_of_cut() {
    if (std::exchange(current_.broken, true)) return;
    if (!brackets_.empty()) {
      const Bracket open = brackets_.back();
      complain("unclosed-bracket", open.at, open.at + 1, std::string("this `") + open.kind + "` was left open",
               std::string("`") + (open.kind == '(' ? ')' : ']') + "` before the next statement");
      return;
    }
    complain("trailing-comma", last_ - 1, last_, "nothing follows this comma", "another property, or no comma");
  }

  void open_block() {
    const std::size_t brace = at_++;
    if (!brackets_.empty() || comma_) complain_of_cut();
    done_ = true;
    current_.is_block = true;
    current_.brace = static_cast<std::uint32_t>(brace);
    std::size_t next = at_;
    while (next < text_.size() && is_blank(text_[next])) ++next;
    const std::size_t end = end_of_line(text_, at_);
    if (next >= end || text_[next] == '#') return;
    if (!current_.broken) {
      complain("brace-not-last", brace, brace + 1, "what stands in a block begins on a new line",
               "a line end after `{`");
    }
    current_.broken = true;
    // A block written on one line is closed on it as well.
    const std::string_view rest = text_.substr(next, end - next);
    if (rest.find('}') != std::string_view::npos) current_.is_block = false;
    at_ = end;
  }

  /// `{` on a line of its own: the statement before it is most likely its header.
  void open_late_block() {
    complain("brace-not-last", at_, at_ + 1, "`{` stands at the end of its statement's line", "`{` on the line before");
    std::vector<Stretch>& home = body();
    if (!home.empty() && !home.back().is_block) {
      current_ = std::move(home.back());
      home.pop_back();
    } else {
      current_ = Stretch{};
      current_.begin = current_.end = static_cast<std::uint32_t>(at_);
      current_.broken = true;
    }
    current_.is_block = true;
    current_.brace = static_cast<std::uint32_t>(at_++);
    finish();
  }

  void end_before_brace() {
    if (!brackets_.empty() || comma_) complain_of_cut();
    if (!current_.broken) {
      complain("brace-not-alone", at_, at_ + 1, "`}` stands on a line of its own", "a line end before `}`");
    }
    done_ = true;  // the main loop closes the block
  }

  bool is_spoiled(const Stretch& stretch) const {
    const auto after =
        std::lower_bound(spoiled_.begin(), spoiled_.end(), std::pair<std::size_t, std::size_t>(stretch.end, 0));
    return after != spoiled_.begin() && (after - 1)->second > stretch.begin;
  }

  void finish() {
    if (!current_.broken && is_spoiled(current_)) current_.broken = true;
    const bool opens = current_.is_block;
    const std::uint32_t brace = current_.brace;
    if (opens && open_.size() + ignored_blocks_ >= most_levels) {
      if (ignored_blocks_++ == 0) {
        complain("too-deep", brace, brace + 1, "blocks are more than 64 levels deep", "at most 64 levels");
      }
      return;
    }
    std::vector<Stretch>& home = body();
    home.push_back(std::move(current_));
    if (!opens) return;
    // Only the innermost body grows, so the addresses of the blocks around it stay.
    open_.push_back(&home.back());
    open_braces_.push_back(brace);
  }

  const Source& source_;
  std::string_view text_;
  const Words& words_;
  Diagnostics& diagnostics_;
  const std::array<Meaning, 256>& meanings_ = meanings();

  std::size_t at_ = 0;
  std::vector<Stretch> top_;
  std::vector<Stretch*> open_;
  std::vector<std::uint32_t> open_braces_;
  std::size_t ignored_blocks_ = 0;
  std::optional<std::ptrdiff_t> brace_balance_;
  std::vector<std::pair<std::size_t, std::size_t>> spoiled_;

  // The statement being read.
  Stretch current_;
  std::vector<Bracket> brackets_;
  std::size_t last_ = 0;  ///< past its last character that counts
  bool comma_ = false;    ///< that character is a comma
  bool done_ = false;
};

}  // namespace

bool is_inch_mark(std::string_view text, std::size_t at) {
  return at > 0 && is_digit(text[at - 1]);
}

std::size_t past_token(std::string_view text, std::size_t at) {
  if (text[at] == '#') return end_of_line(text, at);
  if (text[at] != '"' || is_inch_mark(text, at)) return at + 1;
  const std::size_t end = end_of_line(text, at);
  for (std::size_t i = at + 1; i < end; ++i) {
    if (text[i] == '\\') {
      ++i;
    } else if (text[i] == '"') {
      return i + 1;
    }
  }
  return end + 1;  // past the line: never closed
}

void add_box_names(std::string_view text, std::unordered_set<std::string_view>& names) {
  for (std::size_t at = text.find("box"); at != std::string_view::npos; at = text.find("box", at + 3)) {
    std::size_t before = at;
    while (before > 0 && is_blank(text[before - 1])) --before;
    if (before > 0 && text[before - 1] != '\n') continue;
    std::size_t begin = at + 3;
    while (begin < text.size() && is_blank(text[begin])) ++begin;
    std::size_t end = begin;
    while (end < text.size() && is_word(text[end])) ++end;
    if (begin > at + 3 && end > begin) names.insert(text.substr(begin, end - begin));
  }
}

std::vector<Stretch> split(const Source& source, const Words& words, Diagnostics& diagnostics) {
  return Splitter(source, words, diagnostics).run();
}

}  // namespace wattfall::layout
