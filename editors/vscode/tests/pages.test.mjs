// What the windows show: nothing of a recipe is lost, and nothing of it is taken for markup.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { test } from "node:test";

import { source } from "./source.mjs";
import { COMMAND } from "./server.mjs";

const { takeApart } = source("panel/sections.ts");
const { escaped, page } = source("panel/html.ts");
const { sheetHtml } = source("panel/markdown.ts");

test("a page of text comes apart and nothing is lost", () => {
  const [command, ...args] = COMMAND.slice(0, -1);
  for (const name of ["harbour-dusk", "three-trays", "soak-strength-trial", "printed-fern"]) {
    const file = fileURLToPath(new URL(`../../../tests/recipes/${name}.dye`, import.meta.url));
    const text = execFileSync(command, [...args, "totals", file], { encoding: "utf8" });
    const { title, about, sections } = takeApart(text);
    assert.ok(title.length > 0 && sections.length >= 3, name);
    const squeezed = (it) => it.replace(/[\s─]+/g, "");
    assert.equal(squeezed([title, about, ...sections.flatMap((section) => [section.heading, section.text])].join("")), squeezed(text), name);
  }
});

test("sections keep their columns", () => {
  const { title, about, sections } = takeApart("Tide\n────\nA word.\n\nGoods\n        pieces\n  tees       6\n\nWater\n  8 L\n");
  assert.equal(title, "Tide");
  assert.equal(about, "A word.");
  assert.deepEqual(sections, [{ heading: "Goods", text: "      pieces\ntees       6" }, { heading: "Water", text: "8 L" }]);
  assert.deepEqual(takeApart(""), { title: "", about: "", sections: [] });
});

test("hostile words stay words", () => {
  const hostile = `<img src=x onerror=alert(1)><script>1</script>&"'`;
  assert.doesNotMatch(escaped(hostile), /[<>"']/);
  for (const text of [hostile, `- [ ] ${hostile}`, `# ${hostile}`, `[a](javascript:alert(1))`, `![a](http://example.invalid/x.png)`, `<http://example.invalid>`, `[r]: javascript:1\n\n[r]`]) {
    const html = sheetHtml(text);
    assert.doesNotMatch(html, /<(?!\/?(?:p|h[1-6]|ul|ol|li|strong|em|code|pre|hr|br|table|thead|tbody|tr|th|td|blockquote)\b)/i, html);
    // Tags of the page's own, none of them with anything but a class.
    for (const [tag] of html.matchAll(/<[a-z][^>]*>/gi)) assert.match(tag, /^<\w+(?: class="[\w-]+")?>$/, html);
  }
});

test("boxes to tick", () => {
  assert.match(sheetHtml("- [ ] lagoon: **24 g**\n"), /<li class="task">\s*lagoon: <strong>24 g<\/strong>/);
  assert.doesNotMatch(sheetHtml("- date:\n"), /task/);
});

test("a page loads nothing and runs only its own script", () => {
  const plain = page({ title: "<b>", style: "p{}", body: "<p></p>" });
  assert.match(plain, /default-src 'none'/);
  assert.doesNotMatch(plain, /script-src|<script/);
  assert.doesNotMatch(plain, /<title><b>/);
  const own = page({ title: "t", style: "", body: "", inline: "print()" });
  const word = /script-src 'nonce-([\w-]{20,})'/.exec(own)?.[1];
  assert.ok(word && own.includes(`<script nonce="${word}">print()`));
  assert.notEqual(word, /script-src 'nonce-([\w-]{20,})'/.exec(page({ title: "t", style: "", body: "", inline: "print()" }))[1]);
});
