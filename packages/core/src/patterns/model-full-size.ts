// Panels of every kind, panels that the floor cuts and hub plates at full size, as drawings and DXF.

import { toSvg } from '../papers/svg.ts';
import type { NamedFile } from '../papers/zip.ts';
import { fullPanelDxf, hubPlateDxf } from './full-size-dxf.ts';
import { basePanels, fullPanels, hubPlates, lowestHub } from './full-size-parts.ts';
import { fullPanelSheet, hubPlateSheet } from './full-size-sheet.ts';
import {
  counted,
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  refused,
} from './model-ask.ts';

type Asked = Pick<ModelSettings, 'paper' | 'flange' | 'plate' | 'hole' | 'floor'>;

/** The sheets and DXF files. */
export function fullSizeModel(ground: ModelGround, settings: Asked): ModelMade | ModelRefused {
  const { shell, kinds, leftOut, making, lengths, faces } = ground;
  const { paper, flange, plate, hole, floor } = settings;
  if (!(flange >= 0 && flange < Infinity))
    return refused(
      'flange',
      `${flange} mm`,
      'expected 0 mm (none) or more; the nearest that works is 0 mm',
    );
  if (!(hole > 0 && hole < Infinity))
    return refused('hole', `${hole} mm`, 'expected more than 0 mm');
  // Holes on two thirds of the radius leave a third of it to the edge.
  if (!(plate / 2 - plate / 3 > hole / 2 && plate < Infinity))
    return refused(
      'plate',
      `${plate} mm`,
      `too small for holes of ${hole} mm; the nearest that works is more than ${3 * hole} mm`,
    );
  const lowest = lowestHub(shell);
  const top = shell.hubs.reduce(
    (most, x, i) => (i % 3 === 2 ? Math.max(most, x) : most),
    -Infinity,
  );
  const high = lowest === null ? 0 : (top - lowest) * 1000;
  if (!(floor >= 0 && floor < high) && floor !== 0)
    return refused(
      'floor',
      `${floor} mm`,
      `expected from 0 mm to less than ${high.toFixed(0)} mm, the height of the shell`,
    );
  if (leftOut.length === faces.length) return refused('open', 'every place', 'some to stay');
  const options = {
    flange: flange / 1000,
    allowance: making?.allowance ?? null,
    ...(making && { holes: making.holes }),
  };
  const whole = making?.whole ?? { shell, leftOut };
  const panels = [
    ...fullPanels(shell, kinds, leftOut, options),
    ...(lowest === null
      ? []
      : basePanels(
          { whole: whole.shell, leftOut: whole.leftOut, floor: lowest + floor / 1000 },
          kinds,
          options,
        )),
  ];
  const plates = hubPlates(shell, leftOut);
  const facts = ground.facts('Parts at full size');
  const sheet = { paper, lengths };
  const size = { diameter: plate / 1000, hole: hole / 1000 };
  const named = (name: string, svg: string, dxf: string): NamedFile[] => {
    const file = name.replaceAll(/[^\w-]+/g, '-');
    return [
      { name: `${file}.svg`, text: svg },
      { name: `${file}.dxf`, text: dxf },
    ];
  };
  const base = panels.filter((one) => one.base).length;
  return {
    ok: true,
    files: [
      ...panels.flatMap((part) =>
        named(
          part.name,
          toSvg(fullPanelSheet(part, flange / 1000, facts, sheet)),
          fullPanelDxf(part, flange / 1000, hole / 1000),
        ),
      ),
      ...plates.flatMap((one) =>
        named(one.name, toSvg(hubPlateSheet(one, size, facts, sheet)), hubPlateDxf(one, size)),
      ),
    ],
    words: `${counted(panels.length - base, 'kind')} of panel, ${base === 0 ? 'none cut by the floor' : `${counted(base, 'sort')} of base panel, cut by the floor`}, and ${counted(plates.length, 'sort')} of hub plate, each as a drawing and as DXF at 1 : 1 with the layers CUT, FOLD, HOLE, LINE, WORDS. Hub to hub, seen from outside. Flanges ${flange} mm deep, plates ${plate} mm across, holes of ${hole} mm: as asked for, no reading. Make one and try it before the others.`,
    told: {
      panels: panels.map(({ name, count, base: cut, panel }) => ({
        name,
        count,
        base: cut,
        area: panel.area,
      })),
      plates: plates.map(({ name, count, holes }) => ({ name, count, holes })),
    },
  };
}
