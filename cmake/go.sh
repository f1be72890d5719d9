#!/bin/sh
# SPDX-License-Identifier: MIT
# From a bare machine to a result, without questions:
#   sh cmake/go.sh demo [ARGUMENT...]   builds examples/screen_girder and runs it with the arguments
#   sh cmake/go.sh test                 builds all and runs all tests
# Uses what is there; CXX names another compiler. On Debian and its kin, what is missing is installed with apt-get.
set -eu
cd "$(dirname "$0")/.."

usage() {
  echo "usage: sh cmake/go.sh demo [ARGUMENT...] | test" >&2
  exit 2
}
[ $# -ge 1 ] || usage
task=$1
shift
case $task in
  demo) ;;
  test) [ $# -eq 0 ] || usage ;;
  *) usage ;;
esac

say() { echo "go: $*" >&2; }
have() { command -v "$1" > /dev/null 2>&1; }

# header FILE: FILE lies below the include folder of a usual prefix or of one in CMAKE_PREFIX_PATH.
header() {
  file=$1
  for prefix in /usr /usr/local $(echo "${CMAKE_PREFIX_PATH:-}" | tr ':;' '  '); do
    [ -f "$prefix/include/$file" ] || [ -f "$prefix/include/eigen3/$file" ] || continue
    return 0
  done
  return 1
}

# CXX may carry arguments ("ccache g++"); its first word is the program.
if [ -n "${CXX:-}" ] && ! have "${CXX%% *}"; then
  say "CXX is \"$CXX\", which is not there"
  exit 1
fi
compiler() { [ -n "${CXX:-}" ] || have c++ || have g++ || have clang++; }

# Debian's names of the packages without which the task cannot be done, and of those that only add to it.
needed() {
  have cmake || echo cmake
  compiler || echo g++
  have ninja || have make || echo ninja-build
  header Eigen/Core || echo libeigen3-dev
  [ "$task" = demo ] || header doctest/doctest.h || echo doctest-dev
}
welcome() {
  [ "$task" = test ] || return 0
  header benchmark/benchmark.h || echo libbenchmark-dev
  have pkg-config || echo pkg-config
  header libxml2/libxml/parser.h || echo libxml2-dev
  header nlohmann/json.hpp || echo nlohmann-json3-dev
  /usr/bin/python3 -c 'import jsonschema' > /dev/null 2>&1 || echo python3-jsonschema
  have clang++ || echo clang
  set -- /usr/lib/llvm-*/lib/clang/*/lib/linux/libclang_rt.fuzzer-*
  [ -e "$1" ] || echo libclang-rt-dev
  /usr/bin/python3 -c 'import getfem' > /dev/null 2>&1 || echo python3-getfem
  # a browser measures the pictures' texts, in a font that it must have
  have chromium || have chromium-browser || have google-chrome || echo chromium fonts-dejavu-core
}

apt() {
  set -- env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=120 "$@"
  if [ "$(id -u)" != 0 ]; then set -- sudo -n "$@"; fi
  "$@" > /dev/null
}

missing=$(needed)
optional=$(welcome)
if [ -n "$missing$optional" ] && have apt-get; then
  say "installing with apt-get:" $missing $optional
  apt update || say "apt-get update failed; trying with the lists that are there"
  # shellcheck disable=SC2086  # lists of words
  if [ -n "$missing" ]; then apt install --no-install-recommends $missing || true; fi
  for package in $optional; do
    apt install --no-install-recommends "$package" || say "going on without $package"
  done
  missing=$(needed)
fi
if [ -n "$missing" ]; then
  say "these are missing (Debian's package names):" $missing
  say "please install them and start again"
  exit 1
fi
if [ -z "${CXX:-}" ] && ! have c++; then
  if have g++; then CXX=g++; else CXX=clang++; fi
  export CXX
fi

jobs=$(getconf _NPROCESSORS_ONLN 2> /dev/null || echo 2)
build=build-$task

# configure OPTION...: a build folder keeps the generator it was made with.
configure() {
  if [ ! -f "$build/CMakeCache.txt" ] && have ninja; then set -- -G Ninja "$@"; fi
  cmake -S . -B "$build" -DCMAKE_BUILD_TYPE=Release "$@"
}

if [ "$task" = demo ]; then
  {
    configure -DBAYWORK_BUILD_TESTS=OFF -DBAYWORK_BUILD_BENCH=OFF -DBAYWORK_BUILD_EXAMPLES=ON
    cmake --build "$build" --target screen_girder
  } >&2
  exec "$build/examples/screen_girder" "$@"
fi

configure -DBAYWORK_BUILD_TESTS=ON -DBAYWORK_BUILD_BENCH=ON -DBAYWORK_BUILD_EXAMPLES=ON
cmake --build "$build" -j "$jobs"
exec ctest --test-dir "$build" --output-on-failure --no-tests=error -j "$jobs"
