// What the rig sees over the sweep, where the watts go at the points worth dwelling on, and the lines on the way.
#include <algorithm>
#include <cmath>

#include "code_points.hpp"
#include "text_sections.hpp"

namespace reports {
namespace {

using Side = Table::Side;

constexpr std::size_t most_rows = 16;
constexpr std::size_t most_boxes = 8;
constexpr std::size_t most_lines = 12;
constexpr std::size_t bar_columns = 30;
const Scale share_scale{0.01, "%", 1};

/// Bars that go on where the one before ended, like a waterfall, so that the last ends where the available power does.
class Fall {
 public:
  std::string next(double share) {
    if (!(share > 0.0)) return "";
    const std::size_t begin = column(reached_);
    reached_ += share;
    const std::size_t end = column(reached_);
    std::string bar(std::min(begin, bar_columns - 1), ' ');
    if (begin == end) return bar + "\u258f";  // a sliver
    for (std::size_t i = begin; i < end; ++i) bar += "\u2588";
    return bar;
  }

 private:
  static std::size_t column(double share) {
    return static_cast<std::size_t>(std::lround(std::clamp(share, 0.0, 1.0) * double(bar_columns)));
  }
  double reached_ = 0.0;
};

std::string where_it_goes(const Json& row) {
  const std::string goes = raw_text(member(row, "goes"));
  if (goes == "radiated") return "on the air";
  if (goes == "load_heat") return "heat of the load";
  if (goes == "returned") return "back to the rig";
  return text(row, "kind");
}

Ink ink_of(const Json& row) {
  return raw_text(member(row, "goes")) == "radiated" ? Ink::good : Ink::plain;
}

void add_row(Table& table, const Json& row, const Scale& scale, Fall& fall) {
  const double db = number(row, "alone_db");
  table.add({cut_name(text(row, "name")), cut_name(where_it_goes(row)), scale.show(number(row, "power_w")),
             share_scale.show(number(row, "share")), std::isnan(db) ? "" : Scale{1.0, "dB", 2}.show(db),
             fall.next(number(row, "share"))},
            ink_of(row));
}

/// Tenths of an ohm; of very many ohms a few digits.
std::string ohms(double value) {
  return std::abs(value) < 1e5 ? fixed(value, 1) : significant(value);
}

/// "inf" where there is none.
std::string swr_cell(double swr) {
  return std::isnan(swr) ? "inf" : swr < 1000.0 ? fixed(swr, 2) : significant(swr);
}

/// Rows up to a number, and what comes back always; says how many are left out and what they come to.
void add_rows(Table& table, const Json& rows, const Scale& scale) {
  Fall fall;
  std::size_t left_out = 0;
  double left_out_w = 0.0, left_out_share = 0.0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (i < most_rows || raw_text(member(rows[i], "goes")) == "returned") {
      add_row(table, rows[i], scale, fall);
    } else {
      ++left_out;
      left_out_w += number(rows[i], "power_w");
      left_out_share += number(rows[i], "share");
    }
  }
  if (left_out == 0) return;
  table.add({std::to_string(left_out) + " smaller ones", "", scale.show(left_out_w), share_scale.show(left_out_share),
             "", fall.next(left_out_share)});
}

void write_boxes(Paper& paper, const Json& variant, std::size_t point, const Scale& scale) {
  const Json& boxes = list(variant, "boxes");
  for (std::size_t i = 0; i < std::min(boxes.size(), most_boxes); ++i) {
    const Json& box = boxes[i];
    std::string words = cut_name(text(box, "name")) + " (" + cut_name(text(box, "kind")) + ") in all: ";
    words += scale.show(number_at(box, "heat_w", point)) + ' ' + scale.unit + " of heat; " +
             scale.show(number_at(box, "in_w", point)) + " in, " + scale.show(number_at(box, "out_w", point)) +
             " out, " + spell(number_at(box, "loss_db", point), "dB");
    paper.line("  " + words);
  }
}

void write_waterfall(Paper& paper, const Json& variant, const Json& fall) {
  const double available_w = number(fall, "available_w");
  const Scale scale = scale_for({available_w}, "W");
  paper.section("Where the " + spell(available_w, "W", 4) + " go " + text(fall, "title") + ": " +
                spell(number(fall, "total_loss_db"), "dB") + " lost on the way");
  Table table({Side::left, Side::left, Side::right, Side::right, Side::right, Side::left});
  table.heads({"", "", scale.unit, "%", "dB alone", ""});
  add_rows(table, list(fall, "rows"), scale);
  table.rule();
  const double booked = number(fall, "sum_w") / available_w;
  table.add({"booked", "", scale.show(number(fall, "sum_w")), share_scale.show(booked), "", Fall().next(booked)},
            Ink::strong);
  table.print(paper);
  write_boxes(paper, variant, count(fall, "point"), scale);
}

/// Heat at the worst place, and the power that it allows where the line has a rating.
void write_line_heat(Paper& paper, const Json& part, std::size_t point, bool stub) {
  const double heat_w_per_m = number_at(part, "heat_w_per_m", point);
  if (!(heat_w_per_m > 0.0)) return;
  std::string words = "Hottest: " + spell(heat_w_per_m, "W") + " a metre " + spell(number_at(part, "heat_at_m", point), "m") +
                      (stub ? " from the far end." : " from the load end.");
  if (part.contains("rated_w"))
    words += " By its heat it carries " + spell(number_at(part, "rated_w", point), "W", 2) + " as it stands, " +
             spell(number_at(part, "rated_matched_w", point), "W", 2) + " without reflection.";
  paper.paragraph("    ", words);
}

void write_line_entry(Paper& paper, const Json& part, std::size_t point) {
  std::string words = text(part, "name");
  const std::string cable = text(part, "cable");
  const double length_m = number(part, "length_m");
  if (std::isfinite(length_m)) words += ", " + spell(length_m, "m");
  if (!cable.empty()) words += " of " + cable;
  const bool stub = text(part, "kind") == "stub";  // nothing goes through one: it has no loss and no SWR to speak of
  if (stub) {
    words += ", a stub: " + spell(number_at(part, "heat_w", point), "W") + " lost in it.";
  } else {
    words += ": " + spell(number_at(part, "loss_db", point), "dB") + " lost as it stands, " +
             spell(number_at(part, "matched_loss_db", point), "dB") + " if matched; SWR " +
             spell(number_at(part, "swr_load_end", point), "") + " at the load end.";
  }
  paper.paragraph("  ", words);
  const Json& highest = member(part, "highest");
  const auto place = [&](const char* metres, const char* hz, const char* from) {
    return spell(number(highest, metres), "m") + from + " (" + spell_frequency(member(highest, hz)) + ")";
  };
  paper.paragraph("    ", "Most along it: " + spell(number(highest, "volts_peak"), "V") + " peak " +
                              place("volts_at_m", "volts_at_hz", stub ? " from the far end" : " from the load end") + ", " +
                              spell(number(highest, "amps_rms"), "A") + " rms " +
                              place("amps_at_m", "amps_at_hz", " from it") + '.');
  write_line_heat(paper, part, point, stub);
}

void write_core_entry(Paper& paper, const Json& part, std::size_t point) {
  const double core_w = number_at(part, "core_heat_w", point), wire_w = number_at(part, "wire_heat_w", point);
  std::string words = text(part, "name") + ": " + spell(core_w, "W") + " in the core";
  if (wire_w > 1e-9 * core_w) words += ", " + spell(wire_w, "W") + " in the wire";
  const double flux_t = number_at(part, "flux_peak_t", point);
  if (std::isfinite(flux_t))
    words += "; flux density " + spell(flux_t, "T") + " peak, " + spell(flux_t / number(part, "saturation_t"), "share") + " of " +
             spell(number(part, "saturation_t"), "T");
  paper.paragraph("  ", words + '.');
}

void write_pair_entry(Paper& paper, const Json& part, std::size_t point) {
  const double amps_rms = number_at(part, "common_amps_rms", point);
  if (amps_rms == 0.0) {
    paper.paragraph("  ", text(part, "name") + ": no current of its own, all that goes in by one conductor comes back by the other.");
    return;
  }
  std::string words = text(part, "name") + ": " + spell(amps_rms, "A") +
                      " rms on both conductors together, an imbalance of " + spell(number_at(part, "imbalance", point), "share");
  const double out_w = number_at(part, "common_w", point);
  words += "; " + spell(number_at(part, "heat_w", point), "W") + " of heat in it, " + spell(std::abs(out_w), "W") +
           (out_w < 0.0 ? " come back" : " go on") + " by the common mode";
  paper.paragraph("  ", words + '.');
}

}  // namespace

Scale frequency_scale_of(const Json& variant) {
  std::vector<double> shown;
  for (const std::size_t point : shown_points(variant)) shown.push_back(number_at(variant, "frequencies_hz", point));
  return frequency_scale(shown);
}

std::vector<std::size_t> shown_points(const Json& variant) {
  std::vector<std::size_t> points;
  for (const Json& point : list(member(variant, "moments"), "shown")) {
    if (point.is_number_unsigned()) points.push_back(point.get<std::size_t>());
  }
  return points;
}

std::string mark_of(const Json& variant, std::size_t point) {
  if (list(variant, "frequencies_hz").size() < 2) return "";
  std::string mark;
  for (const auto& [key, words] :
       {std::pair{"worst", "least on the air"}, {"best", "most on the air"}, {"middle", "mid-sweep"}}) {
    if (count(member(variant, "moments"), key) == point) mark += (mark.empty() ? "" : ", ") + std::string(words);
  }
  return mark;
}

void write_rig(Paper& paper, const Json& variant) {
  const std::vector<std::size_t> points = shown_points(variant);
  const Json& source = item(member(variant, "sources"), 0);
  if (points.empty()) return;
  const Json& reference = member(source, "reference_ohm");
  std::string title = "What the rig sees at " + cut_name(text(source, "node"));
  if (text(source, "name") != "rig") title.insert(12, " (" + cut_name(text(source, "name")) + ")");
  paper.section(title + ", SWR against " +
                (reference.is_array() ? spell_complex(number(item(reference, 0)), number(item(reference, 1))) + " ohm"
                                      : spell(number(reference), "ohm")));
  const Scale hertz = frequency_scale_of(variant);
  const Json& totals = member(variant, "totals");
  const Scale watts = scale_for({number_at(totals, "available_w", points.front())}, "W");
  Table table({Side::right, Side::right, Side::right, Side::right, Side::right, Side::right, Side::left});
  table.heads({hertz.unit, "R, ohm", "X, ohm", "SWR", "on the air, " + watts.unit, "lost, dB", ""});
  for (const std::size_t point : points) {
    const Json& impedance = item(member(source, "load_impedance_ohm"), point);
    table.add({hertz.show(number_at(variant, "frequencies_hz", point)), ohms(number(item(impedance, 0))),
               ohms(number(item(impedance, 1))), swr_cell(number_at(source, "swr", point)),
               watts.show(number_at(totals, "radiated_w", point)), fixed(number_at(totals, "total_loss_db", point), 2),
               mark_of(variant, point)});
  }
  table.print(paper);
  const std::size_t all = list(variant, "frequencies_hz").size();
  if (points.size() < all) {
    paper.line("  " + std::to_string(points.size()) + " of " + std::to_string(all) + " points shown", Ink::faint);
  }
}

void write_waterfalls(Paper& paper, const Json& variant) {
  const Json& falls = list(variant, "waterfalls");
  if (falls.empty()) return;
  for (const Json& fall : falls) write_waterfall(paper, variant, fall);
  paper.line("  dB alone: what these watts missing would cost if nothing else were lost.", Ink::faint);
}

void write_lines(Paper& paper, const Json& variant) {
  std::vector<const Json*> lines;
  for (const Json& part : list(variant, "parts")) {
    if (part.contains("volts_peak_along")) lines.push_back(&part);
  }
  if (lines.empty()) return;
  const std::size_t worst = count(member(variant, "moments"), "worst");
  paper.section("On the lines at " + spell_frequency(item(member(variant, "frequencies_hz"), worst)));
  for (std::size_t i = 0; i < std::min(lines.size(), most_lines); ++i) write_line_entry(paper, *lines[i], worst);
  if (lines.size() > most_lines) paper.line("  and " + std::to_string(lines.size() - most_lines) + " more lines");
}

void write_cores(Paper& paper, const Json& variant) {
  std::vector<const Json*> cores;
  for (const Json& part : list(variant, "parts"))
    if (part.contains("core_heat_w")) cores.push_back(&part);
  if (cores.empty()) return;
  const std::size_t worst = count(member(variant, "moments"), "worst");
  paper.section("In the cores at " + spell_frequency(item(member(variant, "frequencies_hz"), worst)));
  for (std::size_t i = 0; i < std::min(cores.size(), most_lines); ++i) write_core_entry(paper, *cores[i], worst);
  if (cores.size() > most_lines) paper.line("  and " + std::to_string(cores.size() - most_lines) + " more cores");
}

void write_common_mode(Paper& paper, const Json& variant) {
  std::vector<const Json*> pairs;
  for (const Json& part : list(variant, "parts"))
    if (part.contains("common_w")) pairs.push_back(&part);
  if (pairs.empty()) return;
  const std::size_t worst = count(member(variant, "moments"), "worst");
  paper.section("In common mode at " + spell_frequency(item(member(variant, "frequencies_hz"), worst)) + ": " +
                spell(number_at(member(variant, "totals"), "common_mode_heat_w", worst), "W") + " of heat");
  for (std::size_t i = 0; i < std::min(pairs.size(), most_lines); ++i) write_pair_entry(paper, *pairs[i], worst);
  if (pairs.size() > most_lines) paper.line("  and " + std::to_string(pairs.size() - most_lines) + " more pairs");
}

}  // namespace reports
