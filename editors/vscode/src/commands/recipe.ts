// Commands that change the recipe or write one.
import * as vscode from "vscode";

import { dyeEditor } from "../panel/totals";
import { run } from "../server/machine";
import { type Tenter, words } from "../server/tenter";

/** Rewrites the recipe at the cursor for another number of pieces. */
export async function scale(tenter: Tenter): Promise<void> {
  const editor = wanted();
  if (editor === undefined) {
    return;
  }
  const answer = await vscode.window.showInputBox({
    title: "Scale the recipe",
    prompt: "How many pieces in all? What is per litre, per piece or on weight of goods follows by itself.",
    placeHolder: "12",
    validateInput: (text) => (pieces(text) === undefined ? "A number of pieces above zero" : undefined),
  });
  const count = answer === undefined ? undefined : pieces(answer);
  if (count !== undefined) {
    const { uri, position } = tenter.place(editor.document, editor.selection.active);
    await tenter.ask("tenter.scale", { uri, position, pieces: count });
  }
}

/** Adds a log entry with today's date to the recipe at the cursor. */
export async function newLog(tenter: Tenter): Promise<void> {
  const editor = wanted();
  if (editor !== undefined) {
    await tenter.ask("tenter.newLog", tenter.place(editor.document, editor.selection.active));
  }
}

/** Writes the commented first recipe to a new file and opens it. */
export async function newRecipe(tenter: Tenter): Promise<void> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const target = await vscode.window.showSaveDialog({
    title: "Where the first recipe goes",
    saveLabel: "Write",
    filters: { "Dye recipes": ["dye"] },
    ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, "first-recipe.dye") }),
  });
  if (target === undefined) {
    return;
  }
  if (target.scheme !== "file") {
    throw new Error("The command can write to folders of this machine only.");
  }
  await run(tenter.command(), ["new", target.fsPath]);
  await vscode.window.showTextDocument(target);
}

/** Runs a command; what goes wrong is said, and stands in the log. */
export function guarded(tenter: Tenter, work: () => Promise<void> | void): () => Promise<void> {
  return async () => {
    try {
      await work();
    } catch (error) {
      tenter.log.error(words(error));
      void vscode.window.showErrorMessage(words(error));
    }
  };
}

function wanted(): vscode.TextEditor | undefined {
  const editor = dyeEditor();
  if (editor === undefined) {
    void vscode.window.showInformationMessage("Open a recipe and put the cursor into it first.");
  }
  return editor;
}

/** A whole or a decimal number above zero. */
function pieces(text: string): number | undefined {
  const count = /^\d{1,6}(\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
  return count > 0 ? count : undefined;
}
