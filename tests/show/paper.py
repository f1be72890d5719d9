# SPDX-License-Identifier: MIT
# Opens the demo's report with the rules it has for print, as wide as A4 between its margins: nothing is wider, or a
# browser shrinks the whole report until its numbers cannot be read; no picture is taller than a page. First it must find
# the faults of a page that has some.
#   paper.py DEMO CHROMIUM SCRATCH
import pathlib
import shutil
import subprocess
import sys

from browser import found_in

demo, chromium, scratch = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
shutil.rmtree(scratch, ignore_errors=True)
scratch.mkdir(parents=True)
subprocess.run([demo, "--out", str(scratch)], check=True, capture_output=True)
report = (scratch / "report.html").read_text()
assert "@page{size:A4;margin:15mm}" in report and report.count("@media print{") == 2
px = 96 / 25.4
run = f"""<script>
const found = {{ seen: 0, faults: [] }};
for (const e of document.querySelectorAll("table,pre,svg,p,li,h1,h2,h3")) {{
  const b = e.getBoundingClientRect();
  found.seen += 1;
  const name = e.tagName + " " + e.textContent.slice(0, 60);
  if (b.right > {180 * px + 0.5}) found.faults.push("too wide: " + name);
  if (e.tagName === "svg" && b.height > {267 * px}) found.faults.push("too tall: " + name);
}}
const out = document.createElement("pre");
out.id = "found";
out.textContent = JSON.stringify(found);
document.body.replaceChildren(out);
</script>"""


def found_on(name, text):
    page = scratch / f"{name}.html"
    page.write_text(text.replace("@media print{", "@media all{").replace("</body>", run + "</body>"))
    found = found_in(chromium, page, round(180 * px), 900, "--hide-scrollbars", "--timeout=60000")
    if found is None:
        sys.exit(f"{page}: the browser measured nothing")
    print(f"{name}: {found['seen']} parts, {len(found['faults'])} faults")
    return found


bad = found_on("faulty", report.replace("<td>", "<td>" + 100 * "x", 1).replace("max-height:235mm", "").replace(
    'height="', 'height="2000" data-was="'))
kinds = {fault.split(":")[0] for fault in bad["faults"]}
if kinds != {"too wide", "too tall"}:
    sys.exit(f"faults that are there were not found: {kinds}")
found = found_on("report", report)
for fault in found["faults"]:
    print("  " + fault)
sys.exit(1 if found["faults"] or found["seen"] < 100 else 0)
