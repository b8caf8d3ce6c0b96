// What each grammar makes of a file, brought to one form: blocks, lines, heads, items, clauses, comments, in bytes.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

// The folder whose parser is asked: this one, or a copy of it.
const here = process.env.GRAMMAR_DIR ?? fileURLToPath(new URL('..', import.meta.url));
const root = fileURLToPath(new URL('../../../', import.meta.url));

function run(command, args) {
  const done = spawnSync(command, args, { cwd: command === 'cargo' ? root : here, encoding: 'utf8', maxBuffer: 1 << 30 });
  if (done.error) throw done.error;
  return done;
}

const inParts = (list, size) => Array.from({ length: Math.ceil(list.length / size) }, (_, i) => list.slice(i * size, (i + 1) * size));

/** What the notation's own grammar makes of files. */
export function normative(paths) {
  const program = process.env.TENTER_OUTLINE;
  return inParts(paths, 500).flatMap((part) => {
    const done = program ? run(program, part) : run('cargo', ['run', '-q', '-p', 'tenter-syntax', '--example', 'outline', '--', ...part]);
    if (done.status !== 0) throw new Error(`outline: ${done.stderr}`);
    return done.stdout.split('\n').filter(Boolean).map((line) => merged(JSON.parse(line).outline));
  });
}

/** Words a comment parts are one run of words here. */
function merged(outline) {
  const together = (items) => items.reduce((list, item) => {
    const last = list.at(-1);
    if (last && last[0] === 'words' && item[0] === 'words') last[2] = item[2];
    else list.push([...item]);
    return list;
  }, []);
  for (const block of outline.blocks) {
    for (const line of block.lines) {
      line.items = together(line.items);
      for (const clause of line.clauses) clause.items = together(clause.items);
    }
  }
  return outline;
}

/** The trees the generated parser makes of files: nodes { type, field, start, end, children }, in bytes. */
export function trees(paths) {
  return inParts(paths, 500).flatMap((part) => {
    const list = join(part[0], '..', 'paths.txt');
    writeFileSync(list, part.join('\n') + '\n');
    const done = run(process.env.TREE_SITTER ?? 'tree-sitter', ['parse', '--paths', list]);
    const found = readTrees(done.stdout);
    if (found.length !== part.length) throw new Error(`${found.length} trees of ${part.length} files\n${done.stderr}`);
    return found.map((tree, index) => inBytes(tree, readFileSync(part[index])));
  });
}

function readTrees(text) {
  const found = [];
  const open = [];
  const pattern = /(?:(\w+): )?\((MISSING )?("[^"]*"|\w+) \[(\d+), (\d+)\] - \[(\d+), (\d+)\]|\)/g;
  for (const match of text.matchAll(pattern)) {
    if (match[0] === ')') {
      const node = open.pop();
      if (!node) continue;
      (open.at(-1)?.children ?? found).push(node);
      continue;
    }
    const [, field, missing, type, ...at] = match;
    open.push({ type: missing ? 'MISSING' : type, field, from: at.slice(0, 2).map(Number), to: at.slice(2).map(Number), children: [] });
  }
  return found;
}

function inBytes(tree, bytes) {
  const starts = [0];
  for (let i = 0; i < bytes.length; i += 1) if (bytes[i] === 10) starts.push(i + 1);
  const settle = (node) => {
    node.start = starts[node.from[0]] + node.from[1];
    node.end = starts[node.to[0]] + node.to[1];
    node.children.forEach(settle);
  };
  settle(tree);
  return tree;
}

const LINES = ['step', 'property', 'amount', 'unknown'];
const place = (node) => (node ? [node.start, node.end] : null);
const of = (node, type) => node.children.find((child) => child.type === type);

/** A tree in the form of the outline of the notation's own grammar. */
export function outlineOf(tree, bytes) {
  const blocks = [];
  const comments = [];
  const walk = (node) => {
    if (node.type === 'ERROR' || node.type === 'MISSING') throw new Error(`an error node at byte ${node.start}`);
    if (node.type === 'comment') comments.push(place(node));
    node.children.forEach(walk);
  };
  walk(tree);
  for (const node of tree.children) {
    if (node.type === 'loose') blocks.push({ kind: 'loose', keyword: [0, 0], name: [0, 0], lines: lines(node) });
    if (node.type === 'block') {
      const header = of(node, 'header');
      const [kind, ...rest] = header.children.filter((child) => child.type !== 'comment');
      const word = bytes.subarray(kind.start, kind.end).toString().toLowerCase();
      const kinds = { material: 'chemical', step: 'steps' };
      blocks.push({
        kind: kind.type === 'unknown_kind' ? 'unknown' : (kinds[word] ?? word),
        keyword: place(kind),
        name: rest.length ? [rest[0].start, rest.at(-1).end] : null,
        lines: lines(node),
      });
    }
  }
  return { blocks, comments };
}

function lines(block) {
  return block.children.filter((child) => LINES.includes(child.type)).map((line) => {
    const head = line.children.find((child) => ['verb', 'key', 'unknown_word'].includes(child.type));
    const prose = of(line, 'prose');
    const content = line.children.filter((child) => child !== head && child !== prose && !['comment', 'clause', 'unread'].includes(child.type));
    return {
      span: place(line),
      head: head ? { span: place(head), known: head.type !== 'unknown_word' } : null,
      prose: place(prose),
      items: items(content),
      clauses: line.children.filter((child) => child.type === 'clause').map((clause) => ({
        word: place(clause.children[0]),
        items: items(clause.children.slice(1).filter((child) => child.type !== 'comment')),
      })),
      unread: place(of(line, 'unread')),
    };
  });
}

/** A unit is the front of the words behind a number. */
function items(nodes) {
  const found = [];
  const words = (node) => {
    const last = found.at(-1);
    if (last?.[0] === 'words') last[2] = node.end;
    else found.push(['words', node.start, node.end]);
  };
  const number = { number: 'number', date: 'date', malformed_number: 'malformed' };
  for (const node of nodes) {
    if (node.type === 'quantity') {
      for (const part of node.children) {
        if (part.type === 'unit') words(part);
        else if (number[part.type]) found.push([number[part.type], part.start, part.end]);
      }
    } else if (['words', 'condition', 'reason'].includes(node.type)) {
      words(node);
    } else {
      found.push([node.type, node.start, node.end]);
    }
  }
  return found;
}
