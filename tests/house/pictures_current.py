# SPDX-License-Identifier: MIT
# The README's pictures are what the gallery draws now: the same texts, the same lines to drawing precision.
#   pictures_current.py ROOT GALLERY SCRATCH
import math
import pathlib
import re
import subprocess
import sys

root, gallery, scratch = pathlib.Path(sys.argv[1]), sys.argv[2], pathlib.Path(sys.argv[3])
subprocess.run([gallery, str(scratch)], check=True, stdout=subprocess.DEVNULL)
number = re.compile(r"-?[0-9]+(?:[.][0-9]+)?(?:e[-+]?[0-9]+)?")
stale = []
for committed, drawn in (("moments", "box-moments-in-plane"), ("panel", "box-panel"), ("utilisation", "box-utilisation")):
    old = (root / "docs" / f"{committed}.svg").read_text(encoding="utf-8").splitlines()
    new = (scratch / f"{drawn}.svg").read_text(encoding="utf-8").splitlines()
    same = len(old) == len(new)
    for a, b in zip(old, new):
        # another processor rounds its last digits otherwise: half a hundredth of a px may fall to either side
        same = same and number.sub("#", a) == number.sub("#", b) and all(
            math.isclose(float(x), float(y), rel_tol=1e-6, abs_tol=0.011)
            for x, y in zip(number.findall(a), number.findall(b)))
        same = same and (a == b or "<text" not in a or a[a.index(">"):] == b[b.index(">"):])
    if not same:
        stale.append(f"docs/{committed}.svg")
if stale:
    sys.exit(f"not what the gallery draws: {', '.join(stale)}; the target `pictures` draws them again")
