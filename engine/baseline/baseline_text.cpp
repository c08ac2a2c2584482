// The baseline's file. Read without trust: it may have been edited, merged by a tool, or be another file altogether.
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "baseline/baseline.hpp"

namespace wattfall::baseline {
namespace {

using Json = nlohmann::ordered_json;
constexpr int schema = 1;

Json json_of(const Figure& figure) {
  return {{"figure", figure.figure}, {"bound", figure.less_is_better ? "below" : "above"}, {"unit", figure.unit},
          {"value", figure.value},   {"at_hz", figure.at_hz},                              {"tolerance", figure.tolerance}};
}

Json json_of(const design::Thing& thing) {
  Json facts = Json::object();
  for (const design::Fact& fact : thing.facts) facts[fact.what] = fact.value;
  return {{"name", thing.name}, {"kind", thing.kind}, {"facts", facts}, {"statement", thing.statement}};
}

Json json_of(const Variant& variant) {
  Json figures = Json::array(), parts = Json::array();
  for (const Figure& figure : variant.figures) figures.push_back(json_of(figure));
  for (const design::Thing& thing : variant.things) parts.push_back(json_of(thing));
  return {{"name", variant.name ? Json(*variant.name) : Json()}, {"figures", figures}, {"parts", parts}};
}

double number_or_none(const Json& value) {
  return value.is_null() ? std::numeric_limits<double>::quiet_NaN() : value.get<double>();
}

Figure read_figure(const Json& json) {
  Figure figure;
  figure.figure = json.at("figure").get<std::string>();
  figure.less_is_better = json.at("bound").get<std::string>() == "below";
  figure.unit = json.at("unit").get<std::string>();
  figure.value = number_or_none(json.at("value"));
  figure.at_hz = number_or_none(json.at("at_hz"));
  figure.tolerance = json.at("tolerance").get<double>();
  if (!(figure.tolerance >= 0.0)) throw std::domain_error("a tolerance is below zero");
  return figure;
}

design::Thing read_thing(const Json& json) {
  design::Thing thing{json.at("name").get<std::string>(), json.at("kind").get<std::string>(), {}, json.at("statement").get<std::string>(), {}};
  for (const auto& [what, value] : json.at("facts").items()) thing.facts.push_back({what, value.get<std::string>()});
  return thing;
}

Variant read_variant(const Json& json) {
  Variant variant;
  if (!json.at("name").is_null()) variant.name = json.at("name").get<std::string>();
  for (const Json& figure : json.at("figures")) variant.figures.push_back(read_figure(figure));
  for (const Json& part : json.at("parts")) variant.things.push_back(read_thing(part));
  return variant;
}

Diagnostic broken(const SourcePtr& text, std::size_t at, const std::string& why) {
  const std::size_t size = text->text().size();
  const auto begin = static_cast<std::uint32_t>(std::min(at, size == 0 ? 0 : size - 1));
  return {.code = "baseline-broken",
          .span = {text.get(), begin, static_cast<std::uint32_t>(std::min<std::size_t>(size, begin + 1))},
          .text = "`" + text->name() + "` is no baseline of this program: " + why,
          .expected = "what `wattfall check --accept` wrote",
          .hint = {},
          .fault = Fault::file,
          .keeps = {text},
          .advice = "delete it or bring back what it was, then check again"};
}

/// What the JSON library says, without its own name and number before it.
std::string plain(const std::string& what) {
  const std::size_t bracket = what.find("] ");
  return bracket == std::string::npos ? what : what.substr(bracket + 2);
}

}  // namespace

std::string write(const Baseline& baseline, const std::string& title, const std::string& file) {
  Json variants = Json::array();
  for (const Variant& variant : baseline.variants) variants.push_back(json_of(variant));
  const Json json{{"schema", schema}, {"design", {{"title", title}, {"file", file}}}, {"variants", variants}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

Result<Baseline> read(const SourcePtr& text) {
  try {
    const Json json = Json::parse(text->text());
    if (json.at("schema").get<int>() != schema) return {.diagnostics = {broken(text, 0, "it has another schema than " + std::to_string(schema))}};
    Baseline baseline;
    for (const Json& variant : json.at("variants")) baseline.variants.push_back(read_variant(variant));
    return {.value = std::move(baseline)};
  } catch (const Json::parse_error& error) {
    return {.diagnostics = {broken(text, error.byte == 0 ? 0 : error.byte - 1, "it is not whole JSON")}};
  } catch (const std::exception& error) {
    return {.diagnostics = {broken(text, 0, plain(error.what()))}};
  }
}

}  // namespace wattfall::baseline
