// The door: a source goes through the layout pass, then each statement through the grammar. Mistakes are collected from
// both; what could be read stands in the tree. In: a source. Out: a syntax tree and diagnostics. Also here: taking
// phrases apart for the resolver.
#include "grammar/parse.hpp"

#include <array>
#include <string_view>
#include <utility>

#include "build_tree.hpp"
#include "layout.hpp"

namespace wattfall {
namespace {

using layout::Stretch;
using layout::Words;
using syntax::Phrase;
using syntax::Statement;
using syntax::Term;
using Kind = Term::Kind;

constexpr std::array<std::string_view, 11> statement_words{"design", "set",     "change", "include", "band",   "sweep",
                                                           "tune",   "require", "plane",  "box",     "variant"};

enum class Home { file, variant, box };

/// Statements that are read and then turned away, because of the block that they stand in.
bool may_stand(const Statement& statement, Home home) {
  const bool variant = std::holds_alternative<syntax::Variant>(statement.what);
  const bool title = std::holds_alternative<syntax::DesignTitle>(statement.what);
  switch (home) {
    case Home::file:
      return true;
    case Home::variant:
      return !variant && !title;
    case Home::box:
      return std::holds_alternative<syntax::Part>(statement.what) ||
             std::holds_alternative<syntax::Set>(statement.what);
  }
  return true;
}

class Reader {
 public:
  Reader(const Source& source, const Words& words, Diagnostics& diagnostics)
      : source_(source), words_(words), diagnostics_(diagnostics), draft_(source) {}

  std::vector<Statement> read(const std::vector<Stretch>& stretches, Home home, bool doubtful) {
    std::vector<Statement> statements;
    statements.reserve(stretches.size());
    for (const Stretch& stretch : stretches) {
      std::optional<Statement> statement;
      if (!stretch.broken) statement = build_statement(draft_, source_, stretch, words_, diagnostics_);
      if (statement) check_block(*statement, stretch);
      const Home inner = statement ? home_in(*statement) : home;
      std::vector<Statement> body = read(stretch.body, inner, doubtful || stretch.unclosed || !statement);
      if (!statement || !check_home(*statement, home, doubtful)) continue;
      put_body(*statement, std::move(body));
      statements.push_back(std::move(*statement));
    }
    return statements;
  }

 private:
  static Home home_in(const Statement& statement) {
    if (std::holds_alternative<syntax::Box>(statement.what)) return Home::box;
    return std::holds_alternative<syntax::Variant>(statement.what) ? Home::variant : Home::file;
  }

  static void put_body(Statement& statement, std::vector<Statement> body) {
    if (auto* box = std::get_if<syntax::Box>(&statement.what)) box->body = std::move(body);
    if (auto* variant = std::get_if<syntax::Variant>(&statement.what)) variant->body = std::move(body);
  }

  void check_block(const Statement& statement, const Stretch& stretch) {
    const bool wants = home_in(statement) != Home::file;
    if (wants == stretch.is_block) return;
    if (wants) {
      diagnostics_.push_back({"block-expected",
                              {&source_, stretch.end, stretch.end},
                              "what belongs to this is missing",
                              "`{` at the end of this line, and `}` on a line of its own after the block",
                              ""});
    } else {
      diagnostics_.push_back({"block-unexpected",
                              {&source_, stretch.brace, stretch.brace + 1},
                              "only `box` and `variant` have a block",
                              "the end of the statement",
                              ""});
    }
  }

  /// In a block that was never closed, or whose header could not be read, nobody knows what belongs inside.
  bool check_home(const Statement& statement, Home home, bool doubtful) {
    if (may_stand(statement, home)) return true;
    if (doubtful) return false;
    const std::string_view text = statement.span.text();
    const std::string word(text.substr(0, text.find_first_of(" \t\"")));
    const auto end = statement.span.begin + static_cast<std::uint32_t>(word.size());
    diagnostics_.push_back(
        {"misplaced-statement",
         {&source_, statement.span.begin, end},
         "`" + word + "` does not stand in a " + (home == Home::box ? "box" : "variant"),
         home == Home::box ? "a part, or `set`" : "a part, `set`, `change`, `tune`, `require` or `plane`",
         ""});
    return false;
  }

  const Source& source_;
  const Words& words_;
  Diagnostics& diagnostics_;
  Draft draft_;
};

Words words_of(const Source& source, const Vocabulary& vocabulary) {
  Words words;
  words.keywords.insert(statement_words.begin(), statement_words.end());
  words.kinds.insert(vocabulary.kinds.begin(), vocabulary.kinds.end());
  layout::add_box_names(source.text(), words.kinds);
  return words;
}

/// The one stretch of an option's text.
std::optional<Stretch> lone_stretch(const Source& source, Diagnostics& diagnostics) {
  const std::vector<Stretch> stretches = layout::split(source, {}, diagnostics);
  const auto size = static_cast<std::uint32_t>(source.text().size());
  if (!diagnostics.empty()) return std::nullopt;
  if (stretches.empty()) return Stretch{size, size, 0, false, false, false, {}};
  if (stretches.size() == 1 && !stretches[0].is_block) return stretches[0];
  const std::uint32_t at = stretches[0].is_block ? stretches[0].brace : stretches[1].begin;
  const std::uint32_t end = stretches[0].is_block ? at + 1 : stretches[1].end;
  diagnostics.push_back(
      {"unexpected-text", {&source, at, end}, "this does not belong here", "the end of the text", ""});
  return std::nullopt;
}

// --- Taking phrases apart
// -----------------------------------------------------------------------------------------------

Term bracket_of(const Term& call) {
  Term bracket;
  bracket.kind = Kind::bracket;
  bracket.span = call.span;
  const std::size_t open = call.span.text().find('(');
  if (open != std::string_view::npos) bracket.span.begin += static_cast<std::uint32_t>(open);
  bracket.operands.push_back(call.phrases.front().front());
  return bracket;
}

/// `term` without the name at its left end; none where the name does not stand there, or what is left is no value.
std::optional<Term> without_name(const Term& term, const std::string& name) {
  if (term.kind == Kind::call) {
    const bool one_value = term.phrases.size() == 1 && term.phrases.front().size() == 1;
    if (term.text == name && one_value) return bracket_of(term);
    return std::nullopt;
  }
  if (term.kind != Kind::binary) return std::nullopt;
  const Term& left = term.operands[0];
  const bool is_name = left.kind == Kind::name && left.text == name;
  if (is_name && term.text != "+" && term.text != "-") return std::nullopt;
  Term result;
  result.text = term.text;
  if (is_name) {
    result.kind = Kind::unary;
    result.span = join(syntax::operator_span(term), term.operands[1].span);
    result.operands.push_back(term.operands[1]);
    return result;
  }
  std::optional<Term> rest = without_name(left, name);
  if (!rest) return std::nullopt;
  result.kind = Kind::binary;
  result.span = join(rest->span, term.operands[1].span);
  result.operands.push_back(std::move(*rest));
  result.operands.push_back(term.operands[1]);
  return result;
}

}  // namespace

Span syntax::span_of(const Phrase& phrase) {
  if (phrase.empty()) return {};
  return join(phrase.front().span, phrase.back().span);
}

Span syntax::operator_span(const Term& term) {
  if (term.span.source == nullptr || term.operands.size() != 2) return term.span;
  const std::string_view text = term.span.source->text();
  std::uint32_t at = term.operands[0].span.end;
  while (at < term.operands[1].span.begin && !text.substr(at).starts_with(term.text)) {
    at = static_cast<std::uint32_t>(layout::past_token(text, at));
  }
  return {term.span.source, at, at + static_cast<std::uint32_t>(term.text.size())};
}

const Vocabulary& standard_vocabulary() {
  static const Vocabulary vocabulary{{"source", "load", "resistor", "inductor", "capacitor", "line", "stub",
                                      "transformer", "balun", "choke", "coupling", "pad", "twoport", "selector"}};
  return vocabulary;
}

Result<syntax::File> parse(const SourcePtr& source, const Vocabulary& vocabulary) {
  Result<syntax::File> result;
  const Words words = words_of(*source, vocabulary);
  const std::vector<Stretch> stretches = layout::split(*source, words, result.diagnostics);
  Reader reader(*source, words, result.diagnostics);
  result.value = syntax::File{source, reader.read(stretches, Home::file, false)};
  sort_by_place(result.diagnostics);
  return result;
}

Result<Phrase> parse_phrase(const SourcePtr& source) {
  Result<Phrase> result;
  const std::optional<Stretch> stretch = lone_stretch(*source, result.diagnostics);
  Draft draft(*source);
  if (stretch) result.value = build_expression(draft, *source, *stretch, result.diagnostics);
  return result;
}

Result<syntax::Sweep> parse_sweep(const SourcePtr& source) {
  Result<syntax::Sweep> result;
  const std::optional<Stretch> stretch = lone_stretch(*source, result.diagnostics);
  Draft draft(*source);
  if (stretch) result.value = build_sweep(draft, *source, *stretch, result.diagnostics);
  return result;
}

std::optional<Phrase> rest_after(const Phrase& phrase, const std::vector<std::string>& words) {
  if (words.empty()) return phrase;
  if (phrase.size() < words.size()) return std::nullopt;
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (phrase[i].kind != Kind::name || phrase[i].text != words[i]) return std::nullopt;
  }
  const Term& last = phrase[words.size() - 1];
  Phrase rest;
  if (last.kind != Kind::name || last.text != words.back()) {
    std::optional<Term> left = without_name(last, words.back());
    if (!left) return std::nullopt;
    rest.push_back(std::move(*left));
  }
  rest.insert(rest.end(), phrase.begin() + static_cast<std::ptrdiff_t>(words.size()), phrase.end());
  return rest;
}

}  // namespace wattfall
