import { expect, test } from 'vitest';
import { netShell } from '../../src/nets/kinds.ts';
import { naturalCuts } from '../../src/shell/cuts.ts';
import { occursIn } from '../../src/shell/embed.ts';
import type { HubId } from '../../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../../src/shell/orient.ts';
import { partOf } from '../../src/shell/part.ts';
import { kindSide, placeAt, type Shell } from '../../src/shell/shell.ts';

const labels = (shell: Shell): number[] =>
  Array.from(
    shell.sideHub,
    (_, s) => 10 * (shell.kind[placeAt(shell, s as never)] as number) + kindSide(shell, s as never),
  );
const net = (b: number, c: number): Shell =>
  netShell({ solid: 'icosahedron', b, c, division: 'equal chords' }, 1).shell;

test('every natural cut of a net occurs in the net', () => {
  const whole = orientShell(net(3, 1), crownAtHub(net(3, 1), 0 as HubId));
  for (const cut of naturalCuts(whole)) {
    const { shell } = partOf(whole, cut.places);
    expect(occursIn(shell, labels(shell), whole, labels(whole))).toBe(true);
  }
});

test('a chiral net’s part does not occur in the mirror image, nor the whole in its part', () => {
  const [one, mirror] = [net(2, 1), net(1, 2)];
  const plain = (shell: Shell): number[] => Array.from(shell.sideHub, () => 0);
  const { shell } = partOf(
    one,
    Array.from({ length: 100 }, (_, p) => p),
  );
  expect(occursIn(shell, plain(shell), mirror, plain(mirror))).toBe(false);
  expect(occursIn(one, plain(one), shell, plain(shell))).toBe(false);
});

test('nothing occurs everywhere', () => {
  const { shell } = partOf(net(1, 0), []);
  expect(occursIn(shell, [], net(1, 0), labels(net(1, 0)))).toBe(true);
});
