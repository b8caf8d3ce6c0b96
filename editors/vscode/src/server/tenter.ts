// The language server as the rest of the extension sees it: found, started, asked, restarted.
import * as vscode from "vscode";
import { type ExecuteCommandSignature, LanguageClient, type LanguageClientOptions, State } from "vscode-languageclient/node";

import { showPlaces } from "../commands/places";
import { findServer, type Lookup } from "./lookup";
import { machine, run } from "./machine";
import { readVersion } from "./version";

/** The texts the server reads. Old versions in a comparison are shown, not checked. */
const SELECTOR = [
  { language: "dye", scheme: "file" },
  { language: "dye", scheme: "untitled" },
];

export class Tenter implements vscode.Disposable {
  readonly log = vscode.window.createOutputChannel("Tenter", { log: true });
  private readonly status = vscode.languages.createLanguageStatusItem("tenter.server", SELECTOR);
  private readonly changed = new vscode.EventEmitter<void>();
  /** Told when the server comes or goes. */
  readonly onChange = this.changed.event;
  private client: LanguageClient | undefined;
  private file: string | undefined;
  /** Starts and stops wait for each other. */
  private queue: Promise<void> = Promise.resolve();

  constructor(private readonly context: vscode.ExtensionContext) {
    this.status.name = "Tenter";
    this.status.command = { command: "tenter.editor.showLog", title: "Show Log" };
  }

  /** Starts the server, or starts it anew. */
  start(): Promise<void> {
    this.queue = this.queue.then(() => this.restartNow()).catch((error: unknown) => this.fail(`The server could not be started: ${words(error)}`));
    return this.queue;
  }

  /** Whether the server takes a command. */
  takes(command: string): boolean {
    const commands = this.client?.initializeResult?.capabilities.executeCommandProvider?.commands;
    return this.client?.state === State.Running && (commands?.includes(command) ?? false);
  }

  /** Asks the server to carry a command out. */
  async ask<Answer>(command: string, ...args: unknown[]): Promise<Answer> {
    const client = this.client;
    if (client?.state !== State.Running) {
      throw new Error("The server is not running. See “Dye: Show Server Log”.");
    }
    if (!this.takes(command)) {
      throw new Error(`This server does not know ${command}; bring tenter up to date.`);
    }
    return client.sendRequest<Answer>("workspace/executeCommand", { command, arguments: args });
  }

  /** The command itself, for what it does without the server. */
  command(): string {
    const found = this.file === undefined ? this.find() : { found: true as const, file: this.file };
    if (!found.found) {
      throw new Error(found.message);
    }
    return found.file;
  }

  /** A place of a document in the server's words. */
  place(document: vscode.TextDocument, position: vscode.Position): { uri: string; position: { line: number; character: number } } {
    const uri = this.client?.code2ProtocolConverter.asUri(document.uri) ?? document.uri.toString();
    return { uri, position: { line: position.line, character: position.character } };
  }

  dispose(): void {
    void this.stop();
    this.status.dispose();
    this.changed.dispose();
    this.log.dispose();
  }

  async stop(): Promise<void> {
    const client = this.client;
    this.client = undefined;
    if (client !== undefined) {
      await client.dispose(2_000).catch((error: unknown) => this.log.warn(`The server did not end in time: ${words(error)}`));
    }
  }

  private find(): Lookup {
    return findServer(machine, {
      setting: vscode.workspace.getConfiguration("tenter").get<string>("server.path", ""),
      workspaceFolder: vscode.workspace.workspaceFolders?.find((folder) => folder.uri.scheme === "file")?.uri.fsPath,
      extensionFolder: this.context.extensionPath,
    });
  }

  private async restartNow(): Promise<void> {
    await this.stop();
    this.file = undefined;
    this.show("Starting", vscode.LanguageStatusSeverity.Information, true);
    const found = this.find();
    if (!found.found) {
      this.fail(found.message);
      return;
    }
    const version = await this.version(found.file);
    if (version === undefined) {
      return;
    }
    this.file = found.file;
    this.log.info(`tenter ${version}, ${ORIGIN[found.origin]}: ${found.file}`);
    const client = this.make(found.file);
    this.client = client;
    client.onDidChangeState(({ newState }) => {
      if (this.client === client) {
        this.told(newState, version);
      }
    });
    await client.start();
  }

  private async version(file: string): Promise<string | undefined> {
    const printed = await run(file, ["--version"]).catch((error: unknown) => {
      this.fail(`${file} cannot be run: ${words(error)}`);
      return undefined;
    });
    if (printed === undefined) {
      return undefined;
    }
    const read = readVersion(file, printed);
    switch (read.kind) {
      case "fits":
        return read.version;
      case "old":
        this.log.warn(read.message);
        void vscode.window.showWarningMessage(read.message);
        return read.version;
      case "unknown":
        this.fail(read.message);
        return undefined;
    }
  }

  private make(file: string): LanguageClient {
    // No transport is named: naming one adds an argument the command does not have.
    const server = { command: file, args: ["lsp"] };
    const settings = vscode.workspace.getConfiguration("tenter");
    const options: LanguageClientOptions = {
      documentSelector: SELECTOR,
      outputChannel: this.log,
      initializationOptions: {
        hints: settings.get("hints"),
        lenses: settings.get("lenses"),
        mostFindings: settings.get("mostFindings"),
      },
      diagnosticPullOptions: { onChange: true, onSave: true },
      middleware: {
        executeCommand: async (command: string, args: unknown[], next: ExecuteCommandSignature) => {
          // The editor can show all places at once, where the server can only lead to the first.
          if (command === "tenter.showUse" && (await showPlaces(client.protocol2CodeConverter, args[0]))) {
            return undefined;
          }
          return next(command, args);
        },
      },
    };
    const client = new LanguageClient("tenter", "Tenter", { run: server, debug: server }, options);
    return client;
  }

  private told(state: State, version: string): void {
    if (state === State.Running) {
      this.show(`tenter ${version}`, vscode.LanguageStatusSeverity.Information, false);
    } else if (state === State.Stopped) {
      this.show("Server stopped", vscode.LanguageStatusSeverity.Warning, false);
    }
    void vscode.commands.executeCommand("setContext", "tenter.running", state === State.Running);
    this.changed.fire();
  }

  private show(text: string, severity: vscode.LanguageStatusSeverity, busy: boolean): void {
    this.status.text = text;
    this.status.severity = severity;
    this.status.busy = busy;
  }

  private fail(message: string): void {
    this.log.error(message);
    this.show("Server not running", vscode.LanguageStatusSeverity.Error, false);
    this.status.detail = message;
    void vscode.commands.executeCommand("setContext", "tenter.running", false);
    this.changed.fire();
    const [settings, log] = ["Open Settings", "Show Log"];
    void vscode.window.showErrorMessage(message, settings, log).then((answer) => {
      if (answer === settings) {
        void vscode.commands.executeCommand("workbench.action.openSettings", "tenter.server.path");
      } else if (answer === log) {
        this.log.show(true);
      }
    });
  }
}

const ORIGIN = { setting: "by the setting", bundled: "from this package", path: "from the PATH" } as const;

/** What went wrong, in words. */
export function words(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
