// SPDX-License-Identifier: MIT
// The smallest program of a user: it must build with every warning on, however the library was found.
#ifdef WHOLE_LIBRARY
#include <baywork/baywork.hpp>
#else
#include <baywork/solve.hpp>  // the folder that needs Eigen
#endif
#include <cstdio>

int main() {
  const baywork::Vec3<> span{3.0, 0.0, 4.0};
  std::printf("%s %g\n", baywork::version_text, baywork::length(span));
  return baywork::length(span) == 5.0 ? 0 : 1;
}
