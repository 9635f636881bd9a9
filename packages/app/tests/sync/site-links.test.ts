import { describe, expect, it } from 'vitest';
import {
  linkOf,
  mayChange,
  readLinks,
  type SiteLink,
  siteLinks,
} from '../../src/sync/site-links.ts';

const link = (site: string, role: SiteLink['role'], project: string | null): SiteLink => ({
  site,
  role,
  project,
});

describe('the sites that a device has joined', () => {
  it('are kept over a reload, one link for each site', () => {
    const texts = new Map<string, string>();
    const storage = () => ({
      getItem: (key: string) => texts.get(key) ?? null,
      setItem: (key: string, text: string) => void texts.set(key, text),
    });
    const links = siteLinks(storage);
    links.put(link('a', 'crew', null));
    links.put(link('b', 'lead', 'p2'));
    links.put(link('a', 'crew', 'p1'));
    expect(siteLinks(storage).all()).toEqual([link('b', 'lead', 'p2'), link('a', 'crew', 'p1')]);
  });

  it('last as long as the page where the browser keeps nothing', () => {
    const links = siteLinks(() => {
      throw new Error('no storage here');
    });
    links.put(link('a', 'crew', 'p1'));
    expect(linkOf(links.all(), 'p1')?.site).toBe('a');
  });

  it('leave out what cannot be read', () => {
    expect(readLinks('no json')).toEqual([]);
    expect(readLinks('{}')).toEqual([]);
    expect(readLinks(null)).toEqual([]);
    const text = JSON.stringify([
      link('a', 'crew', 'p'),
      { site: 1 },
      null,
      { site: 'b', role: 'king' },
    ]);
    expect(readLinks(text)).toEqual([link('a', 'crew', 'p')]);
  });

  it('say who may change a project: its owner, and a site’s leads', () => {
    const all = [link('a', 'crew', 'p1'), link('b', 'lead', 'p2'), link('c', 'looker', 'p3')];
    expect(['p1', 'p2', 'p3', 'own'].map((id) => mayChange(all, id))).toEqual([
      false,
      true,
      false,
      true,
    ]);
  });
});
