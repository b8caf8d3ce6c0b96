// Holds the generated parser against the notation's own grammar on every case: the same blocks, lines, heads, items,
// clauses and comments, byte for byte. `--cut` adds every case cut short at many places.
import { readFileSync, rmSync } from 'node:fs';

import { asFiles, cases } from './cases.mjs';
import { normative, outlineOf, trees } from './outlines.mjs';

const list = cases();
if (process.argv.includes('--cut')) {
  for (const one of cases()) {
    const letters = [...one.text];
    const step = Number(process.env.CUT_STEP ?? 7);
    for (let at = 1; at < letters.length; at += step) {
      list.push({ ...one, name: `${one.name}, cut at ${at}`, text: letters.slice(0, at).join('') });
      list.push({ ...one, name: `${one.name}, without letter ${at}`, text: letters.filter((_, i) => i !== at).join('') });
    }
  }
}

const empty = (span) => !span || span[0] === span[1];
/** The form both sides are compared in; spans of nothing are alike wherever they lie. */
function plain(outline) {
  return {
    comments: outline.comments,
    blocks: outline.blocks
      .filter((block) => block.kind !== 'loose' || block.lines.length > 0)
      .map((block) => ({
        kind: block.kind,
        keyword: empty(block.keyword) ? null : block.keyword,
        name: empty(block.name) ? null : block.name,
        lines: block.lines.map((line) => ({
          span: line.span,
          head: line.head && [line.head.known, ...line.head.span],
          prose: empty(line.prose) ? null : line.prose,
          items: line.items,
          clauses: line.clauses.map((clause) => ({ word: clause.word, items: clause.items })),
          unread: line.unread,
        })),
      })),
  };
}

const { folder, paths } = asFiles(list);
const [theirs, ours] = [normative(paths), trees(paths)];
let differ = 0;
let lines = 0;
let sound = 0;
const odd = (line) => line.unread || (line.head && !line.head[0]) || [line, ...line.clauses].some((part) => part.items.some(([form]) => ['odd', 'malformed', 'aside'].includes(form)));
list.forEach((one, index) => {
  const bytes = readFileSync(paths[index]);
  const expected = plain(theirs[index]);
  let got;
  try {
    got = plain(outlineOf(ours[index], bytes));
  } catch (error) {
    got = String(error);
  }
  const all = expected.blocks.flatMap((block) => block.lines);
  lines += all.length;
  sound += all.filter((line) => !odd(line)).length;
  if (JSON.stringify(expected) === JSON.stringify(got)) return;
  differ += 1;
  if (differ > 20) return;
  console.log(`${one.group}: ${one.name}: the grammars differ`);
  if (typeof got === 'string') return console.log(`  ${got}`);
  const flat = (outline) => [
    ...outline.blocks.flatMap((block) => [JSON.stringify({ ...block, lines: block.lines.length }), ...block.lines.map((line) => JSON.stringify(line))]),
    JSON.stringify(outline.comments),
  ];
  const [left, right] = [flat(expected), flat(got)];
  const at = left.findIndex((row, i) => row !== right[i]);
  const row = /\[(\d+),(\d+)\]/.exec(left[at] ?? '');
  if (row) console.log(`  text:     ${bytes.subarray(Number(row[1]), Number(row[2])).toString()}`);
  console.log(`  notation: ${left[at] ?? 'nothing'}\n  parser:   ${right[at] ?? 'nothing'}`);
});
rmSync(folder, { recursive: true });
if (list.length < 200 || lines < 2000) {
  console.log(`only ${list.length} cases with ${lines} lines: some were not found`);
  process.exit(1);
}
console.log(`${list.length} cases, ${lines} lines, ${sound} of them without a fault of form: ${differ === 0 ? 'the grammars agree' : `${differ} cases differ`}`);
process.exit(differ === 0 ? 0 : 1);
