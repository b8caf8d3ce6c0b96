// Printing. A window of the editor cannot print, so the page goes to the browser, which opens its print dialogue at once;
// where the editor itself runs in a browser or over a connection, it is saved instead.
import { mkdtemp, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import * as path from "node:path";
import * as vscode from "vscode";

import { page } from "./html";
import { PAPER_STYLE } from "./style";

/** Prints a page; `body` is HTML that was escaped. */
export async function print(title: string, body: string): Promise<void> {
  const html = page({ title, style: PAPER_STYLE, body, inline: "addEventListener('load', () => print());" });
  const name = `${fileName(title)}.html`;
  const here = vscode.env.uiKind === vscode.UIKind.Desktop && vscode.env.remoteName === undefined;
  if (here) {
    const folder = await mkdtemp(path.join(tmpdir(), "tenter-print-"));
    const file = vscode.Uri.file(path.join(folder, name));
    await writeFile(file.fsPath, html, { mode: 0o600 });
    if (await vscode.env.openExternal(file)) {
      return;
    }
  }
  const start = vscode.workspace.workspaceFolders?.[0]?.uri;
  const target = await vscode.window.showSaveDialog({
    ...(start === undefined ? {} : { defaultUri: vscode.Uri.joinPath(start, name) }),
    filters: { "Page to print": ["html"] },
    title: "Save the page, then open it in a browser to print it",
  });
  if (target !== undefined) {
    await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(html));
    void vscode.window.showInformationMessage(`Saved to ${target.fsPath}. Open it in a browser to print it.`);
  }
}

function fileName(title: string): string {
  const plain = title.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 60) || "recipe";
}
