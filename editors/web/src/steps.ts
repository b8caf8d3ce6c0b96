/** The rehearsal: each step with the clock and what it changed, and a time line of the whole. */

import type { Account, Step, Told } from "./answers";
import { el } from "./dom";

const COLUMNS = ["water, %", "soda, g/kg", "pH", "°C"];

/** The accounts of all recipes and variants of a text. */
export function steps(recipes: Told[], goToLine: (line: number) => void): HTMLElement[] {
  return recipes.map(({ account }) => told(account, goToLine));
}

/** Marks the steps that stand on a line of the text. */
export function markLine(within: HTMLElement, line: number): HTMLElement | null {
  let first: HTMLElement | null = null;
  for (const step of within.querySelectorAll<HTMLElement>("[data-line]")) {
    const here = step.dataset["line"] === String(line);
    if (here) step.setAttribute("aria-current", "step");
    else step.removeAttribute("aria-current");
    if (here) first ??= step;
  }
  return first;
}

function told(account: Account, goToLine: (line: number) => void): HTMLElement {
  const all = account.groups.flatMap((group) => group.steps);
  return el(
    "article",
    { class: "account" },
    el("h3", {}, account.title),
    el("p", { class: "whole" }, account.ending.time),
    all.length > 0 && ribbon(all, account.ending.time, goToLine),
    el("p", { class: "about" }, account.about),
    account.ending.cut_short && el("p", { class: "open" }, account.ending.cut_short),
    ...account.groups.flatMap((group) => [
      el("h4", {}, group.heading),
      el("ol", { class: "steps" }, ...group.steps.map((one) => step(one, goToLine))),
    ]),
    ...account.ending.lists.flatMap(([heading, lines]) => [el("h4", {}, heading), el("ul", { class: "supposed" }, ...lines.map((line) => el("li", {}, line)))]),
  );
}

/**
 * The whole time as a band, a stretch a step. A day of batching would leave nothing of the minutes around it: the widths
 * go with the square root of the time, and the page says so.
 */
function ribbon(all: Step[], whole: string, goToLine: (line: number) => void): HTMLElement {
  const band = el("div", { class: "ribbon", role: "img", "aria-label": `Time line. ${whole}` });
  for (const one of all) {
    const took = Math.max(0, (one.end_min.best ?? 0) - (one.start_min.best ?? 0));
    if (took === 0) continue;
    const share = Math.min(1, Math.max(0, (one.work_min.best ?? 0) / took));
    const { line } = one;
    const stretch = el("span", { title: `${one.text}: ${one.clock}`, onclick: () => line !== null && goToLine(line) });
    stretch.style.flexGrow = String(Math.sqrt(took));
    stretch.style.setProperty("--work", `${Math.round(share * 100)}%`);
    band.append(stretch);
  }
  return el(
    "figure",
    { class: "time" },
    band,
    el(
      "figcaption",
      {},
      el("span", { class: "key work", "aria-hidden": "true" }),
      " work ",
      el("span", { class: "key wait", "aria-hidden": "true" }),
      " waiting; long waits are drawn short (widths go with the square root of the time).",
    ),
  );
}

function step(one: Step, goToLine: (line: number) => void): HTMLElement {
  const { line } = one;
  const rows = one.goods.flatMap((goods) => goods.rows);
  const dyes = one.goods.flatMap((goods) => goods.dyes);
  return el(
    "li",
    line === null ? {} : { "data-line": String(line) },
    el(
      "p",
      { class: "done" },
      line !== null && el("button", { class: "plain", "aria-label": `line ${line}`, onclick: () => goToLine(line) }, String(line)),
      line !== null && " ",
      el("span", { class: "words" }, one.text),
    ),
    el("p", { class: "clock" }, one.clock),
    ...(one.waits ?? []).map((text) => el("p", { class: "waits" }, text)),
    ...one.liquors.map((text) => el("p", { class: "liquor" }, text)),
    rows.length > 0 &&
      el(
        "div",
        { class: "wide", tabindex: "0", role: "region", "aria-label": `How the goods stand after: ${one.text}` },
        el(
          "table",
          { class: "state" },
          el("thead", {}, el("tr", {}, el("td", {}), ...COLUMNS.map((text) => el("th", { scope: "col" }, text)))),
          el("tbody", {}, ...rows.map(([name, cells]) => el("tr", {}, el("th", { scope: "row" }, name), ...cells.map((cell) => el("td", {}, cell))))),
        ),
      ),
    dyes.length > 0 && el("ul", { class: "dyes" }, ...dyes.map((text) => el("li", {}, text))),
  );
}
