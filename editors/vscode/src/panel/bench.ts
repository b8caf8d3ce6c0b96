// The bench sheet: what to weigh, mix and do, with boxes to tick, to read here or to print. Its page runs no script.
import * as vscode from "vscode";

import type { Tenter } from "../server/tenter";
import { page } from "./html";
import { sheetHtml } from "./markdown";
import { print } from "./print";
import { WINDOW_STYLE } from "./style";
import { dyeEditor } from "./totals";

interface Answer {
  readonly title: string;
  readonly markdown: string;
}

const NO_RECIPE = "No recipe stands here. Put the cursor into a recipe to get its sheet.";
/** Room to write on, at the end of a printed sheet. */
const LINES = '<div class="blank"></div>'.repeat(4);

export class BenchPanel implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  private shown: Answer | undefined;

  constructor(private readonly context: vscode.ExtensionContext, private readonly tenter: Tenter) {}

  async show(): Promise<void> {
    const answer = await this.ask();
    if (answer === undefined) {
      void vscode.window.showInformationMessage(NO_RECIPE);
      return;
    }
    this.shown = answer;
    if (this.panel === undefined) {
      const options = { enableScripts: false, enableForms: false, localResourceRoots: [], enableFindWidget: true };
      this.panel = vscode.window.createWebviewPanel("tenter.bench", "", { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, options);
      this.panel.iconPath = {
        light: vscode.Uri.joinPath(this.context.extensionUri, "media", "dye-light.svg"),
        dark: vscode.Uri.joinPath(this.context.extensionUri, "media", "dye-dark.svg"),
      };
      this.panel.onDidDispose(() => {
        this.panel = undefined;
        this.shown = undefined;
      });
    } else {
      this.panel.reveal(undefined, true);
    }
    this.panel.title = `Bench Sheet: ${answer.title}`;
    this.panel.webview.html = page({ title: answer.title, style: WINDOW_STYLE, body: `<main>${sheetHtml(answer.markdown)}</main>` });
  }

  /** Prints the sheet of the recipe in front, or the one that is shown. */
  async print(): Promise<void> {
    const answer = dyeEditor() === undefined ? this.shown : await this.ask();
    if (answer === undefined) {
      void vscode.window.showInformationMessage(NO_RECIPE);
      return;
    }
    await print(answer.title, sheetHtml(answer.markdown) + LINES);
  }

  dispose(): void {
    this.panel?.dispose();
  }

  private async ask(): Promise<Answer | undefined> {
    const editor = dyeEditor();
    if (editor === undefined) {
      return this.shown;
    }
    const place = this.tenter.place(editor.document, editor.selection.active);
    return (await this.tenter.ask<Answer | null>("tenter.benchSheet", place)) ?? undefined;
  }
}
