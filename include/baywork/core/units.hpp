// SPDX-License-Identifier: MIT
// SI literals: every number inside the library is in m, N, Pa, kg, rad, K.
#pragma once

namespace baywork::literals {

#define BAYWORK_UNIT(suffix, factor)                                                                              \
  constexpr double operator""_##suffix(long double v) { return static_cast<double>(v * (factor)); }               \
  constexpr double operator""_##suffix(unsigned long long v) {                                                    \
    return static_cast<double>(static_cast<long double>(v) * (factor));                                           \
  }

BAYWORK_UNIT(m, 1.0L)
BAYWORK_UNIT(cm, 0.01L)
BAYWORK_UNIT(mm, 0.001L)
BAYWORK_UNIT(N, 1.0L)
BAYWORK_UNIT(kN, 1e3L)
BAYWORK_UNIT(Nm, 1.0L)
BAYWORK_UNIT(kNm, 1e3L)
BAYWORK_UNIT(N_per_m, 1.0L)
BAYWORK_UNIT(kN_per_m, 1e3L)
BAYWORK_UNIT(Pa, 1.0L)
BAYWORK_UNIT(kPa, 1e3L)
BAYWORK_UNIT(MPa, 1e6L)
BAYWORK_UNIT(GPa, 1e9L)
BAYWORK_UNIT(kg, 1.0L)
BAYWORK_UNIT(K, 1.0L)
BAYWORK_UNIT(rad, 1.0L)
BAYWORK_UNIT(deg, 3.14159265358979323846264338327950288L / 180.0L)

#undef BAYWORK_UNIT

}  // namespace baywork::literals
