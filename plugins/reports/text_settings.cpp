// What the operator sets and what can be seen from places along the way: the tuner's settings and the planes.
#include <algorithm>
#include <cmath>
#include <set>

#include "code_points.hpp"
#include "text_sections.hpp"
#include "tuning_reading.hpp"

namespace reports {
namespace {

using Side = Table::Side;

/// What the setting brings stands beside the last of them.
constexpr std::size_t knobs_a_table = 3;

/// A knob as tables need it.
struct Knob {
  std::string name, unit, suffix;
  const Json* setting = nullptr;
  const Json* values = nullptr;
  bool choice = false;

  explicit Knob(const Json& from) : name(cut_front(text(from, "knob"), 40)), setting(&from) {
    const std::string key = from.contains("choice") ? "choice" : key_with_prefix(from, "value");
    choice = key == "choice";
    unit = unit_of_key(key);
    suffix = key.size() > 5 && !choice ? key.substr(5) : "";
    values = &member(from, key.c_str());
  }
  double at(std::size_t point) const { return number(item(*values, point)); }
  bool at_end(std::size_t point) const {
    const Json& end = item(member(*setting, "at_end"), point);
    return end.is_boolean() && end.get<bool>();
  }
  bool steady() const {
    return std::all_of(values->begin(), values->end(), [&](const Json& value) { return value == values->front(); });
  }
  std::string chosen(std::size_t point) const {
    return text(item(member(*setting, "choice_nodes"), static_cast<std::size_t>(std::max(0.0, at(point)))));
  }
};

void add_steady(Table& table, const Knob& knob) {
  const auto end = [&](const char* name) {
    return spell(number(*knob.setting, (name + knob.suffix).c_str()), knob.unit);
  };
  const std::string value = knob.choice         ? knob.chosen(0)
                            : knob.unit.empty() ? significant(knob.at(0), 4)
                                                : spell(knob.at(0), knob.unit, 4);
  const std::string range = knob.choice ? "" : "of " + end("lower") + " to " + end("upper");
  table.add({knob.name, value, range, knob.at_end(0) ? "! at the end of its range" : ""},
            knob.at_end(0) ? Ink::bad : Ink::plain);
}

void write_steady(Paper& paper, const std::vector<Knob>& knobs) {
  Table table({Side::left, Side::right, Side::left, Side::left});
  for (const Knob& knob : knobs) add_steady(table, knob);
  table.print(paper);
}

Scale scale_of(const Knob& knob, const std::vector<std::size_t>& points) {
  std::vector<double> values;
  for (const std::size_t point : points) values.push_back(knob.at(point));
  return scale_for(values, knob.unit);
}

/// What the dials' settings bring: columns beside the knobs'.
struct Outcome {
  const Json* dial;
  Scale watts, volts;

  Outcome(const Json& variant, const std::vector<std::size_t>& points) : dial(&member(variant, "dial")) {
    std::vector<double> w, v;
    for (const std::size_t point : points) {
      w.push_back(number_at(*dial, "radiated_w", point));
      v.push_back(number_at(*dial, "volts_peak", point));
    }
    watts = scale_for(w, "W");
    volts = scale_for(v, "V");
  }
  bool known() const { return dial->is_object(); }
  std::vector<std::string> heads() const { return {"SWR", "on the air, " + watts.unit, volts.unit + " peak", "on"}; }
  std::vector<std::string> cells(std::size_t point) const {
    return {spell(number_at(*dial, "swr", point), ""), watts.show(number_at(*dial, "radiated_w", point)),
            volts.show(number_at(*dial, "volts_peak", point)), cut_name(text(item(member(*dial, "volts_part"), point)), 14)};
  }
};

void write_dial_table(Paper& paper, const Json& variant, const std::vector<Knob>& knobs, bool last) {
  const std::vector<std::size_t> points = shown_points(variant);
  const Scale hertz = frequency_scale_of(variant);
  std::vector<Scale> scales;
  std::vector<std::string> heads{hertz.unit};
  for (const Knob& knob : knobs) {
    scales.push_back(scale_of(knob, points));
    heads.push_back(cut_front(knob.name, 16) + (scales.back().unit.empty() ? "" : ", " + scales.back().unit) + ' ');
  }
  const Outcome outcome(variant, points);
  const bool more = last && outcome.known();
  std::vector<Side> sides(heads.size(), Side::right);
  if (more) {
    for (const std::string& head : outcome.heads()) heads.push_back(head);
    sides.insert(sides.end(), {Side::right, Side::right, Side::right, Side::left});
  }
  Table table(sides);
  table.heads(heads);
  for (const std::size_t point : points) {
    std::vector<std::string> cells{hertz.show(number_at(variant, "frequencies_hz", point))};
    for (std::size_t i = 0; i < knobs.size(); ++i) {
      const std::string value =
          knobs[i].choice ? cut_name(knobs[i].chosen(point), 12) : scales[i].show(knobs[i].at(point));
      cells.push_back(value + (knobs[i].at_end(point) ? '!' : ' '));
    }
    if (more)
      for (const std::string& cell : outcome.cells(point)) cells.push_back(cell);
    table.add(std::move(cells));
  }
  table.print(paper);
}

void say_ends(Paper& paper, const std::vector<Knob>& knobs, std::size_t points) {
  for (const Knob& knob : knobs) {
    std::size_t at_end = 0;
    for (std::size_t i = 0; i < points; ++i) at_end += knob.at_end(i) ? 1 : 0;
    if (at_end == 0) continue;
    paper.line("  ! " + knob.name + " is at the end of its range at " + std::to_string(at_end) + " of " +
                   std::to_string(points) + " points",
               Ink::bad);
  }
}

/// Values that one or two parts of a series make: what to buy for each.
void say_made(Paper& paper, const std::vector<Knob>& knobs) {
  Table table({Side::left, Side::right, Side::left});
  bool any = false;
  for (const Knob& knob : knobs)
    for (std::vector<std::string>& row : made_rows(knob.name, list(*knob.setting, "made"), knob.unit)) {
      if (!any) table.heads({"made of preferred values", "", "parts"});
      any = true;
      table.add(std::move(row));
    }
  if (!any) return;
  paper.blank();
  table.print(paper);
}

void write_plane(Paper& paper, const Json& variant, const Json& plane, const std::set<std::size_t>& points) {
  const std::string into = text(plane, "into");
  std::string title = "Both ways from " + cut_name(text(plane, "name")) + ", at " + cut_name(text(plane, "node"));
  if (!into.empty()) title += ", looking into " + cut_name(into);
  paper.section(title);
  const Scale hertz = frequency_scale_of(variant);
  Table table(std::vector<Side>(5, Side::right));
  table.heads({hertz.unit, "toward the load, ohm", "toward the rig, ohm", "mismatch, dB", "SWR"});
  for (const std::size_t point : points) {
    const Json& load = item(member(plane, "toward_load_ohm"), point);
    const Json& source = item(member(plane, "toward_source_ohm"), point);
    table.add({hertz.show(number_at(variant, "frequencies_hz", point)),
               spell_complex(number(item(load, 0)), number(item(load, 1))),
               spell_complex(number(item(source, 0)), number(item(source, 1))),
               fixed(number_at(plane, "mismatch_db", point), 2), spell(number_at(plane, "swr", point), "")});
  }
  table.print(paper);
}

}  // namespace

std::string unit_of_key(const std::string& key) {
  const std::pair<const char*, const char*> units[] = {{"value_f", "F"},   {"value_h", "H"},   {"value_ohm", "ohm"},
                                                       {"value_m", "m"},   {"value_hz", "Hz"}, {"value_rad", "rad"},
                                                       {"value_db", "dB"}, {"value_s", "S"}};
  for (const auto& [suffix, unit] : units) {
    if (key == suffix) return unit;
  }
  return "";
}

void write_settings(Paper& paper, const Json& variant) {
  std::vector<Knob> steady, turning;
  for (const Json& setting : list(variant, "settings")) {
    const Knob knob(setting);
    if (!knob.values->is_array() || knob.values->empty()) continue;
    (knob.steady() ? steady : turning).push_back(knob);
  }
  if (steady.empty() && turning.empty()) return;
  paper.section(flag(variant, "tuned") ? "How to set the knobs" : "How the knobs stand: as written, or mid-range where nothing is written");
  if (!steady.empty()) write_steady(paper, steady);
  for (std::size_t i = 0; i < turning.size(); i += knobs_a_table) {
    if (i > 0 || !steady.empty()) paper.blank();
    const std::size_t end = std::min(turning.size(), i + knobs_a_table);
    write_dial_table(paper, variant, {turning.begin() + std::ptrdiff_t(i), turning.begin() + std::ptrdiff_t(end)},
                     end == turning.size());
  }
  say_ends(paper, turning, list(variant, "frequencies_hz").size());
  steady.insert(steady.end(), turning.begin(), turning.end());
  say_made(paper, steady);
}

void write_planes(Paper& paper, const Json& variant) {
  const std::size_t all = list(variant, "frequencies_hz").size();
  if (all == 0) return;
  const Json& moments = member(variant, "moments");
  const std::set<std::size_t> points{0, count(moments, "worst"), count(moments, "middle"), all - 1};
  for (const Json& plane : list(variant, "planes")) write_plane(paper, variant, plane, points);
}

}  // namespace reports
