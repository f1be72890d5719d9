#!/bin/sh
# SPDX-License-Identifier: MIT
# Compiles every header by itself, then all of them in one file after macros that other people's headers define.
# Usage: headers_alone.sh WHICH COMPILER INCLUDE_DIR EIGEN_DIR SCRATCH WARNING...
# WHICH: "all" headers that a user may include are compiled alone, or the "public" ones (those of whole folders) only.
set -eu
which=$1 compiler=$2 include=$3 eigen=$4 scratch=$5
shift 5
mkdir -p "$scratch"

# One compiler run per header, two at a time; every failing header is named.
cat > "$scratch/one.sh" <<'END'
header=$1
shift
printf '#include <%s>\n' "$header" | "$@" -x c++ - || { echo "<$header> does not compile alone" >&2; exit 1; }
END
# Headers of json/ need a library that may not be there.
optional='^$'
printf '#include <nlohmann/json.hpp>\n' | "$compiler" -std=c++20 -fsyntax-only -x c++ - 2> /dev/null || optional='^baywork/json[./]'
(cd "$include" && find baywork -name '*.hpp' | grep -v "$optional" | sort) > "$scratch/headers"
grep -x 'baywork/[^/]*' "$scratch/headers" > "$scratch/public"
grep -v /detail/ "$scratch/headers" > "$scratch/all"
xargs -P 2 -I HEADER sh "$scratch/one.sh" HEADER \
  "$compiler" -std=c++20 -fsyntax-only "-I$include" -isystem "$eigen" "$@" < "$scratch/$which"

# Standard and Eigen headers come first: they are not ours to keep clear of these macros.
{
  (cd "$include" && xargs sed -n 's/^#include \(<[^>]*>\).*/#include \1/p' < "$scratch/headers") |
    grep -v '<baywork/' | sort -u
  for macro in 'min(...)' 'max(...)' 'isnan(...)' 'isinf(...)' 'isfinite(...)' I B0 M_PI; do
    printf '#undef %s\n#define %s this macro must not be used\n' "${macro%%(*}" "$macro"
  done
  sed 's/.*/#include <&>/' "$scratch/headers"
} > "$scratch/poisoned.cpp"
"$compiler" -std=c++20 -fsyntax-only "-I$include" -isystem "$eigen" "$@" "$scratch/poisoned.cpp"
