// Writes corpus/*.txt: for each case the tree that the notation's own grammar says the parser must build. Nothing in it
// comes from the parser itself; only units, which that grammar leaves in the words, are told from editors/words.json.
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

import { asFiles, cases } from './cases.mjs';
import { normative } from './outlines.mjs';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const words = JSON.parse(readFileSync(here('../../words.json'), 'utf8'));
const units = new Set(words.units.map((unit) => unit.toLowerCase()));
const connectors = new Set(words.connectors);

/** How many of these words, those behind a number, are its unit. */
function unitLength(list) {
  const isUnit = (word) => units.has(word) || /^[A-Z]{3}$/.test(word);
  let length = 0;
  for (let count = 1; count <= Math.min(3, list.length); count += 1) {
    if (count > 1 && (list[count - 1] === 'per' || connectors.has(list[count - 1].toLowerCase()))) break;
    const text = list.slice(0, count).join(' ');
    const stroke = text.indexOf('/');
    const [over, under] = stroke > 0 ? [text.slice(0, stroke), text.slice(stroke + 1)] : [text, '-'];
    if (units.has(text.toLowerCase()) || (stroke > 0 ? units.has(over.toLowerCase()) && under !== '' : isUnit(text))) {
      length = count;
      if (stroke >= 0) return length;
    }
  }
  if (length > 0 && list[length] === 'per' && list[length + 1]) return length + 2;
  return length;
}

const node = (type, start, end, children = [], field) => ({ type, start, end, children, field });

/** Items as the parser builds them: a number with its unit, then words. */
function contents(items, bytes) {
  const found = [];
  items.forEach(([form, start, end]) => {
    const number = { number: 'number', date: 'date', malformed: 'malformed_number' }[form];
    const last = found.at(-1);
    if (number) {
      found.push(node('quantity', start, end, [node(number, start, end)]));
    } else if (form === 'words' && last?.type === 'quantity') {
      const parts = [...bytes.subarray(start, end).toString().matchAll(/\S+/g)];
      const list = parts.map((part) => part[0]);
      const length = unitLength(list);
      const at = (part) => start + Buffer.byteLength(bytes.subarray(start, end).toString().slice(0, part.index));
      if (length > 0) {
        const unitEnd = at(parts[length - 1]) + Buffer.byteLength(parts[length - 1][0]);
        last.children.push(node('unit', start, unitEnd));
        last.end = unitEnd;
      }
      if (parts[length]) found.push(node('words', at(parts[length]), end));
    } else {
      found.push(node(form, start, end));
    }
  });
  return found;
}

function clauses(list, bytes) {
  return list.map((clause) => {
    const word = bytes.subarray(...clause.word).toString().toLowerCase();
    const items = contents(clause.items, bytes);
    if (word === 'because' && items.length) items[0].type = 'reason';
    const condition = word === 'until' && clause.items[0]?.[0] === 'words';
    if (condition) items[0].type = 'condition';
    return node('clause', clause.word[0], items.at(-1)?.end ?? clause.word[1], [node('connector', ...clause.word, [], 'connector'), ...items]);
  });
}

function lineNode(line, kind, bytes) {
  const rest = [...contents(line.items, bytes), ...clauses(line.clauses, bytes)];
  if (line.unread) rest.push(node('unread', ...line.unread));
  const [start, end] = line.span;
  if (!line.head) return node('amount', start, end, rest);
  const head = (type, field) => node(type, ...line.head.span, [], field);
  if (!line.head.known) return node('unknown', start, end, [head('unknown_word'), ...rest]);
  if (line.prose) {
    const value = line.prose[0] < line.prose[1] ? [node('prose', ...line.prose, [], 'value')] : [];
    return node('property', start, end, [head('key', 'key'), ...value]);
  }
  const text = bytes.subarray(...line.head.span).toString().toLowerCase().replace(/\s+/g, ' ');
  const own = words.kinds.find((one) => one.name === kind)?.keys ?? [];
  const verb = ['steps', 'variant'].includes(kind) && words.verbs.includes(text) && !own.includes(text);
  return node(verb ? 'step' : 'property', start, end, [verb ? head('verb', 'verb') : head('key', 'key'), ...rest]);
}

function header(block, bytes) {
  const kind = node(block.kind === 'unknown' ? 'unknown_kind' : 'kind', ...block.keyword, [], 'kind');
  const named = block.name[0] < block.name[1];
  return node('header', block.keyword[0], named ? block.name[1] : block.keyword[1], named ? [kind, node('name', ...block.name, [], 'name')] : [kind]);
}

const lineEnd = (bytes, at) => {
  const found = bytes.indexOf(10, at);
  return found < 0 ? bytes.length : found + 1;
};

function treeOf(outline, bytes) {
  const root = node('source_file', 0, bytes.length);
  for (const block of outline.blocks) {
    const lines = block.lines.map((line) => lineNode(line, block.kind, bytes));
    const front = block.kind === 'loose' ? [] : [header(block, bytes)];
    const children = [...front, ...lines];
    if (children.length === 0) continue;
    root.children.push(node(block.kind === 'loose' ? 'loose' : 'block', children[0].start, lineEnd(bytes, children.at(-1).end), children));
  }
  outline.comments.forEach(([start, end]) => insert(root, node('comment', start, end)));
  return root;
}

/** A comment is a child of the innermost node that goes on behind it. */
function insert(parent, comment) {
  const inner = parent.children.find((child) => child.start < comment.start && comment.end < child.end);
  if (inner) return insert(inner, comment);
  const before = parent.children.filter((child) => child.start < comment.start).length;
  parent.children.splice(before, 0, comment);
}

const drawn = (one, depth = 0) =>
  `${'  '.repeat(depth)}${one.field ? `${one.field}: ` : ''}(${one.type}${one.children.map((child) => `\n${drawn(child, depth + 1)}`).join('')})`;

// The specification, the bundled collection and the tricky lines; agree.mjs holds all other recipes against both grammars.
// A `use` header is parsed as items and clauses, which that grammar never sees.
const groups = /^(\d+-|README$|tests-recipes$|tricky$)/;
const list = cases().filter((one) => groups.test(one.group) && !/^use /m.test(one.text));
const { folder, paths } = asFiles(list);
const outlines = normative(paths);
const corpus = new Map();
list.forEach((one, index) => {
  const bytes = readFileSync(paths[index]);
  const tree = drawn(treeOf(outlines[index], bytes));
  const bar = '='.repeat(20);
  const text = one.text.endsWith('\n') ? one.text : `${one.text}\n`;
  corpus.set(one.group, `${corpus.get(one.group) ?? ''}${bar}\n${one.name}\n${bar}\n\n${text}\n---\n\n${tree}\n\n`);
});
rmSync(folder, { recursive: true });
mkdirSync(here('../corpus'), { recursive: true });
for (const old of readdirSync(here('../corpus'))) rmSync(here(`../corpus/${old}`));
for (const [group, text] of corpus) writeFileSync(here(`../corpus/${group}.txt`), text);
console.log(`${list.length} cases in ${corpus.size} files of the corpus`);
