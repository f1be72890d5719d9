#!/bin/sh
# SPDX-License-Identifier: MIT
# Shows that check_headers.sh accepts a clean tree and finds each kind of breach when one is planted.
# Usage: check_headers_catches.sh SCRATCH
set -eu
here=$(cd "$(dirname "$0")" && pwd)
rm -rf "$1"
mkdir -p "$1"
cd "$1"

clean_tree() {
  rm -rf include
  mkdir -p include/baywork/core include/baywork/girder include/baywork/solve include/baywork/closed_form
  printf '// SPDX-License-Identifier: MIT\n#pragma once\n#include <cmath>\n' > include/baywork/core/a.hpp
  printf '// SPDX-License-Identifier: MIT\n#pragma once\n#include <baywork/core/a.hpp>\n' > include/baywork/girder/b.hpp
  printf '// SPDX-License-Identifier: MIT\n#pragma once\n#include <Eigen/Core>\n#include <baywork/girder/b.hpp>\n' \
    > include/baywork/solve/c.hpp
  cp include/baywork/girder/b.hpp include/baywork/closed_form/d.hpp
}

# plant FILE LINE WORDS: appends the line to a clean tree's file; the check must fail and say the words.
plant() {
  clean_tree
  mkdir -p "$(dirname "include/baywork/$1")"
  printf '%b\n' "$2" >> "include/baywork/$1"
  if sh "$here/check_headers.sh" . > said 2>&1; then
    echo "not caught in $1: $2"
    exit 1
  fi
  if ! grep -q -F "include/baywork/$1:" said || ! grep -q -F "$3" said; then
    echo "caught for another reason in $1: $2"
    cat said
    exit 1
  fi
}

clean_tree
printf '// using namespace std;\n/* #define A\n#include <Eigen/Core> */\nnamespace baywork {\ninline void f() {\n  %s\n}\n}\n' \
  'using namespace std;' >> include/baywork/core/a.hpp
sh "$here/check_headers.sh" .

plant core/a.hpp '#include <baywork/girder/b.hpp>' 'core may not include girder'
plant girder/b.hpp '#include <baywork/solve/c.hpp>' 'girder may not include solve'
plant girder/b.hpp '#  include <baywork/frame.hpp>' 'girder may not include frame'
plant closed_form/d.hpp '#include <baywork/solve/c.hpp>' 'closed_form may not include solve'
plant closed_form/d.hpp '#include <baywork/response.hpp>' 'closed_form may not include response'
plant girder/b.hpp '#include <Eigen/Core>' 'only solve/ may include Eigen'
plant girder/b.hpp '#include <unistd.h>' 'neither standard nor ours'
plant girder/b.hpp '#include <nlohmann/json.hpp>' 'neither standard nor ours'
plant girder/b.hpp '#include "c.hpp"' 'not written with <...>'
plant other/e.hpp '// SPDX-License-Identifier: MIT\n#pragma once' 'no place in the order'
plant core/a.hpp '#define PI 3' 'does not start with BAYWORK_'
plant core/a.hpp 'using namespace std;' 'at namespace scope'
plant core/a.hpp 'namespace baywork::detail\n{\nstruct A { int a; };\nusing namespace std;\n}' 'at namespace scope'
plant core/a.hpp '#pragma GCC diagnostic push' 'has no pop'
plant core/a.hpp '#pragma GCC diagnostic ignored "-Wshadow"' 'outside push and pop'
plant core/a.hpp "$(awk 'BEGIN { for (i = 0; i < 399; i++) print "// line" }')" 'more than 400 lines'

clean_tree
printf '// SPDX-License-Identifier: MIT\n' > include/baywork/core/a.hpp
if sh "$here/check_headers.sh" . > said; then echo "not caught: no #pragma once"; exit 1; fi
grep -q 'no #pragma once' said
clean_tree
printf '#pragma once\n' > include/baywork/core/a.hpp
if sh "$here/check_headers.sh" . > said; then echo "not caught: no licence line"; exit 1; fi
grep -q 'licence line' said
