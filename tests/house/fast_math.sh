#!/bin/sh
# SPDX-License-Identifier: MIT
# The solver compiles as it is, and refuses -ffast-math in words: error bounds mean nothing under it.
# Usage: fast_math.sh COMPILER INCLUDE_DIR EIGEN_DIR
set -eu
compiler=$1 include=$2 eigen=$3
compile() {
  echo '#include <baywork/solve.hpp>' |
    "$compiler" -std=c++20 -fsyntax-only "-I$include" -isystem "$eigen" "$@" -x c++ - 2>&1
}

compile
if said=$(compile -ffast-math); then
  echo "-ffast-math is taken without a word"
  exit 1
fi
if ! echo "$said" | grep 'error' | grep -q 'fast-math'; then
  echo "refused, but not for -ffast-math:"
  echo "$said"
  exit 1
fi
