// The extension as a dyer meets it, in a real VS Code. Figures that are asserted are worked out by hand beside them.
import assert from "node:assert/strict";
import { accessSync, constants, existsSync, mkdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

import { sleep, start } from "./editor.mjs";

const HERE = fileURLToPath(new URL("..", import.meta.url));
const RECIPES = path.join(HERE, "../../tests/recipes");
const OUT = path.join(HERE, "out/real");
const rig = process.env.RIG_HOME ?? path.join(HERE, "out/rig");
const vsix = path.join(HERE, "out/tenter.vsix");

/** The command under test, found on a PATH of its own under the name the extension looks for. */
function searchPath() {
  const wanted = process.env.TENTER ?? "tenter";
  const named = wanted.includes("/") ? path.resolve(wanted) : process.env.PATH.split(":").map((folder) => path.join(folder, wanted)).find(existsSync);
  assert.ok(named, `${wanted} is not on the PATH; set TENTER to the command`);
  accessSync(named, constants.X_OK);
  const folder = path.join(OUT, "bin");
  mkdirSync(folder, { recursive: true });
  rmSync(path.join(folder, "tenter"), { force: true });
  symlinkSync(named, path.join(folder, "tenter"));
  const others = process.env.PATH.split(":").filter((entry) => !existsSync(path.join(entry, "tenter")));
  return [folder, ...others].join(":");
}

rmSync(OUT, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });
const themes = (process.env.THEMES ?? "light,dark").split(",");
const names = { light: "Default Light Modern", dark: "Default Dark Modern" };
let ran = 0;
const failed = [];

async function session(settings, work, options = {}) {
  const editor = await start({ rig, vsix, folder: RECIPES, settings, searchPath: searchPath(), out: OUT, ...options });
  try {
    await work(editor);
  } finally {
    if (editor.elsewhere.length > 0) console.log(`  asked elsewhere, and stopped: ${[...new Set(editor.elsewhere.map((it) => new URL(it).host))].join(", ")}`);
    await editor.stop();
  }
}

/** For trying one thing: `ONLY=scaling`. */
const only = process.env.ONLY && new RegExp(process.env.ONLY);

async function step(editor, name, work) {
  if (only && !only.test(name)) return;
  const begin = Date.now();
  try {
    await work();
    ran += 1;
    console.log(`ok    ${name} (${((Date.now() - begin) / 1000).toFixed(1)} s)`);
  } catch (error) {
    failed.push(name);
    console.log(`FAILED ${name}: ${error.message}`);
    await editor.picture(`failed-${name.replace(/\W+/g, "-")}`).catch(() => {});
    for (let turn = 0; turn < 3; turn += 1) await editor.key("Escape").catch(() => {});
  }
}

async function working(editor, theme) {
  const { page, workspace, key, command, goTo, until, lines, texts, inside, picture, visible } = editor;
  const file = path.join(workspace, "harbour-dusk.dye");
  writeFileSync(path.join(workspace, "new-block.dye"), "\n");
  const save = async () => {
    await key("Control+s");
    await sleep(700);
    return readFileSync(file, "utf8");
  };
  const revert = async () => {
    await focus();
    await command("File: Revert File");
    await sleep(400);
  };
  const original = readFileSync(file, "utf8");
  /** The file as it came, written from outside; the editor takes it up. */
  const restore = async () => {
    await save();
    writeFileSync(file, original);
    await sleep(1500);
  };
  const focus = async () => {
    for (let turn = 0; turn < 2; turn += 1) await key("Escape");
    await command("View: Focus First Editor Group");
  };

  await step(editor, `${theme}: hints and lenses`, async () => {
    await editor.open("harbour-dusk.dye");
    await goTo("34:1");
    // 8 L × 60 g/L = 480 g; 6 × 165 g = 990 g.
    await until(async () => (await lines()).some((line) => /60 g\/L +soda ash *480 g/.test(line)), "480 g behind the soda ash");
    await goTo("12:1");
    await until(async () => (await lines()).some((line) => /165 g each *990 g/.test(line)), "990 g behind the weight");
    await until(async () => (await texts(".codelens-decoration")).some((lens) => /used/.test(lens)), "a lens over a mix");
    assert.ok((await texts(".statusbar-item")).some((item) => /Dye recipe/.test(item)), "the language in the status bar");
    assert.ok((await page.$$(".colorpicker-color-decoration")).length >= 3, "swatches of the three dyes");
  });

  await step(editor, `${theme}: totals beside the text follow the cursor`, async () => {
    await focus();
    await goTo("57:3");
    await command("Dye: Show Totals Beside the Text");
    await until(async () => /After line 57/.test(await inside("#sheet .here")), "the state after line 57");
    const sheet = await inside("#sheet");
    // 6 × 4 g = 24 g of lagoon; 480 + 6 × 12 + 60 = 612 g of soda ash.
    assert.match(sheet, /Harbour Dusk/);
    assert.match(sheet, /lagoon\s+24 g/);
    assert.match(sheet, /soda ash\s+612 g/);
    await focus();
    await goTo("58:3");
    await until(async () => /After line 58/.test(await inside("#sheet .here")), "the state after line 58");
    await command("View: Toggle Primary Side Bar Visibility");
    await sleep(1500);
    await picture(`${theme}-totals`);
    await command("View: Toggle Primary Side Bar Visibility");
  });

  await step(editor, `${theme}: completion`, async () => {
    await focus();
    await goTo("57:99");
    await key("Enter");
    await until(async () => (await texts(".statusbar-item")).some((item) => /Ln 58/.test(item)), "a new line");
    await page.keyboard.type("soak tees in ");
    await key("Control+Space");
    await visible(".suggest-widget.visible");
    await until(async () => (await texts(".suggest-widget.visible .monaco-list-row")).some((row) => /soda soak/.test(row)), "soda soak among the proposals");
    await picture(`${theme}-completion`);
    await key("Escape");
    await revert();
    await until(async () => !(await lines()).some((line) => /soak tees in *$/.test(line)), "the line gone again");
  });

  await step(editor, `${theme}: a finding, its page and its place`, async () => {
    await focus();
    await goTo("34:3");
    await key("Shift+End");
    // A tenth of the soda: the line where the dye is laid on is marked.
    await page.keyboard.type("6 g/L    soda ash");
    await key("Escape");
    await goTo("54:1");
    await command("Problems: Focus on Problems View");
    const rows = await until(async () => {
      const found = await texts(".markers-panel .monaco-list-row");
      return found.some((row) => /too-little-alkali/.test(row)) && found;
    }, "too-little-alkali among the problems");
    assert.ok(rows.length > 1);
    await picture(`${theme}-finding`);
    await command("View: Toggle Panel Visibility");
    await revert();
    await until(async () => (await page.$$(".editor-instance .squiggly-warning, .editor-instance .squiggly-error")).length === 0, "the marks gone with the change");
  });
  if (theme !== themes[0]) return;

  await step(editor, "bench sheet", async () => {
    await focus();
    await goTo("57:3");
    await command("Dye: Show Bench Sheet");
    const frame = await until(async () => {
      for (const one of page.frames()) if (await one.$("main li.task").catch(() => null)) return one;
      return undefined;
    }, "boxes to tick");
    const tasks = await frame.$$eval("main li.task", (found) => found.map((it) => it.innerText));
    assert.ok(tasks.some((task) => /^lagoon: 24 g/.test(task)), `no 24 g of lagoon to weigh: ${tasks.slice(0, 3)}`);
    assert.equal(await frame.evaluate(() => document.scripts.length), 0, "the sheet runs a script");
    await picture("bench-sheet");
  });

  await step(editor, "printing saves a page that loads nothing", async () => {
    await focus();
    await command("Dye: Print Bench Sheet");
    await visible(".quick-input-widget");
    await sleep(600);
    await key("Enter");
    const saved = path.join(workspace, "harbour-dusk.html");
    await until(() => existsSync(saved), "the saved page");
    await sleep(300);
    const html = readFileSync(saved, "utf8");
    assert.match(html, /default-src 'none'/);
    assert.match(html, /lagoon: <strong>24 g/);
    const paper = await page.context().browser().newPage();
    await paper.emulateMedia({ media: "print" });
    await paper.setContent(html.replace(/<script[\s\S]*?<\/script>/g, ""));
    await paper.screenshot({ path: path.join(OUT, "paper.png"), fullPage: true });
    await paper.close();
  });

  await step(editor, "a log entry with today's date", async () => {
    await focus();
    await goTo("57:3");
    await command("Dye: New Log Entry");
    const day = new Date().toISOString().slice(0, 4);
    await until(async () => new RegExp(`log ${day}-\\d\\d-\\d\\d`).test(await save()), "the entry in the file");
    await restore();
  });

  await step(editor, "scaling", async () => {
    await focus();
    await goTo("57:3");
    await command("Dye: Scale Recipe");
    await visible(".quick-input-widget");
    await page.keyboard.type("0");
    await until(async () => (await texts(".quick-input-widget")).some((it) => /above zero/.test(it)), "a word about zero");
    await key("Backspace");
    await page.keyboard.type("12");
    await key("Enter");
    await until(async () => /pieces +12\b/.test(await save()), "12 pieces in the file");
    // The soak doubles from 8 L to 16 L; what is per litre stays.
    assert.match(readFileSync(file, "utf8"), /16 L +water/);
    assert.match(readFileSync(file, "utf8"), /60 g\/L +soda ash/);
    await restore();
  });

  await step(editor, "restart, and the log", async () => {
    await focus();
    await command("Dye: Restart Server");
    await sleep(1500);
    await until(async () => (await lines()).some((line) => /on rim *24 g/.test(line)), "hints after the restart");
    await command("Dye: Show Server Log");
    await until(async () => (await texts(".output-view-container, .panel .view-lines")).some((it) => /from the PATH/.test(it)), "where the server was found, in the log");
    await command("View: Toggle Panel Visibility");
  });

  await step(editor, "a first recipe", async () => {
    await command("Dye: Write a First Recipe");
    await visible(".quick-input-widget");
    await sleep(600);
    await key("Enter");
    const written = path.join(workspace, "first-recipe.dye");
    await until(() => existsSync(written) && statSync(written).size > 500, "the first recipe");
    await until(async () => (await texts(".tab.active")).some((tab) => /first-recipe/.test(tab)), "its tab in front");
  });

  await step(editor, "a new block is set in, and an empty line ends it", async () => {
    await page.dblclick('.explorer-folders-view .monaco-list-row[aria-label^="new-block.dye"]');
    await until(async () => (await texts(".tab.active")).some((tab) => /new-block/.test(tab)), "the new file");
    await sleep(800);
    await page.click(".editor-group-container.active .view-lines");
    await key("Control+Home");
    await sleep(300);
    for (const text of ["goods tees", "pieces 6", "", "mix soda soak", "8 L water"]) {
      await page.keyboard.type(text);
      await key("Escape");
      await key("Enter");
    }
    await key("Control+s");
    const typed = await until(() => {
      const held = readFileSync(path.join(workspace, "new-block.dye"), "utf8");
      return /8 L water/.test(held) && held;
    }, "the typed lines");
    assert.equal(typed.replace(/[ \t]+$/gm, "").trim(), "goods tees\n  pieces 6\n\nmix soda soak\n  8 L water");
    await command("View: Revert and Close Editor");
  });

  await step(editor, "the walkthrough", async () => {
    await command("Welcome: Open Walkthrough");
    await visible(".quick-input-widget");
    await page.keyboard.type("Your first dye recipe");
    await sleep(400);
    await key("Enter");
    await until(async () => (await texts(".gettingStartedContainer")).some((it) => /Find the tenter command/.test(it)), "the steps of the walkthrough");
    await sleep(800);
    await picture("walkthrough");
  });
}

const settings = (theme) => ({ "workbench.colorTheme": names[theme], "window.autoDetectColorScheme": false });
for (const theme of themes) await session(settings(theme), (editor) => working(editor, theme));

await session(settings("light"), async (editor) => {
  await step(editor, "a wrong setting is said in words", async () => {
    await editor.open("harbour-dusk.dye");
    await editor.until(async () => (await editor.texts(".notifications-toasts")).some((it) => it.includes("/nowhere/tenter") && it.includes("tenter.server.path")), "the message");
    await editor.picture("wrong-setting");
    assert.ok((await editor.lines()).length > 10, "the text is there all the same");
  });
}, { machine: { "tenter.server.path": "/nowhere/tenter" } });

console.log(`${ran} steps held, ${failed.length} failed; pictures in ${path.relative(process.cwd(), OUT)}`);
if (failed.length > 0 || (ran < 10 && !only)) process.exit(1);
