// The Papers sheet: what hangs on the fence and goes in the bag. A page on the left, the sets beside it.

import '../../styles/ground.css';
import '../../styles/papers.css';
import type { Drawing, Paper } from '@shellraise/core';
import { useMemo, useRef, useState } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { usePrintedAlone } from '../../ui/use-printed-alone.ts';
import { usePrinting } from '../../ui/use-printing.ts';
import { useWords } from '../../words/words.ts';
import { StandingSheet } from '../places/standing-sheet.tsx';
import type { Stood } from '../places/stood.ts';
import { Tabs } from '../places/tabs.tsx';
import { useAnswer } from '../places/use-answer.ts';
import { PagePreview } from './page-preview.tsx';
import { type PaperSource, sourceOf, usePapers } from './paper-runs.ts';
import { PapersPanel } from './papers-panel.tsx';
import { ModelDrawing, PatternsPanel, useModel } from './patterns-panel.tsx';
import { PrintedPapers } from './printed-papers.tsx';
import { isMade, titleOf } from './set-table.tsx';

const tabs = ['papers', 'model'] as const;
type PapersTab = (typeof tabs)[number];

/** The Papers sheet. */
export function PapersSheet() {
  const words = useWords().papers;
  return (
    <StandingSheet className="ground-sheet papers-sheet" title={words.title}>
      {(stood) => <Laid stood={stood} />}
    </StandingSheet>
  );
}

interface Shown extends PaperSource {
  readonly name: string;
}

const askPages = ({ engine, question, name }: Shown) => engine.ask('paperPages', question, name);

function Laid({ stood }: { stood: Stood }) {
  const { papers: words, frame } = useWords();
  const { system } = useLengths();
  const [tab, setTab] = useState<PapersTab>('papers');
  const [paper, setPaper] = useState<Paper>(system === 'inch' ? 'Letter' : 'A4');
  const papers = usePapers(stood, paper);
  const model = useModel(stood);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [at, setAt] = useState({ name: 'flat-plan', page: 0 });
  const drawn = useRef<HTMLDivElement>(null);
  const [printed, print] = usePrintedAlone<readonly Drawing[]>();
  const printing = usePrinting();
  const row = papers.rows.find(({ name }) => name === at.name);
  const source = row && isMade(row) ? sourceOf([row], papers) : null;
  const { name } = at;
  const { question, engine } = source ?? {};
  const shown = useMemo(
    (): Shown | null => (question && engine ? { name, question, engine } : null),
    [name, question, engine],
  );
  const { last } = useAnswer(shown, askPages);
  const drawings = last?.question.name === name ? last.answer : null;
  const page = Math.min(at.page, (drawings?.length ?? 1) - 1);
  // Printed by the browser's own menu: the page on show.
  const onPaper = printed ?? (printing && drawings ? drawings.slice(page, page + 1) : []);
  const onTick = (names: readonly string[], on: boolean): void => {
    const next = new Set(ticked);
    for (const one of names) {
      if (on) next.add(one);
      else next.delete(one);
    }
    setTicked(next);
  };
  return (
    <div className="shell-sheet">
      <div className="drawings ground-left" ref={drawn}>
        {tab === 'model' ? (
          <ModelDrawing question={model.question} />
        ) : drawings !== null && drawings.length > 0 ? (
          <PagePreview
            title={titleOf(name)}
            drawings={drawings}
            page={page}
            onPage={(to) => setAt({ name, page: to })}
          />
        ) : (
          <p className="plan-waiting quiet">{words.drawing}</p>
        )}
      </div>
      <div className="beside">
        <Tabs
          className="beside-tabs"
          label={words.tabs}
          tabs={tabs.map((key) => ({ key, label: words.tab[key] }))}
          chosen={tab}
          onChoose={setTab}
        >
          {tab === 'model' ? (
            <PatternsPanel {...model} />
          ) : (
            <PapersPanel
              {...{ papers, paper, ticked, onTick }}
              onPaper={setPaper}
              shown={at.name}
              onShow={(one) => {
                setAt({ name: one, page: 0 });
                // On a phone the pages lie above the list.
                drawn.current?.scrollIntoView({ block: 'nearest' });
              }}
              onPrint={print}
            />
          )}
        </Tabs>
        <TitleBlock more={[{ name: frame.block.assumes, value: papers.plain.assumes }]} />
      </div>
      {onPaper.length === 0 ? null : <PrintedPapers drawings={onPaper} />}
    </div>
  );
}
