// Lines and stubs: a length of a known cable, or of a line whose figures are given; loss fitted by the registered
// model.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/job.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

constexpr double light_m_per_s = 299'792'458.0;  // SI, exact
constexpr Due length_due{.dim = dimension::length, .rule = rule::positive};

/// `24 m of RG-213`, taken apart.
struct LengthOf {
  Phrase length, cable;
  bool of = false;  ///< a cable was to follow
};

LengthOf split_length(Bench& bench, const Given& main) {
  const auto split = split_at_word(bench, main.value, "of");
  if (!split) return {main.value, {}};
  return {split->before, split->after, true};
}

KnownCable* find_cable(Bench& bench, const Phrase& phrase, Span whole) {
  const bool one = phrase.size() == 1 &&
                   (phrase[0].kind == syntax::Term::Kind::cable || phrase[0].kind == syntax::Term::Kind::string ||
                    phrase[0].kind == syntax::Term::Kind::name);
  if (!one) {
    auto& wrong = bench.complaints.say("missing-value", phrase.empty() ? whole : syntax::span_of(phrase),
                                       "`of` is followed by one cable's name");
    wrong.expected = "24 m of RG-213";
    // `of RG 58`: a name with blanks stands in quotes.
    const auto goes_on = [](const syntax::Term& term) {
      return term.kind == syntax::Term::Kind::name || (term.kind == syntax::Term::Kind::number && term.text.empty());
    };
    const bool letters = !phrase.empty() && !phrase[0].text.empty() && phrase[0].text.find_first_of("0123456789") == std::string_view::npos;
    if (letters && std::all_of(phrase.begin() + 1, phrase.end(), goes_on))
      wrong.hint = "\"" + std::string(syntax::span_of(phrase).text()) + "\"";
    return nullptr;
  }
  const std::string_view name = phrase[0].text;
  const auto [known, is_new] = bench.cables.try_emplace(name);
  if (is_new) known->second.cable = bench.registry.find_cable(name);
  if (known->second.cable != nullptr) return &known->second;
  const Names names = [&] {
    std::vector<std::string> all;
    for (const auto& entry : bench.registry.cables) all.emplace_back(entry.thing->name);
    return all;
  };
  auto& wrong = bench.complaints.say("unknown-cable", phrase[0].span, "there is no cable " + in_quotes(name));
  wrong.expected = bench.complaints.nearest_few(name, names, 5);
  wrong.hint = bench.complaints.nearest(name, names);
  return nullptr;
}

std::optional<sdk::LossPoint> loss_point(PartJob& job, const Phrase& phrase, const Given& given) {
  Scope& scope = *given.scope;
  const auto split = split_at_word(job.bench, phrase, "at");
  if (!split) {
    job.bench.complaints
        .say("bad-loss", phrase.empty() ? given.span : syntax::span_of(phrase), "a line's loss is given at a frequency")
        .expected = "3.1 dB/100m at 10 MHz";
    return std::nullopt;
  }
  const auto loss = number_of(job.bench, split->before, scope, dimension::level_per_length, rule::not_negative);
  const auto at_hz = frequency_of(job.bench, split->after, scope);
  if (!loss || !at_hz) return std::nullopt;
  return sdk::LossPoint{*at_hz, *loss * 100.0};
}

void read_losses(PartJob& job, LineMake& make) {
  const Given* given = job.given.find("loss");
  if (given == nullptr) return;
  const syntax::List<Phrase> one(given->value);
  for (const Phrase& entry : is_list(given->value) ? given->value[0].phrases : one) {
    const auto point = loss_point(job, entry, *given);
    job.good = job.good && point.has_value();
    if (!point) continue;
    if (!make.losses.empty() && point->frequency_hz <= make.losses.back().frequency_hz) {
      job.bench.complaints.say("falling-table", syntax::span_of(entry),
                               "the frequencies of a line's loss rise, and this does not");
      job.good = false;
    }
    make.losses.push_back(*point);
  }
}

KnownCable* from_cable(PartJob& job, const LengthOf& main, const Given& given, LineMake& make) {
  for (const char* property : {"impedance", "velocity", "loss", "coax", "twowire", "overground"})
    if (const Given* other = job.given.find(property)) {
      auto& wrong = job.bench.complaints.say("contradictory-properties", other->span,
                                             in_quotes(property) + " and a cable's name exclude each other");
      wrong.notes.push_back(
          {syntax::span_of(main.cable.empty() ? given.value : main.cable), "the cable is named here"});
      job.good = false;
    }
  KnownCable* known = find_cable(job.bench, main.cable, given.span);
  if (known == nullptr) {
    job.good = false;
    return nullptr;
  }
  const sdk::Cable* cable = known->cable;
  make.cable = cable->name;
  make.impedance_ohm = cable->impedance_ohm;
  make.velocity = cable->velocity;
  if (cable->loss_count > 0) make.losses.assign(cable->losses, cable->losses + cable->loss_count);
  if (cable->limit_volts_peak > 0.0 && !job.part.limits.volts_peak) {
    job.part.limits.volts_peak = cable->limit_volts_peak;
    if (job.part.limits.span.source == nullptr) job.part.limits.span = main.cable[0].span;
  }
  if (cable->limit_watts_per_m > 0.0 && !job.part.limits.watts_per_m)
    job.part.limits.watts_per_m = cable->limit_watts_per_m;
  return known;
}

void from_figures(PartJob& job, LineMake& make) {
  for (const char* section : {"coax", "twowire", "overground"})
    if (const Given* given = job.given.find(section)) {
      for (const char* property : {"impedance", "velocity", "loss"})
        if (const Given* other = job.given.find(property)) {
          auto& wrong = job.bench.complaints.say("contradictory-properties", other->span,
                                                 in_quotes(property) + " follows from the line's cross-section");
          wrong.notes.push_back({given->span, "which is given here"});
          job.good = false;
        }
      job.good = read_section(job, *given, make) && job.good;
      return;
    }
  const Given* impedance = job.given.find("impedance");
  if (impedance == nullptr && job.given.find("length") == nullptr) return;  // said where the length is read
  if (impedance == nullptr) {
    say_missing(job, "impedance, and no cable", "LENGTH of CABLE, or LENGTH with an impedance, such as 24 m, 450 ohm");
    return;
  }
  const auto z0 = complex_number_of(job.bench, impedance->value, *impedance->scope,
                                    {.dim = dimension::resistance, .rule = rule::positive_resistance, .complex = true});
  job.good = job.good && z0.has_value();
  make.impedance_ohm = z0.value_or(50.0);
  if (const Given* velocity = job.given.find("velocity")) {
    const auto factor =
        number_of(job.bench, velocity->value, *velocity->scope, dimension::number, rule::share_above_zero);
    job.good = job.good && factor.has_value();
    make.velocity = factor.value_or(1.0);
  }
  read_losses(job, make);
}

/// `90 deg at 7.1 MHz`: metres = angle / (2 pi) * velocity * c0 / f.
std::optional<Value> electrical_length(PartJob& job, const Split& split, Scope& scope, double velocity, Varies varies) {
  auto angle = settle(job.bench, split.before, scope, varies);
  const auto at_hz = frequency_of(job.bench, split.after, scope);
  const Span span = syntax::span_of(split.before);
  if (!angle || !fits(job.bench, *angle, {.dim = dimension::angle, .rule = rule::positive}, span) || !at_hz)
    return std::nullopt;
  Settled metres_per_radian;
  metres_per_radian.dim = dimension::length / dimension::angle;
  metres_per_radian.formula.constant = velocity * light_m_per_s / *at_hz / (2.0 * std::numbers::pi);
  auto metres = combine(job.bench, Formula::Op::multiply, std::move(*angle), std::move(metres_per_radian), span);
  if (!metres) return std::nullopt;
  return to_value(std::move(*metres));
}

std::optional<Value> length_of(PartJob& job, const Phrase& phrase, Scope& scope, double velocity, Varies varies) {
  if (const auto split = split_at_word(job.bench, phrase, "at")) return electrical_length(job, *split, scope, velocity, varies);
  const auto settled = settle(job.bench, phrase, scope, varies);
  if (!settled) return std::nullopt;
  if (settled->dim == dimension::angle) {
    job.bench.complaints
        .say("missing-frequency", syntax::span_of(phrase), "an electrical length is given at a frequency")
        .expected = "90 deg at 7.1 MHz";
    return std::nullopt;
  }
  if (!fits(job.bench, *settled, length_due, syntax::span_of(phrase))) return std::nullopt;
  return to_value(*settled);
}

void fit_loss(PartJob& job, LineMake& make) {
  make.model = job.bench.registry.find_line_model();
  if (make.model == nullptr) {
    auto& wrong =
        job.bench.complaints.say("no-line-model", job.text.name.span, "no plugin has brought a model of lines");
    wrong.fault = Fault::file;
    job.good = false;
    return;
  }
  const sdk::LineData data{
      {make.impedance_ohm.real(), make.impedance_ohm.imag()}, make.velocity, make.losses.data(), make.losses.size()};
  double worst = 0.0;
  sdk::Failure failure{};
  if (make.model->fit(make.model->self, &data, &make.k1, &make.k2, &worst, &failure) == sdk::Status::ok) return;
  const Given* loss = job.given.find("loss");
  job.bench.complaints.say("line-model-failed", loss == nullptr ? job.text.name.span : loss->span,
                           std::string("the model of lines refuses this line: ") + failure.text);
  job.good = false;
}

/// A cable's loss is fitted once, however many lines are made of it.
void fit_cable(PartJob& job, LineMake& make, KnownCable& known) {
  if (!known.fitted) {
    fit_loss(job, make);
    known = {known.cable, job.good, make.k1, make.k2};
    return;
  }
  make.model = job.bench.registry.find_line_model();
  make.k1 = known.k1;
  make.k2 = known.k2;
}

std::optional<LineMake> read_make(PartJob& job) {
  const Given* main = job.given.find("length");
  LineMake make;
  LengthOf parts;
  KnownCable* cable = nullptr;
  if (main != nullptr) parts = split_length(job.bench, *main);
  if (parts.of)
    cable = from_cable(job, parts, *main, make);
  else
    from_figures(job, make);
  const Given* adjustable = job.given.find("adjustable");
  if (main == nullptr && adjustable == nullptr) {
    say_missing(job, "length", "a length, such as 24 m of RG-213");
    return std::nullopt;
  }
  const Reader read = [&](const Phrase& phrase) -> std::optional<double> {
    const auto metres = length_of(job, phrase, *adjustable->scope, make.velocity, Varies::no);
    if (!metres) return std::nullopt;
    return metres->constant_value().real();
  };
  const auto as_written = [&](const Given& given) {
    return length_of(job, parts.length, *given.scope, make.velocity, Varies::yes);
  };
  make.length_m = main_value(job, main, dimension::length, read, as_written).value_or(Value());
  if (!job.good) return std::nullopt;
  if (cable != nullptr)
    fit_cable(job, make, *cable);
  else
    fit_loss(job, make);
  if (!job.good) return std::nullopt;
  return make;
}

}  // namespace

/// Of four different nodes, none is ground.
bool stands_clear_of_ground(const Part& part) {
  for (const NodeId terminal : part.terminals)
    if (terminal == ground) return false;
  return part.terminals.size() == 4;
}

std::optional<Model> build_line(PartJob& job) {
  Line line;
  line.common_impedance = optional_value(
      job, "common impedance",
      {.dim = dimension::resistance, .rule = rule::positive_resistance, .complex = true, .varies = false});
  if (const Given* common = job.given.find("common impedance"); common != nullptr && job.good && !stands_clear_of_ground(job.part)) {
    job.bench.complaints
        .say("value-out-of-range", common->span, "only a pair of which neither conductor is ground has a common impedance")
        .expected = "places such as from (a b) to (c d)";
    job.good = false;
  }
  auto make = read_make(job);
  if (!make) return std::nullopt;
  line.make = std::move(*make);
  return line;
}

std::optional<Model> build_stub(PartJob& job) {
  Stub stub;
  stub.open = job.given.find("open") != nullptr;
  for (const char* end : {"open", "shorted"})
    if (const Given* given = job.given.find(end); given != nullptr && !given->value.empty()) {
      job.bench.complaints.say("unexpected-words", syntax::span_of(given->value), in_quotes(end) + " takes no value");
      job.good = false;
    }
  if (!stub.open && job.given.find("shorted") == nullptr) say_missing(job, "far end", "`open` or `shorted`");
  auto make = read_make(job);
  if (!make) return std::nullopt;
  stub.make = std::move(*make);
  return stub;
}

}  // namespace wattfall::design
