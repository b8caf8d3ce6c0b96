/** The page put together: text in, findings, totals and steps out; opening, sharing, keeping, printing. */

import { byId, el, settled } from "./dom";
import { drafts, forget, freeName, keep } from "./drafts";
import { Editor } from "./editor";
import { Findings } from "./findings";
import { engine, examples, linked, opening as first, starter, Trouble, trustedUrl } from "./early";
import type { Asked } from "./opening";
import { fileName, toFragment } from "./share";
import { totals } from "./sheet";
import { markLine, steps } from "./steps";
import type { Told } from "./answers";

let name = first.name;
/** Whether somebody wrote on what is open; only that is kept. */
let written = first.origin === "draft";
/** Whether something is written that is not kept yet. */
let dirty = false;
let recipes: Told[] = [];

const goToLine = (line: number) => editor.goToLine(line);
const findings = new Findings(engine, () => editor, say);
const editor = new Editor(byId("editor"), first.text, engine, () => name, {
  changed(byHand) {
    if (byHand && !written) {
      written = true;
      name = bornName(name);
      showName();
      if (location.hash) history.replaceState(null, "", location.pathname + location.search);
    }
    look();
    if (!byHand) return;
    notice("");
    dirty = true;
    save();
  },
  moved: (line) => follow(line),
  asked(page) {
    const box = byId("asked");
    box.hidden = false;
    byId("asked-page").replaceChildren(page ?? el("p", {}, "There is nothing to say about what stands here."));
  },
  findings: () => findings.focus(),
});

/** An example that is changed becomes a recipe of one's own. */
function bornName(of: string): string {
  return examples.some((example) => example.path === of) ? freeName(of.replace(/\.dye$/, "-mine.dye")) : of;
}

function say(words: string): void {
  byId("say").textContent = words;
}

function showName(): void {
  byId<HTMLInputElement>("name").value = name;
  document.title = `${name} · Tenter`;
}

// What the engine says

let asked = 0;

/** Shows what is found in the text; `already` is what was asked about it before. */
async function lookNow(already?: Asked): Promise<void> {
  const turn = ++asked;
  const { text } = editor;
  try {
    const look = await (already?.look ?? engine.ask("look", { path: name, text }));
    if (turn !== asked) return;
    trouble("");
    editor.show(look, text);
    findings.show(look.findings);
    selvedge(look.colours.map(([, , colour]) => colour));
    await accountNow(turn, already?.account);
    if (turn === asked) ready();
  } catch (error) {
    if (turn === asked) trouble(error instanceof Trouble ? error.message : String(error));
  }
}

async function accountNow(turn = asked, already?: Asked["account"]): Promise<void> {
  const wanted = byId<HTMLInputElement>("pieces").value.trim();
  const pieces = wanted === "" ? null : Number(wanted.replace(",", "."));
  const told = await (already ?? engine.ask("account", { path: name, pieces }));
  if (turn !== asked) return;
  recipes = told.recipes;
  const none = told.trouble ?? "There is no recipe here yet, only definitions for others.";
  const empty = () => el("p", { class: "open" }, none);
  byId("totals").replaceChildren(...(recipes.length > 0 ? totals(recipes, goToLine) : [empty()]));
  byId("steps").replaceChildren(...(recipes.length > 0 ? steps(recipes, goToLine) : [empty()]));
  const counted = recipes.find((recipe) => recipe.pieces !== null)?.pieces;
  byId<HTMLInputElement>("pieces").placeholder = pieces === null && counted ? String(counted) : "";
  byId("rewrite").hidden = pieces === null || told.recipes.length === 0;
}

const look = settled(70, () => void lookNow());
const save = settled(400, saveNow);

function saveNow(): void {
  if (!dirty) return;
  dirty = false;
  if (!keep({ name, text: editor.text, changed: Date.now() })) say("This browser keeps nothing; download what you want to keep.");
}

let noticed = "";

/** Something to know that stays until somebody writes on. */
function notice(words: string): void {
  noticed = words;
  trouble("");
}

/** Something that went wrong; when it is over, the notice shows again. */
function trouble(words: string): void {
  const told = words === "" ? noticed : `Something went wrong here: ${words}. Your text is left as it is.`;
  const box = byId("trouble");
  if (box.textContent !== told) box.textContent = told;
  box.hidden = told === "";
}

/** Threads along the upper edge in the colours of the recipe. */
function selvedge(colours: string[]): void {
  const threads = [...new Set(colours)].slice(0, 12);
  const all = threads.length > 0 ? threads : ["var(--indigo)"];
  const stops = all.flatMap((colour, index) => {
    const at = index * 22;
    return [`${colour} ${at}px ${at + 14}px`, `var(--cloth) ${at + 14}px ${at + 16}px`, `${colour} ${at + 16}px ${at + 18}px`, `var(--cloth) ${at + 18}px ${at + 22}px`];
  });
  byId("selvedge").style.backgroundImage = `repeating-linear-gradient(90deg, ${stops.join(", ")})`;
}

function follow(line: number): void {
  const step = markLine(byId("steps"), line);
  const panel = byId("panel-steps");
  // Beside the text only: on a phone the page itself would jump.
  if (step && !panel.hidden && matchMedia("(min-width: 62rem)").matches) {
    const box = step.getBoundingClientRect();
    const frame = byId("results").getBoundingClientRect();
    if (box.top < frame.top || box.bottom > frame.bottom) byId("results").scrollTop += box.top - frame.top - 80;
  }
}

/** Marks, once, how long it took until everything was there. What can wait until then begins now. */
function ready(): void {
  if (document.documentElement.dataset["ready"]) return;
  document.documentElement.dataset["ready"] = String(Math.round(performance.now()));
  keepOffline();
}

// Opening

function load(path: string, text: string): void {
  saveNow();
  notice("");
  name = path;
  written = false;
  byId<HTMLInputElement>("pieces").value = "";
  byId("asked").hidden = true;
  showName();
  editor.load(text);
  // Nobody is typing: there is nothing to wait for.
  look.cancel();
  void lookNow();
}

function openDialog(): void {
  const dialog = byId<HTMLDialogElement>("open-dialog");
  const entry = (title: string, about: string, run: () => void) =>
    el("li", {}, el("button", { class: "entry", onclick: () => (dialog.close(), clearHash(), run(), editor.view.focus()) }, el("strong", {}, title), el("span", {}, about)));
  const own = drafts().map((draft) => {
    const item = entry(draft.name, `changed ${new Date(draft.changed).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" })}`, () => {
      load(draft.name, draft.text);
      written = true;
    });
    item.append(el("button", { class: "forget", "aria-label": `forget ${draft.name}`, onclick: () => (forget(draft.name), openDialog(), byId("open-close").focus()) }, "Forget"));
    return item;
  });
  byId("own").replaceChildren(...(own.length > 0 ? own : [el("li", {}, "Nothing yet. What you write is kept here, in this browser only.")]));
  byId("examples").replaceChildren(...examples.map((example) => entry(example.title, example.about, () => load(example.path, example.text))));
  if (!dialog.open) dialog.showModal();
}

function clearHash(): void {
  if (location.hash) history.replaceState(null, "", location.pathname + location.search);
}

async function followLink(): Promise<void> {
  const link = await linked();
  if (!link) return;
  if ("broken" in link) return notice(link.broken);
  load(link.name, link.text);
  say(FROM_LINK);
}

const FROM_LINK = "Opened from the link.";

// Sharing, keeping, printing

async function share(): Promise<void> {
  const link = location.origin + location.pathname + (await toFragment({ name, text: editor.text }));
  history.replaceState(null, "", link);
  const field = byId<HTMLInputElement>("link");
  field.value = link;
  let copied = true;
  try {
    await navigator.clipboard.writeText(link);
  } catch {
    copied = false;
  }
  const long = link.length > 8000 ? " It is long; some mail programs cut such links." : "";
  byId("share-words").textContent = `${copied ? "The link is copied." : "Copy this link."} The recipe is in the link itself; nothing was sent anywhere.${long}`;
  byId<HTMLDialogElement>("share-dialog").showModal();
  field.select();
}

function download(): void {
  const address = URL.createObjectURL(new Blob([editor.text], { type: "text/plain;charset=utf-8" }));
  el("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
  say(`${name} is downloaded.`);
}

async function tidy(): Promise<void> {
  try {
    const { text } = editor;
    await engine.ask("open", { path: name, text });
    const changes = await engine.ask("format", { path: name });
    if (text !== editor.text) return;
    editor.change(changes, "Tidied");
    say(changes.length > 0 ? "Tidied." : "It is tidy already.");
  } catch (error) {
    trouble(String(error));
  }
}

async function rewrite(): Promise<void> {
  const pieces = Number(byId<HTMLInputElement>("pieces").value.replace(",", "."));
  const line = editor.text.split("\n").findIndex((text) => /^recipe\b/.test(text));
  const at = editor.text.split("\n").slice(0, Math.max(line, 0)).join("\n").length + (line > 0 ? 1 : 0);
  try {
    const changes = await engine.ask("scale", { path: name, at, pieces });
    if (!changes || changes.length === 0) {
      say("This recipe could not be written for that many pieces.");
      return;
    }
    byId<HTMLInputElement>("pieces").value = "";
    editor.change(changes, `Written for ${pieces} pieces`);
    say(`Written for ${pieces} pieces.`);
  } catch (error) {
    trouble(String(error));
  }
}

// Wiring

function tab(which: "totals" | "steps", focus = false): void {
  for (const one of ["totals", "steps"] as const) {
    const button = byId(`tab-${one}`);
    button.setAttribute("aria-selected", String(one === which));
    button.tabIndex = one === which ? 0 : -1;
    byId(`panel-${one}`).hidden = one !== which;
    if (one === which && focus) button.focus();
  }
  if (which === "steps") follow(editor.view.state.doc.lineAt(editor.view.state.selection.main.head).number);
}

function theme(): void {
  const root = document.documentElement;
  const select = byId<HTMLSelectElement>("theme");
  try {
    select.value = localStorage.getItem("tenter.theme") ?? "system";
  } catch {
    // A browser that keeps nothing follows the system.
  }
  const set = () => (root.dataset["theme"] = select.value);
  select.addEventListener("change", () => {
    set();
    try {
      localStorage.setItem("tenter.theme", select.value);
    } catch {
      // As above.
    }
  });
  set();
}

function wire(): void {
  const on = (id: string, run: () => unknown) => byId(id).addEventListener("click", () => void run());
  on("open", openDialog);
  on("new", () => {
    clearHash();
    load(freeName("my-recipe.dye"), starter);
    editor.view.focus();
  });
  on("tidy", tidy);
  on("share", share);
  on("download", download);
  on("print", () => window.print());
  on("rewrite", rewrite);
  on("open-close", () => byId<HTMLDialogElement>("open-dialog").close());
  on("share-close", () => byId<HTMLDialogElement>("share-dialog").close());
  on("asked-close", () => {
    byId("asked").hidden = true;
    editor.view.focus();
  });
  for (const which of ["totals", "steps"] as const) {
    on(`tab-${which}`, () => tab(which));
    on(`jump-${which}`, () => tab(which));
    byId(`tab-${which}`).addEventListener("keydown", (event) => {
      if (event.key === "ArrowLeft" || event.key === "ArrowRight") tab(which === "totals" ? "steps" : "totals", true);
    });
  }
  byId("pieces").addEventListener("input", settled(200, () => void accountNow().catch((error: unknown) => trouble(String(error)))));
  byId("name").addEventListener("change", () => {
    const before = name;
    name = fileName(byId<HTMLInputElement>("name").value);
    showName();
    if (name === before) return;
    if (written) {
      forget(before);
      dirty = true;
      saveNow();
    }
    look();
  });
  addEventListener("hashchange", () => void followLink());
  addEventListener("pagehide", saveNow);
}

function keepOffline(): void {
  if (!("serviceWorker" in navigator)) return;
  navigator.serviceWorker.register(trustedUrl("sw.js")).then(
    () => (byId("offline").textContent = "Works without a network from now on."),
    () => (byId("offline").textContent = "This browser does not keep the page for use without a network."),
  );
}

theme();
wire();
showName();
notice(first.notice);
if (first.origin === "link") say(FROM_LINK);
void lookNow(first.asked);
