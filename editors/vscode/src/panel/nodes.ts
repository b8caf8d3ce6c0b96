// What a page holds, as plain data: the window builds elements of it, printing writes it out.
export interface Node {
  readonly tag: "h1" | "h2" | "p" | "pre" | "section" | "table" | "thead" | "tbody" | "tr" | "th" | "td";
  readonly className?: string;
  readonly text?: string;
  /** A cell that reaches over all columns. */
  readonly span?: number;
  /** Whether a heading cell is that of a row. */
  readonly row?: boolean;
  readonly children?: readonly Node[];
}
