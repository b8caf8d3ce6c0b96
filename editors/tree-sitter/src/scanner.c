/*
 * What the grammar of a line cannot see: the left edge, indentation, continued lines, and the tables of words.
 *
 * The state is one logical line's: the kind of block it stands in, how far it is indented, and whether it began. Every
 * function reads on from where the lexer stands; `mark` says how far the token found so far reaches.
 */
#include "tree_sitter/alloc.h"
#include "tree_sitter/parser.h"

#include <string.h>

#include "words.h"

enum TokenType {
  END,
  JOIN,
  START,
  KIND,
  USE,
  UNKNOWN_KIND_WORD,
  NAME,
  VERB,
  KEY,
  PROSE_KEY,
  UNKNOWN_WORD,
  PROSE_TEXT,
  CONDITION,
  UNIT,
  QUOTED,
  ASIDE,
  COLOUR,
  UNREAD,
  IN_RECOVERY,
};

/* Longer than any head or unit of the tables; longer words match nothing. */
#define LONGEST 64
#define WIDEST 250

typedef struct {
  uint8_t kind;          /* enum Kind of the block */
  uint8_t in_line;       /* a body line has begun and not ended */
  uint8_t indent;        /* its indentation in columns, at most WIDEST */
  uint8_t body_indent;   /* that of the last body line that was not at the left edge */
  uint8_t colour_wanted; /* its key is `colour` */
  uint8_t goes_on;       /* comments are being passed on the way to its continuation, which is known to be there */
} State;

typedef struct {
  char text[LONGEST + 1]; /* lower case, blanks in a row as one */
  unsigned length;
  bool too_long;
  bool capitals; /* nothing but capital letters */
} Words;

static int32_t at(const TSLexer *lexer) { return lexer->lookahead; }
static void next(TSLexer *lexer) { lexer->advance(lexer, false); }
static void pass(TSLexer *lexer) { lexer->advance(lexer, true); }
static bool ended(TSLexer *lexer) { return lexer->eof(lexer); }

static bool found(TSLexer *lexer, enum TokenType type) {
  lexer->result_symbol = type;
  return true;
}

/* ---- characters, as the notation sorts them ---- */

static bool is_break(int32_t c) { return c == '\n' || c == '\r'; }

static bool is_blank(int32_t c) {
  return c == ' ' || c == '\t' || c == 0x0b || c == 0x0c || c == 0x85 || c == 0xa0 || c == 0x1680 ||
         (c >= 0x2000 && c <= 0x200a) || c == 0x2028 || c == 0x2029 || c == 0x202f || c == 0x205f || c == 0x3000;
}

static bool is_digit(int32_t c) { return c >= '0' && c <= '9'; }
static bool is_letter(int32_t c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
static bool is_vulgar(int32_t c) {
  return (c >= 0xbc && c <= 0xbe) || (c >= 0x2150 && c <= 0x215e) || c == 0x2189;
}
static bool is_quote(int32_t c) { return c == '"' || (c >= 0x201c && c <= 0x201e); }
static bool is_loose_mark(int32_t c) { return c == '~' || c == 0x2248 || c == 0x2265 || c == 0x2264; }
static bool is_minus(int32_t c) { return c == '-' || c == 0x2212; }

static bool is_typographic(int32_t c) {
  return c == 0xb1 || c == 0x2013 || c == 0x2014 || (c >= 0x201c && c <= 0x201e) || c == 0x2026 || c == 0x2022 ||
         c == 0xd7 || c == 0xb7 || is_loose_mark(c) || c == 0x2212 || c == 0x2192;
}

static bool is_beyond_ascii(int32_t c) { return c > 0x7f && !is_blank(c) && !is_typographic(c); }

/* Without `/` and `:`, which depend on what follows. */
static bool is_word_char(int32_t c) {
  return is_letter(c) || is_digit(c) || is_beyond_ascii(c) || (c != 0 && c < 0x80 && strchr("#$%&'-._`@+", c) != NULL);
}

/* ---- tables ---- */

static bool in_table(const char *const *table, const char *word) {
  for (; *table; table++) {
    if (strcmp(*table, word) == 0) return true;
  }
  return false;
}

static bool is_connector(const Words *words) { return !words->too_long && in_table(CONNECTORS, words->text); }

static bool is_one_of(const Words *words, const char *const *list) {
  return !words->too_long && in_table(list, words->text);
}

static const char *const QUALIFIERS[] = {"about", "around", "roughly", "approximately", 0};

/* What a head is in a kind of block: VERB, KEY, PROSE_KEY, or UNKNOWN_WORD if the tables do not have it. */
static enum TokenType head_of(uint8_t kind, const Words *words) {
  if (words->too_long) return UNKNOWN_WORD;
  if (in_table(KEYS[kind], words->text)) return KEY;
  if (in_table(PROSE[kind], words->text)) return PROSE_KEY;
  if (kind == KIND_STEPS || kind == KIND_VARIANT) {
    if (in_table(VERBS, words->text)) return VERB;
  }
  if (kind == KIND_VARIANT) {
    if (in_table(KEYS_ANY, words->text)) return KEY;
    if (in_table(PROSE_ANY, words->text)) return PROSE_KEY;
  }
  return UNKNOWN_WORD;
}

/* ---- reading words ---- */

static void put(Words *words, int32_t c) {
  char bytes[4];
  unsigned count = 0;
  if (!(c >= 'A' && c <= 'Z')) words->capitals = false;
  if (c >= 'A' && c <= 'Z') c += 'a' - 'A';
  if (c < 0x80) {
    bytes[count++] = (char)c;
  } else if (c < 0x800) {
    bytes[count++] = (char)(0xc0 | (c >> 6));
    bytes[count++] = (char)(0x80 | (c & 0x3f));
  } else if (c < 0x10000) {
    bytes[count++] = (char)(0xe0 | (c >> 12));
    bytes[count++] = (char)(0x80 | ((c >> 6) & 0x3f));
    bytes[count++] = (char)(0x80 | (c & 0x3f));
  } else {
    words->too_long = true;
    return;
  }
  if (words->length + count > LONGEST) {
    words->too_long = true;
    return;
  }
  memcpy(words->text + words->length, bytes, count);
  words->length += count;
  words->text[words->length] = 0;
}

static void clear(Words *words) {
  words->length = 0;
  words->text[0] = 0;
  words->too_long = false;
  words->capitals = true;
}

/* Reads a word onto the end of `words`, or nothing if none begins here. A stroke before a digit ends it. */
static bool read_word(TSLexer *lexer, Words *words) {
  int32_t first = at(lexer);
  bool starts = is_letter(first) || is_beyond_ascii(first) || (first != 0 && first < 0x80 && strchr("%&'_@$/-#", first));
  if (!starts || is_vulgar(first) || ended(lexer)) return false;
  if (first == '-' || first == '#') {
    /* `-x` is a word, `-5` and `- x` are not; a `#` is settled elsewhere. */
    if (first == '#') return false;
    next(lexer);
    if (!is_letter(at(lexer)) && !is_beyond_ascii(at(lexer))) return false;
    put(words, first);
  }
  for (;;) {
    int32_t c = at(lexer);
    if (ended(lexer)) return true;
    if (c == '/') {
      put(words, c);
      next(lexer);
      if (is_digit(at(lexer))) return true;
    } else if (is_word_char(c)) {
      put(words, c);
      next(lexer);
    } else {
      return true;
    }
  }
}

static bool skip_blanks(TSLexer *lexer) {
  bool any = false;
  while (is_blank(at(lexer)) && !ended(lexer)) {
    next(lexer);
    any = true;
  }
  return any;
}

static bool line_ends(TSLexer *lexer) { return ended(lexer) || is_break(at(lexer)); }

static void skip_break(TSLexer *lexer) {
  bool carriage = at(lexer) == '\r';
  next(lexer);
  if (carriage && at(lexer) == '\n') next(lexer);
}

/* ---- lines ---- */

/* How a physical line opens. */
typedef enum { NOTHING, COMMENT_LINE, TEXT, NO_LINE } Holds;

static unsigned widen(unsigned indent, int32_t c) {
  unsigned wide = c == '\t' ? indent + 4 - indent % 4 : indent + 1;
  return wide > WIDEST ? WIDEST : wide;
}

/* Reads the front of a physical line; afterwards the lexer stands behind its indentation, or behind `# `. */
static Holds open_line(TSLexer *lexer, unsigned *indent) {
  *indent = 0;
  while (is_blank(at(lexer)) && !ended(lexer)) {
    *indent = widen(*indent, at(lexer));
    next(lexer);
  }
  if (ended(lexer)) return NO_LINE;
  if (is_break(at(lexer))) return NOTHING;
  if (at(lexer) == '#') {
    next(lexer);
    if (line_ends(lexer) || is_blank(at(lexer))) return COMMENT_LINE;
  }
  return TEXT;
}

static void skip_rest(TSLexer *lexer) {
  while (!line_ends(lexer)) next(lexer);
}

/* At a line break inside a body line: does the logical line go on below, past lines that hold only a comment? */
static bool goes_on(TSLexer *lexer, State *state) {
  for (state->goes_on = 0;; state->goes_on = 1) {
    unsigned indent;
    switch (open_line(lexer, &indent)) {
      case NO_LINE:
      case NOTHING:
        state->goes_on = 0;
        return false;
      case TEXT:
        if (indent > 0 && indent >= (unsigned)state->indent + 4) return true;
        state->goes_on = 0;
        return false;
      case COMMENT_LINE:
        skip_rest(lexer);
        if (ended(lexer)) {
          state->goes_on = 0;
          return false;
        }
        skip_break(lexer);
    }
  }
}

/* At a line break: the end of the line, or a place where it is continued. */
static bool at_break(TSLexer *lexer, State *state) {
  if (ended(lexer)) {
    lexer->mark_end(lexer);
    state->in_line = 0;
    return found(lexer, END);
  }
  skip_break(lexer);
  lexer->mark_end(lexer);
  if (state->goes_on) {
    /* Looked for once: a long row of comments is not read again at each of them. */
    unsigned indent;
    state->goes_on = open_line(lexer, &indent) == COMMENT_LINE;
    return found(lexer, JOIN);
  }
  if (state->in_line && goes_on(lexer, state)) {
    return found(lexer, JOIN);
  }
  state->in_line = 0;
  return found(lexer, END);
}

/* Is the next line with text indented? */
static bool next_is_indented(TSLexer *lexer) {
  skip_rest(lexer);
  for (;;) {
    if (ended(lexer)) return false;
    skip_break(lexer);
    unsigned indent;
    Holds holds = open_line(lexer, &indent);
    if (holds == NO_LINE) return false;
    if (holds == TEXT) return indent > 0;
    skip_rest(lexer);
  }
}

static void begin_line(State *state, unsigned indent) {
  if (indent > 0) state->body_indent = (uint8_t)indent;
  state->indent = state->body_indent;
  state->in_line = 1;
  state->goes_on = 0;
  state->colour_wanted = 0;
}

static bool opens_number(int32_t c) { return is_digit(c) || is_vulgar(c); }

/* The head of a body line. The lexer stands at its first character, where the token has been marked to end. */
static bool read_head(TSLexer *lexer, State *state) {
  Words words;
  clear(&words);
  if (!read_word(lexer, &words)) return found(lexer, START);
  enum TokenType head = head_of(state->kind, &words);
  if (is_connector(&words)) {
    if (head == UNKNOWN_WORD || head == VERB) return found(lexer, START);
    lexer->mark_end(lexer);
    return found(lexer, head);
  }
  if (is_one_of(&words, QUALIFIERS) && !(head == PROSE_KEY && state->kind != KIND_VARIANT)) {
    /* `about 20 g` is an amount, `about the same` is none; a mark cannot be taken back, so read_late_head tells. */
    return found(lexer, START);
  }
  lexer->mark_end(lexer);
  state->colour_wanted = strcmp(words.text, "colour") == 0 || strcmp(words.text, "color") == 0;
  /* The longest head the tables have wins, up to three words. */
  for (int count = 1; count < 3 && skip_blanks(lexer); count++) {
    Words more;
    clear(&more);
    put(&words, ' ');
    unsigned before = words.length;
    if (!read_word(lexer, &words)) break;
    memcpy(more.text, words.text + before, words.length - before + 1);
    /* No head goes on beyond a connecting word; one may end with it: `put on`. */
    bool last = is_connector(&more);
    enum TokenType longer = head_of(state->kind, &words);
    if (longer != UNKNOWN_WORD) {
      head = longer;
      state->colour_wanted = 0;
      lexer->mark_end(lexer);
    }
    if (last) break;
  }
  return found(lexer, head);
}

/* Behind START: a word that may loosen a number and stands before none is the head after all. */
static bool read_late_head(TSLexer *lexer, const State *state) {
  Words words;
  clear(&words);
  if (!read_word(lexer, &words) || !is_one_of(&words, QUALIFIERS)) return false;
  lexer->mark_end(lexer);
  skip_blanks(lexer);
  if (opens_number(at(lexer)) || is_minus(at(lexer)) || at(lexer) == '.') return false;
  return found(lexer, head_of(state->kind, &words));
}

/* A line at the left edge that opens no block belongs above if its words say so, or if nothing is indented below. */
static bool read_left_edge(TSLexer *lexer, State *state, const bool *valid) {
  if (opens_number(at(lexer)) || is_loose_mark(at(lexer)) || !(is_letter(at(lexer)) || is_beyond_ascii(at(lexer)))) {
    begin_line(state, 0);
    return read_head(lexer, state);
  }
  /* The first run of anything but blanks is the word that may name a kind. */
  Words words;
  clear(&words);
  bool plain = true; /* so far it is a word of the notation too */
  bool head_marked = false;
  while (!line_ends(lexer) && !is_blank(at(lexer))) {
    plain = plain && (is_word_char(at(lexer)) || at(lexer) == '/');
    if (!plain && !head_marked) {
      lexer->mark_end(lexer);
      head_marked = true;
    }
    put(&words, at(lexer));
    next(lexer);
  }
  for (unsigned i = 0; !words.too_long && KIND_WORDS[i].word; i++) {
    if (strcmp(KIND_WORDS[i].word, words.text) == 0) {
      lexer->mark_end(lexer);
      *state = (State){.kind = (uint8_t)KIND_WORDS[i].kind};
      return found(lexer, state->kind == KIND_USE && valid[USE] ? USE : KIND);
    }
  }
  if (!head_marked) lexer->mark_end(lexer);
  enum TokenType head = head_of(state->kind, &words);
  for (int count = 1; count < 3 && skip_blanks(lexer) && !line_ends(lexer); count++) {
    put(&words, ' ');
    while (!line_ends(lexer) && !is_blank(at(lexer))) {
      put(&words, at(lexer));
      next(lexer);
    }
    enum TokenType longer = head_of(state->kind, &words);
    if (longer != UNKNOWN_WORD) {
      head = longer;
      lexer->mark_end(lexer);
    }
  }
  if (head == UNKNOWN_WORD && next_is_indented(lexer)) {
    *state = (State){.kind = KIND_UNKNOWN};
    return found(lexer, UNKNOWN_KIND_WORD);
  }
  begin_line(state, 0);
  return found(lexer, head);
}

/* Where a line may begin: past blank lines, up to its first character. */
static bool at_line_start(TSLexer *lexer, State *state, const bool *valid) {
  unsigned indent = 0;
  for (;;) {
    int32_t c = at(lexer);
    if (ended(lexer)) return false;
    if (is_break(c)) {
      indent = 0;
    } else if (is_blank(c)) {
      indent = widen(indent, c);
    } else if (c != 0xfeff) {
      break;
    }
    pass(lexer);
  }
  lexer->mark_end(lexer);
  if (at(lexer) == '#') {
    next(lexer);
    if (line_ends(lexer) || is_blank(at(lexer))) return false;
    begin_line(state, indent);
    return found(lexer, START);
  }
  if (indent == 0) return read_left_edge(lexer, state, valid);
  begin_line(state, indent);
  return read_head(lexer, state);
}

/* ---- text that is taken as it stands ---- */

/* To the end of the line or up to a comment; blanks before that are left out. `#` inside closed quotes is no comment. */
static bool read_text(TSLexer *lexer, enum TokenType type) {
  bool any = false;
  bool after_blank = true;
  while (!line_ends(lexer)) {
    int32_t c = at(lexer);
    if (is_blank(c)) {
      after_blank = true;
      next(lexer);
      continue;
    }
    if (c == '#' && after_blank) {
      next(lexer);
      if (line_ends(lexer) || is_blank(at(lexer))) break;
    } else {
      next(lexer);
    }
    lexer->mark_end(lexer);
    after_blank = false;
    any = true;
    if (is_quote(c)) {
      /* Up to the quote that closes it, if one does; a comment in between ends the text only if none does. */
      bool comment = false;
      bool blank = false;
      while (!line_ends(lexer) && !is_quote(at(lexer))) {
        int32_t inside = at(lexer);
        next(lexer);
        if (inside == '#' && blank && (line_ends(lexer) || is_blank(at(lexer)))) comment = true;
        blank = is_blank(inside);
        if (!comment && !blank) lexer->mark_end(lexer);
      }
      if (line_ends(lexer)) return found(lexer, type);
      next(lexer);
      lexer->mark_end(lexer);
    }
  }
  return any && found(lexer, type);
}

/* `"…"`, or from the quote to the end of the line if it is left open; `(…)` likewise, which a comment always ends. */
static bool read_enclosed(TSLexer *lexer, bool quoted) {
  next(lexer);
  lexer->mark_end(lexer);
  bool blank = false;
  bool comment = false;
  while (!line_ends(lexer)) {
    int32_t c = at(lexer);
    next(lexer);
    if (quoted ? is_quote(c) : c == ')' && !comment) {
      lexer->mark_end(lexer);
      break;
    }
    if (c == '#' && blank && (line_ends(lexer) || is_blank(at(lexer)))) {
      comment = true;
      if (!quoted) break;
    }
    blank = is_blank(c);
    if (!comment && !blank) lexer->mark_end(lexer);
  }
  return found(lexer, quoted ? QUOTED : ASIDE);
}

/* A `#` among the items: a comment, a colour, a number such as `#2`, or the beginning of what stays unread. */
static bool read_hash(TSLexer *lexer, const State *state, const bool *valid) {
  next(lexer);
  if (line_ends(lexer) || is_blank(at(lexer))) return false;
  unsigned length = 0;
  bool hex = true;
  bool decimal = true;
  bool any_digit = false;
  while (!line_ends(lexer) && (is_word_char(at(lexer)) || at(lexer) == '/')) {
    int32_t c = at(lexer);
    bool letter = (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
    hex = hex && (is_digit(c) || letter);
    decimal = decimal && is_digit(c);
    any_digit = any_digit || is_digit(c);
    length++;
    next(lexer);
  }
  if (decimal && length >= 1 && length <= 3) return false;
  lexer->mark_end(lexer);
  if (hex && length == 6 && (state->colour_wanted || any_digit)) return valid[COLOUR] && found(lexer, COLOUR);
  if (!valid[UNREAD]) return false;
  read_text(lexer, UNREAD);
  return found(lexer, UNREAD);
}

/* Words to wait for: they end at a comma, or where a connecting word is followed by a number. */
static bool read_condition(TSLexer *lexer, bool first) {
  bool any = false;
  bool held = false; /* a connecting word or qualifier was read and is not yet taken */
  for (;;) {
    int32_t c = at(lexer);
    if (line_ends(lexer)) {
      if (held) lexer->mark_end(lexer);
      any = any || held;
      break;
    }
    if (is_blank(c)) {
      next(lexer);
      continue;
    }
    if (c == ',') {
      if (held) lexer->mark_end(lexer);
      any = any || held;
      break;
    }
    bool number = opens_number(c) || is_loose_mark(c);
    if (number && (held || (first && !any))) break;
    Words words;
    clear(&words);
    bool whole = true;
    bool sign = is_minus(c) || c == '.';
    bool hash = c == '#';
    bool second = false;
    while (!line_ends(lexer) && !is_blank(at(lexer)) && at(lexer) != ',') {
      if (second && sign && (opens_number(at(lexer)) || at(lexer) == '.') && (held || (first && !any))) return any && found(lexer, CONDITION);
      whole = whole && is_letter(at(lexer));
      put(&words, at(lexer));
      next(lexer);
      if (hash && !second && (line_ends(lexer) || is_blank(at(lexer)))) {
        return any && found(lexer, CONDITION);
      }
      second = true;
    }
    static const char *const AT_LEAST[] = {"least", "most", 0};
    held = whole && is_blank(at(lexer)) &&
           (is_connector(&words) || is_one_of(&words, QUALIFIERS) || (held && is_one_of(&words, AT_LEAST)));
    if (!held) {
      lexer->mark_end(lexer);
      any = true;
    }
  }
  return any && found(lexer, CONDITION);
}

/* ---- units ---- */

static bool is_unit(const char *text, unsigned length) {
  char buffer[LONGEST + 1];
  if (length > LONGEST) return false;
  memcpy(buffer, text, length);
  buffer[length] = 0;
  return in_table(UNITS, buffer);
}

/* `words` are a unit, or one over something. */
static bool reads_as_unit(const Words *words) {
  if (words->too_long) return false;
  const char *stroke = strchr(words->text, '/');
  if (stroke && stroke != words->text && !is_unit(words->text, words->length)) {
    return stroke[1] != 0 && is_unit(words->text, (unsigned)(stroke - words->text));
  }
  if (is_unit(words->text, words->length)) return true;
  return words->capitals && words->length == 3; /* money, by its ISO 4217 code */
}

/* The longest unit behind a number, three words at most, with `per` and what follows it. */
static bool read_unit(TSLexer *lexer) {
  Words words;
  clear(&words);
  bool any = false;
  bool just = false; /* the word before was the end of a unit */
  bool per = false;
  for (int count = 0; count < 4; count++) {
    if (count > 0) {
      if (!skip_blanks(lexer)) break;
      put(&words, ' ');
    }
    unsigned before = words.length;
    if (!read_word(lexer, &words)) break;
    Words last;
    clear(&last);
    memcpy(last.text, words.text + before, words.length - before + 1);
    if (just && strcmp(last.text, "per") == 0) {
      per = true;
      break;
    }
    if (count > 0 && is_connector(&last)) break;
    if (count == 3) break;
    just = reads_as_unit(&words);
    if (just) {
      lexer->mark_end(lexer);
      any = true;
      if (strchr(words.text, '/')) return found(lexer, UNIT);
    }
  }
  if (per && skip_blanks(lexer)) {
    Words under;
    clear(&under);
    if (is_digit(at(lexer))) return found(lexer, UNIT);
    if (read_word(lexer, &under) && !is_connector(&under)) lexer->mark_end(lexer);
  }
  return any && found(lexer, UNIT);
}

/* ---- the scanner ---- */

void *tree_sitter_dye_external_scanner_create(void) { return ts_calloc(1, sizeof(State)); }
void tree_sitter_dye_external_scanner_destroy(void *payload) { ts_free(payload); }

unsigned tree_sitter_dye_external_scanner_serialize(void *payload, char *buffer) {
  memcpy(buffer, payload, sizeof(State));
  return sizeof(State);
}

void tree_sitter_dye_external_scanner_deserialize(void *payload, const char *buffer, unsigned length) {
  memset(payload, 0, sizeof(State));
  if (length == sizeof(State)) memcpy(payload, buffer, length);
}

bool tree_sitter_dye_external_scanner_scan(void *payload, TSLexer *lexer, const bool *valid) {
  State *state = payload;
  if (valid[IN_RECOVERY]) return false;
  if (valid[START] || valid[KIND]) return at_line_start(lexer, state, valid);

  while (is_blank(at(lexer)) && !ended(lexer)) pass(lexer);
  lexer->mark_end(lexer);
  if (line_ends(lexer)) return at_break(lexer, state);

  if (valid[UNKNOWN_WORD] && is_letter(at(lexer))) return read_late_head(lexer, state);
  if (valid[NAME]) return read_text(lexer, NAME);
  if (valid[PROSE_TEXT]) return read_text(lexer, PROSE_TEXT);
  if (at(lexer) == '#') return read_hash(lexer, state, valid);
  if (valid[UNREAD] && !valid[QUOTED]) return read_text(lexer, UNREAD);
  if (valid[CONDITION]) return read_condition(lexer, true);
  if (is_quote(at(lexer)) && valid[QUOTED]) return read_enclosed(lexer, true);
  if (at(lexer) == '(' && valid[ASIDE]) return read_enclosed(lexer, false);
  if (valid[UNIT]) return read_unit(lexer);
  return false;
}
