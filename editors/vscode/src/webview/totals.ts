// Runs in the totals window: puts what it is told into the page, as text and never as markup.
import type { Message } from "../panel/message";
import type { Node } from "../panel/nodes";

declare function acquireVsCodeApi(): { postMessage(message: unknown): void };

const root = document.getElementById("sheet");

function element({ tag, className, text, span, row, children }: Node): HTMLElement {
  const made = document.createElement(tag);
  if (className !== undefined) {
    made.className = className;
  }
  if (made instanceof HTMLTableCellElement) {
    made.colSpan = span ?? 1;
    if (tag === "th") {
      made.scope = row === true ? "row" : "col";
    }
  }
  made.append(text ?? "", ...(children ?? []).map(element));
  return made;
}

window.addEventListener("message", (event: MessageEvent<Message>) => {
  const page = document.scrollingElement;
  const scrolled = page?.scrollTop ?? 0;
  root?.replaceChildren(...event.data.nodes.map(element));
  page?.scrollTo(0, scrolled);
});
acquireVsCodeApi().postMessage("ready");
