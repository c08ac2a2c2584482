// Places in phrases, and taking phrases apart for the resolver, who alone knows which words are a property's name. In:
// terms as they were read. Out: spans; what is left behind a name.
#include <array>
#include <string_view>
#include <vector>

#include "grammar/parse.hpp"
#include "layout.hpp"

namespace wattfall {

using syntax::Phrase;
using syntax::Term;
using Kind = Term::Kind;

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

namespace {

Term bracket_of(const Term& call) {
  Term bracket;
  bracket.kind = Kind::bracket;
  bracket.span = call.span;
  const std::size_t open = call.span.text().find('(');
  if (open != std::string_view::npos) bracket.span.begin += static_cast<std::uint32_t>(open);
  bracket.operands = call.phrases.front();
  return bracket;
}

bool is_power_in_dbm(const Term& term) {
  return term.kind == Kind::number && term.text == "dBm";
}

/// `-10 dBm` out of `power - 10 dBm`: -x dBm is 1 mW^2 over x dBm.
Term signed_dbm(const Term& term) {
  Term power = term.operands[1];
  power.span = join(syntax::operator_span(term), power.span);
  if (term.text == "-") power.quantity.value = 1e-6 / power.quantity.value;
  return power;
}

/// `term` without the name at its left end; none where the name does not stand there, or what is left is no value.
std::optional<Term> without_name(const Term& term, std::string_view name, syntax::Storage& storage) {
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
  if (is_name && is_power_in_dbm(term.operands[1])) return signed_dbm(term);
  if (is_name) {
    result.kind = Kind::unary;
    result.span = join(syntax::operator_span(term), term.operands[1].span);
    result.operands = term.operands.from(1);
    return result;
  }
  const std::optional<Term> rest = without_name(left, name, storage);
  if (!rest) return std::nullopt;
  const std::array<Term, 2> operands{*rest, term.operands[1]};
  result.kind = Kind::binary;
  result.span = join(rest->span, term.operands[1].span);
  result.operands = storage.keep(operands.data(), operands.size());
  return result;
}

}  // namespace

std::optional<Phrase> rest_after(const Phrase& phrase, std::string_view words, syntax::Storage& storage) {
  std::size_t at = 0;
  for (; words.find(' ') != std::string_view::npos; ++at) {
    const std::string_view word = words.substr(0, words.find(' '));
    if (at >= phrase.size() || phrase[at].kind != Kind::name || phrase[at].text != word) return std::nullopt;
    words.remove_prefix(word.size() + 1);
  }
  if (at >= phrase.size()) return std::nullopt;
  const Term& last = phrase[at];
  if (last.kind == Kind::name && last.text == words) return phrase.from(at + 1);
  const std::optional<Term> left = without_name(last, words, storage);
  if (!left) return std::nullopt;
  std::vector<Term> rest{*left};
  rest.insert(rest.end(), phrase.begin() + at + 1, phrase.end());
  return storage.keep(rest);
}

}  // namespace wattfall
