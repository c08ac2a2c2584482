#include <cstring>

#include "kernel.hpp"

namespace wattfall::solve {
namespace {

#if defined(__x86_64__)
bool has_v3() { return __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma") && __builtin_cpu_supports("bmi2"); }
bool has_v4() {
  return has_v3() && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512vl") && __builtin_cpu_supports("avx512dq") &&
         __builtin_cpu_supports("avx512bw") && __builtin_cpu_supports("avx512cd");
}
#endif

const Kernel& widest() {
#if defined(__x86_64__)
  if (has_v4()) return v4::kernel;
  if (has_v3()) return v3::kernel;
#endif
  return baseline::kernel;
}

}  // namespace

const Kernel& kernel() {
  static const Kernel& chosen = widest();
  return chosen;
}

const Kernel* kernel_named(const char* name) {
#if defined(__x86_64__)
  if (std::strcmp(name, "v4") == 0) return has_v4() ? &v4::kernel : nullptr;
  if (std::strcmp(name, "v3") == 0) return has_v3() ? &v3::kernel : nullptr;
#endif
  return std::strcmp(name, "baseline") == 0 ? &baseline::kernel : nullptr;
}

}  // namespace wattfall::solve
