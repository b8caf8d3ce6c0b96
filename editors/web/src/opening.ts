/**
 * The first thing that runs, before anything is drawn: it starts the engine and asks about the text the page opens with,
 * while the browser still reads the text editor and the rest of the page. What the rest needs of it stands in `early`.
 */

import { examples, starter } from "virtual:examples";

import { drafts, freeName } from "./drafts";
import { Engine, Trouble } from "./engine";
import { evenLines } from "./lines";
import { fromFragment } from "./share";
import { trustedUrl } from "./trusted";
import type { Questions } from "./answers";

/** The example a newcomer sees. */
const FIRST = "harbour-dusk.dye";

const engine = new Engine();

/** Where a text came from: a link, what was written here before, or an example. */
export type Origin = "link" | "draft" | "example";

/** What was asked about a text as soon as it was known. */
export interface Asked {
  look: Promise<Questions["look"][1]>;
  account: Promise<Questions["account"][1]>;
}

export interface Opening {
  name: string;
  text: string;
  origin: Origin;
  /** Something to say about it. */
  notice: string;
  asked: Asked;
}

/** The text that a link carries, if it carries one. */
async function linked(): Promise<{ name: string; text: string } | { broken: string } | null> {
  try {
    const shared = await fromFragment(location.hash);
    if (!shared) return null;
    const mine = drafts().find((draft) => draft.name === shared.name);
    return { name: mine && mine.text !== shared.text ? freeName(shared.name) : shared.name, text: shared.text };
  } catch {
    return { broken: "The recipe in this link could not be read; the link may have been cut." };
  }
}

/** Asks all about a text at once. */
function askAll(path: string, text: string): Asked {
  const asked = { look: engine.ask("look", { path, text }), account: engine.ask("account", { path, pieces: null }) };
  // Whoever shows the answers tells what went wrong.
  asked.look.catch(() => undefined);
  asked.account.catch(() => undefined);
  return asked;
}

/** The text to open with: of the link, else what was written last, else the first example. */
async function chosen(): Promise<Omit<Opening, "asked">> {
  const link = await linked();
  if (link && "text" in link) return { ...link, origin: "link", notice: "" };
  const notice = link?.broken ?? "";
  const last = drafts()[0];
  if (last) return { name: last.name, text: last.text, origin: "draft", notice };
  const first = examples.find((example) => example.path === FIRST) ?? examples[0];
  return { name: first?.path ?? "my-recipe.dye", text: first?.text ?? starter, origin: "example", notice };
}

async function open(): Promise<Opening> {
  const first = await chosen();
  const text = evenLines(first.text);
  const store = () => engine.store(examples.map((example) => [example.path, example.text])).catch(() => undefined);
  const uses = /^use\b/m.test(text);
  if (uses) void store();
  const asked = askAll(first.name, text);
  if (!uses) void store();
  return { ...first, text, asked };
}

const early = { engine, Trouble, opening: open(), linked, examples, starter, trustedUrl };
export type Early = typeof early;
(globalThis as { tenter?: Early }).tenter = early;

/** No longer does the rest of the page wait for the engine, ms: on a slow line the engine comes last. */
const LEAD = 300;

// Reading the text editor keeps the page busy for as long as the engine needs to come up.
void Promise.race([engine.underWay(), new Promise((over) => setTimeout(over, LEAD))]).then(() => import("./main"));
