// The frame around every sheet: the phases as a strip, the sheet, messages.

import { type ComponentType, lazy, Suspense, useEffect, useLayoutEffect, useRef } from 'react';
import { HatchPatterns } from '../drawing/svg-items.tsx';
import { saveProject } from '../files/save-file.ts';
import { PileSheet } from '../sheets/pile/pile-sheet.tsx';
import { projectOf, type Sheet, sheets } from '../state/app-state.ts';
import { useWords, wholeTable } from '../words/words.ts';
import { useApp, useAppState } from './app-context.tsx';
import { DropZone } from './drop-zone.tsx';
import { FaultBoundary } from './fault-boundary.tsx';
import { HeadBar } from './head-bar.tsx';
import { Notices } from './notices.tsx';
import { useMedia } from './use-media.ts';

/** A sheet that is loaded when it is first looked at, with its words. */
const later = (load: () => Promise<ComponentType>) =>
  lazy(async () => {
    const [sheet] = await Promise.all([load(), wholeTable()]);
    return { default: sheet };
  });

const ShapeSheet = later(async () => (await import('../sheets/shape/shape-sheet.tsx')).ShapeSheet);
const PlacesSheet = later(
  async () => (await import('../sheets/places/places-sheet.tsx')).PlacesSheet,
);
const GroundSheet = later(
  async () => (await import('../sheets/ground/ground-sheet.tsx')).GroundSheet,
);
const RaisingSheet = later(
  async () => (await import('../sheets/raising/raising-sheet.tsx')).RaisingSheet,
);
const RecordSheet = later(
  async () => (await import('../sheets/record/record-sheet.tsx')).RecordSheet,
);
const FitoutSheet = later(
  async () => (await import('../sheets/fitout/fitout-sheet.tsx')).FitoutSheet,
);
const PapersSheet = later(
  async () => (await import('../sheets/papers/papers-sheet.tsx')).PapersSheet,
);

const sheetOf = {
  pile: PileSheet,
  shape: ShapeSheet,
  places: PlacesSheet,
  ground: GroundSheet,
  raising: RaisingSheet,
  record: RecordSheet,
  fitout: FitoutSheet,
  papers: PapersSheet,
} as const;

/** The whole page. */
export function AppFrame() {
  const words = useWords().frame;
  const sheet = useAppState((state) => state.sheet);
  const title = useAppState((state) => (state.opening ? words.opening : projectOf(state).title));
  const opening = useAppState((state) => state.opening);
  useScheme();
  useSavingFaults();
  useEffect(() => {
    document.title = `${words.sheets[sheet]} · ${title || words.untitled} · ${words.product}`;
  }, [words, sheet, title]);
  const Sheet = sheetOf[sheet];
  return (
    <div className="frame" data-sheet={sheet}>
      <a className="skip" href="#sheet">
        {words.skip}
      </a>
      <HatchPatterns />
      <div className="strip">
        <HeadBar />
        <PhaseStrip />
      </div>
      <main id="sheet" className="sheet" tabIndex={-1}>
        <FaultBoundary
          key={sheet}
          fallback={(fault, again) => <SheetFault fault={fault} again={again} />}
        >
          <Suspense fallback={null}>{opening ? null : <Sheet />}</Suspense>
        </FaultBoundary>
      </main>
      <Notices />
      <DropZone />
    </div>
  );
}

function SheetFault({ fault, again }: { fault: string; again: () => void }) {
  const words = useWords().frame;
  const app = useApp();
  return (
    <div className="sheet-fault" role="alert">
      <p>{words.sheetFault}</p>
      <p className="quiet">{fault}</p>
      <p>
        <button type="button" onClick={again}>
          {words.again}
        </button>{' '}
        <button type="button" onClick={() => void saveProject(app, words, false)}>
          {words.menuItems.save}
        </button>
      </p>
    </div>
  );
}

function PhaseStrip() {
  const words = useWords().frame;
  const app = useApp();
  const current = useAppState((state) => state.sheet);
  const strip = useRef<HTMLOListElement>(null);
  // On a phone the phases are wider than the page. (The links name the page too: one out of sight that
  // names a place alone is taken for a skip link.)
  useEffect(() => {
    const see = (): void => {
      const here = strip.current?.children[sheets.indexOf(current)];
      here?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    };
    see();
    // The page's own letters may be wider than those it begins with.
    void document.fonts.ready.then(see);
  }, [current]);
  return (
    <nav aria-label={words.phases}>
      <ol className="phases" ref={strip}>
        {sheets.map((sheet: Sheet, i) => (
          <li key={sheet}>
            <a
              href={`./#${sheet}`}
              aria-current={sheet === current ? 'page' : undefined}
              onClick={(event) => {
                event.preventDefault();
                app.goTo(sheet);
              }}
            >
              <span className="phase-number">{i + 1}</span> {words.sheets[sheet]}
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** Tells the style sheet the look that was chosen, or that the device has. */
function useScheme(): void {
  const chosen = useAppState((state) => state.settings.scheme);
  const dark = useMedia('(prefers-color-scheme: dark)');
  const scheme = chosen === 'system' ? (dark ? 'dark' : 'light') : chosen;
  useLayoutEffect(() => {
    document.documentElement.dataset.scheme = scheme;
  }, [scheme]);
}

/** A change that could not be kept is told once for each reason. */
function useSavingFaults(): void {
  const words = useWords().frame;
  const app = useApp();
  const why = useAppState(({ saving }) => (saving.status === 'refused' ? saving.why : null));
  useEffect(() => {
    if (why === null) return;
    const choices = [
      { label: words.menuItems.save, act: () => void saveProject(app, words, false) },
    ];
    app.tell('fault', words.savingRefused[why], [], choices);
  }, [app, words, why]);
}
