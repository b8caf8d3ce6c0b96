// What the totals window is told to show.
import type { Sheet } from "./sections";

export type Message =
  | { readonly kind: "sheet"; readonly sheet: Sheet; readonly state: Sheet | undefined }
  | { readonly kind: "nothing"; readonly words: string };
