// Sixteen states side by side: the number types of the kernel. Private to the room; included by kernel.cpp, which is compiled once for each
// instruction set, so nothing here may be an inline function of external linkage that another build could pick up.
#pragma once

#include <cstddef>
#include <cstdint>

namespace wattfall::solve {

/// States in a batch.
inline constexpr std::size_t lanes = 16;
inline constexpr std::size_t halves = 2;

/// Eight doubles: one register of AVX-512, two of AVX2, four of SSE2.
typedef double Vector __attribute__((vector_size(64)));
typedef std::int64_t VectorMask __attribute__((vector_size(64)));

/// A real number in every lane.
struct alignas(64) LaneReal {
  Vector v[halves];

  double* data() { return reinterpret_cast<double*>(v); }
  const double* data() const { return reinterpret_cast<const double*>(v); }
};

/// A complex number in every lane, real and imaginary parts apart.
struct alignas(64) LaneComplex {
  Vector re[halves];
  Vector im[halves];

  double* real() { return reinterpret_cast<double*>(re); }
  const double* real() const { return reinterpret_cast<const double*>(re); }
  double* imag() { return reinterpret_cast<double*>(im); }
  const double* imag() const { return reinterpret_cast<const double*>(im); }
};

}  // namespace wattfall::solve
