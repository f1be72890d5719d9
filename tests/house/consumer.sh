#!/bin/sh
# SPDX-License-Identifier: MIT
# Uses the library in one of the ways a user would, from an empty folder: builds a small program and runs it.
# Usage: consumer.sh WAY SOURCE_DIR EIGEN_DIR SCRATCH CMAKE GENERATOR COMPILER
# WAY: package, subproject, include_path, pkg_config, dependent, dependent_subproject
set -eu
way=$1 source=$2 eigen=$3 scratch=$4 cmake=$5 CMAKE_GENERATOR=$6 CXX=$7
export CMAKE_GENERATOR CXX
here=$source/tests/house
warnings="-Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wsign-conversion -Werror"
rm -rf "$scratch"
mkdir -p "$scratch"
cd "$scratch"

# install SOURCE [OPTION...]: builds nothing, installs into ./prefix, every header of this library as it is.
install() {
  from=$1
  build=build-$(basename "$from")
  shift
  "$cmake" -S "$from" -B "$build" -DCMAKE_INSTALL_PREFIX="$scratch/prefix" -DCMAKE_PREFIX_PATH="$scratch/prefix" \
    -DBAYWORK_BUILD_TESTS=OFF -DBAYWORK_BUILD_BENCH=OFF -DBAYWORK_BUILD_EXAMPLES=OFF "$@"
  "$cmake" --install "$build"
  diff -r "$source/include/baywork" prefix/include/baywork
}
# consume [OPTION...]: builds the consumer and runs it.
consume() {
  "$cmake" -S "$here/consumer" -B build-consumer -DCMAKE_PREFIX_PATH="$scratch/prefix" "$@"
  "$cmake" --build build-consumer
  build-consumer/consumer
}

case $way in
  package)
    install "$source"
    consume
    ;;
  subproject) consume -DBAYWORK_SOURCE="$source" ;;
  include_path)
    "$CXX" -std=c++20 -DWHOLE_LIBRARY $warnings "-I$source/include" -isystem "$eigen" "$here/consumer/main.cpp" -o consumer
    ./consumer
    ;;
  pkg_config)
    install "$source"
    PKG_CONFIG_PATH=$scratch/prefix/share/pkgconfig
    export PKG_CONFIG_PATH
    # Eigen is another's library: its folder is a system folder, so that the warnings are about ours alone.
    flags=$(pkg-config --cflags baywork | sed 's|-I\([^ ]*eigen\)|-isystem \1|')
    # shellcheck disable=SC2086
    "$CXX" -std=c++20 $warnings $flags "$here/consumer/main.cpp" -o consumer
    ./consumer
    ;;
  dependent)
    install "$source"
    install "$here/dependent"
    consume -DVIA=dependent
    ;;
  dependent_subproject)
    install "$here/dependent" -DBAYWORK_SOURCE="$source"
    consume -DVIA=dependent
    ;;
  *)
    echo "unknown way: $way"
    exit 1
    ;;
esac
