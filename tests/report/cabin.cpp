// Builds the cabin's design part by part, then books that close at every point, then what a judge would say of them.
#include "cabin.hpp"

#include <cmath>

namespace cabin {
namespace {

using namespace wattfall;
using design::NodeId;
using design::PartId;
using ledger::Series;

constexpr const char* text = R"(design "40 m doublet at the lake cabin"
source    rig   at desk : 100 W, 50 ohm
load      wires at feed : 60 - j210 ohm, radiates 92 %
box tee (in, out) {
  capacitor Cin  from in  to mid    : adjustable 12 pF to 240 pF, Q 1500, limit 1 kV
  inductor  L    from mid to ground : adjustable 0.1 uH to 18 uH, Q 200 at 7 MHz
  capacitor Cout from mid to out    : adjustable 12 pF to 240 pF, Q 1500, limit 1 kV
}
tee  atu  from desk to wall
line coax from wall to feed : 24 m of RG-213
plane wall_plug at wall into coax
require swr at desk below 1.5
require total loss below 2 dB
require peak volts across atu.Cout below 1 kV
)";

/// How a variant spends 100 W: at the first point, and how that grows to the last.
struct Spending {
  double coax_w, coil_w, cin_w, cout_w, returned_w, cout_volts, coax_swr, matched_db;
};

constexpr Spending at_desk{21.0, 14.0, 0.6, 0.9, 0.1, 880.0, 7.9, 0.31};
constexpr Spending at_mast{3.1, 8.2, 0.3, 0.4, 0.02, 610.0, 1.02, 0.15};

Span find(const SourcePtr& source, const std::string& words) {
  const std::size_t begin = source->text().find(words);
  return {source.get(), std::uint32_t(begin), std::uint32_t(begin + words.size())};
}

design::Part make_part(const SourcePtr& source, std::string name, std::string kind, design::Model model,
                       std::vector<int> nodes, const std::string& words) {
  design::Part part{std::move(name), std::move(kind), std::move(model), {}, {}, {}, {}, find(source, words)};
  for (const int node : nodes) part.terminals.push_back(NodeId{node});
  return part;
}

void add_parts(design::Design& made, const SourcePtr& source) {
  design::Line line;
  line.make.cable = "RG-213";
  line.make.length_m = design::Value(24.0);
  line.make.impedance_ohm = 50.0;
  line.make.velocity = 0.66;
  made.parts.push_back(make_part(source, "wires", "load", design::Load{}, {4, 0}, "load      wires"));
  made.parts.push_back(make_part(source, "atu.Cin", "capacitor", design::Capacitor{}, {1, 2}, "capacitor Cin"));
  made.parts.push_back(make_part(source, "atu.L", "inductor", design::Inductor{}, {2, 0}, "inductor  L"));
  made.parts.push_back(make_part(source, "atu.Cout", "capacitor", design::Capacitor{}, {2, 3}, "capacitor Cout"));
  made.parts.push_back(make_part(source, "coax", "line", line, {3, 0, 4, 0}, "line coax"));
  for (design::Part& part : made.parts) {
    if (part.name.starts_with("atu.")) part.box = design::BoxId{0};
  }
}

void add_requirement(design::Design& made, const SourcePtr& source, design::FigureKind kind, std::string figure,
                     double value, const std::string& words) {
  design::Requirement requirement;
  requirement.figure.kind = kind;
  requirement.figure.text = std::move(figure);
  requirement.value = value;
  requirement.text = words;
  requirement.span = find(source, words);
  made.requirements.push_back(std::move(requirement));
}

std::unique_ptr<design::Design> make_design(const Options& options, std::size_t number) {
  auto made = std::make_unique<design::Design>();
  const auto source = std::make_shared<const Source>("cabin.feed", text);
  made->sources.push_back(source);
  made->title = options.title;
  made->file = "cabin.feed";
  if (options.variants > 1) made->variant = number == 0 ? options.first_name : "coupler at the mast";
  for (const char* name : {"ground", "desk", "atu.mid", "wall", "feed"}) made->nodes.push_back({name, {}});
  made->source.name = "rig";
  made->source.node = NodeId{1};
  made->source.available_w = design::Value(100.0);
  add_parts(*made, source);
  made->boxes.push_back({"atu", "tee", {NodeId{1}, NodeId{3}}, {}, find(source, "tee  atu")});
  made->knobs.push_back({"atu.Cin", dimension::capacitance, 12e-12, 240e-12, {}, {}, {}});
  made->knobs.push_back({"atu.L", dimension::inductance, 0.1e-6, 18e-6, {}, {}, {}});
  made->knobs.push_back({"atu.Cout", dimension::capacitance, 12e-12, 240e-12, {}, {}, {}});
  made->planes.push_back({"wall_plug", {NodeId{3}, PartId{4}}, find(source, "plane wall_plug")});
  using enum design::FigureKind;
  add_requirement(*made, source, swr_at, "swr at desk", 1.5, "swr at desk below 1.5");
  add_requirement(*made, source, total_loss, "total loss", 2.0, "total loss below 2 dB");
  add_requirement(*made, source, peak_volts_across, "peak volts across atu.Cout", 1000.0,
                  "peak volts across atu.Cout below 1 kV");
  return made;
}

double db(double in, double out) {
  return 10.0 * std::log10(in / out);
}

/// 0 at the first point, 1 at the last.
double along(std::size_t i, std::size_t points) {
  return points < 2 ? 0.0 : double(i) / double(points - 1);
}

void book_source(ledger::Ledger& books, double returned_w) {
  ledger::SourceBook& source = books.source;
  source.reference_ohm = 50.0;
  source.available_w.push_back(100.0);
  source.returned_w.push_back(returned_w);
  source.accepted_w.push_back(100.0 - returned_w);
  const double reflection = std::sqrt(returned_w / 100.0);
  source.reflection.push_back({0.0, reflection});
  source.swr.push_back((1.0 + reflection) / (1.0 - reflection));
  source.load_impedance_ohm.push_back(50.0 * (1.0 + std::complex(0.0, reflection)) /
                                      (1.0 - std::complex(0.0, reflection)));
}

void book_part(ledger::PartBook& book, double heat_w, double volts, double amps) {
  book.heat_w.push_back(heat_w);
  book.volts_peak.push_back(volts);
  book.amps_rms.push_back(amps);
}

void book_line(ledger::PartBook& book, double in_w, double heat_w, const Spending& spent) {
  book.in_w.push_back(in_w);
  book.out_w.push_back(in_w - heat_w);
  book.loss_db.push_back(db(in_w, in_w - heat_w));
  book.volts_peak_along.push_back(book.volts_peak.back() * 1.3);
  book.amps_rms_along.push_back(book.amps_rms.back() * 1.2);
  book.matched_loss_db.push_back(spent.matched_db);
  book.swr_load_end.push_back(spent.coax_swr);
  book.volts_at_m.push_back(3.2);
  book.amps_at_m.push_back(10.6);
}

void book_point(ledger::Ledger& books, const Spending& spent, double hz, double t) {
  const double grown = 1.0 + 0.4 * (t - 0.3) * (t - 0.3);
  const double returned_w = spent.returned_w * (1.0 + 20.0 * t * t);
  const double coax_w = spent.coax_w * grown, coil_w = spent.coil_w * grown;
  const double box_w = coil_w + spent.cin_w + spent.cout_w;
  books.frequencies_hz.push_back(hz);
  book_source(books, returned_w);
  book_part(books.parts[0], spent.cin_w, spent.cout_volts * 0.8, 2.1);
  book_part(books.parts[1], coil_w, spent.cout_volts * 0.9, 4.4);
  book_part(books.parts[2], spent.cout_w, spent.cout_volts * (1.0 + 0.3 * t), 3.3);
  book_part(books.parts[3], coax_w, 240.0, 2.4);
  const double accepted_w = 100.0 - returned_w, absorbed_w = accepted_w - box_w - coax_w;
  book_line(books.parts[3], accepted_w - box_w, coax_w, spent);
  ledger::LoadBook& load = books.loads[0];
  load.impedance_ohm.push_back({60.0, -210.0 + 40.0 * t});
  load.absorbed_w.push_back(absorbed_w);
  load.radiated_w.push_back(0.92 * absorbed_w);
  load.heat_w.push_back(absorbed_w - 0.92 * absorbed_w);
  load.volts_peak.push_back(318.0);
  load.amps_rms.push_back(1.05);
  ledger::BoxBook& box = books.boxes[0];
  box.in_w.push_back(accepted_w);
  box.out_w.push_back(accepted_w - box_w);
  box.loss_db.push_back(db(accepted_w, accepted_w - box_w));
  box.heat_w.push_back(box_w);
  ledger::Totals& totals = books.totals;
  totals.available_w.push_back(100.0);
  totals.returned_w.push_back(returned_w);
  totals.heat_w.push_back(box_w + coax_w);
  totals.absorbed_w.push_back(absorbed_w);
  totals.radiated_w.push_back(0.92 * absorbed_w);
  totals.total_loss_db.push_back(db(100.0, 0.92 * absorbed_w));
  totals.efficiency.push_back(0.92 * absorbed_w / 100.0);
  totals.residual_w.push_back(100.0 - returned_w - (box_w + coax_w) - absorbed_w);
  ledger::LookBook& look = books.looks[0];
  look.toward_load_ohm.push_back({31.2 + 9.0 * t, -48.8});
  look.toward_source_ohm.push_back({33.0, 47.1});
  look.mismatch_db.push_back(0.02);
}

std::unique_ptr<ledger::Ledger> make_ledger(const Options& options, const Spending& spent) {
  auto books = std::make_unique<ledger::Ledger>();
  for (int part = 1; part <= 4; ++part)
    books->parts.push_back({PartId{part}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}});
  books->loads.push_back({PartId{0}, {}, {}, {}, {}, {}, {}});
  books->boxes.push_back({design::BoxId{0}, {}, {}, {}, {}});
  books->looks.push_back({{NodeId{3}, PartId{4}}, {}, {}, {}});
  for (std::size_t i = 0; i < options.points; ++i) {
    const double t = along(i, options.points);
    book_point(*books, spent, 7.0e6 + std::round(t * 200e3), t);
  }
  return books;
}

judge::Judgement make_judgement(const design::Design& design, const ledger::Ledger& books) {
  judge::Judgement judged;
  const double swr = books.source.swr.back(), volts = books.parts[2].volts_peak.back();
  const double loss_db = books.totals.total_loss_db.back(), at_hz = books.frequencies_hz.back();
  judged.verdicts.push_back({&design.requirements[0], swr <= 1.5, swr, at_hz});
  judged.verdicts.push_back({&design.requirements[1], loss_db <= 2.0, loss_db, at_hz});
  judged.verdicts.push_back({&design.requirements[2], volts <= 1000.0, volts, at_hz});
  judged.ratings.push_back({PartId{1}, 'V', 1000.0, books.parts[0].volts_peak.back(), at_hz});
  judged.ratings.push_back({PartId{3}, 'V', 1000.0, volts, at_hz});
  if (volts > 1000.0) {
    judged.warnings.push_back(
        {"rating-volts", "atu.Cout meets 1144 V peak at 7.2 MHz; its limit is 1 kV.", "atu.Cout", at_hz});
  }
  return judged;
}

std::vector<report::Setting> make_settings(std::size_t points) {
  std::vector<report::Setting> settings{
      {design::KnobId{0}, {}, {}}, {design::KnobId{1}, {}, {}}, {design::KnobId{2}, {}, {}}};
  for (std::size_t i = 0; i < points; ++i) {
    const double t = along(i, points);
    settings[0].values.push_back(67.5e-12 - 6e-12 * t);
    settings[1].values.push_back(2.31e-6 - 0.1e-6 * t);
    settings[2].values.push_back(i + 1 == points ? 240e-12 : 190e-12 + 48e-12 * t);
    for (report::Setting& setting : settings) setting.at_end.push_back(false);
  }
  if (points > 1) settings[2].at_end.back() = true;
  return settings;
}

}  // namespace

Cabin::Cabin(const Options& options) {
  registry.plugins = {{"lines", "1.0", "/somewhere/lines.so"}, {"reports", "1.0", "/somewhere/reports.so"}};
  for (std::size_t i = 0; i < options.variants; ++i) {
    designs.push_back(make_design(options, i));
    ledgers.push_back(make_ledger(options, i == 0 ? at_desk : at_mast));
    report::VariantResult result;
    result.design = designs.back().get();
    result.tuned = true;
    result.ledger = ledgers.back().get();
    result.settings = make_settings(options.points);
    result.judgement = make_judgement(*result.design, *result.ledger);
    result.plane_looks = {0};
    result.story = {7, 64, options.points, i == 0 ? 2U : 0U, i == 0 ? "a pivot was small" : "", 3.1e-15, 18420};
    results.push_back(std::move(result));
  }
}

}  // namespace cabin
