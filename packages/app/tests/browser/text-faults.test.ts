import { describe, expect, it } from 'vitest';
import { inBrowser, type Screen } from './support.ts';
import { faultLines, textFaults } from './text-faults.ts';

const { profile } = inBrowser();

async function faultsOf(html: string, screen: Screen = 'laptop'): Promise<string[]> {
  const page = await (await profile(screen)).newPage();
  await page.setContent(
    `<!doctype html><meta name=viewport content=width=device-width><body style="margin:0;font:16px/1.4 sans-serif">${html}`,
  );
  return faultLines(await textFaults(page)).map((line) => line.replace(/ \(.*?\)/, ''));
}

describe('the check for text that cannot be read', () => {
  it('passes text that stands well', async () => {
    expect(
      await faultsOf(
        '<p>One line</p><p>and the next</p><svg width="200" height="60"><text x="10" y="20">3-07</text><text x="90" y="20">3-08</text></svg>',
      ),
    ).toEqual([]);
  });

  it('finds text that is cut off', async () => {
    expect(
      await faultsOf(
        '<div style="width:60px;overflow:hidden;white-space:nowrap">far too long a word</div>',
      ),
    ).toEqual(['cut off: "far too long a word"']);
  });

  it('finds text that runs off the page', async () => {
    expect(
      await faultsOf(
        '<div style="position:absolute;left:95vw;white-space:nowrap">beyond the edge</div>',
      ),
    ).toEqual(['off the page: "beyond the edge"']);
  });

  it('finds text that runs off the top, where nobody can scroll to', async () => {
    expect(await faultsOf('<div style="position:absolute;top:-30px">over the top</div>')).toEqual([
      'off the page: "over the top"',
    ]);
  });

  it('finds a field that holds more than it shows', async () => {
    expect(
      await faultsOf(
        '<input style="width:50px" value="43 7/16 inches"><input style="width:200px" value="1103 mm">',
      ),
    ).toEqual(['cut off: "43 7/16 inches"']);
  });

  it('finds texts that overlap, in a drawing too', async () => {
    expect(
      await faultsOf(
        '<svg width="200" height="60"><text x="10" y="20">3-07 long</text><text x="30" y="22">3-08</text></svg>',
      ),
    ).toEqual(['overlaps: "3-07 long" and "3-08"']);
  });

  it('lets a drawing mark a text by drawing it again where it is', async () => {
    const twice = (x: number) =>
      faultsOf(`<svg><text x="10" y="20">3-07</text><text x="${x}" y="20">3-07</text></svg>`);
    expect(await twice(10)).toEqual([]);
    expect(await twice(20)).toEqual(['overlaps: "3-07" and "3-07"']);
  });

  it('lets a pane scroll its text out of sight', async () => {
    expect(
      await faultsOf(`<div style="height:40px;overflow:auto">${'<p>a line</p>'.repeat(10)}</div>`),
    ).toEqual([]);
  });

  it('finds a pane that hides text at its side on a wide screen', async () => {
    const wide =
      '<div style="width:90px;overflow:auto;white-space:nowrap">far too long a line</div>';
    expect(await faultsOf(wide)).toEqual(['cut off: "far too long a line"']);
    expect(await faultsOf(wide, 'phone')).toEqual([]);
  });

  it('lets text for screen readers stand where it is', async () => {
    expect(
      await faultsOf(
        '<span class="read-out" style="position:absolute;width:1px;height:1px;overflow:hidden">read this out</span><p>text</p>',
      ),
    ).toEqual([]);
  });
});
