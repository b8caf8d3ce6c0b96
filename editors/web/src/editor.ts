/** The text area: an editor component, told by the engine what to colour, note, propose and explain. */

import { autocompletion, completionKeymap, snippet, type CompletionContext, type CompletionResult } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { codeFolding, foldGutter, foldKeymap, foldService, indentService } from "@codemirror/language";
import { lintGutter, setDiagnostics, nextDiagnostic, previousDiagnostic, type Diagnostic } from "@codemirror/lint";
import { highlightSelectionMatches, searchKeymap } from "@codemirror/search";
import { EditorState, type Extension } from "@codemirror/state";
import { EditorView, drawSelection, highlightActiveLine, highlightActiveLineGutter, hoverTooltip, keymap, lineNumbers } from "@codemirror/view";

import type { Change, Finding, Look, Proposal } from "./answers";
import { coloured, colours, folds, hanging } from "./colouring";
import type { Engine } from "./engine";
import { el } from "./dom";
import { evenLines } from "./lines";
import { markdown, sentence } from "./markdown";

/** What the text area tells the page. */
export interface Heard {
  /** The text is another one; `written` when somebody typed. */
  changed(written: boolean): void;
  /** The caret stands on another line. */
  moved(line: number): void;
  /** Somebody asks what stands at the caret. */
  asked(page: HTMLElement | null): void;
  /** Somebody wants to go to the findings. */
  findings(): void;
}

const severities = { error: "error", warning: "warning", advice: "info" } as const;

export class Editor {
  readonly view: EditorView;
  private line = 1;

  constructor(
    parent: HTMLElement,
    text: string,
    private readonly engine: Engine,
    private readonly path: () => string,
    private readonly heard: Heard,
  ) {
    this.view = new EditorView({ parent, state: this.fresh(text) });
  }

  get text(): string {
    return this.view.state.doc.toString();
  }

  /** Puts another recipe in; what was done before cannot be undone into it. */
  load(text: string): void {
    this.view.setState(this.fresh(text));
    this.line = 1;
    this.heard.changed(false);
  }

  private fresh(text: string): EditorState {
    return EditorState.create({ doc: evenLines(text), extensions: this.extensions() });
  }

  /** Shows what the engine found, if the text is still the one it looked at. */
  show(look: Look, text: string): void {
    if (text !== this.text) return;
    const findings = setDiagnostics(this.view.state, look.findings.map((finding) => this.diagnostic(finding)));
    this.view.dispatch({ effects: coloured.of(look) }, findings);
  }

  /** Makes changes as one that can be undone. */
  change(changes: Change[], say: string): void {
    const length = this.view.state.doc.length;
    if (changes.length === 0 || changes.some((change) => change.to > length)) return;
    this.view.dispatch({ changes, userEvent: "input.fix", effects: EditorView.announce.of(say) });
  }

  /** Puts the caret somewhere and shows it. */
  go(from: number, to = from): void {
    const length = this.view.state.doc.length;
    this.view.dispatch({
      selection: { anchor: Math.min(from, length), head: Math.min(to, length) },
      effects: EditorView.scrollIntoView(Math.min(from, length), { y: "center" }),
    });
    this.view.focus();
  }

  /** Puts the caret on a line. */
  goToLine(line: number): void {
    const { doc } = this.view.state;
    const { from, text } = doc.line(Math.max(1, Math.min(line, doc.lines)));
    this.go(from + (text.length - text.trimStart().length));
  }

  private diagnostic(finding: Finding): Diagnostic {
    const length = this.view.state.doc.length;
    const from = Math.min(finding.from, length);
    return {
      from,
      to: Math.min(Math.max(finding.to, from), length),
      severity: severities[finding.level],
      source: finding.rule,
      message: finding.message,
      renderMessage: () => el("div", {}, el("p", {}, ...sentence(finding.message)), finding.help && el("p", { class: "help" }, ...sentence(finding.help))),
      actions: finding.fixes.map((fix) => ({ name: fix.title.replaceAll("`", ""), apply: () => this.change(fix.changes, fix.title) })),
    };
  }

  private extensions(): Extension {
    const nonce = document.querySelector<HTMLMetaElement>('meta[name="style-nonce"]')?.content ?? "";
    return [
      EditorView.cspNonce.of(nonce),
      EditorView.contentAttributes.of({
        "aria-label": "Recipe text",
        "aria-describedby": "editor-keys",
        tabindex: "0",
        spellcheck: "false",
        autocapitalize: "off",
        autocorrect: "off",
      }),
      lineNumbers(),
      lintGutter(),
      codeFolding(),
      foldGutter({ foldingChanged: (update) => update.transactions.some((made) => made.effects.some((effect) => effect.is(coloured))) }),
      hanging,
      foldService.of((state, from) => {
        const last = state.field(folds).get(state.doc.lineAt(from).number);
        if (last === undefined || last > state.doc.lines) return null;
        return { from: state.doc.lineAt(from).to, to: state.doc.line(last).to };
      }),
      // What stands in a block is set in by two; a line that opens one is at the edge.
      indentService.of((context, at) => {
        const { text } = context.lineAt(at, -1);
        if (text.trim() === "") return 0;
        const blanks = text.length - text.trimStart().length;
        return blanks > 0 ? blanks : /^(edition|use|#)/.test(text) ? 0 : 2;
      }),
      history(),
      drawSelection(),
      highlightActiveLine(),
      highlightActiveLineGutter(),
      highlightSelectionMatches(),
      EditorView.lineWrapping,
      EditorState.tabSize.of(2),
      colours,
      folds,
      autocompletion({ override: [(context) => this.complete(context)], icons: false, maxRenderedOptions: 80 }),
      hoverTooltip(async (view, at, side) => {
        const found = await this.under(at);
        if (!found || (found.from === at && side < 0) || found.to > view.state.doc.length) return null;
        return { pos: found.from, end: found.to, above: true, create: () => ({ dom: el("div", { class: "hover" }, markdown(found.markdown)) }) };
      }),
      keymap.of([
        { key: "F4", run: () => (void this.ask(), true) },
        { key: "F8", run: nextDiagnostic },
        { key: "Shift-F8", run: previousDiagnostic },
        { key: "Mod-Shift-m", run: () => (this.heard.findings(), true) },
        ...completionKeymap,
        ...searchKeymap,
        ...historyKeymap,
        ...foldKeymap,
        ...defaultKeymap,
      ]),
      EditorView.updateListener.of((update) => {
        if (update.docChanged) this.heard.changed(true);
        const line = update.state.doc.lineAt(update.state.selection.main.head).number;
        if (line !== this.line) this.heard.moved((this.line = line));
      }),
    ];
  }

  private async under(at: number): Promise<{ from: number; to: number; markdown: string } | null> {
    try {
      await this.engine.ask("open", { path: this.path(), text: this.text });
      return await this.engine.ask("hover", { path: this.path(), at });
    } catch {
      return null;
    }
  }

  private async ask(): Promise<void> {
    const found = await this.under(this.view.state.selection.main.head);
    this.heard.asked(found && markdown(found.markdown));
  }

  private async complete(context: CompletionContext): Promise<CompletionResult | null> {
    const { state, pos, explicit } = context;
    const before = state.doc.lineAt(pos).text.slice(0, pos - state.doc.lineAt(pos).from);
    if (!explicit && !/[\p{L}"]$/u.test(before)) return null;
    let proposals: Proposal[];
    try {
      await this.engine.ask("open", { path: this.path(), text: state.doc.toString() });
      proposals = await this.engine.ask("complete", { path: this.path(), at: pos });
    } catch {
      return null;
    }
    if (context.aborted || proposals.length === 0) return null;
    const from = Math.min(...proposals.map((item) => item.from));
    return {
      from,
      options: proposals.map((item, rank) => ({
        label: item.label,
        detail: item.detail,
        type: item.kind,
        boost: -Math.min(rank, 99),
        apply: item.snippet ? snippet(item.insert.replaceAll("$0", "${}")) : item.insert,
        info: async () => {
          const { markdown: text } = await this.engine.ask("describe", { kind: item.kind, label: item.label });
          return text ? el("div", { class: "hover" }, markdown(text)) : null;
        },
      })),
      validFor: /^[\p{L}\p{N} -]*$/u,
    };
  }
}

