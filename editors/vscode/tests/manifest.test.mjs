// The manifest against the server and the files it names.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { after, before, test } from "node:test";

import { start } from "./server.mjs";

const HERE = fileURLToPath(new URL("..", import.meta.url));
const manifest = JSON.parse(readFileSync(`${HERE}package.json`, "utf8"));
const { contributes } = manifest;
let server;
before(async () => {
  server = await start();
});
after(() => server?.stop());

test("nothing in the metadata is made up", () => {
  assert.equal(manifest.publisher, "tenter");
  assert.deepEqual(manifest.categories, ["Programming Languages", "Linters", "Formatters"]);
  const cargo = readFileSync(`${HERE}../../Cargo.toml`, "utf8");
  assert.equal(manifest.license, /^license = "(.*)"$/m.exec(cargo)[1]);
  assert.equal(manifest.version, /^version = "(.*)"$/m.exec(cargo)[1]);
  for (const field of ["repository", "homepage", "bugs", "author", "sponsor", "badges", "qna"]) assert.equal(manifest[field], undefined, field);
  assert.doesNotMatch(readFileSync(`${HERE}package-lock.json`, "utf8"), /"resolved"/);
});

test("a folder that is not trusted cannot say which program is run", () => {
  const { untrustedWorkspaces } = manifest.capabilities;
  assert.equal(untrustedWorkspaces.supported, "limited");
  const paths = Object.keys(contributes.configuration.properties).filter((name) => /path|command|arguments/i.test(name));
  assert.deepEqual(untrustedWorkspaces.restrictedConfigurations, paths);
});

test("every file the manifest names is there", () => {
  const text = JSON.stringify(manifest);
  const files = [...text.matchAll(/"(?:\.\/)?((?:media|snippets|syntaxes)\/[^"]+|language-configuration\.json)"/g)].map((match) => match[1]);
  assert.ok(files.length >= 15);
  assert.deepEqual(files.filter((file) => !existsSync(`${HERE}${file}`)), []);
});

test("every command of a menu, a walkthrough or the sources is declared, and the other way about", () => {
  const declared = new Set(contributes.commands.map(({ command }) => command));
  const text = JSON.stringify({ menus: contributes.menus, walkthroughs: contributes.walkthroughs });
  const named = [...text.matchAll(/tenter\.editor\.\w+/g)].map(([command]) => command);
  assert.deepEqual(named.filter((command) => !declared.has(command)), []);
  const source = readFileSync(`${HERE}src/extension.ts`, "utf8");
  const registered = new Set([...source.matchAll(/command\("(\w+)"/g)].map((match) => `tenter.editor.${match[1]}`));
  assert.deepEqual([...registered].sort(), [...declared].sort());
});

test("the commands do not take the names the server registers, and the server has those they ask for", () => {
  const commands = new Set(server.hello.capabilities.executeCommandProvider.commands);
  for (const { command } of contributes.commands) assert.ok(!commands.has(command), command);
  for (const command of ["tenter.totals", "tenter.benchSheet", "tenter.scale", "tenter.newLog", "tenter.showUse"]) assert.ok(commands.has(command), command);
});

/** A recipe with something for every kind of hint and lens. */
const RECIPE = readFileSync(`${HERE}../../tests/recipes/harbour-dusk.dye`, "utf8");

test("each switch of a hint or a lens switches something off, and only it", async () => {
  const settings = Object.keys(contributes.configuration.properties);
  const kinds = (part) => settings.filter((name) => name.startsWith(`tenter.${part}.`)).map((name) => name.split(".")[2]);
  const all = (part, value) => Object.fromEntries(kinds(part).map((kind) => [kind, value]));
  const uri = server.open(RECIPE);
  const ask = async (hints, lenses) => {
    server.notifySettings({ hints: { ...all("hints", true), ...hints }, lenses: { ...all("lenses", true), ...lenses } });
    const range = { start: { line: 0, character: 0 }, end: { line: 1_000, character: 0 } };
    const [found, over] = [
      await server.request("textDocument/inlayHint", { textDocument: { uri }, range }),
      await server.request("textDocument/codeLens", { textDocument: { uri } }),
    ];
    return [found.length, over.length];
  };
  const [hints, lenses] = await ask({}, {});
  assert.ok(hints > 10 && lenses > 3, `${hints} hints and ${lenses} lenses`);
  for (const kind of kinds("hints")) {
    const [less, same] = await ask({ [kind]: false }, {});
    assert.ok(less < hints, `hints.${kind} switches nothing`);
    assert.equal(same, lenses);
  }
  for (const kind of kinds("lenses")) {
    const [same, less] = await ask({}, { [kind]: false });
    assert.ok(less < lenses, `lenses.${kind} switches nothing`);
    assert.equal(same, hints);
  }
  assert.deepEqual(await ask(all("hints", false), all("lenses", false)), [0, 0], "a kind of hint or lens has no switch");
});
