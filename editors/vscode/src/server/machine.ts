// The machine this runs on, for the search and for asking a command its version.
import { execFile } from "node:child_process";
import { accessSync, constants, statSync } from "node:fs";
import { homedir } from "node:os";

import type { Machine } from "./lookup";

export const machine: Machine = {
  platform: process.platform,
  home: homedir(),
  searchPath: process.env["PATH"] ?? process.env["Path"],
  extensions: process.env["PATHEXT"],
  runnable(file) {
    try {
      accessSync(file, constants.X_OK);
      return statSync(file).isFile();
    } catch {
      return false;
    }
  },
};

/** Runs a command to its end and gives what it printed; an error says why it could not. */
export function run(file: string, args: readonly string[], folder?: string): Promise<string> {
  const options = { timeout: 10_000, maxBuffer: 1 << 20, windowsHide: true, ...(folder === undefined ? {} : { cwd: folder }) };
  return new Promise((resolve, reject) => {
    execFile(file, [...args], options, (error, stdout, stderr) => {
      if (error === null) {
        resolve(stdout);
      } else {
        reject(new Error(stderr.trim() || error.message));
      }
    });
  });
}
