// The tab of the papers: the sets, which paper, print and save.

import type { Drawing, Paper } from '@shellraise/core';
import { useState } from 'react';
import { type Ask, idle, progressAt, unanswered } from '../../engine/ask.ts';
import { isPocketCopy } from '../../files/carried.ts';
import { download, fileName } from '../../files/save-file.ts';
import { useApp } from '../../ui/app-context.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { raisingRuns } from '../raising/raising-run.ts';
import { orderedRuns, plainRuns, sourceOf, type usePapers } from './paper-runs.ts';
import { isMade, SetTable } from './set-table.tsx';

/** The tab. */
export function PapersPanel({
  papers,
  paper,
  onPaper,
  ticked,
  onTick,
  shown,
  onShow,
  onPrint,
}: {
  papers: ReturnType<typeof usePapers>;
  paper: Paper;
  onPaper: (paper: Paper) => void;
  ticked: ReadonlySet<string>;
  onTick: (names: readonly string[], on: boolean) => void;
  shown: string | null;
  onShow: (name: string) => void;
  onPrint: (drawings: readonly Drawing[]) => void;
}) {
  const words = useWords().papers;
  const { rows, order, rests, runs, ordered } = papers;
  const chosen = rows.filter((row) => ticked.has(row.name) && isMade(row));
  const pages = chosen.reduce((sum, { told }) => sum + (told?.pages ?? 0), 0);
  const saving = useSaving(papers, chosen, onPrint);
  return (
    <div className="fit-panel papers-panel">
      <fieldset className="legend-choices">
        <legend>{words.paper}</legend>
        {(['A4', 'Letter'] as const).map((one) => (
          <button key={one} type="button" aria-pressed={one === paper} onClick={() => onPaper(one)}>
            {one}
          </button>
        ))}
      </fieldset>
      {rests ? null : (
        <div className="paper-order">
          <ProgressLine ask={order} what={words.seeking} />
          {order.value === null ? null : (
            <button type="button" onClick={raisingRuns.cancel}>
              {words.takeNow}
            </button>
          )}
        </div>
      )}
      <Making run={runs.plain} onCancel={plainRuns.cancel} onAgain={() => again(papers, false)} />
      <Making
        run={runs.ordered}
        onCancel={orderedRuns.cancel}
        onAgain={() => again(papers, true)}
      />
      <div className="paper-head">
        <p aria-live="polite">{words.chosen(chosen.length, pages)}</p>
        <p className="paper-presses">
          <button type="button" className="go" disabled={pages === 0} onClick={saving.print}>
            {words.print}
          </button>{' '}
          {isPocketCopy() ? null : (
            <button type="button" disabled={pages === 0} onClick={saving.pdf}>
              {words.pdf}
            </button>
          )}{' '}
          <button type="button" disabled={pages === 0} onClick={saving.svg}>
            {words.svg}
          </button>
        </p>
        <ProgressLine ask={saving.run} what={words.writing} onCancel={saving.cancel} />
        <p className="quiet">{isPocketCopy() ? words.pocket : words.trueSize}</p>
        <p className="facts-caution">{words.caution}</p>
      </div>
      <SetTable
        {...{ rows, ticked, shown, onTick, onShow }}
        ordering={ordered !== null ? 'found' : rests ? 'none' : 'sought'}
      />
    </div>
  );
}

function again({ rows, plain, ordered }: ReturnType<typeof usePapers>, of: boolean): void {
  const names = rows.filter((row) => row.ordered === of).map(({ name }) => name);
  if (of && ordered) orderedRuns.start({ question: ordered, names });
  if (!of) plainRuns.start({ question: plain, names });
}

function Making({
  run,
  onCancel,
  onAgain,
}: {
  run: Ask<unknown>;
  onCancel: () => void;
  onAgain: () => void;
}) {
  const words = useWords().papers;
  if (run.status !== 'cancelled' && run.status !== 'failed')
    return <ProgressLine ask={run} what={words.making} onCancel={onCancel} />;
  return (
    <p className="step-ended" role="status">
      {run.status === 'failed' ? `${words.failed} ${run.fault ?? ''}` : words.stopped}{' '}
      <button type="button" onClick={onAgain}>
        {words.goOn}
      </button>
    </p>
  );
}

type Rows = ReturnType<typeof usePapers>['rows'];

/** What is done with the chosen sets. */
function useSaving(
  papers: ReturnType<typeof usePapers>,
  chosen: Rows,
  onPrint: (drawings: readonly Drawing[]) => void,
) {
  const words = useWords().papers;
  const app = useApp();
  const [run, setRun] = useState<Ask<null>>(idle);
  const [cancel, setCancel] = useState<() => void>(() => () => undefined);
  const names = chosen.map(({ name }) => name);
  const source = sourceOf(chosen, papers);
  const title = fileName(papers.plain.title);
  const print = async (): Promise<void> => {
    const asked = chosen.map((row) => {
      const own = sourceOf([row], papers);
      return own ? own.engine.ask('paperPages', own.question, row.name).answer : [];
    });
    onPrint((await Promise.all(asked)).flat());
  };
  const pdf = async (): Promise<void> => {
    if (!source) return;
    setRun({ ...idle, status: 'running', since: performance.now() });
    const asked = source.engine.ask('papersPdf', source.question, names, (done) =>
      setRun((now) => ({ ...now, progress: progressAt(done) })),
    );
    setCancel(() => asked.cancel);
    try {
      const { bytes, pages, missing } = await asked.answer;
      const name = `${title}-${names.length === 1 ? names[0] : 'papers'}.pdf`;
      download(name, bytes, 'application/pdf');
      app.tell(
        'note',
        words.written(name, pages),
        missing.length > 0 ? [words.missing(missing.join(' '))] : [],
      );
      setRun(idle);
    } catch (error) {
      const ended = unanswered(error);
      setRun({ ...idle, ...ended });
      if (ended.status === 'failed') app.tell('fault', words.noPdf(ended.fault ?? ''));
    }
  };
  const svg = async (): Promise<void> => {
    if (!source) return;
    const { name, text } = await source.engine.ask('papersSvg', source.question, names).answer;
    const type = typeof text === 'string' ? 'image/svg+xml' : 'application/zip';
    download(`${title}-${name}`, text, type);
  };
  const failed = (error: unknown): void =>
    app.tell('fault', `${words.failed} ${unanswered(error).fault}`);
  return {
    run,
    cancel,
    print: () => void print().catch(failed),
    pdf: () => void pdf(),
    svg: () => void svg().catch(failed),
  };
}
