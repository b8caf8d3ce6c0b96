// The colouring against the language server: on every example of the specification and every recipe of the collection the
// two must call the same stretch of text the same kind of thing.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";

import { text as built } from "../grammar/build.mjs";
import { KEYS, KINDS, PROSE, UNITS, verbs } from "../grammar/words.mjs";
import { cases } from "./cases.mjs";
import { engine } from "./grammar-engine.mjs";
import { start } from "./server.mjs";

/** What a scope of the grammar stands for in the server's terms. */
const KINDS_OF_SCOPE = [
  ["keyword.control.block", "keyword"], ["entity.name.function.verb", "function"], ["keyword.other.key", "property"],
  ["keyword.operator.clause", "operator"], ["constant.numeric", "number"], ["keyword.other.unit", "type"],
  ["comment.line", "comment"], ["string.", "string"],
  ["entity.name.type.class.goods", "goods"], ["entity.name.type.class.vessel", "vessel"], ["entity.name.type.struct.mix", "mix"],
  ["variable.other.readwrite.material", "material"], ["entity.name.type.interface.layout", "layout"],
  ["variable.other.enummember.zone", "zone"], ["markup.heading", "title"], ["entity.name.section", "title"],
];
const WORDS = new Set(["keyword", "function", "property", "operator", "number", "type", "comment", "string"]);
/** What the grammar may call a name, which it can only tell from where it stands. */
const NAMES = {
  class: ["goods", "vessel", "mix"], struct: ["mix", "goods", "material"], variable: ["material", "zone", "mix"],
  interface: ["layout"], enumMember: ["zone", "mix"], namespace: ["title"],
};

let server;
let colour;
before(async () => {
  [server, colour] = await Promise.all([start(), engine()]);
});
after(() => server?.stop());

function kindOf(scopes) {
  for (const scope of [...scopes].reverse()) {
    const found = KINDS_OF_SCOPE.find(([prefix]) => scope.startsWith(prefix));
    if (found) return found[1];
  }
  return "";
}

/** The kind the grammar gives each character of a line. */
function kinds({ line, tokens }) {
  const found = new Array(line.length).fill("");
  for (const { startIndex, endIndex, scopes } of tokens) found.fill(kindOf(scopes), startIndex, Math.min(endIndex, line.length));
  return found;
}

test("the grammar in the package is the one its words make", () => {
  assert.equal(readFileSync(fileURLToPath(new URL("../syntaxes/dye.tmLanguage.json", import.meta.url)), "utf8"), built, "run `npm run grammar`");
});

test("grammar and server agree on every case", async (t) => {
  const wrong = [];
  const count = { cases: 0, lines: 0, words: 0, names: 0, strayNames: 0, unsaid: 0 };
  for (const { from, text } of cases()) {
    count.cases += 1;
    const uri = server.open(text);
    const tokens = await server.tokens(uri);
    server.close(uri);
    const lines = colour(text);
    let block = "";
    const blockOf = lines.map(({ line }) => (block = /^[^\s#\d]/.test(line) ? line.split(/\s/)[0].toLowerCase() : block));
    const told = lines.map(({ line }) => new Array(line.length).fill(""));
    for (const { line: number, start, end, type } of tokens) {
      const { line } = lines[number];
      const said = kinds(lines[number]);
      told[number].fill(type, start, end);
      const place = `${from}:${number + 1} "${line.slice(start, end)}"`;
      const mine = new Set();
      for (let at = start; at < end; at += 1) if (line[at].trim()) mine.add(said[at]);
      if (WORDS.has(type)) {
        count.words += 1;
        // In a variant the server takes a verb for the key of the line it replaces.
        const verbInVariant = type === "property" && blockOf[number] === "variant" && mine.has("function");
        // Among steps the server tells a note and an acceptance as it tells steps.
        const remark = type === "function" && blockOf[number] === "steps" && /^(?:notes?|accept)$/i.test(line.slice(start, end)) && mine.has("property");
        // Under a word that opens no block nothing is read as prose or as a key.
        const unread = !Object.values(KINDS).flat().includes(blockOf[number]);
        if (!(mine.size === 1 && mine.has(type)) && !verbInVariant && !remark && !unread) wrong.push(`${place}: server ${type}, grammar ${[...mine]}`);
      } else {
        count.names += 1;
        assert.ok(NAMES[type], `${place}: a kind of token nobody told this test of: ${type}`);
        if (![...mine].every((kind) => NAMES[type].includes(kind))) count.strayNames += 1;
      }
    }
    for (const [number, one] of lines.entries()) {
      const { line, tokens: stretches, stoppedEarly } = one;
      assert.ok(!stoppedEarly, `${from}:${number + 1} took too long`);
      if (!line.trim()) continue;
      count.lines += 1;
      const plain = stretches.every(({ scopes }) => scopes.every((scope) => scope === "source.dye" || scope.startsWith("meta.")));
      // A line whose first word no table knows has nothing to colour but numbers and clauses.
      if (plain && told[number].some((type) => WORDS.has(type))) wrong.push(`${from}:${number + 1}: no scope on "${line}"`);
      // And back: what the grammar says for sure, the server says too.
      const said = kinds(one);
      for (let at = 0; at < line.length; at += 1) {
        if (!line[at].trim() || !["keyword", "function", "property", "comment"].includes(said[at])) continue;
        if (!told[number][at]) {
          count.unsaid += 1;
          wrong.push(`${from}:${number + 1}: grammar ${said[at]} on "${line.slice(at, at + 12)}", server nothing`);
          break;
        }
      }
    }
  }
  t.diagnostic(JSON.stringify(count));
  assert.ok(count.cases >= 300, `only ${count.cases} cases ran`);
  assert.ok(count.words > 10_000, `only ${count.words} words were compared`);
  assert.deepEqual(wrong, []);
  const share = 1 - count.strayNames / count.names;
  t.diagnostic(`${count.names} names, of which ${(100 * share).toFixed(2)}% are of the kind their place tells`);
  assert.ok(share > 0.99, `names agree in ${(100 * share).toFixed(2)}% only`);
});

/** What the server proposes at the start of a body line of a block. */
async function proposed(kind) {
  const uri = server.open(`${kind} x\n  \n`);
  const answer = await server.request("textDocument/completion", { textDocument: { uri }, position: { line: 1, character: 2 } });
  server.close(uri);
  return (answer.items ?? answer).map((item) => item.label);
}

test("every key and verb the server proposes is coloured", async () => {
  let met = 0;
  for (const kind of Object.keys(PROSE).filter((kind) => kind !== "use")) {
    for (const label of await proposed(kind)) {
      // Amounts and whole lines are proposed in mixes and on shelves too.
      if (!/^[a-z][a-z ]*$/.test(label)) continue;
      const [, line] = colour(`${kind} x\n  ${label} y\n`);
      const said = kinds(line).slice(2, 2 + label.length).filter((_, at) => label[at] !== " ");
      const expected = kind === "steps" && !PROSE.steps.includes(label) ? "function" : "property";
      if (kind === "variant" && said.every((it) => it === "function")) continue;
      assert.ok(said.every((it) => it === expected), `${kind}: ${label} is ${said[0] || "nothing"}`);
      met += 1;
    }
  }
  assert.ok(met > 120, `only ${met} proposals were compared`);
});

test("the server knows every key, verb and unit of the grammar", async () => {
  const unknown = [];
  const ask = async (text, line, start, type) => {
    const uri = server.open(text);
    const tokens = await server.tokens(uri);
    server.close(uri);
    if (!tokens.some((token) => token.line === line && token.start === start && token.type === type)) unknown.push(text);
  };
  for (const [kind, keys] of Object.entries(KEYS)) {
    for (const key of [...keys, ...PROSE[kind]]) {
      // Among steps a note and an acceptance are told as steps are.
      const type = kind === "steps" && key !== "about" ? "function" : "property";
      await ask(kind === "use" ? `use a from "b.dye"\n  ${key} y\n` : `${kind} x\n  ${key} y\n`, 1, 2, type);
    }
  }
  for (const verb of verbs()) for (const spelling of verb.spellings) await ask(`steps\n  ${spelling} y\n`, 1, 2, "function");
  for (const unit of Object.values(UNITS).flat()) await ask(`mix x\n  2 ${unit} water\n`, 1, 4, "type");
  assert.deepEqual(unknown, []);
});

test("hostile text is coloured in bounded time", () => {
  const texts = [
    `mix x\n  ${"2 g ".repeat(3_000)}\n`, `steps\n  soak ${"a ".repeat(5_000)}\n`, `steps\n  rinse until ${"at ".repeat(3_000)}\n`,
    `mix x\n  ${"1/".repeat(4_000)}\n`, `mix x\n  ${"(".repeat(4_000)}\n`, `mix x\n  ${"\"".repeat(4_001)}\n`, `recipe ${"# ".repeat(4_000)}\n`,
    `steps\n  soak ${"a, ".repeat(4_000)}\n`, `mix x\n  2 ${"g/".repeat(4_000)}\n`, `\u0000\u202e\ufeffsteps\n\t\tsoak\ttees\n`,
  ];
  for (const text of texts) {
    const begin = performance.now();
    colour(text);
    const took = performance.now() - begin;
    assert.ok(took < 20_000, `${text.slice(0, 24)}… took ${took.toFixed(0)} ms`);
  }
});
