// What the tests of the grammar share: short ways to parse, and the tree as text, so that a table can hold what is
// wanted.
#pragma once

#include <cstdio>
#include <memory>
#include <string>
#include <string_view>

#include "grammar/parse.hpp"

namespace wattfall::test {

inline SourcePtr source(std::string text) {
  return std::make_shared<const Source>("test.feed", std::move(text));
}

inline std::string show(const syntax::Phrase& phrase);

/// Lisp-like: `a - 2 pF` is `(- a 2e-12|pF)`.
inline std::string show(const syntax::Term& term) {
  using Kind = syntax::Term::Kind;
  const auto number = [](double value) {
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.12g", value);
    return std::string(buffer);
  };
  const std::string own(term.text);
  std::string inner;
  for (const syntax::Term& operand : term.operands) inner += " " + show(operand);
  for (const syntax::Phrase& phrase : term.phrases) inner += " " + show(phrase) + ";";
  switch (term.kind) {
    case Kind::number: {
      std::string text = number(term.quantity.value.real());
      if (term.quantity.value.imag() != 0.0) text += "+j" + number(term.quantity.value.imag());
      return term.text.empty() ? text : text.append("|").append(term.text);
    }
    case Kind::name:
      return own;
    case Kind::string:
      return "\"" + own + "\"";
    case Kind::cable:
      return "<" + own + ">";
    case Kind::unary:
    case Kind::binary:
    case Kind::pair:
      return "(" + own + inner + ")";
    case Kind::call:
      return own + "{" + inner + " }";
    case Kind::bracket:
      return "[(" + inner + " )]";
    case Kind::list:
      return "[" + inner + " ]";
  }
  return "?";
}

inline std::string show(const syntax::Phrase& phrase) {
  std::string text;
  for (const syntax::Term& term : phrase) text += (text.empty() ? "" : " ") + show(term);
  return text;
}

inline std::string show(const syntax::Places& places) {
  std::string text;
  for (std::size_t i = 0; i < places.ends.size(); ++i) {
    text += text.empty() ? "" : " -> ";
    if (places.ends[i].bracketed) text += "(";
    for (std::size_t j = 0; j < places.ends[i].size(); ++j) text.append(j > 0 ? " " : "").append(places.ends[i][j].text);
    if (places.ends[i].bracketed) text += ")";
  }
  return text;
}

inline std::string show(const syntax::Figure& figure) {
  std::string text(figure.words);
  if (figure.preposition) text.append(" ").append(figure.preposition.text).append(":").append(figure.target.text);
  if (figure.into) text.append(" into:").append(figure.into.text);
  if (figure.reference) text += " reference:" + show(*figure.reference);
  if (figure.below) text += " below:" + show(*figure.below);
  return text;
}

inline std::string show(const syntax::Requirement& requirement) {
  std::string text = show(requirement.figure) + " " + std::string(requirement.bound.text) + ":" + show(requirement.value);
  if (requirement.over_from) text += " over:" + show(*requirement.over_from) + ".." + show(*requirement.over_to);
  if (requirement.over_band) text.append(" band:").append(requirement.over_band.text);
  return text;
}

/// One statement as one line.
std::string show(const syntax::Statement& statement);

/// What formatting does wrong to a text: another tree, a comment lost, something left to change. Empty where all is
/// well, "none" where the text has mistakes.
std::string format_fault(const std::string& text);

}  // namespace wattfall::test
