// Loads a TypeScript module of the extension that does not touch the editor.
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";

const require = createRequire(import.meta.url);

export function source(file) {
  const { outputFiles } = buildSync({
    entryPoints: [fileURLToPath(new URL(`../src/${file}`, import.meta.url))], bundle: true, write: false, platform: "node", format: "cjs",
  });
  const module = { exports: {} };
  new Function("module", "exports", "require", outputFiles[0].text)(module, module.exports, require);
  return module.exports;
}
