import { describe, expect, it } from 'vitest';
import { carriedIn, withCarried } from '../../src/files/carried.ts';

const page = '<head><script type="application/json" id="carried"></script></head><body></body>';
const carried = { id: 'p1', at: 5, project: '{"title":"</script><b>$1 \u2028"}', record: '' };
const textIn = (html: string) => /id="carried">(.*?)<\/script>/s.exec(html)?.[1];

describe('what a pocket copy carries', () => {
  it('comes out as it went in, and ends no element of the page', () => {
    const made = withCarried(page, carried);
    expect(made.match(/<\/script>/g)).toHaveLength(1);
    expect(carriedIn(textIn(made))).toEqual(carried);
  });

  it('takes the place of what was carried before', () => {
    const next = withCarried(withCarried(page, carried), { ...carried, id: 'p2' });
    expect(carriedIn(textIn(next))?.id).toBe('p2');
    expect(next.match(/carried/g)).toHaveLength(1);
  });

  it('is refused by a page without a place for it', () => {
    expect(() => withCarried('<body></body>', carried)).toThrow('no place for a project');
  });

  it.each(['', 'null', '{"id":"p"}', '{"id":"p","at":"1","project":"","record":""}'])(
    'is nothing where the page holds %j',
    (text) => expect(carriedIn(text)).toBeNull(),
  );
});
