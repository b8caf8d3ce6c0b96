// The totals beside the text: those of the recipe the cursor stands in, and how everything stands at its line.
import * as vscode from "vscode";

import { type Tenter, words } from "../server/tenter";
import { page, toHtml } from "./html";
import type { Message } from "./message";
import type { Node } from "./nodes";
import { print } from "./print";
import { type Sheet, sheetNodes, stateNodes } from "./sheet";
import { WINDOW_STYLE } from "./style";

/** What the server answers. */
interface Answer {
  readonly title: string;
  readonly state: string;
  readonly sheet: Sheet;
}

const VIEW = "tenter.totals";
/** Typing does not wait for the totals, and they do not flicker along with it. */
const PAUSE = 150;
const NO_RECIPE = "No recipe stands here. Put the cursor into a recipe to see what it comes to.";

export class TotalsPanel implements vscode.Disposable, vscode.WebviewPanelSerializer {
  private panel: vscode.WebviewPanel | undefined;
  private editor: vscode.TextEditor | undefined;
  private timer: NodeJS.Timeout | undefined;
  private asked = 0;
  private last = "";
  private readonly held: vscode.Disposable[] = [];

  constructor(private readonly context: vscode.ExtensionContext, private readonly tenter: Tenter) {
    this.held.push(
      vscode.window.registerWebviewPanelSerializer(VIEW, this),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.follow(textEditor)),
      vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        // Another file of the collection may hold what this recipe takes.
        if (document.languageId === "dye") {
          this.soon();
        }
      }),
      tenter.onChange(() => this.soon()),
    );
  }

  /** Opens the window, or brings it forward. */
  show(): void {
    this.editor = dyeEditor() ?? this.editor;
    if (this.panel === undefined) {
      this.adopt(vscode.window.createWebviewPanel(VIEW, "Totals", { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }));
    } else {
      this.panel.reveal(undefined, true);
    }
    this.soon();
  }

  /** Prints what the window shows, or would show. */
  async print(): Promise<void> {
    const editor = dyeEditor() ?? this.editor;
    const answer = editor === undefined ? undefined : await this.ask(editor);
    if (answer === undefined) {
      void vscode.window.showInformationMessage(NO_RECIPE);
      return;
    }
    await print(answer.title, toHtml(sheetNodes(answer.sheet)));
  }

  deserializeWebviewPanel(panel: vscode.WebviewPanel): Promise<void> {
    this.panel?.dispose();
    this.editor = dyeEditor() ?? vscode.window.visibleTextEditors.find(({ document }) => document.languageId === "dye");
    this.adopt(panel);
    this.soon();
    return Promise.resolve();
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.panel?.dispose();
    this.held.forEach((it) => void it.dispose());
  }

  private adopt(panel: vscode.WebviewPanel): void {
    const scripts = vscode.Uri.joinPath(this.context.extensionUri, "dist", "webview");
    panel.webview.options = { enableScripts: true, enableForms: false, enableCommandUris: false, localResourceRoots: [scripts] };
    panel.iconPath = {
      light: vscode.Uri.joinPath(this.context.extensionUri, "media", "dye-light.svg"),
      dark: vscode.Uri.joinPath(this.context.extensionUri, "media", "dye-dark.svg"),
    };
    panel.webview.onDidReceiveMessage((message) => {
      if (message === "ready") {
        this.last = "";
        this.soon();
      }
    });
    panel.onDidDispose(() => {
      this.panel = undefined;
      this.last = "";
    });
    panel.onDidChangeViewState(() => this.soon());
    this.panel = panel;
    panel.webview.html = page({
      title: "Totals",
      style: WINDOW_STYLE,
      body: '<main id="sheet"></main>',
      script: panel.webview.asWebviewUri(vscode.Uri.joinPath(scripts, "totals.js")).toString(),
    });
  }

  private follow(editor: vscode.TextEditor | undefined): void {
    if (editor?.document.languageId === "dye") {
      this.editor = editor;
      this.soon();
    }
  }

  private soon(): void {
    if (this.panel?.visible === true) {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => void this.update(), PAUSE);
    }
  }

  private async update(): Promise<void> {
    const turn = (this.asked += 1);
    const message = await this.message();
    const panel = this.panel;
    // An answer that was overtaken is dropped, one that says nothing new is not drawn again.
    const told = JSON.stringify(message);
    if (turn !== this.asked || panel === undefined || told === this.last) {
      return;
    }
    this.last = told;
    panel.title = message.title === "" ? "Totals" : `Totals: ${message.title}`;
    await panel.webview.postMessage(message);
  }

  private async message(): Promise<Message> {
    const editor = this.editor;
    if (editor === undefined || editor.document.isClosed) {
      return quiet("Open a recipe to see what it comes to.");
    }
    try {
      const answer = await this.ask(editor);
      return answer === undefined ? quiet(NO_RECIPE) : { title: answer.title, nodes: sheetNodes(answer.sheet, stateNodes(answer.state)) };
    } catch (error) {
      return quiet(words(error));
    }
  }

  private async ask(editor: vscode.TextEditor): Promise<Answer | undefined> {
    const place = this.tenter.place(editor.document, editor.selection.active);
    return (await this.tenter.ask<Answer | null>("tenter.totals", place)) ?? undefined;
  }
}

/** The editor in front, if a recipe stands in it. */
export function dyeEditor(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.languageId === "dye" ? editor : undefined;
}

function quiet(text: string): Message {
  const nodes: Node[] = [{ tag: "p", className: "quiet", text }];
  return { title: "", nodes };
}
