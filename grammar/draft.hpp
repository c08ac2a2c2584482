// The statement that is being read: what the actions of build_tree.cpp put together, piece by piece. In: spans of
// matched text, in the order in which they stand. Out: terms, phrases, and the pieces of a statement. Whatever is wrong
// with a token itself (a unit, a decimal comma, a reserved name) is thrown from here as a Mistake, which build_tree.cpp
// catches.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grammar/diagnostic.hpp"
#include "grammar/syntax.hpp"
#include "layout.hpp"

namespace wattfall {

/// Thrown where a statement cannot be read on; never leaves the grammar room.
struct Mistake {
  Diagnostic diagnostic;
};

/// What a rule wants, for the diagnostic where the text does not give it.
struct Wanted {
  const char* code = nullptr;
  const char* expected = nullptr;
  const char* words = "";  ///< the words that could stand there, for a spelling suggestion; one blank between
};

/// What a statement is made of; each statement fills its own.
struct Pieces {
  syntax::Word text;  ///< a title, a path, a variant's name
  syntax::Part part;
  bool in_properties = false;  ///< of a part: what stands before them is in order
  syntax::Places places;
  std::vector<syntax::Word> group;  ///< the nodes of the end being read
  std::vector<syntax::Places::End> ends;
  syntax::Set set;
  syntax::Change change;
  syntax::Band band;
  syntax::Sweep sweep;
  syntax::Tune tune;
  std::vector<syntax::Word> knobs;
  std::vector<syntax::Requirement> keeping;
  syntax::Plane plane;
  syntax::Box box;
  std::vector<syntax::Word> ports;
  std::vector<std::pair<syntax::Word, syntax::Phrase>> with;
  std::string figure_words;
  syntax::Figure figure;
  syntax::Requirement requirement;
  std::optional<syntax::Phrase> over_from, over_to;
  syntax::Word band_name;
  syntax::Word with_name;
  std::optional<decltype(syntax::Statement::what)> what;  ///< the whole, once it is read
};

syntax::Term make_term(syntax::Term::Kind kind, Span span, std::string_view text);

class Draft {
 public:
  /// What is read lies in `storage`.
  Draft(const Source& source, syntax::Storage& storage) : source_(&source), text_(source.text()), storage_(&storage) {}

  /// Forgets the last statement and begins with the one at [begin, end).
  void start(std::uint32_t begin, std::uint32_t end);

  Pieces pieces;

  // Places.
  Span span(const char* begin, const char* end) const;
  /// From its begin to the end of the last token read: a rule's match may have run on over blanks and comments.
  Span to_last(Span matched) const { return {source_, matched.begin, std::max(matched.begin, last_)}; }
  /// Remembers a token that needs nothing else.
  void note(Span token) { last_ = token.end; }

  // Words.
  syntax::Word word(Span span);         ///< a name, dotted or not
  syntax::Word new_name(Span span);     ///< a name that is being given: no dots
  syntax::Word string_word(Span span);  ///< a string that must not be empty

  // Numbers. `read_unit` looks at what stands at `at` and gives the bytes of the unit there, 0 for none.
  void real_part(Span span);
  void imaginary_sign(char sign) { imaginary_sign_ = sign; }
  void imaginary_part(Span span);
  std::size_t read_unit(const char* at);
  void finish_number(Span span);
  void finish_imaginary(Span span);

  // Other terms.
  void name_term(Span span);
  void string_term(Span span);
  void cable_term(Span span);
  bool may_call(const char* bracket) const;

  // Operators.
  void begin_factor() { factors_.push_back(pending_.size()); }
  void add_pending(Span sign) { pending_.push_back(sign); }
  void finish_factor();
  void add_operator(Span sign) { operators_.push_back(sign); }
  void finish_binary();
  void finish_pair();

  // Brackets and lists.
  void open_bracket(Span bracket);
  void close_bracket(Span bracket);
  void open_list(Span bracket);
  void close_list(Span bracket);
  void open_call(Span bracket);
  void close_call(Span bracket);
  void finish_phrase();

  // Pieces of statements.
  void finish_place(bool bracketed);
  void check_set_value(const syntax::Phrase& value) const;

  syntax::Phrase take_expression();
  syntax::List<syntax::Phrase> take_properties();
  syntax::Storage& storage() { return *storage_; }

  /// Says that `wanted` does not stand at `at`.
  [[noreturn]] void fail(const Wanted& wanted, const char* at) const;
  [[noreturn]] void mistake(const char* code, Span where, std::string text, std::string expected = {},
                            std::string hint = {}) const;

 private:
  void forget_pieces();

  struct Frame {  ///< an open bracket of any kind; the lowest is the statement itself
    std::uint32_t begin = 0;
    std::size_t base = 0;        ///< terms below this are not the frame's
    std::size_t phrases = 0;     ///< nor phrases below this
    std::string_view word = {};  ///< a call's
    bool has_items = false;      ///< commas separate items here, so `1,5` is two numbers
    std::uint32_t depth = 0;
  };

  std::uint32_t offset(const char* at) const { return static_cast<std::uint32_t>(at - text_.data()); }
  std::string_view rest(std::uint32_t from) const { return text_.substr(from, end_ - from); }
  std::uint32_t skip_blanks(std::uint32_t at) const;
  Span token_at(std::uint32_t at) const;
  Span at_end() const { return {source_, end_, end_}; }

  void check_name(Span span) const;
  std::string imaginary_after(std::uint32_t at) const;
  std::string likely(const Wanted& wanted, Span found) const;
  void check_part_has_name() const;
  void complain_of_habit(const Wanted& wanted, Span found) const;
  void complain_of_repeated_sign(const Wanted& wanted, Span found) const;
  void complain_of_range(const Wanted& wanted, std::uint32_t at) const;
  std::string likely_place(const Wanted& wanted, Span found) const;
  bool token_before_is(std::uint32_t at, std::string_view word) const;
  std::vector<std::string_view> band_names() const;
  std::string likely_band(Span found) const;
  [[noreturn]] void complain_of_band(Span found) const;
  void check_decimal_comma(Span number) const;
  void check_number_end(Span number) const;
  void check_after_number(std::uint32_t at) const;
  const char* missing_sign() const;
  void check_zero_for_o(Span token) const;
  void check_imaginary_i(const syntax::Term& term) const;
  void check_units_after_expressions(const syntax::Phrase& phrase) const;
  void complain_of_shorthand(std::uint32_t at, std::string_view word, bool attached) const;
  [[noreturn]] void complain_of_unit(std::uint32_t at, bool attached) const;
  struct ShiftedDigits {  ///< room for a number's digits; more than a sane number of them lie far away
    std::array<char, 64> near;
    std::string far;
  };
  std::string_view shifted(std::string_view digits, int shift, ShiftedDigits& room) const;
  double scaled(std::string_view digits) const;
  void settle_sign_of_impedance(Span& span);
  double sign_of_power(Span& span);
  std::string_view unescaped(Span string) const;

  void push(const syntax::Term& term, std::uint32_t depth);
  syntax::Term pop(std::uint32_t& depth);
  void push_composite(const syntax::Term& term, std::uint32_t depth);
  void open_frame(Frame frame, Span bracket);
  syntax::List<syntax::Phrase> phrases_from(std::size_t first);
  void wrap_unary(Span sign);
  void join_two(syntax::Term::Kind kind, std::string_view text);

  const Source* source_;
  std::string_view text_;
  syntax::Storage* storage_;
  std::uint32_t begin_ = 0, end_ = 0, last_ = 0;
  std::uint32_t last_term_ = 0;  ///< where the last value ended, if it is the last token

  std::vector<syntax::Term> terms_;
  std::vector<std::uint32_t> depths_;    ///< of each of `terms_`: how many nodes lie below it at most
  std::vector<syntax::Phrase> phrases_;  ///< finished ones of all open frames
  std::vector<Frame> frames_;
  std::vector<std::size_t> factors_;  ///< where the pending signs of each open factor begin
  std::vector<Span> pending_;         ///< signs before an operand, and carets
  std::vector<Span> operators_;       ///< + - * / whose right side is not read yet

  // The number being read.
  Span real_, imaginary_;
  std::uint32_t before_ = 0;  ///< where the token before it ended, operators not counted
  char imaginary_sign_ = '+';
  std::optional<Unit> unit_;
  std::string_view unit_text_;
};

}  // namespace wattfall
