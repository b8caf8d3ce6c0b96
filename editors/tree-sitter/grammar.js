/**
 * The notation, line by line.
 *
 * As in the notation's own grammar (spec/notation.pest), this file knows shapes only: numbers, words, clauses. What depends
 * on the left edge, on indentation or on the tables of words comes from src/scanner.c. Every text can be read: what has no
 * shape becomes `odd` or `unread`, and there is never an error node.
 */
/* global module, grammar, token, seq, choice, repeat, repeat1, optional, alias, field, prec */

// ---- numbers ----

const B = '[ \\t\\u00a0\\u2009\\u202f]';
const VULGAR = '[\\u00bc-\\u00be\\u2150-\\u215e\\u2189]';
const DIGITS = '[0-9]+';
const VALUE =
  `[-\\u2212]?(${DIGITS}(\\.${DIGITS}|[/\\u2044]${DIGITS}|${B}*${VULGAR}|${B}+${DIGITS}[/\\u2044]${DIGITS})?|${VULGAR}|\\.${DIGITS})`;
const DASH = '[-\\u2013\\u2014\\u2212]';
const UNIT_LETTERS = '[a-zA-Z\\u00b0%/\\u00b5\\u03bc]+';
const PLUS_MINUS = '(\\u00b1|\\+/-|\\+-)';
const AMOUNT =
  `${VALUE}(${B}*${DASH}${B}*${VALUE}|${B}*:${B}*${VALUE}|(${B}*${UNIT_LETTERS}(${B}+${UNIT_LETTERS})?)?${B}*${PLUS_MINUS}${B}*${VALUE})?`;
const QUALIFIER =
  `(([aA][bB][oO][uU][tT]|[aA][rR][oO][uU][nN][dD]|[rR][oO][uU][gG][hH][lL][yY]|[aA][pP][pP][rR][oO][xX][iI][mM][aA][tT][eE][lL][yY]|[aA][tT]${B}+([lL][eE][aA][sS][tT]|[mM][oO][sS][tT]))${B}+|[~\\u2248\\u2265\\u2264]${B}*)`;
const SEPARATOR = '[.,/\\u2044\\-\\u2013\\u2014:]';
const TO = `(${B}+[tT][oO]${B}+${VALUE})`;

// ---- words ----

// Characters outside ASCII that are no part of a word, and those that end one.
const NOT_IN_WORD =
  '\\x00-\\x7f\\u00a0\\u00b1\\u2013\\u2014\\u201c-\\u201e\\u2026\\u2022\\u00d7\\u00b7\\u2248\\u2265\\u2264\\u2212\\u2192\\u0085\\u1680\\u2000-\\u200a\\u2028\\u2029\\u202f\\u205f\\u3000';
const BEYOND_ASCII = `[^${NOT_IN_WORD}]`;
const BEYOND_ASCII_START = `[^${NOT_IN_WORD}\\u00bc-\\u00be\\u2150-\\u215e\\u2189\\u200b-\\u200f\\u2060\\ufeff\\u00ad]`;
const MARK = `[#$%&'\\-._\`@+]|:[a-zA-Z0-9]|${BEYOND_ASCII}`;
const INSIDE = `([a-zA-Z0-9]|${MARK}|/+([a-zA-Z]|${MARK}))`;
const WORD =
  `([a-zA-Z%&'_@$]|-[\\p{L}]|/+([a-zA-Z]|${MARK})|/|${BEYOND_ASCII_START})${INSIDE}*/*|#[0-9][0-9]?[0-9]?`;

const BLANKS = ' \\t\\x0b\\x0c\\u0085\\u00a0\\u1680\\u2000-\\u200a\\u2028\\u2029\\u202f\\u205f\\u3000';
const BLANK = `[${BLANKS}]`;
const NO_BLANK = `[^${BLANKS}\\r\\n]`;

const re = (source) => token(new RegExp(source));
const anyCase = (word) => [...word].map((letter) => `[${letter}${letter.toUpperCase()}]`).join('');

const CONNECTORS = [
  'in', 'into', 'with', 'without', 'at', 'for', 'to', 'on', 'onto', 'over', 'under', 'as', 'every', 'through', 'before',
  'bought', 'by', 'after', 'and',
];

/** Items up to the first connecting word, clauses after it, and what no item can read. */
const content = ($) => [repeat($._item), repeat($.clause), optional($.unread)];

module.exports = grammar({
  name: 'dye',

  externals: ($) => [
    $._end, // a logical line ends
    $._join, // a line break inside a logical line
    $._start, // a body line that opens with neither verb nor key
    $.kind,
    $._use,
    $._unknown_kind,
    $.name,
    $.verb,
    $.key,
    $._prose_key,
    $._unknown_word,
    $._prose,
    $._condition,
    $.unit,
    $.quoted,
    $.aside,
    $.colour,
    $._unread,
    $._in_recovery, // never in the grammar: valid only while the parser recovers, which it never needs to
  ],

  extras: ($) => [
    /[ \t\r\n\x0b\x0c\u0085\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000\u200b-\u200f\u2060\ufeff\u00ad]/,
    $._join,
    $.comment,
  ],

  rules: {
    source_file: ($) => seq(optional($.loose), repeat($.block)),

    /** Lines in front of the first block. */
    loose: ($) => repeat1($._body_line),

    block: ($) => seq($.header, $._end, repeat($._body_line)),

    header: ($) =>
      choice(
        seq(field('kind', $.kind), optional(field('name', $.name))),
        seq(field('kind', alias($._unknown_kind, $.unknown_kind)), optional(field('name', $.name))),
        seq(field('kind', alias($._use, $.kind)), ...content($)),
      ),

    _body_line: ($) => seq(choice($.step, $.property, $.amount, $.unknown), $._end),

    step: ($) => seq(field('verb', $.verb), ...content($)),

    property: ($) =>
      choice(
        seq(field('key', $.key), ...content($)),
        seq(optional($._start), field('key', alias($._prose_key, $.key)), optional(field('value', $.prose))),
      ),

    /** A line that opens with a number, or with anything else that is no word. */
    amount: ($) => seq($._start, ...content($)),

    /** A line whose first word is neither verb nor key. */
    unknown: ($) => seq(optional($._start), alias($._unknown_word, $.unknown_word), ...content($)),

    clause: ($) =>
      choice(
        seq(field('connector', $.connector), repeat($._item)),
        seq(field('connector', alias($._because, $.connector)), optional(alias($.prose, $.reason))),
        seq(field('connector', alias($._until, $.connector)), optional($.condition), repeat($._item)),
        seq(
          field('connector', alias($._from, $.connector)),
          optional(seq(choice($._not_a_number, alias($._start_quantity, $.quantity)), repeat($._item))),
        ),
      ),

    _item: ($) => choice($.quantity, $._not_a_number),
    _not_a_number: ($) => choice($.words, $.comma, $.quoted, $.aside, $.colour, $.odd),

    quantity: ($) => seq(choice($.number, $.date, $.malformed_number), optional($.unit)),
    // Straight after `from` a number opens no range with `to`.
    _start_quantity: ($) => seq(choice(alias($._start_number, $.number), $.date, $.malformed_number), optional($.unit)),

    words: ($) => prec.right(repeat1($._word)),
    condition: ($) => repeat1($._condition),
    prose: ($) => repeat1($._prose),
    unread: ($) => repeat1($._unread),

    // Of two tokens of the same length the one that stands first here is taken.
    connector: () => re(CONNECTORS.map(anyCase).join('|')),
    _because: () => re(anyCase('because')),
    _until: () => re(anyCase('until')),
    _from: () => re(anyCase('from')),

    date: () => re('[0-9]{4}-[0-9]{2}-[0-9]{2}'),
    malformed_number: ($) => choice($._hyphen_and_fraction, $._run_on_number),
    _hyphen_and_fraction: () => re(`${DIGITS}-(${DIGITS}[/\\u2044]${DIGITS}|${VULGAR})${TO}?`),
    number: () => re(`${QUALIFIER}?${AMOUNT}${TO}?`),
    _start_number: () => re(`${QUALIFIER}?${AMOUNT}`),
    _run_on_number: () => re(`[-\\u2212]?((${DIGITS}|${VULGAR})(${SEPARATOR}(${DIGITS}|${VULGAR}))+|\\.${DIGITS}(${SEPARATOR}(${DIGITS}|${VULGAR}))*)${TO}?`),

    _word: () => re(WORD),
    comma: () => ',',
    odd: () =>
      re(
        '[!)*+.:;<=>?\\[\\\\\\]^{|}~`\\-\\u00b1\\u2013\\u2014\\u2026\\u2022\\u00d7\\u00b7\\u2248\\u2265\\u2264\\u2212\\u2192\\x01-\\x08\\x0e-\\x1f\\x7f][;:=<>*+!?|\\\\^~\\[\\]{}).]*',
      ),

    // `#` alone or before a blank; `#word` is longer and is read by the scanner.
    comment: () => re(`#(${BLANK}+${NO_BLANK}+)*`),
  },
});
