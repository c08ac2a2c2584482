// From terms to numbers: expressions with their dimensions, and the small phrases that properties are made of.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "bench.hpp"

namespace wattfall::design {

/// May what is written here depend on the frequency, on knobs?
enum class Varies : bool { no, yes };

/// None where something was wrong; it has been said then.
std::optional<Settled> settle(Bench& bench, const syntax::Term& term, Scope& scope, Varies varies = Varies::yes);
/// A phrase that must be one expression.
std::optional<Settled> settle(Bench& bench, const syntax::Phrase& phrase, Scope& scope, Varies varies = Varies::yes);

/// The quantity a name stands for.
std::optional<Settled> settle_name(Bench& bench, const syntax::Term& name, Scope& scope, Varies varies);
/// Settles one quantity, where it is not yet.
void settle_quantity(Bench& bench, NamedQuantity& quantity);

/// Where a quantity of this name is visible.
NamedQuantity* find_quantity(Scope& scope, std::string_view name);
std::vector<std::string> visible_quantities(const Scope& scope);

/// Operations with dimensions checked; `at` is the operator or the call.
std::optional<Settled> combine(Bench& bench, Formula::Op op, Settled a, Settled b, Span at);
std::optional<Settled> negate(Bench& bench, Settled x, Span at);
std::optional<Settled> call(Bench& bench, const syntax::Term& term, std::vector<Settled> operands);
bool is_function(std::string_view word);

/// Is it of the due dimension and a legal value? Says what is wrong.
bool fits(Bench& bench, const Settled& settled, const Due& due, Span span);
std::optional<Value> value_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope, const Due& due);
/// A real number that depends on nothing.
std::optional<double> number_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope, Dimension dim,
                                const Rule& rule = rule::any);
std::optional<std::complex<double>> complex_number_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope,
                                                      const Due& due);
/// A frequency of the design: above zero, and from 1 kHz.
std::optional<double> frequency_of(Bench& bench, const syntax::Phrase& phrase, Scope& scope);
/// `A to B`, rising. `span` is of the whole.
std::optional<std::pair<double, double>> frequency_range_of(Bench& bench, const syntax::Phrase& from,
                                                            const syntax::Phrase& to, Scope& scope);
/// Says where a range falls or has no width.
bool rising(Bench& bench, double lower, double upper, Dimension dim, Span span);
/// The value as a settled number or formula.
Value to_value(Settled settled);

/// What stands before and after a word in the middle of a phrase: `200 at 7 MHz`, `A to B`.
struct Split {
  syntax::Phrase before, after;
  Span word;
};
std::optional<Split> split_at_word(Bench& bench, const syntax::Phrase& phrase, std::string_view word);

/// The expression's only term is a call of this word, and not a bracketed value.
bool is_call_of(const syntax::Phrase& phrase, std::string_view word);
bool is_list(const syntax::Phrase& phrase);
/// The first word of a phrase, however the parser took what follows it; "" where it begins with something else.
std::string_view leading_word(const syntax::Phrase& phrase);
Span leading_span(const syntax::Phrase& phrase);

/// "a unit, such as pF", "a length, such as 24 m".
std::string example_of(Dimension dim);

}  // namespace wattfall::design
