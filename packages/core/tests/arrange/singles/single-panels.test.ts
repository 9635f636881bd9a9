import { describe, expect, it } from 'vitest';
import { placeSingles, type SinglePanel } from '../../../src/arrange/singles/single-panels.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { coursesOf } from '../../../src/shell/courses.ts';
import type { HubId } from '../../../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../../../src/shell/orient.ts';
import { cornerCount, placeCount } from '../../../src/shell/shell.ts';
import { icosahedral } from '../../shell/fixtures.ts';

const net = icosahedral(3, 0);
const shell = orientShell(net.shell, crownAtHub(net.shell, 0 as HubId));
const { course } = coursesOf(shell);
const family = Array.from(shell.kind);

function panelsFor(seed: number, spares: number, sd = 0.002): SinglePanel[] {
  const random = seededRandom(seed);
  const panel = (own: number, i: number, sides: number): SinglePanel => ({
    tag: `${own}-${i}`,
    family: own,
    off: Array.from({ length: sides }, () => sd * random.normal()),
    weak: random.uniform() < 0.1,
  });
  const needed = family.map((own, p) => panel(own, p, cornerCount(shell, p as never)));
  const more = [...Array(spares).keys()].map((i) => panel(i % net.kinds.length, 1000 + i, 3));
  return random.shuffle([...needed, ...more]);
}

describe('single panels', () => {
  it('each go to one place of their kind (seeds 1 to 5)', () => {
    for (let seed = 1; seed <= 5; seed++) {
      const panels = panelsFor(seed, 20);
      const { panelAt } = placeSingles({ shell, family, course, panels });
      expect(new Set(panelAt).size).toBe(placeCount(shell));
      panelAt.forEach((i, p) => {
        expect(panels[i]?.family).toBe(family[p]);
      });
    }
  });

  it('fit at least a third better than as they come (seeds 1 to 5)', () => {
    for (let seed = 1; seed <= 5; seed++) {
      const { before, after } = placeSingles({ shell, family, course, panels: panelsFor(seed, 0) });
      expect(after).toBeLessThan(before * 0.67);
    }
  });

  it('find the one way in which each meets its like', () => {
    // Each panel's sides are off by what belongs to one seam, so that the one right order fits exactly.
    const random = seededRandom(7);
    const bySeam = new Float64Array(shell.mate.length);
    shell.mate.forEach((mate, s) => {
      bySeam[s] = mate > s ? 0.003 * random.normal() : (bySeam[mate] as number);
    });
    const panels = family.map((own, p): SinglePanel => {
      const off = [0, 0, 0];
      for (let i = 0; i < 3; i++) {
        const s = (shell.placeStart[p] as number) + i;
        off[((shell.turn[p] as number) + i) % 3] = bySeam[s] as number;
      }
      return { tag: String(p), family: own, off, weak: false };
    });
    const { before, after } = placeSingles({ shell, family, course, panels });
    expect(before).toBe(0);
    expect(after).toBe(0);
    const shuffled = placeSingles({ shell, family, course, panels: random.shuffle(panels) });
    expect(shuffled.after).toBeLessThan(shuffled.before * 0.67);
  });

  it('go low where they are weak', () => {
    const panels = panelsFor(3, 0, 1e-6);
    const { panelAt } = placeSingles({ shell, family, course, panels });
    for (const own of new Set(family)) {
      const courses = (weak: boolean): number[] =>
        [...panelAt.keys()].flatMap((p) =>
          family[p] === own && panels[panelAt[p] as number]?.weak === weak
            ? [course[p] as number]
            : [],
        );
      expect(Math.max(0, ...courses(true))).toBeLessThanOrEqual(Math.min(...courses(false)) + 1);
    }
  });

  it('that are too few leave places without one', () => {
    const panels = panelsFor(4, 0).slice(0, 100);
    const { panelAt } = placeSingles({ shell, family, course, panels });
    expect(panelAt.filter((i) => i >= 0).length).toBe(100);
  });
});
