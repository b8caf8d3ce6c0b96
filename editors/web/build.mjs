// Puts the page together in dist/: the engine, the scripts, the bundled recipes, and the list of files to keep.
// usage: node build.mjs ENGINE.wasm
import { createHash, randomBytes } from "node:crypto";
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import * as esbuild from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const top = join(here, "../..");
const dist = join(here, "dist");
const MOST = 1_500_000;

const enginePath = process.argv[2];
if (!enginePath) throw new Error("usage: node build.mjs ENGINE.wasm");
rmSync(dist, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });

const recipes = join(top, "tests/recipes");
const examples = readdirSync(recipes)
  .filter((path) => path.endsWith(".dye"))
  .sort()
  .map((path) => {
    const text = readFileSync(join(recipes, path), "utf8");
    const title = /^recipe +(.+)$/m.exec(text)?.[1] ?? path;
    const about = /^ +about +(.+)$/m.exec(text)?.[1] ?? "definitions for others";
    return { path, title: title.trim(), about: about.trim(), text };
  });
if (examples.length < 10) throw new Error("the bundled recipes are missing");
const starter = readFileSync(join(top, "crates/tenter/src/starter.dye"), "utf8");

const bundled = {
  name: "examples",
  setup(build) {
    build.onResolve({ filter: /^virtual:examples$/ }, ({ path }) => ({ path, namespace: "bundled" }));
    build.onLoad({ filter: /.*/, namespace: "bundled" }, () => ({
      contents: `export const examples = ${JSON.stringify(examples)}; export const starter = ${JSON.stringify(starter)};`,
      loader: "js",
    }));
  },
};

const common = { bundle: true, minify: true, format: "esm", target: "es2022", outdir: dist, legalComments: "none", logLevel: "warning" };
const entries = (...names) => names.map((name) => join(here, `src/${name}.ts`));
const apart = { name: "apart", setup: (build) => build.onResolve({ filter: /^\.\/main$/ }, () => ({ path: "./main.js", external: true })) };
await esbuild.build({ ...common, entryPoints: entries("opening", "worker"), format: "iife", plugins: [bundled, apart] });
await esbuild.build({ ...common, entryPoints: entries("main") });
await esbuild.build({ ...common, entryPoints: [join(here, "style.css")] });

const nonce = randomBytes(16).toString("hex");
const page = readFileSync(join(here, "index.html"), "utf8").replaceAll("@NONCE@", nonce);
writeFileSync(join(dist, "index.html"), page);
for (const name of ["icon.svg", "manifest.webmanifest"]) writeFileSync(join(dist, name), readFileSync(join(here, name)));
writeFileSync(join(dist, "engine.wasm"), readFileSync(enginePath));

const files = readdirSync(dist).sort();
const version = createHash("sha256");
for (const name of files) version.update(name).update(readFileSync(join(dist, name)));
await esbuild.build({
  ...common,
  entryPoints: [join(here, "src/sw.ts")],
  define: { VERSION: JSON.stringify(version.digest("hex").slice(0, 16)), FILES: JSON.stringify(["./", ...files.filter((name) => name !== "index.html")]) },
});

let whole = 0;
for (const name of readdirSync(dist).sort()) {
  const bytes = readFileSync(join(dist, name));
  const packed = gzipSync(bytes, { level: 9 }).length;
  whole += packed;
  console.log(`${name.padEnd(22)} ${String(bytes.length).padStart(9)} bytes ${String(packed).padStart(9)} gzip`);
}
console.log(`${"in all".padEnd(22)} ${" ".repeat(15)} ${String(whole).padStart(9)} gzip`);
if (whole > MOST) {
  console.error(`the page is larger than ${MOST} bytes compressed`);
  process.exit(1);
}
