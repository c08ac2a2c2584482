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

/// What a core is pressed of, and the flux density at which it is near saturation.
struct CoreMaterial {
  std::string_view name;
  double saturation_t;  ///< a low typical figure, of a hot core
  std::string_view source;
};

/// What Q a sort of capacitor typically has on the short waves.
struct CapacitorSort {
  std::string_view name;
  double low_quality, high_quality;
  std::string_view remark;
};

std::span<const CoreMaterial> core_materials();
std::span<const CapacitorSort> capacitor_sorts();
std::span<const Metal> metals();
std::span<const Dielectric> dielectrics();

/// By name without regard to case, hyphens, underscores and blanks; "aluminum" and other trade words are known too.
/// Null where there is none.
const Metal* find_metal(std::string_view name);
const Dielectric* find_dielectric(std::string_view name);
const CoreMaterial* find_core_material(std::string_view name);

}  // namespace wattfall::physics
