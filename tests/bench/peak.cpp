#include "peak.hpp"

#include <cstring>

namespace wattfall::bench {
namespace {

typedef double Two __attribute__((vector_size(16)));
typedef double Four __attribute__((vector_size(32)));
typedef double Eight __attribute__((vector_size(64)));

/// 12 sums hide a multiply-add's four or five cycles on two pipes, and leave registers of the sixteen.
template <class Vector>
__attribute__((always_inline)) inline double work(std::size_t rounds, double& sink) {
  constexpr std::size_t width = sizeof(Vector) / sizeof(double);
  Vector a = Vector{} + 0.999999, b = Vector{} + 1e-6;
  Vector s[12];
  for (int i = 0; i < 12; ++i) s[i] = Vector{} + static_cast<double>(i);
  for (std::size_t r = 0; r < rounds; ++r) {
    // Keeps the compiler from seeing through the sums, and them in registers.
    asm volatile("" : "+x"(a), "+x"(b));
#pragma GCC unroll 12
    for (int i = 0; i < 12; ++i) s[i] = s[i] * a + b;
  }
  for (int i = 0; i < 12; ++i)
    for (std::size_t k = 0; k < width; ++k) sink += s[i][k];
  return 2.0 * 12.0 * static_cast<double>(width * rounds);
}

double two(std::size_t rounds, double& sink) {
  return work<Two>(rounds, sink);
}
#if defined(__x86_64__)
__attribute__((target("avx2,fma"))) double four(std::size_t rounds, double& sink) {
  return work<Four>(rounds, sink);
}
__attribute__((target("avx512f,avx512vl,fma"))) double eight(std::size_t rounds, double& sink) {
  return work<Eight>(rounds, sink);
}
#endif

}  // namespace

double multiply_adds(const char* target, std::size_t rounds, double& sink) {
#if defined(__x86_64__)
  if (std::strcmp(target, "v4") == 0) return __builtin_cpu_supports("avx512f") ? eight(rounds, sink) : 0.0;
  if (std::strcmp(target, "v3") == 0) return __builtin_cpu_supports("fma") ? four(rounds, sink) : 0.0;
#endif
  return std::strcmp(target, "baseline") == 0 ? two(rounds, sink) : 0.0;
}

}  // namespace wattfall::bench
