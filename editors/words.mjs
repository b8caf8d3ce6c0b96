// Writes the words of the notation into the grammars of the editors, between the lines marked `words: begin` and `words: end`.
// `node words.mjs --check` writes nothing and fails where a grammar is out of date. The words come from words.json, which
// `cargo run -p tenter-syntax --example words` gives.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const words = JSON.parse(readFileSync(here('words.json'), 'utf8'));

const longestFirst = (list) => [...new Set(list.map((word) => word.toLowerCase()))].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
const kinds = words.kinds.map((kind) => ({ ...kind, words: [kind.name, ...kind.synonyms] }));
const everyKey = longestFirst(kinds.flatMap((kind) => [...kind.keys, ...kind.prose]));
// A line of a variant stands for a line of any block.
const keysOf = (kind) => (kind.name === 'variant' ? everyKey.filter((key) => !kind.prose.includes(key) && !words.verbs.includes(key)) : kind.keys);
const verbs = longestFirst(words.verbs);
const connectors = longestFirst(words.connectors);
const units = longestFirst(words.units);

const vim = (list) => `'${longestFirst(list).map((word) => word.replace(/[\\.*~[\]^$/]/g, '\\$&').replace(/'/g, "''").replace(/ /g, '\\s\\+')).join('\\|')}'`;
const regex = (list) => longestFirst(list).map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/ /g, '\\s+')).join('|');
const lisp = (list) => `(${longestFirst(list).map((word) => JSON.stringify(word)).join(' ')})`;
const wrapped = (text, indent) => text.replace(/(.{1,100})(?: |$)/g, `$1\n${indent}`).trimEnd();
const xml = (text) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
const yaml = (text) => `'${text.replace(/'/g, "''")}'`;

const files = {
  'neovim/syntax/dye.vim': () => [
    ...kinds.map((kind) => `let s:blocks['${kind.name}'] = {'words': ${vim(kind.words)}, 'keys': ${vim(keysOf(kind))}, 'prose': ${vim(kind.prose)}}`),
    `let s:verbs = ${vim(verbs)}`,
    `let s:connectors = ${vim(connectors)}`,
    `let s:units = ${vim(units)}`,
  ],
  'emacs/tenter-mode.el': () => [
    '(defconst tenter-mode--blocks',
    `  '(${kinds.map((kind) => `("${kind.name}"\n     :words ${lisp(kind.words)}\n     :keys ${wrapped(lisp(keysOf(kind)), '     ')}\n     :prose ${wrapped(lisp(kind.prose), '     ')})`).join('\n    ')})`,
    '  "What opens a block, and what opens a line in it, for each kind of block.")',
    '',
    '(defconst tenter-mode--verbs',
    `  '${wrapped(lisp(verbs), '    ')}`,
    '  "The verbs of the trade, which open a step.")',
    '',
    '(defconst tenter-mode--connectors',
    `  '${wrapped(lisp(connectors), '    ')}`,
    '  "The words that open a clause.")',
    '',
    '(defconst tenter-mode--units',
    `  '${wrapped(lisp(units), '    ')}`,
    '  "The units of the dyer\'s bench.")',
  ],
  'kate/dye.xml': () => [
    '      <context name="Blocks" attribute="Text" lineEndContext="#stay">',
    ...kinds.map((kind) => `        <RegExpr String="^(?:${xml(regex(kind.words))})(?=\\s|$)" lookAhead="true" insensitive="true" column="0" context="Header ${kind.name}"/>`),
    '      </context>',
    ...kinds.flatMap((kind) => [
      `      <context name="Header ${kind.name}" attribute="Text" lineEndContext="#pop!Block ${kind.name}">`,
      `        <RegExpr attribute="Kind" String="^(?:${xml(regex(kind.words))})" insensitive="true" column="0" context="Title"/>`,
      '      </context>',
      `      <context name="Block ${kind.name}" attribute="Text" lineEndContext="#stay">`,
      '        <RegExpr String="^(?:[^\\s#0-9]|#(?=\\S))" lookAhead="true" column="0" context="#pop"/>',
      `        <RegExpr attribute="Text" String="^(?: {1,5}|\\t)(?=\\S)" column="0" context="Start ${kind.name}"/>`,
      '        <IncludeRules context="Expression"/>',
      '      </context>',
      `      <context name="Start ${kind.name}" attribute="Text" lineEndContext="#pop" fallthroughContext="#pop">`,
      ...(kind.prose.length ? [`        <RegExpr attribute="Key" String="(?:${xml(regex(kind.prose))})(?=[\\s,]|$)" insensitive="true" context="#pop!Prose"/>`] : []),
      ...(keysOf(kind).length ? [`        <RegExpr attribute="Key" String="(?:${xml(regex(keysOf(kind)))})(?=[\\s,]|$)" insensitive="true" context="#pop"/>`] : []),
      ...(['steps', 'variant'].includes(kind.name) ? [`        <RegExpr attribute="Verb" String="(?:${xml(regex(verbs))})(?=[\\s,]|$)" insensitive="true" context="#pop"/>`] : []),
      '      </context>',
    ]),
    '      <context name="Unit" attribute="Text" lineEndContext="#pop" fallthroughContext="#pop">',
    `        <RegExpr attribute="Unit" String="\\s*(?:${xml(regex(units))})(?:/\\w+|\\s+per\\s+[A-Za-z]+)?(?![\\w°%/])" insensitive="true" context="#pop"/>`,
    '      </context>',
    '      <context name="Clause" attribute="Text" lineEndContext="#stay">',
    `        <RegExpr attribute="Clause" String="\\b(?!at\\s+(?:least|most)\\b)(?:${xml(regex(connectors))})\\b(?![-'’/])" insensitive="true" context="#stay"/>`,
    '      </context>',
  ],
  'sublime/Dye recipe.sublime-syntax': () => [
    '  blocks:',
    ...kinds.flatMap((kind) => [
      `    - match: ${yaml(`^(?i:${regex(kind.words)})(?=\\s|$)`)}`,
      '      scope: keyword.control.block.dye',
      `      push: [block-${kind.name}, title]`,
    ]),
    ...kinds.flatMap((kind) => [
      '',
      `  block-${kind.name}:`,
      `    - meta_scope: meta.block.${kind.name}.dye`,
      "    - match: '^(?=[^\\s#0-9])'",
      '      pop: true',
      "    - match: '^(?: {1,5}|\\t)(?=\\S)'",
      `      push: start-${kind.name}`,
      '    - include: expression',
      '',
      `  start-${kind.name}:`,
      ...(kind.prose.length ? [`    - match: ${yaml(`(?i:${regex(kind.prose)})(?=[\\s,]|$)`)}`, '      scope: keyword.other.key.dye', '      set: prose'] : []),
      ...(keysOf(kind).length ? [`    - match: ${yaml(`(?i:${regex(keysOf(kind))})(?=[\\s,]|$)`)}`, '      scope: keyword.other.key.dye', '      pop: true'] : []),
      ...(['steps', 'variant'].includes(kind.name) ? [`    - match: ${yaml(`(?i:${regex(verbs)})(?=[\\s,]|$)`)}`, '      scope: entity.name.function.verb.dye', '      pop: true'] : []),
      "    - match: ''",
      '      pop: true',
    ]),
    '',
    '  connector:',
    `    - match: ${yaml(`\\b(?!(?i:at\\s+(?:least|most))\\b)(?i:${regex(connectors)})\\b(?![-'’/])`)}`,
    '      scope: keyword.operator.clause.dye',
    '',
    '  unit:',
    `    - match: ${yaml(`\\s*((?i:${regex(units)})(?:/\\w+|\\s+per\\s+[A-Za-z]+)?)(?![\\w°%/])`)}`,
    '      captures:',
    '        1: keyword.other.unit.dye',
    '      pop: true',
    "    - match: ''",
    '      pop: true',
  ],
};

let stale = 0;
for (const [name, section] of Object.entries(files)) {
  const text = readFileSync(here(name), 'utf8');
  const marked = /^(.*words: begin.*\n)[\s\S]*?^(.*words: end.*)$/m;
  if (!marked.test(text)) throw new Error(`${name} has no place for the words`);
  const filled = text.replace(marked, (_, begin, end) => `${begin}${section().join('\n')}\n${end}`);
  if (filled === text) continue;
  if (process.argv.includes('--check')) {
    console.error(`${name} does not know the words of today: run node editors/words.mjs`);
    stale += 1;
  } else {
    writeFileSync(here(name), filled);
    console.log(`${name} written`);
  }
}
process.exit(stale === 0 ? 0 : 1);
