// Where the server is: by the setting, else in the package, else on the PATH. Nothing here touches the editor, so that it
// can be tested by itself.
import * as path from "node:path";

/** What the search needs to know of the machine. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  /** The PATH variable. */
  readonly searchPath: string | undefined;
  /** PATHEXT, on Windows. */
  readonly extensions: string | undefined;
  /** Whether a file is there and may be run. */
  runnable(file: string): boolean;
}

/** What the user and the package say. */
export interface Wish {
  /** The setting `tenter.server.path`; empty when not set. */
  readonly setting: string;
  /** The first folder of the workspace. */
  readonly workspaceFolder: string | undefined;
  /** The folder of the extension. */
  readonly extensionFolder: string;
}

export type Origin = "setting" | "bundled" | "path";

export type Lookup =
  | { readonly found: true; readonly file: string; readonly origin: Origin }
  | { readonly found: false; readonly message: string };

const NAME = "tenter";

/** Finds the server, or says in words for the user why not. */
export function findServer(machine: Machine, wish: Wish): Lookup {
  const setting = wish.setting.trim();
  if (setting !== "") {
    return bySetting(machine, wish, setting);
  }
  const bundled = join(machine, wish.extensionFolder, "server", binary(machine));
  if (machine.runnable(bundled)) {
    return { found: true, file: bundled, origin: "bundled" };
  }
  const onPath = inSearchPath(machine, NAME);
  if (onPath !== undefined) {
    return { found: true, file: onPath, origin: "path" };
  }
  return {
    found: false,
    message:
      `The command ${NAME} was not found: it is not in this package and in no folder of the PATH. ` +
      "Install it, or say where it is in the setting tenter.server.path.",
  };
}

/** A setting that leads nowhere is said so: another server in its place would only puzzle. */
function bySetting(machine: Machine, wish: Wish, setting: string): Lookup {
  const file = expand(machine, wish, setting);
  if (file === undefined) {
    return { found: false, message: `The setting tenter.server.path is ${setting}, but no folder is open.` };
  }
  const paths = flavour(machine);
  if (paths.isAbsolute(file)) {
    return machine.runnable(file)
      ? { found: true, file, origin: "setting" }
      : { found: false, message: `The setting tenter.server.path is ${setting}, but no program is there: ${file}` };
  }
  if (/[\\/]/.test(file)) {
    return {
      found: false,
      message: `The setting tenter.server.path is ${setting}. Write the whole path, or begin it with ~ or \${workspaceFolder}.`,
    };
  }
  const onPath = inSearchPath(machine, file);
  return onPath === undefined
    ? { found: false, message: `The setting tenter.server.path is ${setting}, but no folder of the PATH has a program of that name.` }
    : { found: true, file: onPath, origin: "setting" };
}

function expand(machine: Machine, wish: Wish, setting: string): string | undefined {
  if (setting === "~" || /^~[\\/]/.test(setting)) {
    return join(machine, machine.home, setting.slice(1));
  }
  if (!setting.includes("${workspaceFolder}")) {
    return setting;
  }
  const folder = wish.workspaceFolder;
  return folder === undefined ? undefined : setting.replaceAll("${workspaceFolder}", () => folder);
}

/** Only whole paths are searched: `.` in a PATH would run what a downloaded folder brings along. */
function inSearchPath(machine: Machine, name: string): string | undefined {
  const paths = flavour(machine);
  const folders = (machine.searchPath ?? "").split(paths.delimiter).filter((folder) => paths.isAbsolute(folder));
  for (const folder of folders) {
    for (const ending of endings(machine, name)) {
      const file = paths.join(folder, name + ending);
      if (machine.runnable(file)) {
        return file;
      }
    }
  }
  return undefined;
}

function endings(machine: Machine, name: string): string[] {
  if (machine.platform !== "win32" || path.win32.extname(name) !== "") {
    return [""];
  }
  // A batch file cannot be started without a shell.
  const given = (machine.extensions ?? ".EXE").toLowerCase().split(";");
  return given.filter((ending) => ending === ".exe" || ending === ".com");
}

function binary(machine: Machine): string {
  return machine.platform === "win32" ? `${NAME}.exe` : NAME;
}

function flavour(machine: Machine): path.PlatformPath {
  return machine.platform === "win32" ? path.win32 : path.posix;
}

function join(machine: Machine, ...parts: string[]): string {
  return flavour(machine).join(...parts);
}
