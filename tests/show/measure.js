// SPDX-License-Identifier: MIT
// Measures every text of every picture on the page; then nothing is on the page but what was found, as JSON.
"use strict";
const found = { pictures: 0, texts: 0, kinds: {}, girders: {}, faults: [] };
for (const section of document.querySelectorAll("section")) {
  const { kind, girder, bays } = section.dataset;
  const svg = section.querySelector("svg");
  const page = svg.viewBox.baseVal;
  const texts = [...svg.querySelectorAll("text")].map((t) => ({ words: t.textContent, box: t.getBBox() }));
  const fault = (what) => found.faults.push(`${kind}, girder ${girder} of ${bays} bays: ${what}`);
  found.pictures += 1;
  found.texts += texts.length;
  (found.kinds[kind] ||= new Set()).add(girder);
  found.girders[girder] = Number(bays);
  if (texts.length < 3) fault(`has ${texts.length} texts`);
  texts.sort((a, b) => a.box.y - b.box.y);
  texts.forEach((a, i) => {
    const { x, y, width, height } = a.box;
    if (!(width > 0) || !(height > 0)) fault(`"${a.words}" has no size`);
    if (x < 0 || y < 0 || x + width > page.width || y + height > page.height) fault(`"${a.words}" leaves the page`);
    for (let k = i + 1; k < texts.length && texts[k].box.y < y + height; k += 1) {
      const b = texts[k].box;
      if (b.x < x + width && x < b.x + b.width) fault(`"${a.words}" lies on "${texts[k].words}"`);
    }
  });
}
for (const kind of Object.keys(found.kinds)) found.kinds[kind] = found.kinds[kind].size;
const out = document.createElement("pre");
out.id = "found";
out.textContent = JSON.stringify(found);
document.body.replaceChildren(out);
