// Metals and dielectrics by name, each figure with its source. Conductivities are those at 20 degrees Celsius;
// dielectric figures are typical of the short waves (1 MHz to 100 MHz), and makers' sheets differ from them by several
// per cent.
#pragma once

#include <span>
#include <string_view>

namespace wattfall::physics {

struct Metal {
  std::string_view name;
  double conductivity_s_per_m;
  double relative_permeability;  ///< initial permeability, real; no hysteresis
  std::string_view source;
};

struct Dielectric {
  std::string_view name;
  double relative_permittivity;
  double loss_tangent;
  std::string_view source;
};

std::span<const Metal> metals();
std::span<const Dielectric> dielectrics();

/// By name without regard to case, hyphens, underscores and blanks; "aluminum" and other trade words are known too.
/// Null where there is none.
const Metal* find_metal(std::string_view name);
const Dielectric* find_dielectric(std::string_view name);

}  // namespace wattfall::physics
