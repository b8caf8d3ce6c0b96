// Runs in the totals window: puts what it is told into the page, as text and never as markup.
import type { Message } from "../panel/message";
import type { Section } from "../panel/sections";

declare function acquireVsCodeApi(): { postMessage(message: unknown): void };

const root = document.getElementById("sheet");

function element(name: string, text: string, className = ""): HTMLElement {
  const made = document.createElement(name);
  made.textContent = text;
  if (className !== "") {
    made.className = className;
  }
  return made;
}

function section({ heading, text }: Section): HTMLElement[] {
  return text === "" ? [element("h2", heading)] : [element("h2", heading), element("pre", text)];
}

function show(message: Message): void {
  if (root === null) {
    return;
  }
  if (message.kind === "nothing") {
    root.replaceChildren(element("p", message.words, "quiet"));
    return;
  }
  const { sheet, state } = message;
  const parts: HTMLElement[] = [element("h1", sheet.title)];
  if (sheet.about !== "") {
    parts.push(element("p", sheet.about, "about"));
  }
  if (state !== undefined && state.sections.length > 0) {
    const here = document.createElement("section");
    here.className = "here";
    here.setAttribute("aria-live", "polite");
    here.append(...state.sections.flatMap(section));
    parts.push(here);
  }
  parts.push(...sheet.sections.flatMap(section));
  const scrolled = document.scrollingElement?.scrollTop ?? 0;
  root.replaceChildren(...parts);
  document.scrollingElement?.scrollTo(0, scrolled);
}

window.addEventListener("message", (event: MessageEvent<Message>) => show(event.data));
acquireVsCodeApi().postMessage("ready");
