// What the project says about ground and loads, and the ways to change it, each with its way back.

import {
  defaultGround,
  defaultLoads,
  type GroundSettings,
  type LoadsSettings,
  type SpeedUnit,
  writeForce,
  writeSpeed,
} from '@shellraise/core';
import { useMemo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';

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
      area: (value: number): string =>
        metric ? `${value.toFixed(1)} m²` : `${(value / 0.3048 ** 2).toFixed(0)} ft²`,
    };
  }, [system]);
}

/** As {@link useQuantities} gives them. */
export type Quantities = ReturnType<typeof useQuantities>;
