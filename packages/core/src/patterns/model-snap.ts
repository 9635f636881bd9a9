// Panels and hubs to be printed flat and pushed together, as files: every bed as STL and 3MF with a picture
// that says which part is which, and every part alone.

import type { NamedFile } from '../papers/zip.ts';
import { cutSvg } from './cut-files.ts';
import type { CutSheet } from './cut-sheets.ts';
import { meshVolume } from './mesh.ts';
import {
  counted,
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  refused,
  sizeWords,
} from './model-ask.ts';
import { assertClosed } from './model-print.ts';
import { bedMesh, bedOver, type SnapBeds, snapBeds } from './snap-beds.ts';
import { LEAST_SNAP_WALL } from './snap-fit.ts';
import {
  type NoSnapParts,
  partHeight,
  type SnapPart,
  type SnapParts,
  snapParts,
} from './snap-parts.ts';
import { toStl } from './stl.ts';
import { type PlacedItem, toThreeMf } from './three-mf.ts';

type Asked = Pick<ModelSettings, 'scale' | 'wall' | 'clearance' | 'peg' | 'bed'>;

/** The files of the parts. */
export function snapModel(ground: ModelGround, settings: Asked): ModelMade | ModelRefused {
  const { scale, wall, bed } = settings;
  const made = madeOrRefused(ground, settings);
  if (!made.ok) return made;
  const { parts, fit, spread } = made;
  const laid = snapBeds(parts, bed);
  if (laid === null) return bedRefused(ground, settings, parts);
  for (const { mesh } of parts) assertClosed(mesh);
  const panels = parts.filter(({ sort }) => sort === 'panel');
  const hubs = parts.filter(({ sort }) => sort === 'hub');
  const total = (list: readonly SnapPart[]): number =>
    list.reduce((sum, { count }) => sum + count, 0);
  const grams = parts.reduce((sum, { mesh, count }) => sum + count * meshVolume(mesh), 0) / 1000;
  return {
    ok: true,
    files: filesOf(ground, parts, laid, bed),
    words: `${counted(total(panels), 'panel')} of ${counted(panels.length, 'kind')} and ${counted(total(hubs), 'hub')} of ${counted(hubs.length, 'sort')} at 1 : ${scale} on ${counted(laid.beds.length, 'bed')} of ${sizeWords(bed)}; ${Math.round(laid.yield * 100)} % of them is covered, ${grams.toFixed(0)} cm³ in all. Panels are ${wall} mm thick and lie on their outer faces; pegs of ${settings.peg} mm have ${settings.clearance} mm of room all round, panels as much between them. Panels of one kind differ by ${spread.toFixed(2)} mm at most. Print one hub and its panels first and try them: the room is our own choice, no source. Each part once: ${partsWords(parts)}.`,
    told: {
      beds: laid.beds.length,
      yield: laid.yield,
      volume: grams * 1000,
      spread,
      fit,
      parts: parts.map(({ name, count }) => ({ name, count })),
    },
  };
}

const partsWords = (parts: readonly SnapPart[]): string =>
  parts.map(({ name, count }) => `${name} × ${count}`).join(', ');

/** The parts, or which setting stands in the way. */
function madeOrRefused(ground: ModelGround, settings: Asked): SnapParts | ModelRefused {
  const { scale } = settings;
  if (!(scale > 0 && scale < Infinity)) return refused('scale', scale, 'expected more than 0');
  try {
    const made = partsAt(ground, settings, scale);
    if (made.ok) return made;
    if (made.reason === 'no places') return refused('open', 'every place', 'some to stay');
    const number = ground.faces[made.place as number]?.number;
    const nearest = largestNumber(ground, settings);
    return refused(
      'scale',
      scale,
      `at which panel ${number} has no room for its pegs; the nearest that works is ${nearest}, or a thinner peg`,
    );
  } catch (error) {
    const match =
      error instanceof RangeError
        ? /^(wall|clearance|peg): (.*?), (.*)$/.exec(error.message)
        : null;
    if (!match) throw error;
    const [, setting, found, expected] = match as unknown as [string, 'wall', string, string];
    return refused(
      setting,
      found,
      setting === 'wall'
        ? `${expected}; the thinnest that works is ${LEAST_SNAP_WALL} mm`
        : expected,
    );
  }
}

const partsAt = (ground: ModelGround, settings: Asked, scale: number): SnapParts | NoSnapParts =>
  snapParts(ground.shell, ground.kinds, { ...settings, scale, leftOut: ground.leftOut });

/** The largest number that a scale may have (the smallest model), to a tenth, downwards: the larger the
 * model, the more room its pegs have. */
function largestNumber(ground: ModelGround, settings: Asked): number {
  let [low, high] = [0, Math.floor(settings.scale * 10)];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (partsAt(ground, settings, middle / 10).ok) low = middle;
    else high = middle;
  }
  return low / 10;
}

/** Which scale fits the bed, and whether pegs still have room there. */
function bedRefused(
  ground: ModelGround,
  settings: Asked,
  parts: readonly SnapPart[],
): ModelRefused {
  const { scale, bed } = settings;
  const over = bedOver(parts, bed);
  const nearest = Math.ceil(scale * over * 10) / 10;
  const tall = parts.find((part) => partHeight(part) > bed[2]);
  if (tall)
    return refused(
      'bed',
      sizeWords(bed),
      `lower than ${tall.name}, which is ${partHeight(tall).toFixed(1)} mm high`,
    );
  const works = over > 1 && over < Infinity && partsAt(ground, settings, nearest).ok;
  return refused(
    'bed',
    sizeWords(bed),
    works
      ? `smaller than a panel at 1 : ${scale}; the nearest scale that fits is ${nearest}`
      : `smaller than the parts at 1 : ${scale}, and at no scale do both the panels fit it and their pegs have room: a larger bed or a thinner peg is needed`,
  );
}

function filesOf(
  { title }: ModelGround,
  parts: readonly SnapPart[],
  { beds }: SnapBeds,
  bed: Asked['bed'],
): NamedFile[] {
  const meshes = parts.map(({ name, mesh }) => ({ name, mesh }));
  return [
    ...beds.flatMap((laid, i): NamedFile[] => {
      const name = `bed${beds.length > 1 ? `-${i + 1}` : ''}`;
      return [
        { name: `${name}.stl`, text: toStl(bedMesh(parts, laid), `${title}: ${name}`) },
        { name: `${name}.3mf`, text: toThreeMf(meshes, `${title}: ${name}`, laid) },
        { name: `${name}.svg`, text: cutSvg(bedPicture(parts, laid, bed)) },
      ];
    }),
    ...parts.map(({ name, mesh }) => ({
      name: `${name.replaceAll(/[^\w-]+/g, '-')}.stl`,
      text: toStl(mesh, name),
    })),
  ];
}

/** A bed from above, each part with its name. */
function bedPicture(
  parts: readonly SnapPart[],
  laid: readonly PlacedItem[],
  [width, height]: Asked['bed'],
): CutSheet {
  return {
    width,
    height,
    lines: [
      {
        layer: 'score',
        points: [
          [0, 0],
          [width, 0],
          [width, height],
          [0, height],
        ],
      },
      ...laid.flatMap((one) =>
        (parts[one.part] as SnapPart).cover.map((shape) => ({
          layer: 'cut' as const,
          points: shape.map((point) => placed(point, one)),
        })),
      ),
    ],
    words: laid.map((one) => {
      const part = parts[one.part] as SnapPart;
      const points = part.cover.flat();
      const middle = [0, 1].map(
        (axis) => points.reduce((sum, p) => sum + (p[axis as 0] as number), 0) / points.length,
      );
      return {
        layer: 'engrave' as const,
        at: placed(middle as unknown as readonly [number, number], one),
        text:
          part.sort === 'panel' ? part.name.replace('panel ', '') : part.name.replace('hub ', 'h'),
        size: 5,
        turnDeg: 0,
      };
    }),
  };
}

function placed(
  [x, y]: readonly [number, number],
  { turnDeg, x: dx, y: dy }: PlacedItem,
): readonly [number, number] {
  const angle = (turnDeg * Math.PI) / 180;
  return [
    dx + Math.cos(angle) * x - Math.sin(angle) * y,
    dy + Math.sin(angle) * x + Math.cos(angle) * y,
  ];
}
