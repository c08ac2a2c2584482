// Parts by their size: groups such as `coil(turns 12, diameter 50 mm, ...)` become the geometry that engine/physics
// computes with.
#include <cmath>

#include "parts/job.hpp"
#include "physics/materials.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

/// A member of a group: its name and what is due, or a word out of a table of materials.
struct Member {
  const char* name;
  Due due;
  const char* form;  ///< as users write it, for messages
  bool is_word = false;
  bool is_named_elsewhere = false;  ///< its form stands in another member's
};

constexpr Due size_due{.dim = dimension::length, .rule = rule::positive};
constexpr Due count_due{.dim = dimension::number, .rule = rule::positive};

/// A group's members as given: numbers by name, words with their places, and tables.
class Group {
 public:
  Group(PartJob& job, const Given& given, std::vector<Member> members)
      : job_(job), given_(given), members_(std::move(members)) {
    const bool group = given.value.size() == 1 && given.value[0].phrases.empty() == false;
    if (!group) {
      say("missing-value", given.span, in_quotes(given.info->name) + " takes its sizes in brackets").expected = forms();
      return;
    }
    for (const Phrase& phrase : given.value[0].phrases) read(phrase);
  }

  bool good() const { return good_; }
  bool has(std::string_view name) const { return find(name) != nullptr; }
  double number(std::string_view name, double fallback = 0.0) const {
    const Read* read = find(name);
    return read == nullptr ? fallback : read->number;
  }
  /// A number that must be there.
  double need(std::string_view name) {
    if (!has(name) && good_)
      say("missing-value", given_.span,
          in_quotes(given_.info->name) + " does not say its " + in_quotes(std::string(name)))
          .expected = forms();
    return number(name);
  }
  const Phrase* phrase(std::string_view name) const {
    const Read* read = find(name);
    return read == nullptr ? nullptr : &read->value;
  }
  Scope& scope() const { return *given_.scope; }

  /// The metal named, copper where none is.
  physics::Conductor metal() {
    const Read* read = find("metal");
    if (read == nullptr) return {};
    if (const physics::Metal* metal = physics::find_metal(word_of(*read))) return physics::conductor_of(*metal);
    say_unknown(*read, "metal", [] {
      std::vector<std::string> names;
      for (const physics::Metal& known : physics::metals()) names.emplace_back(known.name);
      return names;
    });
    return {};
  }

  /// The dielectric named, or a relative permittivity; air where there is neither.
  physics::Insulation insulation() {
    const Read* read = find("dielectric");
    if (read == nullptr) return {};
    if (!std::isnan(read->number)) return {read->number, number("tangent")};
    if (word_of(*read).empty() || !good_) return {};  // said where it was read
    if (const physics::Dielectric* known = physics::find_dielectric(word_of(*read)))
      return {known->relative_permittivity, has("tangent") ? number("tangent") : known->loss_tangent};
    say_unknown(*read, "dielectric", [] {
      std::vector<std::string> names;
      for (const physics::Dielectric& dielectric : physics::dielectrics()) names.emplace_back(dielectric.name);
      return names;
    });
    return {};
  }

  /// Told as such, else that of the core material named.
  double saturation(double fallback) {
    if (has("saturation")) return number("saturation");
    const Read* read = find("material");
    if (read == nullptr) return fallback;
    if (const physics::CoreMaterial* known = physics::find_core_material(word_of(*read))) return known->saturation_t;
    say_unknown(*read, "core material", [] {
      std::vector<std::string> names;
      for (const physics::CoreMaterial& material : physics::core_materials()) names.emplace_back(material.name);
      return names;
    });
    return fallback;
  }

  /// What the model itself finds impossible is said at the group; a figure outside its range is a warning, later.
  bool possible(const physics::Validity& validity) {
    if (!validity.possible() && good_) say("impossible-size", given_.span, validity.sentence);
    return good_;
  }

  Diagnostic& say(const char* code, Span span, const std::string& text) {
    good_ = false;
    job_.good = false;
    return job_.bench.complaints.say(code, span, text);
  }

 private:
  struct Read {
    const Member* member;
    Phrase value;
    double number;
    Span span;
  };

  const Read* find(std::string_view name) const {
    for (const Read& read : reads_)
      if (name == read.member->name) return &read;
    return nullptr;
  }

  std::string forms() const {
    std::string text = given_.info->name + "(";
    for (const Member& member : members_)
      if (!member.is_named_elsewhere)
        text += (text.back() == '(' ? "" : ", ") + std::string(member.name) + " " + member.form;
    return text + ")";
  }

  void read(const Phrase& phrase) {
    for (const Member& member : members_) {
      const auto rest = rest_after(phrase, member.name, job_.bench.storage);
      if (!rest) continue;
      const Span span = syntax::span_of(phrase);
      if (has(member.name)) {
        say("repeated-property", span, in_quotes(member.name) + " is given twice");
        return;
      }
      if (rest->empty()) {
        say("missing-value", span, in_quotes(member.name) + " has no value").expected =
            std::string(member.name) + " " + member.form;
        return;
      }
      reads_.push_back({&member, *rest, number_in(member, *rest), span});
      return;
    }
    auto& wrong = say("unknown-property", leading_span(phrase), in_quotes(given_.info->name) + " has no such member");
    wrong.expected = forms();
    wrong.hint = job_.bench.complaints.nearest(leading_word(phrase), [this] {
      std::vector<std::string> names;
      for (const Member& member : members_) names.emplace_back(member.name);
      return names;
    });
  }

  /// NaN for a word (a material's name) and for a table.
  double number_in(const Member& member, const Phrase& value) {
    if (is_list(value) || member.due.permeability || (member.is_word && !words_of(value).empty())) return NAN;
    const auto number = number_of(job_.bench, value, *given_.scope, member.due.dim, member.due.rule);
    if (!number) good_ = job_.good = false;
    return number.value_or(NAN);
  }

  /// A string, or names side by side: `tinned copper`; empty for anything else.
  static std::string words_of(const Phrase& value) {
    using Kind = syntax::Term::Kind;
    std::string words;
    for (const syntax::Term& term : value) {
      if (term.kind != Kind::name && (term.kind != Kind::string || value.size() > 1)) return "";
      words += (words.empty() ? "" : " ") + std::string(term.text);
    }
    return words;
  }
  static std::string word_of(const Read& read) { return words_of(read.value); }

  template <class KnownNames>
  void say_unknown(const Read& read, const char* what, KnownNames names) {
    auto& wrong = say("unknown-material", syntax::span_of(read.value),
                      "there is no " + std::string(what) + " " + in_quotes(word_of(read)));
    wrong.expected = job_.bench.complaints.nearest_few(word_of(read), names, 12);
    wrong.hint = job_.bench.complaints.nearest(word_of(read), names);
  }

  PartJob& job_;
  const Given& given_;
  std::vector<Member> members_;
  std::vector<Read> reads_;
  bool good_ = true;
};

const Member metal_member{"metal", {}, "copper", true};
constexpr Rule permittivity_rule{[](std::complex<double> x) { return x.real() >= 1.0; }, "must be at least 1"};
const Member dielectric_member{
    "dielectric", {.dim = dimension::number, .rule = permittivity_rule}, "polyethylene | 2.26", true};
const Member tangent_member{"tangent", {.dim = dimension::number, .rule = rule::not_negative}, "0.0002"};

/// `[f: u' - j u'', ...]`, or one value for every frequency.
physics::Permeability permeability_of(PartJob& job, Group& group) {
  physics::Permeability permeability;
  const Phrase* phrase = group.phrase("permeability");
  if (phrase == nullptr) return permeability;
  const Due due{.dim = dimension::number, .rule = rule::positive, .complex = true, .permeability = true};
  if (is_list(*phrase)) {
    const std::size_t before = job.bench.data_ranges.size();
    if (const auto table = table_of(job, *phrase, group.scope(), due, "the permeability"))
      for (std::size_t i = 0; i < table->values.size(); ++i)
        permeability.points.push_back({table->frequencies_hz[i], table->values[i].real(), -table->values[i].imag()});
    // Beyond its table a core keeps the end's figures, with a warning: no error, as a measured load's table is.
    job.bench.data_ranges.resize(before);
  } else if (const auto value = complex_number_of(job.bench, *phrase, group.scope(), due)) {
    permeability.points.push_back({1.0, value->real(), -value->imag()});  // the same at every frequency
  } else {
    job.good = false;
  }
  return permeability;
}

}  // namespace

namespace {

/// A conductor's section: `wire 2 mm`, `tube 6 mm, wall 1 mm` or `strip 10 mm, thickness 1 mm`, one of them.
physics::Section section_of(Group& group, const Given& given, const char* wire_word) {
  const std::pair<const char*, physics::Profile> words[] = {
      {wire_word, physics::Profile::wire}, {"tube", physics::Profile::tube}, {"strip", physics::Profile::strip}};
  physics::Section section;
  section.metal = group.metal();
  const char* chosen = nullptr;
  for (const auto& [word, profile] : words) {
    if (!group.has(word)) continue;
    if (chosen != nullptr && group.good())
      group.say("contradictory-properties", given.span, in_quotes(chosen) + " excludes " + in_quotes(word));
    chosen = word;
    section.profile = profile;
    section.width_m = group.number(word);
  }
  if (chosen == nullptr) {
    group.need(wire_word);
    return section;
  }
  const char* depth = section.profile == physics::Profile::tube    ? "wall"
                      : section.profile == physics::Profile::strip ? "thickness"
                                                                   : nullptr;
  for (const char* other : {"wall", "thickness"})
    if (group.has(other) && (depth == nullptr || std::string_view(other) != depth) && group.good())
      group.say("contradictory-properties", given.span, in_quotes(other) + " is not for " + in_quotes(chosen))
          .expected = "tube 6 mm, wall 1 mm, or strip 10 mm, thickness 1 mm";
  if (depth != nullptr) section.thickness_m = group.need(depth);
  return section;
}

constexpr Member section_members[] = {{"tube", size_due, "6 mm", false, true},
                                      {"wall", size_due, "1 mm", false, true},
                                      {"strip", size_due, "10 mm", false, true},
                                      {"thickness", size_due, "1 mm", false, true}};
constexpr const char* section_form = "2 mm | tube 6 mm, wall 1 mm | strip 10 mm, thickness 1 mm";

std::vector<Member> with_section(std::vector<Member> members) {
  members.insert(members.end(), std::begin(section_members), std::end(section_members));
  members.push_back(metal_member);
  return members;
}

}  // namespace

std::optional<physics::Section> skin_of(PartJob& job, const Given& given) {
  Group group(job, given, with_section({{"diameter", size_due, section_form}}));
  const physics::Section section = section_of(group, given, "diameter");
  if (!group.good() || !group.possible(physics::internal_impedance(section, physics::Faces::both, 0.0).validity))
    return std::nullopt;
  return section;
}

std::shared_ptr<const physics::WoundCoil> coil_of(PartJob& job, const Given& given) {
  Group group(job, given,
              with_section({{"turns", count_due, "12"},
                            {"diameter", size_due, "50 mm"},
                            {"length", size_due, "60 mm"},
                            {"wire", size_due, section_form}}));
  const physics::Section section = section_of(group, given, "wire");
  const physics::Coil coil{group.need("turns"), group.need("diameter"), group.need("length"), section.width_m,
                           section.metal,       section.profile,        section.thickness_m};
  if (!group.good()) return nullptr;
  auto wound = std::make_shared<physics::WoundCoil>(physics::wind_coil(coil));
  return group.possible(wound->validity) ? wound : nullptr;
}

namespace {

const Due flux_due{.dim = dimension::flux_density, .rule = rule::positive};

/// AL, the ring's sizes, or both.
void read_core(PartJob& job, Group& group, const Given& given, CoreWinding& core) {
  core.permeability = permeability_of(job, group);
  if (group.has("AL")) core.index_h = group.number("AL");
  const bool sizes = group.has("outer") || group.has("inner") || group.has("height");
  if (sizes || !core.index_h) core.ring = physics::Ring{group.need("outer"), group.need("inner"), group.need("height")};
  if (!core.index_h && !group.has("permeability") && group.good())
    group.say("missing-value", given.span, "a core by its size needs its permeability").expected =
        "permeability 125, or [f: u' - j u'', ...]";
  if (core.ring && group.good()) group.possible(physics::check_ring(*core.ring));
}

void read_core_wire(Group& group, const Given& given, CoreWinding& core) {
  if (!group.has("wire")) return;
  core.wire = RoundWire{group.number("wire"), group.metal()};
  if (!core.ring && group.good())
    group.say("missing-value", given.span, "the wire's length follows from the ring's sizes, which are not given")
        .expected = "outer, inner and height beside AL";
}

}  // namespace

std::shared_ptr<const CoreWinding> core_of(PartJob& job, const Given& given, CoreUse use, std::optional<double> turns) {
  std::vector<Member> members{
      {"AL", {.dim = dimension::inductance, .rule = rule::positive}, "45 nH"},
      {"turns", count_due, "9"},
      {"outer", size_due, "61 mm"},
      {"inner", size_due, "36 mm"},
      {"height", size_due, "13 mm"},
      {"permeability", {.dim = dimension::number, .permeability = true}, "125 | [f: u' - j u'', ...]"},
      {"material", {}, "ferrite", true},
      {"saturation", flux_due, "300 mT"}};
  if (use != CoreUse::choke) members.insert(members.end(), {{"wire", size_due, "1 mm"}, metal_member});
  Group group(job, given, std::move(members));
  auto core = std::make_shared<CoreWinding>();
  core->turns = turns && !group.has("turns") ? *turns : group.need("turns");
  read_core(job, group, given, *core);
  read_core_wire(group, given, *core);
  core->saturation_t = group.saturation(core->saturation_t);
  if (group.good() && !core->permeability.points.empty()) group.possible(core->permeability.check());
  if (!group.good() || !job.good) return nullptr;
  return core;
}

bool is_group(const Given& given) {
  return given.value.size() == 1 && !given.value[0].phrases.empty() && given.value[0].phrases[0].size() > 1 &&
         given.value[0].phrases[0][0].kind == syntax::Term::Kind::name;
}

std::optional<PlateCapacitor> plates_of(PartJob& job, const Given& given) {
  const Due area_due{.dim = dimension::length * dimension::length, .rule = rule::positive};
  Group group(job, given,
              {{"area", area_due, "4 cm * 5 cm"},
               {"width", size_due, "4 cm"},
               {"length", size_due, "5 cm"},
               {"gap", size_due, "2 mm"},
               {"plates", count_due, "2"},
               dielectric_member,
               tangent_member});
  physics::Plates plates;
  plates.insulation = group.insulation();
  plates.gap_m = group.need("gap");
  plates.plates = static_cast<int>(std::lround(group.number("plates", 2.0)));
  if (group.has("area")) {
    // An area alone tells nothing of its edges: a square of it, without fringing.
    plates.width_m = plates.length_m = std::sqrt(group.number("area"));
    plates.fringe = false;
    if (group.has("width") || group.has("length"))
      group.say("contradictory-properties", given.span, "`area` excludes `width` and `length`");
  } else {
    plates.width_m = group.need("width");
    plates.length_m = group.need("length");
  }
  if (!group.good()) return std::nullopt;
  const physics::PlateFigures figures = physics::plate_figures(plates);
  if (!group.possible(figures.validity)) return std::nullopt;
  if (!job.part.limits.volts_peak && std::isfinite(figures.breakdown_v_peak)) {
    job.part.limits.volts_peak = figures.breakdown_v_peak;
    job.part.limits.volts_of_air_gap = true;
    if (job.part.limits.span.source == nullptr) job.part.limits.span = given.span;
  }
  return PlateCapacitor{figures.capacitance_f, figures.loss_tangent, figures.validity.sentence};
}

std::optional<physics::Dipole> dipole_of(PartJob& job, const Given& given) {
  Group group(job, given, {{"length", size_due, "20 m"}, {"diameter", size_due, "2 mm"}, metal_member});
  physics::Dipole dipole{group.need("length"), group.need("diameter"), std::nullopt};
  if (group.has("metal")) dipole.metal = group.metal();
  if (!group.good() ||
      !group.possible(physics::dipole_at(dipole, physics::speed_of_light_m_per_s / (2.0 * dipole.length_m)).validity))
    return std::nullopt;
  return dipole;
}

std::optional<physics::Monopole> monopole_of(PartJob& job, const Given& given) {
  Group group(job, given,
              {{"height", size_due, "10 m"},
               {"diameter", size_due, "2 mm"},
               {"ground", {.dim = dimension::resistance, .rule = rule::not_negative}, "10 ohm"},
               metal_member});
  physics::Monopole monopole{group.need("height"), group.need("diameter"), group.number("ground"), std::nullopt};
  if (group.has("metal")) monopole.metal = group.metal();
  if (!group.good() ||
      !group.possible(
          physics::monopole_at(monopole, physics::speed_of_light_m_per_s / (4.0 * monopole.height_m)).validity))
    return std::nullopt;
  return monopole;
}

bool read_section(PartJob& job, const Given& given, LineMake& make) {
  const std::string kind = given.info->name;
  std::vector<Member> members;
  if (kind == "coax")
    members = {{"outer", size_due, "7.2 mm"}, {"inner", size_due, "2.2 mm"}, {"wall", size_due, "0.3 mm"}};
  else if (kind == "twowire")
    members = {{"spacing", size_due, "100 mm"}, {"diameter", size_due, "2 mm"}};
  else
    members = {{"height", size_due, "5 m"}, {"diameter", size_due, "2 mm"}};
  members.insert(members.end(), {dielectric_member, tangent_member, metal_member});
  Group group(job, given, std::move(members));
  const physics::Insulation insulation = group.insulation();
  const physics::Conductor metal = group.metal();
  physics::LineConstants constants;
  constexpr double any_hz = 10e6;
  if (kind == "coax") {
    const physics::Coax coax{group.need("inner"), group.need("outer"), group.number("wall"), metal, metal, insulation};
    make.section = coax;
    if (group.good()) constants = physics::coax_constants(coax, any_hz);
  } else if (kind == "twowire") {
    const physics::TwoWire pair{group.need("diameter"), group.need("spacing"), metal, insulation};
    make.section = pair;
    if (group.good()) constants = physics::two_wire_constants(pair, any_hz);
  } else {
    const physics::WireOverGround wire{group.need("diameter"), group.need("height"), metal, insulation};
    make.section = wire;
    if (group.good()) constants = physics::over_ground_constants(wire, any_hz);
  }
  if (!group.good() || !group.possible(constants.validity)) return false;
  // Without loss: C fixes both, Z0 = sqrt(er)/(c0 C) and v = c0/sqrt(er).
  make.velocity = 1.0 / std::sqrt(insulation.relative_permittivity);
  make.impedance_ohm = 1.0 / (make.velocity * physics::speed_of_light_m_per_s * constants.capacitance_f_per_m);
  return true;
}

}  // namespace wattfall::design
