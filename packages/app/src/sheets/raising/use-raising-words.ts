// Masses, times and pieces as this person reads them.

import { writeMass } from '@shellraise/core';
import { useMemo } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { useQuantities } from '../ground/use-ground.ts';
import { roundedHours } from './hours.ts';
import { pieceName } from './piece-name.ts';

/** What the cards write. */
export function useCardWords(numbers: readonly string[]) {
  const { raising: words } = useWords();
  const lengths = useLengths();
  const { speed, metric } = useQuantities();
  return useMemo(
    () => ({
      height: lengths.large,
      /** A height to be reached, rounded up: no reach is finer. */
      reach: (metres: number): string =>
        metric
          ? `${(Math.ceil(metres * 20 - 1e-6) / 20).toFixed(2)} m`
          : lengths.large(Math.ceil(metres / 0.0508 - 1e-6) * 0.0508),
      speed,
      mass: (kilograms: number): string => writeMass(kilograms, metric ? 'kg' : 'lb', 0),
      time: (seconds: number): string => {
        const { hours, minutes } = roundedHours(seconds);
        return words.card.hours(hours, minutes);
      },
      piece: (places: readonly number[]): string =>
        pieceName(places.map((place) => numbers[place] ?? '')),
    }),
    [words, lengths, speed, metric, numbers],
  );
}

/** As {@link useCardWords} gives them. */
export type CardWords = ReturnType<typeof useCardWords>;
