// A server of plain files for the test, on a free port of this machine.
import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { extname, join, normalize } from "node:path";

const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm", ".svg": "image/svg+xml", ".webmanifest": "application/manifest+json" };

/** Serves `folder` under `/page/`; gives the address and a way to stop. */
export async function serve(folder) {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://x").pathname);
    const inside = path.startsWith("/page/") ? normalize(path.slice("/page/".length) || "index.html") : "";
    try {
      if (!inside || inside.startsWith("..")) throw new Error("outside");
      const body = await readFile(join(folder, inside));
      response.writeHead(200, { "content-type": TYPES[extname(inside)] ?? "application/octet-stream" }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  return { address: `http://127.0.0.1:${server.address().port}/page/`, stop: () => new Promise((closed) => server.close(closed)) };
}
