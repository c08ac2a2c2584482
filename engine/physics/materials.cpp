// The two tables, and names folded for lookup.
#include "physics/materials.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <utility>

namespace wattfall::physics {
namespace {

constexpr std::array<Metal, 7> metal_table{{
    {"copper", 5.8e7, 1.0,
     "IEC 60028, International standard of resistance for copper, 1925: 58 m/(ohm mm^2), annealed"},
    {"aluminium", 3.77e7, 1.0, "handbook figure of pure metal, 26.5 nohm m (CRC Handbook; from memory)"},
    {"brass", 1.6e7, 1.0,
     "70/30 brass, 28 % of annealed copper (Copper Development Association; from memory); alloys 12e6 to 27e6"},
    {"silver", 6.173e7, 1.0, "Pozar, Microwave Engineering, appendix F, conductivities of metals (from memory)"},
    {"steel", 6.0e6, 100.0,
     "mild steel, 0.17 uohm m; initial permeability 50 to 200 (handbooks; from memory): a rough figure"},
    {"tinned copper", 5.8e7, 1.0,
     "as copper; a coat of tin (8.7e6 S/m) a micrometre thick counts above 100 MHz, and is left out"},
    {"stainless", 1.39e6, 1.0, "austenitic 18/8 steel, 0.72 uohm m (EN 10088-1:2005 gives 0.73; from memory)"},
}};

constexpr std::array<Dielectric, 8> dielectric_table{{
    {"air", 1.00059, 0.0, "dry air at 0 C, 1013 hPa: 1.00059 (CRC Handbook; from memory)"},
    {"polyethylene", 2.25, 0.0003,
     "solid, 1 MHz to 1 GHz: 2.25 to 2.3, 2e-4 to 5e-4 (von Hippel, Dielectric Materials, 1954; from memory)"},
    {"foam polyethylene", 1.5, 0.0003,
     "cable foam, velocity 0.80 to 0.84 (cable tables; from memory); density sets the figure"},
    {"ptfe", 2.1, 0.0002, "2.04 to 2.1, 1e-4 to 3e-4 (von Hippel, 1954; from memory); sintered cores lie low"},
    {"fr-4", 4.5, 0.02, "glass-epoxy board, 1 MHz: 4.2 to 4.8, 0.015 to 0.025 (IPC-4101 sheets; from memory)"},
    {"ceramic", 9.4, 0.0004,
     "96 % alumina, 1 MHz: 9.0 to 9.8, 2e-4 to 1e-3; steatite has 6.0, 2e-3 (handbooks; from memory)"},
    {"fibreglass", 4.8, 0.02,
     "glass-epoxy rod and tube, 1 MHz: 4.4 to 5.2 (handbooks; from memory); wet it is far worse"},
    {"vacuum", 1.0, 0.0, "by definition"},
}};

constexpr std::array<CoreMaterial, 3> core_table{{
    {"nickel-zinc ferrite", 0.25, "0.25 T to 0.35 T at 25 C to 100 C (makers' sheets; from memory)"},
    {"manganese-zinc ferrite", 0.35, "0.35 T to 0.5 T, the lower figure at 100 C (makers' sheets; from memory)"},
    {"powdered iron", 0.5, "carbonyl iron: 0.5 T to 1 T, permeability falls well before (makers' sheets; from memory)"},
}};

constexpr std::array<CapacitorSort, 6> capacitor_table{{
    {"vacuum", 3000.0, 10000.0, "connections and bellows set it; common practice, no source"},
    {"air, butterfly or split stator", 1500.0, 3000.0, "no wiper in the circuit; common practice, no source"},
    {"air, with wipers", 500.0, 1500.0, "the wiper's contact sets it; common practice, no source"},
    {"silvered mica", 500.0, 2000.0, "falls with size and frequency; common practice, no source"},
    {"ceramic, NP0", 500.0, 2000.0, "of transmitting sizes; common practice, no source"},
    {"open coax stub", 30.0, 150.0, "a length of coax as a capacitor, at 7 MHz; common practice, no source"},
}};

using Alias = std::pair<std::string_view, std::string_view>;
constexpr std::array<Alias, 18> aliases{{{"aluminum", "aluminium"},
                                         {"stainless steel", "stainless"},
                                         {"mild steel", "steel"},
                                         {"iron", "steel"},
                                         {"pe", "polyethylene"},
                                         {"solid polyethylene", "polyethylene"},
                                         {"polyethylene solid", "polyethylene"},
                                         {"foam", "foam polyethylene"},
                                         {"polyethylene foam", "foam polyethylene"},
                                         {"foamed polyethylene", "foam polyethylene"},
                                         {"alumina", "ceramic"},
                                         {"fiberglass", "fibreglass"},
                                         {"glass epoxy", "fr-4"},
                                         {"ferrite", "nickel-zinc ferrite"},
                                         {"nizn", "nickel-zinc ferrite"},
                                         {"mnzn", "manganese-zinc ferrite"},
                                         {"iron powder", "powdered iron"},
                                         {"carbonyl iron", "powdered iron"}}};

std::string folded(std::string_view name) {
  std::string key;
  for (const char letter : name)
    if (letter != ' ' && letter != '-' && letter != '_')
      key += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return key;
}

std::string without_alias(std::string_view name) {
  const std::string key = folded(name);
  for (const auto& [other, own] : aliases)
    if (folded(other) == key) return folded(own);
  return key;
}

template <typename Table>
auto find_in(const Table& table, std::string_view name) -> const typename Table::value_type* {
  const std::string key = without_alias(name);
  const auto found = std::ranges::find_if(table, [&](const auto& row) { return folded(row.name) == key; });
  return found == table.end() ? nullptr : &*found;
}

}  // namespace

std::span<const Metal> metals() {
  return metal_table;
}
std::span<const Dielectric> dielectrics() {
  return dielectric_table;
}
std::span<const CoreMaterial> core_materials() {
  return core_table;
}
std::span<const CapacitorSort> capacitor_sorts() {
  return capacitor_table;
}
const CoreMaterial* find_core_material(std::string_view name) {
  return find_in(core_table, name);
}
const Metal* find_metal(std::string_view name) {
  return find_in(metal_table, name);
}
const Dielectric* find_dielectric(std::string_view name) {
  return find_in(dielectric_table, name);
}

}  // namespace wattfall::physics
