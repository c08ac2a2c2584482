// Sixteen states side by side: the number types of the kernel. Private to the room; included by kernel.cpp, which is compiled once for each
// instruction set, so nothing here may be an inline function of external linkage that another build could pick up.
#pragma once

#include <cstddef>
#include <cstdint>

namespace wattfall::solve {

/// States in a batch.
inline constexpr std::size_t lanes = 16;

/// As many doubles as a register of the kernel's instruction set holds (g++ takes wider vectors apart in memory, ten times slower). The tables' layout is the
/// same for every width, and only the kernel looks at them as vectors; all else has `data()`.
#ifndef WATTFALL_VECTOR_BYTES
#define WATTFALL_VECTOR_BYTES 64
#endif
typedef double Vector __attribute__((vector_size(WATTFALL_VECTOR_BYTES)));
typedef std::int64_t VectorMask __attribute__((vector_size(WATTFALL_VECTOR_BYTES)));
/// Doubles in a Vector, and Vectors in a batch.
inline constexpr std::size_t width = sizeof(Vector) / sizeof(double);
inline constexpr std::size_t pieces = lanes / width;

/// A real number in every lane.
struct alignas(64) LaneReal {
  Vector v[pieces];

  double* data() { return reinterpret_cast<double*>(v); }
  const double* data() const { return reinterpret_cast<const double*>(v); }
};

/// A complex number in every lane, real and imaginary parts apart.
struct alignas(64) LaneComplex {
  Vector re[pieces];
  Vector im[pieces];

  double* real() { return reinterpret_cast<double*>(re); }
  const double* real() const { return reinterpret_cast<const double*>(re); }
  double* imag() { return reinterpret_cast<double*>(im); }
  const double* imag() const { return reinterpret_cast<const double*>(im); }
};

}  // namespace wattfall::solve
