/** Keeps the page's own files, so that it works without a network. It fetches nothing but them. */

declare const VERSION: string;
declare const FILES: string[];

const scope = self as unknown as ServiceWorkerGlobalScope;
const SHELF = `tenter-${VERSION}`;

scope.addEventListener("install", (event) => {
  const filled = async () => {
    const shelf = await caches.open(SHELF);
    await shelf.addAll(FILES.map((file) => new Request(file, { cache: "reload" })));
    await scope.skipWaiting();
  };
  event.waitUntil(filled());
});

scope.addEventListener("activate", (event) => {
  const tidied = async () => {
    for (const name of await caches.keys()) if (name.startsWith("tenter-") && name !== SHELF) await caches.delete(name);
    await scope.clients.claim();
  };
  event.waitUntil(tidied());
});

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== scope.location.origin) return;
  const answered = async () => {
    const shelf = await caches.open(SHELF);
    const wanted = request.mode === "navigate" ? "./" : request;
    return (await shelf.match(wanted, { ignoreSearch: true })) ?? fetch(request);
  };
  event.respondWith(answered());
});
export {};
