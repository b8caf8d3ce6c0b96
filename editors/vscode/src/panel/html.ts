// Pages for webviews and for printing. Whatever comes from a recipe passes through `escaped`.
import { randomBytes } from "node:crypto";

import type { Node } from "./nodes";

/** Text as HTML shows it. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** A word nobody can guess, for what a page itself brings along. */
export function nonce(): string {
  return randomBytes(16).toString("base64url");
}

export interface Page {
  readonly title: string;
  readonly style: string;
  /** HTML; the caller has escaped what is not its own. */
  readonly body: string;
  /** A script file a webview may load. */
  readonly script?: string;
  /** A script of the page's own. */
  readonly inline?: string;
}

/** A whole page. It loads nothing, and runs only the script given here. */
export function page({ title, style, body, script, inline }: Page): string {
  const word = nonce();
  const scripts = script === undefined && inline === undefined ? "" : `; script-src 'nonce-${word}'`;
  return [
    "<!DOCTYPE html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; base-uri 'none'; form-action 'none'; style-src 'nonce-${word}'${scripts}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}</title>`,
    `<style nonce="${word}">${style}</style>`,
    "</head>",
    `<body>${body}`,
    script === undefined ? "" : `<script nonce="${word}" src="${escaped(script)}"></script>`,
    inline === undefined ? "" : `<script nonce="${word}">${inline}</script>`,
    "</body>",
    "</html>",
  ].join("\n");
}

/** Nodes as HTML. */
export function toHtml(nodes: readonly Node[]): string {
  return nodes.map(({ tag, className, text, span, row, children }) => {
    const attributes = [
      className === undefined ? "" : ` class="${escaped(className)}"`,
      span === undefined ? "" : ` colspan="${span}"`,
      tag === "th" ? ` scope="${row === true ? "row" : "col"}"` : "",
    ].join("");
    return `<${tag}${attributes}>${escaped(text ?? "")}${toHtml(children ?? [])}</${tag}>`;
  }).join("");
}
