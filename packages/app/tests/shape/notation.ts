// Short ways to say a shell, a shape and a pile.

import {
  type Identification,
  type Kind,
  namedNet,
  type Pile,
  readProject,
  type Shape,
  type Shell,
  shellOfNet,
} from '@shellraise/core';

/** The icosahedron divided `b` to a side, radius 3 m: kinds by index. */
export function ball(b: number): { shell: Shell; kinds: Kind[] } {
  const made = shellOfNet(namedNet({ solid: 'icosahedron', b, c: 0, division: 'equal chords' }), 3);
  return { shell: made.shell, kinds: made.kinds.map(({ sides }, k) => kind(String(k + 1), sides)) };
}

/** A kind, counted, ten good. */
export const kind = (id: string, sides: readonly number[], more: Partial<Kind> = {}): Kind => ({
  id,
  marks: [],
  sides,
  sideSds: sides.map(() => 0.001),
  hand: null,
  good: 10,
  repair: 0,
  scrap: 0,
  counted: true,
  mass: null,
  ...more,
});

/** A shape of a shell that fits its kinds exactly. */
export const shapeOf = (
  shell: Shell,
  kinds: readonly Kind[],
  more: Partial<Shape> = {},
): Shape => ({
  shell,
  radius: shell.radius,
  radiusSd: 0.001,
  closed: true,
  fittedSides: kinds.map(({ sides }) => sides),
  residual: 0,
  probability: 1,
  subdivision: null,
  suspects: [],
  interchangeable: [],
  freeTurns: [],
  misfitGroups: [],
  strangers: [],
  apart: '',
  interchangeCosts: [],
  explained: [],
  added: [],
  mends: [],
  cut: null,
  course: null,
  allowance: null,
  hands: 'known',
  ...more,
});

/** An answer with these shapes, complete. */
export const answerOf = (
  shapes: readonly Shape[],
  more: Partial<Identification> = {},
): Identification => ({
  shapes,
  reasons: [],
  settle: [],
  complete: true,
  furthest: null,
  stuck: [],
  next: [],
  enough: false,
  trial: null,
  conflicts: [],
  besides: null,
  ...more,
});

/** A pile, read as from a file. */
export function pileOf(pile: object): Pile {
  const read = readProject(JSON.stringify({ shellraise: 1, title: '', pile }));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value.pile;
}
