// Taking phrases apart: the words that open a property, and those in its middle.
#include "expression.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;
using syntax::Term;

const Term* leading_name(const Term& term) {
  const Term* first = &term;
  while (first->kind == Term::Kind::binary || first->kind == Term::Kind::pair) first = &first->operands[0];
  return first->kind == Term::Kind::name || first->kind == Term::Kind::call ? first : nullptr;
}

}  // namespace

std::string_view leading_word(const Phrase& phrase) {
  const Term* first = phrase.empty() ? nullptr : leading_name(phrase[0]);
  return first == nullptr ? std::string_view{} : first->text;
}

Span leading_span(const Phrase& phrase) {
  const Term* first = phrase.empty() ? nullptr : leading_name(phrase[0]);
  if (first == nullptr) return syntax::span_of(phrase);
  return {first->span.source, first->span.begin, first->span.begin + static_cast<std::uint32_t>(first->text.size())};
}

std::optional<Split> split_at_word(Bench& bench, const Phrase& phrase, std::string_view word) {
  for (std::size_t i = 1; i < phrase.size(); ++i) {
    const Term* first = leading_name(phrase[i]);
    if (first == nullptr || first->text != word) continue;
    const Phrase from_word = phrase.from(i);
    const Span span = leading_span(from_word);
    if (const auto after = rest_after(from_word, word, bench.storage)) return Split{phrase.first(i), *after, span};
  }
  return std::nullopt;
}

bool is_call_of(const Phrase& phrase, std::string_view word) {
  return phrase.size() == 1 && phrase[0].kind == Term::Kind::call && phrase[0].text == word;
}

bool is_list(const Phrase& phrase) {
  return phrase.size() == 1 && phrase[0].kind == Term::Kind::list;
}

}  // namespace wattfall::design
