// The grammar as the editor runs it: the same regular-expression engine and the same tokeniser.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";

const require = createRequire(import.meta.url);
const { INITIAL, Registry, parseRawGrammar } = require("vscode-textmate");
const { OnigScanner, OnigString, loadWASM } = require("vscode-oniguruma");
const GRAMMAR = fileURLToPath(new URL("../syntaxes/dye.tmLanguage.json", import.meta.url));

/** Loads the grammar; gives a function from a text to the scopes of each stretch of each line. */
export async function engine() {
  await loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")));
  const registry = new Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new OnigScanner(patterns),
      createOnigString: (text) => new OnigString(text),
    }),
    loadGrammar: async (name) => (name === "source.dye" ? parseRawGrammar(readFileSync(GRAMMAR, "utf8"), GRAMMAR) : null),
  });
  const grammar = await registry.loadGrammar("source.dye");
  return (text) => {
    let stack = INITIAL;
    return text.split(/\r\n|\r|\n/).map((line) => {
      const { tokens, ruleStack, stoppedEarly } = grammar.tokenizeLine(line, stack, 2000);
      stack = ruleStack;
      return { line, tokens, stoppedEarly };
    });
  };
}
