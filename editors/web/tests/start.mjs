// How long the page takes until the first findings, totals and steps are there: each time in a fresh browser, with
// nothing attached to it meanwhile. usage: node tests/start.mjs [TIMES]; CHROMIUM names the browser.
import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

import { serve } from "./serve.mjs";

const site = await serve(join(dirname(fileURLToPath(import.meta.url)), "../dist"));
const taken = [];
for (let left = Number(process.argv[2] ?? 5); left > 0; left--) {
  const profile = await mkdtemp(join(tmpdir(), "tenter-start-"));
  const quiet = ["--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
  const browser = spawn(process.env.CHROMIUM ?? "/usr/bin/chromium", ["--headless", "--no-sandbox", "--disable-gpu", ...quiet, "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"], {
    stdio: ["ignore", "ignore", "pipe"],
  });
  const port = await new Promise((found) => {
    let said = "";
    browser.stderr.on("data", (more) => {
      const line = /ws:\/\/127\.0\.0\.1:(\d+)\//.exec((said += more));
      if (line) found(line[1]);
    });
  });
  await sleep(2500);
  await fetch(`http://127.0.0.1:${port}/json/new?${site.address}`, { method: "PUT" });
  await sleep(4000);
  const attached = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  const page = attached.contexts().flatMap((context) => context.pages()).find((page) => page.url().startsWith(site.address));
  taken.push(Number(await page.evaluate(() => document.documentElement.dataset.ready ?? "NaN")));
  await attached.close();
  const ended = new Promise((end) => browser.once("exit", end));
  browser.kill();
  await ended;
  await rm(profile, { recursive: true, force: true, maxRetries: 5 });
}
await site.stop();
taken.sort((a, b) => a - b);
console.log(`first findings, totals and steps after ${taken.join(", ")} ms; in the middle ${taken[taken.length >> 1]} ms`);
