// The text of `walk`: both ways step by step, a sentence under each; what the two ends are to each other; how the solver agrees.
#include <algorithm>
#include <cmath>

#include "code_points.hpp"
#include "text_sections.hpp"
#include "walk_reading.hpp"

namespace reports {
namespace {

using Side = Table::Side;

std::string watts(double value, const Scale& scale) { return value == 0.0 ? "-" : scale.show(value); }

/// Heat of a part; what a load takes stands in its sentence.
Scale watts_scale(const std::vector<WalkRow>& rows) {
  std::vector<double> values;
  for (const WalkRow& row : rows) values.push_back(number(*row.step, "lost_w"));
  return scale_for(values, "W");
}

/// Number, name, what, rule, what was added, what has become of it, watts. Sentences go between the rows, so the columns are laid by hand.
class Steps {
 public:
  Steps(Paper& paper, const Json& way) : paper_(paper), rows_(rows_of(way)), scale_(watts_scale(rows_)) {
    for (const WalkRow& row : rows_) {
      after_.see(member(*row.step, "after_ohm"));
      name_ = std::max(name_, width(name_of(row)));
      what_ = std::max(what_, width(what_of(row)));
      rule_ = std::max(rule_, width(text(*row.step, "rule_words")));
      watts_ = std::max(watts_, width(watts(number(*row.step, "lost_w"), scale_)));
    }
    const std::size_t others = 2 + rule_ + 2 + width(after_.show(Json())) + 2 + watts_ + 2;
    const std::size_t room = paper.columns() > others + 20 ? paper.columns() - others : 20;
    name_ = std::min(name_, room / 2);
    what_ = std::min(what_, room - name_ - 2);
  }

  void print() const {
    paper_.line(line_of("", "", "", after_.head(), "lost, " + scale_.unit), Ink::faint);
    for (const WalkRow& row : rows_) {
      paper_.line(line_of(name_of(row), what_of(row), text(*row.step, "rule_words"), after_.show(member(*row.step, "after_ohm")),
                          watts(number(*row.step, "lost_w"), scale_)),
                  row.depth == 0 ? Ink::strong : Ink::plain);
      paper_.paragraph(std::string(5 + 2 * row.depth, ' '), text(*row.step, "sentence"));
    }
  }

 private:
  static std::string name_of(const WalkRow& row) {
    return std::string(2 * row.depth, ' ') + pad_right(row.number, 2) + ' ' + text(*row.step, "name");
  }
  static std::string what_of(const WalkRow& row) { return text(*row.step, "what"); }
  std::string line_of(const std::string& name, const std::string& what, const std::string& rule, const std::string& after,
                      const std::string& lost) const {
    return "  " + pad_right(cut(name, name_), name_) + "  " + pad_right(cut(what, what_), what_) + "  " + pad_right(rule, rule_) + "  " + after + "  " +
           pad_left(lost, watts_);
  }

  Paper& paper_;
  std::vector<WalkRow> rows_;
  Scale scale_;
  ImpedanceColumn after_;
  std::size_t name_ = 0, what_ = 0, rule_ = 0, watts_ = 7;
};

void write_stop(Paper& paper, const Json& stop, const std::string& who) {
  paper.paragraph("  STOP ", text(stop, "sentence"), Ink::bad);
  const Json& solved = member(stop, "solver_ohm");
  if (solved.is_array()) paper.paragraph("       ", "By the solver, " + who + " sees " + walk_ohms(solved) + ".");
}

void write_way(Paper& paper, const std::string& title, const Json& way, const std::string& who) {
  paper.section(title);
  Steps(paper, way).print();
  if (const Json& stop = member(way, "stop"); stop.is_object()) write_stop(paper, stop, who);
}

void write_both_ways(Paper& paper, const Json& variant) {
  const Json& planes = list(variant, "planes");
  if (planes.empty()) return;
  paper.section("What the two sides are to each other");
  ImpedanceColumn into, conjugate;
  for (const Json& plane : planes) {
    into.see(member(plane, "toward_load_ohm"));
    conjugate.see(member(plane, "conjugate_ohm"));
  }
  Table table({Side::left, Side::left, Side::left, Side::left, Side::right});
  table.heads({"plane", "at", "toward the load", "best would be", "mismatch, dB"});
  for (const Json& plane : planes)
    table.add({cut_name(text(plane, "name")), cut_name(text(plane, "node")), into.show(member(plane, "toward_load_ohm")),
               conjugate.show(member(plane, "conjugate_ohm")), fixed(number(plane, "mismatch_db"), 2)});
  table.print(paper);
  paper.paragraph("  ", conjugate_sentence, Ink::faint);
}

/// Parts whose heat the solver alone knows, where the walk stopped.
void write_rest(Paper& paper, const Json& variant) {
  if (!member(member(variant, "to_source"), "stop").is_object()) return;
  paper.section("Where the watts go, as the solver has it");
  Table table({Side::left, Side::right});
  std::vector<double> values;
  for (const Json& part : list(variant, "parts")) values.push_back(number(part, "solver_w"));
  const Scale scale = scale_for(values, "W");
  table.heads({"", scale.unit});
  for (const Json& part : list(variant, "parts")) table.add({cut_name(text(part, "name"), 40), scale.show(number(part, "solver_w"))});
  table.print(paper);
}

}  // namespace

void write_walk(Paper& paper, const Json& document) {
  const Json& design = member(document, "design");
  const std::string title = text(design, "title");
  paper.line(title.empty() ? "A design without a title" : title, Ink::strong);
  paper.paragraph("", text(design, "file") + ", the hand calculation, by " + text(document, "program"), Ink::faint);
  write_set_aside(paper, document);
  const Json& variants = list(member(document, "walk"), "variants");
  for (const Json& variant : variants) {
    if (variants.size() > 1) paper.chapter((member(variant, "name").is_string() ? text(variant, "name") + ", " : "") + spell_frequency(member(variant, "frequency_hz")));
    else paper.blank();
    for (const std::string& sentence : walk_head(variant)) paper.paragraph("", sentence);
    write_way(paper, "From the load to the rig", member(variant, "to_source"), text(member(variant, "source"), "name"));
    write_way(paper, "From the rig to the load", member(variant, "to_load"), text(member(variant, "load"), "name"));
    write_both_ways(paper, variant);
    paper.blank();
    paper.paragraph("  ", walk_power(variant));
    write_rest(paper, variant);
    paper.section("How the solver agrees");
    paper.paragraph("  ", text(member(variant, "agreement"), "sentence"));
  }
}

}  // namespace reports
