// The totals as the server tells them: headings, lines and tables, set out in order. No figure is worked out here.
import type { Node } from "./nodes";

export interface Table {
  readonly heads: readonly (readonly [text: string, edge: "left" | "right"])[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly beneath: readonly string[] }[];
}

export type Content =
  | { readonly is: "line"; readonly of: string }
  | { readonly is: "table"; readonly of: Table }
  | { readonly is: "mix"; readonly of: { readonly line: string; readonly table: Table; readonly made_up: string | null } };

export interface Sheet {
  readonly title: string;
  readonly about: string | null;
  readonly parts: readonly { readonly heading: string; readonly content: readonly Content[] }[];
}

/** The sheet; `below` comes between its head and its parts. */
export function sheetNodes({ title, about, parts }: Sheet, below: readonly Node[] = []): Node[] {
  return [
    { tag: "h1", text: title },
    ...(about === null ? [] : [{ tag: "p" as const, className: "about", text: about }]),
    ...below,
    ...parts.flatMap(({ heading, content }): Node[] => [{ tag: "h2", text: heading }, ...content.flatMap(contentNodes)]),
  ];
}

/** How everything stands at a line: a sentence, then the server's own columns. */
export function stateNodes(state: string): Node[] {
  const [first = "", ...rest] = state.replace(/\s+$/, "").split("\n");
  if (first === "") {
    return [];
  }
  // A long sentence goes on in the next line, set in; the clock that follows it opens with a number.
  let heading = first;
  while (rest[0] !== undefined && /^ {2}[^\s\d]/.test(rest[0]) && !/^ {2}\S.* {2}|: /.test(rest[0])) {
    heading += ` ${rest.shift()?.trim() ?? ""}`;
  }
  const text = rest.map((line) => line.replace(/^ {2}/, "")).join("\n");
  return [{ tag: "section", className: "here", children: [{ tag: "h2", text: heading }, ...(text === "" ? [] : [{ tag: "pre" as const, text }])] }];
}

function contentNodes(content: Content): Node[] {
  switch (content.is) {
    case "line":
      return [{ tag: "p", text: content.of }];
    case "table":
      return [tableNode(content.of)];
    case "mix": {
      const { line, table, made_up: madeUp } = content.of;
      return [{ tag: "p", className: "mix", text: line }, tableNode(table), ...(madeUp === null ? [] : [{ tag: "p" as const, text: madeUp }])];
    }
  }
}

function tableNode({ heads, rows }: Table): Node {
  // A column that says nothing takes no room.
  const columns = heads.map((_, index) => index).filter((index) => rows.some(({ cells }) => (cells[index] ?? "") !== ""));
  const edge = (index: number): string => (heads[index]?.[1] === "right" ? "number" : "words");
  const body = rows.flatMap(({ cells, beneath }): Node[] => [
    {
      tag: "tr",
      children: columns.map((index, place): Node => ({ tag: place === 0 ? "th" : "td", row: true, className: edge(index), text: cells[index] ?? "" })),
    },
    ...beneath.map((text): Node => ({ tag: "tr", className: "beneath", children: [{ tag: "td", span: columns.length, text }] })),
  ]);
  const titled = columns.some((index) => heads[index]?.[0] !== "");
  const head: Node = { tag: "thead", children: [{ tag: "tr", children: columns.map((index): Node => ({ tag: "th", className: edge(index), text: heads[index]?.[0] ?? "" })) }] };
  return { tag: "table", children: [...(titled ? [head] : []), { tag: "tbody", children: body }] };
}
