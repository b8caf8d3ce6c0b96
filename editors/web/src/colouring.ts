/** What the engine tells of a text, laid over it: colours of words, swatches, hints at the ends of lines, folds. */

import { RangeSetBuilder, StateEffect, StateField } from "@codemirror/state";
import { Decoration, EditorView, ViewPlugin, WidgetType, type DecorationSet, type ViewUpdate } from "@codemirror/view";

import type { Look } from "./answers";
import { el } from "./dom";

/** Brings what the engine told into the text area. */
export const coloured = StateEffect.define<Look>();

class Swatch extends WidgetType {
  constructor(readonly colour: string) {
    super();
  }
  override eq(other: Swatch): boolean {
    return other.colour === this.colour;
  }
  override toDOM(): HTMLElement {
    const swatch = el("span", { class: "dye-swatch", "aria-hidden": "true" });
    swatch.style.backgroundColor = this.colour;
    return swatch;
  }
}

class Hint extends WidgetType {
  constructor(readonly words: string) {
    super();
  }
  override eq(other: Hint): boolean {
    return other.words === this.words;
  }
  override toDOM(): HTMLElement {
    return el("span", { class: "dye-hint", "aria-hidden": "true" }, this.words);
  }
  override ignoreEvent(): boolean {
    return false;
  }
}

/** Tokens, swatches and hints; they move along with the text until the engine tells new ones. */
export const colours = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(set, transaction) {
    let next = set.map(transaction.changes);
    for (const effect of transaction.effects) if (effect.is(coloured)) next = decorations(effect.value, transaction.state.doc.length);
    return next;
  },
  provide: (field) => EditorView.decorations.from(field),
});

export const folds = StateField.define<Map<number, number>>({
  create: () => new Map(),
  update(map, transaction) {
    for (const effect of transaction.effects) if (effect.is(coloured)) return new Map(effect.value.folds);
    return map;
  },
});

const marks = new Map<string, Decoration>();

function mark(classes: string): Decoration {
  let found = marks.get(classes);
  if (!found) marks.set(classes, (found = Decoration.mark({ class: classes })));
  return found;
}

function decorations(look: Look, length: number): DecorationSet {
  const all: { from: number; to: number; order: number; what: Decoration }[] = [];
  for (const [from, to, classes] of look.tokens) if (to <= length && from < to) all.push({ from, to, order: 1, what: mark(classes) });
  for (const [from, to, colour] of look.colours)
    if (to <= length) all.push({ from, to: from, order: 0, what: Decoration.widget({ widget: new Swatch(colour), side: -1 }) });
  for (const [at, words] of look.hints)
    if (at <= length) all.push({ from: at, to: at, order: 2, what: Decoration.widget({ widget: new Hint(words), side: 1 }) });
  all.sort((a, b) => a.from - b.from || a.order - b.order);
  const builder = new RangeSetBuilder<Decoration>();
  for (const { from, to, what } of all) builder.add(from, to, what);
  return builder.finish();
}

/** A long line of a block goes on under its words, not at the edge. */
export const hanging = ViewPlugin.fromClass(
  class {
    lines: DecorationSet;
    constructor(view: EditorView) {
      this.lines = this.hang(view);
    }
    update(update: ViewUpdate): void {
      if (update.docChanged || update.viewportChanged) this.lines = this.hang(update.view);
    }
    private hang(view: EditorView): DecorationSet {
      const builder = new RangeSetBuilder<Decoration>();
      for (const { from, to } of view.visibleRanges) {
        for (let at = from; at <= to; ) {
          const line = view.state.doc.lineAt(at);
          if (/^ {2}\S/.test(line.text)) builder.add(line.from, line.from, set);
          at = line.to + 1;
        }
      }
      return builder.finish();
    }
  },
  { decorations: (plugin) => plugin.lines },
);
const set = Decoration.line({ class: "dye-body" });
