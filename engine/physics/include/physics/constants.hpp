// The constants of free space that every model of this room shares. The magnetic constant is the rounded 4e-7 pi H/m of
// the SI before 2019: the 2018 CODATA value differs by less than 2e-10, and tables are printed with the round one.
#pragma once

#include <numbers>

namespace wattfall::physics {

inline constexpr double pi = std::numbers::pi;
inline constexpr double speed_of_light_m_per_s = 299792458.0;             ///< exact, SI 1983
inline constexpr double mu0_h_per_m = 4e-7 * pi;                          ///< magnetic constant, SI before 2019
inline constexpr double eta0_ohm = mu0_h_per_m * speed_of_light_m_per_s;  ///< wave impedance of free space
inline constexpr double eps0_f_per_m =
    1.0 / (mu0_h_per_m * speed_of_light_m_per_s * speed_of_light_m_per_s);  ///< electric constant
inline constexpr double decibels_per_neper = 8.685889638065036553;          ///< 20 / ln 10

}  // namespace wattfall::physics
