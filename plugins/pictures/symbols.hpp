// The symbols of IEC 60617 and IEEE 315, drawn here. One-ports lie along u from -one_port_half to +one_port_half; parts
// with more terminals reach from -two_port_half to +two_port_half, their rows at the heights given.
#pragma once

#include <vector>

#include "circuit.hpp"
#include "pen.hpp"

namespace pictures {

inline constexpr double one_port_half = 30.0, two_port_half = 46.0, antenna_height = 52.0;

void draw_one_port(Pen& pen, const Item& item);

/// An antenna above the end of its wire, which is the pen's origin.
void draw_antenna(Pen& pen);

/// `rows`: v of each row, from 0. Terminals on ground get their ground symbol where the symbol has two rows.
void draw_two_port(Pen& pen, const Item& item, const std::vector<double>& rows);
/// Two conductors side by side and not one within the other.
bool drawn_as_wires(const Item& item);

void draw_selector(Pen& pen, const Item& item, const std::vector<double>& rows);

}  // namespace pictures
