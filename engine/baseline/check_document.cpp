// One object a design: its line in words, what broke, what got better, what was changed, and every figure beside what it was.
#include "baseline/check_document.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "report/spelling.hpp"

namespace wattfall::baseline {
namespace {

using Json = nlohmann::ordered_json;
using State = HeldFigure::State;

const char* name_of(State state) {
  switch (state) {
    case State::kept:
      return "kept";
    case State::worse:
      return "worse";
    case State::better:
      return "better";
    case State::fresh:
      return "new";
    case State::gone:
      return "gone";
  }
  return "";
}

const char* name_of(Break::Kind kind) {
  return kind == Break::Kind::requirement ? "requirement" : kind == Break::Kind::rating ? "rating" : "baseline";
}

const char* name_of(DesignCheck::State state) {
  return state == DesignCheck::State::missing ? "missing" : state == DesignCheck::State::held ? "held" : "accepted";
}

Json or_null(const std::optional<std::string>& text) {
  return text ? Json(*text) : Json();
}

Json json_of(const Break& broken) {
  return {{"kind", name_of(broken.kind)}, {"figure", broken.figure}, {"unit", broken.unit},   {"before", broken.before ? Json(*broken.before) : Json()},
          {"after", broken.after},        {"at_hz", broken.at_hz},   {"limit", broken.limit}, {"line", broken.line > 0 ? Json(broken.line) : Json()},
          {"text", broken.text}};
}

Json json_of(const HeldFigure& held) {
  return {{"figure", held.now.figure},       {"bound", held.now.less_is_better ? "below" : "above"},
          {"unit", held.now.unit},           {"before", held.state == State::fresh ? Json() : Json(held.before)},
          {"after", held.now.value},         {"at_hz", held.now.at_hz},
          {"tolerance", held.now.tolerance}, {"change", held.state == State::fresh ? Json() : Json(held.change())},
          {"state", name_of(held.state)}};
}

Json json_of(const Change& change) {
  const bool there = !change.file.empty();
  return {{"part", change.part},
          {"kind", change.kind},
          {"what", change.what},
          {"before", or_null(change.before)},
          {"after", or_null(change.after)},
          {"file", there ? Json(change.file) : Json()},
          {"line", there ? Json(change.line) : Json()},
          {"column", there ? Json(change.column) : Json()},
          {"statement", change.statement}};
}

std::string better_sentence(const HeldFigure& held) {
  return held.now.figure + " was " + report::spell_figure(held.before, held.now.unit) + " and is " +
         report::spell_figure(held.now.value, held.now.unit) + '.';
}

template <class Things, class Make>
Json array_of(const Things& things, const Make& make) {
  Json array = Json::array();
  for (const auto& thing : things) array.push_back(make(thing));
  return array;
}

Json json_of(const VariantCheck& variant) {
  Json better = Json::array();
  for (const HeldFigure& held : variant.figures)
    if (held.state == State::better) better.push_back(better_sentence(held));
  return {{"name", or_null(variant.name)},
          {"held", variant.held},
          {"broken", array_of(variant.breaks, [](const Break& one) { return json_of(one); })},
          {"better", better},
          {"asked", array_of(variant.asked, [](const Asked& one) {
             return Json{{"kind", one.rating ? "rating" : "requirement"}, {"text", one.text}, {"kept", one.said.empty()}, {"said", one.said}};
           })},
          {"figures", array_of(variant.figures, [](const HeldFigure& one) { return json_of(one); })}};
}

std::size_t count_breaks(const DesignCheck& design, Break::Kind kind) {
  std::size_t count = 0;
  for (const VariantCheck& variant : design.variants)
    count += static_cast<std::size_t>(
        std::count_if(variant.breaks.begin(), variant.breaks.end(), [kind](const Break& one) { return one.kind == kind; }));
  return count;
}

std::size_t count_figures(const DesignCheck& design, State state) {
  std::size_t count = 0;
  for (const VariantCheck& variant : design.variants)
    count += static_cast<std::size_t>(
        std::count_if(variant.figures.begin(), variant.figures.end(), [state](const HeldFigure& one) { return one.state == state; }));
  return count;
}

std::string baseline_words(const DesignCheck& design) {
  if (design.baseline == DesignCheck::State::missing) return "no baseline";
  if (design.baseline == DesignCheck::State::accepted) return "baseline written";
  const std::size_t worse = count_breaks(design, Break::Kind::baseline), better = count_figures(design, State::better),
                    fresh = count_figures(design, State::fresh);
  std::string words = worse > 0 ? report::counted(worse, "figure") + " worse than the baseline" : "baseline held";
  if (better > 0) words += ", " + report::counted(better, "figure") + " better";
  if (fresh > 0) words += ", " + report::counted(fresh, "figure") + " not in it";
  return words;
}

std::string line_of(const DesignCheck& design) {
  std::string words = design.of == 0 ? "nothing required" : std::to_string(design.met) + " of " + report::counted(design.of, "requirement") + " met";
  if (design.ratings > 0)
    words += design.ratings_broken == 0 ? ", no rating broken" : ", " + report::counted(design.ratings_broken, "rating") + " broken";
  return words + ", " + baseline_words(design);
}

/// Said where there is nothing to list.
std::string why_no_changes(const DesignCheck& design) {
  if (design.baseline == DesignCheck::State::missing || !design.changes.empty()) return "";
  return design.compared ? "No part is other than it was in the baseline."
                         : "No variant of it is in the baseline, so its parts were not held against what they were.";
}

Json json_of(const DesignCheck& design) {
  return {{"file", design.file},
          {"title", design.title},
          {"passes", design.passes()},
          {"sentence", line_of(design)},
          {"baseline", {{"path", design.baseline_path}, {"state", name_of(design.baseline)}}},
          {"met", design.met},
          {"of", design.of},
          {"ratings_broken", design.ratings_broken},
          {"variants", array_of(design.variants, [](const VariantCheck& one) { return json_of(one); })},
          {"changes", array_of(design.changes, [](const Change& one) { return json_of(one); })},
          {"no_changes", why_no_changes(design)}};
}

std::string summary_of(std::size_t designs, std::size_t passing) {
  if (designs == passing) return designs == 1 ? "The one design passes." : designs == 2 ? "Both designs pass." : "All " + report::counted(designs, "design") + " pass.";
  return std::to_string(designs - passing) + " of " + report::counted(designs, "design") + (designs - passing == 1 ? " breaks." : " break.");
}

}  // namespace

std::string make_check_document(const std::vector<DesignCheck>& designs, const std::vector<std::string>& paths) {
  const auto passing = static_cast<std::size_t>(std::count_if(designs.begin(), designs.end(), [](const DesignCheck& one) { return one.passes(); }));
  std::string asked;
  for (const std::string& path : paths) asked += (asked.empty() ? "" : " ") + path;
  const Json document{{"schema", 1},
                      {"verb", "check"},
                      {"program", "wattfall " WATTFALL_VERSION},
                      {"design", {{"title", ""}, {"file", asked}}},
                      {"check",
                       {{"of", designs.size()},
                        {"passing", passing},
                        {"sentence", summary_of(designs.size(), passing)},
                        {"designs", array_of(designs, [](const DesignCheck& one) { return json_of(one); })}}}};
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace wattfall::baseline
