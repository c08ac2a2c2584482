// Loads: an impedance in one of its forms, and the share of the power in it that is radiated.
#include "files.hpp"
#include "parts/job.hpp"

namespace wattfall::design {
namespace {

using syntax::Phrase;

constexpr Due impedance_due{.dim = dimension::resistance, .rule = rule::passive, .complex = true};

/// One argument of `series(...)`.
void read_series_argument(PartJob& job, const Phrase& argument, Scope& scope, Load::Series& series) {
  struct Member {
    const char* name;
    Due due;
    std::optional<Value>* value;
  };
  const Member members[] = {{"resistance", {.dim = dimension::resistance, .rule = rule::not_negative}, &series.ohms},
                            {"inductance", {.dim = dimension::inductance, .rule = rule::not_negative}, &series.henries},
                            {"capacitance", {.dim = dimension::capacitance, .rule = rule::positive}, &series.farads}};
  for (const Member& member : members) {
    const auto rest = rest_after(argument, member.name, job.bench.storage);
    if (!rest) continue;
    if (member.value->has_value()) {
      job.bench.complaints.say("repeated-property", syntax::span_of(argument),
                               in_quotes(member.name) + " is given twice");
      job.good = false;
      return;
    }
    if (rest->empty()) {
      job.bench.complaints.say("missing-value", syntax::span_of(argument), in_quotes(member.name) + " has no value");
      job.good = false;
      return;
    }
    *member.value = value_of(job.bench, *rest, scope, member.due);
    job.good = job.good && member.value->has_value();
    return;
  }
  job.bench.complaints.say("unknown-property", leading_span(argument), "a series circuit has no such member").expected =
      "resistance, inductance, capacitance";
  job.good = false;
}

void read_series(PartJob& job, const Given& given, Load& load) {
  Load::Series series;
  for (const Phrase& argument : given.value[0].phrases) read_series_argument(job, argument, *given.scope, series);
  if (given.value[0].phrases.empty()) {
    job.bench.complaints.say("missing-value", given.span, "nothing stands in this series circuit");
    job.good = false;
  }
  load.impedance = series;
}

void read_impedance(PartJob& job, Load& load) {
  if (const Given* dipole = job.given.find("dipole")) {
    if (auto made = dipole_of(job, *dipole)) load.impedance = std::move(*made);
  } else if (const Given* monopole = job.given.find("monopole")) {
    if (auto made = monopole_of(job, *monopole)) load.impedance = std::move(*made);
  } else if (const Given* table = job.given.find("table")) {
    if (auto read = table_of(job, table->value, *table->scope, impedance_due, "this table"))
      load.impedance = std::move(*read);
  } else if (const Given* measured = job.given.find("measured")) {
    if (auto network = measured_of(job, *measured, 1)) load.impedance = std::move(network);
  } else if (const Given* series = job.given.find("series")) {
    read_series(job, *series, load);
  } else if (const Given* impedance = job.given.find("impedance")) {
    if (is_list(impedance->value)) {
      if (auto read = table_of(job, impedance->value, *impedance->scope, impedance_due, "this table"))
        load.impedance = std::move(*read);
    } else if (const auto value = optional_value(job, "impedance", impedance_due)) {
      load.impedance = *value;
    }
  } else {
    say_missing(job, "impedance", "50 - j12 ohm, table [f: z, ...], measured \"x.s1p\" or series(...)");
  }
}

void read_radiates(PartJob& job, Load& load) {
  const Given* radiates = job.given.find("radiates");
  if (radiates == nullptr) return;
  constexpr Due due{.dim = dimension::number, .rule = rule::share};
  const auto after_table = rest_after(radiates->value, "table", job.bench.storage);
  const Phrase& value = after_table ? *after_table : radiates->value;
  if (is_list(value)) {
    if (auto table = table_of(job, value, *radiates->scope, due, "this table")) load.radiates = std::move(*table);
  } else if (const auto share = optional_value(job, "radiates", due)) {
    load.radiates = *share;
  }
}

/// A loss resistance is a part of the load's own: where both are constants it cannot be the larger.
void check_loss(PartJob& job, const Load& load) {
  const Value* impedance = std::get_if<Value>(&load.impedance);
  if (!load.loss_ohms || impedance == nullptr || !impedance->constant() || !load.loss_ohms->constant()) return;
  if (load.loss_ohms->constant_value().real() <= impedance->constant_value().real()) return;
  const Given* loss = job.given.find("loss");
  auto& wrong = job.bench.complaints.say("value-out-of-range", loss->span,
                                         "this is more than the load's own resistance, of which it is a part");
  if (const Given* own = job.given.find("impedance")) wrong.notes.push_back({own->span, "the load's impedance"});
  job.good = false;
}

}  // namespace

std::shared_ptr<const measured::Network> measured_of(PartJob& job, const Given& given, int ports) {
  const bool named = given.value.size() == 1 && given.value[0].kind == syntax::Term::Kind::string;
  job.good = false;
  if (!named) {
    job.bench.complaints.say("missing-value", given.span, "`measured` is followed by a file's name in quotes")
        .expected = given.info->form;
    return nullptr;
  }
  const Span span = given.value[0].span;
  const std::string name(given.value[0].text);
  const auto path = job.bench.files.find(name, span);
  if (!path) return nullptr;
  auto network = job.bench.files.network(*path, name, ports, span);
  if (network == nullptr) return nullptr;
  job.good = true;
  job.bench.data_ranges.push_back(
      {in_quotes(name), network->frequencies_hz.front(), network->frequencies_hz.back(), given.span});
  return network;
}

std::optional<Model> build_load(PartJob& job) {
  Load load;
  read_impedance(job, load);
  read_radiates(job, load);
  load.loss_ohms = optional_value(job, "loss", {.dim = dimension::resistance, .rule = rule::not_negative});
  if (job.good) check_loss(job, load);
  return load;
}

std::optional<Model> build_two_port(PartJob& job) {
  const Given* given = job.given.find("measured");
  if (given == nullptr) {
    say_missing(job, "measurement", "measured \"x.s2p\"");
    return std::nullopt;
  }
  TwoPort two_port;
  two_port.data = measured_of(job, *given, 2);
  if (two_port.data == nullptr) return std::nullopt;
  return two_port;
}

}  // namespace wattfall::design
