// How long the fit-out's maps take: `npm run bench -- fitout`. A ball of 320 places cut to about 250, a
// dish of 2.4 m: the sky at 1° with seams and plates, the swing at 1° with the best height, and a dish of
// 1.8 m that passes a door of a hexagon, and one of 3 m that does not.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { openingsFor } from '../src/arrange/openings/openings.ts';
import { doorOutline } from '../src/arrange/openings/passing.ts';
import { carryThrough } from '../src/fitout/carry.ts';
import type { Dish, Mount } from '../src/fitout/dish.ts';
import { skyMap, worseDb } from '../src/fitout/sky.ts';
import { swing } from '../src/fitout/swing.ts';
import { wallTable } from '../src/fitout/wall.ts';
import { netShell } from '../src/nets/kinds.ts';
import { naturalCuts } from '../src/shell/cuts.ts';
import type { HubId } from '../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../src/shell/orient.ts';
import { partOf } from '../src/shell/part.ts';
import { hubCount, placeCount, type Shell } from '../src/shell/shell.ts';
import { threeRays } from './fitout/three-rays.ts';

/** Rays of a pointing, as `skyMap` has them unless told. */
const RAYS = 37;

/** Wanted, seconds. */
const WANTED = { sky: 2, swing: 1, pass: 10 } as const;

const dish: Dish = {
  diameter: 2.4,
  focalRatio: 0.4,
  vertexAhead: 0.2,
  feed: { beyond: 0.1, diameter: 0.3 },
  back: { behind: 0.6, diameter: 0.8 },
};

const mount: Mount = {
  kind: 'azimuth and elevation',
  height: 1.8,
  aside: [0.1, -0.15],
  lowest: 0,
  highest: Math.PI / 2,
  azimuth: 0,
  latitude: 0,
  hourAngle: 2,
};

/** Prints what it finds. */
export function main(): readonly Line[] {
  const lines: Line[] = [];
  for (const whole of [true, false]) {
    const shell = whole ? ball() : cut(ball());
    const floor = lowest(shell);
    const height = whole ? -floor : 1.8;
    const wall = wallTable(
      {
        layers: [{ thickness: 0.003, permittivity: 4.3, lossTangent: 0.016 }],
        sources: [],
      },
      1_420_405_750,
    );
    const seams = { seamWidth: 0.012, seamDepth: 0.04, plateDiameter: 0.15, opacity: 1 };
    const at = { ...mount, height };
    const start = process.cpuUsage().user;
    const sky = skyMap({ shell, dish, mount: at, floor, wall, seams });
    const middle = process.cpuUsage().user;
    const found = swing({ shell, dish, mount: at, floor, flange: 0.04, margin: 0.05 });
    const end = process.cpuUsage().user;
    const [skySeconds, swingSeconds] = [(middle - start) / 1e6, (end - middle) / 1e6];
    console.log(
      `${placeCount(shell)} places: sky at 1°, ${sky.points.length} pointings, ${skySeconds.toFixed(2)} s of processor (wanted ${WANTED.sky} or less)`,
    );
    console.log(
      `  loss ${worseDb(sky.best).toFixed(2)} to ${worseDb(sky.worst).toFixed(2)} dB, mean ${sky.meanDb.toFixed(2)} dB`,
    );
    console.log(
      `  swing at 1° with the best height ${swingSeconds.toFixed(2)} s (wanted ${WANTED.swing} or less)`,
    );
    console.log(
      `  nearest ${found.nearest.clearance.toFixed(3)} m, largest ${found.largest.toFixed(3)} m, best ${found.best.largest.toFixed(3)} m at ${found.best.height.toFixed(3)} m`,
    );
    const of = `of ${placeCount(shell)} places`;
    lines.push(
      {
        what: `map of the sky ${of}`,
        found: skySeconds,
        unit: 's',
        wanted: WANTED.sky,
        beside: {
          library: 'three.js casting as many rays',
          ratio:
            skySeconds / threeRays(shell, [0.1, -0.15, floor + height], RAYS * sky.points.length),
        },
      },
      { what: `swing and best height ${of}`, found: swingSeconds, unit: 's', wanted: WANTED.swing },
    );
  }
  return [...lines, ...passes()];
}

/** Two dishes at a door of the cut ball. */
function passes(): readonly Line[] {
  const shell = cut(ball());
  const [door] = openingsFor(shell, { outline: doorOutline(0.7, 1.2) });
  if (door === undefined) throw new Error('the ball has no such door');
  const order = [...Array(placeCount(shell)).keys()];
  return [1.2, 3].map((diameter) => {
    const start = process.cpuUsage().user;
    const { answer } = carryThrough(
      { shell, leftOut: door.places, order, placed: null, flange: 0.04 },
      {
        name: 'dish',
        shape: { form: 'dish', diameter, depth: 0.3, thickness: 0.05 },
        roughly: false,
      },
    );
    const seconds = (process.cpuUsage().user - start) / 1e6;
    console.log(
      `a dish of ${diameter} m at a door of ${door.places.length} panels: ${answer.status}, ${seconds.toFixed(2)} s (wanted ${WANTED.pass} or less)`,
    );
    const what = `passing the door: a dish of ${diameter} m, ${answer.status}`;
    return { what, found: seconds, unit: 's', wanted: WANTED.pass };
  });
}

function ball(): Shell {
  const { shell } = netShell({ solid: 'icosahedron', b: 4, c: 0, division: 'equal chords' }, 3);
  return orientShell(shell, crownAtHub(shell, 0 as HubId));
}

function cut(shell: Shell): Shell {
  const cuts = naturalCuts(shell);
  const near = cuts.reduce((best, one) =>
    Math.abs(one.places.length - 250) < Math.abs(best.places.length - 250) ? one : best,
  );
  return partOf(shell, near.places).shell;
}

const lowest = (shell: Shell): number =>
  Math.min(...Array.from({ length: hubCount(shell) }, (_, h) => shell.hubs[3 * h + 2]));
