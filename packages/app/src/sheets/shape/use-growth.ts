// Runs the growth of a net on the screen's clock.

import { useCallback, useEffect, useState } from 'react';
import { grownAfter } from './growth.ts';

/** A growth under way. */
export interface Growth {
  /** Panels to be shown; Infinity where none are held back. */
  readonly shown: number;
  readonly growing: boolean;
  readonly grow: () => void;
  readonly skip: () => void;
}

/** The growth of `panels` panels; begins when asked, and ends with them. Whoever wants little motion
 * sees the whole at once. */
export function useGrowth(panels: number): Growth {
  const [since, setSince] = useState<number | null>(null);
  const [shown, setShown] = useState(Infinity);

  useEffect(() => {
    if (since === null) return;
    let frame = 0;
    const step = (now: number): void => {
      const grown = grownAfter(now - since, panels);
      setShown(grown);
      if (grown >= panels) setSince(null);
      else frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [since, panels]);

  const grow = useCallback(() => {
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    setShown(1);
    setSince(performance.now());
  }, []);
  const skip = useCallback(() => {
    setSince(null);
    setShown(Infinity);
  }, []);
  const growing = since !== null;
  return { shown: growing ? shown : Infinity, growing, grow, skip };
}
