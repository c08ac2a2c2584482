// Phrases -> properties. All the kind's rules come from the catalogue; what contradicts what stands in a table below.
#include "properties.hpp"

#include <algorithm>
#include <array>

#include "expression.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

/// Of these a part may be given one. Lines by size or by figures are told apart where lines are built.
struct Exclusive {
  std::string_view kind;
  std::vector<std::string_view> names;
};

const std::vector<Exclusive>& exclusives() {
  static const std::vector<Exclusive> all{{"inductor", {"inductance", "coil", "core"}},
                                          {"inductor", {"Q", "resistance"}},
                                          {"inductor", {"capacitance", "resonance"}},
                                          {"capacitor", {"capacitance", "plates"}},
                                          {"capacitor", {"Q", "resistance"}},
                                          {"load", {"impedance", "table", "measured", "series", "dipole", "monopole"}},
                                          {"load", {"radiates", "loss"}},
                                          {"line", {"impedance", "coax", "twowire", "overground"}},
                                          {"stub", {"impedance", "coax", "twowire", "overground"}},
                                          {"stub", {"open", "shorted"}},
                                          {"transformer", {"turns", "impedance"}},
                                          {"transformer", {"core", "core Q"}},
                                          {"balun", {"impedance", "table", "core"}},
                                          {"choke", {"impedance", "table", "core"}}};
  return all;
}

bool holds(const Exclusive& group, std::string_view property) {
  return std::find(group.names.begin(), group.names.end(), property) != group.names.end();
}

bool exclude_each_other(std::string_view kind, std::string_view a, std::string_view b) {
  if (a == b) return false;
  const auto& all = exclusives();
  return std::any_of(all.begin(), all.end(),
                     [&](const Exclusive& group) { return group.kind == kind && holds(group, a) && holds(group, b); });
}

bool begins_with_word(const std::string& name, std::string_view word) {
  return name.compare(0, word.size(), word) == 0 && (name.size() == word.size() || name[word.size()] == ' ');
}

bool is_group(const PropertyInfo& info) {
  return !info.form.empty() && info.form[0] == '(';
}

/// `core 5000 ohm | (outer .., ...)`: a value, or a group.
bool may_be_group(const PropertyInfo& info) {
  return info.form.find("| (") != std::string::npos;
}

std::optional<Given> named_property(Bench& bench, const KindInfo& kind, const Phrase& phrase) {
  const std::string_view word = leading_word(phrase);
  if (word.empty()) return std::nullopt;
  std::optional<Given> best;
  for (const PropertyInfo& info : kind.properties) {
    if (!begins_with_word(info.name, word) || (best && best->info->name.size() > info.name.size())) continue;
    std::optional<Phrase> value;
    if ((is_group(info) || may_be_group(info)) && is_call_of(phrase, info.name))
      value = phrase;
    else if (!is_group(info))
      value = rest_after(phrase, info.name, bench.storage);
    if (value) best = Given{&info, *value, syntax::span_of(phrase), nullptr, true};
  }
  return best;
}

std::vector<std::string> property_names(const KindInfo& kind) {
  std::vector<std::string> names;
  for (const PropertyInfo& info : kind.properties) names.push_back(info.name);
  return names;
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

const PropertyInfo* main_of(const KindInfo& kind) {
  for (const PropertyInfo& info : kind.properties)
    if (info.main) return &info;
  return nullptr;
}

bool is_word(const syntax::Term& term, std::string_view text) {
  return term.kind == syntax::Term::Kind::name && term.text == text;
}

/// The words that a phrase begins with, where the first is no quantity: a property's name that the kind does not have.
std::string foreign_words(const Phrase& phrase, Scope& scope, Span& span) {
  const auto unknown = [&](std::string_view word) {
    return !word.empty() && word != "pi" && word != "frequency" && !is_function(word) &&
           find_quantity(scope, word) == nullptr;
  };
  if (phrase.size() == 1 && phrase[0].kind == syntax::Term::Kind::call && unknown(phrase[0].text)) {
    span = leading_span(phrase);
    return std::string(phrase[0].text);
  }
  if (phrase[0].kind != syntax::Term::Kind::name || !unknown(phrase[0].text)) return {};
  std::string words(phrase[0].text);
  span = phrase[0].span;
  for (std::size_t i = 1; i < phrase.size() && phrase[i].kind == syntax::Term::Kind::name; ++i) {
    words.append(1, ' ').append(phrase[i].text);
    span = join(span, phrase[i].span);
  }
  return words;
}

/// What the workbench calls by other names, where the kind has such a property.
std::string other_name_of_property(const KindInfo& kind, const std::string& words) {
  using Pair = std::pair<std::string_view, std::string_view>;
  static constexpr std::array<Pair, 24> others{
      {{"Z0", "impedance"},       {"Z", "impedance"},        {"z0", "impedance"},         {"VF", "velocity"},
       {"vf", "velocity"},        {"velocity factor", "velocity"}, {"attenuation", "loss"}, {"efficiency", "radiates"},
       {"ESR", "resistance"},     {"esr", "resistance"},     {"DCR", "resistance"},       {"dcr", "resistance"},
       {"SRF", "resonance"},      {"srf", "resonance"},      {"variable", "adjustable"},  {"tunable", "adjustable"},
       {"short", "shorted"},      {"closed", "shorted"},     {"rating", "limit"},         {"rated", "limit"},
       {"maximum", "limit"},      {"max", "limit"},          {"k", "factor"},             {"tan", "tangent"}}};
  for (const auto& [other, name] : others)
    for (const PropertyInfo& info : kind.properties)
      if (words == other && info.name == name) return info.name;
  return {};
}

void say_unknown_property(Bench& bench, const KindInfo& kind, const std::string& words, Span span) {
  for (const PropertyInfo& info : kind.properties)
    if (is_group(info) && begins_with_word(words, info.name)) {
      bench.complaints.say("missing-value", span, in_quotes(info.name) + " takes its sizes in brackets").expected =
          info.name + info.form;
      return;
    }
  auto& wrong =
      bench.complaints.say("unknown-property", span, in_quotes(kind.name) + " has no property " + in_quotes(words));
  if (kind.properties.empty()) {
    wrong.expected = "no property";
    return;
  }
  const Names names = [&] { return property_names(kind); };
  wrong.expected = bench.complaints.nearest_few(words, names, 12);
  wrong.hint = other_name_of_property(kind, words);
  if (wrong.hint.empty()) wrong.hint = bench.complaints.nearest(words, names);
}

/// `Q: 1500` and `impedance: 50 ohm`: a property's name, and a colon that does not belong there.
bool say_stray_colon(Bench& bench, const KindInfo& kind, const Phrase& phrase) {
  if (phrase.size() != 1 || phrase[0].kind != syntax::Term::Kind::pair) return false;
  const syntax::Term& left = phrase[0].operands[0];
  const bool property = left.kind == syntax::Term::Kind::name &&
                        std::any_of(kind.properties.begin(), kind.properties.end(), [&](auto& info) { return info.name == left.text; });
  if (!property) return false;
  bench.complaints.say("stray-equals", syntax::operator_span(phrase[0]), "a property takes its value without `:`").expected =
      "a value straight after the name";
  return true;
}

/// A value that stands without its name after the first: told by its dimension.
std::optional<Given> bare_property(Bench& bench, const KindInfo& kind, const Phrase& phrase, Scope& scope) {
  const Span span = syntax::span_of(phrase);
  const bool any_bare =
      std::any_of(kind.properties.begin(), kind.properties.end(), [](auto& info) { return info.bare; });
  if (any_bare) {
    const auto settled = settle(bench, phrase, scope);
    if (!settled) return std::nullopt;
    for (const PropertyInfo& info : kind.properties)
      if (info.bare && info.dim == settled->dim) return Given{&info, phrase, span, &scope, false};
  }
  auto& wrong = bench.complaints.say("value-without-name", span,
                                     "this value does not say which property of the " + kind.name + " it is");
  if (kind.properties.empty())
    wrong.expected = "no property";
  else
    wrong.expected = "one of these before it: " + joined(property_names(kind));
  return std::nullopt;
}

/// Something like `lenght 24 m`: a word that is no quantity, then more. `run of RG-213` is a length of cable.
bool looks_foreign(const Phrase& phrase, bool first) {
  if (!first) return true;
  if (phrase.size() == 1) return phrase[0].kind == syntax::Term::Kind::call;
  return !is_word(phrase[1], "of") && !is_word(phrase[1], "at");
}

std::optional<Given> read_property(Bench& bench, const KindInfo& kind, const Phrase& phrase, Scope& scope, bool first) {
  if (auto named = named_property(bench, kind, phrase)) {
    named->scope = &scope;
    return named;
  }
  if (say_stray_colon(bench, kind, phrase)) return std::nullopt;
  Span span;
  const std::string foreign = foreign_words(phrase, scope, span);
  if (!foreign.empty() && looks_foreign(phrase, first)) {
    say_unknown_property(bench, kind, foreign, span);
    return std::nullopt;
  }
  const PropertyInfo* main = main_of(kind);
  if (first && main != nullptr) return Given{main, phrase, syntax::span_of(phrase), &scope, false};
  return bare_property(bench, kind, phrase, scope);
}

bool has_cable(Bench& bench, const Given& given) {
  return split_at_word(bench, given.value, "of").has_value();
}

bool is_line(const KindInfo& kind) {
  return kind.name == "line" || kind.name == "stub";
}

/// `30 m` in the place of `24 m of RG-213` keeps the cable.
void keep_cable(Bench& bench, const Given& old, Given& changed) {
  if (has_cable(bench, changed)) return;
  const auto split = split_at_word(bench, old.value, "of");
  if (!split) return;
  std::vector<syntax::Term> both(changed.value.begin(), changed.value.end());
  both.insert(both.end(), old.value.begin() + split->before.size(), old.value.end());
  changed.value = bench.storage.keep(both);
}

bool gives_way(Bench& bench, const Given& old, const Given& changed, const KindInfo& kind) {
  const std::string &a = old.info->name, &b = changed.info->name;
  if (a == b || exclude_each_other(kind.name, a, b)) return true;
  const bool by_cable = is_line(kind) && changed.info->main && has_cable(bench, changed);
  return by_cable && (a == "impedance" || a == "velocity" || a == "loss");
}

}  // namespace

const Given* Properties::find(std::string_view name) const {
  for (const Given& given : given_)
    if (given.info->name == name) return &given;
  return nullptr;
}

Properties read_properties(Bench& bench, const KindInfo& kind, syntax::List<Phrase> phrases, Scope& scope) {
  Properties properties;
  properties.given_.reserve(phrases.size());
  for (std::size_t i = 0; i < phrases.size(); ++i) {
    if (phrases[i].empty()) continue;
    auto given = read_property(bench, kind, phrases[i], scope, i == 0);
    if (given)
      properties.given_.push_back(std::move(*given));
    else
      properties.complete_ = false;
  }
  return properties;
}

void check_clashes(Bench& bench, const KindInfo& kind, const Properties& properties) {
  const std::vector<Given>& all = properties.all();
  for (std::size_t i = 1; i < all.size(); ++i) {
    const Given& given = all[i];
    const std::string& name = given.info->name;
    if (name == "limit") continue;  // one of each dimension, which only their values tell
    const auto before = all.begin() + static_cast<std::ptrdiff_t>(i);
    const auto same = std::find_if(all.begin(), before, [&](const Given& one) { return one.info == given.info; });
    const auto clash = same != before ? same : std::find_if(all.begin(), before, [&](const Given& one) {
      return exclude_each_other(kind.name, one.info->name, name);
    });
    if (clash == before) continue;
    const std::string other = in_quotes(clash->info->name);
    auto& wrong = same == before ? bench.complaints.say("contradictory-properties", given.span,
                                                        other + " and " + in_quotes(name) + " exclude each other")
                                 : bench.complaints.say("repeated-property", given.span, other + " is given twice");
    wrong.notes.push_back({clash->span, "given here first"});
  }
}

void replace(Bench& bench, Properties& properties, Properties others, const KindInfo& kind, bool main_only) {
  auto& given = properties.given_;
  for (Given& other : others.given_) {
    const auto old_main = std::find_if(given.begin(), given.end(), [](const Given& one) { return one.info->main; });
    if (other.info->main && old_main != given.end()) {
      if (main_only && kind.name == "transformer") {
        other.info = old_main->info;
        other.named = true;
      }
      if (is_line(kind)) keep_cable(bench, *old_main, other);
    }
    std::erase_if(given, [&](const Given& old) { return gives_way(bench, old, other, kind); });
  }
  properties.complete_ = properties.complete_ && others.complete_;
  for (Given& other : others.given_) given.push_back(std::move(other));
}

}  // namespace wattfall::design
