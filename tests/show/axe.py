# SPDX-License-Identifier: MIT
# Opens the demo's report in a browser and lets axe-core, a checker of accessibility, look at it: on wide and narrow
# pages, light and dark. First it must find the faults of a page that has some. Ends with 77, for "skipped", where the
# checker cannot be fetched.
#   axe.py DEMO CHROMIUM NPM SCRATCH
import pathlib
import shutil
import subprocess
import sys
import tarfile

from browser import found_in

demo, chromium, npm, scratch = sys.argv[1], sys.argv[2], sys.argv[3], pathlib.Path(sys.argv[4])
version = "4.14.1"
scratch.mkdir(parents=True, exist_ok=True)
package = scratch / f"axe-core-{version}.tgz"
if not package.exists():
    fetched = subprocess.run([npm, "pack", "--silent", f"axe-core@{version}"], cwd=scratch, capture_output=True, text=True)
    if fetched.returncode != 0 or not package.exists():
        print(f"SKIPPED: axe-core {version} could not be fetched: {fetched.stderr.strip()[-300:]}")
        sys.exit(77)
with tarfile.open(package) as files:
    axe = files.extractfile("package/axe.min.js").read().decode()

pages = scratch / "pages"
shutil.rmtree(pages, ignore_errors=True)
pages.mkdir()
subprocess.run([demo, "--out", str(pages)], check=True, capture_output=True)
report = (pages / "report.html").read_text()
run = """axe.run().then((found) => {
  const of = (v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 120)}: ${n.failureSummary.slice(0, 200)}`);
  const out = document.createElement("pre");
  out.id = "found";
  out.textContent = JSON.stringify({ faults: found.violations.flatMap(of), passes: found.passes.length });
  document.body.replaceChildren(out);
});"""


def found_on(name, text, width, dark=False):
    page = pages / f"{name}.html"
    script = "<script>" + axe.replace("</script", "<\\/script") + "</script><script>" + run + "</script>"
    page.write_text(text.replace("</body>", script + "</body>"))
    found = found_in(chromium, page, width, 900, "--virtual-time-budget=60000",
                     *(["--force-dark-mode", "--blink-settings=preferredColorScheme=0"] if dark else []))
    if found is None:
        sys.exit(f"{page}: the browser's checker said nothing")
    print(f"{name}: {found['passes']} rules hold, {len(found['faults'])} faults")
    return found


bad = report.replace('<html lang="en">', "<html>").replace("<main>", '<main><p style="color:#bbb">faint</p>')
rules = {fault.split(":")[0] for fault in found_on("faulty", bad, 1000)["faults"]}
if not {"html-has-lang", "color-contrast"} <= rules:
    sys.exit(f"faults that are there were not found: {rules}")
failed = False
for name, width, dark in (("wide", 1000, False), ("narrow", 360, False), ("dark", 1000, True)):
    found = found_on(name, report, width, dark)
    for fault in found["faults"][:20]:
        print("  " + fault)
    failed = failed or bool(found["faults"]) or found["passes"] < 10
sys.exit(1 if failed else 0)
