// The account of the marks in plain English, most telling first.

import type { FinerMarks, GroupMarks, MarkAccount, PanelMark } from './marks-in-net.ts';

/** What the marks say, one sentence or two for each finding; empty where nothing is marked. */
export function marksWords(account: MarkAccount): string[] {
  if (account.state === 'none') return [];
  return [
    ...account.finer.map((one) => finerWords(one, account.names)),
    ...account.marks.flatMap(({ mark, on, as }) => {
      if (as === 'nothing') return [`Mark ${mark} stands for nothing: no kind truly has it.`];
      const kinds = on.map((one) => one.kinds.join('/'));
      return on.length > 1
        ? [`Mark ${mark} is on kinds ${listed(kinds)}: tell them apart by their sides.`]
        : [];
    }),
    ...gathered(account.panels),
    ...account.groups.flatMap(groupWords),
  ];
}

function finerWords(
  { kinds, marks, rule, probability, ways }: FinerMarks,
  names: readonly string[],
) {
  const what = `Panels of kind ${kinds.join('/')} bear the marks ${listed(marks)}, though by tape they are interchangeable.`;
  if (rule.by === 'none')
    return `${what} Neither counts nor joined groups say which mark belongs where; note more groups with two of these marks in them.`;
  const how =
    rule.by === 'neighbours'
      ? 'The marks go by what stands beside a panel'
      : `The marks go by height on ${foldWord(rule.axis.fold)} axis of the net: from one end to the other ${rule.runs
          .map(({ mark, places }) => `${names[mark]} on ${places} places`)
          .join(', then ')}`;
  const sure = probability >= 0.9 && ways === 1;
  return sure
    ? `${what} ${how}.`
    : `${what} ${how}: so most likely (${Math.round(100 * probability)} %), but ${ways > 1 ? `${ways} ways fit about as well` : 'it is not settled'}; note more groups with two of these marks in them.`;
}

/** Panels of one kind, one finding and one mark in one sentence. */
function gathered(panels: readonly PanelMark[]): string[] {
  const lots = new Map<string, PanelMark[]>();
  for (const panel of panels) {
    if (panel.as === 'fits' || panel.as === 'no place' || panel.likely.length === 0) continue;
    const key = JSON.stringify([panel.as, panel.kind, panel.written, panel.likely[0]?.mark]);
    lots.set(key, [...(lots.get(key) ?? []), panel]);
  }
  return [...lots.values()].map((lot) => {
    const [{ as, kind, written, likely, tag }] = lot as [PanelMark];
    const count = lot.reduce((sum, one) => sum + one.count, 0);
    const panel =
      lot.length === 1 && tag ? `Panel ${tag}` : count === 1 ? 'One panel' : `${count} panels`;
    const [is, has] = count === 1 ? ['is', 'has'] : ['are', 'have'];
    const of = kind === null ? '' : ` of kind ${kind}`;
    const be = likely
      .map(({ mark, probability }) =>
        probability > 0.99 ? mark : `${mark} (${Math.round(100 * probability)} %)`,
      )
      .join(' or ');
    if (as === 'unmarked') return `${panel}${of} ${is} unmarked: most likely ${be}.`;
    if (as === 'faded')
      return `${panel}${of} ${is} marked ${written.join(' or ')}: most likely ${be}.`;
    return `${panel} marked ${written.join(' or ')} ${has} the sides of kind ${kind ?? 'another'}: by tape the mark should be ${be}.`;
  });
}

function groupWords({ group, held, hub, wrong }: GroupMarks): string[] {
  if (held) return [];
  if (hub === null) return [`Group ${group + 1} has more panels than any hub of the net.`];
  return [
    `Group ${group + 1} fits no hub as it is marked; where most of it fits, ${wrong
      .map(
        ({ at, shouldBe, kinds }) =>
          `its panel ${at + 1} would be ${shouldBe ?? `of kind ${kinds.join('/')}`}`,
      )
      .join(' and ')}.`,
  ];
}

const foldWord = (fold: number): string =>
  fold === 2
    ? 'a two-fold'
    : fold === 3
      ? 'a three-fold'
      : fold === 5
        ? 'a five-fold'
        : `a ${fold}-fold`;

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
