// The best fits as one JSON document.

import {
  type FitAnswer,
  infillOf,
  type Kind,
  type Shell,
  sawnBase,
  standingShell,
  type Wishes,
  withoutRagged,
} from '@shellraise/core';
import type { Stood } from '../job.ts';
import { standCaution } from './places.ts';
import { frameCaution } from './places-door.ts';

/** The document. */
export function fitDocument(
  { shape, kinds, loaded }: Stood,
  wishes: Wishes,
  answer: FitAnswer,
): object {
  const idOf = (place: number): string => (kinds[shape.shell.kind[place] as number] as Kind).id;
  const { status, reason, proved, tried, outlines, conflict, nearest, fits } = answer;
  return {
    wishes,
    status,
    reason,
    proved,
    tried,
    outlines,
    conflict,
    nearest,
    fits: fits.map(({ way, arrangement: { cut }, sources, bought, mended, gaps, ...more }) => ({
      crown: { at: way.at, kinds: way.kinds, orbit: way.orbit, lean: way.lean ?? null },
      height: cut.height,
      floorDiameter: 2 * cut.floor.mean,
      flat: cut.flat,
      panels: cut.places.length - gaps - (more.door?.places.length ?? 0),
      bought,
      mended,
      gaps,
      sparesLacking: more.sparesLacking,
      joined: more.joined.map(({ group, places }) => ({
        group,
        around: loaded.question.groups[group]?.around,
        places: places.map((p) => cut.places.indexOf(p)),
      })),
      parted: more.parted,
      door: more.door && {
        places: more.door.places,
        azimuth: more.door.passage.azimuth,
        seamsCut: more.door.seamsCut,
        hubsFreed: more.door.hubsFreed,
        reveal: more.door.reveal.map(({ length }) => length),
      },
      places: Array.from(cut.places, (place, i) => ({ kind: idOf(place), source: sources[i] })),
      ...baseDocument(standingShell(shape.shell, way, cut).shell, kinds),
    })),
    cautions: [standCaution, ...(fits.some(({ door }) => door) ? [frameCaution] : [])],
  };
}

/** What brings a ragged base down to the ground; sizes in metres. */
function baseDocument(shell: Shell, kinds: readonly Kind[]): object {
  const sawn = sawnBase(shell);
  return {
    infill: infillOf(shell),
    sawn: sawn && {
      ...sawn,
      panels: sawn.panels.map((one) => ({ ...one, kind: (kinds[one.kind] as Kind).id })),
    },
    without: withoutRagged(shell),
  };
}
