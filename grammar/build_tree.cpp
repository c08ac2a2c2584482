// The actions: matched text becomes the syntax tree. Each rule that means something has a line `on<rule>` here; the
// rules (rules.hpp) see to it that no action ever has to be taken back. In: one statement's text. Out: its tree, or a
// mistake.
#include "build_tree.hpp"

#include <algorithm>
#include <cctype>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "grammar/nearest_name.hpp"
#include "messages.hpp"
#include "rules.hpp"

namespace wattfall {
namespace {

namespace p = tao::pegtl;
using layout::Stretch;
using syntax::Places;
using syntax::Sweep;
using syntax::Tune;

// --- What happens on each rule ---

template <class Rule>
constexpr auto on = nullptr;

// Numbers.
template <>
constexpr auto on<rules::real_part> = [](Draft& d, Span s) { d.real_part(s); };
template <>
constexpr auto on<rules::complex_sign> = [](Draft& d, Span s) { d.imaginary_sign(s.text()[0]); };
template <>
constexpr auto on<rules::imaginary_part> = [](Draft& d, Span s) { d.imaginary_part(s); };
template <>
constexpr auto on<rules::number_literal> = [](Draft& d, Span s) { d.finish_number(s); };
template <>
constexpr auto on<rules::imaginary_literal> = [](Draft& d, Span s) { d.finish_imaginary(s); };

// Other terms.
template <>
constexpr auto on<rules::name_term> = [](Draft& d, Span s) { d.name_term(s); };
template <>
constexpr auto on<rules::of_word> = [](Draft& d, Span s) { d.name_term(s); };
template <>
constexpr auto on<rules::string_term> = [](Draft& d, Span s) { d.string_term(s); };
template <>
constexpr auto on<rules::cable_text> = [](Draft& d, Span s) { d.cable_term(s); };

// Operators.
template <>
constexpr auto on<rules::factor_begin> = [](Draft& d, Span) { d.begin_factor(); };
template <>
constexpr auto on<rules::sign> = [](Draft& d, Span s) { d.add_pending(s); };
template <>
constexpr auto on<rules::caret> = [](Draft& d, Span s) { d.add_pending(s); };
template <>
constexpr auto on<rules::signed_power> = [](Draft& d, Span) { d.finish_factor(); };
template <>
constexpr auto on<rules::product_sign> = [](Draft& d, Span s) { d.add_operator(s); };
template <>
constexpr auto on<rules::product_tail> = [](Draft& d, Span) { d.finish_binary(); };
template <>
constexpr auto on<rules::sum_sign> = [](Draft& d, Span s) { d.add_operator(s); };
template <>
constexpr auto on<rules::sum_tail> = [](Draft& d, Span) { d.finish_binary(); };
template <>
constexpr auto on<rules::pair_tail> = [](Draft& d, Span) { d.finish_pair(); };

// Brackets, lists and phrases.
template <>
constexpr auto on<rules::bracket_open> = [](Draft& d, Span s) { d.open_bracket(s); };
template <>
constexpr auto on<rules::bracket_close> = [](Draft& d, Span s) { d.close_bracket(s); };
template <>
constexpr auto on<rules::list_open> = [](Draft& d, Span s) { d.open_list(s); };
template <>
constexpr auto on<rules::list_close> = [](Draft& d, Span s) { d.close_list(s); };
template <>
constexpr auto on<rules::call_open> = [](Draft& d, Span s) { d.open_call(s); };
template <>
constexpr auto on<rules::call_close> = [](Draft& d, Span s) { d.close_call(s); };
template <>
constexpr auto on<rules::phrase> = [](Draft& d, Span) { d.finish_phrase(); };

// Places.
template <>
constexpr auto on<rules::place_word> = [](Draft& d, Span s) { d.pieces.group.push_back(d.word(s)); };
template <>
constexpr auto on<rules::single_place> = [](Draft& d, Span) { d.finish_place(false); };
template <>
constexpr auto on<rules::group_place> = [](Draft& d, Span) { d.finish_place(true); };
template <>
constexpr auto on<rules::group_close> = [](Draft& d, Span s) { d.note(s); };
template <>
constexpr auto on<rules::member> = [](Draft& d, Span s) { d.pieces.group.push_back(d.word(s)); };
template <>
constexpr auto on<rules::between_member> = [](Draft& d, Span) { d.finish_place(false); };
template <>
constexpr auto on<rules::at_places> = [](Draft& d, Span) { d.pieces.places.form = Places::Form::at; };
template <>
constexpr auto on<rules::from_places> = [](Draft& d, Span) { d.pieces.places.form = Places::Form::from_to; };
template <>
constexpr auto on<rules::between_places> = [](Draft& d, Span) { d.pieces.places.form = Places::Form::between; };
template <>
constexpr auto on<rules::places> = [](Draft& d, Span s) {
  d.pieces.places.span = d.to_last(s);
  d.pieces.places.ends = d.storage().keep(d.pieces.ends);
  d.pieces.part.places = d.pieces.places;
};

// Figures and requirements.
template <>
constexpr auto on<rules::band_name> = [](Draft& d, Span s) { d.pieces.band_name = d.string_word(s); };
template <>
constexpr auto on<rules::figure_word> = [](Draft& d, Span s) {
  std::string& words = d.pieces.figure_words;
  if (!words.empty()) words += ' ';
  words += s.text();
  d.note(s);
};
template <>
constexpr auto on<rules::preposition> = [](Draft& d, Span s) { d.pieces.figure.preposition = d.word(s); };
template <>
constexpr auto on<rules::figure_target> = [](Draft& d, Span s) { d.pieces.figure.target = d.word(s); };
template <>
constexpr auto on<rules::figure_into> = [](Draft& d, Span s) { d.pieces.figure.into = d.word(s); };
template <>
constexpr auto on<rules::figure_reference> = [](Draft& d, Span) { d.pieces.figure.reference = d.take_expression(); };
template <>
constexpr auto on<rules::figure_limit> = [](Draft& d, Span) { d.pieces.figure.below = d.take_expression(); };
template <>
constexpr auto on<rules::figure> = [](Draft& d, Span s) {
  d.pieces.figure.span = d.to_last(s);
  d.pieces.figure.words = d.storage().keep_text(std::exchange(d.pieces.figure_words, {}));
};
template <>
constexpr auto on<rules::bound> = [](Draft& d, Span s) { d.pieces.requirement.bound = d.word(s); };
template <>
constexpr auto on<rules::required_value> = [](Draft& d, Span) { d.pieces.requirement.value = d.take_expression(); };
template <>
constexpr auto on<rules::over_from> = [](Draft& d, Span) { d.pieces.over_from = d.take_expression(); };
template <>
constexpr auto on<rules::over_to> = [](Draft& d, Span) { d.pieces.over_to = d.take_expression(); };
template <>
constexpr auto on<rules::requirement> = [](Draft& d, Span s) {
  syntax::Requirement& requirement = d.pieces.requirement;
  requirement.span = d.to_last(s);
  requirement.figure = std::exchange(d.pieces.figure, {});
  requirement.over_from = std::exchange(d.pieces.over_from, {});
  requirement.over_to = std::exchange(d.pieces.over_to, {});
  requirement.over_band = std::exchange(d.pieces.band_name, {});
};

// Statements.
template <>
constexpr auto on<rules::title> = [](Draft& d, Span s) { d.pieces.text = d.string_word(s); };
template <>
constexpr auto on<rules::design_statement> = [](Draft& d, Span) { d.pieces.what = syntax::DesignTitle{d.pieces.text}; };

template <>
constexpr auto on<rules::set_name> = [](Draft& d, Span s) { d.pieces.set.name = d.new_name(s); };
template <>
constexpr auto on<rules::set_properties> = [](Draft& d, Span) { d.pieces.set.properties = d.take_properties(); };
template <>
constexpr auto on<rules::set_statement> = [](Draft& d, Span) {
  d.check_set_value(d.pieces.set.properties.front());
  d.pieces.what = d.pieces.set;
};

template <>
constexpr auto on<rules::part_kind> = [](Draft& d, Span s) { d.pieces.part.kind = d.word(s); };
template <>
constexpr auto on<rules::part_name> = [](Draft& d, Span s) { d.pieces.part.name = d.new_name(s); };
template <>
constexpr auto on<rules::part_colon> = [](Draft& d, Span) { d.pieces.in_properties = true; };
template <>
constexpr auto on<rules::part_properties> = [](Draft& d, Span) { d.pieces.part.properties = d.take_properties(); };
template <>
constexpr auto on<rules::part_statement> = [](Draft& d, Span) { d.pieces.what = d.pieces.part; };

template <>
constexpr auto on<rules::change_name> = [](Draft& d, Span s) { d.pieces.change.name = d.word(s); };
template <>
constexpr auto on<rules::change_properties> = [](Draft& d, Span) { d.pieces.change.properties = d.take_properties(); };
template <>
constexpr auto on<rules::change_statement> = [](Draft& d, Span) { d.pieces.what = d.pieces.change; };

template <>
constexpr auto on<rules::include_path> = [](Draft& d, Span s) { d.pieces.text = d.string_word(s); };
template <>
constexpr auto on<rules::include_statement> = [](Draft& d, Span) { d.pieces.what = syntax::Include{d.pieces.text}; };

template <>
constexpr auto on<rules::band_from> = [](Draft& d, Span) { d.pieces.band.from = d.take_expression(); };
template <>
constexpr auto on<rules::band_to> = [](Draft& d, Span) { d.pieces.band.to = d.take_expression(); };
template <>
constexpr auto on<rules::band_statement> = [](Draft& d, Span) {
  d.pieces.band.name = d.pieces.band_name;
  d.pieces.what = d.pieces.band;
};

template <>
constexpr auto on<rules::sweep_from> = [](Draft& d, Span) { d.pieces.sweep.from = d.take_expression(); };
template <>
constexpr auto on<rules::sweep_to> = [](Draft& d, Span) { d.pieces.sweep.to = d.take_expression(); };
template <>
constexpr auto on<rules::sweep_list> = [](Draft& d, Span) { d.pieces.sweep.list = d.take_expression(); };
template <>
constexpr auto on<rules::sweep_step> = [](Draft& d, Span) {
  d.pieces.sweep.form = Sweep::Form::step;
  d.pieces.sweep.amount = d.take_expression();
};
template <>
constexpr auto on<rules::sweep_count> = [](Draft& d, Span) {
  d.pieces.sweep.form = Sweep::Form::points;
  d.pieces.sweep.amount = d.take_expression();
};
template <>
constexpr auto on<rules::by_ratio> = [](Draft& d, Span) { d.pieces.sweep.by_ratio = true; };
template <>
constexpr auto on<rules::sweep_body> = [](Draft& d, Span) { d.pieces.sweep.band = d.pieces.band_name; };
template <>
constexpr auto on<rules::sweep_statement> = [](Draft& d, Span) { d.pieces.what = d.pieces.sweep; };

template <>
constexpr auto on<rules::knob> = [](Draft& d, Span s) { d.pieces.knobs.push_back(d.word(s)); };
template <>
constexpr auto on<rules::tune_each> = [](Draft& d, Span) { d.pieces.tune.when = Tune::When::at_each; };
template <>
constexpr auto on<rules::tune_at> = [](Draft& d, Span) {
  d.pieces.tune.when = Tune::When::at;
  d.pieces.tune.at = d.take_expression();
};
template <>
constexpr auto on<rules::tune_over> = [](Draft& d, Span) {
  Tune& tune = d.pieces.tune;
  tune.when = Tune::When::over;
  tune.from = std::exchange(d.pieces.over_from, {}).value_or(syntax::Phrase{});
  tune.to = std::exchange(d.pieces.over_to, {}).value_or(syntax::Phrase{});
  tune.band = std::exchange(d.pieces.band_name, {});
};
template <>
constexpr auto on<rules::most_or_least> = [](Draft& d, Span s) { d.pieces.tune.most = s.text() == "most"; };
template <>
constexpr auto on<rules::tune_goal> =
    [](Draft& d, Span) { d.pieces.tune.goal = d.storage().keep_one(std::exchange(d.pieces.figure, {})); };
template <>
constexpr auto on<rules::tune_requirement> =
    [](Draft& d, Span) { d.pieces.keeping.push_back(std::exchange(d.pieces.requirement, {})); };
template <>
constexpr auto on<rules::tune_statement> = [](Draft& d, Span) {
  d.pieces.tune.knobs = d.storage().keep(d.pieces.knobs);
  d.pieces.tune.keeping = d.storage().keep(d.pieces.keeping);
  d.pieces.what = d.pieces.tune;
};

template <>
constexpr auto on<rules::require_statement> =
    [](Draft& d, Span) { d.pieces.what = syntax::Require{d.storage().keep_one(d.pieces.requirement)}; };

template <>
constexpr auto on<rules::plane_name> = [](Draft& d, Span s) { d.pieces.plane.name = d.new_name(s); };
template <>
constexpr auto on<rules::plane_node> = [](Draft& d, Span s) { d.pieces.plane.node = d.word(s); };
template <>
constexpr auto on<rules::plane_into> = [](Draft& d, Span s) { d.pieces.plane.into = d.word(s); };
template <>
constexpr auto on<rules::plane_statement> = [](Draft& d, Span) { d.pieces.what = d.pieces.plane; };

template <>
constexpr auto on<rules::box_name> = [](Draft& d, Span s) { d.pieces.box.name = d.new_name(s); };
template <>
constexpr auto on<rules::port_name> = [](Draft& d, Span s) { d.pieces.ports.push_back(d.new_name(s)); };
template <>
constexpr auto on<rules::with_name> = [](Draft& d, Span s) { d.pieces.with_name = d.new_name(s); };
template <>
constexpr auto on<rules::with_value> =
    [](Draft& d, Span) { d.pieces.with.emplace_back(d.pieces.with_name, d.take_expression()); };
template <>
constexpr auto on<rules::box_statement> = [](Draft& d, Span) {
  d.pieces.box.ports = d.storage().keep(d.pieces.ports);
  d.pieces.box.with = d.storage().keep(d.pieces.with);
  d.pieces.what = d.pieces.box;
};

template <>
constexpr auto on<rules::variant_name> = [](Draft& d, Span s) { d.pieces.text = d.string_word(s); };
template <>
constexpr auto on<rules::variant_statement> = [](Draft& d, Span) {
  d.pieces.what = syntax::Variant{d.pieces.text, {}};
};

// --- PEGTL's hooks ---

template <class Rule>
struct Apply {
  template <class Input>
  static void apply(const Input& in, Draft& draft) {
    on<Rule>(draft, draft.span(in.begin(), in.end()));
  }
};

template <class Rule>
struct action
    : std::conditional_t<std::is_null_pointer_v<std::remove_cv_t<decltype(on<Rule>)>>, p::nothing<Rule>, Apply<Rule>> {
};

template <class Rule>
struct control : p::normal<Rule> {
  template <class Input>
  [[noreturn]] static void raise(const Input& in, Draft& draft) {
    static_assert(wanted<Rule>.code != nullptr, "a rule in a must<> needs an entry in messages.hpp");
    draft.fail(wanted<Rule>, in.current());
  }
};

/// Reads [begin, end) by a rule; throws a Mistake where it does not fit.
template <class Rule>
void read(Draft& draft, const Source& source, std::uint32_t begin, std::uint32_t end) {
  draft.start(begin, end);
  const char* text = source.text().data();
  // The positions that PEGTL would count are not wanted: places are offsets here.
  p::memory_input<p::tracking_mode::lazy, p::eol::lf, const char*> in(text + begin, text + end, "");
  p::parse<Rule, action, control>(in, draft);
}

// --- Statements ---

/// A word that begins no statement and no part known, and is near to one that does.
std::optional<Diagnostic> misspelled_statement(const Source& source, const Stretch& stretch,
                                               const layout::Words& words) {
  const std::string_view text = source.text().substr(stretch.begin, stretch.end - stretch.begin);
  std::size_t length = 0;
  while (length < text.size() && (std::isalnum(static_cast<unsigned char>(text[length])) != 0 || text[length] == '_'))
    ++length;
  const std::string word(text.substr(0, length));
  if (word.empty() || words.contains(word)) return std::nullopt;
  const Span span{&source, stretch.begin, stretch.begin + static_cast<std::uint32_t>(length)};
  const std::size_t next = text.find_first_not_of(" \t", length);
  Diagnostic diagnostic{"unknown-statement", span, "`" + word + "` begins no statement, and is no kind of part",
                        "a statement's word, or a kind of part and its name", ""};
  if (next != std::string_view::npos && text[next] == '=') {
    diagnostic.hint = "set " + word;
    return diagnostic;
  }
  std::vector<std::string> known;
  for (const std::string_view each : words.keywords) known.emplace_back(each);
  for (const std::string_view each : words.kinds) known.emplace_back(each);
  std::sort(known.begin(), known.end());
  diagnostic.hint = nearest_name(word, known);
  if (word == "end" && length == text.size()) diagnostic.hint = "}";
  if (word == "rem" || word == "REM") diagnostic.hint = "#";
  return diagnostic;
}

/// Where the property after the one at `from` begins, so that the rest of a list can be read after a mistake in it; the
/// end of the statement if there is none, or the mistake stands before the properties.
std::uint32_t next_property(std::string_view text, const Stretch& stretch, std::uint32_t from) {
  const std::string_view first = text.substr(stretch.begin, stretch.end - stretch.begin);
  for (const std::string_view word :
       {"tune ", "sweep ", "require ", "box ", "band ", "plane ", "design ", "include ", "variant "}) {
    if (first.starts_with(word)) return stretch.end;
  }
  int depth = 0;
  bool in_properties = false;
  for (std::size_t at = stretch.begin; at < stretch.end; at = layout::past_token(text, at)) {
    const char c = text[at];
    if (c == '(' || c == '[') ++depth;
    if (c == ')' || c == ']') --depth;
    if (depth > 0) continue;
    if (c == ':' || c == '=') in_properties = in_properties || at < from;
    if (c == ',' && in_properties && at >= from) return static_cast<std::uint32_t>(at + 1);
  }
  return stretch.end;
}

/// Whether the text begins as a part does, so that its kind may be a box from another file or a plugin's.
bool looks_like_part(const Source& source, const Stretch& stretch) {
  using namespace rules;
  const char* text = source.text().data();
  p::memory_input<p::tracking_mode::lazy, p::eol::lf, const char*> in(text + stretch.begin, text + stretch.end, "");
  return p::parse<p::seq<identifier, ws, identifier, ws, p::sor<kw_at, kw_from, kw_between>>>(in);
}

constexpr int most_mistakes = 20;  ///< shown of one statement

/// Goes on behind a mistake in a property list, only to see what else is wrong.
void read_other_properties(Draft& draft, const Source& source, const Stretch& stretch, Diagnostics& diagnostics) {
  for (int count = 1; count < most_mistakes; ++count) {
    const std::uint32_t next = next_property(source.text(), stretch, diagnostics.back().span.end);
    if (next >= stretch.end) return;
    try {
      read<rules::lone_properties>(draft, source, next, stretch.end);
      return;
    } catch (Mistake& mistake) {
      diagnostics.push_back(std::move(mistake.diagnostic));
    }
  }
}

}  // namespace

std::optional<syntax::Statement> build_statement(Draft& draft, const Source& source, const Stretch& stretch,
                                                 const layout::Words& words, Diagnostics& diagnostics) {
  try {
    read<rules::statement>(draft, source, stretch.begin, stretch.end);
    return syntax::Statement{{&source, stretch.begin, stretch.end}, *draft.pieces.what};
  } catch (Mistake& mistake) {
    std::optional<Diagnostic> misspelled = misspelled_statement(source, stretch, words);
    const bool better =
        misspelled && !draft.pieces.in_properties && (!misspelled->hint.empty() || !looks_like_part(source, stretch));
    diagnostics.push_back(better ? *std::move(misspelled) : std::move(mistake.diagnostic));
    if (!better) read_other_properties(draft, source, stretch, diagnostics);
  }
  return std::nullopt;
}

std::optional<syntax::Phrase> build_expression(Draft& draft, const Source& source, const Stretch& stretch,
                                               Diagnostics& diagnostics) {
  try {
    read<rules::lone_expression>(draft, source, stretch.begin, stretch.end);
    return draft.take_expression();
  } catch (Mistake& mistake) {
    diagnostics.push_back(std::move(mistake.diagnostic));
  }
  return std::nullopt;
}

std::optional<Sweep> build_sweep(Draft& draft, const Source& source, const Stretch& stretch, Diagnostics& diagnostics) {
  try {
    read<rules::lone_sweep>(draft, source, stretch.begin, stretch.end);
    return draft.pieces.sweep;
  } catch (Mistake& mistake) {
    diagnostics.push_back(std::move(mistake.diagnostic));
  }
  return std::nullopt;
}

}  // namespace wattfall
