/** Keeps the built page on this machine, so that it opens with the network cut. */
/// <reference lib="webworker" />

/** Put in by the build: every file of the page, and a name made of what is in them. */
declare const FILES: readonly string[];
declare const VERSION: string;

const scope = self as unknown as ServiceWorkerGlobalScope;
const PREFIX = "hindtrack ";
const CACHE = PREFIX + VERSION;
/** A server that does not answer in this time is taken to be gone. Chosen. */
const PATIENCE_MS = 3000;

/** All files or none: a version is whole. */
async function takeAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" })));
}

async function dropOthers(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((n) => n.startsWith(PREFIX) && n !== CACHE).map((n) => caches.delete(n)));
}

/** A server may say that its answers vary with who asks; these files do not. */
const kept = async (request: Request | string): Promise<Response | undefined> =>
  (await caches.open(CACHE)).match(request, { ignoreSearch: true, ignoreVary: true });

/** The page itself comes from its server where that answers, so that nothing older is shown than there is. */
async function page(request: Request): Promise<Response> {
  const fresh = fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) }).catch(() => null);
  const answer = await fresh;
  return answer?.ok ? answer : ((await kept("./")) ?? answer ?? Response.error());
}

/** Every other file carries its content in its name: the kept one is the right one. */
const file = async (request: Request): Promise<Response> => (await kept(request)) ?? fetch(request);

scope.addEventListener("install", (event) => event.waitUntil(takeAll()));
scope.addEventListener("activate", (event) =>
  event.waitUntil(dropOthers().then(() => scope.clients.claim())),
);
scope.addEventListener("message", (event) => {
  if (event.data === "take over") void scope.skipWaiting();
});
scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== scope.location.origin) return;
  event.respondWith(request.mode === "navigate" ? page(request) : file(request));
});
