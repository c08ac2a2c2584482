// Outside check values of loss laws with a constant, k0 + k1 sqrt(f) + k2 f: the default model has no constant (a line
// without one loses nothing at 0 Hz, and the language says so), but the least squares behind its fit take any columns,
// and these rows hold them with a column of ones. Points and coefficients are the reference's, in dB/100ft and MHz.
#pragma once

#include <span>

#include "checks.hpp"

namespace checks {

struct LossAt {
  double mhz, db_per_100ft;
};

enum class Sign { free, not_negative };
enum class Fitted { k0, k1, k2, residual_percent };

struct ThreeTermRow {
  const char* id;
  std::span<const LossAt> points;
  Sign sign;
  Fitted figure;
  double expected, tolerance;
  Status status;
  const char* source;
};

inline constexpr const char* normal_equations = "40-digit computation: normal equations";
inline constexpr const char* nnls = "40-digit computation: NNLS";

// clang-format off

inline constexpr LossAt law_1[] = {{50, 3.30}, {150, 6.10}, {450, 11.75}, {850, 17.75}};  // RG-58C/U
inline constexpr LossAt law_2[] = {{50, 1.50}, {150, 2.70}, {450, 4.97}, {850, 7.53}};  // RG-213/U
inline constexpr LossAt law_3[] = {{50, 1.40}, {150, 2.60}, {450, 4.75}, {850, 6.50}};  // RG-393/U
inline constexpr LossAt law_4[] = {{1, 0.16}, {10, 0.55}, {50, 1.33}, {100, 1.9}, {200, 2.7}, {400, 4.1}, {1000, 8.0}};  // RG-8A/U
inline constexpr LossAt law_5[] = {{1, 0.18}, {10, 0.60}, {50, 1.5}, {100, 2.1}, {200, 3.0}, {400, 4.7}, {1000, 8.2}};  // RG-213/U nominal
inline constexpr LossAt law_6[] = {{1, 0.42}, {10, 1.4}, {50, 3.3}, {100, 4.9}, {200, 7.3}, {400, 11.0}, {1000, 20.0}};  // RG-58C/U nominal
inline constexpr LossAt law_7[] = {{1, 0.34}, {10, 1.1}, {50, 2.4}, {100, 3.4}, {200, 4.9}, {400, 7.0}, {1000, 12.0}};  // RG-59B/U
inline constexpr LossAt law_8[] = {{1, 0.2}, {10, 0.6}, {50, 1.4}, {100, 2.0}, {200, 2.8}, {400, 4.3}, {1000, 6.1}};  // RG-6 (foam, 75 ohm)
inline constexpr LossAt law_9[] = {{1, 0.21}, {10, 0.66}, {50, 1.6}, {100, 2.3}, {200, 3.3}, {400, 4.9}, {1000, 8.0}};  // RG-11A/U
inline constexpr LossAt law_10[] = {{1, 1.9}, {10, 3.3}, {50, 6.6}, {100, 8.9}, {200, 12.0}, {400, 17.5}, {1000, 31.0}};  // RG-174/U
inline constexpr LossAt law_11[] = {{1, 0.34}, {10, 1.1}, {50, 2.7}, {100, 3.9}, {200, 5.6}, {400, 8.2}, {1000, 13.5}};  // RG-142B/U
inline constexpr LossAt law_12[] = {{1, 0.4}, {10, 1.2}, {50, 2.9}, {100, 4.1}, {200, 6.0}, {400, 8.8}, {1000, 14.5}};  // RG-400/U
inline constexpr LossAt law_13[] = {{1, 0.18}, {10, 0.6}, {50, 1.4}, {100, 2.1}, {200, 3.1}, {400, 4.5}, {1000, 7.6}};  // RG-393/U nominal
inline constexpr LossAt law_14[] = {{10, 1.1}, {100, 3.5}, {400, 7.2}, {1000, 11.8}, {3000, 21.5}, {10000, 43.0}};  // M17/130 semi-rigid 0.141
inline constexpr LossAt law_15[] = {{1, 0.09}, {10, 0.30}, {50, 0.75}, {100, 1.1}};  // 300 ohm ribbon (nominal)
inline constexpr LossAt law_16[] = {{1, 0.02}, {10, 0.08}, {50, 0.21}, {100, 0.30}};  // 450 ohm window line (nominal)

inline constexpr ThreeTermRow three_term_rows[] = {
    {"CA-044", law_1, Sign::free, Fitted::k2, 0.0067744786037411281, 6.775e-9, Status::computed, normal_equations},
    {"CA-045", law_1, Sign::free, Fitted::residual_percent, 0.24614372914934972, 0.001, Status::computed, normal_equations},
    {"CA-046", law_1, Sign::not_negative, Fitted::k0, 0.078842244727094418, 7.984e-8, Status::computed, nnls},
    {"CA-047", law_1, Sign::not_negative, Fitted::k1, 0.40783865096239408, 4.088e-7, Status::computed, nnls},
    {"CA-048", law_1, Sign::not_negative, Fitted::k2, 0.0067744786037411565, 7.774e-9, Status::computed, nnls},
    {"CA-054", law_2, Sign::free, Fitted::k1, 0.17568831898001122, 1.757e-7, Status::computed, normal_equations},
    {"CA-055", law_2, Sign::free, Fitted::k2, 0.0026188282598225656, 2.62e-9, Status::computed, normal_equations},
    {"CA-056", law_2, Sign::free, Fitted::residual_percent, 1.3254926160102614, 0.001, Status::computed, normal_equations},
    {"CA-058", law_2, Sign::not_negative, Fitted::k1, 0.17568831898001108, 1.767e-7, Status::computed, nnls},
    {"CA-059", law_2, Sign::not_negative, Fitted::k2, 0.0026188282598225698, 3.619e-9, Status::computed, nnls},
    {"CA-064", law_3, Sign::free, Fitted::k0, -0.28532603175755729, 2.853e-7, Status::computed, normal_equations},
    {"CA-065", law_3, Sign::free, Fitted::k1, 0.23937007289185068, 2.394e-7, Status::computed, normal_equations},
    {"CA-067", law_3, Sign::free, Fitted::residual_percent, 0.94399067082546282, 0.001, Status::computed, normal_equations},
    {"CA-087", law_4, Sign::free, Fitted::k1, 0.16583711926188767, 1.658e-7, Status::computed, normal_equations},
    {"CA-088", law_4, Sign::free, Fitted::k2, 0.0024049830985336146, 2.406e-9, Status::computed, normal_equations},
    {"CA-089", law_4, Sign::free, Fitted::residual_percent, 4.4764027227582215, 0.001, Status::computed, normal_equations},
    {"CA-102", law_5, Sign::free, Fitted::k2, 0.0021758242324051504, 2.177e-9, Status::computed, normal_equations},
    {"CA-103", law_5, Sign::free, Fitted::residual_percent, 4.0947501617363859, 0.001, Status::computed, normal_equations},
    {"CA-114", law_6, Sign::free, Fitted::k0, -0.010134088677880792, 1.014e-8, Status::computed, normal_equations},
    {"CA-118", law_6, Sign::not_negative, Fitted::k0, 0.0, 1.0e-9, Status::computed, nnls},
    {"CA-128", law_7, Sign::free, Fitted::k0, 0.012282415760030216, 1.228e-8, Status::computed, normal_equations},
    {"CA-130", law_7, Sign::free, Fitted::k2, 0.0013698771146906806, 1.371e-9, Status::computed, normal_equations},
    {"CA-131", law_7, Sign::free, Fitted::residual_percent, 3.1122959589840911, 0.001, Status::computed, normal_equations},
    {"CA-132", law_7, Sign::not_negative, Fitted::k0, 0.012282415760030054, 1.328e-8, Status::computed, nnls},
    {"CA-134", law_7, Sign::not_negative, Fitted::k2, 0.0013698771146906765, 2.37e-9, Status::computed, nnls},
    {"CA-142", law_8, Sign::free, Fitted::k0, 0.00038724177231142817, 3.882e-10, Status::computed, normal_equations},
    {"CA-144", law_8, Sign::free, Fitted::k2, 0.000097926799348213054, 9.893e-11, Status::computed, normal_equations},
    {"CA-146", law_8, Sign::not_negative, Fitted::k0, 0.00038724177231138349, 1.387e-9, Status::computed, nnls},
    {"CA-147", law_8, Sign::not_negative, Fitted::k1, 0.19726462391644353, 1.983e-7, Status::computed, nnls},
    {"CA-148", law_8, Sign::not_negative, Fitted::k2, 0.000097926799348211372, 1.098e-9, Status::computed, nnls},
    {"CA-156", law_9, Sign::free, Fitted::k0, -0.0072416652039166423, 7.243e-9, Status::computed, normal_equations},
    {"CA-157", law_9, Sign::free, Fitted::k1, 0.21422589289531451, 2.142e-7, Status::computed, normal_equations},
    {"CA-158", law_9, Sign::free, Fitted::k2, 0.0013580779108601045, 1.359e-9, Status::computed, normal_equations},
    {"CA-160", law_9, Sign::not_negative, Fitted::k0, 0.0, 1.0e-9, Status::computed, nnls},
    {"CA-171", law_10, Sign::free, Fitted::k1, 0.66825961302351306, 6.683e-7, Status::computed, normal_equations},
    {"CA-172", law_10, Sign::free, Fitted::k2, 0.0082206192772618267, 8.222e-9, Status::computed, normal_equations},
    {"CA-173", law_10, Sign::free, Fitted::residual_percent, 3.8659745584591051, 0.001, Status::computed, normal_equations},
    {"CA-174", law_10, Sign::not_negative, Fitted::k0, 1.2085056756583776, 1.21e-6, Status::computed, nnls},
    {"CA-175", law_10, Sign::not_negative, Fitted::k1, 0.66825961302351267, 6.693e-7, Status::computed, nnls},
    {"CA-184", law_11, Sign::free, Fitted::k0, -0.029284024407464335, 2.929e-8, Status::computed, normal_equations},
    {"CA-186", law_11, Sign::free, Fitted::k2, 0.0022014395555419704, 2.202e-9, Status::computed, normal_equations},
    {"CA-188", law_11, Sign::not_negative, Fitted::k0, 0.0, 1.0e-9, Status::computed, nnls},
    {"CA-199", law_12, Sign::free, Fitted::k1, 0.38109750566170725, 3.811e-7, Status::computed, normal_equations},
    {"CA-202", law_12, Sign::not_negative, Fitted::k0, 0.012880926235772801, 1.388e-8, Status::computed, nnls},
    {"CA-204", law_12, Sign::not_negative, Fitted::k2, 0.0026537953326016316, 3.654e-9, Status::computed, nnls},
    {"CA-212", law_13, Sign::free, Fitted::k0, -0.014107142598937573, 1.411e-8, Status::computed, normal_equations},
    {"CA-214", law_13, Sign::free, Fitted::k2, 0.0016526044703209725, 1.654e-9, Status::computed, normal_equations},
    {"CA-216", law_13, Sign::not_negative, Fitted::k0, 0.0, 1.0e-9, Status::computed, nnls},
    {"CA-226", law_14, Sign::free, Fitted::k1, 0.34259380798144158, 3.426e-7, Status::computed, normal_equations},
    {"CA-227", law_14, Sign::free, Fitted::k2, 0.00088675946914203451, 8.878e-10, Status::computed, normal_equations},
    {"CA-228", law_14, Sign::free, Fitted::residual_percent, 0.62147120455886846, 0.001, Status::computed, normal_equations},
    {"CA-229", law_14, Sign::not_negative, Fitted::k0, 0.0061394738027495642, 7.139e-9, Status::computed, nnls},
    {"CA-230", law_14, Sign::not_negative, Fitted::k1, 0.34259380798144173, 3.436e-7, Status::computed, nnls},
    {"CA-231", law_14, Sign::not_negative, Fitted::k2, 0.00088675946914203022, 1.887e-9, Status::computed, nnls},
    {"CA-237", law_15, Sign::free, Fitted::k1, 0.088997819339171468, 8.9e-8, Status::computed, normal_equations},
    {"CA-247", law_16, Sign::free, Fitted::k0, -0.0067547791384230501, 6.756e-9, Status::computed, normal_equations},
    {"CA-250", law_16, Sign::free, Fitted::residual_percent, 3.0982191132326139, 0.001, Status::computed, normal_equations},
    {"CA-251", law_16, Sign::not_negative, Fitted::k0, 0.0, 1.0e-9, Status::computed, nnls},
};
// clang-format on

}  // namespace checks
