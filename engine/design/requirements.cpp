// Requirements and planes.
#include <algorithm>
#include <cctype>

#include "requests.hpp"

namespace wattfall::design {
namespace {

/// What a required value must be for it to make sense.
Rule rule_of(FigureKind kind) {
  switch (kind) {
    case FigureKind::swr_at:
    case FigureKind::swr_on:
      return rule::swr;
    case FigureKind::efficiency:
      return rule::share;
    case FigureKind::resistance_at:
    case FigureKind::reactance_at:
      return rule::any;
    default:
      return rule::not_negative;
  }
}

/// `over` a range in which nothing is solved would judge nothing. (Options that replace the sweeps may leave a band out.)
bool has_points(Bench& bench, const Requirement& requirement, const syntax::Requirement& asked) {
  if (!requirement.over_hz || !bench.options.at.empty() || bench.options.sweep) return true;
  const std::vector<double>& points = bench.design.frequencies_hz;
  if (points.empty() || std::any_of(points.begin(), points.end(), [&](double hertz) { return requirement.asks_at(hertz); })) return true;
  const Span span = asked.over_band ? asked.over_band.span
                                    : join(syntax::span_of(*asked.over_from), syntax::span_of(*asked.over_to));
  auto& wrong = bench.complaints.say("no-point-in-range", span, "no point of the sweeps lies in this range");
  const std::string from = spell({points.front(), dimension::frequency}), to = spell({points.back(), dimension::frequency});
  wrong.expected = points.size() == 1 ? "a range with " + from + " in it" : "a range with some of the points from " + from + " to " + to;
  wrong.advice = "add a `sweep` over it";
  return false;
}

}  // namespace

std::string text_of(Span span) {
  std::string text;
  bool quoted = false, comment = false;
  for (const char c : span.text()) {
    if (c == '\n') comment = false;
    if (c == '"' && !comment) quoted = !quoted;
    if (c == '#' && !quoted) comment = true;
    if (comment) continue;
    const bool blank = !quoted && std::isspace(static_cast<unsigned char>(c)) != 0;
    if (!blank)
      text += c;
    else if (!text.empty() && text.back() != ' ')
      text += ' ';
  }
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

std::optional<Requirement> settle_requirement(Bench& bench, const Adjacency& adjacency,
                                              const syntax::Requirement& asked) {
  Requirement requirement;
  requirement.below = asked.bound.text != "above";
  requirement.span = asked.span;
  requirement.text = text_of(asked.span);
  const auto figure = settle_figure(bench, adjacency, asked.figure);
  bool good = figure.has_value();
  if (figure) {
    requirement.figure = *figure;
    const auto value =
        number_of(bench, asked.value, bench.file_frame.scope, dimension_of(figure->kind), rule_of(figure->kind));
    good = value.has_value();
    requirement.value = value.value_or(0.0);
  }
  if (asked.over_band || asked.over_from) {
    requirement.over_hz = range_or_band(bench, asked.over_from.value_or(syntax::Phrase{}),
                                        asked.over_to.value_or(syntax::Phrase{}), asked.over_band);
    good = good && requirement.over_hz;
  }
  if (!good) return std::nullopt;
  return requirement;
}

void read_requirements_and_planes(Bench& bench, const Adjacency& adjacency, const Statements& statements) {
  std::unordered_map<std::string_view, Span> planes;
  for (const syntax::Statement* statement : statements) {
    if (const auto* require = std::get_if<syntax::Require>(&statement->what)) {
      if (auto requirement = settle_requirement(bench, adjacency, *require->requirement);
          requirement && has_points(bench, *requirement, *require->requirement))
        bench.design.requirements.push_back(std::move(*requirement));
    }
    const auto* plane = std::get_if<syntax::Plane>(&statement->what);
    if (plane == nullptr) continue;
    const auto [known, is_new] = planes.try_emplace(plane->name.text, plane->name.span);
    if (!is_new) {
      auto& wrong = bench.complaints.say("repeated-name", plane->name.span,
                                         "there is a plane called " + in_quotes(plane->name.text) + " already");
      wrong.notes.push_back({known->second, "the first one"});
    }
    if (const auto look = settle_look(bench, adjacency, plane->node, plane->into))
      bench.design.planes.push_back({std::string(plane->name.text), *look, statement->span});
  }
}

}  // namespace wattfall::design
