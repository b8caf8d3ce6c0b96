// The cases two grammars must agree on: every example of the specification, every recipe of the tests, and the lines of
// the folder cases. Each is laid in a folder of its own as a file, since both sides read files.
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const RECIPES = ['tests/recipes', 'tests/good', 'tests/broken', 'tests/published'];

function examples() {
  const found = [];
  for (const chapter of readdirSync(join(root, 'spec')).filter((name) => name.endsWith('.md')).sort()) {
    const text = readFileSync(join(root, 'spec', chapter), 'utf8');
    let number = 0;
    for (const match of text.matchAll(/^```dye\n([\s\S]*?)^```$/gm)) {
      number += 1;
      const title = /^recipe (.+?)(?:\s+#.*)?$/m.exec(match[1])?.[1];
      found.push({ group: chapter.replace(/\.md$/, ''), name: `${number}${title ? ` ${title}` : ''}`, text: match[1] });
    }
  }
  return found;
}

function recipes() {
  const found = [];
  for (const folder of RECIPES) {
    const names = readdirSync(join(root, folder)).filter((name) => name.endsWith('.dye')).sort();
    if (names.length === 0) throw new Error(`${folder} has no recipes`);
    for (const name of names) {
      found.push({ group: folder.replace('/', '-'), name, text: readFileSync(join(root, folder, name), 'utf8') });
    }
  }
  return found;
}

function tricky() {
  const folder = fileURLToPath(new URL('../cases', import.meta.url));
  return readdirSync(folder).sort().map((name) => ({ group: name.replace('.dye', ''), name, text: readFileSync(join(folder, name), 'utf8') }));
}

/** All cases, in order. */
export const cases = () => [...examples(), ...recipes(), ...tricky()];

/** Lays cases down as files; gives their paths, in order. */
export function asFiles(list) {
  const folder = mkdtempSync(join(tmpdir(), 'dye-cases-'));
  mkdirSync(folder, { recursive: true });
  const paths = list.map((one, index) => {
    const path = join(folder, `${String(index).padStart(5, '0')}.dye`);
    writeFileSync(path, one.text);
    return path;
  });
  return { folder, paths };
}
