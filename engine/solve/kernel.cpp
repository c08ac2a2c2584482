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
    for (int i = 0; i < 8; ++i) any |= beyond[i] != 0;
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

void coil(Batch& b, const BranchCode& code) {
  for (std::size_t h = 0; h < halves; ++h) {
    const Vector henries = b.reals[code.main].v[h], w = b.omega.v[h];
    const Vector ohms = b.reals[code.r0].v[h] + henries * (w * b.reals[code.g1].v[h] + b.root_hz.v[h] * b.reals[code.g2].v[h]);
    const Vector reactance = w * henries, wc = w * b.reals[code.stray].v[h];
    finish_branch(b, code, h, ohms, reactance, 1.0 - wc * reactance, wc * ohms, ohms);
  }
}

void capacitor(Batch& b, const BranchCode& code) {
  for (std::size_t h = 0; h < halves; ++h) {
    // A bank of relays all open is 0 F: a speck of capacitance keeps its loss resistance finite.
    const Vector farads = greater(b.reals[code.main].v[h], all(1e-30)), w = b.omega.v[h];
    const Vector ohms = b.reals[code.r0].v[h] + (b.reals[code.g1].v[h] / w + b.reals[code.g2].v[h] * b.root_hz.v[h]) / farads;
    const Vector y_im = w * farads, y_re = y_im * b.reals[code.tangent].v[h], x = w * b.reals[code.stray].v[h];
    finish_branch(b, code, h, 1.0 + ohms * y_re - x * y_im, ohms * y_im + x * y_re, y_re, y_im, ohms * magnitude2(y_re, y_im) + y_re);
  }
}

void core(Batch& b, const BranchCode& code) {
  for (std::size_t h = 0; h < halves; ++h) {
    const Vector reactance = b.omega.v[h] * b.reals[code.main].v[h];
    const Vector susceptance = reactance > 0.0 ? 1.0 / reactance : all(0.0);
    const Vector conductance = b.reals[code.r0].v[h] + b.reals[code.g1].v[h] * susceptance;
    b.values[code.value].re[h] = conductance;
    b.values[code.value].im[h] = -susceptance;
    b.reals[code.heat].v[h] = conductance;
  }
}

/// tanh and coth of half the line, without cancellation: with S, C, s, c of the half angles, tanh = (S C + j s c)/(S^2 + c^2) and coth =
/// (S C - j s c)/(S^2 + s^2). They are Z0 times the even and odd modes' admittances; y11 and y12 are half their sum and difference.
void line(Batch& b, const LineCode& code) {
  for (std::size_t h = 0; h < halves; ++h) {
    Vector s, c, big_s, big_c;
    sine_cosine(b.reals[code.b].v[h], s, c);
    sinh_cosh(b.reals[code.a].v[h], big_s, big_c);
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

void admittances(Batch& b) {
  for (std::size_t i = 0; i < b.branch_count; ++i) {
    const BranchCode& code = b.branches[i];
    switch (code.formula) {
      case BranchCode::Formula::coil: coil(b, code); break;
      case BranchCode::Formula::capacitor: capacitor(b, code); break;
      case BranchCode::Formula::core: core(b, code); break;
      case BranchCode::Formula::given: break;
    }
  }
  for (std::size_t i = 0; i < b.line_count; ++i) line(b, b.lines[i]);
}

// ---- elimination --------------------------------------------------------------------------------------------------

void gather(Batch& b) {
  for (std::size_t i = 0; i < b.gather_count; ++i) {
    const Gather& code = b.gathers[i];
    for (std::size_t h = 0; h < halves; ++h) {
      Vector re{}, im{};
      for (std::uint32_t t = code.first; t < code.first + code.count; ++t) {
        const GatherTerm& term = b.terms[t];
        Vector factor = all(term.sign);
        if (term.weight != nowhere) factor *= b.reals[term.weight].v[h];
        re += factor * b.values[term.value].re[h];
        im += factor * b.values[term.value].im[h];
      }
      b.entries[code.slot].re[h] = re;
      b.entries[code.slot].im[h] = im;
    }
  }
}

/// The square of each row's largest entry before elimination, times the floor's square.
void measure_rows(Batch& b) {
  for (std::size_t i = 0; i < b.step_count; ++i) {
    const Step& step = b.steps[i];
    for (std::size_t h = 0; h < halves; ++h) {
      Vector largest = magnitude2(b.entries[step.pivot].re[h], b.entries[step.pivot].im[h]);
      for (std::uint32_t r = step.first_row; r < step.first_row + step.row_count; ++r)
        largest = greater(largest, magnitude2(b.entries[b.row_slots[r]].re[h], b.entries[b.row_slots[r]].im[h]));
      b.rows[step.unknown].v[h] = largest * (pivot_floor * pivot_floor);
    }
  }
}

void eliminate(Batch& b) {
  for (std::size_t i = 0; i < b.step_count; ++i) {
    const Step& step = b.steps[i];
    LaneComplex& inverse = b.inverses[step.unknown];
    for (std::size_t h = 0; h < halves; ++h) {
      const Vector re = b.entries[step.pivot].re[h], im = b.entries[step.pivot].im[h];
      const Vector size = magnitude2(re, im);
      const Vector over = 1.0 / size;
      inverse.re[h] = re * over;
      inverse.im[h] = -im * over;
      b.bad_pivot[h] |= ~(size >= b.rows[step.unknown].v[h]) | ~(size > 0.0);
    }
    for (std::uint32_t k = step.first_scale; k < step.first_scale + step.scale_count; ++k) {
      const LaneComplex& entry = b.entries[b.scales[k].entry];
      LaneComplex& factor = b.factors[b.scales[k].factor];
      for (std::size_t h = 0; h < halves; ++h) {
        factor.re[h] = entry.re[h] * inverse.re[h] - entry.im[h] * inverse.im[h];
        factor.im[h] = entry.re[h] * inverse.im[h] + entry.im[h] * inverse.re[h];
      }
    }
    for (std::uint32_t k = step.first_update; k < step.first_update + step.update_count; ++k) {
      LaneComplex& entry = b.entries[b.updates[k].entry];
      const LaneComplex& factor = b.factors[b.updates[k].factor];
      const LaneComplex& other = b.entries[b.updates[k].other];
      for (std::size_t h = 0; h < halves; ++h) {
        entry.re[h] = entry.re[h] - factor.re[h] * other.re[h] + factor.im[h] * other.im[h];
        entry.im[h] = entry.im[h] - factor.re[h] * other.im[h] - factor.im[h] * other.re[h];
      }
    }
  }
}

WATTFALL_INLINE void subtract_product(LaneComplex& to, const LaneComplex& a, const LaneComplex& c) {
  for (std::size_t h = 0; h < halves; ++h) {
    to.re[h] = to.re[h] - a.re[h] * c.re[h] + a.im[h] * c.im[h];
    to.im[h] = to.im[h] - a.re[h] * c.im[h] - a.im[h] * c.re[h];
  }
}

/// x holds the right side before `from` steps are done forward, and the unknowns after.
void substitute(Batch& b, std::size_t from) {
  for (std::size_t i = from; i < b.back_count; ++i)
    for (std::uint32_t k = b.backs[i].first; k < b.backs[i].first + b.backs[i].count; ++k)
      subtract_product(b.x[b.coupled[k].unknown], b.factors[b.coupled[k].lower], b.x[b.backs[i].row]);
  for (std::size_t i = b.back_count; i-- > 0;) {
    const Back& back = b.backs[i];
    LaneComplex& x = b.x[back.row];
    const LaneComplex& inverse = b.inverses[back.row];
    for (std::size_t h = 0; h < halves; ++h) {
      const Vector re = x.re[h] * inverse.re[h] - x.im[h] * inverse.im[h];
      x.im[h] = x.re[h] * inverse.im[h] + x.im[h] * inverse.re[h];
      x.re[h] = re;
    }
    for (std::uint32_t k = back.first; k < back.first + back.count; ++k) subtract_product(x, b.factors[b.coupled[k].upper], b.x[b.coupled[k].unknown]);
  }
}

void clear_right_side(Batch& b) {
  for (std::size_t i = 0; i < b.unknowns; ++i)
    for (std::size_t h = 0; h < halves; ++h) b.x[i].re[h] = b.x[i].im[h] = Vector{};
}

/// The source as a current E/Zs into its node and out of its other end. Both stand last in the order, so the forward pass is short.
void drive(Batch& b) {
  clear_right_side(b);
  for (std::size_t h = 0; h < halves; ++h) {
    const Vector re = b.source_volts.v[h] * b.values[b.source_value].re[h], im = b.source_volts.v[h] * b.values[b.source_value].im[h];
    const Vector w = b.source_weight == nowhere ? all(1.0) : b.reals[b.source_weight].v[h];
    b.x[b.source_unknown].re[h] += w * re;
    b.x[b.source_unknown].im[h] += w * im;
    if (b.other_unknown == nowhere) continue;
    const Vector u = b.other_weight == nowhere ? all(1.0) : b.reals[b.other_weight].v[h];
    b.x[b.other_unknown].re[h] -= u * re;
    b.x[b.other_unknown].im[h] -= u * im;
  }
  substitute(b, b.back_count - (b.other_unknown == nowhere ? 1 : 2));
}

// ---- what flows ---------------------------------------------------------------------------------------------------

void potentials(Batch& b) {
  for (std::size_t i = 0; i < b.node_code_count; ++i) {
    const NodeCode& code = b.nodes[i];
    for (std::size_t h = 0; h < halves; ++h) {
      Vector re = b.x[code.unknown].re[h], im = b.x[code.unknown].im[h];
      if (code.weight != nowhere) {
        re *= b.reals[code.weight].v[h];
        im *= b.reals[code.weight].v[h];
      }
      b.volts[code.node].re[h] = re;
      b.volts[code.node].im[h] = im;
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
WATTFALL_INLINE Pair across(const Batch& b, const FlowCode& code, int port, std::size_t h) {
  return at(b.volts[code.node[2 * port]], h) - at(b.volts[code.node[2 * port + 1]], h);
}
WATTFALL_INLINE Vector norm(Pair a) { return magnitude2(a.re, a.im); }

void flow(Batch& b, const FlowCode& code) {
  for (std::size_t h = 0; h < halves; ++h) {
    LaneComplex& amps1 = b.amps[2 * code.element];
    LaneComplex& amps2 = b.amps[2 * code.element + 1];
    const Pair v1 = across(b, code, 0, h);
    if (code.form == FlowCode::Form::branch) {
      put(amps1, h, at(b.values[code.value], h) * v1);
      continue;
    }
    if (code.form == FlowCode::Form::border) {
      const Pair current = at(b.x[code.unknown], h);
      const Vector ratio = b.reals[code.ratio].v[h];
      put(amps2, h, current);
      put(amps1, h, {-ratio * current.re, -ratio * current.im});
      continue;
    }
    const Pair v2 = across(b, code, 1, h);
    const bool mirrored = code.form == FlowCode::Form::line;
    const Pair y11 = at(b.values[code.value], h), y12 = at(b.values[code.value + 1], h);
    const Pair y21 = mirrored ? y12 : at(b.values[code.value + 2], h), y22 = mirrored ? y11 : at(b.values[code.value + 3], h);
    put(amps1, h, y11 * v1 + y12 * v2);
    put(amps2, h, y21 * v1 + y22 * v2);
  }
}

/// Heat without differences of large powers: |V|^2 g of a branch, both modes of a line, the coils' own resistances.
void heat(Batch& b, const FlowCode& code) {
  for (std::size_t h = 0; h < halves; ++h) {
    const Pair v1 = across(b, code, 0, h);
    Vector first{}, second{};
    if (code.form == FlowCode::Form::branch) {
      first = norm(v1) * b.reals[code.even].v[h];
    } else if (code.form == FlowCode::Form::line) {
      const Pair v2 = across(b, code, 1, h);
      first = 0.5 * (norm(v1 + v2) * b.reals[code.even].v[h] + norm(v1 - v2) * b.reals[code.odd].v[h]);
    } else if (code.form != FlowCode::Form::border) {
      const Pair v2 = across(b, code, 1, h);
      const Pair i1 = at(b.amps[2 * code.element], h), i2 = at(b.amps[2 * code.element + 1], h);
      if (code.form == FlowCode::Form::matrix) {
        first = v1.re * i1.re + v1.im * i1.im + v2.re * i2.re + v2.im * i2.im;
      } else {
        // The coil's own current is the terminal's less j w C V of the capacitance across it.
        const Vector s1 = b.reals[code.even + 2].v[h], s2 = b.reals[code.even + 3].v[h];
        first = norm({i1.re + s1 * v1.im, i1.im - s1 * v1.re}) * b.reals[code.even].v[h];
        second = norm({i2.re + s2 * v2.im, i2.im - s2 * v2.re}) * b.reals[code.even + 1].v[h];
      }
    }
    b.heat[2 * code.element].v[h] = first;
    b.heat[2 * code.element + 1].v[h] = second;
  }
}

/// What all else at the outer node takes is what the transformer brings. `probed`: the node fed with 1 A from outside.
void merged(Batch& b, std::uint32_t probed) {
  for (std::size_t i = 0; i < b.merged_count; ++i) {
    const MergedCode& code = b.merged[i];
    for (std::size_t h = 0; h < halves; ++h) {
      Pair sum{Vector{}, Vector{}};
      if (code.node == probed) sum.re -= 1.0;
      for (std::uint32_t t = code.first; t < code.first + code.count; ++t) {
        const CurrentTerm& term = b.currents_of_merged[t];
        const Pair current = term.current == nowhere ? at(b.source_amps, h) : at(b.amps[term.current], h);
        sum.re += term.sign * current.re;
        sum.im += term.sign * current.im;
      }
      const Vector ratio = b.reals[code.ratio].v[h];
      if (code.inverse) {
        put(b.amps[2 * code.element], h, {-sum.re, -sum.im});
        put(b.amps[2 * code.element + 1], h, {sum.re / ratio, sum.im / ratio});
      } else {
        put(b.amps[2 * code.element + 1], h, {-sum.re, -sum.im});
        put(b.amps[2 * code.element], h, {ratio * sum.re, ratio * sum.im});
      }
    }
  }
}

/// I = (E - V)/Zs, with E = 0 where the source is silent.
void source_current(Batch& b, bool working) {
  for (std::size_t h = 0; h < halves; ++h) {
    const Pair v = at(b.volts[b.source_node], h) - at(b.volts[b.source_other], h);
    const Pair drop{(working ? b.source_volts.v[h] : Vector{}) - v.re, -v.im};
    put(b.source_amps, h, drop * at(b.values[b.source_value], h));
  }
}

/// available - returned - heat, where |V - conj(Zs) I|^2/(4 Re Zs) returns.
void balance(Batch& b) {
  for (std::size_t h = 0; h < halves; ++h) {
    const Pair v = at(b.volts[b.source_node], h) - at(b.volts[b.source_other], h);
    const Pair conjugate{b.source_ohms_re.v[h], -b.source_ohms_im.v[h]};
    const Vector returned = norm(v - conjugate * at(b.source_amps, h)) / (4.0 * b.source_ohms_re.v[h]);
    Vector heat{};
    for (std::size_t e = 0; e < 2 * b.element_count; ++e) heat += b.heat[e].v[h];
    b.imbalance.v[h] = absolute(b.available_w.v[h] - returned - heat) / b.available_w.v[h];
  }
}

void run(Batch& b) {
  for (std::size_t h = 0; h < halves; ++h) b.bad_pivot[h] = b.bad_line[h] = b.bad_branch[h] = VectorMask{};
  admittances(b);
  gather(b);
  measure_rows(b);
  eliminate(b);
  drive(b);
  potentials(b);
  source_current(b, true);
  for (std::size_t i = 0; i < b.flow_count; ++i) {
    flow(b, b.flows[i]);
    heat(b, b.flows[i]);
  }
  merged(b, nowhere);
  balance(b);
}

void probe(Batch& b, std::uint32_t node, std::uint32_t unknown, std::uint32_t weight) {
  clear_right_side(b);
  for (std::size_t h = 0; h < halves; ++h) b.x[unknown].re[h] = weight == nowhere ? all(1.0) : b.reals[weight].v[h];
  substitute(b, 0);
  potentials(b);
  source_current(b, false);
  for (std::size_t i = 0; i < b.flow_count; ++i) flow(b, b.flows[i]);
  merged(b, node);
}

// ---- collapsed networks -------------------------------------------------------------------------------------------

WATTFALL_INLINE Pair constant(const double* pair) { return {all(pair[0]), all(pair[1])}; }
WATTFALL_INLINE Pair inverse_of(Pair a) {
  const Vector over = 1.0 / norm(a);
  return {a.re * over, -a.im * over};
}

void collapsed(CollapsedBatch& b) {
  const std::size_t n = b.active, width = n + 1;
  for (std::size_t h = 0; h < halves; ++h) {
    for (std::size_t p = 0; p < n; ++p) {
      for (std::size_t q = 0; q < n; ++q) {
        Pair entry = constant(b.z + 2 * (p * n + q)) * Pair{b.y[q].re[h] - b.reference, b.y[q].im[h]};
        if (p == q) entry.re += 1.0;
        put(b.work[p * width + q], h, entry);
      }
      put(b.work[p * width + n], h, constant(b.v + 2 * p));
    }
    for (std::size_t k = 0; k < n; ++k) {
      const Pair inverse = inverse_of(at(b.work[k * width + k], h));
      for (std::size_t q = k + 1; q < width; ++q) put(b.work[k * width + q], h, at(b.work[k * width + q], h) * inverse);
      for (std::size_t p = k + 1; p < n; ++p) {
        const Pair factor = at(b.work[p * width + k], h);
        for (std::size_t q = k + 1; q < width; ++q)
          put(b.work[p * width + q], h, at(b.work[p * width + q], h) - factor * at(b.work[k * width + q], h));
      }
    }
    for (std::size_t k = n; k-- > 0;) {
      Pair x = at(b.work[k * width + n], h);
      for (std::size_t q = k + 1; q < n; ++q) x = x - at(b.work[k * width + q], h) * at(b.volts[q], h);
      put(b.volts[k], h, x);
    }
    for (std::size_t w = 0; w <= b.watched; ++w) {
      const double* row = b.watch + 2 * w * width;
      Pair sum = constant(row);
      for (std::size_t q = 0; q < n; ++q)
        sum = sum - constant(row + 2 * (q + 1)) * (Pair{b.y[q].re[h] - b.reference, b.y[q].im[h]} * at(b.volts[q], h));
      put(b.watching[w], h, sum);
    }
  }
}

void branch_admittances(Batch& b) {
  for (std::size_t h = 0; h < halves; ++h) b.bad_branch[h] = VectorMask{};
  admittances(b);
}

void functions(const double* x, double* sine, double* cosine, double* sinh, double* cosh) {
  Vector in, s, c, big_s, big_c;
  for (int i = 0; i < 8; ++i) in[i] = x[i];
  sine_cosine(in, s, c);
  sinh_cosh(absolute(in), big_s, big_c);
  for (int i = 0; i < 8; ++i) {
    sine[i] = s[i];
    cosine[i] = c[i];
    sinh[i] = big_s[i];
    cosh[i] = big_c[i];
  }
}

#define WATTFALL_TEXT_(name) #name
#define WATTFALL_TEXT(name) WATTFALL_TEXT_(name)

}  // namespace

extern const Kernel kernel = {WATTFALL_TEXT(WATTFALL_TARGET), run, probe, branch_admittances, collapsed, functions};

}  // namespace wattfall::solve::WATTFALL_TARGET
