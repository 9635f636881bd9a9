// Kinds and net of a shell as texts short enough for QR codes: a project file with the kinds, and the net
// with the numbers of its places. Compressed (RFC 1951) and written in the 45 characters that codes pack
// best (RFC 9285), behind a word that tells what it is.

import { deflateSync, strToU8 } from 'fflate';
import type { Kind } from '../pile/kind.ts';
import { toBase45 } from '../record/base45.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../shell/shell.ts';

/** What the text of a code begins with: kinds as a project file, and a net. */
export const CODE_WORDS = { project: 'SHELLRAISE PROJECT 1:', net: 'SHELLRAISE NET 1:' } as const;

/** Characters that the largest QR code holds of the 45 (ISO/IEC 18004, 40-L). */
export const LONGEST_CODE = 4296;

/** The project file with title and kinds alone: fitted hub-to-hub sides to a tenth of a millimetre, marks,
 * counts, masses. */
export function projectCode(title: string, kinds: readonly Kind[]): string {
  const project = {
    shellraise: 1,
    title: [...title].slice(0, 100).join(''),
    pile: {
      measuredAlong: 'hubs',
      hubAllowance: 0,
      kinds: kinds.map((kind) => ({
        id: kind.id,
        ...(kind.marks.length > 0 && { marks: kind.marks.slice(0, 50) }),
        sides: kind.sides.map((side) => Math.round(side * 1e4) / 1e4),
        ...(kind.counted && { good: kind.good, repair: kind.repair, scrap: kind.scrap }),
        ...(kind.mass !== null && { mass: Math.round(kind.mass * 10) / 10 }),
      })),
    },
  };
  return CODE_WORDS.project + packed(JSON.stringify(project));
}

/** The net: radius (metres), and for each place its number, hubs anticlockwise from outside, index of its
 * kind, and which of the kind's sides lies on the first. */
export function netCode(shell: Shell, numbers: readonly string[], kinds: readonly Kind[]): string {
  const net = {
    radius: Math.round(shell.radius * 1e4) / 1e4,
    kinds: kinds.map(({ id }) => id),
    places: Array.from({ length: placeCount(shell) }, (_, p) => [
      numbers[p],
      shell.kind[p],
      shell.turn[p],
      ...hubsOf(shell, p as PlaceId),
    ]),
  };
  return CODE_WORDS.net + packed(JSON.stringify(net));
}

const packed = (text: string): string => toBase45(deflateSync(strToU8(text), { level: 9 }));
