// The door: a source goes through the layout pass, then each statement through the grammar. Mistakes are collected from
// both; what could be read stands in the tree. In: a source. Out: a syntax tree and diagnostics. Also here: taking
// phrases apart for the resolver.
#include "grammar/parse.hpp"

#include <string_view>
#include <utility>

#include "build_tree.hpp"
#include "layout.hpp"
#include "words.hpp"

namespace wattfall {
namespace {

using layout::Stretch;
using layout::Words;
using syntax::Loose;
using syntax::Phrase;
using syntax::Statement;

/// Shown of one file. Who has more has given us no feed file at all.
constexpr std::size_t most_mistakes = 1000;

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
  Reader(const Source& source, const Words& words, syntax::Storage& storage, Diagnostics& diagnostics)
      : source_(source), words_(words), storage_(storage), diagnostics_(diagnostics), draft_(source, storage) {}

  std::vector<Statement> read(const std::vector<Stretch>& stretches, Home home, bool doubtful) {
    std::vector<Statement> statements;
    statements.reserve(stretches.size());
    for (const Stretch& stretch : stretches) {
      if (diagnostics_.size() >= most_mistakes) break;
      std::optional<Statement> statement;
      if (!stretch.broken) statement = build_statement(draft_, source_, stretch, words_, diagnostics_);
      if (statement) check_block(*statement, stretch);
      const Home inner = statement ? home_in(*statement) : home;
      std::vector<Statement> body;
      if (!stretch.body.empty()) body = read(stretch.body, inner, doubtful || stretch.unclosed || !statement);
      if (!statement || !check_home(*statement, home, doubtful)) continue;
      put_body(*statement, body);
      statements.push_back(*statement);
    }
    return statements;
  }

 private:
  static Home home_in(const Statement& statement) {
    if (std::holds_alternative<syntax::Box>(statement.what)) return Home::box;
    return std::holds_alternative<syntax::Variant>(statement.what) ? Home::variant : Home::file;
  }

  void put_body(Statement& statement, const std::vector<Statement>& body) {
    if (auto* box = std::get_if<syntax::Box>(&statement.what)) box->body = storage_.keep(body);
    if (auto* variant = std::get_if<syntax::Variant>(&statement.what)) variant->body = storage_.keep(body);
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
    diagnostics_.push_back({"misplaced-statement",
                            {&source_, statement.span.begin, end},
                            "`" + word + "` does not stand in a " + (home == Home::box ? "box" : "variant"),
                            home == Home::box ? "a part, or `set`" : "any statement but `design` and `variant`",
                            ""});
    if (home == Home::box && std::holds_alternative<syntax::Box>(statement.what))
      diagnostics_.back().advice = "define it outside, where all boxes are, and use it here as a part";
    return false;
  }

  const Source& source_;
  const Words& words_;
  syntax::Storage& storage_;
  Diagnostics& diagnostics_;
  Draft draft_;
};

void cut_off(Diagnostics& diagnostics) {
  if (diagnostics.size() < most_mistakes) return;
  diagnostics.resize(most_mistakes);
  const Span last = diagnostics.back().span;
  diagnostics.push_back({"too-many-mistakes",
                         {last.source, last.end, last.end},
                         "what follows has not been read: there are 1000 mistakes before it",
                         "",
                         ""});
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

template <class T, class Build>
Result<Loose<T>> parse_piece(const SourcePtr& source, const Build& build) {
  Result<Loose<T>> result;
  const std::optional<Stretch> stretch = lone_stretch(*source, result.diagnostics);
  if (!stretch) return result;
  const auto storage = std::make_shared<syntax::Storage>();
  Draft draft(*source, *storage);
  if (const auto what = build(draft, *source, *stretch, result.diagnostics))
    result.value = Loose<T>{*what, source, storage};
  return result;
}

}  // namespace

Result<syntax::File> parse(const SourcePtr& source, const Vocabulary& vocabulary) {
  Result<syntax::File> result;
  const Words words = words_of(*source, vocabulary);
  const std::vector<Stretch> stretches = layout::split(*source, words, result.diagnostics);
  auto storage = std::make_shared<syntax::Storage>();
  Reader reader(*source, words, *storage, result.diagnostics);
  std::vector<Statement> statements = reader.read(stretches, Home::file, false);
  result.value = syntax::File{source, std::move(storage), std::move(statements)};
  sort_by_place(result.diagnostics);
  cut_off(result.diagnostics);
  return result;
}

Result<Loose<Phrase>> parse_phrase(const SourcePtr& source) {
  return parse_piece<Phrase>(source, build_expression);
}

Result<Loose<syntax::Sweep>> parse_sweep(const SourcePtr& source) {
  return parse_piece<syntax::Sweep>(source, build_sweep);
}

}  // namespace wattfall
