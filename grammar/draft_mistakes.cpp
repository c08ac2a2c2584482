// Says that something else was wanted where the text has gone on: what stands there, what could, and what was most
// likely meant. In: what a rule wants (messages.hpp) and a place. Out: a Mistake, thrown.
#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "draft.hpp"
#include "grammar/nearest_name.hpp"
#include "letters.hpp"

namespace wattfall {
namespace {

/// The plain character that a word processor or a web page has put a look-alike for.
std::string_view plain_for(std::string_view odd) {
  using Pair = std::pair<std::string_view, std::string_view>;
  static constexpr std::array<Pair, 20> table{{{"\u2212", "-"},
                                               {"\u2013", "-"},
                                               {"\u2014", "-"},
                                               {"\u2010", "-"},
                                               {"\u2011", "-"},
                                               {"\u00D7", "*"},
                                               {"\u00B7", "*"},
                                               {"\u22C5", "*"},
                                               {"\u2044", "/"},
                                               {"\u00F7", "/"},
                                               {"\u201C", "\""},
                                               {"\u201D", "\""},
                                               {"\u201E", "\""},
                                               {"\u00AB", "\""},
                                               {"\u00BB", "\""},
                                               {"\u2018", "\""},
                                               {"\u2019", "\""},
                                               {"\u00A0", "a plain blank"},
                                               {"\u2009", "a plain blank"},
                                               {"\u202F", "a plain blank"}}};
  for (const auto& [written, plain] : table) {
    if (written == odd) return plain;
  }
  return {};
}

std::vector<std::string> split_words(std::string_view text) {
  std::vector<std::string> words;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    words.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

/// Signs and words of other languages that come to the fingers by habit.
constexpr std::array<std::pair<std::string_view, std::string_view>, 31> habits{
    {{"<", "below"},        {"<=", "below"},     {">=", "above"},      {"less", "below"},    {"lower", "below"},
     {"smaller", "below"},  {"more", "above"},   {"greater", "above"}, {"larger", "above"},  {"higher", "above"},
     {"in", "at"},          {"on", "at"},        {"and", "to"},        {"->", "to"},         {"-", "to"},
     {"..", "to"},          {",", "to"},         {"highest", "most"},  {"best", "most"},     {"lowest", "least"},
     {"smallest", "least"}, {"@", "at"},         {">", "above"},       {"under", "below"},   {"over", "above"},
     {"max", "most"},       {"maximum", "most"}, {"min", "least"},     {"minimum", "least"}, {",", "and"},
     {"through", "to"}}};

/// What was most likely meant where `found` stands and `wanted` should.
std::string likely_word(std::string_view found, const Wanted& wanted) {
  const std::string_view expected = wanted.expected;
  for (const std::string_view sign : {"=", ":"}) {
    const bool other = found == "=" || found == ":";
    if (other && expected.size() > 2 && expected[0] == '`' && expected.substr(1, 1) == sign) return std::string(sign);
  }
  const std::vector<std::string> words = split_words(wanted.words);
  for (const auto& [habit, meant] : habits) {
    const bool places = meant == "to" && std::string_view(wanted.code) != "word-expected";
    if (found == habit && !places && std::find(words.begin(), words.end(), meant) != words.end())
      return std::string(meant);
  }
  return nearest_name(found, words);
}

}  // namespace

/// Past blanks; in brackets also past line ends and comments, which mean as much there.
std::uint32_t Draft::skip_blanks(std::uint32_t at) const {
  for (; at < end_; ++at) {
    if (text_[at] == '#') at = static_cast<std::uint32_t>(std::min<std::size_t>(text_.find('\n', at), end_ - 1));
    if (!is_space(text_[at])) return at;
  }
  return at;
}

Span Draft::token_at(std::uint32_t at) const {
  if (at >= end_) return at_end();
  const char c = text_[at];
  std::uint32_t end = at + 1;
  if (is_word(c)) {
    while (end < end_ && (is_word(text_[end]) || (text_[end] == '.' && end + 1 < end_ && is_word(text_[end + 1]))))
      ++end;
  } else if (c == '"') {
    end = static_cast<std::uint32_t>(std::min<std::size_t>(layout::past_token(text_, at), end_));
  } else if (const std::string_view two = text_.substr(at, 2);
             two == "<=" || two == ">=" || two == "->" || two == "..") {
    end = at + 2;
  } else {
    while (end < end_ && (static_cast<unsigned char>(text_[end]) & 0xC0U) == 0x80U) ++end;
  }
  return {source_, at, end};
}

void Draft::mistake(const char* code, Span where, std::string text, std::string expected, std::string hint) const {
  throw Mistake{{code, where, std::move(text), std::move(expected), std::move(hint)}};
}

/// `resistor at desk : 50 ohm`: the place's own word has been read as the name that is missing.
void Draft::check_part_has_name() const {
  const syntax::Word& name = pieces.part.name;
  if (name.text != "at" && name.text != "from" && name.text != "between") return;
  mistake("name-expected", name.span, "this part has no name",
          "a name between " + quoted(pieces.part.kind.text) + " and " + quoted(name.text));
}

/// The names that `band` statements give, as they stand in the text: each alone at the start of a line.
std::vector<std::string_view> Draft::band_names() const {
  std::vector<std::string_view> names;
  for (std::size_t at = text_.find("band"); at != std::string_view::npos; at = text_.find("band", at + 4)) {
    const std::size_t line = at == 0 ? 0 : text_.rfind('\n', at - 1) + 1;
    const std::size_t open = text_.find_first_not_of(" \t", at + 4);
    if (text_.substr(line, at - line).find_first_not_of(" \t") != std::string_view::npos) continue;
    if (open == std::string_view::npos || text_[open] != '"') continue;
    const std::string_view name = text_.substr(open, layout::past_token(text_, open) - open);
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return names;
}

/// What stands there, as the name it was most likely meant to be: `40 m` as "40 m"; but `7 MHz` is no name at all.
std::string Draft::likely_band(Span found) const {
  const std::string_view word = found.text();
  if (!is_word(word.front())) return {};
  std::string name = std::string("\"").append(word);
  if (is_digit(word.front())) {
    const Span next = token_at(skip_blanks(found.end));
    const std::optional<Unit> unit = find_unit(next.text());
    const std::optional<Unit> glued =
        find_unit(word.substr(std::min(word.find_first_not_of("0123456789."), word.size())));
    if ((unit && unit->dim == dimension::frequency) || (glued && glued->dim == dimension::frequency)) return {};
    if (unit && unit->dim == dimension::length) name.append(" ").append(next.text());
  }
  return name + '"';
}

/// A band's name without its quotes, or no name at all.
void Draft::complain_of_band(Span found) const {
  if (text_.substr(begin_, end_ - begin_).starts_with("band")) {
    mistake("string-expected", found, "the band has no name in quotes",
            "a name and two ends: band \"40 m\" 7.0 MHz to 7.2 MHz", likely_band(found));
  }
  std::string expected = "the name of a band in quotes";
  std::string hint = likely_band(found);
  const std::vector<std::string_view> names = band_names();
  for (const std::string_view name : names) expected.append(name == names.front() ? ": " : ", ").append(name);
  if (!hint.empty() && !names.empty() && std::find(names.begin(), names.end(), hint) == names.end())
    hint = nearest_name(hint, std::vector<std::string>(names.begin(), names.end()));
  if (names.empty()) expected += "; a `band` statement gives one, such as band \"40 m\" 7.0 MHz to 7.2 MHz";
  mistake("string-expected", found, "a band is named in quotes", std::move(expected), std::move(hint));
}

/// What other languages, and the bench's shorthand, write where this one writes something else.
void Draft::complain_of_habit(const Wanted& wanted, Span found) const {
  const std::string_view sign = found.text();
  const std::string_view code = wanted.code;
  const bool at_end = code == "unexpected-text";
  if (at_end && sign == "@")
    mistake("unexpected-text", found, "a frequency follows `at`, not `@`", "`at` and a frequency", "at");
  const bool after_digit = found.begin > begin_ && is_digit(text_[found.begin - 1]);
  if (at_end && sign == "<" && after_digit)
    mistake("unexpected-text", found, "an impedance is written by its real and imaginary part",
            "a value such as 28+j208 ohm");
  const bool dashes = sign == "-" && text_.substr(found.begin, 2) == "--";
  if (at_end && (sign == "!" || dashes))
    mistake("unexpected-text", {source_, found.begin, found.begin + (dashes ? 2 : 1)}, "this begins no comment",
            "`#` before a comment, or " + std::string(wanted.expected), "#");
  if (at_end && sign == ";")
    mistake("unexpected-text", found, "`;` ends nothing here", "a statement on a line of its own");
  if (at_end && sign == ":")
    mistake("unexpected-text", found, "a ratio cannot stand here", "a plain number, such as 1.5 where 1.5:1 is meant");
  const bool slashes = sign == "/" && found.begin > begin_ && text_[found.begin - 1] == '/';
  if (slashes && code == "value-expected")
    mistake("value-expected", {source_, found.begin - 1, found.end}, "`//` begins no comment", "`#` before a comment",
            "#");
  const bool of_sweep = wanted.words == std::string_view("to") && pieces.part.kind.text.empty();
  if (of_sweep && last_ < found.begin && token_before_is(found.begin, "from"))
    mistake("word-expected", {source_, last_ - 4, last_}, "a range begins with its lower end, without `from`",
            "A to B");
  if (code == "sign-expected" && is_digit(sign.front()) && text_.substr(begin_, end_ - begin_).starts_with("sweep"))
    mistake("sign-expected", found, "single frequencies stand in a list", wanted.expected,
            std::string("[").append(rest(found.begin)).append("]"));
  complain_of_repeated_sign(wanted, found);
  if (code == "word-expected" && sign == "and" && text_.substr(begin_, end_ - begin_).starts_with("tune") &&
      wanted.words == std::string_view("at over"))
    mistake("word-expected", found, "knobs are parted by commas", "a comma, or when to tune", ",");
}

/// `**` for a power, `==` for an equals sign.
void Draft::complain_of_repeated_sign(const Wanted& wanted, Span found) const {
  const std::string_view sign = found.text();
  const bool again = found.begin > begin_ && text_[found.begin - 1] == sign.front();
  if (std::string_view(wanted.code) != "value-expected" || !again || (sign != "*" && sign != "=")) return;
  const Span both{source_, found.begin - 1, found.end};
  mistake("value-expected", both, quoted(both.text()) + " is no sign here", wanted.expected, sign == "*" ? "^" : "=");
}

/// What else stands where a range has its `to`, or a sweep the rest of it.
void Draft::complain_of_range(const Wanted& wanted, std::uint32_t at) const {
  const std::string_view statement = text_.substr(begin_, end_ - begin_);
  const bool sweep = statement.starts_with("sweep"), band = statement.starts_with("band");
  const bool request = statement.starts_with("require") || statement.starts_with("tune");
  if (sweep && wanted.words == std::string_view("points") && token_before_is(at, "step")) {
    const auto comma = static_cast<std::uint32_t>(text_.rfind(',', at));
    mistake("unexpected-text", {source_, comma, comma + 1}, "a comma cannot stand before `step`",
            "`step` and a frequency, straight after the range");
  }
  if (wanted.words == std::string_view("for") && at < end_ && token_at(at).text() == "frequency" &&
      statement.starts_with("tune")) {
    const auto every = static_cast<std::uint32_t>(text_.find_last_not_of(" \t", at - 1) + 1);
    std::uint32_t begin = every;
    while (begin > begin_ && is_word(text_[begin - 1])) --begin;
    mistake("word-expected", {source_, begin, every}, quoted(text_.substr(begin, every - begin)) + " cannot stand here",
            "`each frequency`", "each");
  }
  if (wanted.words != std::string_view("to") || (!sweep && !band && !request)) return;
  const std::size_t word = request ? text_.substr(0, at).rfind("over ") : begin_ + (sweep ? 5U : 4U);
  if (word == std::string_view::npos || word < begin_) return;
  std::uint32_t begin = skip_blanks(static_cast<std::uint32_t>(word + (request ? 5 : 0)));
  if (band) begin = skip_blanks(token_at(begin).end);
  const Span first = token_at(begin);
  if (text_[begin] == '"') {
    mistake("word-expected", first, "the name of a band follows `band`", "`band` and its name",
            std::string("band ").append(first.text()));
  }
  if (sweep && text_[begin] == '[')
    mistake("word-expected", first, "a list of frequencies follows `at`", "`at` and the list", "at [");
  const std::string_view range = text_.substr(begin, at - begin);
  const std::size_t minus = range.find('-');
  const bool one = minus != std::string_view::npos && minus > 0 && range.find('-', minus + 1) == std::string_view::npos;
  const char before = one ? range[minus - 1] : ' ';
  if (one && before != 'e' && before != 'E') {
    const auto sign = begin + static_cast<std::uint32_t>(minus);
    mistake("word-expected", {source_, sign, sign + 1}, "a minus sign makes no range", "A to B", "to");
  }
  // `sweep 40 m`
  const std::string_view unit = token_at(skip_blanks(first.end)).text();
  const std::string_view glued =
      first.text().substr(std::min(first.text().find_first_not_of("0123456789."), first.text().size()));
  const bool metres = is_digit(text_[begin]) && (unit == "m" || unit == "cm" || glued == "m" || glued == "cm");
  if (metres && (sweep || request)) complain_of_band(first);
}

/// What was most likely meant in a part's places, beyond one word for another.
std::string Draft::likely_place(const Wanted& wanted, Span found) const {
  if (pieces.part.kind.text.empty() || pieces.in_properties) return {};
  const std::string_view text = found.text();
  const std::string_view code = wanted.code;
  if (code == "word-expected" && (wanted.words == std::string_view("to") || wanted.words == std::string_view("and"))) {
    if (text == ":" && wanted.words == std::string_view("to")) return "to ground";
    if (is_letter(text.front()) && likely_word(text, wanted).empty())
      return std::string(wanted.words).append(" ").append(text);
  }
  if (code != "sign-expected" || wanted.words != std::string_view("to")) return {};
  const std::size_t colon = std::min<std::size_t>(text_.find(':', found.begin), end_);
  const std::uint32_t next = skip_blanks(found.end);
  if (text == "," && next < colon && is_letter(text_[next]) && colon < end_ && !pieces.ends.empty() &&
      !pieces.ends.back().empty()) {
    std::string_view others = text_.substr(found.begin, colon - found.begin);
    others = others.substr(0, others.find_last_not_of(" \t") + 1);
    if (others.size() < 60) return std::string("(").append(pieces.ends.back().back().text).append(others).append(")");
  }
  return text == "," || is_digit(text.front()) ? ":" : std::string{};
}

bool Draft::token_before_is(std::uint32_t at, std::string_view word) const {
  const std::string_view before = text_.substr(begin_, at - begin_);
  const std::size_t end = before.find_last_not_of(" \t");
  return end != std::string_view::npos && before.substr(0, end + 1).ends_with(word);
}

/// The next step, where one is near: the word, the sign or the quotes that are missing.
std::string Draft::likely(const Wanted& wanted, Span found) const {
  const std::string_view text = found.text();
  const std::string_view code = wanted.code;
  if (code == "unknown-statement") return std::string_view("*/;!%'-").find(text) != std::string_view::npos ? "#" : "";
  if (std::string place = likely_place(wanted, found); !place.empty()) return place;
  if (code == "unexpected-text" && text == "by" && text_.substr(begin_, end_ - begin_).starts_with("sweep"))
    return ", by";
  const bool equals = std::string_view(wanted.expected).starts_with("`=`");
  if (equals && code == "sign-expected" && is_word(text.front())) return "=";
  // `set a-b = 3`
  const bool hyphen = equals && text == "-" && found.end < end_ && is_word(text_[found.end]);
  if (hyphen && !pieces.set.name.text.empty())
    return std::string(pieces.set.name.text).append("_").append(token_at(found.end).text());
  if (code != "string-expected") return likely_word(text, wanted);
  if (text == "'") return "\"";
  if (!is_word(text.front())) return {};
  // A title may have several words; a band's name is followed by its ends.
  const bool rest_is_name = wanted.words == std::string_view("rest");
  return std::string("\"").append(rest_is_name ? rest(found.begin) : text).append("\"");
}

void Draft::fail(const Wanted& wanted, const char* place) const {
  std::uint32_t at = offset(place);
  // A keyword's rule may have read the beginning of a longer word: `to` in `too`.
  while (at > last_ && at < end_ && is_word(text_[at]) && is_word(text_[at - 1])) --at;
  while (at < end_ && is_space(text_[at])) ++at;
  complain_of_range(wanted, at);
  if (at >= end_) {
    if (std::string_view(wanted.code) == "place-expected") check_part_has_name();
    mistake("unfinished-statement", at_end(), "the statement ends too early", wanted.expected);
  }
  const Span token = token_at(at);
  const std::string_view found = token.text();
  const std::string name = quoted(found);
  if (std::string_view(wanted.code) == "place-expected") check_part_has_name();
  if (static_cast<unsigned char>(found.front()) >= 0x80) {
    const std::string_view plain = plain_for(found);
    const bool in_name = plain.empty() && at > begin_ && is_word(text_[at - 1]);
    mistake("invalid-character", token, name + " cannot stand outside a string or a comment",
            in_name ? "a name of the letters a to z, digits and `_`" : wanted.expected, std::string(plain));
  }
  if (is_letter(found.front()) && last_ == last_term_ && find_unit(found)) {
    mistake("unit-after-expression", token, "a unit follows a number only, and " + name + " does not",
            "a number with its unit, such as 3 " + std::string(found));
  }
  if (found == "=" && std::string_view(wanted.code) == "unexpected-text") {
    mistake("stray-equals", token, "a property takes its value without `=`", "a value straight after the name");
  }
  if (wanted.words == std::string_view("band")) complain_of_band(token);
  complain_of_habit(wanted, token);
  const bool bad_name =
      std::string_view(wanted.code) == "name-expected" && (is_digit(found.front()) || found.front() == '_');
  if (bad_name && std::string_view(wanted.expected).find("node") == std::string_view::npos)
    mistake(wanted.code, token, name + " cannot stand here",
            std::string(wanted.expected) + ": a letter, then letters, digits and `_`");
  if (bad_name && found == "0") mistake(wanted.code, token, name + " cannot stand here", wanted.expected, "ground");
  mistake(wanted.code, token, name + " cannot stand here", wanted.expected, likely(wanted, token));
}

}  // namespace wattfall
