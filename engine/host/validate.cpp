#include "validate.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "grammar/quantity.hpp"
#include "names.hpp"

namespace wattfall::host {
namespace {

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_empty(const char* text) {
  return text == nullptr || *text == '\0';
}
bool is_positive(double value) {
  return std::isfinite(value) && value > 0.0;
}

/// As names stand in the feed language: a letter, then letters, digits and `_`.
bool is_feed_name(std::string_view name) {
  return is_word(name) && name.find('-') == std::string_view::npos;
}

/// Feed names parted by single blanks: "winding resistance".
bool is_phrase(std::string_view text) {
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    if (!is_feed_name(text.substr(begin, end - begin))) return false;
    begin = end + 1;
  }
  return true;
}

/// Text that fits into a quoted string of the feed language and into one line of a list.
bool is_printable(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char c) { return (c >= 0 && c < ' ') || c == '\x7f' || c == '"'; });
}

std::string quoted(const char* text) {
  return std::string("`").append(text).append("`");
}

std::string number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%g", value);
  return text;
}

/// What every registered thing has: a pointer, a name, a meaning.
template <class Thing>
std::string wrong_in_common(const Thing* thing) {
  const std::string word = word_for(Thing{});
  const std::string article = word.front() == 'o' ? "an " : "a ";
  if (thing == nullptr) return article + word + " is a null pointer";
  if (is_empty(thing->name)) return article + word + " has no name";
  if (is_empty(thing->meaning)) return word + " " + quoted(thing->name) + " does not say what it is (`meaning`)";
  return "";
}

std::string wrong_with_unit(const char* unit) {
  if (unit == nullptr) return "has a null unit";
  if (*unit == '\0') return "";  // a plain number
  const auto known = find_unit(unit);
  if (!known) return "has the unit " + quoted(unit) + ", which the feed language does not know";
  // Degrees have a scale, but name the dimension all the same; the value arrives in radians.
  const bool is_si = !known->is_dbm && (known->scale == 1.0 || known->dim == dimension::angle);
  return is_si ? "" : "has the unit " + quoted(unit) + ", and values are handed over in SI units";
}

std::string wrong_with_property(const sdk::Property& property) {
  if (is_empty(property.name)) return "has no name";
  if (!is_phrase(property.name)) return "has a name that cannot be written: words of letters, digits and `_`";
  if (property.fallback != nullptr && *property.fallback == '\0')
    return "has an empty fallback: null means it must be given";
  if (is_empty(property.meaning)) return "does not say what it is (`meaning`)";
  return wrong_with_unit(property.unit);
}

std::string wrong_with_properties(const sdk::Kind& kind) {
  if (kind.properties == nullptr || kind.property_count == 0)
    return " has no properties, and a part needs a main value";
  std::vector<std::string_view> met;
  for (std::size_t i = 0; i < kind.property_count; ++i) {
    const sdk::Property& property = kind.properties[i];
    const std::string complaint = wrong_with_property(property);
    const std::string which = is_empty(property.name) ? std::to_string(i + 1) : quoted(property.name);
    if (!complaint.empty()) return ": property " + which + " " + complaint;
    if (std::find(met.begin(), met.end(), property.name) != met.end()) return " has the property " + which + " twice";
    met.push_back(property.name);
  }
  return "";
}

std::string wrong_with_losses(const sdk::Cable& cable) {
  if ((cable.losses == nullptr) != (cable.loss_count == 0)) return "losses and loss_count contradict each other";
  double last_hz = 0.0;
  for (std::size_t i = 0; i < cable.loss_count; ++i) {
    const auto [frequency_hz, db_per_100m] = cable.losses[i];
    const std::string which = "loss point " + std::to_string(i + 1);
    if (!is_positive(frequency_hz)) return which + " stands at " + number(frequency_hz) + " Hz";
    if (frequency_hz <= last_hz) return which + " does not rise in frequency";
    if (!is_positive(db_per_100m)) return which + " is " + number(db_per_100m) + " dB/100m, and a loss is positive";
    last_hz = frequency_hz;
  }
  return "";
}

std::string wrong_with_figures(const sdk::Cable& cable) {
  if (!is_positive(cable.impedance_ohm)) return "its impedance is " + number(cable.impedance_ohm) + " ohm";
  if (!is_positive(cable.velocity) || cable.velocity > 1.0) {
    return "its velocity is " + number(cable.velocity) + " of light's, and has to lie above 0 and at most at 1";
  }
  if (!std::isfinite(cable.limit_volts_peak) || cable.limit_volts_peak < 0.0) {
    return "its limit is " + number(cable.limit_volts_peak) + " V";
  }
  if (is_empty(cable.origin)) return "it does not say where its figures come from (`origin`)";
  return wrong_with_losses(cable);
}

/// `subject` and what is wrong with it, or "" where nothing is.
std::string joined(const std::string& subject, const std::string& complaint) {
  return complaint.empty() ? "" : subject + complaint;
}

/// For things that are named in options: their name has to be a word.
template <class Thing>
std::string wrong_with_word(const Thing* thing) {
  const std::string complaint = wrong_in_common(thing);
  if (!complaint.empty()) return complaint;
  if (is_word(thing->name)) return "";
  return std::string(word_for(*thing)) + " " + quoted(thing->name) +
         " has a name that cannot be written: a letter, then letters, digits, `_` and hyphens";
}

}  // namespace

bool is_word(std::string_view name) {
  const auto fits = [](char c) { return is_letter(c) || is_digit(c) || c == '_' || c == '-'; };
  return !name.empty() && is_letter(name.front()) && std::all_of(name.begin(), name.end(), fits);
}

std::string what_is_wrong(const sdk::Kind* kind) {
  const std::string complaint = wrong_in_common(kind);
  if (!complaint.empty()) return complaint;
  const std::string subject = "kind " + quoted(kind->name);
  if (!is_feed_name(kind->name))
    return subject + " has a name that cannot be written: a letter, then letters, digits and `_`";
  if (kind->ports != 1 && kind->ports != 2) {
    return subject + " has " + std::to_string(kind->ports) + " ports, and a part has one or two";
  }
  if (kind->rows == nullptr) return subject + " has no function `rows`";
  return joined(subject, wrong_with_properties(*kind));
}

std::string what_is_wrong(const sdk::Cable* cable) {
  const std::string complaint = wrong_in_common(cable);
  if (!complaint.empty()) return complaint;
  const std::string subject = "cable " + quoted(cable->name);
  if (folded(cable->name).empty() || !is_printable(cable->name)) return subject + " has a name that cannot be written";
  return joined(subject + ": ", wrong_with_figures(*cable));
}

std::string what_is_wrong(const sdk::LineModel* model) {
  std::string complaint = wrong_with_word(model);
  if (!complaint.empty()) return complaint;
  const bool whole = model->fit != nullptr && model->propagate != nullptr;
  return whole ? "" : "line-loss model " + quoted(model->name) + " lacks `fit` or `propagate`";
}

std::string what_is_wrong(const sdk::Optimizer* optimizer) {
  std::string complaint = wrong_with_word(optimizer);
  if (!complaint.empty()) return complaint;
  return optimizer->search != nullptr ? "" : "optimizer " + quoted(optimizer->name) + " has no function `search`";
}

std::string what_is_wrong(const sdk::Writer* writer) {
  std::string complaint = wrong_with_word(writer);
  if (!complaint.empty()) return complaint;
  if (writer->write == nullptr) return "writer " + quoted(writer->name) + " has no function `write`";
  if (writer->extension != nullptr && is_word(writer->extension)) return "";
  return "writer " + quoted(writer->name) + " has no file extension of letters and digits";
}

std::string what_is_wrong(const sdk::TunerForm* form) {
  const std::string complaint = wrong_in_common(form);
  if (!complaint.empty()) return complaint;
  const std::string subject = "tuner form " + quoted(form->name);
  if (!is_printable(form->name)) return subject + " has a name that cannot be written";
  if (is_empty(form->group) || !is_word(form->group)) return subject + " has no group, a word by which it is asked for";
  return is_empty(form->box) ? subject + " has no box" : "";
}

}  // namespace wattfall::host
