/** The engine's short pages, set as elements. Only what those pages use is known; the rest stays as it is written. */

import { el } from "./dom";

/** The page as elements. */
export function markdown(text: string): HTMLElement {
  const page = el("div", { class: "page" });
  let list: HTMLElement | null = null;
  let paragraph: HTMLElement | null = null;
  let code: string[] | null = null;
  for (const line of text.split("\n")) {
    if (line.startsWith("```")) {
      if (code) {
        page.append(el("pre", { tabindex: "0" }, code.join("\n")));
        code = null;
      } else {
        code = [];
      }
      list = paragraph = null;
    } else if (code) {
      code.push(line);
    } else if (line.trim() === "") {
      list = paragraph = null;
    } else if (/^#+ /.test(line)) {
      page.append(el("p", { class: "heading" }, ...inline(line.replace(/^#+ /, ""))));
      list = paragraph = null;
    } else if (line.startsWith("- ")) {
      list ??= page.appendChild(el("ul"));
      list.append(el("li", {}, ...inline(line.slice(2))));
      paragraph = null;
    } else {
      const words = inline(line.trim());
      if (list?.lastElementChild && line.startsWith("  ")) list.lastElementChild.append(" ", ...words);
      else if (paragraph) paragraph.append(" ", ...words);
      else paragraph = page.appendChild(el("p", {}, ...words));
      if (line.endsWith("  ")) paragraph?.append(el("br"));
    }
  }
  if (code) page.append(el("pre", { tabindex: "0" }, code.join("\n")));
  return page;
}

/** A sentence in which only what stands between backticks is set off. */
export function sentence(text: string): (Node | string)[] {
  return text.split(/`([^`]+)`/).map((part, index) => (index % 2 === 1 ? el("code", {}, part) : part));
}

/** `**strong**`, `*set off*`, `` `as typed` `` and the words of `[links](…)`. */
function inline(text: string): (Node | string)[] {
  const parts: (Node | string)[] = [];
  const pattern = /\*\*(.+?)\*\*|\*(.+?)\*|`(.+?)`|\[([^\]]+)\]\([^)]*\)/g;
  let from = 0;
  for (const match of text.matchAll(pattern)) {
    parts.push(text.slice(from, match.index));
    const [whole, strong, soft, typed, link] = match;
    if (strong !== undefined) parts.push(el("strong", {}, strong));
    else if (soft !== undefined) parts.push(el("em", {}, soft));
    else if (typed !== undefined) parts.push(el("code", {}, typed));
    else parts.push(link ?? "");
    from = match.index + whole.length;
  }
  parts.push(text.slice(from));
  return parts;
}
