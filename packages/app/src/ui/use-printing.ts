// Whether the page is being printed: what is for paper alone is drawn then, and only then.

import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** Whether the page is being printed. What hangs on it is there before the browser takes the page. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const put = (on: boolean) => () => flushSync(() => setPrinting(on));
    const [before, after] = [put(true), put(false)];
    const media = matchMedia('print');
    const change = (): void => (media.matches ? before() : after());
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    media.addEventListener('change', change);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
      media.removeEventListener('change', change);
    };
  }, []);
  return printing;
}
