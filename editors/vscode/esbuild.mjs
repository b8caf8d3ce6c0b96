// Bundles the extension and the script of its window into dist/, with the licences of what is bundled.
import { readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

rmSync("dist", { recursive: true, force: true });
const common = { bundle: true, minify: true, logLevel: "warning", legalComments: "none", metafile: true };
const { metafile } = await build({ ...common, entryPoints: ["src/extension.ts"], outfile: "dist/extension.js", platform: "node", format: "cjs", target: "node18", external: ["vscode"] });
await build({ ...common, entryPoints: ["src/webview/totals.ts"], outfile: "dist/webview/totals.js", platform: "browser", format: "iife", target: "es2022" });

const packages = new Set(Object.keys(metafile.inputs).map((file) => /.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0]).filter(Boolean));
const notices = [...packages].sort().map((folder) => {
  const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${folder} comes without a licence`);
  return `${name} ${version} (${license})\n\n${readFileSync(`${folder}/${file}`, "utf8").trim()}\n`;
});
writeFileSync("dist/THIRD-PARTY.txt", `What is bundled into this extension, and its licences.\n\n${notices.join(`\n${"=".repeat(78)}\n\n`)}`);
