// SPDX-License-Identifier: MIT
// Compiled with -fno-exceptions: a computation runs, and a fault says its message and stops the program.
#include <baywork/baywork.hpp>
#include <csignal>
#include <cstdio>
#include <cstdlib>

int main() {
  const baywork::Vec3<> diagonal{3.0, 4.0, 0.0};
  if (baywork::length(diagonal) != 5.0) {
    std::puts("wrong result");
    return 1;
  }
  // The abort that must follow is this test's good end; ctest looks for the message itself.
  std::signal(SIGABRT, [](int) { std::_Exit(0); });
  baywork::require::positive(-1.0, "bay 3", "wall thickness");
  std::puts("went on after a fault");
  return 1;
}
