// A small client that asks the language server over its standard input and output.
import { spawn } from "node:child_process";

/** The server's command line: $TENTER, else `tenter` on the PATH, and `lsp`. */
export const COMMAND = [...(process.env.TENTER ?? "tenter").split(" ").filter(Boolean), "lsp"];

/** Starts the server and shakes hands. */
export async function start() {
  const [command, ...args] = COMMAND;
  const child = spawn(command, args, { stdio: ["pipe", "pipe", "inherit"] });
  const failed = new Promise((_, reject) => {
    child.once("error", (error) => reject(new Error(`${command}: ${error.message}; set TENTER to the command`)));
    child.once("exit", (code) => reject(new Error(`${COMMAND.join(" ")} ended with ${code}`)));
  });
  failed.catch(() => {});
  const waiting = new Map();
  let held = Buffer.alloc(0);
  child.stdout.on("data", (data) => {
    held = Buffer.concat([held, data]);
    for (;;) {
      const head = held.indexOf("\r\n\r\n");
      if (head < 0) return;
      const length = Number(/content-length:\s*(\d+)/i.exec(held.subarray(0, head).toString())[1]);
      if (held.length < head + 4 + length) return;
      const message = JSON.parse(held.subarray(head + 4, head + 4 + length).toString());
      held = held.subarray(head + 4 + length);
      if (message.method && message.id !== undefined) send({ id: message.id, result: null });
      else if (message.id !== undefined) {
        waiting.get(message.id)?.(message);
        waiting.delete(message.id);
      }
    }
  });
  const send = (message) => {
    const body = Buffer.from(JSON.stringify({ jsonrpc: "2.0", ...message }));
    child.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    child.stdin.write(body);
  };
  let next = 1;
  const request = (method, params) => {
    const id = next++;
    const answer = new Promise((resolve, reject) => {
      waiting.set(id, ({ result, error }) => (error ? reject(new Error(`${method}: ${error.message}`)) : resolve(result)));
    });
    send({ id, method, params });
    return Promise.race([answer, failed]);
  };
  const notify = (method, params) => send({ method, params });
  const hello = await request("initialize", {
    processId: process.pid,
    rootUri: null,
    capabilities: { general: { positionEncodings: ["utf-16"] }, textDocument: { completion: { completionItem: { snippetSupport: true } } } },
  });
  notify("initialized", {});
  let count = 0;
  return {
    hello,
    request,
    open(text) {
      const uri = `untitled:case-${++count}.dye`;
      notify("textDocument/didOpen", { textDocument: { uri, languageId: "dye", version: 1, text } });
      return uri;
    },
    notifySettings: (tenter) => notify("workspace/didChangeConfiguration", { settings: { tenter } }),
    close: (uri) => notify("textDocument/didClose", { textDocument: { uri } }),
    /** Semantic tokens as { line, start, end, type }. */
    async tokens(uri) {
      const { data } = await request("textDocument/semanticTokens/full", { textDocument: { uri } });
      const types = hello.capabilities.semanticTokensProvider.legend.tokenTypes;
      const found = [];
      let line = 0;
      let at = 0;
      for (let index = 0; index < data.length; index += 5) {
        const [lines, columns, length, type] = data.slice(index, index + 4);
        at = lines ? columns : at + columns;
        line += lines;
        found.push({ line, start: at, end: at + length, type: types[type] });
      }
      return found;
    },
    async stop() {
      await request("shutdown", null);
      child.removeAllListeners("exit");
      const gone = new Promise((resolve) => child.once("exit", resolve));
      notify("exit");
      await gone;
    },
  };
}
