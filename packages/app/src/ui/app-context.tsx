// How screens reach the page's state and the engine's results.

import { createContext, type ReactNode, use, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Derived, DerivedResults } from '../engine/derived.ts';
import type { Fitting, FittingSearch } from '../engine/fitting.ts';
import type { App, AppState } from '../state/app-state.ts';
import type { SiteNow, SiteSession } from '../sync/site.ts';
import { type Lengths, lengthsIn } from './lengths.ts';

/** What every screen can reach. */
export interface Reach {
  readonly app: App;
  readonly derived: DerivedResults;
  readonly fitting: FittingSearch;
  readonly site: SiteSession;
}

const ReachContext = createContext<Reach | null>(null);

/** Gives the screens the page's state and the engine's results. */
export function ReachProvider({ reach, children }: { reach: Reach; children: ReactNode }) {
  return <ReachContext value={reach}>{children}</ReachContext>;
}

function useReach(): Reach {
  const reach = use(ReachContext);
  if (!reach) throw new Error('a screen stands outside of ReachProvider');
  return reach;
}

/** The page's actions. */
export const useApp = (): App => useReach().app;

/** What can be asked of the engine. */
export const useEngine = (): DerivedResults => useReach().derived;

/** A part of the page's state; the screen is drawn again when that part changes. */
export const useAppState = <T,>(part: (state: AppState) => T): T =>
  useStore(useReach().app.state, part);

/** A part of what the engine has made. */
export const useDerived = <T,>(part: (derived: Derived) => T): T =>
  useStore(useReach().derived.store, part);

/** The search for the best fits, with where it is. */
export function useFitting(): readonly [Fitting, FittingSearch] {
  const { fitting } = useReach();
  return [useStore(fitting.store), fitting];
}

/** Lengths as this person reads them. */
export function useLengths(): Lengths {
  const system = useAppState((state) => state.settings.lengths);
  return useMemo(() => lengthsIn(system), [system]);
}

/** The site that this device has joined, with where it is. */
export function useSite(): readonly [SiteNow, SiteSession] {
  const { site } = useReach();
  return [useStore(site.store), site];
}
