// What is printed in place of the sheet: there before the browser takes the page, gone once it has.

import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** What is on its way to the printer, null for nothing, and the way to send something there. */
export function usePrintedAlone<T>(): readonly [T | null, (what: T) => void] {
  const [printed, setPrinted] = useState<T | null>(null);
  useEffect(() => {
    // Some browsers take the page only after `print` has come back.
    const after = (): void => setPrinted(null);
    addEventListener('afterprint', after);
    return () => removeEventListener('afterprint', after);
  }, []);
  const send = (what: T): void => {
    flushSync(() => setPrinted(() => what));
    print();
  };
  return [printed, send];
}
