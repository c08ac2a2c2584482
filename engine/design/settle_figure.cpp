// A figure as written -> its kind, and the ids of what it is of.
#include <cctype>

#include "design/catalog.hpp"
#include "figures.hpp"

namespace wattfall::design {
namespace {

using syntax::Word;

/// `swr n` without its `at`, `swr` without a node.
std::string likely_figure(const Bench& bench, const syntax::Figure& asked, const std::string& words) {
  if (asked.preposition) return {};
  const std::size_t blank = std::min(words.rfind(' '), words.size());
  for (const FigureInfo& info : figures()) {
    const std::size_t last = info.words.rfind(' ');
    if (info.operand.empty() || last == std::string::npos) continue;
    const std::string_view without = std::string_view(info.words).substr(0, last);
    if (without == words) return info.words + (info.operand == "node" ? " NODE" : " NAME");
    const std::string_view name = std::string_view(words).substr(std::min(blank + 1, words.size()));
    const bool known = info.operand == "node" ? bench.nodes.contains(name) : bench.names.contains(name);
    if (known && without == std::string_view(words).substr(0, blank)) return info.words + " " + std::string(name);
  }
  return {};
}

std::optional<FigureKind> kind_of(Bench& bench, const syntax::Figure& asked) {
  std::string words(asked.words);
  if (asked.preposition) words.append(" ").append(asked.preposition.text);
  for (std::size_t i = 0; i < figures().size(); ++i)
    if (figures()[i].words == words) return static_cast<FigureKind>(i);
  const Names names = [] {
    std::vector<std::string> all;
    for (const FigureInfo& info : figures()) all.push_back(info.words);
    return all;
  };
  Span span = asked.span;
  if (asked.target) span.end = asked.target.span.begin;
  while (span.end > span.begin + 1 && span.source != nullptr &&
         std::isspace(static_cast<unsigned char>(span.source->text()[span.end - 1])))
    --span.end;
  auto& wrong = bench.complaints.say("unknown-figure", span, "there is no figure " + in_quotes(words));
  wrong.expected = bench.complaints.nearest_few(words, names, 6);
  wrong.hint = likely_figure(bench, asked, words);
  if (wrong.hint.empty()) wrong.hint = bench.complaints.nearest(words, names);
  return std::nullopt;
}

bool is_look(FigureKind kind) {
  return figures()[static_cast<std::size_t>(kind)].operand == "node";
}
bool takes_box(FigureKind kind) {
  return kind == FigureKind::heat_in || kind == FigureKind::loss_in || kind == FigureKind::power_into;
}

/// "a load", "the source": what a name turned out to be.
std::string what_is(const Bench& bench, const Named& named) {
  if (named.what == Named::What::source) return "the source";
  if (named.what == Named::What::box) return "a box";
  if (named.what == Named::What::coupling) return "a coupling";
  const std::string& kind = bench.design.parts[named.index].kind;
  return (kind == "inductor" ? "an " : "a ") + kind;
}

std::string wanted(FigureKind kind) {
  const std::string& operand = figures()[static_cast<std::size_t>(kind)].operand;
  if (kind == FigureKind::loss_in) return "a two-port or a box";
  return "a " + operand;
}

bool suits(const Bench& bench, FigureKind kind, const Named& named) {
  if (named.what == Named::What::box) return takes_box(kind);
  if (named.what != Named::What::part) return false;
  const Part& part = bench.design.parts[named.index];
  const std::string& operand = figures()[static_cast<std::size_t>(kind)].operand;
  if (operand == "line") return std::holds_alternative<Line>(part.model);
  if (operand == "load") return is_load(part);
  return kind != FigureKind::loss_in || is_two_port(part);
}

/// The head of `atu.Cin` could not be written out: then its members are not missing by themselves.
bool inside_broken(const Bench& bench, std::string_view name) {
  for (std::size_t dot = name.find('.'); dot != std::string_view::npos; dot = name.find('.', dot + 1)) {
    const auto head = bench.names.find(name.substr(0, dot));
    if (head != bench.names.end() && head->second.broken) return true;
  }
  return false;
}

void say_unknown_target(Bench& bench, FigureKind kind, const Word& target) {
  const Names names = [&] {
    std::vector<std::string> all;
    for (const auto& [name, named] : bench.names)
      if (!named.broken && suits(bench, kind, named)) all.emplace_back(name);
    return all;
  };
  auto& wrong = bench.complaints.say("unknown-part", target.span, "there is no part " + in_quotes(target.text));
  wrong.expected = wanted(kind);
  const std::string few = bench.complaints.nearest_few(target.text, names, 6);
  if (!few.empty()) wrong.expected += ": " + few;
  wrong.hint = bench.complaints.nearest(target.text, names);
}

bool settle_target(Bench& bench, const Word& target, Figure& figure) {
  const auto known = bench.names.find(target.text);
  if (known == bench.names.end()) {
    if (!inside_broken(bench, target.text)) say_unknown_target(bench, figure.kind, target);
    return false;
  }
  const Named& named = known->second;
  if (named.broken) return false;
  if (!suits(bench, figure.kind, named)) {
    auto& wrong = bench.complaints.say(
        "wrong-kind", target.span,
        in_quotes(target.text) + " is " + what_is(bench, named) + ", but this figure needs " + wanted(figure.kind));
    wrong.notes.push_back({named.span, "it stands here"});
    return false;
  }
  if (named.what == Named::What::box)
    figure.box = BoxId{named.index};
  else
    figure.part = PartId{named.index};
  return true;
}

bool settle_extras(Bench& bench, const syntax::Figure& asked, Figure& figure) {
  bool good = true;
  Scope& scope = bench.file_frame.scope;
  if (asked.reference && !is_look(figure.kind)) {
    bench.complaints.say("unexpected-words", syntax::span_of(*asked.reference),
                         "`reference` belongs to figures at a node");
    good = false;
  } else if (asked.reference) {
    figure.reference = value_of(bench, *asked.reference, scope,
                                {.dim = dimension::resistance, .rule = rule::positive_resistance, .complex = true});
    good = figure.reference.has_value();
  }
  if (asked.into && !is_look(figure.kind)) {
    bench.complaints.say("unexpected-words", asked.into.span, "`into` belongs to figures at a node");
    good = false;
  }
  if (figure.kind != FigureKind::width_of_swr_at) return good;
  if (!asked.below || asked.below->empty()) {
    bench.complaints
        .say("missing-value", asked.span, "a width is that of the band in which the SWR stays below a value")
        .expected = "width of swr at n below 2";
    return false;
  }
  const auto below = number_of(bench, *asked.below, scope, dimension::number, rule::above_one);
  figure.below = below.value_or(0.0);
  return good && below;
}

}  // namespace

std::optional<Figure> settle_figure(Bench& bench, const Adjacency& adjacency, const syntax::Figure& asked) {
  const auto kind = kind_of(bench, asked);
  if (!kind) return std::nullopt;
  Figure figure;
  figure.kind = *kind;
  figure.span = asked.span;
  figure.text = text_of(asked.span);
  bool good = settle_extras(bench, asked, figure);
  if (is_look(*kind)) {
    const auto look = settle_look(bench, adjacency, asked.target, asked.into);
    good = good && look;
    figure.look = look.value_or(Look{});
  } else if (!figures()[static_cast<std::size_t>(*kind)].operand.empty()) {
    good = settle_target(bench, asked.target, figure) && good;
  }
  if (!good) return std::nullopt;
  return figure;
}

}  // namespace wattfall::design
