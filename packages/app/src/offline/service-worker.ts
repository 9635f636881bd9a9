// Keeps the app on this device: every file of this version is fetched once, and from then on the
// page opens without a network. A newer version is fetched in the background and taken when every
// page of the old one was closed, so that no page ever runs with files of two versions.

interface WorkerScope extends EventTarget {
  readonly location: Location;
  readonly registration: { readonly scope: string };
}

interface Waiting extends Event {
  waitUntil(done: Promise<unknown>): void;
}

interface Asked extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** Filled in when the app is built: every file of it, and a name for what is in them all. */
declare const SHELLRAISE_FILES: readonly string[];
declare const SHELLRAISE_VERSION: string;

const scope = self as unknown as WorkerScope;
const PREFIX = 'shellraise-app-';
const cacheName = `${PREFIX}${SHELLRAISE_VERSION}`;

scope.addEventListener('install', (event) => (event as Waiting).waitUntil(keepAll()));
scope.addEventListener('activate', (event) => (event as Waiting).waitUntil(dropOld()));
scope.addEventListener('fetch', (event) => {
  const { request } = event as Asked;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== scope.location.origin) return;
  (event as Asked).respondWith(answer(request));
});

/** All files or none: a version that is kept is whole. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(cacheName);
  await cache.addAll(SHELLRAISE_FILES.map((file) => new Request(file, { cache: 'reload' })));
}

async function dropOld(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== cacheName);
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** What is kept, whatever the query; anything else from the network. */
async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const asked = request.mode === 'navigate' ? './' : request;
  const kept = await cache.match(asked, { ignoreSearch: true });
  return kept ?? fetch(request);
}
