// Statements as text, for the tables of the tests.
#include "support.hpp"

#include <variant>

namespace wattfall::test {
namespace {

using namespace syntax;

std::string list(List<Phrase> phrases) {
  std::string text;
  for (const Phrase& phrase : phrases) text += (text.empty() ? "" : ", ") + show(phrase);
  return text;
}

struct Shower {
  std::string operator()(const DesignTitle& design) const { return "design " + std::string(design.title.text); }
  std::string operator()(const Set& set) const { return "set " + std::string(set.name.text) + " = " + list(set.properties); }
  std::string operator()(const Part& part) const {
    return std::string(part.kind.text) + " " + std::string(part.name.text) + " @ " + show(part.places) + " : " + list(part.properties);
  }
  std::string operator()(const Change& change) const {
    return "change " + std::string(change.name.text) + " : " + list(change.properties);
  }
  std::string operator()(const Include& include) const { return "include " + std::string(include.path.text); }
  std::string operator()(const Band& band) const {
    return "band " + std::string(band.name.text) + " " + show(band.from) + ".." + show(band.to);
  }
  std::string operator()(const Sweep& sweep) const {
    if (sweep.form == Sweep::Form::at) return "sweep at " + show(sweep.list);
    std::string text =
        sweep.band ? "sweep band " + std::string(sweep.band.text) : "sweep " + show(sweep.from) + ".." + show(sweep.to);
    text += (sweep.form == Sweep::Form::step ? " step " : " points ") + show(sweep.amount);
    return text + (sweep.by_ratio ? " by ratio" : "");
  }
  std::string operator()(const Tune& tune) const {
    std::string text = "tune";
    for (const Word& knob : tune.knobs) text += " " + std::string(knob.text);
    if (tune.when == Tune::When::at) text += " at " + show(tune.at);
    if (tune.when == Tune::When::at_each) text += " each";
    if (tune.when == Tune::When::over) {
      text += " over " + (tune.band ? std::string(tune.band.text) : show(tune.from) + ".." + show(tune.to));
    }
    text += std::string(tune.most ? " most " : " least ") + show(*tune.goal);
    for (const Requirement& requirement : tune.keeping) text += " & " + show(requirement);
    return text;
  }
  std::string operator()(const Require& require) const { return "require " + show(*require.requirement); }
  std::string operator()(const Plane& plane) const {
    return "plane " + std::string(plane.name.text) + " " + std::string(plane.node.text) + (plane.into ? " into " + std::string(plane.into.text) : "");
  }
  std::string operator()(const Box& box) const {
    std::string text = "box " + std::string(box.name.text) + " (";
    for (const Word& port : box.ports) text += std::string(port.text) + " ";
    text += ")";
    for (const auto& [name, value] : box.with) text += " " + std::string(name.text) + "=" + show(value);
    return text + body(box.body);
  }
  std::string operator()(const Variant& variant) const { return "variant " + std::string(variant.name.text) + body(variant.body); }

  static std::string body(List<Statement> statements) {
    std::string text = " {";
    for (const Statement& statement : statements) text += " " + show(statement) + ";";
    return text + " }";
  }
};

}  // namespace

std::string show(const syntax::Statement& statement) {
  return std::visit(Shower{}, statement.what);
}

}  // namespace wattfall::test
