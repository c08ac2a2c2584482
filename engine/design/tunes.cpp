// `tune ... for most|least FIGURE, keeping ...`: which knobs, when, and to what end.
#include <algorithm>
#include <unordered_set>

#include "requests.hpp"

namespace wattfall::design {
namespace {

void say_no_knob(Bench& bench, const syntax::Word& word) {
  const auto part = bench.names.find(word.text);
  const NamedQuantity* quantity = find_quantity(bench.file_frame.scope, word.text);
  if ((part != bench.names.end() && part->second.broken) ||
      (quantity != nullptr && quantity->state == NamedQuantity::State::failed))
    return;
  if (part != bench.names.end() || quantity != nullptr) {
    auto& wrong = bench.complaints.say("not-adjustable", word.span, in_quotes(word.text) + " cannot be turned");
    wrong.advice = "add `adjustable A to B` to it";
    if (part != bench.names.end()) wrong.notes.push_back({part->second.span, "it stands here"});
    return;
  }
  const Names names = [&] {
    std::vector<std::string> all;
    std::unordered_set<std::string_view> seen;
    for (const Knob& knob : bench.design.knobs)
      if (seen.insert(knob.name).second) all.push_back(knob.name);
    return all;
  };
  auto& wrong =
      bench.complaints.say("unknown-knob", word.span, "there is nothing adjustable called " + in_quotes(word.text));
  wrong.expected = bench.complaints.nearest_few(word.text, names, 8);
  wrong.hint = bench.complaints.nearest(word.text, names);
  // `L` of a box: its whole name.
  const std::string member = "." + std::string(word.text);
  for (const Knob& knob : bench.design.knobs)
    if (wrong.hint.empty() && knob.name.ends_with(member)) wrong.hint = knob.name;
}

std::optional<KnobId> knob_of(Bench& bench, const syntax::Word& word) {
  if (NamedQuantity* named = find_quantity(bench.file_frame.scope, word.text)) settle_quantity(bench, *named);
  const auto part = bench.part_knobs.find(word.text);
  const auto quantity = bench.quantity_knobs.find(word.text);
  const bool of_part = part != bench.part_knobs.end(), of_quantity = quantity != bench.quantity_knobs.end();
  if (of_part && of_quantity) {
    auto& wrong = bench.complaints.say("ambiguous-knob", word.span,
                                       in_quotes(word.text) + " is both an adjustable part and an adjustable quantity");
    wrong.notes.push_back({bench.design.knobs[part->second.index].span, "the part"});
    wrong.notes.push_back({bench.design.knobs[quantity->second.index].span, "the quantity"});
    return std::nullopt;
  }
  if (of_part) return part->second;
  if (of_quantity) return quantity->second;
  const std::string_view head = word.text.substr(0, word.text.find('.'));
  const auto box = bench.names.find(head);
  if (box == bench.names.end() || !box->second.broken || head == word.text) say_no_knob(bench, word);
  return std::nullopt;
}

void read_knobs(Bench& bench, const syntax::Tune& asked, Tune& tune, std::unordered_map<int, Span>& taken) {
  for (const syntax::Word& word : asked.knobs) {
    const auto knob = knob_of(bench, word);
    if (!knob) continue;
    const auto [before, is_new] = taken.try_emplace(knob->index, word.span);
    if (!is_new) {
      auto& wrong = bench.complaints.say("repeated-knob", word.span, in_quotes(word.text) + " is tuned already");
      wrong.notes.push_back({before->second, "here"});
      continue;
    }
    tune.knobs.push_back(*knob);
  }
}

void read_at(Bench& bench, const syntax::Phrase& at, Tune& tune) {
  if (is_list(at)) {
    for (const syntax::Phrase& entry : at[0].phrases)
      if (const auto f = frequency_of(bench, entry, bench.file_frame.scope)) tune.at_hz.push_back(*f);
  } else if (const auto f = frequency_of(bench, at, bench.file_frame.scope)) {
    tune.at_hz.push_back(*f);
  }
  std::sort(tune.at_hz.begin(), tune.at_hz.end());
  tune.at_hz.erase(std::unique(tune.at_hz.begin(), tune.at_hz.end()), tune.at_hz.end());
}

void read_when(Bench& bench, const syntax::Tune& asked, Tune& tune) {
  tune.when = static_cast<Tune::When>(asked.when);
  if (asked.when == syntax::Tune::When::at) read_at(bench, asked.at, tune);
  if (asked.when != syntax::Tune::When::over) return;
  if (const auto range = range_or_band(bench, asked.from, asked.to, asked.band)) tune.over_hz = *range;
}

/// A width is that of a stretch of frequency, which `at` does not give.
void refuse_width(Bench& bench, const syntax::Figure& asked, const Figure& figure, Tune::When when) {
  if (figure.kind != FigureKind::width_of_swr_at || when == Tune::When::over) return;
  bench.complaints
      .say("width-at-a-point", asked.span,
           "a width is that of a stretch of frequency, but this looks at one frequency at a time")
      .expected = "`over A to B` before `for`, as in tune C over 7 MHz to 7.2 MHz for most width of swr at n below 2";
}

}  // namespace

void read_tunes(Bench& bench, const Adjacency& adjacency, const Statements& statements) {
  std::unordered_map<int, Span> taken;
  for (const syntax::Statement* statement : statements) {
    const auto* asked = std::get_if<syntax::Tune>(&statement->what);
    if (asked == nullptr) continue;
    Tune tune;
    tune.span = statement->span;
    tune.most = asked->most;
    read_knobs(bench, *asked, tune, taken);
    read_when(bench, *asked, tune);
    if (auto goal = settle_figure(bench, adjacency, *asked->goal)) {
      refuse_width(bench, *asked->goal, *goal, tune.when);
      tune.goal = std::move(*goal);
    }
    for (const syntax::Requirement& keeping : asked->keeping)
      if (auto requirement = settle_requirement(bench, adjacency, keeping)) {
        refuse_width(bench, keeping.figure, requirement->figure, tune.when);
        tune.keeping.push_back(std::move(*requirement));
      }
    bench.design.tunes.push_back(std::move(tune));
  }
}

}  // namespace wattfall::design
