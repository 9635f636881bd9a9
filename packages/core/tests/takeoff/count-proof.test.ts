import { describe, expect, it } from 'vitest';
import { countProof } from '../../src/takeoff/count-proof.ts';
import { takeoffSection } from '../../src/takeoff/schema.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { above, ball, only } from './ball.ts';

const bolt = { thread: 'M8', length: 0.03 };
const whole = ball(4);
const dome = above(whole, 0.2).shell;
const { kinds } = whole;
const settings = takeoffSection.parse({ seamBolt: bolt, sides: [] });
const counts = kinds.map((kind) => kind.sides.map((side) => Math.round(side * 10)));
const proof = (shell: typeof dome, holes = counts) =>
  countProof(shell, kinds, takeOff(shell, kinds, [], settings, holes), settings, holes);

describe('the proof of count', () => {
  it('has each thing once by formula and once by its list, and they agree', () => {
    for (const shell of [dome, whole.shell, only(dome, (place) => place % 7 !== 3)]) {
      const rows = proof(shell);
      expect(rows.map(({ what }) => what)).toEqual(['panels', 'seams', 'hubs', 'bolts']);
      for (const { agrees, byFormula, byList, list } of rows) {
        expect(agrees).toBe(true);
        expect(byFormula).toBe(byList);
        expect(list.reduce((sum, { count }) => sum + count, 0)).toBe(byList);
      }
    }
  });

  it('puts the numbers of a dome into the formulas of a dome', () => {
    const [panels, seams, hubs, bolts] = proof(dome);
    const places = dome.kind.length;
    const open = dome.mate.filter((mate) => mate < 0).length;
    expect(panels?.formula).toMatch(/^[0-9 +]+, course by course$/);
    expect(seams?.formula).toBe(`(3 × ${places} − ${open} open sides) / 2`);
    expect(hubs?.formula).toBe(`1 + (${places} + ${open}) / 2`);
    expect(bolts?.formula).toContain('holes −');
  });

  it('does not agree where the two sides of a seam have other holes, and says what is not known', () => {
    const odd = counts.map((own, k) => (k === 0 ? own.map((n) => n + 1) : own));
    const [, , , bolts] = proof(dome, odd);
    expect(bolts?.agrees).toBeNull();
    expect(bolts?.why).toMatch(/the two sides of [0-9]+ seams are said to differ/);
    const [, , , none] = proof(dome, []);
    expect(none?.why).toMatch(/holes of [0-9]+ seams are not known/);
  });
});
