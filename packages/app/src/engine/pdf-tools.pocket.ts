// A pocket copy writes no PDF: writer and typefaces would make it half as large again. The browser's own
// printing makes one there.

import type { PdfTools } from './pdf-tools.ts';

/** Never there. */
export const pdfTools = (): Promise<PdfTools> =>
  Promise.reject(new Error('a pocket copy writes no PDF: print to one instead'));
