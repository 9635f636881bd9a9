// `shellraise places --make 3L`: a panel of a kind to be made, or cut down from one that is left over: true
// shape, bevels, hole line; with --out the drawing.

import {
  cornersOf,
  type Drawing,
  type Kind,
  makeCaution,
  makeSheet,
  type PanelToMake,
  panelToMake,
  sidePatterns,
  toSvg,
  writeAngle,
} from '@shellraise/core';
import { badInput, Ending } from '../ending.ts';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { PlacesOptions } from '../options.ts';
import { fittedWords } from '../tape.ts';
import { bullets, caution, heading, print, printJson, right, table, wrap } from '../terminal.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';
import { cutText, type NamedCut, namedCuts, sparesOf } from './places-broken.ts';

/** Runs the command. */
export async function placesMake(file: string, id: string, options: PlacesOptions): Promise<void> {
  const chosen = await choose(file, options);
  const kinds = fittedKinds(chosen);
  const k = kinds.findIndex((kind) => kind.id === id);
  if (k < 0)
    throw badInput(
      `--make: found ${id}, expected a kind of this pile: ${kinds.map((kind) => kind.id).join(', ')}`,
    );
  const panel = madeOf(chosen, kinds, k);
  const cuts = namedCuts(kinds, k, sparesOf(chosen));
  const written =
    options.out === undefined
      ? ''
      : writeSheets(chosen, kinds, id, panel, cuts, options, options.out);
  if (options.json) printJson({ kind: id, panel, cutDown: cuts, cautions: [makeCaution] });
  else print(...makeReport(chosen, id, panel, cuts, lengthsIn(options.lengths)), written);
}

function madeOf({ shape, loaded }: Chosen, kinds: readonly Kind[], k: number): PanelToMake {
  const kind = kinds[k] as Kind;
  const panel = panelToMake(kind, shape.radius, {
    allowance: loaded.pile.measuredAlong === 'hubs' ? 0 : loaded.pile.hubAllowance,
    holes: holesOf(loaded, kinds, k),
  });
  if (panel === null)
    throw new Ending(1, [`The sides of kind ${kind.id} are no panel on this sphere.`]);
  return panel;
}

/** Side → holes along it, as counted on the panels or as the take-off settings have it. */
const holesOf = (
  { takeoff, holes }: Chosen['loaded'],
  kinds: readonly Kind[],
  k: number,
): (number | null)[] =>
  (sidePatterns(kinds, takeoff, holes)[k] ?? []).map((pattern) => pattern?.holes ?? null);

/** One drawing to make it anew, one for the best panel to cut it from. */
function writeSheets(
  { loaded, number }: Chosen,
  kinds: readonly Kind[],
  id: string,
  panel: PanelToMake,
  [best]: readonly NamedCut[],
  options: PlacesOptions,
  folder: string,
): string {
  const facts = {
    project: loaded.title,
    sheet: `Panel of kind ${id}`,
    date: dateOf(options),
    assumes: `Arrangement ${number}. ${fittedWords(loaded.pile, lengthsIn(options.lengths))}`
      .replaceAll('"', '″')
      .replaceAll("'", '′'),
  };
  const sheets: Record<string, Drawing> = {
    [`make-${id}`]: makeSheet({ id, panel, from: null }, facts, { lengths: options.lengths }),
  };
  const large = kinds.find((kind) => kind.id === best?.kind);
  const sides = large?.sides ?? [];
  const kept = best?.trim.keptSide ?? 0;
  const corners = cornersOf([...sides.slice(kept), ...sides.slice(0, kept)]);
  if (best && corners)
    sheets[`cut-${id}-from-${best.kind}`] = makeSheet(
      { id, panel, from: { id: best.kind, corners, trim: best.trim } },
      facts,
      { lengths: options.lengths },
    );
  const files = Object.entries(sheets).map(([name, sheet]) => ({
    name: `${name.replaceAll(/[^\w-]/g, '_')}.svg`,
    text: toSvg(sheet),
  }));
  writeAll(folder, files);
  return writtenText(folder, files);
}

const degrees = (angle: number): string => writeAngle(angle, 'deg');

function makeReport(
  { loaded }: Chosen,
  id: string,
  { sides, angles, area }: PanelToMake,
  cuts: readonly NamedCut[],
  lengths: Lengths,
): readonly string[] {
  return [
    heading(`A panel of kind ${id}`),
    table(
      [
        right('side'),
        right('hub to hub'),
        right('as measured'),
        right('corner before it'),
        right('face to flange'),
        right('saw off square'),
        right('holes'),
      ],
      sides.map((side, i) => [
        String(i + 1),
        lengths.fine(side.length),
        side.measured === null ? '?' : lengths.fine(side.measured),
        degrees(angles[i] as number),
        degrees(side.flangeAngle),
        degrees(side.bevel),
        side.holes === null ? '?' : String(side.holes),
      ]),
    ),
    wrap(`${area.toFixed(3)} m² of face. ${fittedWords(loaded.pile, lengths)}`, ''),
    bullets(
      'It could be cut down from a panel left over, keeping one flange:',
      cuts.map((cut) => cutText(cut, lengths)),
    ),
    caution(makeCaution),
  ];
}
