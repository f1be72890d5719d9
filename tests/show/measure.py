# SPDX-License-Identifier: MIT
# Lets a browser measure the texts of all kinds of pictures: none lies on another, none leaves its page.
#   measure.py PICTURE_BOOK CHROMIUM SCRATCH GIRDERS
import pathlib
import shutil
import subprocess
import sys

from browser import found_in

book, chromium, scratch, girders = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3]), int(sys.argv[4])
shutil.rmtree(scratch, ignore_errors=True)
scratch.mkdir(parents=True)
subprocess.run([book, str(scratch), str(girders)], check=True)
shutil.copy(pathlib.Path(__file__).with_name("measure.js"), scratch)

failed = False
for width in (240, 360, 800, 1600):
    page = scratch / f"{width}.html"
    found = found_in(chromium, page, width, 800, "--timeout=60000")
    if found is None:
        sys.exit(f"{page}: the browser measured nothing")
    bays = sorted(found["girders"].values())
    print(f"{width} px: {found['pictures']} pictures of {len(bays)} girders of {bays[0]} to {bays[-1]} bays, "
          f"{found['texts']} texts, {len(found['faults'])} faults")
    for kind, count in found["kinds"].items():
        if kind not in ("panel", "interaction", "hoists") and count < girders:
            print(f"  only {count} girders have a picture of the kind: {kind}")
            failed = True
    if len(found["kinds"]) < 18 or bays[0] > 4 or bays[-1] < 60:
        print("  too few kinds of pictures, or too few lengths of girders")
        failed = True
    for fault in found["faults"][:40]:
        print("  " + fault)
    failed = failed or bool(found["faults"])
sys.exit(1 if failed else 0)
