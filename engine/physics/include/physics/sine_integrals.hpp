// Sine and cosine integrals, as the impedances of thin wires need them.
//
//   Si(x) = int_0^x sin t/t dt,  Ci(x) = gamma + ln x - Cin(x),  Cin(x) = int_0^x (1 - cos t)/t dt
// Power series up to x = 4, beyond it the continued fraction of E1(jx) = -Ci(x) + j(Si(x) - pi/2). Source: Abramowitz
// and Stegun, Handbook of Mathematical Functions, 1964, 5.2.14, 5.2.16 and 5.1.22 (from memory). Absolute error below
// 1e-15, relative below 1e-13 away from the zeros of Ci. x >= 0.
#pragma once

namespace wattfall::physics {

double sine_integral(double x);
double cosine_integral(double x);         ///< minus infinity at 0
double entire_cosine_integral(double x);  ///< Cin, without cancellation at small x

}  // namespace wattfall::physics
