// What the windows show: nothing of a recipe is lost, and nothing of it is taken for markup.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { test } from "node:test";

import { source } from "./source.mjs";
import { start } from "./server.mjs";

const { sheetNodes, stateNodes } = source("panel/sheet.ts");
const { escaped, page, toHtml } = source("panel/html.ts");
const { sheetHtml } = source("panel/markdown.ts");

/** All text of nodes. */
const text = (nodes) => nodes.map((node) => `${node.text ?? ""}\n${text(node.children ?? [])}`).join("");

test("every word and figure of the server's sheet is shown", async () => {
  const server = await start();
  let cells = 0;
  for (const name of ["harbour-dusk", "three-trays", "soak-strength-trial", "printed-fern", "market-scarves"]) {
    const uri = server.open(readFileSync(fileURLToPath(new URL(`../../../tests/recipes/${name}.dye`, import.meta.url)), "utf8"));
    const ask = { command: "tenter.totals", arguments: [{ uri, position: { line: 56, character: 2 } }] };
    const { sheet, state } = await server.request("workspace/executeCommand", ask);
    const shown = text(sheetNodes(sheet, stateNodes(state)));
    const every = (it) => (typeof it === "string" ? [it] : Array.isArray(it) ? it.flatMap(every) : it && typeof it === "object" ? Object.values(it).flatMap(every) : []);
    for (const { heading, content } of sheet.parts) {
      assert.ok(shown.includes(heading));
      for (const { is, of } of content) {
        const tables = is === "line" ? [] : [of.table ?? of];
        for (const one of is === "table" ? [] : every(is === "mix" ? [of.line, of.made_up] : of)) assert.ok(shown.includes(one), one);
        for (const cell of tables.flatMap(({ rows }) => every(rows))) {
          assert.ok(shown.includes(cell), cell);
          cells += 1;
        }
      }
    }
    const squeezed = (it) => it.replace(/\s+/g, "");
    assert.ok(squeezed(shown).includes(squeezed(state)), name);
  }
  await server.stop();
  assert.ok(cells > 300, `only ${cells} cells were compared`);
});

test("a long sentence over the state is put together again", () => {
  const [{ children: [heading, below] }] = stateNodes("After line 8: soak tees in a very long\n  name of a bath for 20 min\n  21 min, 3 min of it work\n  bath: 7 L, 39 °C\n");
  assert.equal(heading.text, "After line 8: soak tees in a very long name of a bath for 20 min");
  assert.equal(below.text, "21 min, 3 min of it work\nbath: 7 L, 39 °C");
  assert.deepEqual(stateNodes(""), []);
});

test("columns that say nothing take no room, and tables tell what their headings head", () => {
  const table = { heads: [["", "left"], ["in all", "right"], ["cost", "right"]], rows: [{ cells: ["<b>rust", "25 g", ""], beneath: ["by the spoon"] }] };
  const html = toHtml(sheetNodes({ title: "T", about: null, parts: [{ heading: "Weigh out", content: [{ is: "table", of: table }] }] }));
  assert.doesNotMatch(html, /cost|<b>/);
  assert.match(html, /<th class="words" scope="row">&#60;b&#62;rust<\/th><td class="number">25 g<\/td>/);
  assert.match(html, /<td colspan="2">by the spoon<\/td>/);
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
