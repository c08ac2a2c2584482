// Comma-separated values for spreadsheets: a row a frequency and variant, a column a figure, as RFC 4180 has it (CRLF,
// quotes doubled). Variants may have different parts: the columns are all that any has, and a cell is empty where a
// variant has not.
#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <vector>

#include "csv.hpp"
#include "writers.hpp"

namespace reports {
namespace {

/// A column's cells in one variant: an array over the frequencies, and which of [re, im] where it is complex (-1: a
/// plain number).
struct Cells {
  const Json* array = nullptr;
  int half = -1;
  /// Of a knob of preferred values: what its values are made of, and which key of that is shown.
  const Json* made = nullptr;
  const char* made_key = nullptr;
};

/// Columns in the order of their first appearance.
class Columns {
 public:
  std::size_t find_or_add(const std::string& name) {
    const auto [place, is_new] = places_.try_emplace(name, names_.size());
    if (is_new) names_.push_back(name);
    return place->second;
  }
  const std::vector<std::string>& names() const { return names_; }

 private:
  std::map<std::string, std::size_t> places_;
  std::vector<std::string> names_;
};

using Sheet = std::vector<Cells>;  ///< by column

/// Gathers a variant's arrays under their columns.
class Gathering {
 public:
  explicit Gathering(Columns& columns) : columns_(columns) {}

  void add(const std::string& name, const Cells& cells) {
    if (!cells.array->is_array()) return;
    const std::size_t column = columns_.find_or_add(name);
    if (sheet_.size() <= column) sheet_.resize(column + 1);
    sheet_[column] = cells;
  }
  void add(const std::string& name, const Json& array, int half = -1) { add(name, Cells{&array, half}); }
  void add_all(const Json& thing, std::initializer_list<const char*> keys, const std::string& name) {
    for (const char* key : keys) add(std::string(key) + ':' + name, member(thing, key));
  }
  Sheet take() { return std::move(sheet_); }

 private:
  Columns& columns_;
  Sheet sheet_;
};

void gather_whole(Gathering& gathering, const Json& variant) {
  const Json& source = item(member(variant, "sources"), 0);
  gathering.add("frequency_hz", member(variant, "frequencies_hz"));
  gathering.add("source_r_ohm", member(source, "load_impedance_ohm"), 0);
  gathering.add("source_x_ohm", member(source, "load_impedance_ohm"), 1);
  gathering.add("swr", member(source, "swr"));
  for (const char* key :
       {"available_w", "returned_w", "heat_w", "absorbed_w", "radiated_w", "total_loss_db", "efficiency"}) {
    gathering.add(key, member(member(variant, "totals"), key));
  }
}

Sheet gather(Columns& columns, const Json& variant) {
  Gathering gathering(columns);
  gather_whole(gathering, variant);
  for (const Json& load : list(variant, "loads")) {
    gathering.add_all(load, {"absorbed_w", "radiated_w", "heat_w", "volts_peak", "amps_rms"},
                      raw_text(member(load, "name")));
  }
  for (const Json& part : list(variant, "parts")) {
    gathering.add_all(part,
                      {"heat_w", "volts_peak", "amps_rms", "in_w", "out_w", "loss_db", "matched_loss_db",
                       "swr_load_end", "volts_peak_along", "amps_rms_along"},
                      raw_text(member(part, "name")));
  }
  for (const Json& plane : list(variant, "planes")) {
    const std::string name = raw_text(member(plane, "name"));
    gathering.add("toward_load_r_ohm:" + name, member(plane, "toward_load_ohm"), 0);
    gathering.add("toward_load_x_ohm:" + name, member(plane, "toward_load_ohm"), 1);
    gathering.add("toward_source_r_ohm:" + name, member(plane, "toward_source_ohm"), 0);
    gathering.add("toward_source_x_ohm:" + name, member(plane, "toward_source_ohm"), 1);
    gathering.add_all(plane, {"mismatch_db"}, name);
  }
  gathering.add("dial_volts_peak", member(member(variant, "dial"), "volts_peak"));
  for (const Json& setting : list(variant, "settings")) {
    const std::string key = setting.contains("choice") ? "choice" : key_with_prefix(setting, "value");
    const std::string name = raw_text(member(setting, "knob"));
    gathering.add("knob:" + name, member(setting, key.c_str()));
    const Json& made = list(setting, "made");
    if (made.empty()) continue;
    for (const char* of : {"first", "second", "joined"})
      gathering.add(std::string("made_") + of + ':' + name, Cells{&member(setting, key.c_str()), -1, &made, of});
  }
  return gathering.take();
}

/// The two parts of a preferred value and how they are joined; empty where it is one part alone.
void append_made(std::string& out, const Cells& cells, std::size_t point) {
  const double value = number(item(*cells.array, point));
  for (const Json& made : *cells.made) {
    if (number(made, "value") != value) continue;
    const Json& shown = member(made, cells.made_key);
    if (shown.is_string())
      out += quote(raw_text(shown));
    else
      append_number(out, number(shown));
    return;
  }
}

void append_row(std::string& out, const std::string& variant, const Sheet& sheet, std::size_t columns,
                std::size_t point) {
  out += variant;
  for (std::size_t i = 0; i < columns; ++i) {
    out += ',';
    if (i >= sheet.size() || sheet[i].array == nullptr) continue;
    if (sheet[i].made != nullptr) {
      append_made(out, sheet[i], point);
      continue;
    }
    const Json& cell = item(*sheet[i].array, point);
    append_number(out, number(sheet[i].half < 0 ? cell : item(cell, static_cast<std::size_t>(sheet[i].half))));
  }
  out += "\r\n";
}

}  // namespace

std::string quote(const std::string& cell) {
  if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
  std::string quoted = "\"";
  for (const char character : cell) quoted += character == '"' ? std::string("\"\"") : std::string(1, character);
  return quoted + '"';
}

void append_number(std::string& out, double value) {
  if (!std::isfinite(value)) return;
  std::array<char, 40> digits;
  char* const first = digits.data();
  char* const last = first + digits.size();
  const double size = std::abs(value);
  const auto done = size >= 1.0 && size < 1e15 ? std::to_chars(first, last, value, std::chars_format::fixed)
                                               : std::to_chars(first, last, value);
  out.append(first, done.ptr);
}

std::string write_csv(const Json& document) {
  if (member(document, "check").is_object()) return write_check_csv(document);
  if (member(document, "compare").is_object()) return write_compare_csv(document);
  if (member(document, "walk").is_object()) return write_walk_csv(document);
  if (member(document, "weigh").is_object()) return write_weigh_csv(document);
  const Json& variants = list(document, "variants");
  Columns columns;
  std::vector<Sheet> sheets;
  for (const Json& variant : variants) sheets.push_back(gather(columns, variant));
  std::string out = "variant";
  for (const std::string& name : columns.names()) out += ',' + quote(name);
  out += "\r\n";
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::string name = quote(raw_text(member(variants[i], "name")));
    const std::size_t points = list(variants[i], "frequencies_hz").size();
    for (std::size_t point = 0; point < points; ++point)
      append_row(out, name, sheets[i], columns.names().size(), point);
  }
  return out;
}

}  // namespace reports
