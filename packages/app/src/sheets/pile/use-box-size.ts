// The size of a box as it is on the screen, so that a drawing is set at its true size and its words
// are neither stretched nor shrunk.

import { useLayoutEffect, useRef, useState } from 'react';
import type { Size } from '../../drawing/panel-outline.ts';

/** A box and its size; `first` until it is measured. */
export function useBoxSize(first: Size) {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState(first);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const look = (): void => {
      const next = { width: element.clientWidth, height: element.clientHeight };
      setSize((old) => (old.width === next.width && old.height === next.height ? old : next));
    };
    const watch = new ResizeObserver(look);
    watch.observe(element);
    look();
    return () => watch.disconnect();
  }, []);
  return [box, size] as const;
}
