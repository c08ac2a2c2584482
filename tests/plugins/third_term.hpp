// Outside fits of cable tables by three terms, k0 + k1 sqrt(f) + k2 f (f in MHz, dB/100ft): least squares of the relative
// errors, free or with no term below zero. The product has two terms, so these differ from it; the test holds them
// against three terms of its own, which shows that the constant alone is the reason.
#pragma once

#include <cstddef>
#include <iterator>

#include "wattfall/sdk.hpp"

namespace checks {

struct ThirdTermRow {
  const char* id;
  const wattfall::sdk::LossPoint* points;  ///< MHz, dB/100ft
  std::size_t count;
  bool free;        ///< terms may be negative
  int coefficient;  ///< 0, 1, 2; 3: largest relative residual [%]
  double expected, tolerance;
};

inline constexpr wattfall::sdk::LossPoint third_1[] = {{50, 3.30}, {150, 6.10}, {450, 11.75}, {850, 17.75}};
inline constexpr wattfall::sdk::LossPoint third_2[] = {{50, 1.50}, {150, 2.70}, {450, 4.97}, {850, 7.53}};
inline constexpr wattfall::sdk::LossPoint third_3[] = {{50, 1.40}, {150, 2.60}, {450, 4.75}, {850, 6.50}};
inline constexpr wattfall::sdk::LossPoint third_4[] = {{1, 0.16}, {10, 0.55}, {50, 1.33}, {100, 1.9}, {200, 2.7}, {400, 4.1}, {1000, 8.0}};
inline constexpr wattfall::sdk::LossPoint third_5[] = {{1, 0.18}, {10, 0.60}, {50, 1.5}, {100, 2.1}, {200, 3.0}, {400, 4.7}, {1000, 8.2}};
inline constexpr wattfall::sdk::LossPoint third_6[] = {{1, 0.42}, {10, 1.4}, {50, 3.3}, {100, 4.9}, {200, 7.3}, {400, 11.0}, {1000, 20.0}};
inline constexpr wattfall::sdk::LossPoint third_7[] = {{1, 0.34}, {10, 1.1}, {50, 2.4}, {100, 3.4}, {200, 4.9}, {400, 7.0}, {1000, 12.0}};
inline constexpr wattfall::sdk::LossPoint third_8[] = {{1, 0.2}, {10, 0.6}, {50, 1.4}, {100, 2.0}, {200, 2.8}, {400, 4.3}, {1000, 6.1}};
inline constexpr wattfall::sdk::LossPoint third_9[] = {{1, 0.21}, {10, 0.66}, {50, 1.6}, {100, 2.3}, {200, 3.3}, {400, 4.9}, {1000, 8.0}};
inline constexpr wattfall::sdk::LossPoint third_10[] = {{1, 1.9}, {10, 3.3}, {50, 6.6}, {100, 8.9}, {200, 12.0}, {400, 17.5}, {1000, 31.0}};
inline constexpr wattfall::sdk::LossPoint third_11[] = {{1, 0.34}, {10, 1.1}, {50, 2.7}, {100, 3.9}, {200, 5.6}, {400, 8.2}, {1000, 13.5}};
inline constexpr wattfall::sdk::LossPoint third_12[] = {{1, 0.4}, {10, 1.2}, {50, 2.9}, {100, 4.1}, {200, 6.0}, {400, 8.8}, {1000, 14.5}};
inline constexpr wattfall::sdk::LossPoint third_13[] = {{1, 0.18}, {10, 0.6}, {50, 1.4}, {100, 2.1}, {200, 3.1}, {400, 4.5}, {1000, 7.6}};
inline constexpr wattfall::sdk::LossPoint third_14[] = {{10, 1.1}, {100, 3.5}, {400, 7.2}, {1000, 11.8}, {3000, 21.5}, {10000, 43.0}};
inline constexpr wattfall::sdk::LossPoint third_15[] = {{1, 0.09}, {10, 0.30}, {50, 0.75}, {100, 1.1}};
inline constexpr wattfall::sdk::LossPoint third_16[] = {{1, 0.02}, {10, 0.08}, {50, 0.21}, {100, 0.30}};

/// "independent computation with 40 digits", all of them.
inline constexpr ThirdTermRow third_term_rows[] = {
    {"CA-044", third_1, std::size(third_1), true, 2, 0.0067744786037411281, 6.775e-9},
    {"CA-045", third_1, std::size(third_1), true, 3, 0.24614372914934972, 0.001},
    {"CA-046", third_1, std::size(third_1), false, 0, 0.078842244727094418, 7.984e-8},
    {"CA-047", third_1, std::size(third_1), false, 1, 0.40783865096239408, 4.088e-7},
    {"CA-048", third_1, std::size(third_1), false, 2, 0.0067744786037411565, 7.774e-9},
    {"CA-054", third_2, std::size(third_2), true, 1, 0.17568831898001122, 1.757e-7},
    {"CA-055", third_2, std::size(third_2), true, 2, 0.0026188282598225656, 2.62e-9},
    {"CA-056", third_2, std::size(third_2), true, 3, 1.3254926160102614, 0.001},
    {"CA-058", third_2, std::size(third_2), false, 1, 0.17568831898001108, 1.767e-7},
    {"CA-059", third_2, std::size(third_2), false, 2, 0.0026188282598225698, 3.619e-9},
    {"CA-064", third_3, std::size(third_3), true, 0, -0.28532603175755729, 2.853e-7},
    {"CA-065", third_3, std::size(third_3), true, 1, 0.23937007289185068, 2.394e-7},
    {"CA-067", third_3, std::size(third_3), true, 3, 0.94399067082546282, 0.001},
    {"CA-087", third_4, std::size(third_4), true, 1, 0.16583711926188767, 1.658e-7},
    {"CA-088", third_4, std::size(third_4), true, 2, 0.0024049830985336146, 2.406e-9},
    {"CA-089", third_4, std::size(third_4), true, 3, 4.4764027227582215, 0.001},
    {"CA-102", third_5, std::size(third_5), true, 2, 0.0021758242324051504, 2.177e-9},
    {"CA-103", third_5, std::size(third_5), true, 3, 4.0947501617363859, 0.001},
    {"CA-114", third_6, std::size(third_6), true, 0, -0.010134088677880792, 1.014e-8},
    {"CA-118", third_6, std::size(third_6), false, 0, 0.0, 1.0e-9},
    {"CA-128", third_7, std::size(third_7), true, 0, 0.012282415760030216, 1.228e-8},
    {"CA-130", third_7, std::size(third_7), true, 2, 0.0013698771146906806, 1.371e-9},
    {"CA-131", third_7, std::size(third_7), true, 3, 3.1122959589840911, 0.001},
    {"CA-132", third_7, std::size(third_7), false, 0, 0.012282415760030054, 1.328e-8},
    {"CA-134", third_7, std::size(third_7), false, 2, 0.0013698771146906765, 2.37e-9},
    {"CA-142", third_8, std::size(third_8), true, 0, 0.00038724177231142817, 3.882e-10},
    {"CA-144", third_8, std::size(third_8), true, 2, 0.000097926799348213054, 9.893e-11},
    {"CA-146", third_8, std::size(third_8), false, 0, 0.00038724177231138349, 1.387e-9},
    {"CA-147", third_8, std::size(third_8), false, 1, 0.19726462391644353, 1.983e-7},
    {"CA-148", third_8, std::size(third_8), false, 2, 0.000097926799348211372, 1.098e-9},
    {"CA-156", third_9, std::size(third_9), true, 0, -0.0072416652039166423, 7.243e-9},
    {"CA-157", third_9, std::size(third_9), true, 1, 0.21422589289531451, 2.142e-7},
    {"CA-158", third_9, std::size(third_9), true, 2, 0.0013580779108601045, 1.359e-9},
    {"CA-160", third_9, std::size(third_9), false, 0, 0.0, 1.0e-9},
    {"CA-171", third_10, std::size(third_10), true, 1, 0.66825961302351306, 6.683e-7},
    {"CA-172", third_10, std::size(third_10), true, 2, 0.0082206192772618267, 8.222e-9},
    {"CA-173", third_10, std::size(third_10), true, 3, 3.8659745584591051, 0.001},
    {"CA-174", third_10, std::size(third_10), false, 0, 1.2085056756583776, 1.21e-6},
    {"CA-175", third_10, std::size(third_10), false, 1, 0.66825961302351267, 6.693e-7},
    {"CA-184", third_11, std::size(third_11), true, 0, -0.029284024407464335, 2.929e-8},
    {"CA-186", third_11, std::size(third_11), true, 2, 0.0022014395555419704, 2.202e-9},
    {"CA-188", third_11, std::size(third_11), false, 0, 0.0, 1.0e-9},
    {"CA-199", third_12, std::size(third_12), true, 1, 0.38109750566170725, 3.811e-7},
    {"CA-202", third_12, std::size(third_12), false, 0, 0.012880926235772801, 1.388e-8},
    {"CA-204", third_12, std::size(third_12), false, 2, 0.0026537953326016316, 3.654e-9},
    {"CA-212", third_13, std::size(third_13), true, 0, -0.014107142598937573, 1.411e-8},
    {"CA-214", third_13, std::size(third_13), true, 2, 0.0016526044703209725, 1.654e-9},
    {"CA-216", third_13, std::size(third_13), false, 0, 0.0, 1.0e-9},
    {"CA-226", third_14, std::size(third_14), true, 1, 0.34259380798144158, 3.426e-7},
    {"CA-227", third_14, std::size(third_14), true, 2, 0.00088675946914203451, 8.878e-10},
    {"CA-228", third_14, std::size(third_14), true, 3, 0.62147120455886846, 0.001},
    {"CA-229", third_14, std::size(third_14), false, 0, 0.0061394738027495642, 7.139e-9},
    {"CA-230", third_14, std::size(third_14), false, 1, 0.34259380798144173, 3.436e-7},
    {"CA-231", third_14, std::size(third_14), false, 2, 0.00088675946914203022, 1.887e-9},
    {"CA-237", third_15, std::size(third_15), true, 1, 0.088997819339171468, 8.9e-8},
    {"CA-247", third_16, std::size(third_16), true, 0, -0.0067547791384230501, 6.756e-9},
    {"CA-250", third_16, std::size(third_16), true, 3, 3.0982191132326139, 0.001},
    {"CA-251", third_16, std::size(third_16), false, 0, 0.0, 1.0e-9},
};

}  // namespace checks
