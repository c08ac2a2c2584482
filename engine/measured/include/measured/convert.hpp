// Between scattering parameters and immittances, with a real reference resistance of its own for each port. Matrices
// are row-major N x N; currents flow into the ports.
//
// Every kind is a matrix M with y = M x, where x is the current or the voltage of each port and y the other one. With
// v = V / sqrt(R), i = I sqrt(R), a = (v + i)/2 and b = (v - i)/2 the normalised m gives b = D (m - 1)(m + 1)^-1 a,
// with D = +1 at ports where x is the current and -1 where it is the voltage; so S = D (m - 1)(m + 1)^-1 for all of
// them (derived from the definition of the waves: K. Kurokawa, "Power waves and the scattering matrix", IEEE Trans.
// MTT-13, 1965, for real references; cited from memory).
#pragma once

#include <complex>

namespace wattfall::measured {

enum class Immittance {
  impedance,       ///< V = Z I [ohm]
  admittance,      ///< I = Y V [siemens]
  hybrid,          ///< two-ports: V1, I2 from I1, V2
  inverse_hybrid,  ///< two-ports: I1, V2 from V1, I2
};

/// Z = R (1 + S)/(1 - S) [ohm]. S = 1 (an open end) gives (infinity, 0).
std::complex<double> impedance_from_reflection(std::complex<double> reflection, double reference_ohm);
/// S = (Z - R)/(Z + R). An infinite Z gives 1; Z = -R gives (infinity, 0).
std::complex<double> reflection_from_impedance(std::complex<double> impedance_ohm, double reference_ohm);
/// Y = (1 - S)/(1 + S)/R [siemens]. S = -1 (a short) gives (infinity, 0).
std::complex<double> admittance_from_reflection(std::complex<double> reflection, double reference_ohm);
/// S = (1 - R Y)/(1 + R Y). An infinite Y gives -1; Y = -1/R gives (infinity, 0).
std::complex<double> reflection_from_admittance(std::complex<double> admittance_s, double reference_ohm);

/// Turns the N x N `matrix` of the kind (in ohm and siemens) into S in place; `reference_ohm` has N values, the hybrid
/// kinds need N = 2. False where there is no S (an active network matched to -R); `matrix` is then undefined.
/// Cost O(N^3), no allocation for N <= 2.
bool to_scattering(Immittance from, int ports, const double* reference_ohm, std::complex<double>* matrix);

/// The other way: m = (1 - D S)^-1 (1 + D S). False where the network has no such matrix (a through has no Z and no Y,
/// an ideal transformer neither), found by a pivot that is rounding beside its row.
bool from_scattering(Immittance to, int ports, const double* reference_ohm, std::complex<double>* matrix);

/// As `to_scattering`, for a matrix already normalised: m_jk = M_jk s_j s_k, s = 1/sqrt(R) where x is the current and
/// sqrt(R) where it is the voltage.
bool to_scattering_normalised(Immittance from, int ports, std::complex<double>* matrix);

}  // namespace wattfall::measured
