// SPDX-License-Identifier: MIT
// The main function of the test program; each topic is a file of its own beside this one.
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include <doctest/doctest.h>
