// `tuner NAME from a to b : FORM`: a form of tuner that a plugin brings in the language itself, written out as a box. Where several are asked for
// (`any`, or a group), each makes a design of its own, to be set side by side.
#pragma once

#include <deque>
#include <map>
#include <string>
#include <vector>

#include "complaints.hpp"
#include "gather.hpp"
#include "host/registry.hpp"

namespace wattfall::design {

/// The statements of one design to resolve, tuners written out.
struct Trial {
  Gathered gathered;
  const Level* level = nullptr;  ///< of `gathered`
  std::string label;             ///< which forms were taken; empty where there was no choice
};

/// The word of the kind.
inline constexpr const char* tuner_kind = "tuner";
/// Boxes made from forms are called this and the form's name.
inline constexpr const char* tuner_box = "tuner ";

class Tuners {
 public:
  Tuners(const host::Registry& registry, Vocabulary vocabulary, Complaints& complaints)
      : registry_(registry), vocabulary_(std::move(vocabulary)), complaints_(complaints) {}

  /// One trial a combination of forms, 64 at most; one, unchanged, where no tuner stands in the level. Unknown forms are said. `level` is of `gathered`.
  std::vector<Trial> trials(const Gathered& gathered, const Level& level);

  /// The forms' texts, for spans into them.
  const std::vector<SourcePtr>& sources() const { return sources_; }

 private:
  using Forms = std::vector<const sdk::TunerForm*>;

  Forms forms_for(const syntax::Part& tuner);
  const syntax::Statement* box_of(const sdk::TunerForm& form);
  const syntax::Statement* placed(const syntax::Statement& statement, const sdk::TunerForm& form);
  const syntax::Statement* with_knobs(const syntax::Statement& statement, const std::map<std::string, const syntax::Box*>& boxes);
  Trial trial(const Gathered& gathered, const Level& level, const std::vector<const syntax::Statement*>& tuners, const Forms& chosen);

  const host::Registry& registry_;
  Vocabulary vocabulary_;
  Complaints& complaints_;
  std::vector<SourcePtr> sources_;
  std::map<const sdk::TunerForm*, syntax::File> parsed_;
  std::map<const sdk::TunerForm*, const syntax::Statement*> boxes_;
  syntax::Storage storage_;
  std::deque<syntax::Statement> made_;
};

}  // namespace wattfall::design
