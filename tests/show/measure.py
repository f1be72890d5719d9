# SPDX-License-Identifier: MIT
# Lets a browser measure the texts of all kinds of pictures: none lies on another, none leaves its page.
#   measure.py PICTURE_BOOK CHROMIUM SCRATCH GIRDERS
import html
import json
import pathlib
import re
import shutil
import subprocess
import sys

book, chromium, scratch, girders = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3]), int(sys.argv[4])
shutil.rmtree(scratch, ignore_errors=True)
scratch.mkdir(parents=True)
subprocess.run([book, str(scratch), str(girders)], check=True)
shutil.copy(pathlib.Path(__file__).with_name("measure.js"), scratch)

failed = False
for width in (240, 360, 800, 1600):
    page = scratch / f"{width}.html"
    dom = subprocess.run(
        [chromium, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={scratch / 'profile'}",
         f"--window-size={width},800", "--timeout=60000", "--dump-dom", page.resolve().as_uri()],
        check=True, capture_output=True, text=True).stdout
    match = re.search(r'<pre id="found">(.*?)</pre>', dom, re.S)
    if not match:
        sys.exit(f"{page}: the browser measured nothing")
    found = json.loads(html.unescape(match.group(1)))
    bays = sorted(found["girders"].values())
    print(f"{width} px: {found['pictures']} pictures of {len(bays)} girders of {bays[0]} to {bays[-1]} bays, "
          f"{found['texts']} texts, {len(found['faults'])} faults")
    for kind, count in found["kinds"].items():
        if kind not in ("panel", "interaction", "hoists") and count < girders:
            print(f"  only {count} girders have a picture of the kind: {kind}")
            failed = True
    if len(found["kinds"]) < 18 or bays[0] > 4 or bays[-1] < 40:
        print("  too few kinds of pictures, or too few lengths of girders")
        failed = True
    for fault in found["faults"][:40]:
        print("  " + fault)
    failed = failed or bool(found["faults"])
sys.exit(1 if failed else 0)
