// What a pocket copy carries, in the text of its page.

/** What a pocket copy carries. */
export interface Carried {
  /** The project's id in the browser that made the copy. */
  readonly id: string;
  /** When it was made, milliseconds since 1970. */
  readonly at: number;
  /** The project's file. */
  readonly project: string;
  /** The record's file. */
  readonly record: string;
}

const PLACE = /(<script type="application\/json" id="carried">)[^<]*(<\/script>)/;

/** The page with this in it. Fails where the page is no pocket copy. */
export function withCarried(page: string, carried: Carried): string {
  if (!PLACE.test(page)) throw new Error('the page has no place for a project');
  // No text of the project can end the element that it stands in.
  const text = JSON.stringify(carried).replaceAll('<', '\\u003c');
  return page.replace(PLACE, (_, before: string, after: string) => `${before}${text}${after}`);
}

/** What a page's text carries; null where it carries nothing that can be read. */
export function carriedIn(text: string | null | undefined): Carried | null {
  try {
    const { id, at, project, record } = JSON.parse(text ?? '') as Record<string, unknown>;
    return typeof id === 'string' &&
      typeof at === 'number' &&
      typeof project === 'string' &&
      typeof record === 'string'
      ? { id, at, project, record }
      : null;
  } catch {
    return null;
  }
}

const own = (): HTMLElement | null => document.getElementById('carried');

/** Whether this page is a pocket copy. */
export const isPocketCopy = (): boolean => own() !== null;

/** What this page carries; null where it is no pocket copy. */
export const carriedHere = (): Carried | null => carriedIn(own()?.textContent);
