// A value once it has stayed the same for a moment: a slider drawn along asks for one stage.

import { useEffect, useState } from 'react';

/** The value, a tenth of a second late. */
export function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), 90);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
