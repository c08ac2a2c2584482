#include "same_tree.hpp"

#include <algorithm>
#include <tuple>

namespace wattfall::fuzz {
namespace {

using namespace syntax;

// What is compared of each sort, in a tuple; `same` takes tuples, lists, options and pairs apart.

auto parts(const Word& word) {
  return std::tie(word.text);
}
auto parts(const Places& places) {
  return std::tie(places.form, places.ends);
}
auto parts(const Places::End& end) {
  return std::tuple<const List<Word>&, bool>(end, end.bracketed);
}
auto parts(const DesignTitle& design) {
  return std::tie(design.title);
}
auto parts(const Set& set) {
  return std::tie(set.name, set.properties);
}
auto parts(const Part& part) {
  return std::tie(part.kind, part.name, part.places, part.properties);
}
auto parts(const Change& change) {
  return std::tie(change.name, change.properties);
}
auto parts(const Include& include) {
  return std::tie(include.path);
}
auto parts(const Band& band) {
  return std::tie(band.name, band.from, band.to);
}
auto parts(const Figure& f) {
  return std::tie(f.words, f.preposition, f.target, f.into, f.reference, f.below);
}
auto parts(const Requirement& r) {
  return std::tie(r.figure, r.bound, r.value, r.over_from, r.over_to, r.over_band);
}
auto parts(const Require& require) {
  return std::tie(*require.requirement);
}
auto parts(const Sweep& s) {
  return std::tie(s.form, s.from, s.to, s.band, s.amount, s.by_ratio, s.list);
}
auto parts(const Tune& t) {
  return std::tie(t.knobs, t.when, t.at, t.from, t.to, t.band, t.most, *t.goal, t.keeping);
}
auto parts(const Plane& plane) {
  return std::tie(plane.name, plane.node, plane.into);
}
auto parts(const Box& box) {
  return std::tie(box.name, box.ports, box.with, box.body);
}
auto parts(const Variant& variant) {
  return std::tie(variant.name, variant.body);
}

bool same(const Term& left, const Term& right);
bool same(const Statement& left, const Statement& right);
template <class T>
bool same(const List<T>& left, const List<T>& right);
template <class T>
bool same(const std::optional<T>& left, const std::optional<T>& right);
bool same(const std::pair<Word, Phrase>& left, const std::pair<Word, Phrase>& right);

template <class T>
bool same(const T& left, const T& right) {
  if constexpr (requires { left == right; }) {
    return left == right;
  } else {
    return std::apply(
        [&](const auto&... of_left) {
          return std::apply([&](const auto&... of_right) { return (same(of_left, of_right) && ...); }, parts(right));
        },
        parts(left));
  }
}

template <class T>
bool same(const List<T>& left, const List<T>& right) {
  return std::equal(left.begin(), left.end(), right.begin(), right.end(),
                    [](const auto& a, const auto& b) { return same(a, b); });
}

template <class T>
bool same(const std::optional<T>& left, const std::optional<T>& right) {
  return left.has_value() == right.has_value() && (!left || same(*left, *right));
}

bool same(const std::pair<Word, Phrase>& left, const std::pair<Word, Phrase>& right) {
  return same(left.first, right.first) && same(left.second, right.second);
}

/// A number's text is its unit, which has a plain spelling: what it means must be the same, to the last bit.
bool same(const Term& left, const Term& right) {
  if (left.kind != right.kind) return false;
  if (left.kind == Term::Kind::number)
    return left.quantity.value == right.quantity.value && left.quantity.dim == right.quantity.dim &&
           left.text.empty() == right.text.empty();
  return left.text == right.text && same(left.operands, right.operands) && same(left.phrases, right.phrases);
}

bool same(const Statement& left, const Statement& right) {
  return left.what.index() == right.what.index() &&
         std::visit([&](const auto& what) { return same(what, std::get<std::decay_t<decltype(what)>>(right.what)); },
                    left.what);
}

}  // namespace

bool same_tree(const std::vector<Statement>& left, const std::vector<Statement>& right) {
  return same(List<Statement>(left), List<Statement>(right));
}

}  // namespace wattfall::fuzz
