#!/bin/sh
# SPDX-License-Identifier: MIT
# Compiles every header by itself, then all of them in one file after macros that other people's headers define.
# Usage: headers_alone.sh WHICH COMPILER INCLUDE_DIR EIGEN_DIR SCRATCH WARNING...
# WHICH: "all" headers are compiled alone, or none of them: "together".
#
# Most of a header is what it includes, and much of that is the same for many. So a few heads are precompiled, and a
# header is compiled after the first of them that it includes, itself or by what it includes; and headers of which each
# includes the one before it are compiled as one file, in that order: as few files as there can be. Nothing is let
# through: a header sees its own includes before its first declaration, with heads and others before it or without; and
# those that come before the head among them are compiled by themselves too.
set -eu
heads='baywork/verify/prove.hpp baywork/response/analysis.hpp baywork/girder/girder.hpp baywork/core/error.hpp'
which=$1 compiler=$2 include=$3 eigen=$4 scratch=$5
shift 5
rm -rf "$scratch"
mkdir -p "$scratch"

# Headers of json/ need a library that may not be there; the parts of the kernels are no headers of their own.
optional='^$'
printf '#include <nlohmann/json.hpp>\n' | "$compiler" -std=c++20 -fsyntax-only -x c++ - 2> /dev/null || optional='^baywork/json[./]'
(cd "$include" && find baywork -name '*.hpp' | grep -v "$optional" | sort) > "$scratch/headers"
: > "$scratch/together"
grep -v '/kernel_[a-z]*\.hpp$' "$scratch/headers" > "$scratch/all"

# "FILE HEAD" for each file of headers to compile, "-" for no head.
(cd "$include" && xargs grep -H '^#include <baywork/' < "$scratch/headers") |
  sed 's/^\([^:]*\):#include <\([^>]*\)>.*/\1 \2/' |
  awk -v heads="$heads" -v list="$scratch/$which" -v scratch="$scratch" '
    { includes[$1] = includes[$1] " " $2 }
    function reaches(from, head,    names, n, i) {
      if ((from, head) in known) return known[from, head]
      known[from, head] = 0
      n = split(includes[from], names, " ")
      for (i = 1; i <= n; i++) if (names[i] == head || reaches(names[i], head)) return known[from, head] = 1
      return 0
    }
    # Finds what comes after a header, moving what others have after them: a matching as large as there is.
    function follow(h,    i, next_one) {
      for (i = 1; i <= n; i++) {
        next_one = header[i]
        if (asked[next_one] == round || after[next_one] != after[h]) continue
        if (!reaches(next_one, h) || reaches(h, next_one)) continue
        asked[next_one] = round
        if (!(next_one in before) || follow(before[next_one])) {
          before[next_one] = h
          follower[h] = next_one
          return 1
        }
      }
      return 0
    }
    END {
      n_heads = split(heads, head, " ")
      while ((getline line < list) > 0) {
        header[++n] = line
        for (i = 1; i <= n_heads && !reaches(line, head[i]); i++);
        after[line] = i <= n_heads ? head[i] : "-"
      }
      for (round = 1; round <= n; round++) follow(header[round])
      for (i = 1; i <= n; i++) {
        if (header[i] in before) continue
        file = scratch "/alone_" ++files ".cpp"
        for (h = header[i]; h != ""; h = follower[h]) print "#include <" h ">" > file
        close(file)
        print file, after[header[i]]
      }
    }' > "$scratch/pairs"

# Standard and Eigen headers come first: they are not ours to keep clear of these macros.
{
  (cd "$include" && xargs sed -n 's/^#include \(<[^>]*>\).*/#include \1/p' < "$scratch/headers") |
    grep -v '<baywork/' | sort -u
  for macro in 'min(...)' 'max(...)' 'isnan(...)' 'isinf(...)' 'isfinite(...)' I B0 M_PI; do
    printf '#undef %s\n#define %s this macro must not be used\n' "${macro%%(*}" "$macro"
  done
  sed 's/.*/#include <&>/' "$scratch/headers"
} > "$scratch/poisoned.cpp"

# One compiler run per file, two at a time, the longest first; the headers of every failing one are named.
cat > "$scratch/one.sh" <<'END'
scratch=$1 file=${2% *} head=${2##* }
shift 2
after=
if [ "$head" != - ]; then after="-Winvalid-pch -include $scratch/$head"; fi
# shellcheck disable=SC2086  # two words or none
"$@" -fsyntax-only $after "$file" || {
  echo "does not compile: $(grep '<baywork/' "$file" | head -n 20)" >&2
  exit 1
}
END
cat > "$scratch/head.sh" <<'END'
scratch=$1 head=$2
shift 2
mkdir -p "$(dirname "$scratch/$head")"
printf '#include <%s>\n' "$head" > "$scratch/$head"
"$@" -x c++-header "$scratch/$head" -o "$scratch/$head.gch" || { echo "<$head> does not compile alone" >&2; exit 1; }
END
set -- "$compiler" -std=c++20 "-I$include" -isystem "$eigen" "$@"
sed 's/.* //; /^-$/d' "$scratch/pairs" | sort -u | xargs -P 2 -I HEAD sh "$scratch/head.sh" "$scratch" HEAD "$@"
{ echo "$scratch/poisoned.cpp -"; cat "$scratch/pairs"; } | xargs -P 2 -I PAIR sh "$scratch/one.sh" "$scratch" PAIR "$@"
rm -rf "$scratch/baywork"  # hundreds of megabytes
