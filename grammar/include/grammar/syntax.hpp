// The syntax tree: a feed file as it was written, every node with its span. Nothing here knows what a name means, which
// kinds of parts there are or what a property's dimension must be: that is resolved in engine/design.
//
// A property (`Q 200 at 7 MHz`), a list's entry and a call's argument are all Phrases: terms side by side, because only the
// catalogue of kinds can say which leading words are a property's name. A phrase that begins with a name followed by a sign
// or a bracket (`c -2 pF`, `Q (Q)`) is read as arithmetic (`c - 2 pF`, a call); the resolver takes such a tree apart where the
// leftmost name is a property's (`rest_after`).
//
// Texts of a tree lie in its Source or in its Storage, lists in its Storage: a tree lives as long as these do, and its nodes
// are plain values.
#pragma once

#include <complex>
#include <memory>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "grammar/quantity.hpp"
#include "grammar/source.hpp"
#include "grammar/storage.hpp"

namespace wattfall::syntax {

struct Term;
using Phrase = List<Term>;  ///< never empty in a tree that parsed without errors

/// One node of an expression or phrase.
struct Term {
  enum class Kind {
    number,   ///< a literal with its unit applied: `quantity`; `text` is the unit as written ("" for none)
    name,     ///< `text`: a name or word, dotted or not: `c`, `atu.Cin`, `to`, `open`
    string,   ///< `text`: what stands between the quotes, escapes resolved
    cable,    ///< `text`: the bare word after `of` (`RG-213`); a quoted cable name is a string
    unary,    ///< `text` "-" or "+"; one operand
    binary,   ///< `text` one of + - * / ^ ; two operands
    call,     ///< `text` is the word, `phrases` its arguments: sqrt(2), series(E24, from 10 pF)
    bracket,  ///< `(x)`: one operand; kept so that (Q) can force the quantity and format can print it back
    list,     ///< `[a, b, ...]`: `phrases`; an entry of a table is a phrase of one `pair` term (or a pair and more)
    pair,     ///< `a : b`: two operands; a ratio 1:4, or a table's entry 7 MHz: 50-j10 ohm
  };
  Kind kind = Kind::number;
  Span span;
  std::string_view text;
  Quantity quantity;
  List<Term> operands;
  List<Phrase> phrases;
};

Span span_of(const Phrase& phrase);
/// Where the sign of a binary term (or a pair) stands, between its operands.
Span operator_span(const Term& term);

struct Word {  ///< a name or keyword where it stands
  std::string_view text;
  Span span;
  explicit operator bool() const { return !text.empty(); }
};

/// `at n`, `from a to b`, `from (a b) to (c d)`, `between La and Lb`. One end is one node or a bracketed group of them.
struct Places {
  enum class Form { none, at, from_to, between };
  struct End : List<Word> {
    bool bracketed = false;
  };
  Form form = Form::none;
  Span span;
  List<End> ends;  ///< at: one end; from_to: two or more (`from a to b to c` is accepted); nodes of each
};

struct DesignTitle { Word title; };
struct Set { Word name; List<Phrase> properties; };  ///< first: the expression; then `adjustable ...`
/// `KIND NAME PLACES : PROPERTIES`, and the places where a kind's word could stand in for a box's
struct Part { Word kind; Word name; Places places; List<Phrase> properties; };
struct Change { Word name; List<Phrase> properties; };
struct Include { Word path; };
struct Band { Word name; Phrase from; Phrase to; };

/// A figure: `peak volts across atu.Cout`, `swr at n into p reference 50 ohm`, `width of swr at n below 2`.
struct Figure {
  Span span;
  std::string_view words;     ///< "swr", "return loss", "peak volts", "total loss", "width of swr": one blank between
  Word preposition;           ///< at, on, in, into, from, across, through; empty for `total loss`, `efficiency`
  Word target;                ///< the node, part, line or load
  Word into;                  ///< the part after `into`, for figures at a node
  std::optional<Phrase> reference;
  std::optional<Phrase> below;  ///< `width of swr at n below v`
};

/// `FIGURE below|above VALUE [over A to B | over band "x"]`
struct Requirement {
  Span span;
  Figure figure;
  Word bound;  ///< below or above
  Phrase value;
  std::optional<Phrase> over_from, over_to;
  Word over_band;
};
struct Require { const Requirement* requirement; };  ///< never null; apart, since a statement is as large as its largest kind

struct Sweep {
  enum class Form { step, points, at };
  Form form = Form::at;
  Phrase from, to;    ///< step and points; empty where `band` is given
  Word band;
  Phrase amount;      ///< the step, or the number of points
  bool by_ratio = false;
  Phrase list;        ///< at: one list term
};

struct Tune {
  enum class When { at, at_each, over };
  List<Word> knobs;
  When when = When::at;
  Phrase at;                   ///< at: a frequency, or one list term
  Phrase from, to;             ///< over
  Word band;
  bool most = true;            ///< `for most` or `for least`
  const Figure* goal = nullptr;        ///< never null
  List<Requirement> keeping;
};

struct Plane { Word name; Word node; Word into; };

struct Statement;
struct Box { Word name; List<Word> ports; List<std::pair<Word, Phrase>> with; List<Statement> body; };
struct Variant { Word name; List<Statement> body; };

struct Statement {
  Span span;  ///< from the first word to the last character of the statement (of its header, for a block)
  std::variant<DesignTitle, Set, Part, Change, Include, Band, Sweep, Tune, Require, Plane, Box, Variant> what;
};

struct File {
  SourcePtr source;
  std::shared_ptr<const Storage> storage;
  std::vector<Statement> statements;
};

/// A piece of a statement that was parsed by itself, and what it lies in.
template <class T>
struct Loose {
  T what;
  SourcePtr source;
  std::shared_ptr<const Storage> storage;
};

}  // namespace wattfall::syntax
