/** What the first script of the page left for the rest: it was loaded by itself and exists once. */

import type { Early } from "./opening";

const early = (globalThis as unknown as { tenter: Early }).tenter;
export const { engine, Trouble, linked, examples, starter, trustedUrl } = early;
export const opening = await early.opening;
