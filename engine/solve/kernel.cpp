// Built once for each instruction set, with WATTFALL_TARGET naming the namespace. Every loop runs over the lanes of a batch, written with
// the compiler's vector types; nothing of the standard library is called, and all functions are local to this file.
#include "kernel.hpp"

namespace wattfall::solve::WATTFALL_TARGET {
namespace {

#define WATTFALL_INLINE inline __attribute__((always_inline))

WATTFALL_INLINE Vector all(double number) { return Vector{} + number; }
WATTFALL_INLINE Vector magnitude2(Vector re, Vector im) { return re * re + im * im; }
WATTFALL_INLINE Vector greater(Vector a, Vector b) { return a > b ? a : b; }
WATTFALL_INLINE Vector absolute(Vector a) { return a < 0.0 ? -a : a; }

// ---- elementary functions -----------------------------------------------------------------------------------------

/// Adding this to a double of size up to 2^51 leaves its nearest whole number in the low bits.
constexpr double round_magic = 6755399441055744.0;  // 1.5 * 2^52

/// sin and cos by reduction to |r| <= pi/4 and the Taylor series, whose first left-out terms are 8e-20 and 2e-18 there. pi/2 is parted into two
/// pieces of 33 bits and a rest (computed from pi's digits), so that k times each piece is exact for |k| < 2^20.
WATTFALL_INLINE void sine_cosine(Vector x, Vector& sine, Vector& cosine) {
  constexpr double half_pi_1 = 0x1.921fb544p+0, half_pi_2 = 0x1.0b4611a6p-34, half_pi_3 = 0x1.3198a2e037073p-69;
  constexpr double two_over_pi = 0.63661977236758134308;
  const Vector shifted = x * two_over_pi + round_magic;
  const VectorMask bits = (VectorMask)shifted;
  const Vector k = shifted - round_magic;
  const Vector r = ((x - k * half_pi_1) - k * half_pi_2) - k * half_pi_3;
  const Vector z = r * r;
  Vector s = all(1.0 / 355687428096000.0);  // 1/17!
  s = s * z - 1.0 / 1307674368000.0;
  s = s * z + 1.0 / 6227020800.0;
  s = s * z - 1.0 / 39916800.0;
  s = s * z + 1.0 / 362880.0;
  s = s * z - 1.0 / 5040.0;
  s = s * z + 1.0 / 120.0;
  s = s * z - 1.0 / 6.0;
  s = r + r * z * s;
  Vector c = all(1.0 / 20922789888000.0);  // 1/16!
  c = c * z - 1.0 / 87178291200.0;
  c = c * z + 1.0 / 479001600.0;
  c = c * z - 1.0 / 3628800.0;
  c = c * z + 1.0 / 40320.0;
  c = c * z - 1.0 / 720.0;
  c = c * z + 1.0 / 24.0;
  c = (1.0 - 0.5 * z) + z * z * c;
  const VectorMask odd = (bits & 1) != 0;
  const Vector s_here = odd ? c : s, c_here = odd ? s : c;
  sine = (bits & 2) != 0 ? -s_here : s_here;
  cosine = ((bits + 1) & 2) != 0 ? -c_here : c_here;
}

/// sinh and cosh by the Taylor series for |x| <= 1 (first left-out terms 2e-20 and 4e-19); for larger x by halving the argument as often as needed
/// and doubling back, cosh 2x = 1 + 2 sinh^2 x, sinh 2x = 2 sinh x cosh x. x >= 0; beyond 64 it is cut (e^-128 of a wave comes back).
WATTFALL_INLINE void sinh_cosh(Vector x, Vector& sinh, Vector& cosh) {
  x = x > 64.0 ? all(64.0) : x;
  int doublings = 0;
  for (double limit = 1.0; limit < 64.0; limit *= 2.0) {
    const VectorMask beyond = x > limit;
    bool any = false;
    for (std::size_t i = 0; i < width; ++i) any |= beyond[i] != 0;
    if (!any) break;
    ++doublings;
  }
  const double scale = 1.0 / double(1 << doublings);
  const Vector r = x * scale;
  const Vector z = r * r;
  Vector s = all(1.0 / 121645100408832000.0);  // 1/19!
  s = s * z + 1.0 / 355687428096000.0;
  s = s * z + 1.0 / 1307674368000.0;
  s = s * z + 1.0 / 6227020800.0;
  s = s * z + 1.0 / 39916800.0;
  s = s * z + 1.0 / 362880.0;
  s = s * z + 1.0 / 5040.0;
  s = s * z + 1.0 / 120.0;
  s = s * z + 1.0 / 6.0;
  s = r + r * z * s;
  Vector c = all(1.0 / 6402373705728000.0);  // 1/18!
  c = c * z + 1.0 / 20922789888000.0;
  c = c * z + 1.0 / 87178291200.0;
  c = c * z + 1.0 / 479001600.0;
  c = c * z + 1.0 / 3628800.0;
  c = c * z + 1.0 / 40320.0;
  c = c * z + 1.0 / 720.0;
  c = c * z + 1.0 / 24.0;
  c = (1.0 + 0.5 * z) + z * z * c;
  for (int i = 0; i < doublings; ++i) {
    const Vector doubled = 2.0 * s * c;
    c = 1.0 + 2.0 * s * s;
    s = doubled;
  }
  sinh = s;
  cosh = c;
}

// ---- admittances --------------------------------------------------------------------------------------------------

/// y = d/n and g = loss/|n|^2 of d V = n I; a branch of less than a microohm (against 50 ohm) drowns its neighbours.
WATTFALL_INLINE void finish_branch(Batch& b, const BranchCode& code, std::size_t h, Vector n_re, Vector n_im, Vector d_re, Vector d_im, Vector loss) {
  const Vector size = magnitude2(n_re, n_im);
  const Vector inverse = 1.0 / size;
  b.values[code.value].re[h] = (d_re * n_re + d_im * n_im) * inverse;
  b.values[code.value].im[h] = (d_im * n_re - d_re * n_im) * inverse;
  b.reals[code.heat].v[h] = loss * inverse;
  b.bad_branch[h] |= size < 1e-12 * magnitude2(d_re, d_im);
}

/// A parameter's lanes.
WATTFALL_INLINE Vector at(const Batch& b, const Operand& operand, std::size_t h) {
  return operand.real == nowhere ? all(operand.number) : b.reals[operand.real].v[h];
}

/// `Plain`: all parameters are numbers, and there is no stray capacitance, inductance or tangent.
template <bool Plain>
WATTFALL_INLINE void coil(Batch& b, const BranchCode& code) {
  for (std::size_t h = 0; h < pieces; ++h) {
    const Vector w = b.omega.v[h];
    if constexpr (Plain) {
      const Vector ohms = code.r0.number + code.main.number * (w * code.g1.number + b.root_hz.v[h] * code.g2.number);
      const Vector reactance = w * code.main.number, size = magnitude2(ohms, reactance), inverse = 1.0 / size;
      b.values[code.value].re[h] = b.reals[code.heat].v[h] = ohms * inverse;
      b.values[code.value].im[h] = -reactance * inverse;
      b.bad_branch[h] |= size < 1e-12;
      continue;
    }
    const Vector henries = at(b, code.main, h);
    const Vector ohms = at(b, code.r0, h) + henries * (w * at(b, code.g1, h) + b.root_hz.v[h] * at(b, code.g2, h));
    const Vector reactance = w * henries, wc = w * at(b, code.stray, h);
    finish_branch(b, code, h, ohms, reactance, 1.0 - wc * reactance, wc * ohms, ohms);
  }
}

template <bool Plain>
WATTFALL_INLINE void capacitor(Batch& b, const BranchCode& code) {
  for (std::size_t h = 0; h < pieces; ++h) {
    // A bank of relays all open is 0 F: a speck of capacitance keeps its loss resistance finite.
    const Vector farads = greater(at(b, code.main, h), all(1e-30)), w = b.omega.v[h];
    // y = w C (w C R + j)/(1 + (w C R)^2), with w C R = w C r0 + g1 + w g2 sqrt f.
    if constexpr (Plain) {
      const Vector siemens = w * farads;
      const Vector ratio = siemens * code.r0.number + (code.g1.number + w * (code.g2.number * b.root_hz.v[h]));
      const Vector size = 1.0 + ratio * ratio, scaled = siemens / size;
      b.bad_branch[h] |= size < 1e-12 * siemens * siemens;
      b.values[code.value].re[h] = b.reals[code.heat].v[h] = scaled * ratio;
      b.values[code.value].im[h] = scaled;
      continue;
    }
    const Vector ohms = at(b, code.r0, h) + (at(b, code.g1, h) / w + at(b, code.g2, h) * b.root_hz.v[h]) / farads;
    const Vector y_im = w * farads, y_re = y_im * at(b, code.tangent, h), x = w * at(b, code.stray, h);
    finish_branch(b, code, h, 1.0 + ohms * y_re - x * y_im, ohms * y_im + x * y_re, y_re, y_im, ohms * magnitude2(y_re, y_im) + y_re);
  }
}

WATTFALL_INLINE void core(Batch& b, const BranchCode& code) {
  for (std::size_t h = 0; h < pieces; ++h) {
    const Vector reactance = b.omega.v[h] * at(b, code.main, h);
    const Vector susceptance = reactance > 0.0 ? 1.0 / reactance : all(0.0);
    const Vector conductance = at(b, code.r0, h) + at(b, code.g1, h) * susceptance;
    b.values[code.value].re[h] = conductance;
    b.values[code.value].im[h] = -susceptance;
    b.reals[code.heat].v[h] = conductance;
  }
}

/// tanh and coth of half the line, without cancellation: with S, C, s, c of the half angles, tanh = (S C + j s c)/(S^2 + c^2) and coth =
/// (S C - j s c)/(S^2 + s^2). They are Z0 times the even and odd modes' admittances; y11 and y12 are half their sum and difference.
WATTFALL_INLINE void line(Batch& b, const LineCode& code) {
  for (std::size_t h = 0; h < pieces; ++h) {
    Vector s, c, big_s, big_c;
    const Vector half_length = 0.5 * at(b, code.length, h);
    sine_cosine(b.values[code.gamma].im[h] * half_length, s, c);
    sinh_cosh(b.values[code.gamma].re[h] * half_length, big_s, big_c);
    const Vector open = big_s * big_s + c * c, shorted = big_s * big_s + s * s;
    b.bad_line[h] |= ~(open > line_floor) | ~(shorted > line_floor);
    const Vector re = big_s * big_c, im = s * c, over_open = 1.0 / open, over_shorted = 1.0 / shorted;
    const Vector t_re = re * over_open, t_im = im * over_open, u_re = re * over_shorted, u_im = -im * over_shorted;
    const Vector y_re = b.values[code.admittance].re[h], y_im = b.values[code.admittance].im[h];
    const Vector even_re = y_re * t_re - y_im * t_im, even_im = y_re * t_im + y_im * t_re;
    const Vector odd_re = y_re * u_re - y_im * u_im, odd_im = y_re * u_im + y_im * u_re;
    b.reals[code.even].v[h] = even_re;
    b.reals[code.odd].v[h] = odd_re;
    b.values[code.value].re[h] = 0.5 * (odd_re + even_re);
    b.values[code.value].im[h] = 0.5 * (odd_im + even_im);
    b.values[code.value + 1].re[h] = 0.5 * (even_re - odd_re);
    b.values[code.value + 1].im[h] = 0.5 * (even_im - odd_im);
  }
}

/// Those of branches and lines from one place of their lists to another.
void admittances(Batch& b, std::size_t branch, std::size_t branch_end, std::size_t next_line, std::size_t line_end) {
  for (; branch < branch_end; ++branch) {
    const BranchCode& code = b.branches[branch];
    switch (code.formula) {
      case BranchCode::Formula::coil: code.plain ? coil<true>(b, code) : coil<false>(b, code); break;
      case BranchCode::Formula::capacitor: code.plain ? capacitor<true>(b, code) : capacitor<false>(b, code); break;
      case BranchCode::Formula::core: core(b, code); break;
      case BranchCode::Formula::given: break;
    }
  }
  for (; next_line < line_end; ++next_line) line(b, b.lines[next_line]);
}

// ---- elimination --------------------------------------------------------------------------------------------------

/// A diagonal comes before the others of its row.
WATTFALL_INLINE void write_entry(Batch& b, const Gather& code, std::size_t h, Vector re, Vector im) {
  b.entries[code.slot].re[h] = re;
  b.entries[code.slot].im[h] = im;
  const Vector size = magnitude2(re, im) * (pivot_floor * pivot_floor);
  if (code.diagonal) {
    b.rows[code.rows[0]].v[h] = size;
    return;
  }
  if (code.rows[0] != nowhere) b.rows[code.rows[0]].v[h] = greater(b.rows[code.rows[0]].v[h], size);
  if (code.rows[1] != nowhere) b.rows[code.rows[1]].v[h] = greater(b.rows[code.rows[1]].v[h], size);
}

/// The entries, and the square of each row's largest before elimination times the floor's square.
void gather(Batch& b, std::size_t begin, std::size_t end) {
  for (std::size_t i = begin; i < end; ++i) {
    const Gather& code = b.gathers[i];
    const GatherTerm* const plain_end = b.terms + code.first + code.plain;
    // Two vectors at a time: enough to hide a term's loads, and few enough for the registers.
    for (std::size_t first = 0; first < pieces; first += 2) {
      Vector re[2]{}, im[2]{};
      for (const GatherTerm* term = b.terms + code.first; term < plain_end; ++term)
        for (std::size_t k = 0; k < 2; ++k) {
          re[k] += term->sign * b.values[term->value].re[first + k];
          im[k] += term->sign * b.values[term->value].im[first + k];
        }
      for (const GatherTerm* term = plain_end; term < b.terms + code.first + code.count; ++term)
        for (std::size_t k = 0; k < 2; ++k) {
          const Vector factor = term->sign * b.reals[term->weight].v[first + k];
          re[k] += factor * b.values[term->value].re[first + k];
          im[k] += factor * b.values[term->value].im[first + k];
        }
      for (std::size_t k = 0; k < 2; ++k) write_entry(b, code, first + k, re[k], im[k]);
    }
  }
}

WATTFALL_INLINE void subtract_product(LaneComplex& to, const LaneComplex& a, const LaneComplex& c) {
  for (std::size_t h = 0; h < pieces; ++h) {
    to.re[h] = to.re[h] - a.re[h] * c.re[h] + a.im[h] * c.im[h];
    to.im[h] = to.im[h] - a.re[h] * c.im[h] - a.im[h] * c.re[h];
  }
}

/// A column of `Count` entries of a symmetric matrix: factors and updates of its whole triangle, everything in registers. The updates stand row by row.
template <std::uint32_t Count>
WATTFALL_INLINE void eliminate_column(Batch& b, const Step& step, const Vector (&inverse_re)[pieces], const Vector (&inverse_im)[pieces]) {
  const Scale* const scales = b.scales + step.first_scale;
  const Update* const updates = b.updates + step.first_update;
  for (std::size_t h = 0; h < pieces; ++h) {
    Vector entry_re[Count], entry_im[Count];
    for (std::uint32_t m = 0; m < Count; ++m) {
      entry_re[m] = b.entries[scales[m].entry].re[h];
      entry_im[m] = b.entries[scales[m].entry].im[h];
    }
    const Update* update = updates;
    for (std::uint32_t m = 0; m < Count; ++m) {
      const Vector re = entry_re[m] * inverse_re[h] - entry_im[m] * inverse_im[h], im = entry_re[m] * inverse_im[h] + entry_im[m] * inverse_re[h];
      b.factors[scales[m].factor].re[h] = re;
      b.factors[scales[m].factor].im[h] = im;
      for (std::uint32_t n = 0; n <= m; ++n, ++update) {
        LaneComplex& entry = b.entries[update->entry];
        entry.re[h] = entry.re[h] - re * entry_re[n] + im * entry_im[n];
        entry.im[h] = entry.im[h] - re * entry_im[n] - im * entry_re[n];
      }
    }
  }
}

/// The pivot's inverse, kept and given; a pivot too small for its row is flagged.
WATTFALL_INLINE void invert_pivot(Batch& b, std::size_t i, Vector (&inverse_re)[pieces], Vector (&inverse_im)[pieces]) {
  const Step& step = b.steps[i];
  for (std::size_t h = 0; h < pieces; ++h) {
    const Vector re = b.entries[step.pivot].re[h], im = b.entries[step.pivot].im[h];
    const Vector size = magnitude2(re, im);
    const Vector over = 1.0 / size;
    b.inverses[i].re[h] = inverse_re[h] = re * over;
    b.inverses[i].im[h] = inverse_im[h] = -im * over;
    b.bad_pivot[h] |= ~(size >= b.rows[step.row].v[h]) | ~(size > 0.0);
  }
}

WATTFALL_INLINE void scale_column(Batch& b, const Step& step, const Vector (&inverse_re)[pieces], const Vector (&inverse_im)[pieces]) {
  for (const Scale* scale = b.scales + step.first_scale; scale < b.scales + step.first_scale + step.scale_count; ++scale) {
    const LaneComplex& entry = b.entries[scale->entry];
    LaneComplex& factor = b.factors[scale->factor];
    for (std::size_t h = 0; h < pieces; ++h) {
      factor.re[h] = entry.re[h] * inverse_re[h] - entry.im[h] * inverse_im[h];
      factor.im[h] = entry.re[h] * inverse_im[h] + entry.im[h] * inverse_re[h];
    }
  }
}

/// The rest of the matrix after the columns of a panel: entry (m, n) of its triangle less the products of all columns' factors m and entries n.
template <std::uint32_t Columns>
WATTFALL_INLINE void update_rest(Batch& b, const Step* steps) {
  const Step& last = steps[Columns - 1];
  if (last.scale_count == 0) return;
  const Update* update = b.updates + last.first_update;
  // Row 0 of what is left stands below the panel's own unknowns in each column.
  const LaneComplex *factors[Columns], *entries[Columns];
  for (std::uint32_t p = 0; p < Columns; ++p) {
    const Scale& first = b.scales[steps[p].first_scale + (Columns - 1 - p)];
    factors[p] = b.factors + first.factor;
    entries[p] = b.entries + first.entry;
  }
  for (std::uint32_t m = 0; m < last.scale_count; update += ++m)
    for (std::size_t h = 0; h < pieces; ++h) {
      Vector re[Columns], im[Columns];
      for (std::uint32_t p = 0; p < Columns; ++p) {
        re[p] = factors[p][m].re[h];
        im[p] = factors[p][m].im[h];
      }
      for (std::uint32_t n = 0; n <= m; ++n) {
        LaneComplex& entry = b.entries[update[n].entry];
        Vector entry_re = entry.re[h], entry_im = entry.im[h];
        for (std::uint32_t p = 0; p < Columns; ++p) {
          const Vector other_re = entries[p][n].re[h], other_im = entries[p][n].im[h];
          entry_re = entry_re - re[p] * other_re + im[p] * other_im;
          entry_im = entry_im - re[p] * other_im - im[p] * other_re;
        }
        entry.re[h] = entry_re;
        entry.im[h] = entry_im;
      }
    }
}

/// Columns with the same entries: each updates those of the panel that come after it, then all together the rest.
void eliminate_panel(Batch& b, std::size_t i) {
  const Step* const steps = b.steps + i;
  const std::uint32_t columns = steps->panel;
  for (std::uint32_t p = 0; p < columns; ++p) {
    const Step& step = steps[p];
    Vector inverse_re[pieces], inverse_im[pieces];
    invert_pivot(b, i + p, inverse_re, inverse_im);
    scale_column(b, step, inverse_re, inverse_im);
    const Update* update = b.updates + step.first_update;
    for (std::uint32_t m = 0; m < step.scale_count; update += ++m)
      for (std::uint32_t n = 0; n <= m && n + p + 1 < columns; ++n) subtract_product(b.entries[update[n].entry], b.factors[update[n].factor], b.entries[update[n].other]);
  }
  switch (columns) {
    case 2: update_rest<2>(b, steps); break;
    case 3: update_rest<3>(b, steps); break;
    default: update_rest<4>(b, steps); break;
  }
}

void eliminate(Batch& b, std::size_t begin, std::size_t end) {
  for (std::size_t i = begin; i < end; ++i) {
    const Step& step = b.steps[i];
    if (step.panel > 1) {
      eliminate_panel(b, i);
      i += step.panel - 1;
      continue;
    }
    Vector inverse_re[pieces], inverse_im[pieces];
    invert_pivot(b, i, inverse_re, inverse_im);
    // Only a symmetric column has one factor an entry and so many updates.
    if (step.scale_count == 1 && step.update_count == 1) {
      eliminate_column<1>(b, step, inverse_re, inverse_im);
      continue;
    }
    if (step.scale_count == 2 && step.update_count == 3) {
      eliminate_column<2>(b, step, inverse_re, inverse_im);
      continue;
    }
    if (step.scale_count == 3 && step.update_count == 6) {
      eliminate_column<3>(b, step, inverse_re, inverse_im);
      continue;
    }
    scale_column(b, step, inverse_re, inverse_im);
    for (const Update* update = b.updates + step.first_update; update < b.updates + step.first_update + step.update_count; ++update)
      subtract_product(b.entries[update->entry], b.factors[update->factor], b.entries[update->other]);
  }
}

/// Times the pivot's inverse.
WATTFALL_INLINE void divide(LaneComplex& x, const LaneComplex& inverse) {
  for (std::size_t h = 0; h < pieces; ++h) {
    const Vector re = x.re[h] * inverse.re[h] - x.im[h] * inverse.im[h];
    x.im[h] = x.re[h] * inverse.im[h] + x.im[h] * inverse.re[h];
    x.re[h] = re;
  }
}

/// The right side stands in the unknowns' places, and is zero before step `from`, whose unknowns need not be cleared.
void substitute(Batch& b, std::size_t from) {
  for (std::size_t i = from; i < b.step_count; ++i)
    for (std::uint32_t k = b.backs[i].first; k < b.backs[i].first + b.backs[i].count; ++k)
      subtract_product(b.volts[b.coupled[k].x], b.factors[b.coupled[k].lower], b.volts[b.backs[i].x]);
  for (std::size_t i = b.step_count; i-- > from;) {
    LaneComplex& x = b.volts[b.backs[i].x];
    divide(x, b.inverses[i]);
    for (std::uint32_t k = b.backs[i].first; k < b.backs[i].first + b.backs[i].count; ++k)
      subtract_product(x, b.factors[b.coupled[k].upper], b.volts[b.coupled[k].x]);
  }
  for (std::size_t i = from; i-- > 0;) {
    const Back& back = b.backs[i];
    Vector re[pieces]{}, im[pieces]{};
    for (std::uint32_t k = back.first; k < back.first + back.count; ++k) {
      const LaneComplex& factor = b.factors[b.coupled[k].upper];
      const LaneComplex& known = b.volts[b.coupled[k].x];
      for (std::size_t h = 0; h < pieces; ++h) {
        re[h] = re[h] - factor.re[h] * known.re[h] + factor.im[h] * known.im[h];
        im[h] = im[h] - factor.re[h] * known.im[h] - factor.im[h] * known.re[h];
      }
    }
    for (std::size_t h = 0; h < pieces; ++h) {
      b.volts[back.x].re[h] = re[h];
      b.volts[back.x].im[h] = im[h];
    }
  }
}

void clear_right_side(Batch& b, std::size_t from) {
  for (std::size_t i = from; i < b.step_count; ++i)
    for (std::size_t h = 0; h < pieces; ++h) b.volts[b.backs[i].x].re[h] = b.volts[b.backs[i].x].im[h] = Vector{};
}

/// The source as a current E/Zs into its node and out of its other end. Both stand last in the order.
void drive(Batch& b) {
  const std::size_t from = b.step_count - (b.other_x == nowhere || b.other_x == b.source_x ? 1 : 2);
  clear_right_side(b, from);
  for (std::size_t h = 0; h < pieces; ++h) {
    const Vector re = b.source_volts.v[h] * b.values[b.source_value].re[h], im = b.source_volts.v[h] * b.values[b.source_value].im[h];
    const Vector w = b.source_weight == nowhere ? all(1.0) : b.reals[b.source_weight].v[h];
    b.volts[b.source_x].re[h] += w * re;
    b.volts[b.source_x].im[h] += w * im;
    if (b.other_x == nowhere) continue;
    const Vector u = b.other_weight == nowhere ? all(1.0) : b.reals[b.other_weight].v[h];
    b.volts[b.other_x].re[h] -= u * re;
    b.volts[b.other_x].im[h] -= u * im;
  }
  substitute(b, from);
}

// ---- what flows ---------------------------------------------------------------------------------------------------

/// The far nodes of merged transformers; all others' potentials are unknowns.
void potentials(Batch& b) {
  for (std::size_t i = 0; i < b.node_code_count; ++i) {
    const NodeCode& code = b.nodes[i];
    for (std::size_t h = 0; h < pieces; ++h) {
      const Vector weight = b.reals[code.weight].v[h];
      b.volts[code.node].re[h] = weight * b.volts[code.x].re[h];
      b.volts[code.node].im[h] = weight * b.volts[code.x].im[h];
    }
  }
}

struct Pair {
  Vector re, im;
};
WATTFALL_INLINE Pair operator*(Pair a, Pair c) { return {a.re * c.re - a.im * c.im, a.re * c.im + a.im * c.re}; }
WATTFALL_INLINE Pair operator+(Pair a, Pair c) { return {a.re + c.re, a.im + c.im}; }
WATTFALL_INLINE Pair operator-(Pair a, Pair c) { return {a.re - c.re, a.im - c.im}; }
WATTFALL_INLINE Pair at(const LaneComplex& from, std::size_t h) { return {from.re[h], from.im[h]}; }
WATTFALL_INLINE void put(LaneComplex& to, std::size_t h, Pair value) {
  to.re[h] = value.re;
  to.im[h] = value.im;
}
template <class Code>
WATTFALL_INLINE Pair across(const Batch& b, const Code& code, int port, std::size_t h) {
  return at(b.volts[code.node[2 * port]], h) - at(b.volts[code.node[2 * port + 1]], h);
}
WATTFALL_INLINE Vector norm(Pair a) { return magnitude2(a.re, a.im); }

/// Series of answers stand where they will, not at a vector's boundary.
WATTFALL_INLINE void store(double* to, std::size_t h, Vector value) { __builtin_memcpy(to + width * h, &value, sizeof value); }
WATTFALL_INLINE Vector root(Vector x) {
  Vector result;
  for (std::size_t i = 0; i < width; ++i) result[i] = __builtin_sqrt(x[i]);
  return result;
}
/// The larger end's volts (peak) and amps (rms) from their squares.
WATTFALL_INLINE void store_figures(const Batch& b, std::uint32_t element, std::size_t h, Vector volts2, Vector amps2) {
  store(b.volts_peak[element] + b.offset, h, root(2.0 * volts2));
  store(b.amps_rms[element] + b.offset, h, root(amps2));
}

/// `Heat`: the heat as well, added up in `total`, and the figures where they are asked for. Heat without differences of large powers: |V|^2 g.
template <bool Heat>
WATTFALL_INLINE void branch_flows(Batch& b, Vector* total) {
  for (const BranchFlow* code = b.branch_flows; code < b.branch_flows + b.branch_flow_count; ++code)
    for (std::size_t h = 0; h < pieces; ++h) {
      const Pair v = across(b, *code, 0, h), i = at(b.values[code->value], h) * v;
      if (!Heat || b.keep_amps) put(b.amps[code->amps], h, i);
      if constexpr (!Heat) continue;
      const Vector volts2 = norm(v), heat = volts2 * b.reals[code->conductance].v[h];
      total[h] += heat;
      store(b.heat[code->element] + b.offset, h, heat);
      if (b.volts_peak != nullptr) store_figures(b, code->element, h, volts2, norm(i));
    }
}

/// The heat of a line from its even and odd modes.
template <bool Heat>
WATTFALL_INLINE void line_flows(Batch& b, Vector* total) {
  for (const LineFlow* code = b.line_flows; code < b.line_flows + b.line_flow_count; ++code)
    for (std::size_t h = 0; h < pieces; ++h) {
      const Pair v1 = across(b, *code, 0, h), v2 = across(b, *code, 1, h);
      const Pair own = at(b.values[code->value], h), through = at(b.values[code->value + 1], h);
      const Pair i1 = own * v1 + through * v2, i2 = through * v1 + own * v2;
      if (!Heat || b.keep_amps) {
        put(b.amps[code->amps], h, i1);
        put(b.amps[code->amps + 1], h, i2);
      }
      if constexpr (!Heat) continue;
      const Vector heat = 0.5 * (norm(v1 + v2) * b.reals[code->even].v[h] + norm(v1 - v2) * b.reals[code->odd].v[h]);
      total[h] += heat;
      store(b.heat[code->element] + b.offset, h, heat);
      if (b.volts_peak != nullptr) store_figures(b, code->element, h, greater(norm(v1), norm(v2)), greater(norm(i1), norm(i2)));
    }
}

void other_flow(Batch& b, const FlowCode& code, bool with_heat, Vector* total) {
  for (std::size_t h = 0; h < pieces; ++h) {
    const Pair v1 = across(b, code, 0, h), v2 = across(b, code, 1, h);
    Pair i1, i2;
    Vector first{};
    if (code.form == FlowCode::Form::border) {
      const Vector ratio = b.reals[code.ratio].v[h];
      i2 = at(b.volts[code.x], h);
      i1 = {-ratio * i2.re, -ratio * i2.im};
    } else {
      i1 = at(b.values[code.value], h) * v1 + at(b.values[code.value + 1], h) * v2;
      i2 = at(b.values[code.value + 2], h) * v1 + at(b.values[code.value + 3], h) * v2;
    }
    put(b.amps[code.amps], h, i1);
    put(b.amps[code.amps + 1], h, i2);
    if (!with_heat) continue;
    if (code.form == FlowCode::Form::matrix) first = v1.re * i1.re + v1.im * i1.im + v2.re * i2.re + v2.im * i2.im;
    if (code.form == FlowCode::Form::coupled) {
      // The coil's own current is the terminal's less j w C V of the capacitance across it.
      const Vector s1 = b.reals[code.coils + 2].v[h], s2 = b.reals[code.coils + 3].v[h];
      first = norm({i1.re + s1 * v1.im, i1.im - s1 * v1.re}) * b.reals[code.coils].v[h];
      const Vector second = norm({i2.re + s2 * v2.im, i2.im - s2 * v2.re}) * b.reals[code.coils + 1].v[h];
      store(b.heat[code.heat2] + b.offset, h, second);
      total[h] += second;
    }
    total[h] += first;
    store(b.heat[code.element] + b.offset, h, first);
    if (b.volts_peak != nullptr) store_figures(b, code.element, h, greater(norm(v1), norm(v2)), greater(norm(i1), norm(i2)));
  }
}

/// What all else at the outer node takes is what the transformer brings. `probed`: the node fed with 1 A from outside.
void merged(Batch& b, std::uint32_t probed, bool with_heat) {
  for (std::size_t i = 0; i < b.merged_count; ++i) {
    const MergedCode& code = b.merged[i];
    const std::uint32_t outer = code.inverse ? code.node[0] : code.node[2];
    for (std::size_t h = 0; h < pieces; ++h) {
      Pair sum{Vector{}, Vector{}};
      if (outer == probed) sum.re -= 1.0;
      for (std::uint32_t t = code.first; t < code.first + code.count; ++t) {
        const CurrentTerm& term = b.currents_of_merged[t];
        const Pair current = term.current == nowhere ? at(b.source_amps, h) : at(b.amps[term.current], h);
        sum.re += term.sign * current.re;
        sum.im += term.sign * current.im;
      }
      const Vector ratio = b.reals[code.ratio].v[h];
      const Pair i1 = code.inverse ? Pair{-sum.re, -sum.im} : Pair{ratio * sum.re, ratio * sum.im};
      const Pair i2 = code.inverse ? Pair{sum.re / ratio, sum.im / ratio} : Pair{-sum.re, -sum.im};
      put(b.amps[code.amps], h, i1);
      put(b.amps[code.amps + 1], h, i2);
      if (!with_heat) continue;
      store(b.heat[code.element] + b.offset, h, Vector{});
      if (b.volts_peak != nullptr)
        store_figures(b, code.element, h, greater(norm(across(b, code, 0, h)), norm(across(b, code, 1, h))), greater(norm(i1), norm(i2)));
    }
  }
}

/// I = (E - V)/Zs, with E = 0 where the source is silent.
void source_current(Batch& b, bool working) {
  for (std::size_t h = 0; h < pieces; ++h) {
    const Pair v = at(b.volts[b.source_node], h) - at(b.volts[b.source_other], h);
    const Pair drop{(working ? b.source_volts.v[h] : Vector{}) - v.re, -v.im};
    put(b.source_amps, h, drop * at(b.values[b.source_value], h));
  }
}

/// available - returned - heat, where |V - conj(Zs) I|^2/(4 Re Zs) returns.
void balance(Batch& b, const Vector* heat) {
  for (std::size_t h = 0; h < pieces; ++h) {
    const Pair v = at(b.volts[b.source_node], h) - at(b.volts[b.source_other], h);
    const Pair conjugate{b.source_ohms_re.v[h], -b.source_ohms_im.v[h]};
    const Vector returned = norm(v - conjugate * at(b.source_amps, h)) / (4.0 * b.source_ohms_re.v[h]);
    b.imbalance.v[h] = absolute(b.available_w.v[h] - returned - heat[h]) / b.available_w.v[h];
  }
}

void run(Batch& b) {
  for (std::size_t h = 0; h < pieces; ++h) b.bad_pivot[h] = b.bad_line[h] = b.bad_branch[h] = VectorMask{};
  Chunk from{};
  for (const Chunk* chunk = b.chunks; chunk < b.chunks + b.chunk_count; from = *chunk++) {
    admittances(b, from.branches, chunk->branches, from.lines, chunk->lines);
    gather(b, from.gathers, chunk->gathers);
    eliminate(b, from.steps, chunk->steps);
  }
  drive(b);
  potentials(b);
  source_current(b, true);
  Vector total[pieces]{};
  branch_flows<true>(b, total);
  line_flows<true>(b, total);
  for (std::size_t i = 0; i < b.flow_count; ++i) other_flow(b, b.flows[i], true, total);
  merged(b, nowhere, true);
  balance(b, total);
}

void probe(Batch& b, std::uint32_t node, std::uint32_t x, std::uint32_t weight) {
  clear_right_side(b, 0);
  for (std::size_t h = 0; h < pieces; ++h) b.volts[x].re[h] = weight == nowhere ? all(1.0) : b.reals[weight].v[h];
  substitute(b, 0);
  potentials(b);
  source_current(b, false);
  Vector total[pieces]{};
  branch_flows<false>(b, total);
  line_flows<false>(b, total);
  for (std::size_t i = 0; i < b.flow_count; ++i) other_flow(b, b.flows[i], false, total);
  merged(b, node, false);
}

// ---- collapsed networks -------------------------------------------------------------------------------------------

WATTFALL_INLINE Pair constant(const double* pair) { return {all(pair[0]), all(pair[1])}; }
WATTFALL_INLINE Pair inverse_of(Pair a) {
  const Vector over = 1.0 / norm(a);
  return {a.re * over, -a.im * over};
}

/// (1 + Z D) V = V0 by elimination. `Count`: the number of ports, known to the compiler; 0: any.
template <std::size_t Count>
WATTFALL_INLINE void collapsed_ports(CollapsedBatch& b, std::size_t h) {
  const std::size_t n = Count == 0 ? b.active : Count, stride = n + 2;
  LaneComplex* const work = b.work;
  for (std::size_t q = 0; q < n; ++q) {
    const Pair y = at(b.values[b.y[q]], h);
    put(work[q * stride + n + 1], h, {y.re - b.reference, y.im});
  }
  for (std::size_t p = 0; p < n; ++p) {
    for (std::size_t q = 0; q < n; ++q) {
      Pair entry = constant(b.z + 2 * (p * n + q)) * at(work[q * stride + n + 1], h);
      if (p == q) entry.re += 1.0;
      put(work[p * stride + q], h, entry);
    }
    put(work[p * stride + n], h, constant(b.v + 2 * p));
  }
  for (std::size_t k = 0; k < n; ++k) {
    const Pair inverse = inverse_of(at(work[k * stride + k], h));
    for (std::size_t q = k + 1; q <= n; ++q) put(work[k * stride + q], h, at(work[k * stride + q], h) * inverse);
    for (std::size_t p = k + 1; p < n; ++p) {
      const Pair factor = at(work[p * stride + k], h);
      for (std::size_t q = k + 1; q <= n; ++q) put(work[p * stride + q], h, at(work[p * stride + q], h) - factor * at(work[k * stride + q], h));
    }
  }
  for (std::size_t k = n; k-- > 0;) {
    Pair x = at(work[k * stride + n], h);
    for (std::size_t q = k + 1; q < n; ++q) x = x - at(work[k * stride + q], h) * at(b.volts[q], h);
    put(b.volts[k], h, x);
  }
  double* const* answer = b.answers;
  const auto give = [&](Vector value) { store(*answer++ + b.offset, h, value); };
  // The ports' currents, less those of the reference, are what watched places see.
  for (std::size_t q = 0; q < n; ++q) put(work[q * stride], h, at(work[q * stride + n + 1], h) * at(b.volts[q], h));
  const auto watched = [&](std::size_t w) {
    const double* row = b.watch + 2 * w * (n + 1);
    Pair sum = constant(row);
    for (std::size_t q = 0; q < n; ++q) sum = sum - constant(row + 2 * (q + 1)) * at(work[q * stride], h);
    return sum;
  };
  const Pair port = watched(0), amps = constant(b.over_source_ohms) * Pair{b.source_volts - port.re, -port.im};
  give(port.re);
  give(port.im);
  give(amps.re);
  give(amps.im);
  for (std::size_t w = 0; w < b.watched; ++w) {
    const Vector volts2 = norm(watched(w + 1));
    store(answer[w] + b.offset, h, volts2 * b.watched_siemens[w]);
    store(answer[b.watched + w] + b.offset, h, root(volts2));
  }
  answer += 2 * b.watched;
  for (std::size_t p = 0; p < n; ++p) {
    const Pair v = at(b.volts[p], h);
    const Vector volts2 = norm(v);
    store(answer[p] + b.offset, h, volts2 * b.reals[b.heat[p]].v[h]);
    store(answer[n + p] + b.offset, h, root(volts2));
    store(answer[2 * n + p] + b.offset, h, root(volts2 * norm(at(b.values[b.y[p]], h))));
  }
}

void collapsed(CollapsedBatch& b) {
  for (std::size_t h = 0; h < pieces; ++h) switch (b.active) {
      case 1: collapsed_ports<1>(b, h); break;
      case 2: collapsed_ports<2>(b, h); break;
      case 3: collapsed_ports<3>(b, h); break;
      default: collapsed_ports<0>(b, h);
    }
}

void branch_admittances(Batch& b) {
  for (std::size_t h = 0; h < pieces; ++h) b.bad_branch[h] = VectorMask{};
  admittances(b, 0, b.branch_count, 0, b.line_count);
}

void gather_all(Batch& b) { gather(b, 0, b.gather_count); }

void gather_and_eliminate(Batch& b) {
  for (std::size_t h = 0; h < pieces; ++h) b.bad_pivot[h] = VectorMask{};
  Chunk from{};
  for (const Chunk* chunk = b.chunks; chunk < b.chunks + b.chunk_count; from = *chunk++) {
    gather(b, from.gathers, chunk->gathers);
    eliminate(b, from.steps, chunk->steps);
  }
}

void functions(const double* x, double* sine, double* cosine, double* sinh, double* cosh) {
  for (std::size_t first = 0; first < 8; first += width) {
    Vector in, s, c, big_s, big_c;
    for (std::size_t i = 0; i < width; ++i) in[i] = x[first + i];
    sine_cosine(in, s, c);
    sinh_cosh(absolute(in), big_s, big_c);
    for (std::size_t i = 0; i < width; ++i) {
      sine[first + i] = s[i];
      cosine[first + i] = c[i];
      sinh[first + i] = big_s[i];
      cosh[first + i] = big_c[i];
    }
  }
}

#define WATTFALL_TEXT_(name) #name
#define WATTFALL_TEXT(name) WATTFALL_TEXT_(name)

}  // namespace

extern const Kernel kernel = {WATTFALL_TEXT(WATTFALL_TARGET), run, probe, gather_all, gather_and_eliminate, branch_admittances, collapsed, functions};

}  // namespace wattfall::solve::WATTFALL_TARGET
