// Wind on a shell as it stands at a stage: every case to be reckoned, as net pressure coefficients
// of its panels. The worst of them counts; which that is, the one who asks must find.

import type { Shell } from '../shell/shell.ts';
import type { Enclosure } from './asce-7-16/internal.ts';
import { halfBuiltLaws } from './half-built/envelope.ts';
import { ENCLOSURE_LIMITS, enclosureOf, type Mouth, mouthOf } from './half-built/mouth.ts';
import { internalLaw } from './internal.ts';
import type { PressureLaw, ShellForm } from './law.ts';
import { type CodeChoice, isTruncated, type LawChoice, lawsFor } from './laws.ts';
import type { Override } from './numbers.ts';
import { externalCoefficients, facesOf, type PanelFaces } from './panels.ts';
import { mergeSources, type Provenance, weakest } from './provenance.ts';

/** What is asked of the wind on a shell. */
export interface WindQuestion {
  readonly form: ShellForm;
  readonly code: CodeChoice;
  readonly law: LawChoice;
  /** Where the wind comes from, radians from the datum, anticlockwise seen from above; each is a
   * case. {@link windDirections} gives evenly spaced ones. */
  readonly directions: readonly number[];
  readonly overrides?: readonly Override[];
  /** Whether a door may stand open, wherever it is: a closed shell is then reckoned as one with an
   * opening. */
  readonly doorOpen?: boolean;
}

/** All that does not change from stage to stage. */
export interface WindModel {
  readonly shell: Shell;
  readonly faces: PanelFaces;
  readonly question: WindQuestion;
  readonly laws: readonly PressureLaw[];
  /** Law by law, direction by direction: external coefficient of every place. */
  readonly external: readonly (readonly Float64Array[])[];
}

/** One case: the wind from somewhere by one law. */
export interface WindCase {
  readonly name: string;
  readonly windFrom: number;
  /** Net coefficient of every place, positive inward; to be multiplied by the velocity pressure.
   * Only those of places with a panel mean anything. */
  readonly coefficient: Float64Array;
  readonly sources: readonly Provenance[];
}

/** The cases of a stage and what they assume. */
export interface StageWind {
  readonly enclosure: Enclosure;
  readonly mouth: Mouth;
  readonly cases: readonly WindCase[];
  /** What is assumed, a sentence each, for the screen or sheet that shows a result. */
  readonly assumed: readonly string[];
}

/** Evenly spaced directions from the datum on, radians; 1 to 360 of them.
 * Source: none, plain arithmetic. */
export function windDirections(count: number): number[] {
  if (!(Number.isInteger(count) && count >= 1 && count <= 360))
    throw new RangeError(`${count} wind directions asked for, expected a whole number 1 to 360`);
  return Array.from({ length: count }, (_, i) => (i * 2 * Math.PI) / count);
}

/** What every stage of a shell shares. The shell is the finished one, crown up, with a place for
 * every panel and for every panel left out on purpose. RangeError for a form or direction that is
 * none.
 * Source: the laws'. */
export function windModel(shell: Shell, question: WindQuestion): WindModel {
  const odd = question.directions.find((direction) => !Number.isFinite(direction));
  if (odd !== undefined || question.directions.length === 0)
    throw new RangeError(
      `wind direction is ${odd ?? 'missing'}, expected a finite angle in radians`,
    );
  const faces = facesOf(shell);
  const laws = lawsFor(question.form, question.code, question.law, question.overrides);
  const external = laws.map((law) =>
    question.directions.map((windFrom) => externalCoefficients(faces, law, windFrom)),
  );
  return { shell, faces, question, laws, external };
}

/** The cases of a stage at which the places of `placed` have their panels: every law and direction
 * with the lowest and the highest internal pressure, and those of a half-built shell where it is one.
 * RangeError where no place has a panel.
 * Source: the clauses named in each case. */
export function stageWind(model: WindModel, placed: ArrayLike<number>): StageWind {
  if (placed.length === 0) throw new RangeError('no place has a panel, expected one or more');
  const mouth = mouthOf(model.shell, model.faces, placed);
  const byMouth = enclosureOf(mouth);
  const doorOpens = byMouth === 'closed' && model.question.doorOpen === true;
  const enclosure = doorOpens ? 'open door' : byMouth;
  const closed = domeCases(model, mouth, enclosure);
  const open = enclosure === 'half open' ? openCases(model, mouth, placed) : [];
  return {
    enclosure,
    mouth,
    cases: [...closed, ...open],
    assumed: assumedOf(model, enclosure, doorOpens),
  };
}

function domeCases(model: WindModel, mouth: Mouth, enclosure: Enclosure): WindCase[] {
  const { question } = model;
  const inside = internalLaw(question.code, enclosure, question.overrides);
  return model.laws.flatMap((law, l) => {
    const sources = mergeSources(law.sources, inside.sources, [ENCLOSURE_LIMITS]);
    return question.directions.flatMap((windFrom, d) => {
      const outside = model.external[l]?.[d] as Float64Array;
      return insideOver(inside.range, atOpenings(model, mouth, outside)).map((cpi) => ({
        name: `${law.name}, inside ${cpi > 0 ? '+' : '−'}${Math.abs(cpi).toFixed(2)}`,
        windFrom,
        coefficient: outside.map((cpe) => cpe - cpi),
        sources,
      }));
    });
  });
}

/** Height above the base within which the middle of an open door's panel lies, m: common practice. */
const DOOR_REACH = 2;

/** The external coefficients that may be let in: that of the mouth, or, for a door that may stand
 * open anywhere, the lowest and the highest of the low panels. */
function atOpenings(
  { question, faces }: WindModel,
  { missing }: Mouth,
  outside: Float64Array,
): readonly number[] {
  if (!question.doorOpen || missing.length > 0) return [meanOver(faces, missing, outside)];
  const low = outside.filter(
    (_, p) => (faces.centre[3 * p + 2] as number) <= question.form.baseZ + DOOR_REACH,
  );
  // A shell of few, tall panels has none so low: any may be the door.
  const may = low.length > 0 ? low : outside;
  return [Math.min(...may), Math.max(...may)];
}

/** The lowest and the highest internal coefficient over what may be let in. */
function insideOver(
  range: (atOpening: number) => readonly [number, number],
  openings: readonly number[],
): readonly [number, number] {
  const all = openings.flatMap(range);
  return [Math.min(...all), Math.max(...all)];
}

/** Mean over places by area; 0 where there are none. */
function meanOver(faces: PanelFaces, places: Int32Array, value: Float64Array): number {
  let [sum, whole] = [0, 0];
  for (const p of places) {
    const size = faces.size[p] as number;
    sum += size * (value[p] as number);
    whole += size;
  }
  return whole > 0 ? sum / whole : 0;
}

function openCases(model: WindModel, mouth: Mouth, placed: ArrayLike<number>): WindCase[] {
  const { shell, faces, question } = model;
  const size = { height: standingHeight(model, placed), width: 2 * question.form.radius };
  const laws = halfBuiltLaws({ shell, faces, mouth, ...size }, question.overrides);
  return laws.flatMap(({ name, coefficients, sources: own }) => {
    const sources = mergeSources(own, [ENCLOSURE_LIMITS]);
    return question.directions.map((windFrom) => ({
      name,
      windFrom,
      coefficient: coefficients(windFrom),
      sources,
    }));
  });
}

/** Height of the topmost hub that has a panel above the base, m: what a half-built shell's wind is
 * taken at, with the height of the base above the ground added. At least 1 cm.
 * Source: geometry. */
export function standingHeight(model: WindModel, placed: ArrayLike<number>): number {
  const { shell, question } = model;
  let top = -Infinity;
  for (let i = 0; i < placed.length; i++) {
    const p = placed[i] as number;
    for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++)
      top = Math.max(top, shell.hubs[3 * (shell.sideHub[s] as number) + 2] as number);
  }
  return Math.max(0.01, top - question.form.baseZ);
}

function assumedOf(
  { question, laws }: WindModel,
  enclosure: Enclosure,
  doorOpens: boolean,
): string[] {
  const told: string[] = [];
  if (isTruncated(question.form))
    told.push(
      'No code covers more than a half sphere: the worst of all laws is taken, carried down below the equator.',
    );
  if (doorOpens)
    told.push(
      'A door may stand open: the pressure at any panel within 2 m of the base is let in (common practice).',
    );
  else if (enclosure === 'open door')
    told.push('The shell has an opening: the pressure at it is let in.');
  if (enclosure === 'half open')
    told.push(
      'No code covers a half-built shell: the worst of a dome with its mouth open, an open cup, a curved wall, a near and a far wall, and an open tank is taken.',
    );
  const doubt = weakest(laws.flatMap((law) => law.sources));
  if (doubt === 'from memory' || doubt === 'common practice')
    told.push('Some pressure coefficients are from memory or common practice; each is marked.');
  told.push(
    'Pressures are steady: no swaying, no flutter of loose panels, no gust from a neighbour.',
  );
  return told;
}
