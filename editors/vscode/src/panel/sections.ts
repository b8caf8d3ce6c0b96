// A page of text as the server lays it out, taken apart: headings stand at the left edge, what belongs to them is set in.

export interface Section {
  readonly heading: string;
  /** Laid out in columns: shown as it stands. */
  readonly text: string;
}

export interface Sheet {
  readonly title: string;
  /** Sentences under the title. */
  readonly about: string;
  readonly sections: readonly Section[];
}

/** Takes a page apart; nothing of it is lost. */
export function takeApart(page: string): Sheet {
  const lines = page.replace(/\r\n?/g, "\n").replace(/\s+$/, "").split("\n");
  let title = "";
  const about: string[] = [];
  const sections: { heading: string; lines: string[] }[] = [];
  for (const [index, line] of lines.entries()) {
    if (/^─+$/.test(line)) {
      continue;
    }
    const ruled = /^─+$/.test(lines[index + 1] ?? "");
    if (ruled && title === "") {
      title = line;
    } else if (line !== "" && !/^\s/.test(line)) {
      if (sections.length === 0 && title !== "" && /[.!?]$/.test(line)) {
        about.push(line);
      } else {
        sections.push({ heading: line, lines: [] });
      }
    } else {
      const last = sections.at(-1);
      if (last !== undefined) {
        last.lines.push(line);
      } else if (line.trim() !== "") {
        about.push(line.trim());
      }
    }
  }
  return {
    title,
    about: about.join(" "),
    sections: sections.map(({ heading, lines: held }) => ({ heading, text: outdented(held) })),
  };
}

/** Takes off what all lines are set in by, and blank lines around. */
function outdented(lines: readonly string[]): string {
  const held = lines.join("\n").replace(/^\n+|\s+$/g, "").split("\n");
  const depth = Math.min(...held.filter((line) => line.trim() !== "").map((line) => line.length - line.trimStart().length));
  return Number.isFinite(depth) ? held.map((line) => line.slice(depth)).join("\n") : "";
}
