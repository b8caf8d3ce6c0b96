// Where the editor comes in: starts the server and gives the commands.
import * as vscode from "vscode";

import { guarded, newLog, newRecipe, scale } from "./commands/recipe";
import { BenchPanel } from "./panel/bench";
import { TotalsPanel } from "./panel/totals";
import { Tenter } from "./server/tenter";

let tenter: Tenter | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const server = new Tenter(context);
  tenter = server;
  const totals = new TotalsPanel(context, server);
  const bench = new BenchPanel(context, server);
  const command = (name: string, work: () => Promise<void> | void): vscode.Disposable =>
    vscode.commands.registerCommand(`tenter.editor.${name}`, guarded(server, work));
  context.subscriptions.push(
    server,
    totals,
    bench,
    command("showTotals", () => totals.show()),
    command("printTotals", () => totals.print()),
    command("showBenchSheet", () => bench.show()),
    command("printBenchSheet", () => bench.print()),
    command("scale", () => scale(server)),
    command("newLog", () => newLog(server)),
    command("newRecipe", () => newRecipe(server)),
    command("restart", () => server.start()),
    command("showLog", () => server.log.show()),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration("tenter.server")) {
        void server.start();
      }
    }),
    // A path that the workspace sets counts once the workspace is trusted.
    vscode.workspace.onDidGrantWorkspaceTrust(() => void server.start()),
  );
  await server.start();
}

export async function deactivate(): Promise<void> {
  await tenter?.stop();
}
