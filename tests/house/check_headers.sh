#!/bin/sh
# SPDX-License-Identifier: MIT
# Reads every source file below a root and reports what breaks the rules of check_headers.awk.
# Usage: check_headers.sh ROOT   (the folder that holds include/)
set -eu
rules=$(dirname "$0")/check_headers.awk
cd "$1"
find include tests bench examples \( -name '*.hpp' -o -name '*.cpp' \) -type f 2>/dev/null | sort | xargs awk -f "$rules"
