// What every answer says about itself: what the page may load and run, and how long a browser may
// keep it. Nothing here forces https: on a field's network there is none.

const policy: Readonly<Record<string, string>> = {
  'default-src': "'self'",
  // HiGHS and its like are WebAssembly; nothing of ours is made from text while it runs.
  'script-src': "'self' 'wasm-unsafe-eval'",
  'worker-src': "'self' blob:",
  // React Aria puts one small style element of its own into the page.
  'style-src': "'self' 'unsafe-inline'",
  'img-src': "'self' data: blob:",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
};

/** Headers of every answer, file or fault. */
export const everywhere: Readonly<Record<string, string>> = {
  'content-security-policy': Object.entries(policy)
    .map(([what, from]) => `${what} ${from}`)
    .join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
};

/** How long a browser may keep a file, by its path in the built app. Files under `assets/` carry a
 * hash of what they hold in their name, so they never change; all others are asked for again. */
export const keeping = (path: string): string =>
  /(^|[\\/])assets[\\/][^\\/]+-[\w-]{8,}\.\w+$/.test(path)
    ? 'public, max-age=31536000, immutable'
    : 'no-cache';
