// What the totals window is told to show.
import type { Node } from "./nodes";

export interface Message {
  /** The recipe; empty when there is none. */
  readonly title: string;
  readonly nodes: readonly Node[];
}
