// What the project says about ground and loads, and the ways to change it, each with its way back.

import {
  defaultGround,
  defaultLoads,
  type GroundSettings,
  type LoadsSettings,
  type PartsKnown,
  type SpeedUnit,
  type StagesKnown,
  unknownParts,
  unknownStages,
  writeForce,
  writeSpeed,
} from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';

/** A gust limit under this, m/s, is no wind at all. */
export const NO_WIND = 0.05;

/** Settings of ground and loads with what changes them. */
export function useGround() {
  const app = useApp();
  const ground = useAppState((state) => projectOf(state).ground) ?? defaultGround;
  const loads = useAppState((state) => projectOf(state).loads) ?? defaultLoads;
  return useMemo(
    () => ({
      ground,
      loads,
      setGround: (part: Partial<GroundSettings>, label: string): void =>
        app.change(
          ({ project }) => {
            project.ground = { ...(project.ground ?? defaultGround), ...part };
            return undefined;
          },
          { label },
        ),
      setLoads: (part: Partial<LoadsSettings>, label: string): void =>
        app.change(
          ({ project }) => {
            project.loads = { ...(project.loads ?? defaultLoads), ...part };
            return undefined;
          },
          { label },
        ),
    }),
    [app, ground, loads],
  );
}

/** What is known of parts, props and hubs, with what changes it. */
export function useParts() {
  const app = useApp();
  const parts = useAppState((state) => projectOf(state).parts) ?? unknownParts;
  const stages = useAppState((state) => projectOf(state).stages) ?? unknownStages;
  return useMemo(
    () => ({
      parts,
      stages,
      setPart: <K extends keyof PartsKnown>(
        of: K,
        part: Partial<PartsKnown[K]>,
        label: string,
      ): void =>
        app.change(
          ({ project }) => {
            const known = project.parts ?? unknownParts;
            project.parts = { ...known, [of]: { ...known[of], ...part } };
            return undefined;
          },
          { label },
        ),
      setStages: (part: Partial<StagesKnown>, label: string): void =>
        app.change(
          ({ project }) => {
            project.stages = { ...(project.stages ?? unknownStages), ...part };
            return undefined;
          },
          { label },
        ),
    }),
    [app, parts, stages],
  );
}

/** Winds and forces as this person reads them. */
export function useQuantities() {
  const { system } = useLengths();
  return useMemo(() => {
    const metric = system === 'metric';
    const speedUnit: SpeedUnit = metric ? 'm/s' : 'mph';
    return {
      metric,
      speedUnit,
      speed: (value: number): string => writeSpeed(value, speedUnit, metric ? 1 : 0),
      force: (value: number): string =>
        metric ? writeForce(value, 'kN', 2) : writeForce(value, 'lbf', 0),
      /** What a pascal is typed in: its name, and how many pascals it is. */
      perArea: metric
        ? ({ name: 'kN/m²', pascals: 1000 } as const)
        : ({ name: 'psf', pascals: 47.880_26 } as const),
      area: (value: number): string =>
        metric ? `${value.toFixed(1)} m²` : `${(value / 0.3048 ** 2).toFixed(0)} ft²`,
    };
  }, [system]);
}
