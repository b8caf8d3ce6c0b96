// Writes syntaxes/dye.tmLanguage.json from the words. Run it after a change to them: `npm run grammar`.
//
// The scopes here are those that package.json gives the server's semantic tokens, so a file keeps its colours when the
// server comes in; the server then only makes them exact (it knows which names are declared).
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import { CONNECTORS, DOUBTFUL, KEYS, KINDS, MANNERS, MONEY, PROSE, UNITS, verbs } from "./words.mjs";

const OUT = fileURLToPath(new URL("../syntaxes/dye.tmLanguage.json", import.meta.url));

const escaped = (word) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replace(/ /g, "\\s+");
/** One of these words, the longest first. */
const any = (words) => [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).map(escaped).join("|");

// A comment: `#` alone or before a blank, not in the middle of a word.
const COMMENT = "#(?=\\s|$)";
const NOT_COMMENT = `(?!${COMMENT})`;
const WORD_END = "(?![\\w°%/'’&.@+-]|[^\\x00-\\x7F–—“”„·×…])";
const HEAD_END = "(?=[\\s,]|$)";
const CONNECTOR = `(?i:(?!at\\s+(?:least|most)\\b)(?:${any(CONNECTORS)}))${WORD_END}`;

const VULGAR = "[¼-¾⅐-⅞↉]";
const VALUE = `(?:\\d+(?:\\.\\d+|[/⁄]\\d+|\\s*${VULGAR}|\\s+\\d+[/⁄]\\d+)?|${VULGAR}|\\.\\d+)`;
const SIGN = "[-−]?";
const QUALIFIER = "(?:(?i:about|around|roughly|approximately|at\\s+least|at\\s+most)\\s+(?=[-−.\\d¼-¾⅐-⅞])|[~≈≥≤]\\s*)?";
const SIMPLE_UNIT = `(?:${any(Object.values(UNITS).flat())})`;
const UNIT_WORD = `(?:(?i:${SIMPLE_UNIT})|${any(DOUBTFUL)}|${MONEY})(?![\\w²³'’&]|[^\\x00-\\x7F–—“”„·×…])`;
// A unit, or one over another, over a number and a unit, or over a word for the goods.
const UNIT = `(?:${UNIT_WORD}(?:\\s*(?:/|(?i:per)(?=\\s))\\s*(?:(?:\\d+(?:\\.\\d+)?\\s*)?${UNIT_WORD}|[\\p{L}-]+))?|%(?!\\w))`;
const TAIL = `(?:\\s*[-–—−]\\s*${SIGN}${VALUE}|\\s*:\\s*${VALUE}|\\s+(?i:to)\\s+${SIGN}${VALUE}(?![.,/:–—-]\\d))?`;
const TOLERANCE = `(?:\\s*(?:°?[CF]\\s*)?(?:±|\\+/?-)\\s*${VALUE})?`;
// `2,5` and `1-1/2` are numbers that can be read in two ways; the server says so.
const MALFORMED = "\\d+(?:[.,/⁄:–—-]\\d+)+";
// Taken whole or not at all, so that a long row of digits and strokes costs no more than its length.
const NUMBER = `(?>${QUALIFIER}(?:\\d{4}-\\d{2}-\\d{2}(?!\\d)|\\d+-\\d+/\\d+|\\d+(?:,\\d+)+(?:\\.\\d+)?|${SIGN}${VALUE}(?!,\\d)${TAIL}${TOLERANCE}|${MALFORMED}))`;
const NUMBER_START = "(?:[-−]?[\\d¼-¾⅐-⅞]|[-−]?\\.\\d|[~≈≥≤])";

const STOP = `(?:${CONNECTOR}|${COMMENT}|["“”„(]|${NUMBER_START}|(?i:${any(MANNERS)})${WORD_END})`;
const PIECE = `(?!${STOP})[^\\s,"“”„()]++`;
// Words that may be a name: they end at a comma, a connecting word, a number or a word of manner. A number joins a name
// when nothing that counts stands behind it (Reactive Blue 4).
const NAME = `${PIECE}(?:\\s+${PIECE})*(?:\\s+\\d{1,3}(?=\\s*(?:$|,|${CONNECTOR}|${COMMENT})))?`;

// A line that goes on: four columns deeper than the line it continues, or a comment of its own in between.
const DEEPER = "(?: {4}| {0,3}\\t)[ \\t]*(?=[^\\s])";
const GOES_ON = `^(?:\\1${DEEPER}|[ \\t]*${COMMENT})`;
const INDENT = "^([ \\t]+)";

const scope = {
  block: "keyword.control.block.dye",
  kind: "keyword.other.kind.dye",
  title: "entity.name.section.dye markup.heading.dye",
  goods: "entity.name.type.class.goods.dye",
  mix: "entity.name.type.struct.mix.dye",
  material: "variable.other.readwrite.material.dye",
  layout: "entity.name.type.interface.layout.dye",
  zone: "variable.other.enummember.zone.dye",
  vessel: "entity.name.type.class.vessel.dye",
  verb: "entity.name.function.verb.dye",
  key: "keyword.other.key.dye",
  connector: "keyword.operator.clause.dye",
  number: "constant.numeric.dye",
  unit: "keyword.other.unit.dye",
  prose: "string.unquoted.prose.dye",
  quoted: "string.quoted.double.dye",
  aside: "string.other.aside.dye",
  colour: "constant.numeric.colour.dye",
  comment: "comment.line.number-sign.dye",
};
const named = (name) => ({ name });
const captures = (...names) => Object.fromEntries(names.map((name, index) => [index + 1, named(name)]).filter(([, it]) => it.name));
const include = (name) => ({ include: `#${name}` });

/** A body line that opens with one of these words, and what continues it. */
function line(words, headScope, patterns, contentName) {
  return {
    begin: `${INDENT}(?i:(${any(words)}))${HEAD_END}`,
    beginCaptures: { 2: named(headScope) },
    while: GOES_ON,
    ...(contentName ? { contentName } : {}),
    patterns,
  };
}

/** A body line whose first words are about goods, a liquor or a group of steps. */
function step(words, direct) {
  const name = { goods: scope.goods, liquor: scope.mix, material: scope.mix, steps: scope.title }[direct];
  const rest = [include("comment"), include("expression")];
  if (!name) return line(words, scope.verb, rest);
  const article = "(?:(?i:the|all)\\s+)?";
  const what = direct === "steps" ? `((?i:steps?))\\s+(${NAME}(?:\\s+(?i:at\\s+a|of)\\s+\\S+)*)` : `${article}(${NAME}(?:\\s*,\\s*${NAME})*)`;
  const listed = { patterns: [include("comma"), { match: NAME, name }] };
  return {
    begin: `${INDENT}(?i:(${any(words)}))${HEAD_END}(?:\\s+(?!${STOP})${what})?`,
    beginCaptures: { 2: named(scope.verb), ...(direct === "steps" ? { 3: named(scope.kind), 4: named(name) } : { 3: listed }) },
    while: GOES_ON,
    patterns: rest,
  };
}

/** Blocks with keys whose value is the name of a material, a fibre or a dye class. */
const MATERIAL_KEYS = { goods: true, dye: true, chemical: true };

function block(kind, nameScope) {
  const header = `((?!${COMMENT})\\S+(?:\\s+(?!${COMMENT})\\S+)*)`;
  const patterns = [include("comment")];
  if (PROSE[kind]?.length) patterns.push(line(PROSE[kind], scope.key, [include("comment")], scope.prose));
  if (kind === "layout") patterns.push(include("zone-line"), include("beside-line"));
  if (kind === "log") patterns.push(include("made-line"));
  if (kind === "variant") patterns.push(include("in-line"));
  if (KEYS[kind]?.length) patterns.push(line(KEYS[kind], scope.key, [include("comment"), include("expression")]));
  if (kind === "steps" || kind === "variant") patterns.push(include("verbs"));
  if (kind === "variant") patterns.push(include("any-key"));
  // Any other line: an amount first, or words no table knows.
  if (MATERIAL_KEYS[kind]) patterns.splice(1, 0, include("material-line"));
  patterns.push({ begin: `${INDENT}(?=\\S)|^(?=\\d)`, while: `^(?:\\1${DEEPER}|[ \\t]*${COMMENT})`, patterns: [include("comment"), include("expression")] });
  return {
    name: `meta.block.${kind}.dye`,
    begin: `^(?i:(${any(KINDS[kind])}))(?=\\s|$)(?:[ \\t]+${header})?`,
    beginCaptures: { 1: named(scope.block), 2: named(nameScope) },
    end: `^(?=\\S)(?!${COMMENT}|\\d)`,
    patterns,
  };
}

const groups = verbs();
const by = (direct) => groups.filter((verb) => verb.direct === direct).flatMap((verb) => verb.spellings);

const grammar = {
  name: "Dye recipe",
  scopeName: "source.dye",
  fileTypes: ["dye"],
  patterns: [include("comment"), ...Object.keys(KINDS).map((kind) => include(`block-${kind}`)), include("block-unknown")],
  repository: {
    comment: { match: `(?<![^\\s,"“”„();:])#(?:\\s.*)?$`, name: scope.comment },
    "block-use": {
      name: "meta.block.use.dye",
      begin: "^(?i:(use))(?=\\s|$)",
      beginCaptures: captures(scope.block),
      end: `^(?=\\S)(?!${COMMENT}|\\d)`,
      patterns: [
        include("comment"),
        include("quoted"),
        line(PROSE.use, scope.key, [include("comment")], scope.prose),
        { match: "(?<=\\s)(?i:from)(?=\\s+[\"“”„])", name: scope.connector },
        include("comma"),
      ],
    },
    "block-edition": {
      name: "meta.block.edition.dye",
      begin: "^(?i:(edition))(?=\\s|$)",
      beginCaptures: captures(scope.block),
      end: `^(?=\\S)(?!${COMMENT})`,
      patterns: [include("comment"), { match: "\\S(?:[^#]*[^#\\s])?", name: scope.title }],
    },
    "block-recipe": block("recipe", scope.title),
    "block-goods": block("goods", scope.goods),
    "block-dye": block("dye", scope.material),
    "block-chemical": block("chemical", scope.material),
    "block-mix": block("mix", scope.mix),
    "block-layout": block("layout", scope.layout),
    "block-vessel": block("vessel", scope.vessel),
    "block-steps": block("steps", scope.title),
    "block-variant": block("variant", scope.title),
    "block-log": block("log", scope.title),
    "block-shelf": block("shelf", scope.title),
    verbs: {
      patterns: [
        step(by("goods"), "goods"),
        step(by("liquor"), "liquor"),
        step(by("steps"), "steps"),
        // An amount of a material, or a mix as a whole.
        step(by("material"), "material"),
        step(by("none"), "none"),
      ],
    },
    "zone-line": {
      begin: `${INDENT}(?i:(zone))${HEAD_END}(?:\\s+(${NUMBER})\\s*(%)?)?(?:\\s+(${NAME}))?`,
      beginCaptures: { 2: named(scope.key), 3: named(scope.number), 4: named(scope.unit), 5: named(scope.zone) },
      while: GOES_ON,
      patterns: [include("comment"), include("expression")],
    },
    "made-line": {
      begin: `${INDENT}(?i:(made))${HEAD_END}(?:\\s+(${NUMBER})(?:\\s+(?!${STOP}|${UNIT_WORD})(${NAME}))?)?`,
      beginCaptures: { 2: named(scope.key), 3: named(scope.number), 4: named(scope.goods) },
      while: GOES_ON,
      patterns: [include("comment"), include("expression")],
    },
    "in-line": {
      patterns: Object.entries({ mix: scope.mix, goods: scope.goods, layout: scope.layout, vessel: scope.vessel, steps: scope.title, dye: scope.material, chemical: scope.material }).map(([kind, name]) => ({
        begin: `${INDENT}(?i:(in))\\s+(?i:(${any(KINDS[kind])}))(?:\\s+(${NAME}?)(?:\\s+(?i:(instead)))?(?=\\s*(?:$|${COMMENT})))?`,
        beginCaptures: { 2: named(scope.key), 3: named(scope.kind), 4: named(name), 5: named("meta.manner.dye") },
        while: GOES_ON,
        patterns: [include("comment"), include("expression")],
      })),
    },
    "beside-line": line(["beside", "front", "back"], scope.key, [include("comment"), include("comma"), { match: NAME, name: scope.zone }]),
    "material-line": line(["class", "index", "is", "thread"], scope.key, [
      include("comment"), include("quoted"), include("comma"),
      { match: `(?!${COMMENT})[^\\s,\"“”„]+(?:\\s+(?!${COMMENT})[^\\s,\"“”„]+)*`, name: scope.material },
    ]),
    "block-unknown": {
      name: "meta.block.unknown.dye",
      begin: `^(?!${COMMENT})([\\p{L}][^\\s#]*)(?:[ \\t]+((?!${COMMENT})\\S+(?:\\s+(?!${COMMENT})\\S+)*))?`,
      beginCaptures: { 1: named(scope.block), 2: named("entity.name.section.dye") },
      end: `^(?=\\S)(?!${COMMENT}|\\d)`,
      patterns: [include("comment"), include("expression")],
    },
    "any-key": {
      patterns: [
        line(Object.values(PROSE).flat(), scope.key, [include("comment")], scope.prose),
        line(Object.values(KEYS).flat(), scope.key, [include("comment"), include("expression")]),
      ],
    },
    expression: {
      patterns: [
        include("quoted"), include("aside"), include("colour"), include("until"), include("placed"), include("amount"),
        include("number"), include("connector"), include("manner"), include("comma"), { match: "[^\\s,#\"“”„()]+" },
      ],
    },
    quoted: { match: "[\"“”„](?:[^\"“”„]*[\"“”„]|(?:(?!\\s#(?:\\s|$)).)*)", name: scope.quoted },
    aside: { match: "\\((?:[^)]*\\)|(?:(?!\\s#(?:\\s|$)).)*)", name: scope.aside },
    colour: { match: `#\\h{6}(?!\\w)`, name: scope.colour },
    // A sign to look for: words for people, up to a comma or a connecting word with a number behind it.
    until: {
      match: `((?i:until))${WORD_END}(?:\\s+(?!${NUMBER_START})((?:(?!\\s*,|\\s+#(?:\\s|$)|\\s+${CONNECTOR}\\s+${NUMBER_START}|\\s*$).)+))?`,
      captures: captures(scope.connector, "string.unquoted.condition.dye"),
    },
    // Names that a connecting word tells the kind of.
    placed: {
      patterns: [
        { match: `((?i:onto|on))\\s+(?:(?i:the)\\s+)?(?!${STOP})(${NAME})`, captures: captures(scope.connector, scope.zone) },
        { match: `((?i:in|with|under|from|to))\\s+((?:(?i:cold|lukewarm|warm|hot|boiling|running)\\s+)?(?i:water))${WORD_END}`, captures: captures(scope.connector, scope.material) },
        { match: `((?i:as))\\s+(?!${STOP})(${NAME})`, captures: captures(scope.connector, scope.layout) },
        { match: `((?i:in|for))\\s+((?i:steps?))\\s+(${NAME})`, captures: captures(scope.connector, scope.kind, scope.title) },
        { match: `((?i:into|in|from|to))\\s+(?:(?i:the)\\s+)?(?!${STOP}|(?i:sealed|a|an|cold|lukewarm|warm|hot|boiling|water|all|tray|rack|shade|half|middle)${WORD_END})(${NAME})`, captures: captures(scope.connector, scope.mix) },
      ],
    },
    amount: {
      patterns: [
        // How much, of what. Times and temperatures never take a material.
        { match: `(?<![\\w.,/⁄:–—-])(${NUMBER})\\s*(?:((?i:${any(UNITS.time.concat(UNITS.temperature, UNITS.length, UNITS.count.filter((unit) => !unit.startsWith("part") && unit !== "drop")))})(?![\\w/²³'’]|\\s+(?i:per)\\b)))`, captures: captures(scope.number, scope.unit) },
        { match: `(?<![\\w.,/⁄:–—-])(${NUMBER})\\s*(${UNIT})(?:\\s+(?:(?i:of)\\s+)?(?!${STOP})(${NAME}))?`, captures: { 1: named(scope.number), 2: { name: scope.unit, patterns: [include("number"), include("per")] }, 3: named(scope.material) } },
        { match: "(?<![\\w.,/⁄:–—-])(\\d+(?:\\.\\d+)?\\s*:\\s*\\d+(?:\\.\\d+)?)(?:\\s+(?!" + STOP + ")(" + NAME + "))?", captures: captures(scope.number, scope.material) },
      ],
    },
    // `per tee`: a word for the goods.
    per: { match: `(?<=(?i:per))\\s+(?!${UNIT_WORD})([\\p{L}-]+)`, captures: captures(scope.goods) },
    number: { match: `(?<![\\w.,/⁄:–—-])${NUMBER}`, name: scope.number },
    connector: { match: `(?<![\\w'’-])${CONNECTOR}`, name: scope.connector },
    manner: { match: `(?<![\\w'’-])(?i:${any(MANNERS)})${WORD_END}`, name: "meta.manner.dye" },
    comma: { match: ",", name: "punctuation.separator.comma.dye" },
  },
};

export const text = `${JSON.stringify(grammar, null, 2)}\n`;
if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(OUT, text);
