// The paper net as files: in the fewest pieces, or course by course.

import { toSvg } from '../papers/svg.ts';
import {
  counted,
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  refused,
} from './model-ask.ts';
import { netRoom, netScales, netSheets } from './net-sheets.ts';
import { paperNet } from './paper-net.ts';

/** Height of a tab, millimetres. */
const TAB = 5;

/** The sheets of the net. */
export function netModel(
  { shell, course, faces, leftOut, facts: factsOf, lengths }: ModelGround,
  { scale, paper }: Pick<ModelSettings, 'scale' | 'paper'>,
  strips: boolean,
): ModelMade | ModelRefused {
  const facts = factsOf(strips ? 'Paper net by courses' : 'Paper net');
  const sheetOptions = { paper, lengths };
  const room = netRoom(facts, sheetOptions);
  const { least, most } = netScales(shell, faces, room, TAB);
  if (least > most)
    return refused(
      'scale',
      scale,
      `but on ${paper} no scale both holds the largest panel and lets the numbers be read; a larger paper may`,
    );
  if (!(scale >= least))
    return refused(
      'scale',
      scale,
      `at which a panel is larger than the room on ${paper}; the nearest that works is ${least}`,
    );
  if (scale > most)
    return refused(
      'scale',
      scale,
      `at which the place numbers cannot be read; the nearest that works is ${most}`,
    );
  const net = paperNet(shell, {
    scale,
    room,
    tab: TAB,
    leftOut,
    ...(strips && { courses: course }),
  });
  if (!net.ok) return refused('open', 'every place', 'some to stay');
  const pieces = net.pieces.length;
  const proof =
    pieces === net.leastPieces
      ? 'shown to be the fewest'
      : `no fewer than ${net.leastPieces} are possible`;
  const sheets = netSheets(shell, net, faces, facts, sheetOptions).map((sheet) => toSvg(sheet));
  const name = strips ? 'strips' : 'net';
  return {
    ok: true,
    files: sheets.map((text, i) => ({
      name: `${name}${sheets.length > 1 ? `-${i + 1}` : ''}.svg`,
      text,
    })),
    words: `Net at 1 : ${scale}: ${counted(pieces, 'piece')} on ${counted(net.sheets, 'sheet')} of ${paper}; ${proof}. ${counted(net.taped.length, 'seam')} to tape, where a slit leaves no room for a tab.`,
    told: {
      pieces,
      leastPieces: net.leastPieces,
      sheets: net.sheets,
      taped: net.taped.length,
    },
  };
}
