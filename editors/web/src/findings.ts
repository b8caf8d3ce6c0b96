/** The list of findings: each leads to its place, and its fixes are buttons. */

import type { Finding } from "./answers";
import type { Editor } from "./editor";
import type { Engine } from "./engine";
import { byId, el } from "./dom";
import { markdown, sentence } from "./markdown";

const LEVELS = { error: ["error", "errors"], warning: ["warning", "warnings"], advice: ["piece of advice", "pieces of advice"] } as const;

/** `2 errors, 1 piece of advice`, or that there are none. */
export function tally(findings: Finding[]): string {
  const parts = (["error", "warning", "advice"] as const).flatMap((level) => {
    const count = findings.filter((finding) => finding.level === level).length;
    return count === 0 ? [] : [`${count} ${LEVELS[level][count === 1 ? 0 : 1]}`];
  });
  return parts.join(", ") || "Nothing to say";
}

export class Findings {
  private readonly list = byId("finding-list");
  private readonly count = byId("finding-count");
  private told = "";
  /** Where the keyboard was in the list, so that it is there again when the list is made anew. */
  private shown = "";

  constructor(
    private readonly engine: Engine,
    private readonly editor: () => Editor,
    private readonly say: (words: string) => void,
  ) {}

  show(findings: Finding[]): void {
    const words = tally(findings);
    this.count.textContent = words;
    byId("jump-findings").textContent = findings.length === 0 ? "Findings" : `Findings ${findings.length}`;
    if (words !== this.told) this.say(words === "Nothing to say" ? "No findings" : words);
    this.told = words;
    const shown = JSON.stringify(findings);
    if (shown === this.shown) return;
    this.shown = shown;
    const items = [...this.list.querySelectorAll("button")];
    const focused = items.indexOf(document.activeElement as HTMLButtonElement);
    this.list.replaceChildren(...findings.map((finding) => this.item(finding)));
    if (focused >= 0) {
      const fresh = [...this.list.querySelectorAll("button")];
      (fresh[Math.min(focused, fresh.length - 1)] ?? byId("findings")).focus();
    }
  }

  /** Puts the keyboard on the first finding. */
  focus(): void {
    (this.list.querySelector("button") ?? byId("findings")).focus();
  }

  private item(finding: Finding): HTMLElement {
    const editor = this.editor();
    const notes = finding.notes.map((note) => {
      const words = note.line === null ? `${note.file}: ${note.text}` : note.text;
      return el(
        "li",
        {},
        note.line === null ? words : el("button", { class: "plain", onclick: () => editor.goToLine(note.line ?? 1) }, `line ${note.line}`),
        note.line === null ? null : ` ${words}`,
      );
    });
    const fixes = finding.fixes.map((fix) => el("button", { class: "fix", onclick: () => editor.change(fix.changes, `Done: ${fix.title}`) }, ...sentence(fix.title)));
    const why = el("details", {}, el("summary", {}, "Why it matters"));
    why.addEventListener("toggle", () => void this.explain(why, finding.rule), { once: true });
    return el(
      "li",
      { class: `finding ${finding.level}`, "data-rule": finding.rule },
      el(
        "p",
        { class: "told" },
        el("span", { class: "level" }, finding.level),
        " ",
        el("button", { class: "plain place", onclick: () => editor.go(finding.from, finding.to) }, `line ${finding.line}`),
        " ",
        el("span", { class: "message" }, ...sentence(finding.message)),
      ),
      notes.length > 0 && el("ul", { class: "notes" }, ...notes),
      finding.help !== "" && el("p", { class: "help" }, ...sentence(finding.help)),
      fixes.length > 0 && el("p", { class: "fixes" }, ...fixes),
      why,
    );
  }

  private async explain(into: HTMLElement, rule: string): Promise<void> {
    try {
      const { markdown: text } = await this.engine.ask("rule", { name: rule });
      into.append(text ? markdown(text) : el("p", {}, "There is no page on this."));
    } catch (error) {
      into.append(el("p", {}, String(error)));
    }
  }
}
