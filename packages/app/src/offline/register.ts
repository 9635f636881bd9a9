// Asks the browser to keep the app for offline use, where it can: on this computer and over https.

/** What the person may be told. */
export interface OfflineNews {
  /** Called once every file is kept, the first time on this device. */
  readonly ready: () => void;
  /** Called when a newer version is kept and waits until every page of this one is closed. */
  readonly newer: () => void;
}

/** Registers the service worker; does nothing where there is none (plain http from a phone). */
export async function keepOffline({ ready, newer }: OfflineNews): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const hadOne = serviceWorker.controller !== null;
  const registration = await serviceWorker
    .register('./sw.js', { updateViaCache: 'none' })
    .catch(() => null);
  if (!registration) return;
  if (registration.waiting) newer();
  const follow = (): void => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && hadOne) newer();
    });
  };
  follow();
  registration.addEventListener('updatefound', follow);
  await serviceWorker.ready;
  if (!hadOne) ready();
}
