#include "symbols.hpp"

#include <algorithm>

namespace pictures {
namespace {

constexpr double h1 = one_port_half, h2 = two_port_half;

void leads(Pen& pen, double from) {
  pen.line({{-h1, 0}, {-from, 0}});
  pen.line({{from, 0}, {h1, 0}});
}

/// Four turns over [-24, 24], to negative v, or to positive where `side` is below zero.
void coil(Pen& pen, double v, double side) {
  for (int turn = 0; turn < 4; ++turn) pen.arc(-24.0 + 12.0 * turn, -12.0 + 12.0 * turn, v, 8.0 * side);
}

void resistor(Pen& pen) {
  leads(pen, 20);
  pen.rectangle(-20, -8, 20, 8, "body");
}

void inductor(Pen& pen) {
  leads(pen, 24);
  coil(pen, 0, 1.0);
}

void capacitor(Pen& pen) {
  leads(pen, 5);
  pen.line({{-5, -15}, {-5, 15}}, "bold");
  pen.line({{5, -15}, {5, 15}}, "bold");
}

void source(Pen& pen) {
  leads(pen, 18);
  pen.circle(0, 0, 18, "body");
  pen.sine(11, 7);
}

/// A load: an impedance's box with bars at its ends.
void load(Pen& pen) {
  leads(pen, 22);
  pen.rectangle(-22, -10, 22, 10, "body");
  pen.line({{-16, -10}, {-16, 10}}, "thin");
  pen.line({{16, -10}, {16, 10}}, "thin");
}

/// The same with waves that leave it.
void radiating_load(Pen& pen) {
  leads(pen, 22);
  pen.rectangle(-22, -8, 22, 8, "body");
  pen.arc(-10, 10, 12, -4, "thin");
  pen.arc(-15, 15, 16, -5, "thin");
}

void tube(Pen& pen, double v, double from, double to) {
  constexpr double r = 9.0, bow = 4.0;
  pen.line({{from, v - r}, {to, v - r}});
  pen.line({{from, v + r}, {to, v + r}});
  pen.curve({to, v - r}, {to + bow, v - r}, {to + bow, v + r}, {to, v + r});
  pen.curve({to, v - r}, {to - bow, v - r}, {to - bow, v + r}, {to, v + r});
  pen.curve({from, v - r}, {from - bow, v - r}, {from - bow, v + r}, {from, v + r});
}

void stub(Pen& pen, bool open) {
  pen.line({{-h1, 0}, {22, 0}}, "thin");
  tube(pen, 0, -22, 20);
  if (open) {
    pen.circle(h1 - 4, 0, 3.5, "contact");
  } else {
    pen.line({{22, 0}, {h1, 0}});
    pen.line({{h1, -11}, {h1, 11}}, "bold");
  }
}

/// Where a two-port's terminals stand, and which of them are on ground.
struct Frame {
  const Item& item;
  double upper, lower;
  bool tall;
  bool grounded(std::size_t terminal) const { return item.nodes[terminal] == ground; }
};

void grounds(Pen& pen, const Frame& frame) {
  if (!frame.tall) return;
  const double u[] = {-h2, -h2, h2, h2};
  for (std::size_t t = 0; t < 4; ++t)
    if (frame.grounded(t)) pen.ground(u[t], t % 2 == 0 ? frame.upper : frame.lower);
}

/// Wires on spreaders: both conductors are told apart from ground at both ends.
void open_wire(Pen& pen, const Frame& frame) {
  pen.line({{-h2, frame.upper}, {h2, frame.upper}}, "bold");
  pen.line({{-h2, frame.lower}, {h2, frame.lower}}, "bold");
  for (const double u : {-26.0, 0.0, 26.0}) pen.line({{u, frame.upper}, {u, frame.lower}}, "spreader");
}

void coax(Pen& pen, const Frame& frame) {
  pen.line({{-h2, frame.upper}, {-36, frame.upper}});
  pen.line({{36, frame.upper}, {h2, frame.upper}});
  pen.line({{-36, frame.upper}, {36, frame.upper}}, "thin");
  tube(pen, frame.upper, -32, 32);
  if (!frame.tall) return;
  pen.line({{-26, frame.upper + 9}, {-26, frame.lower}, {-h2, frame.lower}});
  pen.line({{26, frame.upper + 9}, {26, frame.lower}, {h2, frame.lower}});
}

/// An upright coil between the rows at u, its turns towards the middle.
void upright_coil(Pen& pen, const Frame& frame, double u, double outside) {
  const double middle = (frame.upper + frame.lower) / 2.0, bulge = u < 0.0 ? 9.0 : -9.0;
  pen.line({{outside, frame.upper}, {u, frame.upper}, {u, middle - 24}});
  pen.line({{u, middle + 24}, {u, frame.lower}, {outside, frame.lower}});
  for (int turn = 0; turn < 4; ++turn) {
    const double top = middle - 24 + 12.0 * turn;
    pen.curve({u, top}, {u + bulge, top}, {u + bulge, top + 12}, {u, top + 12});
  }
}

void wound(Pen& pen, const Frame& frame, bool core) {
  upright_coil(pen, frame, -14, -h2);
  upright_coil(pen, frame, 14, h2);
  const double middle = (frame.upper + frame.lower) / 2.0;
  if (!core) return;
  pen.line({{-2.5, middle - 26}, {-2.5, middle + 26}});
  pen.line({{2.5, middle - 26}, {2.5, middle + 26}});
}

/// Both conductors wound on one core.
void choke(Pen& pen, const Frame& frame) {
  for (const double v : {frame.upper, frame.lower}) {
    const double side = v == frame.upper ? -1.0 : 1.0;
    pen.line({{-h2, v}, {-24, v}});
    pen.line({{24, v}, {h2, v}});
    coil(pen, v, side);
    pen.line({{-26, v - side * 14}, {26, v - side * 14}});
  }
  pen.line({{-26, frame.upper + 14}, {-26, frame.lower - 14}}, "thin");
  pen.line({{26, frame.upper + 14}, {26, frame.lower - 14}}, "thin");
}

void frame_box(Pen& pen, const Frame& frame) {
  const double bottom = frame.tall ? frame.lower + 16 : frame.upper + 20, top = frame.upper - (frame.tall ? 16 : 20);
  for (const double u : {-1.0, 1.0}) {
    pen.line({{u * h2, frame.upper}, {u * 30, frame.upper}});
    if (frame.tall) pen.line({{u * h2, frame.lower}, {u * 30, frame.lower}});
  }
  pen.rectangle(-30, top, 30, bottom, "body");
}

/// Three resistors of a pi.
void pad(Pen& pen, const Frame& frame) {
  frame_box(pen, frame);
  const double v = frame.upper;
  pen.rectangle(-8, v - 11, 8, v - 5, "thin");
  pen.line({{-22, v - 8}, {-8, v - 8}}, "thin");
  pen.line({{8, v - 8}, {22, v - 8}}, "thin");
  for (const double u : {-18.0, 18.0}) {
    pen.line({{u, v - 8}, {u, v - 4}}, "thin");
    pen.rectangle(u - 3, v - 4, u + 3, v + 9, "thin");
    pen.line({{u, v + 9}, {u, v + 13}}, "thin");
  }
}

/// A measured two-port: its response as a bump.
void two_port(Pen& pen, const Frame& frame) {
  frame_box(pen, frame);
  const double v = frame.upper;
  pen.line({{-22, v + 12}, {22, v + 12}}, "thin");
  pen.curve({-20, v + 9}, {-6, v + 9}, {-10, v - 11}, {0, v - 11}, "thin");
  pen.curve({0, v - 11}, {10, v - 11}, {6, v + 9}, {20, v + 9}, "thin");
}

}  // namespace

void draw_one_port(Pen& pen, const Item& item) {
  switch (item.symbol) {
    case Symbol::source:
      source(pen);
      break;
    case Symbol::resistor:
      resistor(pen);
      break;
    case Symbol::inductor:
      inductor(pen);
      break;
    case Symbol::capacitor:
      capacitor(pen);
      break;
    case Symbol::load:
      load(pen);
      break;
    case Symbol::antenna:
      radiating_load(pen);
      break;
    case Symbol::stub_open:
      stub(pen, true);
      break;
    case Symbol::stub_shorted:
      stub(pen, false);
      break;
    default:
      leads(pen, 20);
      pen.rectangle(-20, -12, 20, 12, "body");
      pen.line({{-20, 12}, {20, -12}}, "thin");
  }
  if (item.adjustable) pen.arrow(17);
}

void draw_antenna(Pen& pen) {
  constexpr double top = -antenna_height;
  pen.line({{0, 0}, {0, top}});
  pen.line({{-16, top}, {0, top + 24}, {16, top}});
}

bool drawn_as_wires(const Item& item) {
  const bool pairs = item.nodes.size() == 4 && item.nodes[1] != ground && item.nodes[3] != ground;
  return pairs && !(item.impedance_ohm < 150.0);
}

void draw_two_port(Pen& pen, const Item& item, const std::vector<double>& rows) {
  const Frame frame{item, rows.front(), rows.back(), rows.size() > 1};
  switch (item.symbol) {
    case Symbol::line:
      drawn_as_wires(item) ? open_wire(pen, frame) : coax(pen, frame);
      break;
    case Symbol::transformer:
      wound(pen, frame, true);
      break;
    case Symbol::coupled:
      wound(pen, frame, false);
      break;
    case Symbol::choke:
      choke(pen, frame);
      break;
    case Symbol::pad:
      pad(pen, frame);
      break;
    default:
      two_port(pen, frame);
  }
  grounds(pen, frame);
}

void draw_selector(Pen& pen, const Item& item, const std::vector<double>& rows) {
  pen.line({{-h2, 0}, {-28, 0}});
  for (std::size_t k = 0; k < rows.size(); ++k) {
    pen.line({{22, rows[k]}, {h2, rows[k]}});
    if (k + 1 < item.nodes.size() && item.nodes[k + 1] == ground) pen.ground(h2, rows[k]);
  }
  const std::size_t joined = item.choice >= 0 ? std::min(static_cast<std::size_t>(item.choice), rows.size() - 1) : 0;
  if (item.choice >= 0) pen.line({{-25, 0}, {19, rows[joined]}}, "bold");
  pen.circle(-25, 0, 3.5, "contact");
  for (const double row : rows) pen.circle(19, row, 3.5, "contact");
}

}  // namespace pictures
