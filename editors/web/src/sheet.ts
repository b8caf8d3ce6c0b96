/** The totals: what to weigh, pour and pay, as the command prints it. */

import type { Content, Sheet, Table, Told } from "./answers";
import { el } from "./dom";

/** The steps stand on a page of their own, with all that this table would tell. */
const ELSEWHERE = "After each step";

/** The sheets of all recipes and variants of a text. */
export function totals(recipes: Told[], goToLine: (line: number) => void): HTMLElement[] {
  return recipes.map(({ totals, open }) => sheet(totals, open, goToLine));
}

function sheet(sheet: Sheet, open: number, goToLine: (line: number) => void): HTMLElement {
  const parts = sheet.parts
    .filter((part) => part.heading !== ELSEWHERE)
    .flatMap((part) => [el("h4", {}, part.heading), ...part.content.map((content) => set(content, part.heading, goToLine))]);
  return el(
    "article",
    { class: "sheet" },
    el("h3", {}, sheet.title),
    sheet.about && el("p", { class: "about" }, sheet.about),
    open > 0 && el("p", { class: "open" }, open === 1 ? "One thing could not be read; figures that hang on it are left open." : `${open} things could not be read; figures that hang on them are left open.`),
    ...parts,
  );
}

function set(content: Content, name: string, goToLine: (line: number) => void): HTMLElement {
  switch (content.is) {
    case "line":
      return el("p", {}, content.of);
    case "table":
      return table(content.of, name, goToLine);
    case "mix":
      return el(
        "section",
        { class: "mix" },
        el("p", {}, content.of.line),
        table(content.of.table, content.of.line, goToLine),
        content.of.made_up && el("p", { class: "made-up" }, content.of.made_up),
      );
  }
}

/** A table that may be wider than a phone: it scrolls by itself, and the keyboard can reach it for that. */
export function table({ heads, rows }: Table, name: string, goToLine: (line: number) => void): HTMLElement {
  const kept = heads.map((_, column) => column).filter((column) => column === 0 || rows.some((row) => row.cells[column]));
  const named = heads.some(([text]) => text !== "");
  const body = rows.flatMap((row) => {
    const cells = kept.map((column) => {
      const [head, edge] = heads[column] ?? ["", "left"];
      const text = row.cells[column] ?? "";
      const inner = head === "line" && /^\d+$/.test(text) ? el("button", { class: "plain", onclick: () => goToLine(Number(text)) }, text) : text;
      return column === 0 ? el("th", { scope: "row" }, inner) : el("td", { class: edge }, inner);
    });
    const beneath = row.beneath.map((text) => el("tr", { class: "beneath" }, el("td", { colspan: String(kept.length) }, text)));
    return [el("tr", {}, ...cells), ...beneath];
  });
  return el(
    "div",
    { class: "wide", tabindex: "0", role: "region", "aria-label": name },
    el(
      "table",
      {},
      named &&
        el("thead", {}, el("tr", {}, ...kept.map((column) => {
          const [text, edge] = heads[column] ?? ["", "left"];
          return text === "" ? el("td", {}) : el("th", { scope: "col", class: edge }, text);
        }))),
      el("tbody", {}, ...body),
    ),
  );
}
