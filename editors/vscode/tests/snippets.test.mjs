// Every snippet, put in where it belongs, is read by the server without a word of complaint about the writing.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import { start } from "./server.mjs";

const snippets = JSON.parse(readFileSync(fileURLToPath(new URL("../snippets/dye.json", import.meta.url)), "utf8"));
let server;
before(async () => {
  server = await start();
});
after(() => server?.stop());

/** A snippet as it stands once all its places are left as proposed. */
function filled(body) {
  const held = new Map();
  const text = body.join("\n").replace(/\$\{(\d+):([^}]*)\}|\$\{(\d+)\|([^},|]*)[^}]*\|\}/g, (_, one, words, two, first) => {
    held.set(one ?? two, words ?? first);
    return words ?? first;
  });
  const dated = text.replace("$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE", "2026-05-03").replace(/\$0/g, "");
  return dated.replace(/\$(\d+)/g, (_, number) => held.get(number) ?? assert.fail(`place ${number} is never given`));
}

const HEAD = "recipe Try\n\ngoods tees\n  pieces   4\n  weight   150 g each\n  fibre    95% cotton, 5% elastane\n  state    scoured, dry\n\n";
const DYES = "dye night\n  class    reactive dichlorotriazine\n\ndye bracken\n  class    reactive dichlorotriazine\n\n";
const SOAK = "mix soda soak\n  8 L      water at 40 °C\n  60 g/L   soda ash\n\n";
const BATH = "mix dye bath\n  1:20     water at 40 °C\n\n";
/** Where each is at home: what stands before it. */
const HOMES = {
  "Recipe from bottles": "",
  "Soda soak": HEAD, "Dye bottle": HEAD + DYES, "Print paste": HEAD + DYES, Rings: HEAD, Prepare: HEAD + SOAK, "Wash off": HEAD,
  "Salt in portions": `${HEAD}${BATH}steps\n  wear     gloves\n  `, Trial: HEAD + SOAK, "Log entry for today": HEAD,
  "Accept a finding": `${HEAD.trimEnd()}\n  `,
};
/** A part alone leaves things unsaid; these rules are about the writing itself. */
const WRITING = new Set(
  ("number-form date-form unknown-unit doubtful-unit ambiguous-measure percent-of-what weight-of-what wrong-dimension unknown-verb unknown-key unknown-block " +
    "unknown-name same-name-twice clause-not-taken missing-value two-steps-on-a-line stray-line unreadable hidden-character zone-shares " +
    "variant-matches-nothing unknown-rule accept-without-reason").split(" "),
);

async function findings(text) {
  const uri = server.open(text);
  const { items } = await server.request("textDocument/diagnostic", { textDocument: { uri } });
  server.close(uri);
  return items.map(({ code, severity, range }) => ({ code: String(code?.value ?? code), severity, line: range.start.line + 1 }));
}

test("a slip would be told", async () => {
  assert.ok((await findings("recipe Try\n\ngods tees\n  pieces 3\n")).some(({ code }) => code === "unknown-block"));
  assert.ok((await findings(`${HEAD}${SOAK}steps\n  soka tees in soda soak\n`)).some(({ code }) => code === "unknown-verb"));
});

test("every snippet reads well", async () => {
  assert.deepEqual(Object.keys(snippets).sort(), Object.keys(HOMES).sort());
  for (const [name, { body }] of Object.entries(snippets)) {
    const text = HOMES[name] + filled(body);
    const told = (await findings(text)).filter(({ code }) => WRITING.has(code));
    assert.deepEqual(told, [], `${name}:\n${text}`);
  }
});

test("the whole recipe draws no error and no warning", async () => {
  const told = await findings(filled(snippets["Recipe from bottles"].body));
  assert.deepEqual(told.filter(({ severity }) => severity <= 2), []);
});

test("the rules named here exist", async () => {
  const spec = readFileSync(fileURLToPath(new URL("../../../spec/11-findings.md", import.meta.url)), "utf8");
  for (const rule of WRITING) assert.ok(spec.includes(`\`${rule}\``), rule);
});
