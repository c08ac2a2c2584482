// Key by key, with the words from walk_words.cpp.
#include "report/walk_document.hpp"

#include "document_envelope.hpp"
#include "json_text.hpp"
#include "walk_words.hpp"

namespace wattfall::report {
namespace {

using Layout = JsonText::Layout;
using walk::Ohms;
using walk::Step;

class WalkWriter {
 public:
  WalkWriter(JsonText& out, const WalkResult& result)
      : out_(out), result_(result), walk_(result.walk), design_(*result.variant->design), words_(result) {}

  void write() {
    out_.open('{');
    out_.key("name");
    design_.variant ? out_.value(*design_.variant) : out_.null();
    out_.field("tuned", result_.variant->tuned);
    out_.field("frequency_hz", walk_.frequency_hz);
    out_.field("chosen", words_.chosen());
    write_ends();
    out_.key("to_source");
    write_way(walk_.to_source, result_.ledger->source.load_impedance_ohm.front());
    out_.key("to_load");
    write_way(walk_.to_load, solved_toward_source());
    write_planes();
    write_power();
    write_parts();
    write_agreement();
    out_.close();
  }

 private:
  void ohms(std::string_view key, const Ohms& z) {
    out_.key(key);
    z ? out_.value(*z) : out_.null();
  }
  void siemens(std::string_view key, const Ohms& z) { ohms(key, !z ? Ohms(0.0) : *z == 0.0 ? Ohms() : Ohms(1.0 / *z)); }

  void write_ends() {
    const design::Source& source = design_.source;
    out_.key("source");
    out_.open('{', Layout::one_line);
    out_.field("name", source.name);
    out_.field("node", words_.place(source.node.index, source.other.index));
    out_.field("impedance_ohm", source.impedance_ohm.at(walk_.frequency_hz, result_.knobs));
    out_.close();
    const design::Part& load = design_.parts[walk_.load.index];
    out_.key("load");
    out_.open('{', Layout::one_line);
    out_.field("name", load.name);
    out_.field("node", words_.place(load.terminals[0].index, load.terminals[1].index));
    ohms("impedance_ohm", walk_.to_source.start);
    out_.close();
    std::vector<std::string> others, idle;
    for (const design::Part& part : design_.parts)
      if (design::is_load(part) && &part != &load) others.push_back(part.name);
    for (design::PartId part : walk_.idle) idle.push_back(design_.parts[part.index].name);
    out_.field("other_loads", others);
    out_.field("idle", idle);
  }

  void write_way(const walk::Way& way, std::complex<double> solved) {
    out_.open('{');
    ohms("start_ohm", way.start);
    ohms("end_ohm", way.end);
    out_.field("came_through", !way.stop);
    out_.key("steps");
    write_steps(way.steps, true);
    out_.key("stop");
    way.stop ? write_stop(*way.stop, solved) : out_.null();
    out_.close();
  }

  void write_stop(const walk::Stop& stop, std::complex<double> solved) {
    out_.open('{');
    out_.field("node", words_.place(stop.node, 0));
    out_.key("parts");
    out_.open('[');
    for (design::PartId id : stop.parts) {
      out_.open('{', Layout::one_line);
      out_.field("name", design_.parts[id.index].name);
      out_.field("line", design_.parts[id.index].span.line());
      out_.close();
    }
    out_.close();
    out_.field("sentence", words_.stop(stop));
    out_.field("solver_ohm", solved);
    out_.close();
  }

  void write_steps(const std::vector<Step>& steps, bool outermost) {
    out_.open('[');
    for (const Step& step : steps) write_step(step, outermost);
    out_.close();
  }

  void write_step(const Step& step, bool outermost) {
    out_.open('{');
    out_.field("rule", name_of(step.rule));
    out_.field("rule_words", words_.rule(step));
    out_.field("name", words_.name(step));
    out_.field("what", words_.what(step));
    std::vector<std::string> parts;
    for (design::PartId part : step.parts) parts.push_back(design_.parts[part.index].name);
    out_.field("parts", parts);
    out_.field("line", line_of(step));
    out_.field("node", words_.place(step.node, step.other));
    if (step.rule != walk::Rule::start) ohms("before_ohm", step.before);
    if (step.rule == walk::Rule::series || step.rule == walk::Rule::parallel) ohms("added_ohm", step.added);
    ohms("after_ohm", step.after);
    if (step.rule == walk::Rule::parallel) {
      siemens("before_siemens", step.before);
      siemens("added_siemens", step.added);
      siemens("after_siemens", step.after);
    }
    if (step.rule == walk::Rule::line) {
      out_.field("z0_ohm", step.line_impedance_ohm);
      out_.field("gamma_l", step.gamma_l);
    }
    if (step.rule == walk::Rule::turns) out_.field("factor", step.factor);
    out_.field("lost_w", step.lost_w);
    out_.field("taken_w", step.taken_w);
    out_.field("sentence", words_.sentence(step, outermost));
    if (!step.inside.empty()) {
      out_.key("inside");
      write_steps(step.inside, step.rule == walk::Rule::box);
    }
    out_.close();
  }

  int line_of(const Step& step) const {
    if (step.rule == walk::Rule::box) return design_.boxes[step.box.index].span.line();
    return step.parts.empty() ? design_.source.span.line() : design_.parts[step.parts.front().index].span.line();
  }

  void write_planes() {
    out_.key("planes");
    out_.open('[');
    for (const walk::Plane& plane : walk_.planes) {
      out_.open('{');
      const std::string name = plane.where == walk::Plane::Where::source ? design_.source.name
                               : plane.where == walk::Plane::Where::load ? design_.parts[walk_.load.index].name
                                                                         : design_.planes[plane.named].name;
      out_.field("name", name);
      out_.field("node", words_.place(plane.node, plane.other));
      ohms("toward_load_ohm", plane.toward_load);
      ohms("toward_source_ohm", plane.toward_source);
      ohms("conjugate_ohm", plane.toward_source ? Ohms(std::conj(*plane.toward_source)) : Ohms());
      out_.field("mismatch_db", plane.mismatch_db);
      out_.close();
    }
    out_.close();
  }

  void write_power() {
    const ledger::SourceBook& source = result_.ledger->source;
    const bool walked = !walk_.to_source.stop;
    out_.key("power");
    out_.open('{', Layout::one_line);
    out_.field("available_w", walked ? walk_.available_w : source.available_w.front());
    out_.field("accepted_w", walked ? walk_.accepted_w : source.accepted_w.front());
    out_.field("from", std::string(walked ? "walk" : "solver"));
    out_.close();
  }

  void write_part(design::PartId id, double solver_w) {
    out_.open('{', Layout::one_line);
    out_.field("name", design_.parts[id.index].name);
    out_.field("load", design::is_load(design_.parts[id.index]));
    out_.key("walk_w");
    walk_.part_w.empty() ? out_.null() : out_.value(walk_.part_w[id.index]);
    out_.field("solver_w", solver_w);
    out_.close();
  }

  void write_parts() {
    out_.key("parts");
    out_.open('[');
    for (const ledger::PartBook& book : result_.ledger->parts) write_part(book.part, book.heat_w.front());
    for (const ledger::LoadBook& book : result_.ledger->loads) write_part(book.part, book.absorbed_w.front());
    out_.close();
  }

  void write_agreement() {
    out_.key("agreement");
    out_.open('{');
    out_.field("worst_relative", walk::worst(result_.checks));
    out_.key("checks");
    out_.open('[');
    for (const walk::Check& check : result_.checks) {
      const bool power = check.what == walk::Check::What::power;
      out_.open('{', Layout::one_line);
      out_.field("of", power ? "power of " + design_.parts[check.part.index].name : place_of(check));
      power ? out_.field("walk_w", check.walk.real()) : out_.field("walk_ohm", check.walk);
      power ? out_.field("solver_w", check.solver.real()) : out_.field("solver_ohm", check.solver);
      out_.field("relative", check.relative);
      out_.close();
    }
    out_.close();
    out_.field("sentence", words_.agreement());
    out_.close();
  }

  std::string place_of(const walk::Check& check) const {
    if (check.what == walk::Check::What::source) return "what " + design_.source.name + " sees";
    if (check.what == walk::Check::What::load) return "what " + design_.parts[walk_.load.index].name + " sees";
    return "plane " + design_.planes[walk_.planes[check.plane].named].name;
  }

  /// What the solver sees from the load's terminal; none for a load of which neither conductor is ground.
  std::complex<double> solved_toward_source() const {
    const design::Part& load = design_.parts[walk_.load.index];
    for (const ledger::LookBook& book : result_.ledger->looks)
      if (book.look.into == walk_.load && book.look.node == load.terminals[0] && load.terminals[1] == design::ground) return book.toward_source_ohm.front();
    return {NAN, NAN};
  }

  JsonText& out_;
  const WalkResult& result_;
  const walk::Walk& walk_;
  const design::Design& design_;
  WalkWords words_;
};

}  // namespace

std::string make_walk_document(const host::Registry& registry, const std::vector<VariantResult>& variants,
                               const std::vector<WalkResult>& walks, const SetAsides& set_aside) {
  JsonText out;
  out.open('{');
  write_envelope(out, "walk", registry, variants, set_aside);
  out.key("walk");
  out.open('{');
  out.key("variants");
  out.open('[');
  for (const WalkResult& walk : walks) WalkWriter(out, walk).write();
  out.close();
  out.close();
  out.close();
  return out.take();
}

}  // namespace wattfall::report
