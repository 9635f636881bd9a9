// The base as it stands: readings as they come, and go or no-go before course 2, with the hub to move.

import type { HubMove, SurveyAnswer } from '@shellraise/core';
import { useState } from 'react';
import type { GroundAnswer } from '../../engine/ground.ts';
import { useLengths } from '../../ui/app-context.tsx';
import type { Lengths } from '../../ui/lengths.ts';
import { useWords, type Words } from '../../words/words.ts';
import { SurveyAllowed } from './allowed-forms.tsx';
import {
  furtherReadings,
  lengthWithin,
  type Surveyed,
  surveyed,
  surveyValue,
  withReading,
} from './edits.ts';
import { HeightsForm } from './heights-form.tsx';
import { ReadingCell } from './reading-cell.tsx';
import { Caution, Faults } from './small.tsx';
import { useGround } from './use-ground.ts';

/** The panel. */
export function SurveyPanel({ answer }: { answer: GroundAnswer | null }) {
  const { survey: words, anchors, changes } = useWords().ground;
  const { ground, setGround } = useGround();
  const lengths = useLengths();
  const [fault, setFault] = useState<string | null>(null);
  if (answer === null) return null;
  const { base, survey } = answer;
  const count = base.hubs.length;
  const further = furtherReadings(ground.survey, count);
  const metric = lengths.system === 'metric';
  const read = (what: Surveyed) => (text: string) =>
    what === 'level'
      ? lengthWithin(text, metric ? 'mm' : 'in', -20, 20)
      : lengthWithin(text, metric ? 'm' : 'ft', 0.001, 100);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      {ground.survey.length === 0 ? (
        <p>{words.start}</p>
      ) : survey.ok ? (
        <Verdict answer={survey.value} />
      ) : (
        <Faults faults={survey.faults} />
      )}
      <SurveyAllowed />
      {further > 0 ? <p className="quiet">{words.further(further)}</p> : null}
      <p role="alert" className="accent">
        {fault === null ? '' : words.fault}
      </p>
      <table className="ground-table readings">
        <thead>
          <tr>
            <th scope="col">{anchors.table.hub}</th>
            {surveyed.map((what) => (
              <th key={what} scope="col">
                {words[what]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {base.hubs.map(({ number }) => {
            const next = (number % count) + 1;
            return (
              <tr key={number}>
                <th scope="row">{number}</th>
                {surveyed.map((what) => {
                  const own = surveyValue(ground.survey, what, number, next);
                  return (
                    <td key={what}>
                      <ReadingCell
                        label={words.of(words[what], number)}
                        shown={
                          own === undefined
                            ? ''
                            : what === 'level'
                              ? lengths.side(own)
                              : lengths.large(own)
                        }
                        read={read(what)}
                        onValue={(value) =>
                          setGround(
                            { survey: withReading(ground.survey, what, number, next, value) },
                            changes.survey,
                          )
                        }
                        onFault={setFault}
                      />
                    </td>
                  );
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
      <HeightsForm />
    </div>
  );
}

function Verdict({ answer }: { answer: SurveyAnswer }) {
  const words = useWords().ground.survey;
  const lengths = useLengths();
  const { verdict, reasons, moves, slack, byCourse } = answer;
  return (
    <div className="survey-verdict" role="status">
      <p className={verdict === 'go' ? 'verdict' : 'verdict accent'}>{words.verdicts[verdict]}</p>
      {moves.length > 0 ? (
        <>
          <h3>{words.moves}</h3>
          <ol className="survey-moves">
            {moves.map((move) => (
              <li key={move.hub}>{words.move(move.hub, waysOf(move, words, lengths))}</li>
            ))}
          </ol>
        </>
      ) : null}
      <ul className="notes">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      {slack.length > 0 ? <p>{words.slack(slack.length)}</p> : null}
      {byCourse.length > 0 ? (
        <p className="quiet">
          {words.courses}:{' '}
          {byCourse.map((by, c) => words.course(c + 1, lengths.small(by))).join(', ')}.
        </p>
      ) : null}
      <Caution sources={answer.sources} />
    </div>
  );
}

/** Which ways a hub is to go; less than half a millimetre is none. */
function waysOf(
  { out, along, up }: HubMove,
  words: Words['ground']['survey'],
  lengths: Lengths,
): string {
  const way = (by: number, one: (by: string) => string, other: (by: string) => string): string[] =>
    Math.abs(by) < 5e-4 ? [] : [by > 0 ? one(lengths.small(by)) : other(lengths.small(by))];
  const ways = [
    ...way(out, words.out, words.inwards),
    ...way(along, words.clockwise, words.anticlockwise),
    ...way(up, words.up, words.down),
  ];
  return ways.length === 0 ? words.still : ways.join(', ');
}
