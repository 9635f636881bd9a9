// The tab of the model: its sort, its settings, what came of it, its files.

import '../../styles/model.css';
import { defaultModel, type ModelSettings, type ModelSort, modelSorts } from '@shellraise/core';
import { useState } from 'react';
import { useStore } from 'zustand';
import type { PatternQuestion } from '../../engine/patterns.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';
import { ModelFiles } from './model-files.tsx';
import { ModelPicture } from './model-picture.tsx';
import { modelRuns, useModelQuestion } from './model-runs.ts';
import { ModelSetting } from './model-setting.tsx';
import { settingsOf } from './model-settings.ts';

/** What is chosen on the tab, for as long as the sheet is open. */
export function useModel(stood: Stood) {
  const { system } = useLengths();
  const [sort, setSort] = useState<ModelSort>('net');
  const [settings, setSettings] = useState<ModelSettings>({
    ...defaultModel,
    paper: system === 'inch' ? 'Letter' : 'A4',
  });
  const question = useModelQuestion(stood, sort, settings);
  return {
    question,
    setSettings,
    /** A part to push together is thicker than a wall that is printed whole. */
    setSort: (next: ModelSort): void => {
      setSort(next);
      const wall = next === 'snap' ? Math.max(3, settings.wall) : settings.wall;
      if (wall !== settings.wall) setSettings({ ...settings, wall });
    },
  };
}

/** The picture of what was made last. */
export function ModelDrawing({ question }: { question: PatternQuestion }) {
  const words = useWords().patterns;
  const { input, value } = useStore(modelRuns.store);
  return value?.ok && input?.shell === question.shell ? (
    <ModelPicture key={input.sort} files={value.files} />
  ) : (
    <p className="plan-waiting quiet">{words.none}</p>
  );
}

/** The tab. */
export function PatternsPanel({ question, setSort, setSettings }: ReturnType<typeof useModel>) {
  const words = useWords().patterns;
  const { sort, settings } = question;
  return (
    <div className="fit-panel model-panel">
      <fieldset className="legend-choices">
        <legend>{words.sort}</legend>
        {modelSorts.map((one) => (
          <button key={one} type="button" aria-pressed={one === sort} onClick={() => setSort(one)}>
            {words.sorts[one]}
          </button>
        ))}
      </fieldset>
      <p className="quiet">{words.about[sort]}</p>
      <div className="model-fields">
        {settingsOf[sort].map((name) => (
          <ModelSetting key={name} {...{ name, settings }} onSettings={setSettings} />
        ))}
      </div>
      <p>
        <button type="button" className="go" onClick={() => modelRuns.start(question)}>
          {words.make}
        </button>
      </p>
      <Told question={question} />
      <p className="facts-caution">{words.caution}</p>
    </div>
  );
}

/** What came of the last press. */
function Told({ question }: { question: PatternQuestion }) {
  const words = useWords().patterns;
  const run = useStore(modelRuns.store);
  const { value, input } = run;
  if (run.status === 'failed')
    return (
      <p role="alert" className="step-ended">
        {words.failed} {run.fault}
      </p>
    );
  if (value === null || input?.shell !== question.shell)
    return <ProgressLine ask={run} what={words.working} onCancel={modelRuns.cancel} />;
  const { setting, found, expected } = value.ok ? { ...none } : value;
  return value.ok ? (
    <>
      <h2>{words.made}</h2>
      {input === question ? null : <p className="accent">{words.older}</p>}
      <p role="status">{value.words}</p>
      <ModelFiles
        files={value.files}
        zip={value.zip}
        name={`${question.facts.project}-${words.sorts[input.sort]}`}
      />
    </>
  ) : (
    <p role="alert" className="step-ended">
      {words.refused(setting === 'open' ? words.open : words.settings[setting], found, expected)}
    </p>
  );
}

const none = { setting: 'open', found: '', expected: '' } as const;
