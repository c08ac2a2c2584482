#include "walk_reading.hpp"

#include <algorithm>
#include <cmath>

#include "code_points.hpp"
#include "trade.hpp"

namespace reports {
namespace {

void gather(const Json& steps, const std::string& prefix, std::size_t depth, std::vector<WalkRow>& rows) {
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const std::string number = prefix + std::to_string(i + 1);
    rows.push_back({number, &steps[i], depth});
    gather(list(steps[i], "inside"), number + '.', depth + 1, rows);
  }
}

struct Halves {
  std::string r, x;  ///< digits without the sign of x
  bool negative = false;
};

/// Four digits; what rounding leaves beside a large part is nothing to read.
Halves halves_of(const Json& impedance) {
  double r = number(item(impedance, 0)), x = number(item(impedance, 1));
  const double speck = 1e-6 * std::hypot(r, x);
  if (std::abs(r) < speck) r = 0.0;
  if (std::abs(x) < speck) x = 0.0;
  return {significant(r, 4), significant(std::abs(x), 4), x < 0.0};
}

std::size_t whole(const std::string& digits) { return std::min(digits.find('.'), digits.size()); }

std::string aligned(const std::string& digits, std::size_t whole_columns, std::size_t rest_columns) {
  const std::size_t before = whole(digits);
  return std::string(whole_columns - before, ' ') + pad_right(digits, digits.size() + rest_columns - (digits.size() - before));
}

std::string joined(const Json& names) {
  std::string all;
  for (const Json& name : names) all += (all.empty() ? "" : ", ") + text(name);
  return all;
}

}  // namespace

std::string walk_ohms(const Json& impedance) {
  return impedance.is_array() ? spell_complex(number(item(impedance, 0)), number(item(impedance, 1))) + " ohm" : "open";
}

std::vector<std::string> walk_head(const Json& variant) {
  const std::string chosen = text(variant, "chosen"), load = text(member(variant, "load"), "name");
  const Json& source = member(variant, "source");
  std::vector<std::string> sentences{"Walked at " + spell(number(variant, "frequency_hz"), "Hz", 6) + (chosen.empty() ? "" : ", " + chosen) +
                                     (flag(variant, "tuned") ? ", knobs as the tuner set them" : "") + ", between the source " + text(source, "name") + " at " +
                                     text(source, "node") + " and the load " + load + " at " + text(member(variant, "load"), "node") + "."};
  if (const Json& others = list(variant, "other_loads"); !others.empty())
    sentences.push_back(load + " takes the most power; what else is a load (" + joined(others) + ") is a branch like any other.");
  if (const Json& idle = list(variant, "idle"); !idle.empty()) sentences.push_back("No current reaches " + joined(idle) + " at this setting.");
  return sentences;
}

std::string walk_power(const Json& variant) {
  const Json& power = member(variant, "power");
  double lost = 0.0, taken = 0.0;
  const bool walked = text(power, "from") == "walk";
  for (const Json& part : list(variant, "parts")) (flag(part, "load") ? taken : lost) += number(part, walked ? "walk_w" : "solver_w");
  return "Of the " + spell(number(power, "available_w"), "W") + " that the rig has to give, " + spell(number(power, "accepted_w"), "W", 4) + " go in: " +
         spell(lost, "W", 4) + " turn to heat on the way, " + spell(taken, "W", 4) + " reach the load" + (list(variant, "other_loads").empty() ? "" : "s") + ".";
}

std::vector<WalkRow> rows_of(const Json& way) {
  std::vector<WalkRow> rows;
  gather(list(way, "steps"), "", 0, rows);
  return rows;
}

void ImpedanceColumn::see(const Json& impedance) {
  if (!impedance.is_array()) return;
  const Halves halves = halves_of(impedance);
  whole_r_ = std::max(whole_r_, whole(halves.r));
  rest_r_ = std::max(rest_r_, halves.r.size() - whole(halves.r));
  whole_x_ = std::max(whole_x_, whole(halves.x));
  rest_x_ = std::max(rest_x_, halves.x.size() - whole(halves.x));
}

std::string ImpedanceColumn::show(const Json& impedance) const {
  const std::size_t columns = whole_r_ + rest_r_ + 4 + whole_x_ + rest_x_;
  if (!impedance.is_array()) return pad_right(pad_left("open", whole_r_), columns);
  const Halves halves = halves_of(impedance);
  const std::string x = (halves.negative ? "-j" : "+j") + halves.x;
  return aligned(halves.r, whole_r_, rest_r_) + "  " + aligned(x, whole_x_ + 2, rest_x_);
}

std::string ImpedanceColumn::head() const { return pad_right(pad_left("R", whole_r_), whole_r_ + rest_r_ + 2) + pad_left("jX, ohm", whole_x_ + 2); }

}  // namespace reports
