# SPDX-License-Identifier: MIT
# What a page's own script has found, which it leaves for a test to read; nothing where it left nothing.
import html
import json
import re
import subprocess


def found_in(chromium, page, width, height, *options):
    dom = subprocess.run(
        [chromium, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={page.parent / 'profile'}",
         f"--window-size={width},{height}", *options, "--dump-dom", page.resolve().as_uri()],
        check=True, capture_output=True, text=True).stdout
    match = re.search(r'<pre id="found">(.*?)</pre>', dom, re.S)
    return json.loads(html.unescape(match.group(1))) if match else None
