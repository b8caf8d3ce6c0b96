/** The questions the engine takes and what it answers: the shapes of `crates/tenter-web`. */

export interface Change {
  from: number;
  to: number;
  insert: string;
}

export interface Finding {
  rule: string;
  level: "error" | "warning" | "advice";
  from: number;
  to: number;
  line: number;
  column: number;
  message: string;
  help: string;
  notes: { file: string; line: number | null; text: string }[];
  fixes: { title: string; changes: Change[] }[];
}

export interface Look {
  findings: Finding[];
  tokens: [from: number, to: number, classes: string][];
  colours: [from: number, to: number, colour: string][];
  hints: [at: number, words: string][];
  folds: [first: number, last: number][];
}

export interface Table {
  heads: [text: string, edge: "left" | "right"][];
  rows: { cells: string[]; beneath: string[] }[];
}

export type Content =
  | { is: "line"; of: string }
  | { is: "table"; of: Table }
  | { is: "mix"; of: { line: string; table: Table; made_up: string | null } };

export interface Sheet {
  title: string;
  about: string | null;
  parts: { heading: string; content: Content[] }[];
}

/** An open bound is null. */
export interface Spread {
  low: number | null;
  best: number | null;
  high: number | null;
}

export interface Step {
  line: number | null;
  text: string;
  clock: string;
  start_min: Spread;
  end_min: Spread;
  work_min: Spread;
  liquors: string[];
  waits?: string[];
  goods: { rows: [name: string, cells: string[]][]; dyes: string[] }[];
}

export interface Account {
  title: string;
  about: string;
  groups: { heading: string; steps: Step[] }[];
  ending: { time: string; cut_short: string | null; lists: [heading: string, lines: string[]][] };
}

export interface Told {
  pieces: number | null;
  open: number;
  totals: Sheet;
  account: Account;
}

export interface Proposal {
  from: number;
  to: number;
  label: string;
  kind: string;
  detail: string;
  insert: string;
  snippet: boolean;
}

/** Every question with its answer. */
export interface Questions {
  store: [{ files: [string, string][] }, null];
  open: [{ path: string; text: string }, null];
  look: [{ path: string; text: string }, Look];
  account: [{ path: string; pieces: number | null }, { trouble: string | null; recipes: Told[] }];
  complete: [{ path: string; at: number }, Proposal[]];
  describe: [{ kind: string; label: string }, { markdown: string }];
  hover: [{ path: string; at: number }, { from: number; to: number; markdown: string } | null];
  format: [{ path: string }, Change[]];
  rule: [{ name: string }, { markdown: string | null }];
  scale: [{ path: string; at: number; pieces: number }, Change[] | null];
}
