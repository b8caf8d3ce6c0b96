// Which version of the command was found, and whether it is new enough for this extension.

/** The oldest command this extension was made for. */
export const OLDEST = "0.1.0";

export type Version =
  | { readonly kind: "fits"; readonly version: string }
  | { readonly kind: "old"; readonly version: string; readonly message: string }
  | { readonly kind: "unknown"; readonly message: string };

/** Reads what `tenter --version` printed. */
export function readVersion(file: string, printed: string): Version {
  // Beneath stands the edition of the notation.
  const first = printed.trim().split(/\r?\n/, 1)[0] ?? "";
  const match = /^tenter (\d+)\.(\d+)\.(\d+)(?:[-+][\w.+-]+)?\s*$/.exec(first);
  if (match === null) {
    const said = first.slice(0, 80);
    return {
      kind: "unknown",
      message: `${file} does not answer as tenter does: to --version it said “${said}”. Check the setting tenter.server.path.`,
    };
  }
  const version = first.trim().slice("tenter ".length);
  if (compare(version, OLDEST) < 0) {
    return {
      kind: "old",
      version,
      message: `${file} is tenter ${version}, and this extension needs ${OLDEST} or newer. Some things will not work until it is brought up to date.`,
    };
  }
  return { kind: "fits", version };
}

function compare(one: string, other: string): number {
  const numbers = (version: string): number[] => version.split(/[-+]/, 1)[0]?.split(".").map(Number) ?? [];
  const [left, right] = [numbers(one), numbers(other)];
  for (let index = 0; index < 3; index += 1) {
    const difference = (left[index] ?? 0) - (right[index] ?? 0);
    if (difference !== 0) {
      return difference;
    }
  }
  return 0;
}
