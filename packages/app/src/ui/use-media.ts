// Whether the screen is like that, as long as it is.

import { useCallback, useSyncExternalStore } from 'react';

/** Whether a media query holds now. */
export function useMedia(query: string): boolean {
  const watch = useCallback(
    (changed: () => void) => {
      const media = matchMedia(query);
      media.addEventListener('change', changed);
      return () => media.removeEventListener('change', changed);
    },
    [query],
  );
  return useSyncExternalStore(watch, () => matchMedia(query).matches);
}
