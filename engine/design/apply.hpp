// One operation of the language's arithmetic on numbers whose dimensions were checked before.
#pragma once

#include <complex>

#include "design/value.hpp"

namespace wattfall::design {

/// Functions of one operand, and `negate`.
std::complex<double> apply(Formula::Op op, std::complex<double> x);
/// `add` ... `power`, `min`, `max`; the last two look at real parts.
std::complex<double> apply(Formula::Op op, std::complex<double> a, std::complex<double> b);

}  // namespace wattfall::design
