/** What was written on this machine, kept in the browser's own storage. Where that is shut, nothing is kept. */

const KEY = "tenter.drafts";
const MOST = 30;

export interface Draft {
  name: string;
  text: string;
  /** When it was last changed, ms. */
  changed: number;
}

/** All drafts, the latest first. */
export function drafts(): Draft[] {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    return Array.isArray(read) ? read.filter(isDraft).sort((a, b) => b.changed - a.changed) : [];
  } catch {
    return [];
  }
}

/** Keeps a draft; false where the browser keeps nothing. */
export function keep(draft: Draft): boolean {
  return write([draft, ...drafts().filter((other) => other.name !== draft.name)].slice(0, MOST));
}

/** Forgets a draft. */
export function forget(name: string): void {
  write(drafts().filter((draft) => draft.name !== name));
}

/** A name no draft bears yet. */
export function freeName(name: string): string {
  const taken = new Set(drafts().map((draft) => draft.name));
  const stem = name.replace(/\.dye$/, "");
  for (let number = 1; ; number++) {
    const tried = number === 1 ? `${stem}.dye` : `${stem}-${number}.dye`;
    if (!taken.has(tried)) return tried;
  }
}

function write(all: Draft[]): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify(all));
    return true;
  } catch {
    return false;
  }
}

function isDraft(value: unknown): value is Draft {
  const draft = value as Draft | null;
  return typeof draft?.name === "string" && typeof draft.text === "string" && typeof draft.changed === "number";
}
