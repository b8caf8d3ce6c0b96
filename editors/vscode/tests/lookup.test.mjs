// Where the server is looked for, in which order, and what is said when it is not there.
import assert from "node:assert/strict";
import { test } from "node:test";

import { source } from "./source.mjs";

const { findServer } = source("server/lookup.ts");
const { readVersion, OLDEST } = source("server/version.ts");

const machine = (files, more = {}) => ({
  platform: "linux", home: "/home/ada", searchPath: "/usr/local/bin:/usr/bin", extensions: undefined, runnable: (file) => files.includes(file), ...more,
});
const wish = (more = {}) => ({ setting: "", workspaceFolder: "/home/ada/studio", extensionFolder: "/ext", ...more });
const EVERYWHERE = ["/opt/tenter", "/ext/server/tenter", "/usr/local/bin/tenter", "/usr/bin/tenter"];

test("the setting comes first, then the package, then the PATH", () => {
  assert.deepEqual(findServer(machine(EVERYWHERE), wish({ setting: "/opt/tenter" })), { found: true, file: "/opt/tenter", origin: "setting" });
  assert.deepEqual(findServer(machine(EVERYWHERE), wish()), { found: true, file: "/ext/server/tenter", origin: "bundled" });
  assert.deepEqual(findServer(machine(EVERYWHERE.slice(2)), wish()), { found: true, file: "/usr/local/bin/tenter", origin: "path" });
  assert.deepEqual(findServer(machine(EVERYWHERE.slice(3)), wish()), { found: true, file: "/usr/bin/tenter", origin: "path" });
});

test("a setting that leads nowhere is said so, and nothing else is taken", () => {
  const { found, message } = findServer(machine(EVERYWHERE), wish({ setting: "/gone/tenter" }));
  assert.equal(found, false);
  assert.match(message, /tenter\.server\.path/);
  assert.match(message, /\/gone\/tenter/);
});

test("the setting may begin with the home or the workspace folder, or be a name", () => {
  assert.equal(findServer(machine(["/home/ada/bin/tenter"]), wish({ setting: "~/bin/tenter" })).file, "/home/ada/bin/tenter");
  assert.equal(findServer(machine(["/home/ada/studio/tenter"]), wish({ setting: "${workspaceFolder}/tenter" })).file, "/home/ada/studio/tenter");
  assert.match(findServer(machine([]), wish({ setting: "${workspaceFolder}/tenter", workspaceFolder: undefined })).message, /no folder is open/);
  assert.equal(findServer(machine(["/usr/bin/tenter-next"]), wish({ setting: "tenter-next" })).file, "/usr/bin/tenter-next");
  assert.match(findServer(machine([]), wish({ setting: "tenter-next" })).message, /no folder of the PATH/);
  assert.match(findServer(machine(["bin/tenter"]), wish({ setting: "bin/tenter" })).message, /whole path/);
  // `$&` in a folder's name is no pattern.
  assert.equal(findServer(machine(["/a$&b/tenter"]), wish({ setting: "${workspaceFolder}/tenter", workspaceFolder: "/a$&b" })).file, "/a$&b/tenter");
});

test("folders of the PATH that are not whole are passed over", () => {
  assert.equal(findServer(machine(["./tenter", "tenter", "bin/tenter"], { searchPath: ".:bin::" }), wish()).found, false);
  assert.match(findServer(machine([], { searchPath: undefined }), wish()).message, /no folder of the PATH/);
});

test("on Windows the program ends in .exe, and a batch file is no program", () => {
  const windows = (files) => machine(files, { platform: "win32", home: "C:\\Users\\ada", searchPath: "C:\\bin;D:\\tools", extensions: ".COM;.EXE;.BAT;.CMD" });
  assert.equal(findServer(windows(["D:\\tools\\tenter.exe"]), wish({ extensionFolder: "C:\\ext" })).file, "D:\\tools\\tenter.exe");
  assert.equal(findServer(windows(["C:\\ext\\server\\tenter.exe"]), wish({ extensionFolder: "C:\\ext" })).origin, "bundled");
  assert.equal(findServer(windows(["C:\\bin\\tenter.cmd"]), wish({ extensionFolder: "C:\\ext" })).found, false);
  assert.equal(findServer(windows(["C:\\Users\\ada\\tenter.exe"]), wish({ setting: "~\\tenter.exe" })).origin, "setting");
});

test("versions", () => {
  assert.equal(readVersion("/t", `tenter ${OLDEST}\n`).kind, "fits");
  assert.equal(readVersion("/t", "tenter 10.0.0\n").kind, "fits");
  assert.equal(readVersion("/t", "tenter 1.2.3-rc.1+abc\n").kind, "fits");
  const old = readVersion("/opt/tenter", "tenter 0.0.9\n");
  assert.equal(old.kind, "old");
  for (const part of ["/opt/tenter", "0.0.9", OLDEST]) assert.ok(old.message.includes(part), part);
  for (const said of ["", "something else 1.0.0", "tenter", "tenter 1.0\n"]) assert.equal(readVersion("/t", said).kind, "unknown", said);
});
