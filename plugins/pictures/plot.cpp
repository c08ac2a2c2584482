#include "plot.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "lettering.hpp"
#include "markup.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

constexpr double left = 50.0, right = 368.0, top = 16.0, foot = 40.0;

std::string at(double x, double y) {
  return coordinate(std::round(x * 10.0) / 10.0) + ' ' + coordinate(std::round(y * 10.0) / 10.0);
}

struct Scale {
  double low = 0.0, high = 1.0, bottom = 0.0;
  bool logarithmic = false;
  double y(double value) const {
    const double share = logarithmic ? std::log(value / low) / std::log(high / low) : (value - low) / (high - low);
    return bottom + (top - bottom) * std::clamp(share, 0.0, 1.0);
  }
};

std::pair<double, double> span_of(const Plot& plot) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const Curve& curve : plot.curves)
    for (const double y : curve.y)
      if (std::isfinite(y)) low = std::min(low, y), high = std::max(high, y);
  return low <= high ? std::pair{low, high} : std::pair{0.0, 1.0};
}

/// Full steps that hold all values; SWR from 1 up to at most 100.
Scale scale_of(const Plot& plot, std::vector<double>& marks) {
  auto [low, high] = span_of(plot);
  Scale scale{0.0, 1.0, plot.height - foot, plot.logarithmic};
  if (plot.logarithmic) {
    scale.low = 1.0;
    for (const double mark : {1.0, 1.2, 1.5, 2.0, 3.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
      scale.high = mark;
      if (mark >= 2.0 && mark >= high) break;
    }
    for (const double mark : {1.0, 1.2, 1.5, 2.0, 3.0, 5.0, 10.0, 20.0, 50.0, 100.0})
      if (mark <= scale.high && !(scale.high > 5.0 && (mark == 1.2 || mark == 1.5)) &&
          !(scale.high > 20.0 && mark == 3.0))
        marks.push_back(mark);
    return scale;
  }
  if (plot.from_zero) low = std::min(low, 0.0);
  // A level line is no drama: the span is at least so wide.
  const double least =
      std::max({0.01 * std::max(std::abs(low), std::abs(high)), plot.unit == "ohm" ? 0.25 : 0.0, 1e-12});
  if (high - low < least) low -= plot.from_zero && low >= 0.0 ? 0.0 : least, high += least;
  marks = ticks(low, high, 4);
  const double step = marks.size() > 1 ? marks[1] - marks[0] : high - low;
  scale.low = std::floor(low / step + 1e-9) * step;
  scale.high = std::ceil(high / step - 1e-9) * step;
  marks = ticks(scale.low, scale.high, 4);
  return scale;
}

void write_grid(std::string& out, const Plot& plot, const Scale& scale, const std::vector<double>& marks) {
  const reports::Scale numbers = reports::scale_for(marks, plot.unit == "share" ? "" : plot.unit);
  for (const double mark : marks) {
    const double y = scale.y(mark);
    std::string said = plot.unit == "share" ? reports::strip(reports::fixed(100.0 * mark, 2))
                       : plot.unit.empty()  ? reports::strip(reports::fixed(mark, 2))
                                            : reports::strip(reports::fixed(mark / numbers.factor, 4));
    if (said == "-0") said = "0";
    out += "<path class=\"grid\" d=\"M" + at(left, y) + 'H' + coordinate(right) +
           "\"/><text class=\"tick\" text-anchor=\"end\" x=\"" + coordinate(left - 6) + "\" y=\"" +
           coordinate(std::round(y) + 4) + "\">" + pretty(said) + "</text>";
  }
}

struct Mark {
  double value, x;
  std::string said;
};

/// Of one band round steps; of several each one's ends together.
std::vector<Mark> marks_of(const Axis& axis, double factor) {
  const auto spelled = [&](double value) { return reports::strip(reports::fixed(value / factor, 4)); };
  std::vector<Mark> marks;
  const bool several = axis.pieces().size() > 1;
  for (const Axis::Piece& piece : axis.pieces()) {
    if (several || piece.first == piece.last) {
      const std::string said =
          piece.first == piece.last ? spelled(piece.first) : spelled(piece.first) + "\u2013" + spelled(piece.last);
      marks.push_back({(piece.first + piece.last) / 2.0, (piece.from + piece.to) / 2.0, said});
      continue;
    }
    for (const double mark : ticks(piece.first, piece.last, 5))
      if (mark <= piece.last * (1.0 + 1e-9)) marks.push_back({mark, axis.at(mark), spelled(mark)});
  }
  return marks;
}

/// Frequencies, or metres, below the axis.
void write_x(std::string& out, const Plot& plot, const Axis& axis) {
  const bool hertz = plot.x_unit == "Hz";
  const reports::Scale numbers = hertz ? reports::frequency_scale(plot.x) : reports::Scale{1.0, plot.x_unit, 3};
  const double base = plot.height - foot;
  double taken = -1e9;
  for (const Mark& mark : marks_of(axis, numbers.factor)) {
    const double half = width_of(mark.said, 12.5) / 2.0, x = std::clamp(mark.x, half + 1.0, plot_width - half - 1.0);
    if (axis.pieces().size() == 1) out += "<path class=\"grid\" d=\"M" + at(mark.x, base) + "v5\"/>";
    if (x - half < taken + 4.0) continue;
    taken = x + half;
    out += "<text class=\"tick\" text-anchor=\"middle\" x=\"" + coordinate(x) + "\" y=\"" + coordinate(base + 18) +
           "\">" + pretty(mark.said) + "</text>";
  }
  for (std::size_t p = 1; p < axis.pieces().size(); ++p) {
    const double x = (axis.pieces()[p - 1].to + axis.pieces()[p].from) / 2.0;
    out += "<path class=\"cut\" d=\"M" + at(x, top) + 'V' + coordinate(base) + "\"/>";
  }
  out += "<path class=\"axis\" d=\"M" + at(left, top) + 'V' + coordinate(base) + 'H' + coordinate(right) +
         "\"/><text class=\"tick\" text-anchor=\"middle\" x=\"" + coordinate((left + right) / 2.0) + "\" y=\"" +
         coordinate(base + 35) + "\">" + pretty(plot.x_title + ", " + numbers.unit) + "</text>";
}

/// Of many points those that show: the least and the largest of each stretch of pixels.
std::vector<std::size_t> thin(const std::vector<double>& y) {
  constexpr std::size_t stretches = 200;
  std::vector<std::size_t> kept;
  if (y.size() <= 2 * stretches) {
    for (std::size_t i = 0; i < y.size(); ++i) kept.push_back(i);
    return kept;
  }
  for (std::size_t s = 0; s < stretches; ++s) {
    const std::size_t from = s * y.size() / stretches, to = (s + 1) * y.size() / stretches;
    std::vector<std::size_t> some{from, to - 1};
    for (std::size_t i = from; i < to; ++i) {
      if (y[i] < y[some[0]] || !std::isfinite(y[some[0]])) some[0] = i;
      if (y[i] > y[some[1]] || !std::isfinite(y[some[1]])) some[1] = i;
    }
    std::sort(some.begin(), some.end());
    some.erase(std::unique(some.begin(), some.end()), some.end());
    kept.insert(kept.end(), some.begin(), some.end());
  }
  if (kept.back() != y.size() - 1) kept.push_back(y.size() - 1);
  return kept;
}

void write_curve(std::string& out, const Curve& curve, const Axis& axis, const Scale& scale) {
  const std::string kind = std::to_string(curve.style % 4);
  std::string path;
  bool down = false;
  std::size_t piece = 0;
  for (const std::size_t i : thin(curve.y)) {
    if (!std::isfinite(curve.y[i]) || i >= curve.x.size()) {
      down = false;
      continue;
    }
    if (axis.piece_of(curve.x[i]) != piece) down = false;
    piece = axis.piece_of(curve.x[i]);
    path += (down ? 'L' : 'M') + at(axis.at(curve.x[i]), scale.y(curve.y[i]));
    down = true;
  }
  out += "<g class=\"curve\"" + variant_mark(curve.variant) + " data-path=\"" + curve.path + "\" data-name=\"" +
         escape(curve.name) + "\"><path class=\"line v" + kind + "\" d=\"" + path + "\"/>";
  for (const std::size_t i : curve.marked)
    if (i < curve.y.size() && std::isfinite(curve.y[i]))
      out += "<use href=\"#m" + kind + "\" class=\"mark v" + kind + "\" x=\"" + coordinate(axis.at(curve.x[i])) +
             "\" y=\"" + coordinate(scale.y(curve.y[i])) + "\"/>";
  out += "</g>";
}

std::string legend(const Plot& plot) {
  if (plot.curves.size() < 2) return "";
  std::string out = "<ul class=\"legend\">";
  for (const Curve& curve : plot.curves)
    out += "<li" + variant_mark(curve.variant) + ">" + swatch(curve.style) + "<span>" + escape(curve.name) +
           "</span></li>";
  return out + "</ul>";
}

std::string pieces_of(const Axis& axis) {
  std::string out;
  for (const Axis::Piece& piece : axis.pieces())
    out += (out.empty() ? "" : ",") + ('[' + exact(piece.first)) + ',' + exact(piece.last) + ',' +
           coordinate(piece.from) + ',' + coordinate(piece.to) + ']';
  return '[' + out + ']';
}

}  // namespace

std::vector<double> ticks(double low, double high, int about) {
  const double rough = (high - low) / std::max(about, 1);
  if (!(rough > 0.0) || !std::isfinite(rough)) return {low};
  const double decade = std::pow(10.0, std::floor(std::log10(rough)));
  double step = 10.0 * decade;
  for (const double factor : {1.0, 2.0, 2.5, 5.0})
    if (factor * decade >= rough * 0.999) {
      step = factor * decade;
      break;
    }
  std::vector<double> marks;
  for (double k = std::ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; ++k) marks.push_back(k * step + 0.0);
  if (marks.empty()) marks.push_back(low);
  return marks;
}

Axis::Axis(const std::vector<double>& values, double from, double to) {
  std::vector<double> steps;
  for (std::size_t i = 1; i < values.size(); ++i) steps.push_back(values[i] - values[i - 1]);
  std::sort(steps.begin(), steps.end());
  const double usual = steps.empty() ? 0.0 : steps[steps.size() / 2];
  const double span = values.empty() ? 0.0 : values.back() - values.front();
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double step = i == 0 ? 0.0 : values[i] - values[i - 1];
    const bool cut = i > 0 && ((step > 4.0 * usual && step > 0.08 * span) ||
                               (step > 0.15 * values[i] && values.size() < 9 && step > 0.08 * span));
    if (i == 0 || cut) pieces_.push_back({values[i], values[i], 0.0, 0.0});
    pieces_.back().last = values[i];
  }
  if (pieces_.empty()) pieces_.push_back({0.0, 1.0, 0.0, 0.0});
  constexpr double gap = 14.0;
  const double each = (to - from - gap * static_cast<double>(pieces_.size() - 1)) / static_cast<double>(pieces_.size());
  for (std::size_t p = 0; p < pieces_.size(); ++p) {
    pieces_[p].from = from + static_cast<double>(p) * (each + gap);
    pieces_[p].to = pieces_[p].from + each;
  }
}

double Axis::at(double value) const {
  const Piece& piece = pieces_[piece_of(value)];
  if (piece.last <= piece.first) return (piece.from + piece.to) / 2.0;
  return piece.from + (piece.to - piece.from) * (value - piece.first) / (piece.last - piece.first);
}

std::size_t Axis::piece_of(double value) const {
  std::size_t p = 0;
  while (p + 1 < pieces_.size() && value > pieces_[p].last * (1.0 + 1e-12)) ++p;
  return p;
}

std::string draw_plot(const Plot& plot) {
  const Axis axis(plot.x, left + 4.0, right - 4.0);
  std::vector<double> marks;
  const Scale scale = scale_of(plot, marks);
  const reports::Scale numbers = reports::scale_for(marks, plot.unit);
  const std::string unit = plot.unit == "share" ? "%" : numbers.unit;
  std::string svg;
  write_grid(svg, plot, scale, marks);
  write_x(svg, plot, axis);
  for (const Curve& curve : plot.curves) write_curve(svg, curve, axis, scale);
  svg += "<g class=\"cursor\"></g>";
  return "<figure class=\"plot\"><figcaption id=\"" + plot.id + "-title\">" +
         pretty(plot.title + (unit.empty() ? "" : ", " + unit)) + "</figcaption><svg viewBox=\"0 0 " +
         coordinate(plot_width) + ' ' + coordinate(plot.height) + "\" role=\"img\" aria-labelledby=\"" + plot.id +
         "-title\" data-plot=\"" +
         (plot.x_unit == "Hz" ? std::string("sweep") : "along\" data-at=\"" + exact(plot.at_hz)) + "\" data-unit=\"" +
         plot.unit + "\" data-x=\"" + pieces_of(axis) + "\" data-y=\"[" + exact(scale.low) + ',' + exact(scale.high) +
         ',' + coordinate(scale.bottom) + ',' + coordinate(top) + ',' + (plot.logarithmic ? "1" : "0") + "]\">" + svg +
         "</svg>" + legend(plot) + "<p class=\"readout\" hidden></p>" +
         (plot.table.empty() ? "" : details("These numbers as a table", plot.table)) + "</figure>\n";
}

}  // namespace pictures
