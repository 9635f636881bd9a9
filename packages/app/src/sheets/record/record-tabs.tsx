// The tabs beside the plan, each a part of the record.

import { useState } from 'react';
import type { Thing } from '../../record/next-state.ts';
import type { SiteNow } from '../../sync/site.ts';
import { useSite } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';
import { Tabs } from '../places/tabs.tsx';
import { DayTab } from './day-tab.tsx';
import { FeedBack } from './feed-back.tsx';
import { ForgottenList } from './forgotten-list.tsx';
import { NextTab } from './next-tab.tsx';
import { NoteTab } from './note-tab.tsx';
import { PaperTwin } from './paper-twin.tsx';
import { Sharing } from './sharing.tsx';
import { TagTab } from './tag-tab.tsx';
import { Tally } from './tally.tsx';
import type { Noted } from './use-noted.ts';
import { WalkTab } from './walk-tab.tsx';

const tabs = [
  'next',
  'forgotten',
  'walk',
  'tag',
  'note',
  'day',
  'done',
  'paper',
  'laptop',
] as const;
type RecordTab = (typeof tabs)[number];

/** What the tabs are made of. */
export interface RecordTabsProps {
  readonly noted: Noted;
  readonly stood: Stood;
  readonly project: string;
  /** What is chosen on the plan. */
  readonly thing: Thing | null;
  /** The place where somebody stands: the panel that was chosen last. */
  readonly near: number | null;
  /** Something in a list was chosen, to be seen on the plan. */
  readonly onThing: (thing: Thing) => void;
  /** Prints the page of a day, `2026-05-01`, or the dossier. */
  readonly onPrint: (what: string) => void;
}

/** The tabs. */
export function RecordTabs(props: RecordTabsProps) {
  const { noted, stood, project, thing, near, onThing, onPrint } = props;
  const { record: words, recording } = useWords();
  const [chosen, setTab] = useState<RecordTab | null>(null);
  const [site] = useSite();
  // Something of the laptop's is to be settled first.
  const toSettle = site.other !== null || joinFailed(site.joining);
  const tab = chosen ?? (toSettle ? 'laptop' : 'next');
  const { state, plan, leftOut } = noted;
  return (
    <Tabs
      className="beside-tabs record-tabs"
      label={recording.tabs}
      tabs={tabs.map((key) => ({ key, label: recording.tab[key] }))}
      chosen={tab}
      onChoose={setTab}
    >
      <div className="fit-panel record-panel">
        {tab === 'next' ? (
          <NextTab {...{ noted, stood }} />
        ) : tab === 'forgotten' ? (
          <ForgottenList {...{ noted, near, onThing }} />
        ) : tab === 'walk' ? (
          <WalkTab {...{ noted, near, onThing }} />
        ) : tab === 'tag' ? (
          <TagTab noted={noted} kinds={stood.kinds} onThing={onThing} />
        ) : tab === 'note' ? (
          <NoteTab {...{ noted, thing, project }} />
        ) : tab === 'paper' ? (
          <PaperTwin noted={noted} />
        ) : tab === 'day' ? (
          <DayTab {...{ noted, stood, onPrint }} />
        ) : tab === 'laptop' ? (
          <Sharing />
        ) : (
          <>
            <Tally state={state} plan={plan} leftOut={leftOut} />
            <FeedBack {...{ noted, project }} />
          </>
        )}
        <p className="caution">{words.caution}</p>
      </div>
    </Tabs>
  );
}

const joinFailed = (joining: SiteNow['joining']): boolean => joining !== 'no' && joining !== 'now';
