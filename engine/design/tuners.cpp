#include "tuners.hpp"

#include <algorithm>
#include <set>

#include "expression.hpp"
#include "grammar/nearest_name.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;
using syntax::Statement;

constexpr std::size_t most_trials = 64;

/// "l-network", or what stands between quotes; empty where the phrase is something else.
std::string form_word(const Phrase& phrase) {
  if (phrase.size() == 1 && phrase[0].kind == syntax::Term::Kind::string) return std::string(phrase[0].text);
  std::string word;
  for (const char letter : syntax::span_of(phrase).text())
    if (letter != ' ' && letter != '\t') word += letter;
  return word;
}

/// Whether the phrase gives a property of one of the forms: `coil Q 200`.
bool is_property(const Phrase& phrase, const syntax::Box& box) {
  syntax::Storage storage;
  return std::any_of(box.with.begin(), box.with.end(), [&](const auto& with) {
    std::string words(with.first.text);
    std::replace(words.begin(), words.end(), '_', ' ');
    return rest_after(phrase, words, storage).has_value();
  });
}

/// Whether the user has a box of the kind's name, which then is what is meant.
bool has_own_box(const Level& level) {
  return std::any_of(level.statements.begin(), level.statements.end(), [](const Statement* statement) {
    const auto* box = std::get_if<syntax::Box>(&statement->what);
    return box != nullptr && box->name.text == tuner_kind;
  });
}

std::vector<const Statement*> tuners_in(const Level& level) {
  std::vector<const Statement*> found;
  for (const Statement* statement : level.parts)
    if (std::get<syntax::Part>(statement->what).kind.text == tuner_kind) found.push_back(statement);
  return found;
}

}  // namespace

/// The form's one box, renamed after it; null where the text of the plugin is not one box, which has been said.
const Statement* Tuners::box_of(const sdk::TunerForm& form) {
  const auto known = boxes_.find(&form);
  if (known != boxes_.end()) return known->second;
  const auto source = std::make_shared<const wattfall::Source>(tuner_box + std::string(form.name), form.box);
  sources_.push_back(source);
  complaints_.keep(source);
  Result<syntax::File> file = parse(source, vocabulary_);
  complaints_.pass_on(std::move(file.diagnostics));
  parsed_[&form] = file.value ? std::move(*file.value) : syntax::File{};
  const std::vector<Statement>& statements = parsed_[&form].statements;
  const auto* box = statements.size() == 1 ? std::get_if<syntax::Box>(&statements[0].what) : nullptr;
  if (box == nullptr || box->ports.size() != 2) {
    complaints_.say("broken-tuner-form", {}, "the tuner form " + in_quotes(form.name) + " of a plugin is not one box of two ports");
    return boxes_[&form] = nullptr;
  }
  made_.push_back(statements[0]);
  std::get<syntax::Box>(made_.back().what).name.text = storage_.keep_text(tuner_box + std::string(form.name));
  return boxes_[&form] = &made_.back();
}

Tuners::Forms Tuners::forms_for(const syntax::Part& tuner) {
  std::string word = "any";
  Span span = tuner.name.span;
  if (!tuner.properties.empty()) {
    const auto first = form_word(tuner.properties[0]);
    const bool property = std::any_of(registry_.tuner_forms.begin(), registry_.tuner_forms.end(), [&](const auto& entry) {
      const Statement* box = box_of(*entry.thing);
      return box != nullptr && is_property(tuner.properties[0], std::get<syntax::Box>(box->what));
    });
    if (!property) word = first, span = syntax::span_of(tuner.properties[0]);
  }
  Forms forms;
  std::set<std::string> groups;
  for (const auto& entry : registry_.tuner_forms) {
    const sdk::TunerForm& form = *entry.thing;
    groups.insert(form.group);
    if (word == "any" || word == form.group || word == form.name) forms.push_back(&form);
  }
  if (!forms.empty()) return forms;
  auto& wrong = complaints_.say("unknown-tuner-form", span, "there is no form of tuner called " + in_quotes(word));
  wrong.expected = "any";
  for (const std::string& group : groups) wrong.expected += ", " + group;
  std::vector<std::string> known(groups.begin(), groups.end());
  for (const auto& entry : registry_.tuner_forms) known.emplace_back(entry.thing->name);
  known.emplace_back("any");
  wrong.hint = nearest_name(word, known);
  if (registry_.tuner_forms.empty()) wrong.expected = "a plugin that brings forms of tuners (`wattfall list plugins` shows those found)";
  return forms;
}

/// The tuner as a use of the form's box: the form's word is left out, the rest are the box's quantities.
const Statement* Tuners::placed(const Statement& statement, const sdk::TunerForm& form) {
  Statement copy = statement;
  auto& part = std::get<syntax::Part>(copy.what);
  const auto& box = std::get<syntax::Box>(box_of(form)->what);
  part.kind.text = box.name.text;
  if (!part.properties.empty() && !is_property(part.properties[0], box)) part.properties = part.properties.from(1);
  made_.push_back(std::move(copy));
  return &made_.back();
}

/// `tune atu` turns all that is adjustable in it.
const Statement* Tuners::with_knobs(const Statement& statement, const std::map<std::string, const syntax::Box*>& boxes) {
  const auto* tune = std::get_if<syntax::Tune>(&statement.what);
  if (tune == nullptr) return &statement;
  const auto is_tuner = [&](const syntax::Word& knob) { return boxes.contains(std::string(knob.text)); };
  if (std::none_of(tune->knobs.begin(), tune->knobs.end(), is_tuner)) return &statement;
  Statement copy = statement;
  std::vector<syntax::Word> knobs;
  for (const syntax::Word& knob : tune->knobs) {
    if (!is_tuner(knob)) {
      knobs.push_back(knob);
      continue;
    }
    for (const Statement& member : boxes.at(std::string(knob.text))->body) {
      const auto* part = std::get_if<syntax::Part>(&member.what);
      if (part == nullptr) continue;
      const bool turns = std::any_of(part->properties.begin(), part->properties.end(), [](const Phrase& phrase) { return leading_word(phrase) == "adjustable"; });
      if (turns) knobs.push_back({storage_.keep_text(std::string(knob.text).append(".").append(part->name.text)), knob.span});
    }
  }
  std::get<syntax::Tune>(copy.what).knobs = storage_.keep(knobs);
  made_.push_back(std::move(copy));
  return &made_.back();
}

Trial Tuners::trial(const Gathered& gathered, const Level& level, const std::vector<const Statement*>& tuners, const Forms& chosen) {
  Trial one{gathered, nullptr, ""};
  std::map<const Statement*, const Statement*> instead;
  std::map<std::string, const syntax::Box*> boxes;
  std::set<const Statement*> used;
  for (std::size_t t = 0; t < tuners.size(); ++t) {
    const Statement* box = box_of(*chosen[t]);
    if (used.insert(box).second) one.gathered.common.statements.push_back(box);
    boxes[std::string(std::get<syntax::Part>(tuners[t]->what).name.text)] = &std::get<syntax::Box>(box->what);
    instead[tuners[t]] = placed(*tuners[t], *chosen[t]);
  }
  Level* own = &level == &gathered.common ? &one.gathered.common : &one.gathered.variants[static_cast<std::size_t>(&level - gathered.variants.data())];
  for (Level* at : {&one.gathered.common, own}) {
    for (const Statement*& statement : at->statements) statement = with_knobs(*statement, boxes);
    for (const Statement*& statement : at->parts)
      if (const auto found = instead.find(statement); found != instead.end()) statement = found->second;
  }
  one.level = own;
  return one;
}

std::vector<Trial> Tuners::trials(const Gathered& gathered, const Level& level) {
  const bool own = has_own_box(gathered.common) || has_own_box(level);
  std::vector<const Statement*> tuners = own ? std::vector<const Statement*>{} : tuners_in(gathered.common);
  if (&level != &gathered.common && !own)
    for (const Statement* statement : tuners_in(level)) tuners.push_back(statement);
  std::vector<Forms> forms;
  std::size_t combinations = 1;
  for (const Statement* statement : tuners) {
    forms.push_back(forms_for(std::get<syntax::Part>(statement->what)));
    std::erase_if(forms.back(), [&](const sdk::TunerForm* form) { return box_of(*form) == nullptr; });
    combinations *= forms.back().size();
    if (combinations > most_trials) {
      complaints_.say("too-many-variants", statement->span, "these tuners could be built in more than 64 ways: name the forms of some");
      return {};
    }
  }
  std::vector<Trial> all;
  for (std::size_t c = 0; c < combinations; ++c) {
    Forms chosen;
    std::string label;
    std::size_t left = c;
    for (std::size_t t = tuners.size(); t-- > 0;) {
      chosen.insert(chosen.begin(), forms[t][left % forms[t].size()]);
      left /= forms[t].size();
      if (forms[t].size() < 2) continue;
      const std::string name(std::get<syntax::Part>(tuners[t]->what).name.text);
      label = (tuners.size() > 1 ? name + ": " : "") + std::string(chosen.front()->name) + (label.empty() ? "" : "; " + label);
    }
    all.push_back(trial(gathered, level, tuners, chosen));
    all.back().label = label;
  }
  // The levels lie inside the trials, which have moved.
  for (Trial& one : all)
    one.level = &level == &gathered.common ? &one.gathered.common : &one.gathered.variants[static_cast<std::size_t>(&level - gathered.variants.data())];
  return all;
}

}  // namespace wattfall::design
