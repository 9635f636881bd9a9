// The answer in words and numbers: headline, facts, what is odd about it, what can stand.

import type { Identification, Kind, Shape } from '@shellraise/core';
import { hubCount } from '@shellraise/core';
import type { Relation } from '../../engine/relate.ts';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { headlineOf, listOf, percentOf, ruleOf } from './sentences.ts';

/** The headline. */
export function Headline({
  found,
  shape,
  relation,
}: {
  found: Identification;
  shape: Shape;
  relation: Relation | null;
}) {
  const words = useWords().shape;
  const lengths = useLengths();
  return <p className="headline">{headlineOf(found, shape, relation, words, lengths)}</p>;
}

/** Above this, how sure it is needs no line of its own. */
const NEARLY_CERTAIN = 0.99;

/** The facts of a shape. */
export function Facts({ found, shape }: { found: Identification; shape: Shape }) {
  const words = useWords().shape;
  const lengths = useLengths();
  const { facts } = words;
  const { openPart } = useWords().hard;
  const rows: readonly (readonly [string, string, string?])[] = [
    [
      facts.radius,
      facts.plusMinus(lengths.large(shape.radius), lengths.small(shape.radiusSd)),
      lengths.largeEcho(shape.radius),
    ],
    [facts.across, lengths.large(2 * shape.radius), lengths.largeEcho(2 * shape.radius)],
    [shape.closed ? facts.places : openPart.places, String(shape.shell.kind.length)],
    [facts.hubs, String(hubCount(shape.shell))],
    [facts.misfit, facts.misfitOf(lengths.small(shape.residual))],
    [facts.rule, ruleOf(shape.subdivision, words)],
    ...(found.shapes.length > 1 || shape.probability < NEARLY_CERTAIN
      ? [[facts.sure, facts.chance(percentOf(shape.probability))] as const]
      : []),
  ];
  return (
    <>
      <dl className="shape-facts">
        {rows.map(([name, value, echo]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              {value}
              {echo ? <span className="quiet"> {echo}</span> : null}
            </dd>
          </div>
        ))}
      </dl>
      <p className="quiet small-print">{facts.deviation}</p>
    </>
  );
}

/** What is odd about a shape, and what can stand. */
export function Notes({ shape, kinds }: { shape: Shape; kinds: readonly Kind[] }) {
  const words = useWords().shape;
  const { interchangeCost, openPart } = useWords().hard;
  const lengths = useLengths();
  const app = useApp();
  const { notes } = words;
  const good = kinds.reduce((sum, { good }) => sum + good, 0);
  const places = shape.shell.kind.length;
  const named = (ids: readonly string[]): string => listOf(ids.map(notes.kind));
  const cost = (i: number): string => {
    const one = shape.interchangeCosts[i];
    return one === undefined ? '' : ` ${interchangeCost(lengths.small(one))}`;
  };
  const odd = [
    ...shape.misfitGroups.map(({ around }) => notes.misfitGroup(around.join(' '))),
    ...shape.interchangeable.map((ids, i) => `${notes.interchangeable(listOf(ids))}${cost(i)}`),
    ...(shape.freeTurns.length > 0 ? [notes.freeTurns(named(shape.freeTurns))] : []),
  ];
  const counted = kinds.every((kind) => kind.counted);
  const ofBall = good < places ? notes.short(good, places) : notes.enough(good, places);
  const stock = shape.closed ? ofBall : openPart.stock(good, places);
  return (
    <>
      {odd.map((text) => (
        <p key={text} className="odd">
          {text}
        </p>
      ))}
      <p className="stands">
        {counted ? stock : null}{' '}
        <button type="button" className="screen-only" onClick={() => app.goTo('places')}>
          {notes.toPlaces}
        </button>
      </p>
    </>
  );
}
