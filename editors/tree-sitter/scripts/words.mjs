// Writes src/words.h, the tables of the scanner, from editors/words.json.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const words = JSON.parse(readFileSync(here('../../words.json'), 'utf8'));
const lower = (list) => [...new Set(list.map((word) => word.toLowerCase()))].sort();
const c = (word) => JSON.stringify(word);
const table = (name, list) => `static const char *const ${name}[] = {\n  ${[...lower(list).map(c), '0'].join(', ')},\n};\n`;

const kinds = words.kinds;
const parts = [
  '/* Written by scripts/words.mjs from editors/words.json. Do not edit. */',
  `enum Kind { ${['LOOSE', 'UNKNOWN', ...kinds.map((kind) => kind.name.toUpperCase())].map((name) => `KIND_${name}`).join(', ')} };`,
  `static const struct { const char *word; enum Kind kind; } KIND_WORDS[] = {\n${kinds
    .flatMap((kind) => [kind.name, ...kind.synonyms].map((word) => `  {${c(word)}, KIND_${kind.name.toUpperCase()}},`))
    .join('\n')}\n  {0, KIND_LOOSE},\n};\n`,
  table('VERBS', words.verbs),
  table('CONNECTORS', words.connectors),
  table('UNITS', words.units),
];
const row = (kind, which) => `${which}_${kind.toUpperCase()}`;
for (const kind of kinds) {
  parts.push(table(row(kind.name, 'KEYS'), kind.keys), table(row(kind.name, 'PROSE'), kind.prose));
}
// A variant's line stands for a line of any block; its own keys come first, then verbs, then all other keys.
parts.push(
  table('KEYS_ANY', kinds.flatMap((kind) => kind.keys)),
  table('PROSE_ANY', kinds.flatMap((kind) => kind.prose)),
  `static const char *const *const KEYS[] = {EMPTY, EMPTY, ${kinds.map((kind) => row(kind.name, 'KEYS')).join(', ')}};`,
  `static const char *const *const PROSE[] = {EMPTY, EMPTY, ${kinds.map((kind) => row(kind.name, 'PROSE')).join(', ')}};`,
);
parts.splice(3, 0, 'static const char *const EMPTY[] = {0};\n');
writeFileSync(here('../src/words.h'), parts.join('\n') + '\n');
