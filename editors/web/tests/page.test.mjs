// The page in a real browser, without a window. Needs dist/ (editors/web/build) and a `tenter` command to compare with.
// TENTER names the command, CHROMIUM the browser; a picture of every state goes to out/.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { createRequire } from "node:module";
import { chromium } from "playwright-core";

import { serve } from "./serve.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const top = join(here, "../../..");
const dist = join(here, "../dist");
const out = join(here, "../out");
const tenter = process.env.TENTER ?? "tenter";
const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const recipe = (name) => readFileSync(join(top, "tests", name), "utf8");

let browser;
let site;

before(async () => {
  mkdirSync(out, { recursive: true });
  site = await serve(dist);
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
});

after(async () => {
  await browser?.close();
  await site?.stop();
});

/** A fresh visitor. Every request to elsewhere and every complaint of the page fails the test. */
async function visit(options = {}, address = site.address) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const elsewhere = [];
  const complaints = [];
  context.on("request", (request) => {
    if (!request.url().startsWith(site.address) && !request.url().startsWith("blob:")) elsewhere.push(request.url());
  });
  const page = await context.newPage();
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  await page.goto(address);
  await page.waitForSelector("html[data-ready]", { timeout: 60_000 });
  return {
    context,
    page,
    async leave() {
      assert.deepEqual(elsewhere, []);
      assert.deepEqual(complaints, []);
      await context.close();
    },
  };
}

/** Pastes a text over the one that is there and waits until the page has told all about it. */
async function write(page, text) {
  await page.locator(".cm-content").click();
  await page.keyboard.press("Control+a");
  await page.evaluate((pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", pasted);
    document.querySelector(".cm-content").dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
  await settled(page);
}

/** Waits until the engine has answered on the text as it stands. */
async function settled(page) {
  await page.waitForFunction(
    async () => {
      const told = () => [document.querySelector("#finding-list").textContent, document.querySelector("#totals").textContent].join("|");
      const before = told();
      await new Promise((later) => setTimeout(later, 600));
      return before === told() && document.querySelector("#trouble").hidden;
    },
    undefined,
    { timeout: 60_000 },
  );
}

const shown = (page) =>
  page.$$eval("#finding-list > li", (items) =>
    items.map((item) => ({
      rule: item.dataset.rule,
      level: item.querySelector(".level").textContent,
      line: Number(item.querySelector(".place").textContent.replace("line ", "")),
      message: item.querySelector(".message").textContent,
    })),
  );

/** What the command finds in a text. */
function command(verb, text, ...options) {
  const run = { input: text, encoding: "utf8", stdio: ["pipe", "pipe", "pipe"], maxBuffer: 1 << 26 };
  try {
    return execFileSync(tenter, [verb, ...options, "--stdin-filename", "recipe.dye", "-"], run);
  } catch (error) {
    if (error.status === 1) return error.stdout;
    throw error;
  }
}

const order = (a, b) => a.line - b.line || a.rule.localeCompare(b.rule) || a.message.localeCompare(b.message);

test("it is small enough and starts soon enough", async () => {
  const sizes = readdirSync(dist).map((name) => gzipSync(readFileSync(join(dist, name)), { level: 9 }).length);
  const whole = sizes.reduce((sum, size) => sum + size, 0);
  const { page, leave } = await visit();
  const ready = Number(await page.evaluate(() => document.documentElement.dataset.ready));
  console.log(`size of the page: ${whole} bytes, gzip -9; first findings, totals and steps after ${ready} ms`);
  assert.ok(whole < 1_500_000, `${whole} bytes`);
  // A bound for a busy machine; what is promised is less than a second on a quiet one.
  assert.ok(ready < 15_000, `${ready} ms`);
  assert.match(await page.textContent("#totals"), /soda ash\s*612 g/);
  await page.screenshot({ path: join(out, "light.png") });
  await page.click("#tab-steps");
  await page.screenshot({ path: join(out, "light-steps.png") });
  await leave();
});

test("the findings are those of the command", async () => {
  const { page, leave } = await visit();
  const broken = readdirSync(join(top, "tests/broken")).filter((name) => name.endsWith(".dye")).sort();
  // Those that take from no other file, spread over the folder.
  const alone = broken.map((name) => recipe(`broken/${name}`)).filter((text) => !/^use /m.test(text) && text.length < 6000);
  const step = Math.max(1, Math.floor(alone.length / 8));
  const texts = [recipe("recipes/harbour-dusk.dye"), recipe("recipes/printed-fern.dye"), ...alone.filter((_, at) => at % step === 0).slice(0, 8)];
  assert.ok(texts.length >= 8);
  let found = 0;
  for (const text of texts) {
    const wanted = JSON.parse(command("check", text, "--format", "json")).map(({ rule, level, line, message }) => ({
      rule,
      level,
      line,
      // What stands between backticks is set off on the page.
      message: message.replaceAll("`", ""),
    }));
    await write(page, text);
    assert.deepEqual((await shown(page)).sort(order), wanted.sort(order));
    found += wanted.length;
  }
  assert.ok(found >= 8, `only ${found} findings compared`);
  await page.screenshot({ path: join(out, "findings.png") });
  await leave();
});

test("the totals are those of the command", async () => {
  const { page, leave } = await visit();
  for (const name of ["recipes/slate-shirts.dye", "recipes/wool-hats.dye"]) {
    const text = recipe(name);
    await write(page, text);
    const printed = command("totals", text).replace(/\s+/g, " ");
    const rows = await page.$$eval("#totals tbody th[scope=row]", (heads) =>
      heads.map((head) => [head, ...head.parentElement.querySelectorAll("td")].flatMap((cell) => cell.textContent.split("\n"))),
    );
    assert.ok(rows.length > 5, name);
    for (const cell of rows.flat().filter((text) => text && !text.includes(" with "))) {
      for (const word of cell.split(" ")) assert.ok(printed.includes(word), `${name}: ${cell}`);
    }
  }
  await leave();
});

test("a fix is a button, pieces scale, tidying tidies", async () => {
  const { page, leave } = await visit();
  const text = "edition 1\n\nrecipe A\n\ngoods tees\n  pieces 2\n  weight 160 g each\n  fibre 100% coton\n  state scoured, dry\n\nmix soak\n  1 L/piece water at 40 °C\n  60 g/L soda ash\n\nsteps\n  wear gloves, goggles\n  soak tees in soak for 20 min\n  dry tees\n";
  await write(page, text);
  const item = page.locator('#finding-list > li[data-rule="unknown-name"]');
  assert.equal(await item.count(), 1);
  await item.locator(".fix").first().click();
  await settled(page);
  assert.equal(await item.count(), 0);
  assert.match(await page.textContent(".cm-content"), /100% cotton/);
  assert.match(await page.textContent("#totals"), /soda ash\s*120 g/);
  await page.fill("#pieces", "6");
  await settled(page);
  assert.match(await page.textContent("#totals"), /soda ash\s*360 g/);
  await page.click("#tidy");
  await settled(page);
  assert.match(await page.textContent(".cm-content"), / {2}pieces {3}2/);
  await page.click("#rewrite");
  await settled(page);
  assert.match(await page.textContent(".cm-content"), / {2}pieces {3}6/);
  await leave();
});

test("a link carries the recipe, and nothing else does", async () => {
  const { page, leave } = await visit();
  const text = recipe("recipes/tide-mark.dye").replace("recipe ", "recipe Ünï 👩‍🎨 ");
  await write(page, text);
  await page.click("#share");
  const link = await page.inputValue("#link");
  await page.screenshot({ path: join(out, "share.png") });
  assert.ok(link.startsWith(`${site.address}#r1=`), link);
  const written = await page.inputValue("#name");
  await page.click("#share-close");
  await leave();
  const other = await visit({}, link);
  await settled(other.page);
  assert.equal(await other.page.inputValue("#name"), written);
  const downloading = other.page.waitForEvent("download");
  await other.page.click("#download");
  const download = await downloading;
  assert.equal(download.suggestedFilename(), written);
  assert.equal(readFileSync(await download.path(), "utf8"), text);
  await other.leave();
  const cut = await browser.newContext();
  const page2 = await cut.newPage();
  await page2.goto(`${link.slice(0, -40)}`);
  await page2.waitForSelector("html[data-ready]");
  assert.match(await page2.textContent("#trouble"), /link could not be read/);
  assert.match(await page2.textContent(".cm-content"), /edition 1/);
  await cut.close();
});

test("what was written is there again, and examples do not overwrite it", async () => {
  const { page, leave } = await visit();
  await page.locator(".cm-content").click();
  await page.keyboard.press("Control+Home");
  await page.keyboard.insertText("# mine\n");
  await page.waitForFunction(() => localStorage.getItem("tenter.drafts")?.includes("# mine"));
  await page.reload();
  await page.waitForSelector("html[data-ready]");
  assert.match(await page.textContent(".cm-content"), /# mine/);
  assert.equal(await page.inputValue("#name"), "harbour-dusk-mine.dye");
  await page.click("#open");
  await page.screenshot({ path: join(out, "open.png") });
  await page.locator("#examples button").nth(3).click();
  await page.keyboard.press("Control+Home");
  await page.keyboard.insertText("# also mine\n");
  await page.click("#new");
  await settled(page);
  assert.doesNotMatch(await page.textContent(".cm-content"), /# mine/);
  const kept = JSON.parse(await page.evaluate(() => localStorage.getItem("tenter.drafts")));
  assert.deepEqual(kept.map(({ text }) => text.split("\n")[0]).sort(), ["# also mine", "# mine"]);
  await leave();
});

test("it works without a network", async () => {
  const { context, page, leave } = await visit();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  await page.reload();
  await page.waitForSelector("html[data-ready]", { timeout: 60_000 });
  await write(page, recipe("recipes/harbour-dusk.dye").replace("60 g/L", "50 g/L"));
  assert.match(await page.textContent("#totals"), /soda ash\s*532 g/);
  await context.setOffline(false);
  await leave();
});

test("all of it can be done with the keyboard", async () => {
  const { page, leave } = await visit();
  const focused = () => page.evaluate(() => document.activeElement.id || document.activeElement.className || document.activeElement.tagName);
  const reached = [];
  for (let presses = 0; presses < 40; presses++) {
    await page.keyboard.press("Tab");
    reached.push(await focused());
    if (reached.at(-1) === "tab-totals") break;
  }
  for (const wanted of ["skip", "open", "new", "tidy", "share", "download", "print", "theme", "name", "cm-content", "tab-totals"])
    assert.ok(reached.some((id) => id.includes(wanted)), `${wanted} in ${reached}`);
  assert.ok(reached.indexOf("open") < reached.findIndex((id) => id.includes("cm-content")), "the order is that of the page");
  await page.keyboard.press("ArrowRight");
  assert.equal(await focused(), "tab-steps");
  assert.ok(await page.isVisible("#panel-steps"));
  // A slip typed, the list reached, the place gone to, the fix made, without touching anything else.
  await page.focus(".cm-content");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\ngoods hats\n  pieces 3\nweight 90 g each\nfibre 100% coton");
  await settled(page);
  await page.keyboard.press("Control+Shift+M");
  assert.match(await focused(), /place/);
  await page.keyboard.press("Enter");
  assert.match(await focused(), /cm-content/);
  // Proposals: what is chosen goes in.
  await page.keyboard.press("Control+End");
  await page.keyboard.type(", 3% ela");
  await page.waitForSelector(".cm-tooltip-autocomplete");
  await page.waitForTimeout(200);
  await page.screenshot({ path: join(out, "proposals.png") });
  await page.keyboard.press("Enter");
  assert.match(await page.textContent(".cm-content"), /3% elastane/);
  await page.keyboard.press("Control+Home");
  await page.keyboard.press("F4");
  await page.waitForSelector("#asked:not([hidden])");
  assert.ok((await page.textContent("#asked-page")).length > 5);
  await page.keyboard.press("Tab");
  await page.focus("#open");
  await page.keyboard.press("Enter");
  assert.ok(await page.isVisible("#open-dialog"));
  await page.keyboard.press("Escape");
  assert.ok(await page.isHidden("#open-dialog"));
  assert.equal(await focused(), "open");
  await leave();
});

test("a program finds no fault for those who do not see the page", async () => {
  const faulty = readdirSync(join(top, "tests/broken")).filter((name) => name.endsWith(".dye")).sort()[0];
  for (const [name, options] of Object.entries({
    light: {},
    dark: { colorScheme: "dark" },
    phone: { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true },
  })) {
    const { page, leave } = await visit({ ...options, bypassCSP: true });
    await page.evaluate(axeSource);
    const faults = () =>
      page.evaluate(async () => {
        const { violations } = await globalThis.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] });
        return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => `${node.target.join(" ")} ${node.failureSummary}`).join("; ")}`);
      });
    assert.deepEqual(await faults(), [], name);
    await write(page, recipe(`broken/${faulty}`));
    await page.locator("#finding-list summary").first().click();
    await page.click("#tab-steps");
    await settled(page);
    assert.deepEqual(await faults(), [], `${name}, with findings and steps`);
    await page.screenshot({ path: join(out, `${name}-findings.png`), fullPage: name === "phone" });
    await page.click("#open");
    assert.deepEqual(await faults(), [], `${name}, opening`);
    await leave();
  }
});

test("on a phone nothing hangs over the edge", async () => {
  const { page, leave } = await visit({ viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true, deviceScaleFactor: 2 });
  const over = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.equal(await over(), 0);
  await page.screenshot({ path: join(out, "phone.png") });
  await page.tap("#jump-steps");
  await page.waitForTimeout(300);
  assert.ok(await page.isVisible("#panel-steps"));
  assert.equal(await over(), 0);
  await page.screenshot({ path: join(out, "phone-steps.png") });
  await leave();
});

test("without its engine it says so, and goes on once it is there", async () => {
  const context = await browser.newContext();
  let shut = true;
  await context.route("**/engine.wasm", (route) => (shut ? route.fulfill({ status: 503 }) : route.continue()));
  const page = await context.newPage();
  await page.goto(site.address);
  await page.waitForSelector("#trouble:not([hidden])");
  assert.match(await page.textContent("#trouble"), /could not be fetched.*Your text is left as it is/);
  assert.match(await page.textContent(".cm-content"), /edition 1/);
  shut = false;
  await page.locator(".cm-content").click();
  await page.keyboard.insertText(" ");
  await page.waitForSelector("html[data-ready]", { timeout: 60_000 });
  assert.ok(await page.isHidden("#trouble"));
  await context.close();
});

test("what a stranger writes stays text", async () => {
  const { page, leave } = await visit();
  const hostile = `recipe <img src=x onerror=alert(1)> **b** [x](javascript:alert(1))
  about <script>alert(2)</script>

goods <b>tees</b>
  pieces 2
  weight 160 g each
  fibre 100% <i>cotton</i>

mix <svg onload=alert(3)>
  1 L water
  60 g/L soda ash

steps
  soak <b>tees</b> in <svg onload=alert(3)> for 20 min
`;
  page.on("dialog", () => assert.fail("a script ran"));
  await write(page, hostile);
  await page.click("#tab-steps");
  assert.equal(await page.locator("#totals img, #totals script, #totals svg, #totals b, #finding-list b, #finding-list svg, #finding-list i, #steps b").count(), 0);
  assert.match(await page.textContent("#totals"), /<img src=x onerror=alert\(1\)>/);
  await leave();
});

test("on paper: what to weigh and every step", async () => {
  const { page, leave } = await visit();
  await page.emulateMedia({ media: "print" });
  assert.ok(await page.isVisible("#totals"));
  assert.ok(await page.isVisible("#steps"));
  assert.ok(await page.isHidden("#editor"));
  assert.ok(await page.isHidden(".tools"));
  await page.pdf({ path: join(out, "bench-sheet.pdf"), format: "A4" });
  await page.setViewportSize({ width: 794, height: 1123 });
  await page.screenshot({ path: join(out, "print.png"), fullPage: true });
  await leave();
});
