#!/bin/sh
# SPDX-License-Identifier: MIT
# Including the library leaves behind no macro but BAYWORK_..., and no changed warning.
# Usage: leaks.sh COMPILER INCLUDE_DIR EIGEN_DIR SCRATCH
set -eu
compiler=$1 include=$2 eigen=$3 scratch=$4
mkdir -p "$scratch"
compile() { "$compiler" -std=c++20 "-I$include" -isystem "$eigen" "$@"; }

# The standard and Eigen headers that the library includes, alone and then followed by the library. JSON's is not
# among what baywork.hpp includes, and may not be there.
(cd "$include" && find baywork -name '*.hpp' | sort | xargs sed -n 's/^#include \(<[^>]*>\).*/#include \1/p') |
  grep -v -e '<baywork/' -e '<nlohmann/' | sort -u > "$scratch/foreign.cpp"
{ cat "$scratch/foreign.cpp"; echo '#include <baywork/baywork.hpp>'; } > "$scratch/all.cpp"
compile -dM -E "$scratch/foreign.cpp" | sort > "$scratch/foreign.macros"
compile -dM -E "$scratch/all.cpp" | sort > "$scratch/all.macros"
if ! diff "$scratch/foreign.macros" "$scratch/all.macros" | grep '^[<>]' > "$scratch/changed" ||
  ! grep -q 'BAYWORK_VERSION_MAJOR' "$scratch/changed"; then
  echo "the comparison found not even the library's own macros"
  exit 1
fi
if grep -v '^> #define BAYWORK_' "$scratch/changed"; then
  echo "the library sets or unsets these macros"
  exit 1
fi

# Warnings that the library's headers could have switched off must still be given after them: each for its own line.
cat > "$scratch/warnings" << 'END'
conversion inline float narrowed(double x) { return x; }
shadow inline int hidden(int x) { int y = x; { int x = 1; y += x; } return y; }
sign-conversion inline unsigned resigned(int x) { return x; }
unused-parameter inline void ignored(int x) {}
END
{ echo '#include <baywork/baywork.hpp>'; sed 's/^[^ ]* //' "$scratch/warnings"; } > "$scratch/warned.cpp"
compile -fsyntax-only -Wall -Wextra -Wconversion -Wshadow -Wsign-conversion "$scratch/warned.cpp" 2> "$scratch/said"
number=1  # of the line that includes the library
while read -r warning line; do
  number=$((number + 1))
  if ! grep -q "warned.cpp:$number:.*-W.*$warning" "$scratch/said"; then
    echo "after the library, -W$warning is silent for: $line"
    cat "$scratch/said"
    exit 1
  fi
done < "$scratch/warnings"
