// What the grammar is tried on: the examples of the specification and the recipes that come with Tenter.
import { readFileSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../../../", import.meta.url));
const FOLDERS = ["tests/recipes", "tests/good", "tests/published", "tests/broken"];

/** Every case: where it comes from and its text. */
export function cases() {
  const found = [];
  for (const file of readdirSync(`${ROOT}spec`).filter((name) => name.endsWith(".md")).sort()) {
    const text = readFileSync(`${ROOT}spec/${file}`, "utf8");
    let number = 0;
    for (const match of text.matchAll(/^```dye\n([\s\S]*?)^```/gm)) found.push({ from: `spec/${file} #${++number}`, text: match[1] });
  }
  for (const folder of FOLDERS) {
    for (const file of readdirSync(`${ROOT}${folder}`).filter((name) => name.endsWith(".dye")).sort()) {
      found.push({ from: `${folder}/${file}`, text: readFileSync(`${ROOT}${folder}/${file}`, "utf8") });
    }
  }
  return found;
}
